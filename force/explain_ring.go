package force

import "math"

// tube explains the stiffness of one member of a ring joint.
func (e *explainer) tube(side string, t Tube, outer, bore float64, isOuter bool) float64 {
	st := newStrip(t, true)
	sub := "_" + side
	e.step("ring.radius", "R"+sub, t.Radius, "mm", "R = (D1 + D2)/4", sourceGeometry, MarkOwn, "(%s + %s)/4", outer, bore)
	e.step("ring.wall", "t"+sub, t.Wall, "mm", "t = (D1 - D2)/2", sourceGeometry, MarkOwn, "(%s - %s)/2", outer, bore)
	e.step("shell.beta", "beta"+sub, st.beta, "1/mm", "beta = (3 (1 - nu^2))^(1/4)/sqrt(R t)", "Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells", MarkMemory,
		"(3*(1 - %s^2))^0.25/sqrt(%s*%s)", t.Poisson, t.Radius, t.Wall)
	e.step("shell.foundation", "k/E"+sub, st.k, "1/mm", "k/E = t/R^2", sourceShell, MarkMemory, "%s/%s^2", t.Wall, t.Radius)
	e.step("shell.bending", "D/E"+sub, st.d, "mm^3", "D/E = t^3/(12 (1 - nu^2))", sourceShell, MarkMemory, "%s^3/(12*(1 - %s^2))", t.Wall, t.Poisson)
	e.step("shell.shear", "S/E"+sub, 1/st.invS, "mm", "S/E = (5/6) t/(2 (1 + nu)), not below D beta^2/0.95", sourceShell, MarkMemory,
		"%s", max(t.Wall*5/6/(2*(1+t.Poisson)), st.d*st.beta*st.beta/mostShear))
	mouth, past := st.sides(t)
	a1, b1, c1 := mouth.a, mouth.b, mouth.c
	farName := "long"
	if t.Far != Long {
		farName = "free"
		if t.Far == Floored {
			farName = "floored"
		}
	}
	a2, b2, c2 := past.a, past.b, past.c
	text := "stiffness of the length to the mouth: force, coupling, moment over E; from w' = psi + V/S, psi' = -M/D, M' = V, V' = k w"
	e.step("shell.mouth", "A1"+sub, a1, "1", text, sourceShell, MarkMemory, "")
	e.step("shell.mouth", "B1"+sub, b1, "mm", text, sourceShell, MarkMemory, "")
	e.step("shell.mouth", "C1"+sub, c1, "mm^2", text, sourceShell, MarkMemory, "")
	text = "stiffness of the length beyond the joint, far end " + farName
	e.step("shell.beyond", "A2"+sub, a2, "1", text, sourceShell, MarkMemory, "")
	e.step("shell.beyond", "B2"+sub, b2, "mm", text, sourceShell, MarkMemory, "")
	e.step("shell.beyond", "C2"+sub, c2, "mm^2", text, sourceShell, MarkMemory, "")
	b := t.BandWidth()
	e.step("shell.band", "b"+sub, b, "mm", "b = (A1 + A2 - (B2 - B1)^2/(C1 + C2)) E/k", sourceShell, MarkMemory,
		"(%s + %s - (%s - %s)^2/(%s + %s))/%s", a1, a2, b2, b1, c1, c2, st.k)
	w := lameRatio(outer, bore)
	e.step("lame.ratio", "W"+sub, w, "1", "W = (D1^2 + D2^2)/(D1^2 - D2^2)", sourceLame, MarkMemory, "(%s^2 + %s^2)/(%s^2 - %s^2)", outer, bore, outer, bore)
	k := RingStiffness(t, outer, bore, isOuter)
	sign, nu := "-", -t.Poisson
	if isOuter {
		sign, nu = "+", t.Poisson
	}
	e.step("ring.stiffness", "K"+sub, k, "N/mm", "K = 2 pi E b/(W "+sign+" nu), radial", "Lame's ring over the shell's band", MarkOwn, "2*pi*%s*%s/(%s + %s)", t.Modulus, b, w, nu)
	return k
}

