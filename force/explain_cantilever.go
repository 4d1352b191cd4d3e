package force

func (c Cantilever) explain(e *explainer) {
	l, y := c.Length, c.Undercut
	a := c.spring(e.outer)
	e.size("L", l, "length of the arm")
	e.size("y", y, "undercut")
	e.angle("alpha", c.MatingAngle, "mating angle")
	e.angle("alpha'", c.ReturnAngle, "return angle")
	modulus := e.modulus("s", e.outer)
	switch c.shape() {
	case "rocker":
		e.size("r", c.BarRadius, "radius of the bars")
		e.size("l", c.BarLength, "length of one bar")
		e.lines = append(e.lines, c.folded(e.outer).lines...)
	default:
		e.arm(c, a, modulus)
	}
	e.step("arm.deflection", "w", e.s.move, "mm", "w = y, the mate being rigid", sourceGeometry, MarkOwn, "%s", y)
	e.series(a.stiffness, 0, "N")
	e.armStrain(c, a)
	if e.j.rotation == 0 {
		e.given("kappa", e.j.lever, "1", "the bend toward the mate: the axial force helps, which is not credited", MarkOwn)
		e.crest(e.levered("F", e.flank("f", c.MatingAngle)), e.mu, c.Land)
		e.separation()
		return
	}
	e.lean(c, a)
	e.separation()
}

// armStrain explains the strain nearest its limit.
func (e *explainer) armStrain(c Cantilever, a armSpring) {
	nominal, what, kt := a.root, "at the root", a.kt
	strain, _ := a.governs(e.outer.PermittedAxial("").Value, e.outer.PermittedHoop("").Value)
	switch {
	case c.shape() == "rocker":
		what = "shear in the bars over 1 + nu"
	case strain == a.across:
		nominal, what, kt = a.across, "in strip or bend", 1
	case a.axial > a.root*a.kt:
		nominal, what, kt = a.axial, "along the arm", 1
	}
	ratio := sharpRoot
	if c.RootRadius != nil {
		ratio = *c.RootRadius / c.thickness()
	}
	switch {
	case kt == 1:
		e.step("root.concentration", "Kt", kt, "1", "Kt = 1 away from the root, and of a large fillet", "Norton, Machine Design, appendix",
			MarkMemory, "1")
	default:
		e.step("root.concentration", "Kt", kt, "1", "Kt = 0.9072 (r/t)^-0.33333 at the root, not below 1; an unstated fillet counts as r/t = 0.1",
			"Norton, Machine Design, appendix", MarkMemory, "0.9072*%s^(0 - 0.33333)", ratio)
	}
	e.step("arm.strain", "eps", e.s.outerStrain, "1", "eps = Kt (eps/y) y, "+what, "own", MarkOwn, "%s*%s*%s", kt, nominal, c.Undercut)
}

// lean explains how the hook leans and what the axial force adds.
func (e *explainer) lean(c Cantilever, a armSpring) {
	y := c.Undercut
	switch c.shape() {
	case "rocker":
		e.step("contact.arm", "kappa", e.j.lever, "1", "kappa = r theta/y, lever of the axial part of the contact force; the lever counts as thick as its bars", "own", MarkOwn, "%s*%s", a.face, a.slope)
	case "u_arm":
		e.step("contact.arm", "kappa", e.j.lever, "1", "kappa = (c + R) theta/y, lever of the axial part of the contact force", "own", MarkOwn,
			"(%s + %s)*%s", a.face, c.BendRadius, a.slope)
	default:
		e.step("contact.arm", "kappa", e.j.lever, "1", "kappa = c theta/y + 0.3 y/L, lever of the axial part of the contact force", "own",
			MarkOwn, "%s*%s + 0.3*%s/%s", a.face, a.slope, y, c.Length)
	}
	e.leans(c.MatingAngle, y, c.Land)
}

