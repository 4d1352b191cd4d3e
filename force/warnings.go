package force

import (
	"fmt"
	"math"

	"ramnest/force/unit"
	"ramnest/force/warning"
)

// The numbers of warnings; they keep their meaning, and one that is no longer given
// is not given to another. Each is explained by the command, see its guide.
const (
	warnOverstrained      = 1
	warnYield             = 2
	warnLockedRelease     = 3
	warnNotFinished       = 4
	warnSharpEdge         = 5
	warnNoSecant          = 6
	warnModel             = 7
	warnCreep             = 8
	warnBuild             = 9
	warnLoose             = 10
	warnOverstrainedShare = 11
	warnJam               = 12
	warnThick             = 13
	warnBendsAcross       = 14
	warnSharpRoot         = 15
	warnBigDeflection     = 16
	warnBallRoom          = 17
	warnStemRoom          = 18
	warnFitOnPrint        = 19
	warnCrush             = 20
	warnStagger           = 21
	warnSpringback        = 22
	warnCone              = 23
	warnWideFinger        = 24
	warnNoFloat           = 25
	warnWallBends         = 26
	warnPinPressed        = 27
	warnHoldUnsure        = 28
	warnWorstBelowP95     = 29
	warnBelowNominal      = 30
	warnHoldShort         = 84
	warnHoldUnknown       = 85
	warnUnlikelyFigure    = 76
	warnUnlikelySize      = 77
)

// A warner gathers what a person should know of one latch.
type warner struct {
	l            *Latch
	j            *joint
	s            state
	r            *LatchResult
	outer, inner Material
	out          []warning.Warning
}

func (w *warner) add(n int, format string, v ...any) {
	w.out = append(w.out, warning.Warning{Number: n, Text: unit.Say(w.l.ID + ": ").Plus(unit.Textf(format, v...))})
}

// latchWarnings says what the person should know of one latch.
func latchWarnings(l Latch, j *joint, s state, r LatchResult, mu Friction, outer, inner Material) []warning.Warning {
	w := &warner{l: &l, j: j, s: s, r: &r, outer: outer, inner: inner}
	add := w.add
	l.Joint().warn(w)
	if j.path == slide && j.alpha == 0 {
		add(warnSharpEdge, "has no lead-in: a sharp edge shaves plastic and the force is not the one computed")
	}
	if j.path == slide && !(outer.Metal() && inner.Metal()) {
		add(warnCreep, "plastic creeps: the hold falls from the day of assembly on; the separation force is the one right after pressing")
	}
	switch {
	case l.Use != "releasable" && r.SelfLocking && r.SeparationLow > 0:
		add(warnHoldUnsure, "locks at a friction of %.3g but not at the low end of its spread, where %v may pull it apart", mu.Value,
			unit.Force.Of(r.SeparationLow).To(4))
	case l.Use != "releasable":
	case r.SelfLocking && j.path == hump:
		add(warnLockedRelease, "is to be releasable but its return angle %s deg locks at a friction of %.3g (limit %.3g deg)",
			figure(j.back*degree), mu.Value, (SeparableLimit(mu.Value)+j.backLean(mu.Value, s.outerMove))*degree)
	case r.SelfLocking:
		add(warnLockedRelease, "is to be releasable but locks at a friction of %.3g", mu.Value)
	case r.SeparationHigh == 0:
		add(warnLockedRelease, "is to be releasable but locks at the high end of the spread of its friction")
	}
	if r.Strain > r.Permitted {
		strain, permitted := unit.Apart(3, unit.Share, r.Strain, r.Permitted)
		add(warnOverstrained, "%s: %v is above the permitted %v", r.StrainOf, strain, permitted)
	}
	if j.engage < j.stroke-1e-6 {
		engage, stroke := unit.Apart(4, unit.Length, j.engage, j.stroke)
		add(warnNotFinished, "engages at a lift of %v but needs %v: it is not home at the seat", engage, stroke)
	}
	if !j.flows {
		w.materials()
	}
	return w.out
}

// thickWall is the wall over mid-wall radius beyond which the ring model depends
// on the width of the contact; see the finite elements in the tests.
const thickWall = 0.8

