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

// Numbers are written as arithmetic: + - * / ^ and sqrt, ln, exp, and sin, cos,
// tan of degrees; atan and acos give degrees.

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
		return explain(l, &j, p, s, mu, outer, inner)
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
	e.tolerance()
	return e.lines
}

type explainer struct {
	j            *joint
	p            profile
	s            state
	mu           float64
	outer, inner Material
	lines        []Line
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

// step adds a formula; numbers is a format of %[..] verbs for vals, written with
// seven digits.
func (e *explainer) step(id, symbol string, v float64, unit, formula, source string, m Mark, numbers string, vals ...float64) {
	args := make([]any, len(vals))
	for i, x := range vals {
		args[i] = number(x)
	}
	text := numbers
	if len(vals) > 0 {
		text = fmt.Sprintf(numbers, args...)
	}
	e.lines = append(e.lines, Line{ID: id, Symbol: symbol, Value: v, Unit: unit, Formula: formula, Numbers: text, Source: source, Mark: m})
}

// number writes a value for arithmetic: seven digits, negatives in brackets.
func number(v float64) string {
	if v < 0 {
		return fmt.Sprintf("(%.7g)", v)
	}
	return fmt.Sprintf("%.7g", v)
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

// flank explains the mating factor.
func (e *explainer) flank(alpha float64) float64 {
	f := e.s.factor
	e.step("flank.factor", "f", f, "1", "f = tan(alpha + rho) = (mu + tan alpha)/(1 - mu tan alpha)", sourceGuide+", p. 14", MarkRead,
		"(%s + tan(%s))/(1 - %s*tan(%s))", e.mu, alpha*degree, e.mu, alpha*degree)
	return f
}

// series explains how the movement is shared between the members and what load
// that makes.
func (e *explainer) series(ko, ki float64) {
	s, j := &e.s, e.j
	load, w := s.load, s.move
	if s.yields {
		load, _, _ = series(&j.outer, &j.inner, ko, ki, w)
	}
	wi := w - s.outerMove
	secant := func(id, symbol string, m *member, k, move float64) {
		if m.zero > 0 && move <= m.zero/2 {
			e.step("secant."+id, symbol, load, "N", "P = K w (1 - w/a), a: movement at which the secant line meets zero; both members carry the same P", "secant line through the chart of "+sourceGuide, MarkMemory,
				"%s*%s*(1 - %s/%s)", k, move, move, m.zero)
		} else if m.zero > 0 {
			e.step("secant.top", symbol, load, "N", "P = K a/4, the top of the secant line", "own", MarkOwn, "%s*%s/4", k, m.zero)
		} else {
			e.step("spring."+id, symbol, load, "N", "P = K w; both members carry the same P", "springs in series", MarkOwn, "%s*%s", k, move)
		}
	}
	switch {
	case ki == 0:
		secant("outer", "P", &j.outer, ko, s.outerMove)
	case j.outer.zero == 0 && j.inner.zero == 0:
		e.step("spring.series", "P", load, "N", "P = w K_o K_i/(K_o + K_i)", "springs in series", MarkOwn, "%s*%s*%s/(%s + %s)", w, ko, ki, ko, ki)
		e.step("spring.share", "w_o", s.outerMove, "mm", "w_o = P/K_o", "springs in series", MarkOwn, "%s/%s", load, ko)
	default:
		e.step("spring.share", "w_o", s.outerMove, "mm", "w_o solves K_o w_o (1 - w_o/a_o) = K_i (w - w_o) (1 - (w - w_o)/a_i)", "springs in series", MarkOwn, "")
		secant("outer", "P", &j.outer, ko, s.outerMove)
		secant("inner", "P", &j.inner, ki, wi)
	}
}

// strains explains the strain of both members of a ring.
func (e *explainer) strains(d float64) {
	if e.j.outer.law == ringWall {
		e.step("ring.strain", "eps_o", e.s.outerStrain, "1", "eps = 2 w_o/d", sourceGuide+", p. 20, as y/d", MarkRead, "2*%s/%s", e.s.outerMove, d)
	}
	if e.j.inner.stiffness > 0 && e.j.inner.law == ringWall {
		e.step("ring.strain", "eps_i", e.s.innerStrain, "1", "eps = 2 w_i/d", sourceGuide+", p. 20, as y/d", MarkRead, "2*(%s - %s)/%s", e.s.move, e.s.outerMove, d)
	}
}

// separation explains the force that pulls a snap apart.
func (e *explainer) separation() {
	f, locked := e.j.separation(e.mu, e.s)
	back := max(0, e.j.back-e.j.rotation*e.s.outerMove) * degree
	formula := "W' = P tan(alpha' + rho)"
	if e.j.rotation != 0 {
		formula = "W' = P tan(alpha' - theta + rho)"
	}
	if locked {
		e.step("flank.locked", "alpha' + rho", back+math.Atan(e.mu)*degree, "deg", "alpha' + rho of 90 deg or more: self-locking, no pull opens it", "DSM Technical Guide, 2005, p. 7", MarkRead, "%s + atan(%s)", back, e.mu)
		return
	}
	e.step("flank.separation", "W'", f, "N", formula, sourceGuide+", p. 14", MarkRead,
		"%s*(%s + tan(%s))/(1 - %s*tan(%s))", e.s.load, e.mu, back, e.mu, back)
}

// tolerance states what the band is drawn from.
func (e *explainer) tolerance() {
	j := e.j
	e.given("T", j.worst, "mm", "plus or minus on the size, all limits at once", MarkPractice)
	e.given("M+", math.Exp(j.modelUp), "1", "ratio by which the model may lie too low, two standard deviations", MarkPractice)
	e.given("M-", math.Exp(j.modelDown), "1", "ratio by which it may lie too high: another model, or what this one leaves out", MarkOwn)
}
