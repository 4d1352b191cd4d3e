package force

import "math"

func (f PressFit) explain(e *explainer) {
	sz := f.sizing(e.outer, e.inner)
	d, delta := sz.d, sz.drawn()
	e.finished = [2]bool{f.BoreFinished, f.PinFinished}
	l := f.lame(d, e.outer, e.inner)
	e.size("d", d, "joint diameter")
	if f.Fit != "" {
		fit, _ := ParseISOFit(f.Fit)
		e.step("iso286.interference", "delta", delta, "mm", "delta = mean shaft - mean hole of "+f.Fit, "ISO 286", MarkMemory,
			"(%s + %s)/2 - (%s + %s)/2", fit.ShaftUpper, fit.ShaftLower, fit.HoleUpper, fit.HoleLower)
	} else if f.PinDiameter != 0 {
		e.step("press.interference", "delta", delta, "mm", "delta = pin - bore", sourceGeometry, MarkOwn, "%s - %s", f.PinDiameter,
			f.BoreDiameter)
	} else {
		e.size("delta", delta, "interference, diametral")
	}
	e.size("do", f.OuterDiameter, "outer diameter of the boss")
	e.size("di", f.InnerDiameter, "bore of the pin")
	e.size("L", f.EngagementLength, "engaged length")
	symbol := e.made("delta", sz, f.RoughnessLoss, 1)
	delta = sz.size
	eh, es := e.modulus("h", e.outer), e.modulus("s", e.inner)
	nh, ns := e.outer.Poisson.Value, e.inner.Poisson.Value
	wh, ws := lameRatio(f.OuterDiameter, d), lameRatio(d, f.InnerDiameter)
	e.step("lame.ratio", "W_h", wh, "1", "W_h = (do^2 + d^2)/(do^2 - d^2)", sourceLame, MarkMemory, "(%[1]s^2 + %[2]s^2)/(%[1]s^2 - %[2]s^2)",
		f.OuterDiameter, d)
	e.step("lame.ratio", "W_s", ws, "1", "W_s = (d^2 + di^2)/(d^2 - di^2)", sourceLame, MarkMemory, "(%[1]s^2 + %[2]s^2)/(%[1]s^2 - %[2]s^2)",
		d, f.InnerDiameter)
	p0 := l.Pressure(delta)
	e.step("lame.pressure", "p0", p0, "MPa", "p = delta/(d [(W_h + nu_h)/E_h + (W_s - nu_s)/E_s])", sourceLame, MarkMemory,
		"%s/(%s*((%s + %s)/%s + (%s - %s)/%s))", delta, d, wh, nh, eh, ws, ns, es)
	kh, ks := e.j.outer.stiffness, e.j.inner.stiffness
	e.step("lame.hub", "K_h", kh, "N/mm^2", "K = 2 pi E_h/(W_h + nu_h), load per mm of joint over radial movement", sourceLame, MarkMemory,
		"2*pi*%s/(%s + %s)", eh, wh, nh)
	e.step("lame.pin", "K_s", ks, "N/mm^2", "K = 2 pi E_s/(W_s - nu_s)", sourceLame, MarkMemory, "2*pi*%s/(%s - %s)", es, ws, ns)
	e.step("ring.opening", "w", e.s.move, "mm", "w = "+symbol+"/2, both members together", sourceGeometry, MarkOwn, "%s/2", delta)
	e.series(kh, ks, "N/mm")
	limit := "2/sqrt(3)*1.25*%[1]s*ln(%[2]s/%[3]s)"
	sigma, big, small := e.outer.Strength, f.OuterDiameter, d
	if f.InnerDiameter > 0 && CollapsePressure(e.inner.Strength.Value, d, f.InnerDiameter) < CollapsePressure(sigma.Value, big, small) {
		sigma, big, small = e.inner.Strength, d, f.InnerDiameter
	}
	e.given("sigma", sigma.Value, "MPa", "strength in the layers of the thinner ring", sigma.Mark)
	e.step("press.collapse", "p_max", e.j.cap/(math.Pi*d), "MPa", "p_max = (2/sqrt 3) 1.25 sigma ln(D1/D2), the thinner of hub and hollow pin",
		"thick ring, ideally plastic", MarkMemory, limit, sigma.Value, big, small)
	q := e.s.load
	if e.s.yields {
		e.step("press.limited", "q", q, "N/mm", "q = p_max pi d: the wall flows", "own", MarkOwn, "%s*pi*%s", e.j.cap/(math.Pi*d), d)
	}
	p := q / (math.Pi * d)
	e.step("press.pressure", "p", p, "MPa", "p = q/(pi d); q: load per mm of joint, the P above or where the wall flows", sourceGeometry,
		MarkOwn, "%s/(pi*%s)", q, d)
	e.step("lame.hub_hoop", "sigma_h", l.HubHoop(p), "MPa", "sigma = p W_h at the bore of the hub", sourceLame, MarkMemory, "%s*%s", p, wh)
	e.step("lame.shaft_hoop", "sigma_s", l.ShaftHoop(p), "MPa", "sigma = -p W_s at the surface of the pin", sourceLame, MarkMemory,
		"0 - %s*%s", p, ws)
	e.step("ring.strain", "eps_o", e.s.outerStrain, "1", "eps = 2 w_o/d, at the bore of the hub", sourceGuide+", p. 20, as y/d", MarkRead,
		"2*%s/%s", e.s.outerMove, d)
	e.beyond(f, d, kh, ks)
	e.slide(q, delta/2, f.LeadInAngle, f.EngagementLength, func() float64 {
		e.series(kh, ks, "N/mm")
		if e.s.yields {
			e.step("press.limited", "q", e.s.load, "N/mm", "q = p_max pi d: the wall flows", "own", MarkOwn, "%s*pi*%s", e.j.cap/(math.Pi*d), d)
		}
		return e.s.load
	})
}

