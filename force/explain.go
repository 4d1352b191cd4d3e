package force

import (
	"fmt"
	"math"
)

// A Line is one step of a computation, so that a second engineer can redo it by
// hand. A line without an ID states an input.
type Line struct {
	ID      string  // of the formula, the same for the same formula in every job
	Symbol  string  // what it gives
	Value   float64 // mm, N, MPa, degrees for angles, 1 for shares
	Unit    string
	Formula string // in symbols
	Numbers string // with the numbers put in; empty where it is no arithmetic
	Source  string
	Mark    Mark
}

// Numbers are written as arithmetic: + - * / ^, pi and sqrt, ln, exp, sinh, cosh,
// and sin, cos, tan of degrees; atan and acos give degrees. What is no arithmetic
// has none. Lines whose terms nearly cancel carry twelve digits, others seven.

// Explain gives every formula behind the nominal force of one latch, in order,
// each with symbol, value, unit, source and the numbers put in. It is nil if the
// assembly has faults or no latch of that id.
func Explain(a Assembly, id string) []Line {
	if len(a.Validate()) > 0 {
		return nil
	}
	lower, _ := a.Shop.Resolve(a.Lower)
	upper, _ := a.Shop.Resolve(a.Upper)
	mu := pairFriction(lower, upper)
	for _, l := range a.Latches {
		if l.ID != id {
			continue
		}
		j := readyJoint(l, lower, upper)
		p, s := j.nominalAt(mu.Value)
		outer, inner := lower, upper
		if !j.outerIsLower {
			outer, inner = upper, lower
		}
		lines := explain(l, &j, p, s, mu, outer, inner)
		if a.Service != nil {
			lines = append(lines, lifeLine(lifeFactors(*a.Service, l, &j, s, outer, inner))...)
		}
		return lines
	}
	return nil
}

// explain gives the lines of one latch. outer is the part of the joint's first member.
func explain(l Latch, j *joint, p profile, s state, mu Friction, outer, inner Material) []Line {
	e := &explainer{j: j, use: l.Use, p: p, s: s, mu: mu.Value, friction: mu, outer: outer, inner: inner}
	e.given("mu", mu.Value, "1", "coefficient of friction", mu.Mark)
	k := l.Joint()
	k.explain(e)
	if s.jam {
		e.locks()
	}
	e.strength(k)
	e.tolerance()
	return e.lines
}

// locks takes the place of what follows from a flank that locks: no force does.
func (e *explainer) locks() {
	for i, l := range e.lines {
		if l.ID == "flank.factor" || l.ID == "ball.peak" || l.ID == "ball.hand_over" || l.ID == "press.lead_in" {
			e.lines = e.lines[:i]
			break
		}
	}
	e.given("mu_lock", e.j.locksFrom(), "1", "friction from which on no push joins it: the axial force is tan 85 deg times the load across the axis or more, or the pin swells fast; found by repeating", MarkOwn)
}

type explainer struct {
	j            *joint
	use          string
	p            profile
	s            state
	mu           float64
	friction     Friction
	outer, inner Material
	lines        []Line
	finished     [2]bool // outer and inner member are machined after printing
	exact        bool    // the next steps need twelve digits
}

func (e *explainer) given(symbol string, v float64, unit, what string, m Mark) {
	e.lines = append(e.lines, Line{Symbol: symbol, Value: v, Unit: unit, Source: what, Mark: m})
}

// size states a dimension from the job.
func (e *explainer) size(symbol string, v float64, what string) {
	e.given(symbol, v, "mm", what, MarkJob)
}

func (e *explainer) angle(symbol string, v float64, what string) {
	e.given(symbol, v*degree, "deg", what, MarkJob)
}

// step adds a formula; numbers is a format of %[..] verbs for vals.
func (e *explainer) step(id, symbol string, v float64, unit, formula, source string, m Mark, numbers string, vals ...float64) {
	args := make([]any, len(vals))
	for i, x := range vals {
		args[i] = number(x, e.exact)
	}
	text := numbers
	if len(vals) > 0 {
		text = fmt.Sprintf(numbers, args...)
	}
	e.lines = append(e.lines, Line{ID: id, Symbol: symbol, Value: v, Unit: unit, Formula: formula, Numbers: text, Source: source, Mark: m})
}

// number writes a value for arithmetic: seven digits or twelve, negatives in
// brackets.
func number(v float64, exact bool) string {
	digits := 7
	if exact {
		digits = 12
	}
	s := fmt.Sprintf("%.*g", digits, v)
	if v < 0 {
		return "(" + s + ")"
	}
	return s
}

