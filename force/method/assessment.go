package method

import (
	"ramnest/force/unit"
	"slices"
	"strings"
)

// An Assessment is one method held against all its limits.
type Assessment struct {
	Method      Method
	Verdict     Verdict
	Limits      []Limit
	Governing   string    // name of the limit that decides
	Utilisation float64   // of that limit [1]
	Reason      unit.Text // one or two short sentences
	Action      unit.Text // how it is done: which hand action, mallet and blow, or press
	Hand        string    // name of the action of a hand; empty unless the method is ByHand
	Agree       []string  // who must agree first; empty unless Conditional
	Open        []string  // limits of which something is not known yet

	Press  *Press  // the press assessed; nil unless the method is ByPress
	Mallet *Mallet // nil unless the method is ByMallet
	Vise   *Vise   // nil unless the method is ByMallet
	Blows  int     // whole blows at the design force; 0 unless the method is ByMallet and the masses are known

	Effort    *Effort    // what the sources say of the force a person gives; nil for blows, and where no table reaches
	Shift     *Shift     // how much of the work one person may do; nil where no source says
	Lever     *Lever     // nil unless the method is ByPress and there is a press
	Placement *Placement // nil unless the method is ByPress and the nest is known
	Skipped   []Skipped  // weaker presses that were not taken, weakest first
}

// A Skipped press is weaker than the one taken, and this is why it was not.
type Skipped struct {
	Press   string
	Verdict Verdict
	Limit   Limit // the one that decides
}

// limit names what stood in the way; lever effort by either of its limits.
func (s Skipped) limit() string { return strings.TrimPrefix(s.Limit.Name, largest) }

// weigh fills verdict and governing limit from the limits.
func (a Assessment) weigh() Assessment {
	v, at := judge(a.Limits)
	a.Verdict = v
	if at < 0 { // every limit is open: nothing is known, so nothing is passed
		a.Verdict, a.Governing = Fail, "nothing known"
		return a
	}
	a.Governing, a.Utilisation = a.Limits[at].Name, a.Limits[at].Utilisation
	return a
}

// worded fills in the reason and what it is drawn from. manner is put behind the
// action: ", both hands on the lever".
func (a Assessment) worded(manner unit.Text) Assessment {
	_, at := judge(a.Limits)
	if at < 0 {
		a.Reason = a.Action.Plus(", no limit could be computed")
		return a
	}
	for _, l := range a.Limits {
		switch {
		case l.Open:
			a.Open = append(a.Open, l.Name)
		case l.Soft && !l.OK && !slices.Contains(a.Agree, l.Who):
			a.Agree = append(a.Agree, l.Who)
		}
	}
	how, g := a.Action.Plus(manner), a.Limits[at]
	if a.Effort != nil && a.Effort.Zone != recommended {
		manner = unit.Say(", zone " + a.Effort.Zone)
	} else {
		manner = unit.Text{}
	}
	switch a.Verdict {
	case Pass:
		a.Reason = how.Plus(", within every limit; the nearest is ", g.near())
	case Conditional:
		a.Reason = how.Plus(manner, ", only if "+a.agrees(), g.over(", because of"))
	case Fail:
		a.Agree = nil
		a.Reason = how.Plus(", refused", g.over(" for"))
	}
	if a.Verdict != Fail {
		if len(a.Open) > 0 {
			a.Reason = a.Reason.Plus(". Not known yet: " + strings.Join(a.Open, ", "))
		}
		if len(a.Skipped) > 0 {
			a.Reason = a.Reason.Plus(". " + skippedText(a.Skipped))
		}
	}
	return a
}

// agrees says who must agree.
func (a Assessment) agrees() string {
	if len(a.Agree) > 1 {
		return join(a.Agree, "and") + " agree"
	}
	return join(a.Agree, "and") + " agrees"
}

// skippedText names the presses that were not taken, by what stood in the way.
func skippedText(all []Skipped) string {
	var limits, say []string
	for _, s := range all {
		if name := s.limit(); !slices.Contains(limits, name) {
			limits = append(limits, name)
		}
	}
	for _, limit := range limits {
		var names []string
		for _, s := range all {
			if s.limit() == limit {
				names = append(names, s.Press)
			}
		}
		say = append(say, join(names, "and")+" for "+limit)
	}
	return "Skipped: " + strings.Join(say, "; ")
}

// join puts words in a row: "a, b and c".
func join(words []string, last string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " " + last + " " + words[n-1]
	}
	return strings.Join(words, "")
}

// betterThan says whether a is to be taken before b: by verdict, then, short of a
// pass, by use.
func (a Assessment) betterThan(b Assessment) bool {
	if a.Verdict != b.Verdict {
		return a.Verdict.better(b.Verdict)
	}
	return a.Verdict != Pass && a.Utilisation < b.Utilisation
}
