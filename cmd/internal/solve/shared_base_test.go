package solve

import (
	"strings"
	"testing"

	"ramnest/force/method"
	"ramnest/force/unit"
)

func TestAMalletStepOnAPressNestThatCannotBePressed(t *testing.T) {
	t.Parallel()
	nest := cube(0, 0, 0, 1, 1, 1)
	step := func(chosen method.Method, press method.Verdict) Step {
		s := Step{LowerEnvelope: nest}
		s.Name = string(chosen)
		s.Decision = method.Decision{Chosen: chosen, Options: []method.Assessment{
			{Method: method.ByHand, Verdict: method.Fail}, {Method: method.ByMallet, Verdict: method.Pass}, {Method: method.ByPress, Verdict: press, Reason: unit.Say("the reason")},
		}}
		return s
	}
	for _, c := range []struct {
		name   string
		steps  []Step
		all    bool
		chosen []method.Method
	}{
		{"press and mallet, the press does both", []Step{step(method.ByPress, method.Pass), step(method.ByMallet, method.Pass)}, true, []method.Method{method.ByPress, method.ByPress}},
		{"the order does not matter", []Step{step(method.ByMallet, method.Conditional), step(method.ByPress, method.Pass)}, true, []method.Method{method.ByPress, method.ByPress}},
		{"the press fails for the mallet step", []Step{step(method.ByPress, method.Pass), step(method.ByMallet, method.Fail)}, false, []method.Method{method.ByPress, method.None}},
		{"a hand pushes on any base", []Step{step(method.ByPress, method.Pass), step(method.ByHand, method.Fail)}, true, []method.Method{method.ByPress, method.ByHand}},
		{"two mallet steps", []Step{step(method.ByMallet, method.Fail), step(method.ByMallet, method.Fail)}, true, []method.Method{method.ByMallet, method.ByMallet}},
	} {
		s := &Solution{Steps: c.steps}
		if all := s.shareBases(); all != c.all {
			t.Errorf("%s: all steps have a method: %v, want %v", c.name, all, c.all)
		}
		for i, want := range c.chosen {
			if got := s.Steps[i].Decision; got.Chosen != want {
				t.Errorf("%s: step %d by %s, want %s", c.name, i, got.Chosen, want)
			} else if got.Chosen != method.Method(s.Steps[i].Name) && !strings.Contains(got.Reason.String(), "shared with") {
				t.Errorf("%s: step %d changed without a reason: %q", c.name, i, got.Reason)
			}
		}
	}
	// Another lower part has a nest of its own.
	other := step(method.ByMallet, method.Pass)
	other.LowerEnvelope = cube(0, 0, 0, 2, 1, 1)
	s := &Solution{Steps: []Step{step(method.ByPress, method.Pass), other}}
	if s.shareBases(); s.Steps[1].Decision.Chosen != method.ByMallet {
		t.Errorf("a nest of its own: %s, want the mallet", s.Steps[1].Decision.Chosen)
	}
}
