package calibrate

import (
	"math"
	"math/rand/v2"
	"testing"

	"ramnest/force"
)

// The sheet, written and applied to the job as drawn, puts each latch where the fit had
// it, and its interval holds that of the fit: pairs scatter about their mean.
func TestSheetSeatsAsTheFit(t *testing.T) {
	t.Parallel()
	in := Input{Assembly: force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{rim(), pin()}}}
	in.Coupons = append(ladder(rim(), 0.5, 0.1, 5), ladder(pin(), 0.12, 0.03, 5)...)
	m, err := NewModel(in)
	if err != nil {
		t.Fatal(err)
	}
	f, err := m.Fit(shop{m: m, friction: 0.3, stiffness: 1, scatter: 0.5, offsets: []float64{0.1, 0.01}, rng: rand.New(rand.NewPCG(3, 3))}.press(2))
	if err != nil {
		t.Fatal(err)
	}
	for _, past := range []float64{0, 0.15} {
		fit, err := f.Seats(past)
		if err != nil {
			t.Fatal(err)
		}
		sheet, err := f.Sheet("test").Seats(in.Assembly, past)
		if err != nil {
			t.Fatal(err)
		}
		if len(fit) != 1 || len(sheet) != 1 { // a pin holds by friction wherever it stops
			t.Fatalf("%d and %d latches, want the rim alone", len(fit), len(sheet))
		}
		a, b := fit[0], sheet[0]
		if a.Latch != b.Latch || math.Abs(a.Drawn-b.Drawn) > 1e-12 || math.Abs(a.Printed-b.Printed) > 1e-3 || a.Stop != b.Stop {
			t.Errorf("fit %+v, sheet %+v", a, b)
		}
		if !(b.Low <= a.Low+1e-3 && b.High >= a.High-1e-3) {
			t.Errorf("interval of pairs %g..%g within that of their mean %g..%g", b.Low, b.High, a.Low, a.High)
		}
	}
}

// By hand: a flank of 45 degrees ends deeper by half of what the bead comes out larger.
// The groove gives 0.3 of room; past the seat the stop may go.
func TestTheStopAgainstALatchBothWays(t *testing.T) {
	t.Parallel()
	a := force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{rim()}}
	s := Sheet{Source: "by hand", Lower: Pairing{"PA12", "PBF"}, Upper: Pairing{"PA12", "PBF"}, Friction: 0.3, Stiffness: 1, Measured: 5, Latches: []Offset{{Latch: "rim", Kind: "annular"}}}
	for _, c := range []struct {
		offset, tol, past    float64
		printed, slack, rise float64
		held                 bool
	}{
		{0, 0, 0, 0.3, 0.3, 0.3, true},
		{0.2, 0.1, 0, 0.2, 0.15, 0.2, true},
		{0.5, 0.2, 0, 0.05, -0.05, 0.05, false},
		{0.5, 0.2, 0.15, 0.05, 0.1, 0.05, true}, // the stop past the seat helps
		{0.8, 0, 0, -0.1, -0.1, 0, false},
		{-0.2, 0, 0, 0.4, 0.4, 0.4, true},
	} {
		s.Latches[0].Offset, s.Latches[0].Tolerance = c.offset, c.tol
		seats, err := s.Seats(a, c.past)
		if err != nil || len(seats) != 1 {
			t.Fatal(seats, err)
		}
		g := seats[0]
		if math.Abs(g.Printed-c.printed) > 1e-9 || math.Abs(g.Slack-c.slack) > 1e-9 || math.Abs(g.Gap-c.rise) > 1e-9 || g.Held != c.held {
			t.Errorf("offset %g plus or minus %g, stop %g past: %+v; by hand home at %g, slack %g, rises %g, held %v", c.offset, c.tol, c.past, g, c.printed, c.slack, c.rise, c.held)
		}
	}
	if seats, err := s.Seats(force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{pin()}}, 0); err != nil || len(seats) != 0 {
		t.Errorf("a latch that was not measured: %v, %v", seats, err)
	}
	if _, err := s.Seats(a, -1); err == nil {
		t.Error("a stop before the seat was taken")
	}
	if _, err := (Sheet{}).Seats(a, 0); err == nil {
		t.Error("an empty sheet was taken")
	}
}
