package solve

import (
	"fmt"
	"slices"

	"ramnest/fixture/envelope"
	"ramnest/force/method"
	"ramnest/force/unit"
)

// shareBases sees to it that steps that share a nest can share its base, which
// follows the strongest method: a hand pushes on any base, but a base for the press
// does not go into the vise. Such a mallet step is pressed as well; if it cannot be,
// it has no method, and shareBases says so.
func (s *Solution) shareBases() bool {
	all := true
	for i := range s.Steps {
		d := &s.Steps[i].Decision
		if d.Chosen != method.ByMallet {
			continue
		}
		by := slices.IndexFunc(s.Steps, func(o Step) bool {
			return o.Decision.Chosen == method.ByPress && sameNest(o.LowerEnvelope, s.Steps[i].LowerEnvelope)
		})
		if by < 0 {
			continue
		}
		at := slices.IndexFunc(d.Options, func(a method.Assessment) bool { return a.Method == method.ByPress })
		press := d.Options[at]
		if press.Verdict == method.Fail {
			d.Reason = unit.Textf("the nest is shared with %q, which needs the arbor press, and its base does not go into a vise; %v",
				s.Steps[by].Name, press.Reason)
			d.Chosen, all = method.None, false
			d.RunnerUp, d.Next = method.None, unit.Say("there is no runner-up")
			continue
		}
		d.Reason = unit.Textf("%s: the nest is shared with %q, and its base is for the press; %v", method.ByPress.Title(), s.Steps[by].Name,
			press.Reason)
		d.RunnerUp, d.Chosen, d.Next = method.ByMallet, method.ByPress, unit.Say("next is mallet and vise, on a nest of its own")
	}
	return all
}

// sameNest says whether two lower parts go into one nest.
func sameNest(a, b *envelope.Envelope) bool {
	return a == b || slices.Equal(a.Vertices, b.Vertices) && slices.Equal(a.Triangles, b.Triangles)
}

// picks names the tools of every step, to tell whether a choice has changed.
func (s *Solution) picks() string {
	var names []string
	for i := range s.Steps {
		a := s.Steps[i].Chosen()
		name := a.Method.Title()
		switch {
		case a.Press != nil:
			name += " (" + a.Press.Name + ")"
		case a.Mallet != nil:
			name += fmt.Sprintf(" (%s at %.3g m/s, %s)", a.Mallet.Name, a.Mallet.Speed, a.Vise.Name)
		}
		names = append(names, name)
	}
	return joinWords(names)
}

func joinWords(names []string) string {
	out := ""
	for i, n := range names {
		switch {
		case i > 0 && i == len(names)-1:
			out += " and "
		case i > 0:
			out += ", "
		}
		out += n
	}
	return out
}
