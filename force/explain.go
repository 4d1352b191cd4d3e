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

// explain dispatches by kind. outer is the part of the joint's first member.
func explain(l Latch, j *joint, p profile, s state, mu Figure, outer, inner Material) []Line {
	e := &explainer{j: j, p: p, s: s, mu: mu.Value, outer: outer, inner: inner}
	e.given("mu", mu.Value, "1", "coefficient of friction", mu.Mark)
	switch {
	case l.Annular != nil:
		e.annular(l.Annular)
	case l.Ball != nil:
		e.ball(l.Ball)
	case l.Cantilever != nil:
		e.cantilever(l.Cantilever)
	case l.PressFit != nil:
		e.press(l.PressFit)
	case l.CrushRib != nil:
		e.crush(l.CrushRib)
	}
	if s.jam {
		e.locks()
	}
	e.strength(l)
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
	p            profile
	s            state
	mu           float64
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
	e.step("contact.factor", symbol, v, "1", "F = f/(1 - f kappa): the axial force turns the wall against its way", "own", MarkOwn, "%[1]s/(1 - %[1]s*%[2]s)", f, e.j.lever)
	return v
}

// crest explains the forces at the end of the lead-in and on the land.
func (e *explainer) crest(lead, land, flat float64) {
	e.step("snap.force", "W", e.s.load*lead, "N", "W = P F, at the end of the lead-in", sourceGuide+", p. 14, with its f for F", MarkRead, "%s*%s", e.s.load, lead)
	if flat > 0 {
		e.step("snap.land", "W_land", e.s.load*land, "N", "W = P F on the land", sourceGuide+", p. 14, with its f for F", MarkRead, "%s*%s", e.s.load, land)
	}
}

// series explains how the movement is shared between the members and what load
// that makes.
func (e *explainer) series(ko, ki float64, unit string) float64 {
	s, j := &e.s, e.j
	w := s.move
	load, wo, _ := series(&j.outer, &j.inner, ko, ki, w)
	ao, ai := j.outer.zero, j.inner.zero
	const line = "secant line through the chart of " + sourceGuide
	top := func(id string, k, a float64) {
		e.step("secant."+id, "P", load, unit, "P = K a/4, the top of the secant line; a: movement at which the line meets zero", "own", MarkOwn, "%s*%s/4", k, a)
	}
	switch {
	case ki == 0 && ao == 0:
		e.step("spring.single", "P", load, unit, "P = K w", "spring", MarkOwn, "%s*%s", ko, w)
	case ki == 0 && w < ao/2:
		e.step("secant.single", "P", load, unit, "P = K w (1 - w/a), a: movement at which the secant line meets zero", line, MarkMemory, "%[1]s*%[2]s*(1 - %[2]s/%[3]s)", ko, w, ao)
	case ki == 0:
		top("top", ko, ao)
	case ao == 0 && ai == 0:
		e.step("spring.series", "P", load, unit, "P = w K_o K_i/(K_o + K_i)", "springs in series", MarkOwn, "%[1]s*%[2]s*%[3]s/(%[2]s + %[3]s)", w, ko, ki)
		e.step("spring.share", "w_o", wo, "mm", "w_o = P/K_o", "springs in series", MarkOwn, "%s/%s", load, ko)
	case load == j.outer.most(ko):
		top("top", ko, ao)
		e.opposite("w_i", "w_o", ki, ai, load, w)
	case load == j.inner.most(ki):
		top("top", ki, ai)
		e.opposite("w_o", "", ko, ao, load, w)
	default:
		e.share(ko, ki, ao, ai, w, wo)
		e.step("secant.outer", "P", load, unit, "P = K_o w_o (1 - w_o/a_o); both members carry the same P", line, MarkMemory, "%[1]s*%[2]s*(1 - %[2]s*%[3]s)", ko, wo, inverse(ao))
	}
	return load
}