// beyond explains what the wall beyond the pin and the pin's own swelling add.
func (e *explainer) beyond(f PressFit, d, kh, ks float64) {
	edge := BossEdge(f.OuterDiameter, d, f.beyond())
	if edge < f.beyond() {
		e.step("press.edge", "e", edge, "mm", "e = 0.5 (d/2) tanh(1.4 sqrt((do - d)/d)): the boss goes on beyond the pin and adds to its length",
			"own, fitted to finite elements", MarkOwn,
			"0.25*%[1]s*(1 - 2/(exp(2*1.4*sqrt((%[2]s - %[1]s)/%[1]s)) + 1))", d, f.OuterDiameter)
	} else {
		e.step("press.edge", "e", edge, "mm", "e: what there is of the boss beyond the pin", "job", MarkJob, "%s", edge)
	}
	e.step("press.edge_share", "e'", e.j.edge, "mm", "e' = e K_s/(K_h + K_s): as far as the hub is what gives", "own", MarkOwn,
		"%[1]s*%[3]s/(%[2]s + %[3]s)", edge, kh, ks)
	pin, boss := math.Pi/4*(d*d-f.InnerDiameter*f.InnerDiameter), math.Pi/4*(f.OuterDiameter*f.OuterDiameter-d*d)
	e.step("press.pin_section", "A_s", pin, "mm^2", "A = pi (d^2 - di^2)/4", sourceGeometry, MarkOwn, "pi*(%s^2 - %s^2)/4", d, f.InnerDiameter)
	e.step("press.boss_section", "A_h", boss, "mm^2", "A = pi (do^2 - d^2)/4", sourceGeometry, MarkOwn, "pi*(%s^2 - %s^2)/4", f.OuterDiameter,
		d)
	k, whole := kh*ks/(kh+ks), f.EngagementLength+e.j.edge
	if e.j.swell == 0 {
		e.step("press.swelling", "m", 0, "1", "m = 0: the boss gives more under the force than the pin swells", "own, by Poisson's ratio",
			MarkOwn, "0")
		return
	}
	e.step("press.swelling", "m", e.mu*e.j.swell, "1",
		"m = mu K (L + e') (d/4) (nu_s/(E_s A_s) - nu_h/(E_h A_h)), K = K_h K_s/(K_h + K_s): the pin swells under the force along it",
		"own, by Poisson's ratio", MarkOwn,
		"%[1]s*%[2]s*%[3]s*%[4]s/4*(%[5]s/(%[6]s*%[7]s) - %[8]s/(%[9]s*%[10]s))", e.mu, k, whole, d, e.inner.Poisson.Value, e.inner.Modulus.Value, pin, e.outer.Poisson.Value, e.outer.Modulus.Value, boss)
}

