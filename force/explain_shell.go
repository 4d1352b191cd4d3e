package force

import "math"

// tube explains the stiffness and the lever of one member of a ring joint.
func (e *explainer) tube(side string, t Tube, outer, bore float64, isOuter bool) (k, lever float64) {
	s := newStrip(t, true)
	sub := "_" + side
	e.step("ring.radius", "R"+sub, t.Radius, "mm", "R = (D1 + D2)/4", sourceGeometry, MarkOwn, "(%s + %s)/4", outer, bore)
	e.step("ring.wall", "t"+sub, t.Wall, "mm", "t = (D1 - D2)/2", sourceGeometry, MarkOwn, "(%s - %s)/2", outer, bore)
	e.exact = true
	e.step("shell.beta", "beta"+sub, s.beta, "1/mm", "beta = (3 (1 - nu^2))^(1/4)/sqrt(R t)",
		"Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells", MarkMemory,
		"(3*(1 - %s^2))^0.25/sqrt(%s*%s)", t.Poisson, t.Radius, t.Wall)
	e.step("shell.foundation", "k/E"+sub, s.k, "1/mm", "k/E = t/R^2", sourceShell, MarkMemory, "%s/%s^2", t.Wall, t.Radius)
	e.step("shell.bending", "D/E"+sub, s.d, "mm^3", "D/E = t^3/(12 (1 - nu^2))", sourceShell, MarkMemory, "%s^3/(12*(1 - %s^2))", t.Wall,
		t.Poisson)
	share := s.d * s.beta * s.beta * s.invS
	if full := s.d * s.beta * s.beta * 2 * (1 + t.Poisson) / (t.Wall * 5 / 6); full < mostShear {
		e.step("shell.shear", "s"+sub, share, "1", "s = D beta^2/S, S = (5/6) t E/(2 (1 + nu))", sourceShell, MarkMemory,
			"%[1]s*%[2]s^2*2*(1 + %[3]s)/(%[4]s*5/6)", s.d, s.beta, t.Poisson, t.Wall)
	} else {
		e.step("shell.shear", "s"+sub, share, "1", "s = 0.95: D beta^2/S is above it, the wall too thick for a shell", "own", MarkOwn, "%s",
			share)
	}
	e.step("shell.alpha", "alpha"+sub, s.alpha, "1/mm", "alpha = beta sqrt(1 + s)", sourceShell, MarkMemory, "%s*sqrt(1 + %s)", s.beta, share)
	e.step("shell.gamma", "gamma"+sub, s.gamma, "1/mm", "gamma = beta sqrt(1 - s)", sourceShell, MarkMemory, "%s*sqrt(1 - %s)", s.beta, share)
	e.step("shell.inverse", "E/S"+sub, s.invS, "1/mm", "E/S = s/(beta^2 D/E)", sourceShell, MarkMemory, "%s/(%s^2*%s)", share, s.beta, s.d)
	mouth, beyond := s.sides(t)
	e.length(s, "1"+sub, max(0, t.Mouth-t.Band/2), Free, mouth)
	e.length(s, "2"+sub, max(0, t.Beyond-t.Band/2), t.Far, beyond)
	j := s.under(t, mouth, beyond)
	if s.narrow(t.Band) {
		e.line(s, sub, mouth, beyond, j)
	} else {
		e.spread(s, sub, t, mouth, beyond)
	}
	if endless := t.bareSlope(j); endless < j.slope {
		e.step("shell.slope_endless", "sigma"+sub, endless, "1/mm",
			"sigma of an endless wall, the same with an endless length beyond: a short ring stands on its end", "own", MarkOwn, "%s", endless)
	}
	e.exact = false
	return e.ring(sub, t, j, outer, bore, isOuter)
}

// line explains a wall under a load on a line.
func (e *explainer) line(s strip, sub string, mouth, beyond length, j joined) {
	e.step("shell.slope", "sigma"+sub, j.slope, "1/mm", "sigma = (B2 - B1)/(C1 + C2), slope of the wall at the load per movement", sourceShell,
		MarkMemory, "(%s - %s)/(%s + %s)", beyond.b, mouth.b, mouth.c, beyond.c)
	e.step("shell.band", "b"+sub, j.width, "mm", "b = (A1 + A2 - (B2 - B1) sigma) E/k", sourceShell, MarkMemory, "(%s + %s - (%s - %s)*%s)/%s",
		mouth.a, beyond.a, beyond.b, mouth.b, j.slope, s.k)
	e.step("shell.beyond", "phi"+sub, j.beyond, "1", "phi = (A2 - B2 sigma + V2 - Y2 sigma)/(b k/E), share of the load that the wall beyond carries; V2, Y2: what a floor takes", "own", MarkOwn,
		"(%s - %s*%s + %s - %s*%s)/(%s*%s)", beyond.a, beyond.b, j.slope, beyond.held, beyond.heldPsi, j.slope, j.width, s.k)
}

