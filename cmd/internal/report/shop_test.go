package report_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"ramnest/cmd/internal/batch"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/export/quote"
	"ramnest/force"
	"ramnest/force/calibrate"
)

// fits checks that a text fits a terminal and holds plain characters only.
func fits(t *testing.T, name, text string) {
	t.Helper()
	for line := range strings.Lines(text) {
		if line = strings.TrimSuffix(line, "\n"); len(line) > 80 || strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' }) {
			t.Errorf("%s: %q", name, line)
		}
	}
}

// ladders are one latch of each kind among the examples.
var ladders = map[string]string{"rim-cap": "rim", "rim-cap-inch": "rim", "sensor-hood": "ball", "battery-tray": "pin", "shell-pair": "arm"}

func TestTextOfEveryLadderAndOffer(t *testing.T) {
	t.Parallel()
	for name, latch := range ladders {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, _ := solvetest.Example(t, name)
			card := quote.InventedRateCard()
			set, err := solve.Ladder(s.Job, solve.Rung{Latch: latch, Steps: 3, Card: card})
			if err != nil {
				t.Fatal(err)
			}
			pairs, nominal := solve.CouponItems(set)
			cost, err := card.LadderCost(pairs, nominal)
			if err != nil {
				t.Fatal(err)
			}
			text := report.LadderText(s.Job, set, cost, "out", []string{"a"})
			fits(t, "ladder", text)
			unit := "peak N"
			if s.Job.Shown().Pound {
				unit = "peak lbf"
			}
			if !strings.Contains(text, unit) || !strings.Contains(text, "INVENTED rates") || strings.Count(text, "as drawn") != 1 {
				t.Errorf("ladder:\n%s", text)
			}
			o := report.Offered{Offer: *s.Quote, Back: s.Payback, Open: s.NoPayback}
			text = report.OfferText(s, o, "out", []string{"a"})
			fits(t, "offer", text)
			if !strings.Contains(text, fmt.Sprintf("%.2f units", s.Quote.Total)) || !strings.Contains(text, "INVENTED rates, round numbers: not a price") {
				t.Errorf("offer:\n%s", text)
			}
			// The JSON is the same figures.
			l := report.LadderOf(s.Job, set, cost, "tool", nil)
			for i, st := range l.Steps {
				if e := set.Steps[i].Expected; st.Peak != e.Peak || st.P95 != e.P95 || st.Size != set.Steps[i].Size || st.Outcome != "computed" {
					t.Errorf("%+v, made %+v", st, set.Steps[i])
				}
			}
			for i := range s.Steps {
				fact := report.OfferFact(s.Job, &s.Steps[i])
				if !strings.HasPrefix(fact, "For "+s.Steps[i].Name+": ") || s.Job.Shown().Pound != strings.Contains(fact, " lbf") || s.Job.Shown().Pound == strings.Contains(fact, " N") {
					t.Error(fact)
				}
			}
		})
	}
}

// fitted fits a table of the demo shop.
func fitted(t *testing.T, name string, forces ...float64) (*solve.Solution, report.Fitted) {
	t.Helper()
	s, _ := solvetest.Example(t, name)
	set, err := solve.Ladder(s.Job, solve.Rung{Latch: "rim", Steps: len(forces)})
	if err != nil {
		t.Fatal(err)
	}
	in := calibrate.Input{Assembly: s.Job.Assembly(s.Job.Steps()[0]), Stepped: map[string]force.Member{}}
	var rows []calibrate.Measurement
	for i, st := range set.Steps {
		in.Coupons = append(in.Coupons, calibrate.Coupon{Latch: "rim", Name: fmt.Sprint(st.Number), Size: st.Size, Places: 1})
		rows = append(rows, calibrate.Measurement{Line: i + 2, Latch: "rim", Coupon: fmt.Sprint(st.Number), Force: forces[i]})
	}
	m, err := calibrate.NewModel(in)
	if err != nil {
		t.Fatal(err)
	}
	fit, err := m.Fit(rows)
	if err != nil {
		t.Fatal(err)
	}
	f := report.Fitted{Schema: "ramnest calibrate", Tool: "tool 1", Number: s.Job.Number, Fit: fit, Sheet: fit.Sheet("a table"), Card: quote.InventedRateCard(), Scale: 1}
	f.Sheet.Date = "2026-11-20"
	advice, err := fit.Advise(calibrate.Goal{Latch: "rim", Failure: 1000, Round: 50})
	if err != nil {
		t.Fatal(err)
	}
	f.Advice = append(f.Advice, advice)
	if f.Seats, err = fit.Seats(0); err != nil {
		t.Fatal(err)
	}
	return s, f
}

