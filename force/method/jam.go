package method

import (
	"fmt"

	"ramnest/force/unit"
)

// What share of assemblies may jam, so that no push joins them [1]. Own: one in a
// hundred is scrap that somebody will try to force home, one in a thousand is a part
// that is set aside. No source gives either.
const (
	JamPass = 0.001 // above it the engineer responsible must agree
	JamMost = 0.01  // and above this no method will do
)

// jamLimits holds the share of assemblies that jam against what any method may have:
// no tool joins those. None if none jams.
func jamLimits(d Demand) []Limit {
	if d.Jammed == 0 && !d.NoP95 {
		return nil
	}
	return []Limit{
		newLimit(string(LimitJams), 100*d.Jammed, 100*JamPass, "%", own("no push joins them, and who presses forces them")).soft(engineer),
		newLimit(largest+string(LimitJams), 100*d.Jammed, 100*JamMost, "%", own("no push joins them, and who presses forces them")),
	}
}

// jams puts the share that jams beside the other limits of a method.
func (a Assessment) jams(d Demand) Assessment {
	if more := jamLimits(d); more != nil {
		a.Limits = append(a.Limits, more...)
		return a.weigh()
	}
	return a
}

// withoutForce is the decision where so many assemblies jam that there is no design
// force: no method, and no override. Nothing else is reckoned.
func withoutForce(d Demand) Decision {
	why := fmt.Sprintf("%s %% of assemblies jam, so that there is no P95 and no force to choose a method by; no push joins them, and no reason lifts that", num(100*d.Jammed))
	out := Decision{Chosen: None, RunnerUp: None, Reason: unit.Say(why), Next: unit.Say("there is no runner-up")}
	for _, m := range []Method{ByHand, ByMallet, ByPress} {
		out.Options = append(out.Options, Assessment{Method: m, Action: unit.Say(m.Title()), Limits: jamLimits(d)}.weigh().worded(unit.Text{}))
	}
	return out
}
