package method

import "strings"

// An Assessment is one method held against all its limits.
type Assessment struct {
	Method      Method
	Verdict     Verdict
	Limits      []Limit
	Governing   string  // name of the limit that decides
	Utilisation float64 // of that limit [1]
	Reason      string  // one sentence
	Action      string  // how it is done: which hand action, mallet and blow, or press

	Press  *Press  // the press assessed; nil unless the method is ByPress
	Mallet *Mallet // nil unless the method is ByMallet
	Vise   *Vise   // nil unless the method is ByMallet
	Blows  int     // whole blows at the design force; 0 unless the method is ByMallet and the masses are known
}

// conclude fills verdict, governing limit and reason from the limits.
func (a Assessment) conclude() Assessment {
	v, at := judge(a.Limits)
	a.Verdict = v
	if at < 0 { // every limit is open: nothing is known, so nothing is passed
		a.Verdict, a.Governing, a.Reason = Fail, "nothing known", "no limit could be computed"
		return a
	}
	g := a.Limits[at]
	a.Governing, a.Utilisation = g.Name, g.Utilisation
	switch v {
	case Pass:
		a.Reason = a.Action + ": within every limit, nearest " + g.text()
	case Conditional:
		a.Reason = a.Action + ": only if a competent person agrees, over " + g.text()
	case Fail:
		a.Reason = a.Action + ": refused, " + g.text()
	}
	var open []string
	for _, l := range a.Limits {
		if l.Open {
			open = append(open, l.Name)
		}
	}
	if len(open) > 0 && v != Fail {
		a.Reason += "; still open: " + strings.Join(open, ", ")
	}
	return a
}

// betterThan says whether a is to be taken before b: by verdict, then, short of a
// pass, by use.
func (a Assessment) betterThan(b Assessment) bool {
	if a.Verdict != b.Verdict {
		return a.Verdict.better(b.Verdict)
	}
	return a.Verdict != Pass && a.Utilisation < b.Utilisation
}
