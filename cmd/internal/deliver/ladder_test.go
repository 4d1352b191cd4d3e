package deliver_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/export/page/pagetest"
	"ramnest/export/quote"
	"ramnest/force/calibrate"
	"ramnest/force/unit"
)

// The files of a ladder: bodies, builds, a table that calibrate reads, and a sheet that
// names it and says what it expects.
func TestFilesOfALadder(t *testing.T) {
	t.Parallel()
	for name, latch := range map[string]string{"rim-cap": "rim", "rim-cap-inch": "rim", "sensor-hood": "ball", "shell-pair": "rib"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, _ := solvetest.Example(t, name)
			set, err := solve.Ladder(s.Job, solve.Rung{Latch: latch, Steps: 3})
			if err != nil {
				t.Fatal(err)
			}
			out, err := deliver.Ladder(t.Context(), s.Job, set, "tool 1")
			if err != nil {
				t.Fatal(err)
			}
			files := content(t, out)
			if len(files) != len(set.Bodies)+len(set.Builds)+2 {
				t.Errorf("%d files of %d bodies and %d builds", len(files), len(set.Bodies), len(set.Builds))
			}
			table := s.Job.Number + "-ladder-" + latch + "-test.csv"
			// Filled in as computed, it is read back with sizes and all.
			rows, err := csv.NewReader(bytes.NewReader(files[table])).ReadAll()
			if err != nil || len(rows) != 4 {
				t.Fatalf("%v, %v", rows, err)
			}
			filled := strings.Join(rows[0], ",") + "\n"
			for i, r := range rows[1:] {
				r[3] = fmt.Sprint(100 + i)
				filled += strings.Join(r, ",") + "\n"
			}
			read, err := calibrate.ReadMeasurements(strings.NewReader(filled), 1)
			if err != nil || len(read) != 3 {
				t.Fatal(read, err)
			}
			for i, m := range read {
				if size, err := strconv.ParseFloat(rows[i+1][2], 64); err != nil || math.Abs(m.Size-size*s.Job.Shown().One(unit.Length)) > 1e-9 || m.Latch != latch || m.Coupon != fmt.Sprint(set.Steps[i].Number) {
					t.Errorf("%+v, written %v", m, rows[i+1])
				}
			}
			sheet := files[s.Job.Number+"-ladder-"+latch+"-test.pdf"]
			pagetest.Validate(t, sheet)
			text := strings.Join(pagetest.Texts(t, sheet), " ")
			unit := "Force, N"
			if s.Job.Shown().Pound {
				unit = "Force, lbf"
			}
			for _, want := range []string{table, unit, "How to press", "If someone is hurt", "each pair is pressed once"} {
				if !strings.Contains(text, want) {
					t.Errorf("%q is not on the sheet:\n%s", want, text)
				}
			}
		})
	}
}

func TestFilesOfAnOffer(t *testing.T) {
	t.Parallel()
	s, doc := solvetest.Example(t, "rim-cap")
	made, err := deliver.Files(t.Context(), s, "tool 1", doc.Inputs(s.Job))
	if err != nil {
		t.Fatal(err)
	}
	out, err := deliver.Offer(t.Context(), s, report.Offered{Offer: *s.Quote, Back: s.Payback, Open: s.NoPayback}, "tool 1")
	if err != nil {
		t.Fatal(err)
	}
	files := content(t, out)
	if !bytes.Equal(files["FWL-1042-quote.csv"], content(t, made)["FWL-1042-quote.csv"]) {
		t.Error("the quote of make is another than that of the offer")
	}
	pages := pagetest.Texts(t, files["FWL-1042-offer.pdf"])
	if len(pages) != 1 || !strings.Contains(pages[0], fmt.Sprintf("%.2f units", s.Quote.Total)) || !strings.Contains(pages[0], "INVENTED") {
		t.Errorf("%d pages: %s", len(pages), pages)
	}
	if _, err := deliver.Offer(t.Context(), s, report.Offered{Offer: quote.Offer{}}, "tool 1"); err == nil {
		t.Error("an offer of nothing was made")
	}
}
