package quote

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"
)

func TestPublished(t *testing.T) {
	f := func(x float64, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	n := func(x int, err error) float64 { t.Helper(); return f(float64(x), err) }
	build := [3]float64{200, 200, 300}
	shares, err := Shares(600, []float64{144000, 144000, 144000, 144000, 144000, 144000, 144000, 144000, 144000, 144000, 288000})
	if err != nil {
		t.Fatal(err)
	}
	even, ok, err := BreakEven(120, 18, 11, 36, 0)
	if err != nil || !ok {
		t.Fatal(ok, err)
	}
	total, efficiency, err := DesignEfficiency([]float64{3.45, 3.0, 3.34, 3.5}, 4)
	if err != nil {
		t.Fatal(err)
	}
	const grs = "Gibson, Rosen, Stucker, Additive Manufacturing Technologies, eq. 16.7 and 16.8; layer and recoat seconds own"
	const dfa = "Boothroyd and Dewhurst worksheet, redesigned piston example"
	for _, c := range []struct {
		id, source, mark, check string
		want, got, relTol       float64
	}{
		{"recoat-time layers", grs, "read", "self", 600, n(Layers(60, 0.1)), 0},
		{"recoat-time hours", grs, "read", "self", 1.6667, f(RecoatTime(60, 0.1, 10)) / 3600, 5e-4},
		{"packing-boxes pieces", "boxes with spacing", "own", "cross_checked", 54, n(Packing(build, [3]float64{60, 60, 40}, 5)), 0},
		{"packing-boxes density", "boxes with spacing", "own", "cross_checked", 0.18, f(PackingDensity(build, 54, 40000)), 1e-3},
		{"height-share small", "share by envelope volume", "own", "cross_checked", 50, shares[0], 1e-4},
		{"height-share large", "share by envelope volume", "own", "cross_checked", 100, shares[10], 1e-4},
		{"break-even", "tooling over saving, rounded up", "own", "cross_checked", 1715, float64(even), 0},
		{"dfa-efficiency total", dfa, "memory", "published_answer", 13.29, total, 5e-3},
		{"dfa-efficiency", dfa, "memory", "published_answer", 0.9, efficiency, 5e-3},
		{"tmu", "MTM-1", "memory", "cross_checked", 0.5832, 16.2 * SecondsPerTMU, 5e-4},
		{"press-cycle-mtm", "MTM-1 elements, sequence own", "memory", "self", 5.8, PressCycle(), 2e-3},
	} {
		t.Run(c.id, func(t *testing.T) {
			t.Logf("%s; %s; %s; want %g, got %g", c.source, c.mark, c.check, c.want, c.got)
			if !(math.Abs(c.got-c.want) <= c.relTol*math.Abs(c.want)) {
				t.Errorf("got %g, want %g within %g", c.got, c.want, c.relTol)
			}
		})
	}
}

func TestToolingAddsUpAndSaysWhoseRates(t *testing.T) {
	pieces := []Piece{{Name: "=nest", Volume: 40000, Height: 30, Count: 1}, {Name: "anvil, rim", Volume: 12000, Height: 25, Share: 0.5, Count: 3}}
	q, err := Tooling(pieces, InventedCard())
	if err != nil {
		t.Fatal(err)
	}
	// By hand: nest (20 + 30)/0.95 + 5 = 57.63; anvil (6 + 12.5)/0.95 + 5 = 24.47, three 73.41;
	// set-up 20; together 151.04; margin 45.31; total 196.35.
	if q.Total != 196.35 {
		t.Errorf("total %g, by hand 196.35: %+v", q.Total, q.Lines)
	}
	var file bytes.Buffer
	if err := WriteCSV(&file, q); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var cents int
	for _, r := range rows[1 : len(rows)-1] {
		x, err := strconv.ParseFloat(r[3], 64)
		if err != nil {
			t.Fatal(err)
		}
		cents += int(math.Round(x * 100))
	}
	last := rows[len(rows)-1]
	if cents != 19635 || last[3] != "196.35" || !strings.Contains(last[5], "INVENTED") || rows[1][0] != "'=nest" {
		t.Errorf("lines add to %d hundredths, rows %q", cents, rows)
	}
}

func TestSmallJobPaysTheMinimum(t *testing.T) {
	q, err := Tooling([]Piece{{Name: "pad", Volume: 500, Height: 4, Count: 1}}, InventedCard())
	if err != nil {
		t.Fatal(err)
	}
	if q.Total != 50 || q.Lines[len(q.Lines)-1].Text != "up to the minimum" {
		t.Errorf("got %+v", q)
	}
	own := InventedCard()
	own.Invented, own.Name = false, "card of the shop"
	q, err = Tooling([]Piece{{Name: "pad", Volume: 500, Height: 4, Count: 1}}, own)
	if err != nil || q.Note != "rates: card of the shop" {
		t.Errorf("note %q, error %v", q.Note, err)
	}
}

func TestNeverPays(t *testing.T) {
	if _, ok, err := BreakEven(100, 10, 12, 40, 0); ok || err != nil {
		t.Errorf("slower tooling pays: %v %v", ok, err)
	}
}

func TestFaults(t *testing.T) {
	nan := math.NaN()
	second := func(_ any, err error) error { return err }
	_, _, even := BreakEven(nan, 1, 1, 1, 1)
	_, _, dfa := DesignEfficiency(nil, 1)
	bad := InventedCard()
	bad.Reject, bad.Currency = 1, ""
	_, card := Tooling([]Piece{{Name: "", Volume: nan, Height: 0, Count: 0, Share: 2}}, bad)
	for _, c := range []struct {
		want string
		err  error
	}{
		{"build[1]", second(Packing([3]float64{1, 0, 1}, [3]float64{1, 1, 1}, 1))},
		{"box[2]", second(Packing([3]float64{1, 1, 1}, [3]float64{1, 1, nan}, 1))},
		{"spacing", second(Packing([3]float64{1, 1, 1}, [3]float64{1, 1, 1}, -1))},
		{"pieces", second(PackingDensity([3]float64{1, 1, 1}, 5, 1))},
		{"layer", second(Layers(10, 0))},
		{"recoat", second(RecoatTime(10, 1, nan))},
		{"weights[1]", second(Shares(10, []float64{1, 0}))},
		{"cost", even},
		{"times", dfa},
		{"blows", second(MalletCycle(0))},
		{"card.currency", card}, {"card.reject", card}, {"pieces[0].volume", card}, {"pieces[0].height", card}, {"pieces[0].share", card}, {"pieces[0].count", card}, {"pieces[0].name", card},
		{"pieces", second(Tooling(nil, InventedCard()))},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("want a fault at %s, got %v", c.want, c.err)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

func TestWriteErrorIsHandedOn(t *testing.T) {
	if err := WriteCSV(full{}, Quote{}); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("got %v", err)
	}
}
