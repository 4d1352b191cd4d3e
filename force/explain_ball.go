package force

import "math"

func (b Ball) explain(e *explainer) {
	drawn := b.MouthDiameter
	printed, _ := b.printed(e.outer)
	d, r := printed.MouthDiameter, b.BallDiameter/2
	l := e.p.lip
	e.size("D", b.BallDiameter, "ball diameter")
	if d == drawn {
		e.size("d", d, "mouth diameter")
	} else {
		e.size("d_m", drawn, "mouth diameter as drawn")
		e.given("b", drawn-d, "mm", "by which a hole of this size comes out tighter than drawn, by process", e.outer.HoleBias.Mark)
		e.step("ball.mouth", "d", d, "mm", "d = d_m - b, the mouth that decides how hard to press", "own", MarkOwn, "%s - %s", drawn, drawn-d)
	}
	e.size("do", b.OuterDiameter, "outer diameter of the socket at its mouth")
	if b.Land != nil {
		e.size("land", *b.Land, "crest of the lip")
		e.step("ring.bears", "c_s", b.LipBearing(), "mm", "c = land, not below 0.03 t", "own", MarkOwn, "%s", b.LipBearing())
	} else {
		e.step("ring.bears", "c_s", b.LipBearing(), "mm", "c = t/4: no land is stated", "own", MarkOwn, "(%s - %s)/8", b.OuterDiameter, drawn)
	}
	modulus := e.modulus("s", e.outer)
	phi0 := BallContactAngle(d, b.BallDiameter)
	e.step("ball.contact", "phi0", phi0*degree, "deg", "phi0 = acos(d/D), the lead angle at first contact with the lip", sourceGeometry,
		MarkOwn, "acos(%s/%s)", d, b.BallDiameter)
	e.step("ball.stroke", "z0", BallStroke(d, b.BallDiameter), "mm", "z0 = sqrt(D^2 - d^2)/2, from there to the equator", sourceGeometry,
		MarkOwn, "sqrt(%s^2 - %s^2)/2", b.BallDiameter, d)
	e.step("ring.opening", "w", e.s.move, "mm", "w = (D - d)/2, the largest opening", sourceGeometry, MarkOwn, "(%s - %s)/2", b.BallDiameter,
		d)
	k, lever := e.tube("s", b.mouth(e.outer), b.OuterDiameter, drawn, true)
	if b.Slots > 0 {
		k, lever = e.slots(b.fingers(), &e.j.outer, modulus, lever)
	}
	e.step("contact.single", "kappa", e.j.lever, "1", "kappa of the mouth, not below 0", "own", MarkOwn, "%s", max(0, lever))
	e.series(k, 0, "N")
	e.strains(drawn)
	if b.Slots > 0 && e.j.outer.law == armWall {
		f := b.fingers()
		e.step("finger.strain", "eps_o", e.s.outerStrain, "1", "eps = 3 c w/a^2", sourceBeam, MarkMemory, "3*%s*%s/%s^2", f.tensile(), e.s.move,
			f.reach)
	}
	e.lipSlopes(&l, k)
	if printed.coned() {
		first, hand := ConeContact(d, b.BallDiameter, e.j.alpha)
		ac := e.j.alpha * degree
		e.angle("ac", e.j.alpha, "half-angle of the entry cone")
		e.step("ball.cone", "z1", first, "mm", "z1 = (R/cos ac - d/2)/tan ac, first contact with the cone", sourceGeometry, MarkOwn,
			"(%[1]s/cos(%[2]s) - %[3]s/2)/tan(%[2]s)", r, ac, d)
		e.step("ball.hand", "z2", hand, "mm", "z2 = R sin ac, from the cone to the lip", sourceGeometry, MarkOwn, "%s*sin(%s)", r, ac)
	}
	hi, lo := e.j.lipRange(&l)
	f, lift := l.peak(hi, lo)
	e.lip("", &l, f, lift, lift >= hi-1e-9)
	if e.j.hold != 0 {
		if e.holding() {
			return
		}
		e.series(k, 0, "N")
		l = e.p.lip
		e.lipSlopes(&l, k)
		phi0 = math.Acos(l.half / r)
	}
	if pull, locked := e.j.separation(e.mu, e.s, &e.p); locked {
		e.step("flank.locked", "alpha' + rho", (phi0+math.Atan(e.mu))*degree, "deg",
			"phi0 + rho of 90 deg or more: self-locking, no pull opens it", "DSM Technical Guide, 2005, p. 7", MarkRead, "%s + atan(%s)", phi0*degree, e.mu)
	} else {
		out := l
		out.zero, out.lever = 0, -l.lever
		_, at := out.peak(out.contact(), out.release())
		e.lip("'", &out, pull, at, false)
	}
}