// slots explains a ring cut into fingers.
func (e *explainer) slots(f fingers, m *member, modulus float64) float64 {
	s := f.section()
	phi := f.arc() / 2 * degree
	e.step("finger.arc", "phi", phi, "deg", "phi = 180/n - slot/(2 R) in degrees, half the angle of a finger", sourceGeometry, MarkOwn, "180/%s - %s/(%s + %s)*180/pi", float64(f.count), f.slot, f.inner, f.outer)
	e.step("finger.area", "A", s.Area, "mm^2", "A = phi (R^2 - r^2)", "annular sector", MarkOwn, "%s*pi/180*(%s^2 - %s^2)", phi, f.outer, f.inner)
	xc := f.outer - s.Outer
	e.step("finger.centroid", "xc", xc, "mm", "xc = 2 sin(phi) (R^3 - r^3)/(3 A)", "annular sector", MarkOwn, "2*sin(%s)*(%s^3 - %s^3)/(3*%s)", phi, f.outer, f.inner, s.Area)
	// The difference of two near terms: written with the integrals themselves.
	e.step("finger.inertia", "I", s.Inertia, "mm^4", "I = (R^4 - r^4)(phi + sin phi cos phi)/4 - A xc^2", "annular sector", MarkOwn,
		"(%s^4 - %s^4)*(%s*pi/180 + sin(%s)*cos(%s))/4 - %s*(2*sin(%s)*(%s^3 - %s^3)/(3*%s))^2", f.outer, f.inner, phi, phi, phi, s.Area, phi, f.outer, f.inner, s.Area)
	k := FingerStiffness(f.count, modulus, s.Inertia, f.reach)
	e.step("finger.stiffness", "K_fingers", k, "N/mm", "K = n 3 E I/a^3", sourceBeam, MarkMemory, "%s*3*%s*%s/%s^3", float64(f.count), modulus, s.Inertia, f.reach)
	if m.law != armWall {
		return m.stiffness
	}
	if f.outward {
		e.step("finger.face", "c", s.Inner, "mm", "c = xc - r cos(phi), the bore in tension", "annular sector", MarkOwn, "%s - %s*cos(%s)", xc, f.inner, phi)
	} else {
		e.step("finger.face", "c", s.Outer, "mm", "c = R - xc, the outside in tension", "annular sector", MarkOwn, "%s - %s", f.outer, xc)
	}
	return k
}

func (e *explainer) annular(a *Annular) {
	d := a.JointDiameter
	e.size("d", d, "joint diameter")
	e.size("y", e.j.size, "undercut, diametral")
	e.size("do", a.OuterDiameter, "outer diameter of the outer part")
	e.size("di", a.InnerDiameter, "bore of the inner part")
	e.angle("alpha", a.MatingAngle, "mating angle")
	e.angle("alpha'", a.ReturnAngle, "return angle")
	e.size("land", a.Land, "flat crest")
	eo, ei := e.modulus("o", e.outer), e.modulus("i", e.inner)
	to, ti := a.outerTube(e.outer), a.innerTube(e.inner)
	ko := e.tube("o", to, a.OuterDiameter, d, true)
	ki := e.tube("i", ti, d, a.InnerDiameter, false)
	switch a.Split {
	case "outer":
		ko = e.slots(a.fingers(), &e.j.outer, eo)
	case "inner":
		ki = e.slots(a.fingers(), &e.j.inner, ei)
	}
	e.step("ring.opening", "w", e.s.move, "mm", "w = y/2, both members together", sourceGeometry, MarkOwn, "%s/2", e.j.size)
	e.series(ko, ki)
	e.strains(d)
	if f := a.fingers(); a.Split == "outer" && e.j.outer.law == armWall {
		e.step("finger.strain", "eps_o", e.s.outerStrain, "1", "eps = 3 c w_o/a^2", sourceBeam, MarkMemory, "3*%s*%s/%s^2", f.tensile(), e.s.outerMove, f.reach)
	} else if a.Split == "inner" && e.j.inner.law == armWall {
		e.step("finger.strain", "eps_i", e.s.innerStrain, "1", "eps = 3 c w_i/a^2", sourceBeam, MarkMemory, "3*%s*(%s - %s)/%s^2", f.tensile(), e.s.move, e.s.outerMove, f.reach)
	}
	f := e.flank(a.MatingAngle)
	e.step("snap.force", "W", e.s.load*f, "N", "W = P f, at the end of the lead-in", sourceGuide+", p. 14", MarkRead, "%s*%s", e.s.load, f)
	if a.Land > 0 {
		e.step("snap.land", "W_land", e.mu*e.s.load, "N", "W = mu P on the land", sourceGuide+", p. 14, flat", MarkRead, "%s*%s", e.mu, e.s.load)
	}
	e.separation()
	e.guide(a, ko, ki)
}