// slide explains the force of a chamfer and of friction along a length, q being
// the transverse load per mm, w the radial size; held explains that load at the size
// that holds.
func (e *explainer) slide(q, w float64, lead *float64, length float64, held func() float64) {
	angle := sharpAngle
	if lead != nil {
		angle = *lead
		e.angle("alpha", angle, "lead-in angle")
	} else {
		e.given("alpha", angle*degree, "deg", "sharp edge, counted as", MarkPractice)
	}
	f := e.flank("f", angle)
	first := LeadInForce(f, q, w/math.Tan(angle), w/math.Tan(angle))
	e.step("press.lead_in", "F1", first, "N", "F1 = q w f/(2 tan alpha), q: load per mm of joint, w: radial size",
		"own, elastic work of a mm of joint", MarkOwn, "%s*%s*%s/(2*tan(%s))", q, w, f, angle*degree)
	m, edge := e.mu*e.j.swell, e.j.edge
	e.step("press.force", "F", first+e.mu*q*(length+edge)/(1-m), "N", "F = F1 + mu q (L + e')/(1 - m)",
		"Engineering Plastics Handbook, p. 32, as mu q L; the rest own", MarkRead, "%s + %s*%s*(%s + %s)/(1 - %s)", first, e.mu, q, length, edge, m)
	if e.j.hold != 0 {
		if e.holding() {
			return
		}
		q = held()
	}
	e.step("press.pull", "F'", e.mu*q*length/(1+m), "N", "F' = mu q L/(1 + m) to pull it apart, fresh",
		"Engineering Plastics Handbook, p. 32, as mu q L", MarkRead, "%s*%s*%s/(1 + %s)", e.mu, q, length, m)
}

func (c CrushRib) explain(e *explainer) {
	sigma := c.flowStress(e.outer)
	e.given("n", float64(c.Count), "1", "ribs", MarkJob)
	e.size("h", c.Height, "rib height")
	e.size("w", c.Width, "rib width at its base")
	e.size("delta", c.Crush, "crush depth, radial")
	sz := c.sizing(e.outer, e.inner)
	symbol := e.made("delta", sz, c.RoughnessLoss, 0.5)
	e.given("sigma", sigma.Value, "MPa", "flow stress of the rib", sigma.Mark)
	load := func(size float64, symbol string) float64 {
		q := CrushLoad(c.Count, sigma.Value, size, c.Width, c.Height)
		e.step("crush.load", "q", q, "N/mm", "q = n C sigma "+symbol+" w/h, C = 1.5", "own, on a triangle", MarkOwn, "%s*1.5*%s*%s*%s/%s",
			float64(c.Count), sigma.Value, size, c.Width, c.Height)
		return q
	}
	q := load(sz.size, symbol)
	e.step("crush.share", "delta/h", e.s.outerStrain, "1", "share of the rib crushed", sourceGeometry, MarkOwn, "%s/%s", sz.size, c.Height)
	e.slide(q, sz.size, c.LeadInAngle, c.EngagementLength, func() float64 { return load(sz.size-sz.hold, "w_h") })
}
