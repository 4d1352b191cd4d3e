package force

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// roughPin is the pin of the tests with its asperities counted.
func roughPin() Assembly {
	a := pinJob()
	f := a.Latches[0].PressFit
	f.Interference, f.RoughnessLoss = 0.12, nil
	return a
}

// The loss by hand: Rz of powder bed 40 to 100 um, of a machined pin 1.6 to 6.3 um, 0.4
// of the least sum to 0.8 of the most; a finish scales the printed part only.
func TestFlattenedByHand(t *testing.T) {
	steel, _ := Resolve(MaterialSpec{Material: "steel"})
	for _, c := range []struct {
		spec        MaterialSpec
		least, most float64
	}{
		{MaterialSpec{Material: "PA12"}, 0.4 * (0.040 + 0.0016), 0.8 * (0.100 + 0.0063)},
		{MaterialSpec{Material: "PA12", Finish: "tumbled"}, 0.4 * (0.0232 + 0.0016), 0.8 * (0.058 + 0.0063)},
		{MaterialSpec{Material: "PA12", Finish: "blasted"}, 0.4 * (0.0232 + 0.0016), 0.8 * (0.058 + 0.0063)},
		{MaterialSpec{Material: "PA12", Finish: "smoothed"}, 0.4 * (0.008 + 0.0016), 0.8 * (0.020 + 0.0063)},
		{MaterialSpec{Material: "PLA"}, 0.4 * (0.030 + 0.0016), 0.8 * (0.100 + 0.0063)},
		{MaterialSpec{Material: "RESIN"}, 0.4 * (0.003 + 0.0016), 0.8 * (0.025 + 0.0063)},
		{MaterialSpec{Material: "PA12", Figures: Figures{Rz: ptr(0.05)}}, 0.4 * (0.05 + 0.0016), 0.8 * (0.05 + 0.0063)},
	} {
		m, faults := Resolve(c.spec)
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		least, most := Flattened(m, steel)
		near(t, m.Finish+" least", least, c.least, 1e-12)
		near(t, m.Finish+" most", most, c.most, 1e-12)
	}
}

// The press goes by the least loss, the hold by the most: each is the fit of that very
// interference without roughness.
func TestPressByTheLeastLossHoldByTheMost(t *testing.T) {
	a := roughPin()
	got := mustAnalyse(t, a)
	plain := func(interference float64) Result {
		b := roughPin()
		b.Latches[0].PressFit.Interference, b.Latches[0].PressFit.RoughnessLoss = interference, ptr(0)
		return mustAnalyse(t, b)
	}
	least, most := 0.4*(0.040+0.0016), 0.8*(0.100+0.0063)
	near(t, "peak", got.Peak, plain(0.12-least).Peak, 1e-9)
	near(t, "worst", got.Worst, plain(0.12-least).Worst, 1e-9)
	near(t, "hold", got.Latches[0].Separation, plain(0.12 - most).Latches[0].Separation, 1e-9)
	near(t, "least hold", got.Latches[0].SeparationLow, plain(0.12 - most).Latches[0].SeparationLow, 1e-9)
	near(t, "most hold", got.Latches[0].SeparationHigh, plain(0.12 - least).Latches[0].SeparationHigh, 1e-9)
	// Drawn between: the band lies between those of either end.
	if lo, hi := plain(0.12-most), plain(0.12-least); !(got.P50 > lo.P50 && got.P50 < hi.P50 && got.P95 > lo.P95 && got.P95 < hi.P95) {
		t.Errorf("P50 %g, P95 %g outside %g to %g, %g to %g", got.P50, got.P95, lo.P50, hi.P50, lo.P95, hi.P95)
	}
	if got.Loose < plain(0.12-most).Loose {
		t.Errorf("loose %g, less than with all flattened", got.Loose)
	}
}

// A smoother finish presses harder and holds more.
func TestSmootherHoldsMore(t *testing.T) {
	var press, hold float64
	for _, finish := range finishes {
		a := roughPin()
		a.Lower.Finish = finish
		r := mustAnalyse(t, a)
		if r.P95 < press || r.Latches[0].Separation < hold {
			t.Errorf("%s: P95 %g, hold %g; the rougher one %g, %g", finish, r.P95, r.Latches[0].Separation, press, hold)
		}
		press, hold = r.P95, r.Latches[0].Separation
	}
}

