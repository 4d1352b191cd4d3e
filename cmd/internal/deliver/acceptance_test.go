package deliver_test

import (
	"encoding/json"
	"strings"
	"testing"

	"ramnest/cmd/internal/report"
	"ramnest/export/page/pagetest"
)

// The report says every criterion whole, and the sheet prints the same limits: no other
// height is good anywhere.
func TestSheetAndReportAcceptTheSame(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"rim-cap", "snap-case", "sensor-hood", "battery-tray", "shell-pair"} {
		s := exampleOf(t, name)
		var r report.Report
		var text string
		for file, b := range s.files {
			switch {
			case strings.HasSuffix(file, "report.json"):
				if err := json.Unmarshal(b, &r); err != nil {
					t.Fatal(err)
				}
			case strings.HasSuffix(file, ".pdf"):
				text = strings.Join(strings.Fields(strings.ReplaceAll(strings.Join(pagetest.Texts(t, b), " "), "\u00a0", " ")), "")
			}
		}
		for i, st := range r.Steps {
			a := st.Acceptance
			if a == nil || len(a.Criteria) < 3 {
				t.Fatalf("%s: step %d has no acceptance: %+v", name, i+1, a)
			}
			for _, k := range a.Criteria {
				if k.ID == "" || k.What == "" || k.Limit == "" || k.With == "" || k.Often == "" {
					t.Errorf("%s: %+v says not all", name, k)
				}
				for _, words := range []string{k.What, k.Where, k.Limit, k.With, k.Often} {
					if !strings.Contains(text, strings.Join(strings.Fields(words), "")) {
						t.Errorf("%s: the sheet does not say %q", name, words)
					}
				}
			}
			// The latch that drops last, from the lifts that the report has of each latch.
			seat := a.Criteria[0]
			least := 1e9
			for _, l := range st.Force.Latches {
				least = min(least, l.HomeLeast)
			}
			if a.Travel > 0 && !(a.Nominal+a.Travel == seat.High || a.Nominal-a.Travel == seat.Low) || a.Travel >= least && a.Travel > 0 {
				t.Errorf("%s: limit %+v, travel %.4f, latches home below %.4f", name, seat, a.Travel, least)
			}
		}
	}
	// The rim stands on its crest from 0.57 mm over its seat on.
	if s := exampleOf(t, "rim-cap").Steps[0]; s.Seated.Travel > 0.5 || s.Seated.Home < 0.5 || s.Seated.Home > 0.57 || s.Seated.Nominal+s.Seated.Travel != s.Seated.High {
		t.Errorf("%+v", s.Seated)
	}
}
