package force

import "math"

// slots explains a ring cut into fingers.
func (e *explainer) slots(f fingers, m *member, modulus, ring float64) (k, lever float64) {
	s := f.section()
	phi := f.arc() / 2 * degree
	e.step("finger.arc", "phi", phi, "deg", "phi = 180/n - slot/(2 R) in degrees, half the angle of a finger", sourceGeometry, MarkOwn,
		"180/%s - %s/(%s + %s)*180/pi", float64(f.count), f.slot, f.inner, f.outer)
	tensile := e.sector(f.inner, f.outer, phi, s, f.outward)
	k = FingerStiffness(f.count, modulus, s.Inertia, f.reach)
	e.step("finger.stiffness", "K_fingers", k, "N/mm", "K = n 3 E I/a^3", sourceBeam, MarkMemory, "%s*3*%s*%s/%s^3", float64(f.count), modulus,
		s.Inertia, f.reach)
	if m.law != armWall {
		e.step("finger.ring", "K", m.stiffness, "N/mm", "the closed ring gives sooner: its stiffness counts", "own", MarkOwn, "%s", m.stiffness)
		return m.stiffness, ring
	}
	w := e.s.move
	e.step("contact.arm", "kappa_f", f.lever(w), "1", "kappa = 1.5 c/a + 0.3 w/a, lever of the axial part of the contact force", "own",
		MarkOwn, "1.5*%[1]s/%[2]s + 0.3*%[3]s/%[2]s", tensile, f.reach, w)
	return k, f.lever(w)
}

// sector explains the section of a finger; phi: half its angle [deg].
func (e *explainer) sector(inner, outer, phi float64, s Section, outward bool) (tensile float64) {
	e.exact = true
	defer func() { e.exact = false }()
	xc := outer - s.Outer
	e.step("sector.area", "A", s.Area, "mm^2", "A = phi (R^2 - r^2)", "annular sector", MarkOwn, "%s*pi/180*(%s^2 - %s^2)", phi, outer, inner)
	e.step("sector.centroid", "xc", xc, "mm", "xc = 2 sin(phi) (R^3 - r^3)/(3 A)", "annular sector", MarkOwn, "2*sin(%s)*(%s^3 - %s^3)/(3*%s)",
		phi, outer, inner, s.Area)
	e.step("sector.inertia", "I", s.Inertia, "mm^4", "I = (R^4 - r^4)(phi + sin phi cos phi)/4 - A xc^2", "annular sector", MarkOwn,
		"(%[1]s^4 - %[2]s^4)*(%[3]s*pi/180 + sin(%[3]s)*cos(%[3]s))/4 - %[4]s*%[5]s^2", outer, inner, phi, s.Area, xc)
	if outward {
		e.step("sector.face", "c", s.Inner, "mm", "c = xc - r cos(phi), the bore in tension", "annular sector", MarkOwn, "%s - %s*cos(%s)", xc,
			inner, phi)
		return s.Inner
	}
	e.step("sector.face", "c", s.Outer, "mm", "c = R - xc, the outside in tension", "annular sector", MarkOwn, "%s - %s", outer, xc)
	return s.Outer
}

func (a Annular) explain(e *explainer) {
	d := a.JointDiameter
	e.size("d", d, "joint diameter")
	sz := a.sizing(e.outer, e.inner)
	e.size("y", sz.drawn(), "undercut, diametral")
	e.size("do", a.OuterDiameter, "outer diameter of the outer part")
	e.size("di", a.InnerDiameter, "bore of the inner part")
	e.angle("alpha", a.MatingAngle, "mating angle")
	e.angle("alpha'", a.ReturnAngle, "return angle")
	e.size("land", a.Land, "flat crest")
	e.bead(a)
	y := e.made("y", sz, nil, 1)
	eo, ei := e.modulus("o", e.outer), e.modulus("i", e.inner)
	to, ti := a.outerTube(e.outer), a.innerTube(e.inner)
	e.step("ring.opening", "w", e.s.move, "mm", "w = "+y+"/2, both members together", sourceGeometry, MarkOwn, "%s/2", e.j.size)
	ko, lo := e.tube("o", to, a.OuterDiameter, d, true)
	ki, li := e.tube("i", ti, d, a.InnerDiameter, false)
	if f := a.fingers(); a.Split == "outer" {
		ko, lo = e.slots(f, &e.j.outer, eo, lo)
	} else if a.Split == "inner" {
		ki, li = e.slots(f, &e.j.inner, ei, li)
	}
	e.series(ko, ki, "N")
	e.strains(d)
	lo, li = max(0, lo), max(0, li)
	e.step("contact.series", "kappa", e.j.lever, "1", "kappa = (kappa_o/K_o + kappa_i/K_i)/(1/K_o + 1/K_i), either not below 0", "own",
		MarkOwn, "(%[1]s/%[3]s + %[2]s/%[4]s)/(1/%[3]s + 1/%[4]s)", lo, li, ko, ki)
	if f := a.fingers(); a.Split == "outer" && e.j.outer.law == armWall {
		e.step("finger.strain", "eps_o", e.s.outerStrain, "1", "eps = 3 c w_o/a^2", sourceBeam, MarkMemory, "3*%s*%s/%s^2", f.tensile(),
			e.s.outerMove, f.reach)
	} else if a.Split == "inner" && e.j.inner.law == armWall {
		e.step("finger.strain", "eps_i", e.s.innerStrain, "1", "eps = 3 c w_i/a^2", sourceBeam, MarkMemory, "3*%s*(%s - %s)/%s^2", f.tensile(),
			e.s.move, e.s.outerMove, f.reach)
	}
	lead := e.levered("F", e.flank("f", a.MatingAngle))
	land := 0.0
	if a.Land > 0 {
		land = e.levered("F_land", e.mu)
	}
	e.crest(lead, land, a.Land)
	e.tilted(a)
	s, p := e.s, e.p
	if !e.holding() {
		if e.j.hold != 0 {
			e.series(ko, ki, "N")
		}
		e.separation()
	}
	e.s, e.p = s, p
	e.guide(a, ko, ki)
}