// withTightHole are jobs whose hole has no tolerance of its own.
func withTightHole() []Assembly {
	rim, two, pin, bores, ball, rib := capJob(), capJob(), pinJob(), pinJob(), ballJob(), ribJob()
	rim.Latches[0].Annular.UndercutTol = nil
	shrink := 16.0 / 40
	v := rim.Latches[0].Annular
	v.JointDiameter, v.OuterDiameter, v.InnerDiameter, v.Undercut = 40*shrink, 43.2*shrink, 36.8*shrink, 0.4
	w := *v
	w.Undercut, w.BeadDiameter, w.LipDiameter = 0, 16.2, 15.8
	two.Latches[0].Annular = &w
	pin.Latches[0].PressFit.InterferenceTol = nil
	f := bores.Latches[0].PressFit
	f.JointDiameter, f.Interference, f.InterferenceTol, f.PinDiameter, f.BoreDiameter = 0, 0, nil, 5.05, 5
	ball.Latches[0].Ball.MouthTol = nil
	rib.Latches[0].CrushRib.CrushTol = nil
	return []Assembly{rim, two, pin, bores, ball, rib}
}

// A hole that comes out tight makes the press harder and the hold no better; a figure
// of the job replaces the process's, and is believed for both.
func TestTightHoles(t *testing.T) {
	for _, a := range withTightHole() {
		id := a.Latches[0].ID
		none, stated := a, a
		none.Lower.HoleBias = ptr(0)
		none.Upper.HoleBias = nil
		process := -0.15
		if a.Lower.Material == "PETG" {
			process = -0.20
		}
		stated.Lower.HoleBias = &process
		table, plain, known := mustAnalyse(t, a), mustAnalyse(t, none), mustAnalyse(t, stated)
		if table.Peak <= plain.Peak || table.P95 <= plain.P95 || table.Worst <= plain.Worst {
			t.Errorf("%s: peak %g, P95 %g; without the bias %g, %g", id, table.Peak, table.P95, plain.Peak, plain.P95)
		}
		near(t, id+" hold", table.Latches[0].Separation, plain.Latches[0].Separation, 0.02)
		if table.Latches[0].Separation > plain.Latches[0].Separation*(1+1e-9) {
			t.Errorf("%s: holds more by a bias that nobody measured", id)
		}
		near(t, id+" peak as stated", known.Peak, table.Peak, 1e-9)
		if known.Latches[0].Separation <= plain.Latches[0].Separation {
			t.Errorf("%s: a measured bias does not hold", id)
		}
		if table.Loose < plain.Loose-0.02 {
			t.Errorf("%s: loose %g, without the bias %g", id, table.Loose, plain.Loose)
		}
		if a.Latches[0].CrushRib != nil {
			continue // the hole is taken to be in the part whose holes come out tighter
		}
		wide := a
		wide.Lower.HoleBias = ptr(0.02)
		if r := mustAnalyse(t, wide); r.Peak >= plain.Peak || r.Latches[0].Separation >= plain.Latches[0].Separation {
			t.Errorf("%s: wide holes: peak %g, hold %g", id, r.Peak, r.Latches[0].Separation)
		}
	}
}

// A dimension with a tolerance of its own is as stated, and so is a finished bore.
func TestStatedTolerancesHaveNoBias(t *testing.T) {
	for _, a := range everyJob() {
		b := a
		b.Lower.HoleBias = ptr(-0.3)
		near(t, a.Latches[0].ID, mustAnalyse(t, b).Peak, mustAnalyse(t, a).Peak, 1e-12)
	}
	a := pinJob()
	f := a.Latches[0].PressFit
	f.InterferenceTol = nil
	f.BoreFinished = true
	j := readyJoint(a.Latches[0], mustResolve(t, a.Lower), mustResolve(t, a.Upper))
	if j.size != 0.05 || j.hold != 0 {
		t.Errorf("a finished bore: %g, hold less by %g", j.size, j.hold)
	}
}

func mustResolve(t *testing.T, s MaterialSpec) Material {
	t.Helper()
	m, faults := Resolve(s)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return m
}