func TestTextOfAFit(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"rim-cap", "rim-cap-inch"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, f := fitted(t, name, 182, 254, 4000)
			text := report.FitText(s.Job, f, "shop.yaml")
			fits(t, name, text)
			for _, want := range []string{"OUTLIER", "STEP TO TAKE for rim", "Another round: 50.00 units. INVENTED rates: not a price.", "DEAD STOP", "WRITTEN shop.yaml", "agree"} {
				if !strings.Contains(text, want) {
					t.Errorf("%q is missing:\n%s", want, text)
				}
			}
			var b bytes.Buffer
			if err := json.NewEncoder(&b).Encode(report.FitJSON(s.Job, f)); err != nil {
				t.Fatal(err)
			}
			var read struct {
				Date      string
				Residuals []struct {
					Outlier bool
					Force   float64 `json:"force_n"`
				}
				Seats []struct {
					Slack float64 `json:"slack_mm"`
				}
				Invented bool `json:"rates_invented"`
			}
			if err := json.Unmarshal(b.Bytes(), &read); err != nil {
				t.Fatal(err)
			}
			if len(read.Residuals) != 3 || !read.Residuals[2].Outlier || read.Residuals[0].Outlier || read.Residuals[2].Force != 4000 || read.Date != "2026-11-20" || !read.Invented || math.Abs(read.Seats[0].Slack-f.Seats[0].Slack) > 1e-12 {
				t.Errorf("%+v", read)
			}
		})
	}
}

func TestNoDeadStopIsSaid(t *testing.T) {
	t.Parallel()
	s, f := fitted(t, "rim-cap", 182, 254, 330)
	f.Seats, f.NoStop = nil, "no manual method is good enough, so there is no tooling"
	if text := report.FitText(s.Job, f, ""); !strings.Contains(text, "not compared: no manual method") || strings.Contains(text, "WRITTEN") {
		t.Error(text)
	}
}

func TestTableOfABatch(t *testing.T) {
	t.Parallel()
	s, _ := solvetest.Example(t, "rim-cap")
	good := report.BatchRow(s)
	if good.Outcome != batch.Tooling || good.Job != "FWL-1042" || good.Design != s.Steps[0].Result.Design || good.Total == nil || *good.Total != s.Quote.Total || !good.Invented || good.Pieces != 2 || good.Method != string(s.Steps[0].Decision.Chosen) {
		t.Errorf("%+v", good)
	}
	none, _ := solvetest.Example(t, "rim-cap", "latches.rim.annular.undercut=2.5")
	if r := report.BatchRow(none); r.Outcome != batch.NoTooling || r.Total != nil || r.Pieces != 0 {
		t.Errorf("%+v", r)
	}
	good.File, good.Folder = "=1+1.yaml", "=1+1"
	long := good
	long.File, long.Job, long.Method = strings.Repeat("long", 30)+".yaml", strings.Repeat("x", 40), "press, mallet, hand"
	own := good
	own.Invented, own.Currency = false, "kr"
	unpriced := good
	unpriced.Total, unpriced.Invented = nil, false
	rows := []batch.Row{good, long, own, unpriced, {File: "b.yaml", Outcome: batch.Failed, Faults: []string{"b.yaml:3: no", strings.Repeat("word ", 60)}, Stale: true}, {File: "c.yaml", Outcome: batch.Broken, Faults: []string{"panic"}}}
	table := report.BatchOf(rows, "tool 1")
	if table.Tooling != 4 || table.Failed != 1 || table.Broken != 1 || table.Jobs != 6 || table.Note == "" {
		t.Errorf("%+v", table)
	}
	text := report.BatchText(table, "out", 3)
	fits(t, "batch", text)
	for _, want := range []string{"4 with tooling, 0 without a manual method, 1 failed, 1 broken; 3 unchanged", "b.yaml:3: no", "c.yaml: panic", "no longer hold", "Totals are in units, kr", "not priced", "INVENTED"} {
		if !strings.Contains(strings.Join(strings.Fields(text), " "), want) {
			t.Errorf("%q is missing:\n%s", want, text)
		}
	}
	var b bytes.Buffer
	if err := report.WriteBatch(&b, table); err != nil {
		t.Fatal(err)
	}
	read, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(read) != 7 {
		t.Fatalf("%d rows, %v", len(read), err)
	}
	at := func(row int, column string) string {
		for k, name := range read[0] {
			if name == column {
				return read[row][k]
			}
		}
		t.Fatalf("no column %s", column)
		return ""
	}
	for _, c := range []struct {
		row          int
		column, want string
	}{
		{1, "file", "'=1+1.yaml"}, {1, "total", fmt.Sprintf("%.2f", s.Quote.Total)}, {1, "rates", "INVENTED"}, {3, "rates", "the card's"}, {3, "currency", "kr"},
		{4, "total", ""}, {4, "rates", ""}, {5, "peak_N", ""}, {5, "outcome", "failed"}, {5, "stale_files", "yes"}, {6, "outcome", "broken"}, {6, "faults", "panic"},
	} {
		if got := at(c.row, c.column); got != c.want {
			t.Errorf("row %d, %s: %q, want %q", c.row, c.column, got, c.want)
		}
	}
}
