package force

// spread explains a wall under a load that is spread over a band.
func (e *explainer) spread(s strip, sub string, t Tube, mouth, beyond length) {
	j, c := s.spread(mouth, beyond, t.Band)
	which := "b" + sub
	_, co := e.decay(s, which, c.along)
	c0, c1, c2, c3, g0, g1, h := co[0], co[1], co[2], co[3], co[4], co[5], c.coefficients[6]
	row := func(symbol string, v float64, unit, formula, numbers string, vals ...float64) {
		e.step("shell.spread", symbol, v, unit, formula, "transfer matrix of "+sourceShell, MarkMemory, numbers, vals...)
	}
	row("h"+which, h, "1", "h = c1/S + c3 (k/S^2 - 1/D)", "%[1]s*%[2]s + %[3]s*(%[4]s*%[2]s^2 - 1/%[5]s)", c1, s.invS, c3, s.k, s.d)
	row("p"+sub, c.p, "mm", "p = E/(k c), movement of a band c wide that carries itself", "1/(%s*%s)", s.k, c.along)
	edge := func(symbol, what, word string, v [4]float64, mb, ma float64) {
		// Per unit at edge 1 with moment mb and shear ma there.
		first := [4][2]string{{"g0", "g1"}, {"-c3 k/D", "c0"}, {"c2 k", "c3 k"}, {"k g1", "k c2"}}
		lead := [4][2]float64{{g0, g1}, {-c3 * s.k / s.d, c0}, {c2 * s.k, c3 * s.k}, {s.k * g1, s.k * c2}}
		byM := [4]float64{-c2 / s.d, -c1 / s.d, c0, -c3 * s.k / s.d}
		byV := [4]float64{h, -c2 / s.d, g1, g0}
		i := 0
		if symbol == "y" {
			i = 1
		}
		units := [4][2]string{{"1", "mm"}, {"1/mm", "1"}, {"mm", "mm^2"}, {"1", "mm"}}
		for k, name := range [4]string{"movement", "rotation", "moment", "shear"} {
			row(symbol+[4]string{"w", "p", "m", "v"}[k]+sub, v[k], units[k][i],
				name+" at edge 2 by "+what+" of edge 1: "+first[k][i]+word+[4]string{"-c2/D, h", "-c1/D, -c2/D", "c0, g1", "-c3 k/D, g0"}[k],
				"%s + %s*%s + %s*%s", lead[k][i], byM[k], mb, byV[k], ma)
		}
	}
	edge("x", "movement", " + B1, A1 times ", c.byW, mouth.b, mouth.a)
	edge("y", "rotation", " - C1, B1 times ", c.byPsi, -mouth.c, -mouth.b)
	x, y := c.byW, c.byPsi
	row("a1"+sub, c.a1, "mm", "a1 = xm - B2 xw - C2 xp, moments at edge 2 in balance: a1 w1 + a2 psi1 = q p", "%s - %s*%s - %s*%s", x[2],
		beyond.b, x[0], beyond.c, x[1])
	row("a2"+sub, c.a2, "mm^2", "a2 = ym - B2 yw - C2 yp", "%s - %s*%s - %s*%s", y[2], beyond.b, y[0], beyond.c, y[1])
	row("q"+sub, c.q, "mm", "q = c2 k - B2 (g0 - 1) + C2 c3 k/D", "%s*%s - %s*(%s - 1) + %s*%s*%s/%s", c2, s.k, beyond.b, g0, beyond.c, c3,
		s.k, s.d)
	row("b1"+sub, c.b1, "1", "b1 = xv + A2 xw + B2 xp, forces in balance: b1 w1 + b2 psi1 = r p", "%s + %s*%s + %s*%s", x[3], beyond.a, x[0],
		beyond.b, x[1])
	row("b2"+sub, c.b2, "mm", "b2 = yv + A2 yw + B2 yp", "%s + %s*%s + %s*%s", y[3], beyond.a, y[0], beyond.b, y[1])
	row("r"+sub, c.r, "1", "r = k g1 + A2 (g0 - 1) - B2 c3 k/D", "%s*%s + %s*(%s - 1) - %s*%s*%s/%s", s.k, g1, beyond.a, g0, beyond.b, c3, s.k,
		s.d)
	row("w1"+sub, c.w1, "mm", "w1 = p (q b2 - a2 r)/(a1 b2 - a2 b1), movement of edge 1 under a unit load",
		"%[1]s*(%[2]s*%[3]s - %[4]s*%[5]s)/(%[6]s*%[3]s - %[4]s*%[7]s)", c.p, c.q, c.b2, c.a2, c.r, c.a1, c.b1)
	row("psi1"+sub, c.psi1, "1", "psi1 = p (a1 r - q b1)/(a1 b2 - a2 b1), its rotation",
		"%[1]s*(%[2]s*%[3]s - %[4]s*%[5]s)/(%[2]s*%[6]s - %[7]s*%[5]s)", c.p, c.a1, c.r, c.q, c.b1, c.b2, c.a2)
	row("w2"+sub, c.w2, "mm", "w2 = xw w1 + yw psi1 - (g0 - 1) p", "%s*%s + %s*%s - (%s - 1)*%s", x[0], c.w1, y[0], c.psi1, g0, c.p)
	row("psi2"+sub, c.psi2, "1", "psi2 = xp w1 + yp psi1 + c3 p k/D", "%s*%s + %s*%s + %s*%s*%s/%s", x[1], c.w1, y[1], c.psi1, c3, c.p, s.k,
		s.d)
	row("F1"+sub, c.f1, "1", "F1 = A1 w1 - B1 psi1, share of the load that goes to the mouth", "%s*%s - %s*%s", mouth.a, c.w1, mouth.b, c.psi1)
	row("F2"+sub, c.f2, "1", "F2 = A2 w2 + B2 psi2, and beyond", "%s*%s + %s*%s", beyond.a, c.w2, beyond.b, c.psi2)
	e.step("shell.slope", "sigma"+sub, j.slope, "1/mm",
		"sigma = -(w2 - w1 - (M2 - M1) E/S) (k/E)/(1 - F1 - F2) c'/c, M1 = B1 w1 - C1 psi1, M2 = B2 w2 + C2 psi2; mean slope of the band per mean movement", "own", MarkOwn,
		"-(%[1]s - %[2]s - (%[3]s*%[1]s + %[4]s*%[5]s - %[6]s*%[2]s + %[7]s*%[8]s)*%[9]s)*%[10]s/(1 - %[11]s - %[12]s)*%[13]s/%[14]s",
		c.w2, c.w1, beyond.b, beyond.c, c.psi2, mouth.b, mouth.c, c.psi1, s.invS, s.k, c.f1, c.f2, c.along, t.Band)
	e.step("shell.band", "b"+sub, j.width, "mm", "b = c'/(1 - F1 - F2) + c - c', c' = c up to ten decay lengths", sourceShell, MarkMemory,
		"%[1]s/(1 - %[2]s - %[3]s) + %[4]s - %[1]s", c.along, c.f1, c.f2, t.Band)
	e.step("shell.beyond", "phi"+sub, j.beyond, "1", "phi = 1/2 + ((F2 - F1)/2 + V2 w2 + Y2 psi2) c'/c: half the band's own hoop and what lies beyond; V2, Y2: what a floor takes", "own", MarkOwn,
		"0.5 + ((%s - %s)/2 + %s*%s + %s*%s)*%s/%s", c.f2, c.f1, beyond.held, c.w2, beyond.heldPsi, c.psi2, c.along, t.Band)
}