// The bias of powder bed is for small holes: whole to 20 mm, none from 40; extruded at
// any size; none for resin and what is moulded or machined.
func TestTighterHoleBySize(t *testing.T) {
	for _, c := range []struct {
		material string
		d, want  float64
	}{{"PA12", 2, 0.15}, {"PA12", 20, 0.15}, {"PA12", 30, 0.075}, {"PA12", 40, 0}, {"PA12", 400, 0}, {"PETG", 2, 0.2}, {"PETG", 400, 0.2}, {"RESIN", 5, 0}, {"PP", 5, 0}, {"steel", 5, 0}} {
		got, known := mustResolve(t, MaterialSpec{Material: c.material}).TighterHole(c.d)
		if math.Abs(got-c.want) > 1e-12 || known {
			t.Errorf("%s at %g mm: %g, want %g", c.material, c.d, got, c.want)
		}
	}
	got, known := mustResolve(t, MaterialSpec{Material: "PA12", Figures: Figures{HoleBias: ptr(-0.1)}}).TighterHole(400)
	if got != 0.1 || !known {
		t.Errorf("stated: %g", got)
	}
}

// What is used up by roughness is refused, with the size that it would take.
func TestUsedUpIsRefused(t *testing.T) {
	a := roughPin()
	a.Latches[0].PressFit.Interference = 0.015
	a.Latches[0].PressFit.InterferenceTol = ptr(0.005)
	faults := a.Validate()
	if len(faults) != 1 || faults[0].Field != "latches[0].press_fit.interference" || !strings.Contains(faults[0].Want, "above 0.0166 mm") {
		t.Errorf("got %v", faults)
	}
	a.Lower.Finish = "smoothed"
	if faults := a.Validate(); len(faults) > 0 {
		t.Errorf("smoothed: %v", faults)
	}
}

// printedJobs are jobs in which printing changes the sizes; of the last nothing is sure
// to hold.
func printedJobs() []Assembly {
	rib, loose := ribJob(), roughPin()
	rib.Latches[0].CrushRib.RoughnessLoss = nil
	loose.Latches[0].PressFit.Interference = 0.05
	return append(withTightHole(), roughPin(), rib, loose)
}

// Every step of the explanation is arithmetic that gives its value, and its last ones
// are the forces of the result, whatever printing makes of the sizes.
func TestPrintedSizesAreExplained(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 9))
	for _, a := range printedJobs() {
		for range 8 {
			a.Lower.Finish = finishes[rng.IntN(len(finishes))]
			r := mustAnalyse(t, a)
			v := map[string]float64{}
			for _, l := range Explain(a, a.Latches[0].ID) {
				if l.Numbers != "" {
					got, err := evaluate(l.Numbers)
					if err != nil {
						t.Fatal(err)
					}
					near(t, a.Latches[0].ID+" "+l.ID, got, l.Value, 1e-5)
				}
				v[l.Symbol] = l.Value
			}
			hold := v["W'"]
			if f := a.Latches[0]; f.PressFit != nil || f.CrushRib != nil {
				hold = v["F'"] + v["W'"]
				near(t, "push", v["F"], r.Latches[0].PeakEach, 1e-6)
			}
			near(t, a.Latches[0].ID+" hold", hold, r.Latches[0].Separation, 1e-6)
		}
	}
}

// Vat printing keeps a tolerance by steps of size; a figure of the job replaces them.
func TestVatToleranceBySize(t *testing.T) {
	m := mustResolve(t, MaterialSpec{Material: "RESIN"})
	for _, c := range []struct{ d, want float64 }{{1, 0.02}, {10, 0.02}, {20, 0.03}, {30, 0.045}, {30.01, 0.06002}, {31, 0.062}, {80, 0.16}, {81, 0.243}, {150, 0.45}, {300, 0.9}} {
		near(t, "tolerance", m.ToleranceOn(c.d), max(c.want, 0), 1e-9)
	}
	near(t, "least", m.LeastTolerance().Value, 0.02, 1e-12)
	near(t, "wall", m.WallTolerance(), 0.075, 1e-12)
	near(t, "stated", mustResolve(t, MaterialSpec{Material: "RESIN", Figures: Figures{Tolerance: ptr(0.1)}}).ToleranceOn(10), 0.1, 1e-12)
	before := 0.0
	for d := 0.0; d < 400; d += 0.5 {
		if v := m.ToleranceOn(d); v < before {
			t.Fatalf("narrower at %g mm", d)
		} else {
			before = v
		}
	}
}
