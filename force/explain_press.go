package force

import "math"

func (e *explainer) press(f *PressFit) {
	sz := f.sizing(e.outer, e.inner)
	d, delta := sz.d, sz.size
	l := f.lame(d, e.outer, e.inner)
	e.size("d", d, "joint diameter")
	if f.Fit != "" {
		fit, _ := ParseISOFit(f.Fit)
		e.step("iso286.interference", "delta", delta, "mm", "delta = mean shaft - mean hole of "+f.Fit, "ISO 286", MarkMemory, "(%s + %s)/2 - (%s + %s)/2", fit.ShaftUpper, fit.ShaftLower, fit.HoleUpper, fit.HoleLower)
	} else if f.PinDiameter != 0 {
		e.step("press.interference", "delta", delta, "mm", "delta = pin - bore", sourceGeometry, MarkOwn, "%s - %s", f.PinDiameter, f.BoreDiameter)
	} else {
		e.size("delta", delta, "interference, diametral")
	}
	e.size("do", f.OuterDiameter, "outer diameter of the boss")
	e.size("di", f.InnerDiameter, "bore of the pin")
	e.size("L", f.EngagementLength, "engaged length")
	eh, es := e.modulus("h", e.outer), e.modulus("s", e.inner)
	nh, ns := e.outer.Poisson.Value, e.inner.Poisson.Value
	wh, ws := lameRatio(f.OuterDiameter, d), lameRatio(d, f.InnerDiameter)
	e.step("lame.ratio", "W_h", wh, "1", "W_h = (do^2 + d^2)/(do^2 - d^2)", sourceLame, MarkMemory, "(%[1]s^2 + %[2]s^2)/(%[1]s^2 - %[2]s^2)", f.OuterDiameter, d)
	e.step("lame.ratio", "W_s", ws, "1", "W_s = (d^2 + di^2)/(d^2 - di^2)", sourceLame, MarkMemory, "(%[1]s^2 + %[2]s^2)/(%[1]s^2 - %[2]s^2)", d, f.InnerDiameter)
	p0 := l.Pressure(delta)
	e.step("lame.pressure", "p0", p0, "MPa", "p = delta/(d [(W_h + nu_h)/E_h + (W_s - nu_s)/E_s])", sourceLame, MarkMemory,
		"%s/(%s*((%s + %s)/%s + (%s - %s)/%s))", delta, d, wh, nh, eh, ws, ns, es)
	p := e.s.load / (math.Pi * d)
	if e.j.outer.zero > 0 || e.j.inner.zero > 0 {
		e.step("secant.pressure", "p", p, "MPa", "p with each modulus at its working strain: Es = E (1 - eps/eps0)", "secant line through the chart of "+sourceGuide, MarkMemory, "")
	}
	e.step("press.collapse", "p_max", e.j.cap/(math.Pi*d), "MPa", "p_max = (2/sqrt 3) 1.25 sigma ln(do/d), the thinner of hub and hollow pin", "thick ring, ideally plastic", MarkMemory, "%s", e.j.cap/(math.Pi*d))
	if e.s.yields {
		e.step("press.limited", "p", p, "MPa", "p = p_max: the wall flows", "own", MarkOwn, "%s", e.j.cap/(math.Pi*d))
	}
	e.step("lame.hub_hoop", "sigma_h", l.HubHoop(p), "MPa", "sigma = p W_h at the bore of the hub", sourceLame, MarkMemory, "%s*%s", p, wh)
	e.step("lame.shaft_hoop", "sigma_s", l.ShaftHoop(p), "MPa", "sigma = -p W_s at the surface of the pin", sourceLame, MarkMemory, "0 - %s*%s", p, ws)
	e.step("ring.strain", "eps_h", e.s.outerStrain, "1", "eps = 2 w_h/d, w_h: movement of the bore", sourceGuide+", p. 20, as y/d", MarkRead, "2*%s/%s", e.s.outerMove, d)
	e.slide(math.Pi*d*p, delta/2, f.LeadInAngle, f.EngagementLength)
}

// slide explains the force of a chamfer and of friction along a length, q being
// the transverse load per mm, w the radial size.
func (e *explainer) slide(q, w float64, lead *float64, length float64) {
	angle := sharpAngle
	if lead != nil {
		angle = *lead
		e.angle("alpha", angle, "lead-in angle")
	} else {
		e.given("alpha", angle*degree, "deg", "sharp edge, counted as", MarkPractice)
	}
	f := e.flank(angle)
	first := LeadInForce(f, q, w/math.Tan(angle), w/math.Tan(angle))
	e.step("press.lead_in", "F1", first, "N", "F1 = q w f/(2 tan alpha), q: load per mm of joint, w: radial size", "own, elastic work of a mm of joint", MarkOwn, "%s*%s*%s/(2*tan(%s))", q, w, f, angle*degree)
	e.step("press.force", "F", first+e.mu*q*length, "N", "F = F1 + mu q L; q = p pi d for a press fit", "Engineering Plastics Handbook, p. 32; lead-in own", MarkRead, "%s + %s*%s*%s", first, e.mu, q, length)
	e.step("press.pull", "F'", e.mu*q*length, "N", "F' = mu q L to pull it apart, fresh", "Engineering Plastics Handbook, p. 32", MarkRead, "%s*%s*%s", e.mu, q, length)
}

func (e *explainer) crush(c *CrushRib) {
	sigma := c.flowStress(e.outer)
	e.given("n", float64(c.Count), "1", "ribs", MarkJob)
	e.size("h", c.Height, "rib height")
	e.size("w", c.Width, "rib width at its base")
	e.size("delta", c.Crush, "crush depth, radial")
	e.given("sigma", sigma.Value, "MPa", "flow stress of the rib", sigma.Mark)
	q := CrushLoad(c.Count, sigma.Value, c.Crush, c.Width, c.Height)
	e.step("crush.load", "q", q, "N/mm", "q = n C sigma delta w/h, C = 1.5", "own, on a triangle", MarkOwn, "%s*1.5*%s*%s*%s/%s", float64(c.Count), sigma.Value, c.Crush, c.Width, c.Height)
	e.step("crush.share", "delta/h", e.s.outerStrain, "1", "share of the rib crushed", sourceGeometry, MarkOwn, "%s/%s", c.Crush, c.Height)
	e.slide(q, c.Crush, c.LeadInAngle, c.EngagementLength)
}
