package force

import "math"

func (e *explainer) cantilever(c *Cantilever) {
	l, y := c.Length, c.Undercut
	a := c.spring(e.outer)
	e.size("L", l, "length of the arm")
	e.size("y", y, "undercut")
	e.angle("alpha", c.MatingAngle, "mating angle")
	e.angle("alpha'", c.ReturnAngle, "return angle")
	modulus := e.modulus("s", e.outer)
	switch c.shape() {
	case "rocker":
		e.rocker(c, a, modulus)
	default:
		e.arm(c, a, modulus)
	}
	e.step("arm.deflection", "w", e.s.move, "mm", "w = y, the mate being rigid", sourceGeometry, MarkOwn, "%s", y)
	e.series(a.stiffness, 0)
	nominal, what, kt := max(a.axial, a.root), "at the root", a.kt
	if strain, _ := a.governs(e.outer.PermittedAxial("").Value, e.outer.PermittedHoop("").Value); strain == a.across && a.axial > 0 {
		nominal, what, kt = a.across, "in strip or bend", 1
	}
	if a.axial > a.root*a.kt && nominal == a.axial {
		what, kt = "along the taper", 1
	}
	if nominal == a.axial && kt != 1 {
		nominal = a.root
	}
	e.step("root.concentration", "Kt", kt, "1", "Kt = 0.9072 (r/t)^-0.33333 at the root, not below 1; 1 elsewhere", "Norton, Machine Design, appendix", MarkMemory, "%s", kt)
	e.step("arm.strain", "eps", e.s.outerStrain, "1", "eps = Kt eps_nominal, "+what, "own", MarkOwn, "%s*%s*%s", kt, nominal, y)
	f := e.flank0(c.MatingAngle)
	if e.j.rotation != 0 {
		theta := e.j.rotation * y
		e.step("arm.slope", "theta", theta*degree, "deg", "slope of the tip at full deflection", sourceBeam, MarkMemory, "%s*%s*180/pi", e.j.rotation, y)
		f = e.s.factor
		e.step("arm.factor", "f", f, "1", "f = tan(alpha + theta + rho): the hook leans into the mate", "own; without theta: "+sourceGuide+", p. 14", MarkOwn, "tan(%s + %s + atan(%s))", c.MatingAngle*degree, theta*degree, e.mu)
	}
	e.step("snap.force", "W", e.s.load*f, "N", "W = P f, at the end of the lead-in", sourceGuide+", p. 14", MarkRead, "%s*%s", e.s.load, f)
	e.separation()
}

// flank0 explains the mating factor of the flank as drawn.
func (e *explainer) flank0(alpha float64) float64 {
	f, _ := flank(e.mu, math.Tan(alpha))
	e.step("flank.factor", "f0", f, "1", "f = tan(alpha + rho) = (mu + tan alpha)/(1 - mu tan alpha)", sourceGuide+", p. 14", MarkRead,
		"(%s + tan(%s))/(1 - %s*tan(%s))", e.mu, alpha*degree, e.mu, alpha*degree)
	return f
}