// lipSlopes explains the load of the mouth over its opening where the modulus falls.
func (e *explainer) lipSlopes(l *lip, k float64) {
	if e.j.outer.zero > 0 {
		// A load past the top of its line starts less steep.
		numbers := "%[1]s"
		if l.a < k {
			numbers = "2*%[2]s/%[3]s"
		}
		e.step("ball.slope", "K1", l.a, "N/mm", "K1 = K, not above 2 P/w", "own", MarkOwn, numbers, l.a, e.s.load, e.s.move)
		e.step("ball.load", "K2", l.b, "N/mm^2", "load over opening as K1 w - K2 w^2 through the largest one", "own", MarkOwn,
			"(%[1]s*%[2]s - %[3]s)/%[2]s^2", l.a, e.s.move, e.s.load)
	}
}

// lip explains the largest force on the lip, on the way in or, with a dash, out.
func (e *explainer) lip(dash string, l *lip, f, lift float64, cone bool) {
	e.exact = true
	defer func() { e.exact = false }()
	r, h := l.radius, l.half
	phi := math.Asin((lift - l.zero) / r)
	if cone {
		e.step("ball.hand_over", "phi"+dash, phi*degree, "deg", "phi = ac: the force is largest where the cone ends", "own", MarkOwn, "%s",
			e.j.alpha*degree)
	} else {
		// The opening at the summit, from the condition for it; phi stands on both
		// sides and is found by repeating.
		open := r*math.Cos(phi) - h
		psi := phi + math.Atan(l.mu)
		lean := math.Cos(psi) - l.lever*math.Sin(psi)
		e.step("ball.peak", "phi"+dash, phi*degree, "deg",
			"cos phi = [h + R sin(phi) sin(psi) (cos psi - kappa sin psi) (K1 - 2 K2 w)/(K1 - K2 w)]/R, psi = phi + rho, h = d/2: the latitude of the largest force, found by repeating", "own, dW/dphi = 0", MarkOwn,
			"acos((%[1]s + %[2]s*sin(%[3]s)*sin(%[3]s + atan(%[4]s))*%[5]s*(%[6]s - 2*%[7]s*%[8]s)/(%[6]s - %[7]s*%[8]s))/%[2]s)", h, r, phi*degree, l.mu, lean, l.a, l.b, open)
	}
	open := r*math.Cos(phi) - h
	e.step("ball.opening", "w_p"+dash, open, "mm", "w = R cos phi - d/2", sourceGeometry, MarkOwn, "%s*cos(%s) - %s", r, phi*degree, h)
	factor := math.Tan(phi + math.Atan(l.mu))
	e.step("ball.factor", "f"+dash, factor, "1", "f = tan(phi + rho)", sourceGuide+", p. 14", MarkRead, "tan(%s + atan(%s))", phi*degree, l.mu)
	what := "W = (K1 w - K2 w^2) f/(1 - f kappa)"
	id := "ball.force"
	if dash != "" {
		id, what = "ball.separation", "W' = (K1 w - K2 w^2) f/(1 + f kappa): pulled out, the axial force helps to open"
	}
	e.step(id, "W"+dash, f, "N", what, "own; flank: "+sourceGuide+", p. 14", MarkOwn, "(%[1]s*%[2]s - %[3]s*%[2]s^2)*%[4]s/(1 - %[4]s*%[5]s)",
		l.a, open, l.b, factor, l.lever)
}
