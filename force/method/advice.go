package method

import (
	"cmp"
	"fmt"
	"ramnest/force/unit"
	"slices"
)

// A Change is a single change of the joint that may bring the force down. Heat is
// none of them.
type Change string

// The changes that are worth a try.
const (
	StaggerDepths    Change = "stagger depths"
	SlotCollar       Change = "slots in the collar"
	LeadAngle        Change = "lead angle"
	Lubricate        Change = "lubricated friction"
	LessInterference Change = "less interference"
	FewerLatches     Change = "fewer latches"
	JamFreeAngle     Change = "lead-in against jams"
	JamFreeFriction  Change = "friction against jams"
)

// Changes lists them.
func Changes() []Change {
	return []Change{StaggerDepths, SlotCollar, LeadAngle, Lubricate, LessInterference, FewerLatches, JamFreeAngle, JamFreeFriction}
}

// An Alternative is the joint with one thing changed, its forces computed by the
// caller: take the demand of the joint as it is, put the new forces in with
// [Demand.WithResult], and set what else the change changes.
type Alternative struct {
	Change Change
	What   unit.Text // what exactly: "hooks 2 mm later than the ring"
	Demand Demand    // with the change
	Holds  float64   // what pulls the joint apart with the change [N]; 0: not known
	Undone string    // why it could not be worked out; the demand is not looked at then
}

// An Outcome says what an alternative would bring.
type Outcome struct {
	Alternative
	Method  Method    // the least that passes, else the least on a condition, else None
	Verdict Verdict   // Fail if there is none
	Action  unit.Text // how that method is done
	Saved   float64   // share of the design force that falls away [1]; below 0 if it grows
	Text    unit.Text // one sentence
}

// Advise assesses every alternative against all methods, and puts first what helps
// most: what passes before what needs a person's agreement, the least method first,
// then the least force; last, in their order, those that could not be worked out.
// now is the demand of the joint as it is; holds is what pulls it apart [N], 0 if
// not known.
func Advise(now Demand, holds float64, b Bench, alts []Alternative) []Outcome {
	var out []Outcome
	for _, a := range alts {
		out = append(out, advise(now, holds, b, a))
	}
	slices.SortStableFunc(out, func(a, b Outcome) int {
		if a.Undone != "" || b.Undone != "" {
			return cmp.Compare(min(len(a.Undone), 1), min(len(b.Undone), 1))
		}
		return cmp.Or(cmp.Compare(a.Verdict.rank(), b.Verdict.rank()), cmp.Compare(a.Method.rank(), b.Method.rank()),
			cmp.Compare(one(a.Demand.NoP95), one(b.Demand.NoP95)), cmp.Compare(a.Demand.DesignForce, b.Demand.DesignForce))
	})
	return out
}

func advise(now Demand, holds float64, b Bench, a Alternative) Outcome {
	o := Outcome{Alternative: a, Method: None, Verdict: Fail}
	name := unit.Say(string(a.Change))
	if !a.What.Empty() {
		name = name.Plus(", ", a.What)
	}
	if o.Undone == "" {
		switch faults := append(a.Demand.Validate(), b.Validate()...); {
		case len(faults) > 0:
			o.Undone = faults[0].Error()
		case !(now.DesignForce > 0 && now.DesignForce <= maxForce) && !now.NoP95:
			o.Undone = "the force without it is not known"
		}
	}
	if o.Undone != "" {
		o.Text = name.Plus(": not worked out, " + o.Undone)
		return o
	}
	d, _ := a.Demand.filled()
	b, _ = b.filled()
	options := assess(d, b)
	o.Method = pick(options, None)
	if !now.NoP95 && !d.NoP95 {
		o.Saved = 1 - d.DesignForce/now.DesignForce
	}
	allows := "no method yet"
	for _, m := range options {
		if m.Method != o.Method {
			continue
		}
		o.Verdict, o.Action = m.Verdict, m.Action
		allows = m.Method.Title() + " passes"
		if m.Verdict == Conditional {
			allows = m.Method.Title() + " if " + m.agrees()
		}
	}
	switch jam := now.jammed(d); {
	case d.NoP95:
		o.Text = unit.Textf("%v: no design force, %s, %s", name, jam, allows)
	case now.NoP95:
		o.Text = unit.Textf("%v: %v, %s, %s", name, unit.Force.Of(d.DesignForce), jam, allows)
	default:
		o.Text = unit.Textf("%v: %v instead of %v (%s), ", name, unit.Force.Of(d.DesignForce), unit.Force.Of(now.DesignForce), percent(-o.Saved))
		if jam != "" {
			o.Text = o.Text.Plus(jam + ", ")
		}
		o.Text = o.Text.Plus(allows)
	}
	if a.Holds > 0 && holds > 0 && a.Holds <= 1e9 && holds <= 1e9 {
		o.Text = o.Text.Plus("; it comes apart at ", unit.Force.Of(a.Holds))
		if num(a.Holds) != num(holds) {
			o.Text = o.Text.Plus(" instead of ", unit.Force.Of(holds))
		}
	}
	return o
}