// guide sets the published figure beside the governing one.
func (e *explainer) guide(a *Annular, ko, ki float64) {
	d := a.JointDiameter
	ro, ri := 1.0, 1.0
	if a.Split != "outer" {
		x := GeometricFactorOuter(d, a.OuterDiameter, e.outer.Poisson.Value)
		e.step("guide.x_n", "X_N", x, "1", "X_N = 0.62 sqrt((do/d - 1)/(do/d + 1))/(((do/d)^2 + 1)/((do/d)^2 - 1) + nu)", sourceGuide+", p. 21", MarkMemory,
			"0.62*sqrt((%[1]s/%[2]s - 1)/(%[1]s/%[2]s + 1))/(((%[1]s/%[2]s)^2 + 1)/((%[1]s/%[2]s)^2 - 1) + %[3]s)", a.OuterDiameter, d, e.outer.Poisson.Value)
		ro = e.guideRatio("o", a.outerTube(e.outer), a.OuterDiameter, d, true, d, x)
	}
	if a.Split != "inner" {
		x := GeometricFactorInner(d, a.InnerDiameter, e.inner.Poisson.Value)
		e.step("guide.x_w", "X_W", x, "1", "X_W = 0.62 sqrt((d - di)/(d + di))/((d^2 + di^2)/(d^2 - di^2) - nu)", sourceGuide+", p. 22", MarkRead,
			"0.62*sqrt((%[1]s - %[2]s)/(%[1]s + %[2]s))/((%[1]s^2 + %[2]s^2)/(%[1]s^2 - %[2]s^2) - %[3]s)", d, a.InnerDiameter, e.inner.Poisson.Value)
		ri = e.guideRatio("i", a.innerTube(e.inner), d, a.InnerDiameter, false, d, x)
	}
	r := a.guideRatio(e.outer, e.inner, ko, ki)
	e.step("guide.ratio", "r", r, "1", "governing stiffness over the guide's, in series: (r_o/K_o + r_i/K_i)/(1/K_o + 1/K_i)", "own", MarkOwn, "(%s/%s + %s/%s)/(1/%s + 1/%s)", ro, ko, ri, ki, ko, ki)
	e.step("guide.force", "W_guide", e.s.load*e.s.factor/r, "N", "the guide's mating force, y read as diametral: cross-check, not the design force", sourceGuide+", p. 21-22", MarkMemory, "%s*%s/%s", e.s.load, e.s.factor, r)
}

// guideRatio explains one member's stiffness over the guide's.
func (e *explainer) guideRatio(side string, t Tube, outer, bore float64, isOuter bool, d, x float64) float64 {
	r, r0, r1, u := GuideRatio(t, outer, bore, isOuter, d, x)
	near := 2 * GuideTransverse(1, d, t.Modulus, x)
	sub := "_" + side
	e.step("guide.near", "K_G"+sub, near, "N/mm", "K = 2 d E X: P = y d E X per radial movement, y diametral, joint at the end", sourceGuide+", p. 21", MarkMemory, "2*%s*%s*%s", d, t.Modulus, x)
	e.step("guide.end", "r0"+sub, r0, "1", "K at the end over K_G", "own", MarkOwn, "%s/%s", r0*near, near)
	e.step("guide.remote", "r1"+sub, r1, "1", "K remote over 3 K_G", sourceGuide+", p. 22", MarkRead, "%s/(3*%s)", r1*GuideRemoteFactor*near, near)
	e.step("guide.place", "u"+sub, u, "1", "u = distance/(1.8 sqrt(d t)), up to 1", sourceGuide+", p. 22", MarkRead, "%s", u)
	e.step("guide.between", "r"+sub, r, "1", "r = r0^(1-u) r1^u", "common practice", MarkPractice, "%s^(1 - %s)*%s^%s", r0, u, r1, u)
	return r
}

