package workinstructions

import (
	"strings"
	"testing"
)

// TestSheetSaysWhatJams: the share in the figures, and as a caution at the press; the
// worst case is no force then.
func TestSheetSaysWhatJams(t *testing.T) {
	s := demoSheet(t)
	s.Steps[0].Force.Jammed, s.Steps[0].Force.WorstJams, s.Steps[0].Force.Worst = 0.0016, true, 4321
	text := plain(flat(strings.Join(write(t, "jams", s).pages, "\n")))
	for _, want := range []string{"Jam, of all assemblies", "0.16 %", "By computation about 2 of 1000 assemblies jam"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
	if strings.Contains(text, "4321") {
		t.Error("the bound of a worst case that jams is printed as a force")
	}
	s.Steps[0].Force.Jammed = 0.06
	if faults := s.Validate(); len(faults) != 1 || faults[0].Field != "steps[0].force.jammed" {
		t.Errorf("a sheet for what has no design force: %v", faults)
	}
}