// ring explains stiffness and lever by the width of the band.
func (e *explainer) ring(sub string, t Tube, j joined, outer, bore float64, isOuter bool) (k, lever float64) {
	w := lameRatio(outer, bore)
	e.step("lame.ratio", "W"+sub, w, "1", "W = (D1^2 + D2^2)/(D1^2 - D2^2)", sourceLame, MarkMemory, "(%[1]s^2 + %[2]s^2)/(%[1]s^2 - %[2]s^2)",
		outer, bore)
	k, lever = RingStiffness(t, outer, bore, isOuter), RingLever(t, outer, bore, isOuter)
	area := math.Pi / 4 * (outer*outer - bore*bore)
	radius, sign, plain := outer/2, "+", "-"
	if isOuter {
		radius, sign, plain = bore/2, "-", "+"
	}
	give := 0.0
	if t.Band > 0 {
		give = t.LocalGive()
		e.localGive(sub, t, give)
	}
	e.step("ring.stiffness", "K"+sub, k, "N/mm", "K = 2 pi E/[(W "+plain+" nu)/b + C/r], radial; r: joint radius",
		"Lame's ring over the shell's band", MarkOwn, "2*pi*%s/((%s "+plain+" %s)/%s + %s/%s)", t.Modulus, w, t.Poisson, j.width, give, radius)
	e.step("ring.section", "A"+sub, area, "mm^2", "A = pi (D1^2 - D2^2)/4", sourceGeometry, MarkOwn, "pi*(%s^2 - %s^2)/4", outer, bore)
	slope, share := t.bareSlope(j), 1.0
	if t.Band > 0 && slope > 0 {
		share = t.leverShare(isOuter)
		c := 0.65
		if isOuter {
			c = 0.3
		}
		e.step("contact.share", "m"+sub, share, "1", "m = 1/(1 + 0.65 c t/R^2), of an outer member 0.3: share of the slope that counts under a wide band", "own, finite elements", MarkOwn, "1/(1 + %s*%s*%s/%s^2)", c, t.Band, t.Wall, t.Radius)
	}
	e.step("contact.ring", "kappa"+sub, lever, "1", "kappa = m sigma t/2 "+sign+" nu K r phi/(E A), lever of the axial part of the contact force; r: joint radius; m = 1 for a slope below 0", "own", MarkOwn,
		"%s*%s*%s/2 "+sign+" %s*%s*%s*%s/(%s*%s)", share, slope, t.Wall, t.Poisson, k, radius, j.beyond, t.Modulus, area)
	return k, lever
}

// length explains the stiffness of a length of wall; which is 1 to the mouth, 2
// beyond the load.
func (e *explainer) length(s strip, which string, x float64, end FarEnd, l length) {
	const text = "force, coupling and moment over E to move and turn the wall at the load"
	row := func(id, formula, na, nb, nc string, vals ...float64) {
		e.step(id, "A"+which, l.a, "1", "A: "+formula+"; "+text, sourceShell, MarkMemory, na, vals...)
		e.step(id, "B"+which, l.b, "mm", "B: "+formula, sourceShell, MarkMemory, nb, vals...)
		e.step(id, "C"+which, l.c, "mm^2", "C: "+formula, sourceShell, MarkMemory, nc, vals...)
	}
	switch {
	case end == Long || s.beta*x > longLength:
		row("shell.endless", "endless wall: A = k alpha/m, B = 2 beta^4 D/m, C = 2 alpha beta^2 D/m, m = 2 alpha^2 - beta^2",
			"%[1]s*%[2]s/(2*%[2]s^2 - %[3]s^2)", "2*%[3]s^4*%[4]s/(2*%[2]s^2 - %[3]s^2)", "2*%[2]s*%[3]s^2*%[4]s/(2*%[2]s^2 - %[3]s^2)", s.k, s.alpha, s.beta, s.d)
		return
	case s.beta*x < stubLength && end == Free:
		row("shell.stub", "a stub of wall: A = k x, B = k x^2/2, C = k x^3/3", "%[1]s*%[2]s", "%[1]s*%[2]s^2/2", "%[1]s*%[2]s^3/3", s.k, x)
		return
	}
	x = max(x, stubLength/s.beta)
	decay, c := e.decay(s, which, x)
	c0, c1, c2, c3, g0, g1 := c[0], c[1], c[2], c[3], c[4], c[5]
	kd := s.k / s.d
	if end == Free {
		det := c0*g0 + c3*g1*kd
		decay("n", det, "1", "n = c0 g0 + c3 g1 k/D", "%s*%s + %s*%s*%s/%s", c0, g0, c3, g1, s.k, s.d)
		row("shell.free", "free end: A = k (c0 g1 + c2 c3 k/D)/n, B = k (c0 c2 + c3^2 k/D)/n, C = k (c2 g1 - c3 g0)/n",
			"%[1]s*(%[3]s*%[8]s + %[5]s*%[6]s*%[1]s/%[2]s)/%[9]s", "%[1]s*(%[3]s*%[5]s + %[6]s^2*%[1]s/%[2]s)/%[9]s",
			"%[1]s*(%[5]s*%[8]s - %[6]s*%[7]s)/%[9]s",
			s.k, s.d, c0, c1, c2, c3, g0, g1, det)
		return
	}
	h := c1*s.invS + c3*(s.k*s.invS*s.invS-1/s.d)
	det := (c2*c2/s.d + c1*h) / s.d
	decay("h", h, "1", "h = c1/S + c3 (k/S^2 - 1/D)", "%[1]s*%[2]s + %[3]s*(%[4]s*%[2]s^2 - 1/%[5]s)", c1, s.invS, c3, s.k, s.d)
	decay("n", det, "1", "n = (c2^2/D + c1 h)/D", "(%[1]s^2/%[2]s + %[3]s*%[4]s)/%[2]s", c2, s.d, c1, h)
	row("shell.floor", "floor: A = (c1 g0 + c2 c3 k/D)/(D n), B = (c1 g1 - c0 c2)/(D n), C = (c0 h + c2 g1/D)/n",
		"(%[4]s*%[7]s + %[5]s*%[6]s*%[1]s/%[2]s)/(%[2]s*%[9]s)", "(%[4]s*%[8]s - %[3]s*%[5]s)/(%[2]s*%[9]s)",
		"(%[3]s*%[10]s + %[5]s*%[8]s/%[2]s)/%[9]s",
		s.k, s.d, c0, c1, c2, c3, g0, g1, det, h)
	decay("V", l.held, "1", "V = k g1 - k c3 B/D - g0 A, what the floor takes by movement",
		"%[1]s*%[2]s - %[1]s*%[3]s*%[4]s/%[5]s - %[6]s*%[7]s", s.k, g1, c3, l.b, s.d, g0, l.a)
	decay("Y", l.heldPsi, "mm", "Y = k c2 - k c3 C/D - g0 B, by rotation", "%[1]s*%[2]s - %[1]s*%[3]s*%[4]s/%[5]s - %[6]s*%[7]s", s.k, c2, c3,
		l.c, s.d, g0, l.b)
}