func (e *explainer) ball(b *Ball) {
	d, r := b.MouthDiameter, b.BallDiameter/2
	l := e.p.lip
	e.size("D", b.BallDiameter, "ball diameter")
	e.size("d", d, "mouth diameter")
	e.size("do", b.OuterDiameter, "outer diameter of the socket at its mouth")
	modulus := e.modulus("s", e.outer)
	phi0 := BallContactAngle(d, b.BallDiameter)
	e.step("ball.contact", "phi0", phi0*degree, "deg", "phi0 = acos(d/D), the lead angle at first contact with the lip", sourceGeometry, MarkOwn, "acos(%s/%s)", d, b.BallDiameter)
	e.step("ball.stroke", "z0", BallStroke(d, b.BallDiameter), "mm", "z0 = sqrt(D^2 - d^2)/2, from there to the equator", sourceGeometry, MarkOwn, "sqrt(%s^2 - %s^2)/2", b.BallDiameter, d)
	k := e.tube("s", b.mouth(e.outer), b.OuterDiameter, d, true)
	if b.Slots > 0 {
		k = e.slots(b.fingers(), &e.j.outer, modulus)
	}
	e.step("ring.opening", "w", e.s.move, "mm", "w = (D - d)/2, the largest opening", sourceGeometry, MarkOwn, "(%s - %s)/2", b.BallDiameter, d)
	e.series(k, 0)
	e.strains(d)
	if b.Slots > 0 && e.j.outer.law == armWall {
		f := b.fingers()
		e.step("finger.strain", "eps_o", e.s.outerStrain, "1", "eps = 3 c w/a^2", sourceBeam, MarkMemory, "3*%s*%s/%s^2", f.tensile(), e.s.move, f.reach)
	}
	if e.j.outer.zero > 0 {
		e.step("ball.load", "K2", l.b, "N/mm^2", "load over opening as K w - K2 w^2 through the largest one", "own", MarkOwn, "(%s*%s - %s)/%s^2", l.a, e.s.move, e.s.load, e.s.move)
	}
	f, lift := l.peak(e.j.lipRange(&l))
	z := lift - l.zero
	phi := math.Asin(z/r) * degree
	if b.coned() {
		first, hand := ConeContact(d, b.BallDiameter, e.j.alpha)
		ac := e.j.alpha * degree
		e.angle("ac", e.j.alpha, "half-angle of the entry cone")
		e.step("ball.cone", "z1", first, "mm", "z1 = (R/cos ac - d/2)/tan ac, first contact with the cone", sourceGeometry, MarkOwn, "(%s/cos(%s) - %s/2)/tan(%s)", r, ac, d, ac)
		e.step("ball.hand", "z2", hand, "mm", "z2 = R sin ac, from the cone to the lip", sourceGeometry, MarkOwn, "%s*sin(%s)", r, ac)
		e.flank(e.j.alpha)
	}
	e.step("ball.peak", "phi", phi, "deg", "latitude of the largest force on the lip: d/dphi [(K w - K2 w^2) tan(phi + rho)] = 0, w = R cos phi - d/2", "own", MarkOwn, "")
	open := r*math.Cos(phi/degree) - d/2
	e.step("ball.opening", "w_p", open, "mm", "w = R cos phi - d/2", sourceGeometry, MarkOwn, "%s*cos(%s) - %s/2", r, phi, d)
	e.step("ball.force", "W", f, "N", "W = (K w - K2 w^2) tan(phi + rho)", "own; flank: "+sourceGuide+", p. 14", MarkOwn, "(%s*%s - %s*%s^2)*tan(%s + atan(%s))", l.a, open, l.b, open, phi, e.mu)
	if pull, locked := e.j.separation(e.mu, e.s); !locked {
		e.step("ball.separation", "W'", pull, "N", "a sharp lip: the pull out is the push in, without the cone", "own", MarkOwn, "%s", pull)
	}
}