// bead explains how wide it bears on either member.
func (e *explainer) bead(a Annular) {
	wide := a.beadWidth()
	cot := 1 / math.Tan(a.MatingAngle)
	e.step("ring.bead", "c", wide, "mm", "c = land + (y/4) (cot alpha + cot alpha'), width of the bead halfway up its flanks", sourceGeometry,
		MarkOwn, "%s + %s/4*(%s + %s)", a.Land, e.j.drawn, cot, max(0, 1/math.Tan(a.ReturnAngle)))
	for _, m := range []struct {
		side string
		t    Tube
		line Tube
	}{{"o", a.outerTube(e.outer), a.outerLine(e.outer)}, {"i", a.innerTube(e.inner), a.innerLine(e.inner)}} {
		band, least, short := "%[1]s", min(m.t.Wall/2, 0.4*m.t.Radius), (m.line.Mouth+m.line.Beyond)/2
		switch m.t.Band {
		case least:
			band = "%[2]s"
		case short:
			band = "%[3]s"
		}
		e.step("ring.bears", "c_"+m.side, m.t.Band, "mm",
			"c, but not below t/2 nor, in a thick wall, 0.4 R: a sharp bead's own give is not credited; at most half of a short ring", "own", MarkOwn, band, wide, least, short)
	}
}

// tilted explains the force of a hand that rolls the ring in from one edge.
func (e *explainer) tilted(a Annular) {
	if !a.tiltable() || e.s.jam {
		return
	}
	curve := sumCurve([]profile{e.p}, []int{1})
	together, far := TiltedEntry(curve)
	peak, _ := curve.Peak()
	e.step("tilt.together", "tau", together, "1", "tau = max over Z of (1/2 pi) Int F(Z x) dphi/W, x = (1 - cos phi)/2: rolled in from one edge, both hands, over the straight force; by hand only", "own model; the guide, p. 23, says far smaller and gives no figure", MarkOwn, "%s", together)
	e.step("tilt.far", "tau_H", far, "1", "tau_H the same of F(Z x) x: the hand at the far edge alone", "own model", MarkOwn, "%s", far)
	e.step("tilt.force", "W_tilt", together*peak, "N", "W_tilt = tau W, both hands, one ring alone and nothing that guides it straight",
		"own model", MarkOwn, "%s*%s", together, peak)
}

// guide sets the published figure beside the governing one.
func (e *explainer) guide(a Annular, ko, ki float64) {
	d := a.JointDiameter
	ro, ri := 1.0, 1.0
	if a.Split != "outer" {
		x := GeometricFactorOuter(d, a.OuterDiameter, e.outer.Poisson.Value)
		e.step("guide.x_n", "X_N", x, "1", "X_N = 0.62 sqrt((do/d - 1)/(do/d + 1))/(((do/d)^2 + 1)/((do/d)^2 - 1) + nu)", sourceGuide+", p. 21",
			MarkRead,
			"0.62*sqrt((%[1]s/%[2]s - 1)/(%[1]s/%[2]s + 1))/(((%[1]s/%[2]s)^2 + 1)/((%[1]s/%[2]s)^2 - 1) + %[3]s)", a.OuterDiameter, d, e.outer.Poisson.Value)
		ro = e.guideRatio("o", a.outerLine(e.outer), a.OuterDiameter, d, true, d, x)
	}
	if a.Split != "inner" {
		x := GeometricFactorInner(d, a.InnerDiameter, e.inner.Poisson.Value)
		e.step("guide.x_w", "X_W", x, "1", "X_W = 0.62 sqrt((d - di)/(d + di))/((d^2 + di^2)/(d^2 - di^2) - nu)", sourceGuide+", p. 22", MarkRead,
			"0.62*sqrt((%[1]s - %[2]s)/(%[1]s + %[2]s))/((%[1]s^2 + %[2]s^2)/(%[1]s^2 - %[2]s^2) - %[3]s)", d, a.InnerDiameter, e.inner.Poisson.Value)
		ri = e.guideRatio("i", a.innerLine(e.inner), d, a.InnerDiameter, false, d, x)
	}
	lo, li := ko, ki
	if a.Split != "outer" {
		lo = e.lineStiffness("o", a.outerLine(e.outer), a.OuterDiameter, d, true)
	}
	if a.Split != "inner" {
		li = e.lineStiffness("i", a.innerLine(e.inner), d, a.InnerDiameter, false)
	}
	r := a.guideRatio(e.outer, e.inner, ko, ki)
	e.step("guide.ratio", "r", r, "1", "governing stiffness over the guide's, in series: (r_o/K_l_o + r_i/K_l_i)/(1/K_o + 1/K_i); of a slotted member K_l = K", "own", MarkOwn, "(%s/%s + %s/%s)/(1/%s + 1/%s)", ro, lo, ri, li, ko, ki)
	f, _ := MatingFactor(e.mu, a.MatingAngle)
	e.step("guide.force", "W_guide", e.s.load*f/r, "N",
		"W = P f/r, the guide's mating force, y read as diametral: cross-check, not the design force", sourceGuide+", p. 21-22", MarkRead, "%s*%s/%s", e.s.load, f, r)
}