// decay explains the coefficients of a length of wall, and gives how to add to them.
func (e *explainer) decay(s strip, which string, x float64) (add func(symbol string, v float64, unit, formula, numbers string,
	vals ...float64), c [6]float64) {
	c0, c1, c2, c3 := s.decay(x)
	add = func(symbol string, v float64, unit, formula, numbers string, vals ...float64) {
		e.step("shell.decay", symbol+which, v, unit, formula, "transfer matrix of "+sourceShell, MarkMemory, numbers, vals...)
	}
	add("c2", c2, "mm^2", "c2 = sinh(alpha x) sin(gamma x)/(2 alpha gamma), x: length of wall",
		"sinh(%[1]s*%[3]s)*sin(%[2]s*%[3]s*180/pi)/(2*%[1]s*%[2]s)", s.alpha, s.gamma, x)
	add("c0", c0, "1", "c0 = cosh(alpha x) cos(gamma x) - c2 k/(2 S)", "cosh(%[1]s*%[3]s)*cos(%[2]s*%[3]s*180/pi) - %[4]s*%[5]s*%[6]s/2",
		s.alpha, s.gamma, x, c2, s.k, s.invS)
	add("c3", c3, "mm^3", "c3 = (alpha cosh(alpha x) sin(gamma x) - gamma sinh(alpha x) cos(gamma x))/(4 alpha gamma beta^2)",
		"(%[1]s*cosh(%[1]s*%[3]s)*sin(%[2]s*%[3]s*180/pi) - %[2]s*sinh(%[1]s*%[3]s)*cos(%[2]s*%[3]s*180/pi))/(4*%[1]s*%[2]s*%[4]s^2)", s.alpha, s.gamma, x, s.beta)
	add("c1", c1, "mm", "c1 = (alpha sinh(alpha x) cos(gamma x) + gamma cosh(alpha x) sin(gamma x))/(2 beta^2) - c3 k/(2 S)",
		"(%[1]s*sinh(%[1]s*%[3]s)*cos(%[2]s*%[3]s*180/pi) + %[2]s*cosh(%[1]s*%[3]s)*sin(%[2]s*%[3]s*180/pi))/(2*%[4]s^2) - %[5]s*%[6]s*%[7]s/2", s.alpha, s.gamma, x, s.beta, c3, s.k, s.invS)
	g0, g1 := c0+c2*s.k*s.invS, c1+c3*s.k*s.invS
	add("g0", g0, "1", "g0 = c0 + c2 k/S", "%s + %s*%s*%s", c0, c2, s.k, s.invS)
	add("g1", g1, "mm", "g1 = c1 + c3 k/S", "%s + %s*%s*%s", c1, c3, s.k, s.invS)
	return add, [6]float64{c0, c1, c2, c3, g0, g1}
}