// opposite explains the movement of the member that is not at its top, and then
// of the one that is.
func (e *explainer) opposite(symbol, other string, k, a, load, w float64) {
	m := member{stiffness: k, zero: a}
	v := m.movementAt(k, load)
	if a == 0 {
		e.step("spring.share", symbol, v, "mm", symbol+" = P/K", "springs in series", MarkOwn, "%s/%s", load, k)
	} else {
		e.step("secant.share", symbol, v, "mm", symbol+" = a/2 (1 - sqrt(1 - 4 P/(K a)))", "springs in series", MarkOwn, "%[1]s/2*(1 - sqrt(1 - 4*%[2]s/(%[3]s*%[1]s)))", a, load, k)
	}
	if other != "" {
		e.step("secant.rest", other, w-v, "mm", other+" = w - "+symbol+": it takes the rest", "springs in series", MarkOwn, "%s - %s", w, v)
	}
}

// share explains the movement of the outer member where a modulus falls with it.
func (e *explainer) share(ko, ki, ao, ai, w, wo float64) {
	a := ki*inverse(ai) - ko*inverse(ao)
	b := ko + ki*(1-2*w*inverse(ai))
	c := ki * w * (1 - w*inverse(ai))
	e.step("secant.a", "q_a", a, "N/mm^2", "q_a = K_i/a_i - K_o/a_o, a: movement at which the secant line meets zero", "springs in series", MarkOwn, "%s*%s - %s*%s", ki, inverse(ai), ko, inverse(ao))
	e.step("secant.b", "q_b", b, "N/mm", "q_b = K_o + K_i (1 - 2 w/a_i)", "springs in series", MarkOwn, "%s + %s*(1 - 2*%s*%s)", ko, ki, w, inverse(ai))
	e.step("secant.c", "q_c", c, "N", "q_c = K_i w (1 - w/a_i)", "springs in series", MarkOwn, "%s*%s*(1 - %s*%s)", ki, w, w, inverse(ai))
	e.step("secant.share", "w_o", wo, "mm", "w_o = 2 q_c/(q_b + sqrt(q_b^2 + 4 q_a q_c)): K_o w_o (1 - w_o/a_o) = K_i w_i (1 - w_i/a_i), w_i = w - w_o", "springs in series", MarkOwn,
		"2*%[3]s/(%[2]s + sqrt(%[2]s^2 + 4*%[1]s*%[3]s))", a, b, c)
}

// inverse of a movement at which a secant line meets zero; none: 0.
func inverse(a float64) float64 {
	if a == 0 {
		return 0
	}
	return 1 / a
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
			e.step("contact.lean_back", "theta'", theta, "1", "theta' = theta0 + x y f0' kappa/(1 + f0' kappa): the pull turns the hook further from its flank", "own", MarkOwn, "%[1]s + %[2]s*%[3]s*%[4]s*%[5]s/(1 + %[4]s*%[5]s)", theta0, e.j.turning, y, factor, e.j.lever)
		}
		back = max(0, back-theta)
	}
	if locked {
		e.step("flank.locked", "alpha' + rho", back*degree+math.Atan(e.mu)*degree, "deg", "alpha' + rho of 90 deg or more: self-locking, no pull opens it", "DSM Technical Guide, 2005, p. 7", MarkRead, "%s + atan(%s)", back*degree, e.mu)
		return
	}
	g := e.flank("f'", back)
	e.step("flank.separation", "W'", f, "N", "W' = P f'/(1 + f' kappa), f' at the return angle: the axial force now helps to open", sourceGuide+", p. 14, without kappa; kappa own", MarkOwn,
		"%[1]s*%[2]s/(1 + %[2]s*%[3]s)", e.s.load, g, e.j.lever)
}

// tolerance states what the band is drawn from.
func (e *explainer) tolerance() {
	j := e.j
	e.given("eps_max", j.outer.limit, "1", "permitted there, for this use and build direction", e.outer.StrainOnce.Mark)
	if j.inner.stiffness > 0 {
		e.given("eps_max_i", j.inner.limit, "1", "permitted in the inner part", e.inner.StrainOnce.Mark)
	}
	e.given("T", j.worst, "mm", "plus or minus on the size, all limits at once", MarkPractice)
	e.given("M+", math.Exp(j.modelUp), "1", "ratio by which the model may lie too low, two standard deviations", MarkPractice)
	e.given("M-", math.Exp(j.modelDown), "1", "ratio by which it may lie too high: another model, or what this one leaves out", MarkOwn)
}