const (
	sourceGuide    = "Snap-Fit Joints for Plastics - A Design Guide"
	sourceShell    = "beam on elastic foundation, Hetenyi 1946, with Timoshenko's shear"
	sourceLame     = "Lame; Shigley, press and shrink fits"
	sourceBeam     = "beam theory"
	sourceGeometry = "geometry"
)

func (e *explainer) modulus(symbol string, m Material) float64 {
	e.given("E_"+symbol, m.Modulus.Value, "MPa", "modulus of "+m.Name+" at small strain", m.Modulus.Mark)
	return m.Modulus.Value
}

// flank explains the mating factor of a flank that does not lean.
func (e *explainer) flank(symbol string, alpha float64) float64 {
	f, _ := MatingFactor(e.mu, alpha)
	e.step("flank.factor", symbol, f, "1", "f = tan(alpha + rho) = (mu + tan alpha)/(1 - mu tan alpha)", sourceGuide+", p. 14", MarkRead,
		"(%[1]s + tan(%[2]s))/(1 - %[1]s*tan(%[2]s))", e.mu, alpha*degree)
	return f
}

// levered explains what the lever of the axial force makes of a factor.
func (e *explainer) levered(symbol string, f float64) float64 {
	v := f / (1 - f*e.j.lever)
	e.step("contact.factor", symbol, v, "1", "F = f/(1 - f kappa): the axial force turns the wall against its way", "own", MarkOwn,
		"%[1]s/(1 - %[1]s*%[2]s)", f, e.j.lever)
	return v
}

// crest explains the forces at the end of the lead-in and on the land.
func (e *explainer) crest(lead, land, flat float64) {
	e.step("snap.force", "W", e.s.load*lead, "N", "W = P F, at the end of the lead-in", sourceGuide+", p. 14, with its f for F", MarkRead,
		"%s*%s", e.s.load, lead)
	if flat > 0 {
		e.step("snap.land", "W_land", e.s.load*land, "N", "W = P F on the land", sourceGuide+", p. 14, with its f for F", MarkRead, "%s*%s",
			e.s.load, land)
	}
}

// series explains how the movement is shared between the members and what load
// that makes.
func (e *explainer) series(ko, ki float64, unit string) float64 {
	s, j := &e.s, e.j
	w := s.move
	load, wo, _ := series(&j.outer, &j.inner, ko, ki, w)
	ao, ai := j.outer.zero, j.inner.zero
	line, mark := "own, by modulus and strength", MarkOwn
	if e.outer.chart || e.inner.chart {
		line, mark = "chart of "+sourceGuide+", figure 16", MarkRead
	}
	e.law("o", &j.outer, e.outer)
	e.law("i", &j.inner, e.inner)
	straight := j.outer.knee > 0 || j.inner.knee > 0
	top := func(id string, k, a float64) {
		e.step("secant."+id, "P", load, unit, "P = K a/4, the top of the stress; a: movement at which the secant line meets zero", "own", MarkOwn,
			"%s*%s/4", k, a)
	}
	switch {
	case ki == 0 && (ao == 0 || w <= j.outer.knee):
		e.step("spring.single", "P", load, unit, "P = K w", "spring", MarkOwn, "%s*%s", ko, w)
	case ki == 0 && w < ao/2-j.outer.knee && straight:
		e.step("secant.single", "P", load, unit, "P = K (w - (w - s)^2/(a - 4 s)), s: movement up to which load is in proportion", line, mark,
			"%[1]s*(%[2]s - (%[2]s - %[4]s)^2/(%[3]s - 4*%[4]s))", ko, w, ao, j.outer.knee)
	case ki == 0 && w < ao/2:
		e.step("secant.single", "P", load, unit, "P = K w (1 - w/a), a: movement at which the secant line meets zero", line, mark,
			"%[1]s*%[2]s*(1 - %[2]s/%[3]s)", ko, w, ao)
	case ki == 0:
		top("top", ko, ao)
	case ao == 0 && ai == 0:
		e.step("spring.series", "P", load, unit, "P = w K_o K_i/(K_o + K_i)", "springs in series", MarkOwn, "%[1]s*%[2]s*%[3]s/(%[2]s + %[3]s)",
			w, ko, ki)
		e.step("spring.share", "w_o", wo, "mm", "w_o = P/K_o", "springs in series", MarkOwn, "%s/%s", load, ko)
	case load == j.outer.most(ko):
		top("top", ko, ao)
		e.opposite("w_i", "w_o", ki, &j.inner, load, w)
	case load == j.inner.most(ki):
		top("top", ki, ai)
		e.opposite("w_o", "", ko, &j.outer, load, w)
	default:
		e.share(ko, ki, w, wo, load, unit, line, mark)
	}
	return load
}