// lineStiffness explains what a member would resist to a load on a line.
func (e *explainer) lineStiffness(side string, t Tube, outer, bore float64, isOuter bool) float64 {
	k, nu := RingStiffness(t, outer, bore, isOuter), t.Poisson
	if !isOuter {
		nu = -nu
	}
	e.step("guide.line", "K_l_"+side, k, "N/mm", "K = 2 pi E b/(W +- nu), b of a load on a line, as the guide has it",
		"Lame's ring over the shell's band", MarkOwn, "2*pi*%s*%s/(%s + %s)", t.Modulus, t.BandWidth(), lameRatio(outer, bore), nu)
	return k
}

// guideRatio explains one member's stiffness over the guide's.
func (e *explainer) guideRatio(side string, t Tube, outer, bore float64, isOuter bool, d, x float64) float64 {
	r, r0, r1, u := GuideRatio(t, outer, bore, isOuter, d, x)
	near := 2 * GuideTransverse(1, d, t.Modulus, x)
	sub := "_" + side
	e.step("guide.near", "K_G"+sub, near, "N/mm", "K = 2 d E X: P = y d E X per radial movement, y diametral, joint at the end",
		sourceGuide+", p. 21", MarkRead, "2*%s*%s*%s", d, t.Modulus, x)
	s, w, nu := newStrip(t, true), lameRatio(outer, bore), t.Poisson
	if !isOuter {
		nu = -nu
	}
	e.step("guide.end", "r0"+sub, r0, "1", "r0 = [2 pi E b/(W +- nu)]/K_G, b = 1/(2 alpha) at the end of a long tube", "own", MarkOwn,
		"2*pi*%s/(2*%s)/(%s + %s)/%s", t.Modulus, s.alpha, w, nu, near)
	e.step("guide.remote", "r1"+sub, r1, "1", "r1 = [2 pi E b/(W +- nu)]/(3 K_G), b = 2 alpha/(2 alpha^2 - beta^2) far from both ends",
		sourceGuide+", p. 22, for the 3", MarkRead, "2*pi*%s*2*%[2]s/(2*%[2]s^2 - %[3]s^2)/(%[4]s + %[5]s)/(3*%[6]s)", t.Modulus, s.alpha, s.beta, w, nu, near)
	if place := t.Mouth / GuideRemoteDistance(d, t.Wall); place < 1 {
		e.step("guide.place", "u"+sub, u, "1", "u = x/(1.8 sqrt(d t)), up to 1; x: distance from the end", sourceGuide+", p. 22", MarkRead,
			"%s/(1.8*sqrt(%s*%s))", t.Mouth, d, t.Wall)
	} else {
		e.step("guide.place", "u"+sub, u, "1", "u = 1: remote, x of 1.8 sqrt(d t) or more", sourceGuide+", p. 22", MarkRead, "1")
	}
	e.step("guide.between", "r"+sub, r, "1", "r = r0^(1-u) r1^u", "common practice", MarkPractice, "%s^(1 - %s)*%s^%s", r0, u, r1, u)
	return r
}

// strains explains the strain of both members of a ring.
func (e *explainer) strains(d float64) {
	if e.j.outer.law == ringWall {
		e.step("ring.strain", "eps_o", e.s.outerStrain, "1", "eps = 2 w_o/d", sourceGuide+", p. 20, as y/d", MarkRead, "2*%s/%s", e.s.outerMove,
			d)
	}
	e.exact = true // a small rest of the movement
	defer func() { e.exact = false }()
	if e.j.inner.stiffness > 0 && e.j.inner.law == ringWall {
		e.step("ring.strain", "eps_i", e.s.innerStrain, "1", "eps = 2 (w - w_o)/d", sourceGuide+", p. 20, as y/d", MarkRead, "2*(%s - %s)/%s",
			e.s.move, e.s.outerMove, d)
	}
}