// fingers warns of wide ones.
func (w *warner) fingers(f fingers) {
	if f.arc() > 2*math.Pi/3+1e-9 {
		w.add(warnWideFinger, "fingers %.3g deg wide flatten as they bend: they count as stiff beams and the force lies high", f.arc()*degree)
	}
}

// materials says what the materials of both members leave open, each matter
// once.
func (w *warner) materials() {
	said := map[string]bool{}
	once := func(n int, format, name string) {
		if !said[format+name] {
			said[format+name] = true
			w.add(n, format, name)
		}
	}
	for i, m := range [2]Material{w.outer, w.inner} {
		spring := w.j.outer
		if i == 1 {
			spring = w.j.inner
		}
		if spring.stiffness == 0 || m.Metal() {
			continue
		}
		if m.SecantZero.Mark == MarkOwn {
			once(warnNoSecant, "no measured secant data for %s: its stress is bent to its strength by rule, see the topic materials", m.Name)
		}
		if w.j.arm || !m.Layered() || m.StrainOnceZ.Value >= m.StrainOnce.Value {
			continue
		}
		if spring.law == ringWall && m.Build != "along" {
			once(warnBuild, "%s rings are stretched across their layers, or may be: build it along the press axis and say build: along", m.Name)
		}
		if spring.law == armWall && m.Build != "across" {
			once(warnBendsAcross, "%s fingers bend across the layers, or may: turn the part so that they lie in the layers and say build: across, or expect a short life", m.Name)
		}
	}
}

// friction writes the friction from which on a joint locks.
func friction(mu float64) string {
	if mu == 0 {
		return fmt.Sprintf("above %.3g", maxFriction)
	}
	return fmt.Sprintf("%.3g", mu)
}

// warn gathers the warnings of the whole step.
func (r *Result) warn(a Assembly, mu float64, lower, upper Material) {
	add := func(n int, format string, v ...any) {
		r.Warnings = append(r.Warnings, warning.New(n, format, v...))
	}
	a.warnDoubts(add)
	if r.Loose > 0 {
		add(warnLoose, "%v of assemblies have a loose latch within the stated tolerances", portionOf(r.Loose))
	}
	if r.Overstrained > 0 {
		add(warnOverstrainedShare, "%v of assemblies strain a latch beyond what is permitted", portionOf(r.Overstrained))
	}
	for _, l := range r.Latches {
		switch {
		case l.Locks:
			add(warnJam, "%s: locks at a friction of %.3g, and from %s on: no push joins it, there is no nominal force", l.ID, mu,
				friction(l.LocksFrom))
		case l.Jammed > 0:
			add(warnJam, "%s: jams in %v of assemblies, from a friction of %s on at nominal size: no push joins those", l.ID, portionOf(l.Jammed),
				friction(l.LocksFrom))
		}
	}
	if r.NoP95 {
		add(warnJam, "%v of assemblies jam: with more than %.0f %% there is no P95, and no design force", portionOf(r.Jammed), 100*JamsForP95)
	}
	r.explain(add)
	r.warnHold(add)
	if r.Springback > 0 {
		add(warnSpringback, "at the seat the latches push the parts apart with %v: they do not stay home by themselves",
			unit.Force.Of(r.Springback))
	}
	if keeps := keepsApart(lower, upper); staggered(r.Latches, keeps) {
		add(warnStagger, "latches peak less than %v apart in lift, which the process does not keep: the band counts them at one lift; all at once they need %v", unit.Length.Of(keeps).To(2), unit.Force.Of(r.PeakStack).To(4))
	}
}

// explain says why figures stand in an order that a reader would not expect. The worst
// case has every cause at the end of its stated range, and draws reach past that; the
// error of the model reaches further down than up where another model gives less.
func (r *Result) explain(add func(int, string, ...any)) {
	if r.Locks || r.NoP95 {
		return
	}
	if r.Worst < r.P95 {
		worst, p95 := unit.Apart(4, unit.Force, r.Worst, r.P95)
		add(warnWorstBelowP95, "the worst case, every cause at the end of its stated range, is %v, below P95, %v: the draws reach past those ends", worst, p95)
	}
	if r.Design < r.Peak {
		design, peak := unit.Apart(4, unit.Force, r.Design, r.Peak)
		add(warnBelowNominal, "the design force, %v, lies below the nominal peak, %v: sizes, friction or the force model vary further down than up", design, peak)
	}
}