// law explains where the secant line of a member comes from.
func (e *explainer) law(symbol string, m *member, mat Material) {
	if m.stiffness == 0 || m.zero == 0 {
		return
	}
	eps := mat.SecantZero
	if eps.Mark == MarkOwn {
		e.given("sigma_"+symbol, mat.Strength.Value, "MPa", "strength of "+mat.Name+" in the layers", mat.Strength.Mark)
		e.step("secant.zero", "eps0_"+symbol, eps.Value, "1", "eps0 = 4 1.25 sigma/E: the stress stays below 1.25 sigma", "own", MarkOwn,
			"4*1.25*%s/%s", mat.Strength.Value, mat.Modulus.Value)
	} else {
		e.given("eps0_"+symbol, eps.Value, "1", "strain at which the secant line of "+mat.Name+" meets zero", eps.Mark)
	}
	strain := m.reserve * eps.Value / m.zero
	e.step("secant.movement", "a_"+symbol, m.zero, "mm",
		"a = r eps0/(eps/w), eps/w: strain per movement, r: reserve of the whole body over its most strained fibre", "own", MarkOwn, "%s*%s/%s", m.reserve, eps.Value, strain)
	if m.knee > 0 {
		e.given("eps1_"+symbol, mat.Straight.Value, "1", "strain up to which stress is in proportion", mat.Straight.Mark)
		e.step("secant.straight", "s_"+symbol, m.knee, "mm", "s = eps1/(eps/w)", sourceGeometry, MarkOwn, "%s/%s", mat.Straight.Value, strain)
	}
}

// opposite explains the movement of the member that is not at its top, and then
// of the one that is.
func (e *explainer) opposite(symbol, other string, k float64, m *member, load, w float64) {
	v := m.movementAt(k, load)
	switch {
	case m.zero == 0 || load <= k*m.knee:
		e.step("spring.share", symbol, v, "mm", symbol+" = P/K", "springs in series", MarkOwn, "%s/%s", load, k)
	default:
		e.step("secant.share", symbol, v, "mm", symbol+" = s + (a - 4 s)/2 (1 - sqrt(1 - 4 (P - K s)/(K (a - 4 s))))", "springs in series",
			MarkOwn, "%[4]s + (%[1]s - 4*%[4]s)/2*(1 - sqrt(1 - 4*(%[2]s - %[3]s*%[4]s)/(%[3]s*(%[1]s - 4*%[4]s))))", m.zero, load, k, m.knee)
	}
	if other != "" {
		e.step("secant.rest", other, w-v, "mm", other+" = w - "+symbol+": it takes the rest", "springs in series", MarkOwn, "%s - %s", w, v)
	}
}

// share explains the movement of the outer member where a modulus falls with it.
func (e *explainer) share(ko, ki, w, wo, load float64, unit, line string, mark Mark) {
	outer, inner := &e.j.outer, &e.j.inner
	o0, o1, o2 := outer.polynomial(ko, beyond(outer, inner, ko, ki, w))
	i0, i1, i2 := inner.polynomial(ki, beyond(inner, outer, ki, ko, w))
	e.polynomial("o", ko, outer, o0, o1, o2)
	e.polynomial("i", ki, inner, i0, i1, i2)
	a, b, c := o2-i2, o1+i1+2*w*i2, i0-o0+w*(i1+w*i2)
	e.exact = true
	e.step("secant.a", "q_a", a, "N/mm^2", "q_a = p2_o - p2_i", "springs in series", MarkOwn, "%s - %s", o2, i2)
	e.step("secant.b", "q_b", b, "N/mm", "q_b = p1_o + p1_i + 2 w p2_i", "springs in series", MarkOwn, "%s + %s + 2*%s*%s", o1, i1, w, i2)
	e.step("secant.c", "q_c", c, "N", "q_c = p0_i - p0_o + w (p1_i + w p2_i)", "springs in series", MarkOwn,
		"%[1]s - %[2]s + %[3]s*(%[4]s + %[3]s*%[5]s)", i0, o0, w, i1, i2)
	e.step("secant.share", "w_o", wo, "mm", "w_o = 2 q_c/(q_b + sqrt(q_b^2 + 4 q_a q_c)): both carry the same load, w_i = w - w_o",
		"springs in series", MarkOwn,
		"2*%[3]s/(%[2]s + sqrt(%[2]s^2 + 4*%[1]s*%[3]s))", a, b, c)
	e.step("secant.outer", "P", load, unit, "P = p0_o + p1_o w_o + p2_o w_o^2; both members carry the same P", line, mark,
		"%[2]s + %[1]s*(%[3]s + %[1]s*%[4]s)", wo, o0, o1, o2)
	e.exact = false
}

