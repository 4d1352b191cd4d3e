package deliver_test

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/export/quote"
	"ramnest/force/calibrate"
	"ramnest/force/unit"
)

// The same coupons, written down in any pair of units, are read back as the same sizes and
// forces, whatever the reader's job is in, and the size to take is named in the job's unit.
func TestTablesInEveryPairOfUnits(t *testing.T) {
	t.Parallel()
	metric, _ := solvetest.Example(t, "rim-cap")
	set, err := solve.Ladder(metric.Job, solve.Rung{Latch: "rim"})
	if err != nil {
		t.Fatal(err)
	}
	heads := []string{"size_mm,force_n", "size_mm,force_lbf", "size_in,force_n", "size_in,force_lbf"}
	taken := regexp.MustCompile(`take coupon (\d), ([0-9.]+) (mm|in) as drawn`)
	in := calibrate.Input{Assembly: metric.Job.Assembly(metric.Job.Steps()[0])}
	for _, step := range set.Steps {
		in.Coupons = append(in.Coupons, calibrate.Coupon{Latch: "rim", Name: fmt.Sprint(step.Number), Size: step.Size, Places: set.Places})
	}
	m, err := calibrate.NewModel(in)
	if err != nil {
		t.Fatal(err)
	}
	for i, pair := range pairs {
		t.Run(strings.Join(pair[:], "-"), func(t *testing.T) {
			s := inUnits(metric, pair)
			shown := s.Job.Shown()
			out, err := deliver.Ladder(t.Context(), s.Job, set, "tool 1")
			if err != nil {
				t.Fatal(err)
			}
			lines := strings.Split(strings.TrimSpace(string(content(t, out)["FWL-1042-ladder-rim-test.csv"])), "\n")
			if lines[0] != "latch,coupon,"+heads[i]+",note" {
				t.Errorf("head %s, want %s", lines[0], heads[i])
			}
			for k, step := range set.Steps {
				lines[k+1] = strings.TrimSuffix(lines[k+1], ",") + fmt.Sprintf("%.6f,", step.Expected.Peak/shown.One(unit.Force))
			}
			// The unit of a head goes before the one that the caller would take.
			rows, err := calibrate.ReadMeasurements(strings.NewReader(strings.Join(lines, "\n")), 17)
			if err != nil || len(rows) != len(set.Steps) {
				t.Fatal(rows, err)
			}
			for k, step := range set.Steps {
				if math.Abs(rows[k].Size-step.Size) > 0.0005 || math.Abs(rows[k].Force/step.Expected.Peak-1) > 1e-6 {
					t.Errorf("%s is read as %g mm, %g N; made %g mm, %g N", lines[k+1], rows[k].Size, rows[k].Force, step.Size, step.Expected.Peak)
				}
			}
			if os.Getenv("RAMNEST_LONG") == "" && pair != pairs[3] {
				return // a fit takes a second
			}
			fit, err := m.Fit(rows)
			if err != nil {
				t.Fatal(err)
			}
			a, err := fit.Advise(calibrate.Goal{Latch: "rim"})
			if err != nil {
				t.Fatal(err)
			}
			text := report.FitText(s.Job, report.Fitted{Fit: fit, Advice: []calibrate.Advice{a}, Card: quote.InventedRateCard(), NoStop: "none"}, "")
			said := taken.FindStringSubmatch(strings.Join(strings.Fields(text), " "))
			if said == nil {
				t.Fatalf("no size to take:\n%s", text)
			}
			take := a.Options[a.Take]
			v, err := strconv.ParseFloat(said[2], 64)
			if err != nil || said[1] != take.Coupon || said[3] != pair[0] || math.Abs(v*shown.One(unit.Length)-take.Size) > 0.002 {
				t.Errorf("%s; to take is coupon %s of %g mm", said[0], take.Coupon, take.Size)
			}
			if pair == pairs[3] {
				if strings.Contains(text, " mm") || strings.Contains(text, " N ") {
					t.Errorf("mm or N among inches and pounds:\n%s", text)
				}
			}
		})
	}
}