// localGive explains how much further the loaded face gives way than the wall.
func (e *explainer) localGive(sub string, t Tube, give float64) {
	far, mouth, c, s := t.local()
	x := t.Wall / t.Radius
	reach := func(symbol string, v, share, decay, slope, from float64) {
		cut := min(1, 1-slope*(x-from))
		e.step("ring.reach", symbol+sub, v, "mm", "width of band at which the face gives no more than the wall: share of t, less in thin and in very thick walls", "own, finite elements", MarkOwn,
			"%s*%s*(1 - exp(%s*%s/%s))*%s", share, t.Wall, -decay, t.Wall, t.Radius, cut)
	}
	reach("q", far, 0.48, 8, 0.32, 0.9)
	reach("q'", mouth, 0.23, 20, 0.25, 0.5)
	e.step("ring.local", "C"+sub, give, "1", "C = (1 - s) 0.6 ln(1 + (q'/c)^2.5) + s (1 - nu^2)/pi ln(1 + (q/c)^2), s = 2 x/t up to 1: give of the face under a band c wide, x from the mouth", "elastic half-plane; own, finite elements", MarkOwn,
		"(1 - %[1]s)*0.6*ln(1 + (%[2]s/%[3]s)^2.5) + %[1]s*(1 - %[4]s^2)/pi*ln(1 + (%[5]s/%[3]s)^2)", s, mouth, c, t.Poisson, far)
}