// polynomial explains the load of a member over its movement, p0 + p1 v + p2 v^2.
func (e *explainer) polynomial(symbol string, k float64, m *member, p0, p1, p2 float64) {
	e.exact = true
	defer func() { e.exact = false }()
	if p2 == 0 {
		e.step("secant.p1", "p1_"+symbol, p1, "N/mm", "p0 = 0, p1 = K, p2 = 0: in proportion", "spring", MarkOwn, "%s", k)
		return
	}
	e.step("secant.p2", "p2_"+symbol, p2, "N/mm^2", "p2 = -K/(a - 4 s)", "spring", MarkOwn, "0 - %s/(%s - 4*%s)", k, m.zero, m.knee)
	e.step("secant.p1", "p1_"+symbol, p1, "N/mm", "p1 = K - 2 p2 s", "spring", MarkOwn, "%s - 2*%s*%s", k, p2, m.knee)
	e.step("secant.p0", "p0_"+symbol, p0, "N", "p0 = p2 s^2", "spring", MarkOwn, "%s*%s^2", p2, m.knee)
}

// separation explains the force that pulls a snap apart.
func (e *explainer) separation() {
	f, locked := e.j.separation(e.mu, e.s, &e.p)
	back, theta := e.j.back, e.j.backLean(e.mu, e.s.outerMove)
	if e.j.rotation != 0 {
		y := e.s.outerMove
		theta0 := e.j.rotation * y
		if _, ok := MatingFactor(e.mu, max(0, back-theta0)); ok {
			factor := e.flank("f0'", max(0, back-theta0))
			e.step("contact.lean_back", "theta'", theta, "1",
				"theta' = theta0 + x y f0' kappa/(1 + f0' kappa): the pull turns the hook further from its flank", "own", MarkOwn, "%[1]s + %[2]s*%[3]s*%[4]s*%[5]s/(1 + %[4]s*%[5]s)", theta0, e.j.turning, y, factor, e.j.lever)
		}
		back = max(0, back-theta)
	}
	if locked {
		e.step("flank.locked", "alpha' + rho", back*degree+math.Atan(e.mu)*degree, "deg",
			"alpha' + rho of 90 deg or more: self-locking, no pull opens it", "DSM Technical Guide, 2005, p. 7", MarkRead, "%s + atan(%s)", back*degree, e.mu)
		return
	}
	g := e.flank("f'", back)
	e.step("flank.separation", "W'", f, "N", "W' = P f'/(1 + f' kappa), f' at the return angle: the axial force now helps to open",
		sourceGuide+", p. 14, without kappa; kappa own", MarkOwn,
		"%[1]s*%[2]s/(1 + %[2]s*%[3]s)", e.s.load, g, e.j.lever)
}

// tolerance states what the band is drawn from.
func (e *explainer) tolerance() {
	j := e.j
	e.given("eps_max", j.outer.limit, "1", "permitted there, for this use and build direction", e.outer.StrainOnce.Mark)
	if j.inner.stiffness > 0 {
		e.given("eps_max_i", j.inner.limit, "1", "permitted in the inner part", e.inner.StrainOnce.Mark)
	}
	e.given("mu_low", e.friction.Low, "1", "friction at its low end, two standard deviations", e.friction.Mark)
	e.given("mu_high", e.friction.High, "1", "friction at its high end: "+e.friction.Source, e.friction.Mark)
	if j.thin > 0 {
		e.given("thin", thinLeft, "1", "share of the modulus that a sintered arm below 3 mm may have left, in M-", MarkAbstract)
	}
	e.given("T", j.worst, "mm", "plus or minus on the size, all limits at once", MarkPractice)
	e.given("M+", math.Exp(j.modelUp), "1", "ratio by which the model may lie too low, two standard deviations", MarkPractice)
	e.given("M-", math.Exp(j.modelDown), "1", "ratio by which it may lie too high: another model, or what this one leaves out", MarkOwn)
}
