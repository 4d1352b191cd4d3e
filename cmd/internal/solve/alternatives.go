package solve

import (
	"fmt"
	"math"

	"ramnest/force"
	"ramnest/force/method"
	"ramnest/force/planar"
)

// How far each single change goes (own: what a designer would try first).
const (
	lessInterference = 0.8  // of the interference or undercut
	slipperyFriction = 0.5  // of the friction, silicone or PTFE spray; no source: measure it
	shallowLead      = 20.0 // lead-in [deg], at most
	collarSlots      = 6
	slotWide         = 1.0 // [mm]
)

// A trial is a single change with what it makes of the forces.
type trial struct {
	change       method.Change
	what, undone string
	result       force.Result
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
func changed(a force.Assembly, r force.Result, c method.Change) (force.Assembly, string, bool) {
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
	any, what := false, ""
	for i, l := range a.Latches {
		text, done := "", false
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
			if what != "" {
				what += ", "
			}
			what += l.ID + " " + text
		}
		latches[i] = l
	}
	a.Latches = latches
	return a, what, any
}

// lubricated halves the friction of both parts.
func lubricated(a force.Assembly) (force.Assembly, string, bool) {
	lower, faults := a.Shop.Resolve(a.Lower)
	if faults != nil {
		return a, "", false
	}
	upper, faults := a.Shop.Resolve(a.Upper)
	if faults != nil {
		return a, "", false
	}
	slip := func(s force.MaterialSpec, m force.Material) force.MaterialSpec {
		mu := m.Friction.Value * slipperyFriction
		s.Friction = &mu
		return s
	}
	a.Lower, a.Upper = slip(a.Lower, lower), slip(a.Upper, upper)
	return a, "friction halved by a dry lubricant, to be measured", true
}

func slotted(l *force.Latch) (string, bool) {
	if l.Annular == nil || l.Annular.Split != "" && l.Annular.Split != "none" {
		return "", false
	}
	c := *l.Annular
	c.Split, c.Slots, c.SlotWidth = "outer", collarSlots, slotWide
	c.SlotDepth = math.Max(c.EndDistance+c.OuterDiameter-c.JointDiameter, 2.5*c.EndDistance)
	if c.FarDistance > 0 {
		c.SlotDepth = math.Min(c.SlotDepth, c.EndDistance+0.8*c.FarDistance)
	}
	l.Annular = &c
	return fmt.Sprintf("with %d slots %.3g mm deep", c.Slots, c.SlotDepth), true
}

func shallower(l *force.Latch) (string, bool) {
	if l.Ball != nil || l.CrushRib != nil || lead(l, shallowLead*degree) == "" {
		return "", false
	}
	return fmt.Sprintf("lead-in %.0f deg", shallowLead), true
}

func looser(l *force.Latch) (string, bool) {
	scale := func(v float64) float64 { return v * lessInterference }
	switch {
	case l.Annular != nil && l.Annular.Undercut > 0:
		c := *l.Annular
		c.Undercut = scale(c.Undercut)
		l.Annular = &c
		return fmt.Sprintf("undercut %.3g mm", c.Undercut), true
	case l.Annular != nil:
		c := *l.Annular
		c.BeadDiameter = c.LipDiameter + scale(c.BeadDiameter-c.LipDiameter)
		l.Annular = &c
		return fmt.Sprintf("bead %.4g mm", c.BeadDiameter), true
	case l.Cantilever != nil:
		c := *l.Cantilever
		c.Undercut = scale(c.Undercut)
		l.Cantilever = &c
		return fmt.Sprintf("undercut %.3g mm", c.Undercut), true
	case l.PressFit != nil && l.PressFit.Interference > 0:
		c := *l.PressFit
		c.Interference = scale(c.Interference)
		l.PressFit = &c
		return fmt.Sprintf("interference %.3g mm", c.Interference), true
	case l.PressFit != nil && l.PressFit.PinDiameter > 0:
		c := *l.PressFit
		c.PinDiameter = c.BoreDiameter + scale(c.PinDiameter-c.BoreDiameter)
		l.PressFit = &c
		return fmt.Sprintf("pin %.4g mm", c.PinDiameter), true
	case l.Ball != nil:
		c := *l.Ball
		c.MouthDiameter = c.BallDiameter - scale(c.BallDiameter-c.MouthDiameter)
		l.Ball = &c
		return fmt.Sprintf("mouth %.4g mm", c.MouthDiameter), true
	case l.CrushRib != nil:
		c := *l.CrushRib
		c.Crush = scale(c.Crush)
		l.CrushRib = &c
		return fmt.Sprintf("crush %.3g mm", c.Crush), true
	}
	return "", false
}

// fewer leaves every third place out, but not below three.
func fewer(l *force.Latch) (string, bool) {
	if len(l.At) < 4 {
		return "", false
	}
	var at, toward []planar.Point
	each := l.Cantilever != nil && len(l.Cantilever.Toward) == len(l.At)
	for i, p := range l.At {
		if i%3 == 2 && len(l.At)-(i/3+1) >= 3 {
			continue
		}
		at = append(at, p)
		if each {
			toward = append(toward, l.Cantilever.Toward[i])
		}
	}
	l.At = at
	if each {
		c := *l.Cantilever
		c.Toward = toward
		l.Cantilever = &c
	}
	return fmt.Sprintf("at %d places", len(at)), true
}
