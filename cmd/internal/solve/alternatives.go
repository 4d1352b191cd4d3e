package solve

import (
	"ramnest/force"
	"ramnest/force/method"
	"ramnest/force/planar"
	"ramnest/force/unit"
)

// How far each single change goes (own: what a designer would try first).
const (
	lessInterference = 0.8  // of the interference or undercut
	slipperyFriction = 0.5  // of the friction, silicone or PTFE spray; no source: measure it
	shallowLead      = 20.0 // lead-in [deg], at most
)

// A trial is a single change with what it makes of the forces.
type trial struct {
	change method.Change
	what   unit.Text
	undone string
	result force.Result
}

// alternatives is what each single change would make of a step. A change that does
// not apply to its latches is left out; one that the force room refuses is named
// with the reason.
func alternatives(st *Step) []method.Alternative {
	if st.trials == nil {
		st.trials = trials(st)
	}
	var out []method.Alternative
	for _, t := range st.trials {
		alt := method.Alternative{Change: t.change, What: t.what, Undone: t.undone}
		if t.undone == "" {
			alt.Demand, alt.Holds = st.Demand.WithResult(t.result), holds(t.result)
		}
		out = append(out, alt)
	}
	return out
}

// trials computes the forces with each single change.
func trials(st *Step) []trial {
	out := []trial{}
	for _, c := range method.Changes() {
		a, what, ok := changed(st.Assembly, st.Result, c)
		if !ok {
			continue
		}
		t := trial{change: c, what: what}
		var err error
		if t.result, err = force.Analyse(a); err != nil {
			t.undone = err.Error()
		}
		out = append(out, t)
	}
	return out
}

// holds is the force to pull the parts straight apart [N]; 0 if a latch never lets
// go.
func holds(r force.Result) float64 {
	sum := 0.0
	for _, l := range r.Latches {
		if l.SelfLocking {
			return 0
		}
		sum += l.Separation * float64(l.Count)
	}
	return sum
}

// changed gives the assembly with one change, and what was changed.
func changed(a force.Assembly, r force.Result, c method.Change) (force.Assembly, unit.Text, bool) {
	switch c {
	case method.StaggerDepths:
		staggered, what, ok := force.Stagger(a)
		return staggered, what, ok
	case method.Lubricate:
		return lubricated(a)
	case method.JamFreeAngle, method.JamFreeFriction:
		return jamFree(a, r, c)
	}
	latches := make([]force.Latch, len(a.Latches))
	var any bool
	var what unit.Text
	for i, l := range a.Latches {
		var text unit.Text
		done := false
		switch c {
		case method.SlotCollar:
			text, done = slotted(&l)
		case method.LeadAngle:
			text, done = shallower(&l)
		case method.LessInterference:
			text, done = looser(&l)
		case method.FewerLatches:
			text, done = fewer(&l)
		}
		if done {
			any = true
			if !what.Empty() {
				what = what.Plus(", ")
			}
			what = what.Plus(l.ID+" ", text)
		}
		latches[i] = l
	}
	a.Latches = latches
	return a, what, any
}

// lubricated halves the friction of both parts.
func lubricated(a force.Assembly) (force.Assembly, unit.Text, bool) {
	lower, faults := a.Shop.Resolve(a.Lower)
	if faults != nil {
		return a, unit.Text{}, false
	}
	upper, faults := a.Shop.Resolve(a.Upper)
	if faults != nil {
		return a, unit.Text{}, false
	}
	slip := func(s force.MaterialSpec, m force.Material) force.MaterialSpec {
		mu := m.Friction.Value * slipperyFriction
		s.Friction = &mu
		return s
	}
	a.Lower, a.Upper = slip(a.Lower, lower), slip(a.Upper, upper)
	return a, unit.Say("friction halved by a dry lubricant, to be measured"), true
}

// put puts a changed joint into the latch, if there is one.
func put(l *force.Latch, k force.Kind, what unit.Text) (unit.Text, bool) {
	if k == nil {
		return unit.Text{}, false
	}
	*l = l.With(k)
	return what, true
}

func slotted(l *force.Latch) (unit.Text, bool) {
	k, what := l.Joint().Slotted()
	return put(l, k, what)
}

func shallower(l *force.Latch) (unit.Text, bool) {
	k, _, first := l.Joint().Gentler(shallowLead * degree)
	if !first {
		return unit.Text{}, false
	}
	return put(l, k, unit.Textf("lead-in %.0f deg", shallowLead))
}

func looser(l *force.Latch) (unit.Text, bool) {
	k, what := l.Joint().Looser(lessInterference)
	return put(l, k, what)
}

// fewer leaves every third place out, but not below three.
func fewer(l *force.Latch) (unit.Text, bool) {
	if len(l.At) < 4 {
		return unit.Text{}, false
	}
	var at []planar.Point
	var keep []int
	for i, p := range l.At {
		if i%3 == 2 && len(l.At)-(i/3+1) >= 3 {
			continue
		}
		at, keep = append(at, p), append(keep, i)
	}
	*l = l.With(l.Joint().Kept(keep))
	l.At = at
	return unit.Textf("at %d places", len(at)), true
}