// leans explains how a hook on an arm leans, and the force that it then asks for.
func (e *explainer) leans(alpha, y, flat float64) {
	tan, f0 := e.j.tanA, 0.0
	theta0, x := e.j.rotation*y, e.j.turning*y
	f0 = e.flank("f0", alpha)
	theta := e.j.lean(e.mu, tan, y)
	e.step("arm.slope", "theta0", theta0, "1", "theta0 = (theta/y) y, slope of the hook by a force across the arm", sourceBeam, MarkMemory,
		"%s*%s", e.j.rotation, y)
	kappa := e.j.lever
	qa := f0 + kappa
	qb := 1 - kappa*f0 + theta0*qa + x*kappa
	qc := theta0*(1-kappa*f0) - x*kappa*f0
	e.exact = true
	e.step("contact.lean_b", "q_b", qb, "1", "q_b = 1 - kappa f0 + theta0 (f0 + kappa) + x y kappa, x: turn/y - theta/y", "own", MarkOwn,
		"1 - %[1]s*%[2]s + %[3]s*(%[2]s + %[1]s) + %[4]s*%[1]s", kappa, f0, theta0, x)
	e.step("contact.lean_c", "q_c", qc, "1", "q_c = theta0 (1 - kappa f0) - x y kappa f0", "own", MarkOwn,
		"%[3]s*(1 - %[1]s*%[2]s) - %[4]s*%[1]s*%[2]s", kappa, f0, theta0, x)
	e.exact = false
	if theta > 0 {
		e.step("contact.lean", "theta", theta, "1", "theta = 2 q_c/(q_b + sqrt(q_b^2 - 4 (f0 + kappa) q_c)): theta = theta0 - x y f kappa/(1 - f kappa), f = tan(alpha + theta + rho)", "own", MarkOwn,
			"2*%[3]s/(%[2]s + sqrt(%[2]s^2 - 4*%[1]s*%[3]s))", qa, qb, qc)
	} else {
		e.step("contact.lean", "theta", 0, "1", "theta = 0: it would be below", "own", MarkOwn, "0")
	}
	f := f0
	if !e.j.upright {
		f = leanedFactor(e.mu, tan, theta)
		e.step("arm.factor", "f", f, "1", "f = tan(alpha + theta + rho): the hook leans into the mate",
			"own; without theta: "+sourceGuide+", p. 14", MarkOwn, "tan(%s + %s*180/pi + atan(%s))", alpha*degree, theta, e.mu)
	}
	lead, land := e.levered("F", f), 0.0
	if flat > 0 {
		g := leanedFactor(e.mu, 0, theta)
		e.step("arm.land", "f_land", g, "1", "f = tan(theta + rho): the crest leans too", "own", MarkOwn, "tan(%s*180/pi + atan(%s))", theta,
			e.mu)
		land = e.levered("F_land", g)
	}
	e.crest(lead, land, flat)
	e.step("guide.arm", "W_guide", e.s.load*f0, "N", "W = P f0, the published mating force without lean and lever: cross-check, not the design force", sourceGuide+", p. 14", MarkRead, "%s*%s", e.s.load, f0)
}

// leanedFactor is the mating factor of a flank that has turned by theta.
func leanedFactor(mu, tan, theta float64) float64 {
	f, _ := flank(mu, leaning(tan, theta), 0)
	return f
}

// arm explains stiffness and strain per mm of a bending arm.
func (e *explainer) arm(c Cantilever, a armSpring, modulus float64) {
	s, tensile := c.root()
	switch c.Section {
	case "ring_segment":
		e.sector(c.InnerRadius, c.OuterRadius, c.Arc/2*degree, s, c.Bends != "inward")
	case "trapezoid":
		wide, narrow, h := c.Width, c.NarrowWidth, c.Thickness
		e.step("section.inertia", "I", s.Inertia, "mm^4", "I = h^3 (a^2 + 4 a b + b^2)/(36 (a + b))", "Roark, table of sections", MarkMemory,
			"%[3]s^3*(%[1]s^2 + 4*%[1]s*%[2]s + %[2]s^2)/(36*(%[1]s + %[2]s))", wide, narrow, h)
		if c.Tension == "wide" {
			e.step("section.face", "c", tensile, "mm", "c = h (a + 2 b)/(3 (a + b)), the wide face in tension", "Roark, table of sections",
				MarkMemory, "%[3]s*(%[1]s + 2*%[2]s)/(3*(%[1]s + %[2]s))", wide, narrow, h)
		} else {
			e.step("section.face", "c", tensile, "mm", "c = h (2 a + b)/(3 (a + b)), the narrow face in tension", "Roark, table of sections",
				MarkMemory, "%[3]s*(2*%[1]s + %[2]s)/(3*(%[1]s + %[2]s))", wide, narrow, h)
		}
	default:
		e.step("section.inertia", "I", s.Inertia, "mm^4", "I = b h^3/12", sourceBeam, MarkMemory, "%s*%s^3/12", c.Width, c.Thickness)
		e.step("section.face", "c", tensile, "mm", "c = h/2", sourceBeam, MarkMemory, "%s/2", c.Thickness)
	}
	switch c.shape() {
	case "straight":
		e.straight(c, a, modulus, s, tensile)
	default:
		e.lines = append(e.lines, c.folded(e.outer).lines...)
	}
}