// jammed says how the share that jams changes with an alternative; empty if none does
// either way.
func (now Demand) jammed(d Demand) string {
	if now.Jammed == 0 && d.Jammed == 0 {
		return ""
	}
	return fmt.Sprintf("%s %% of assemblies jam instead of %s %%", num(100*d.Jammed), num(100*now.Jammed))
}

// percent writes a share with its sign.
func percent(x float64) string { return fmt.Sprintf("%+.0f %%", 100*x) }

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}

// rank orders methods from the least to the most, none last.
func (m Method) rank() int { return slices.Index([]Method{ByHand, ByMallet, ByPress, None}, m) }

// Advised is the decision with the alternatives assessed, and those that lower the
// force put at the head of the advice. d and b are those the decision was made with.
func (out Decision) Advised(d Demand, holds float64, b Bench, alts []Alternative) Decision {
	out.Alternatives = Advise(d, holds, b, alts)
	var say []unit.Text
	for _, o := range out.Alternatives {
		if o.Undone == "" && (o.Saved > 0 && o.Demand.Jammed <= d.Jammed || o.Demand.Jammed < d.Jammed) {
			say = append(say, o.Text)
		}
	}
	out.Advice = append(say, out.Advice...)
	return out
}

// mostPeople is how many people are tried to take turns.
const mostPeople = 12

// advice tries single changes of the work and says what each allows.
func advice(d Demand, b Bench, most func(Method) float64) []unit.Text {
	var out []unit.Text
	for _, m := range []Method{ByHand, ByMallet, ByPress} {
		if f := most(m); f > 0 && f < d.DesignForce {
			out = append(out, unit.Textf("bring the design force from %v below %v (-%.0f %%): %s passes", unit.Force.Of(d.DesignForce),
				unit.Force.Of(f), 100*(1-f/d.DesignForce), m.Title()))
		}
	}
	if d.Jammed > JamPass {
		return append(out, unit.Say("no other force, rate or machine puts right what jams: the joint must change"))
	}
	found := len(out) > 0
	trials := []struct {
		say string
		do  func(*Demand)
	}{
		{"no more than 120 an hour", func(d *Demand) { d.RatePerHour = min(d.RatePerHour, 120) }},
		{"no more than 12 an hour", func(d *Demand) { d.RatePerHour = min(d.RatePerHour, 12) }},
		{"two hours of this work a day", func(d *Demand) { d.HoursPerDay = min(d.HoursPerDay, 2) }},
		{"one hour of this work a day", func(d *Demand) { d.HoursPerDay = min(d.HoursPerDay, 1) }},
		{"actions of 3 s at most", func(d *Demand) { d.ActionSeconds = min(d.ActionSeconds, 3) }},
		{"the thrust line kept on the ram axis", func(d *Demand) { d.ThrustWander = 0 }},
		{"12 an hour for one hour a day", func(d *Demand) {
			d.RatePerHour, d.HoursPerDay = min(d.RatePerHour, 12), min(d.HoursPerDay, 1)
		}},
	}
	for _, t := range trials {
		at := d
		t.do(&at)
		if at == d {
			continue
		}
		if a := free(at, b); a.Verdict == Pass {
			out = append(out, unit.Textf("%s: %s passes", t.say, a.Method.Title()))
			found = true
		}
	}
	for _, m := range []Method{ByHand, ByPress} {
		if n := turns(m, d, b); n > 1 {
			out = append(out, unit.Textf("%d people taking turns, each at most %s an hour: %s passes", n, num(d.RatePerHour/float64(n)), m.Title()))
			found = true
		}
	}
	if !found {
		out = append(out, unit.Say("a powered press is another machine: a competent designer, guarding and an assessment of its own"))
	}
	return out
}

// turns gives the fewest people with whom a method passes if they share the rate; 0
// if it does not with any number that was tried.
func turns(m Method, d Demand, b Bench) int {
	for n := 1; n <= mostPeople; n++ {
		at := d
		at.RatePerHour /= float64(n)
		if weigh(m, at, b).Verdict == Pass {
			return n
		}
	}
	return 0
}