// arm explains stiffness and strain per mm of a bending arm.
func (e *explainer) arm(c *Cantilever, a armSpring, modulus float64) {
	l := c.Length
	s, tensile := c.root()
	switch c.Section {
	case "ring_segment":
		e.step("section.inertia", "I", s.Inertia, "mm^4", "I of an annular sector, integrals", "annular sector", MarkOwn, "")
		e.step("section.face", "c", tensile, "mm", "distance of the neutral axis to the face in tension", "annular sector", MarkOwn, "")
	case "trapezoid":
		wide, narrow, h := c.Width, c.NarrowWidth, c.Thickness
		e.step("section.inertia", "I", s.Inertia, "mm^4", "I = h^3 (a^2 + 4 a b + b^2)/(36 (a + b))", "Roark, table of sections", MarkMemory, "%[3]s^3*(%[1]s^2 + 4*%[1]s*%[2]s + %[2]s^2)/(36*(%[1]s + %[2]s))", wide, narrow, h)
		if c.Tension == "wide" {
			e.step("section.face", "c", tensile, "mm", "c = h (a + 2 b)/(3 (a + b)), the wide face in tension", "Roark, table of sections", MarkMemory, "%[3]s*(%[1]s + 2*%[2]s)/(3*(%[1]s + %[2]s))", wide, narrow, h)
		} else {
			e.step("section.face", "c", tensile, "mm", "c = h (2 a + b)/(3 (a + b)), the narrow face in tension", "Roark, table of sections", MarkMemory, "%[3]s*(2*%[1]s + %[2]s)/(3*(%[1]s + %[2]s))", wide, narrow, h)
		}
	default:
		e.step("section.inertia", "I", s.Inertia, "mm^4", "I = b h^3/12", sourceBeam, MarkMemory, "%s*%s^3/12", c.Width, c.Thickness)
		e.step("section.face", "c", tensile, "mm", "c = h/2", sourceBeam, MarkMemory, "%s/2", c.Thickness)
	}
	switch c.shape() {
	case "straight":
		kt, kw := c.tapers()
		t := TaperFactor(kt, kw)
		numbers, vals := "", []float64(nil)
		switch {
		case kt == 1 && kw == 1:
			numbers = "1"
		case kw == 1:
			numbers, vals = "3/(1 - %[1]s)^3*(2*%[1]s - %[1]s^2/2 - ln(%[1]s) - 1.5)", []float64{kt}
		case kt == 1:
			numbers, vals = "3/(1 - %[1]s)^3*(0.5 - 2*%[1]s + 1.5*%[1]s^2 - %[1]s^2*ln(%[1]s))", []float64{kw}
		}
		if math.Abs(kt-1) < 0.05 && math.Abs(kw-1) < 0.05 && (kt != 1 || kw != 1) {
			numbers, vals = "", nil // the closed form loses its digits near 1
		}
		e.step("arm.taper", "T", t, "1", "T = 3 Int (1-s)^2/((1-(1-kt)s)^3 (1-(1-kw)s)) ds, kt, kw: tip over root thickness and width", sourceBeam, MarkOwn, numbers, vals...)
		e.step("arm.base", "Q", a.q, "1", "Q: give of the base; 1 rigid, 1 + 1.327 t/(L T) solid", "O'Donnell, J. Appl. Mech. 1960", MarkMemory, "%s", a.q)
		e.step("arm.stiffness", "K", a.stiffness, "N/mm", "K = 3 E I/(L^3 T Q)", sourceGuide+", p. 13, as P = Z Es eps/L", MarkMemory, "3*%s*%s/(%s^3*%s*%s)", modulus, s.Inertia, l, t, a.q)
		e.step("arm.root", "eps/y", a.root, "1/mm", "eps/y = 3 c/(L^2 T Q) at the root", sourceGuide+", p. 10", MarkMemory, "3*%s/(%s^2*%s*%s)", tensile, l, t, a.q)
	case "l_arm":
		i2 := Rectangle(c.Width, c.BaseThickness).Inertia
		e.step("arm.strip", "I2", i2, "mm^4", "I2 = b t2^3/12", sourceBeam, MarkMemory, "%s*%s^3/12", c.Width, c.BaseThickness)
		e.step("arm.stiffness", "K", a.stiffness, "N/mm", "K = E/[L1^3/(3 I1) + L1^2 L2/I2]/Q", "Castigliano", MarkOwn, "%s/(%s^3/(3*%s) + %s^2*%s/%s)/%s", modulus, l, s.Inertia, l, c.BaseLength, i2, a.q)
		e.step("arm.root", "eps/y", a.root, "1/mm", "eps/y = K L1 c/(E I1)", sourceBeam, MarkMemory, "%s*%s*%s/(%s*%s)", a.stiffness, l, tensile, modulus, s.Inertia)
		e.step("arm.across", "eps2/y", a.across, "1/mm", "eps/y = K L1 (t2/2)/(E I2) in the strip", sourceBeam, MarkMemory, "%s*%s*%s/2/(%s*%s)", a.stiffness, l, c.BaseThickness, modulus, i2)
	case "u_arm":
		r := c.BendRadius
		e.step("arm.stiffness", "K", a.stiffness, "N/mm", "K = 6 E I/[4 L^3 + 6 pi L^2 R + 24 L R^2 + 3 pi R^3]/Q", "Castigliano", MarkOwn,
			"6*%[1]s*%[2]s/(4*%[3]s^3 + 6*pi*%[3]s^2*%[4]s + 24*%[3]s*%[4]s^2 + 3*pi*%[4]s^3)/%[5]s", modulus, s.Inertia, l, r, a.q)
		e.step("arm.across", "eps2/y", a.across, "1/mm", "eps/y = K (L + R) c/(E I) at the crown of the bend", sourceBeam, MarkMemory, "%s*(%s + %s)*%s/(%s*%s)", a.stiffness, l, r, tensile, modulus, s.Inertia)
	}
}

// rocker explains a lever on torsion bars.
func (e *explainer) rocker(c *Cantilever, a armSpring, modulus float64) {
	nu := e.outer.Poisson.Value
	bars := 2.0
	if c.Bars == 1 {
		bars = 1
	}
	g := modulus / (2 * (1 + nu))
	e.step("rocker.shear", "G", g, "MPa", "G = E/(2 (1 + nu))", sourceGuide+", section C", MarkMemory, "%s/(2*(1 + %s))", modulus, nu)
	ip := math.Pi * math.Pow(c.BarRadius, 4) / 2
	e.step("rocker.inertia", "Ip", ip, "mm^4", "Ip = pi r^4/2", sourceGuide+", section C", MarkMemory, "pi*%s^4/2", c.BarRadius)
	e.step("arm.stiffness", "K", a.stiffness, "N/mm", "K = n G Ip/(l L^2)/Q, L: lever, l: bar", sourceGuide+", section C", MarkMemory, "%s*%s*%s/(%s*%s^2)/%s", bars, g, ip, c.BarLength, c.Length, a.q)
	e.step("rocker.strain", "eps/y", a.across, "1/mm", "eps/y = gamma/(1 + nu)/y, gamma = r y/(l L)", sourceGuide+", section C", MarkMemory, "%s/(%s*%s)/(1 + %s)/%s", c.BarRadius, c.BarLength, c.Length, nu, a.q)
}
