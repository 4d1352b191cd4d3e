package method

import (
	"math"
	"testing"
)

func TestLeverMost(t *testing.T) {
	presses := GenericPresses()
	for _, c := range []struct {
		name       string
		p          Press
		most, stop float64
	}{
		{"1 ton: a person can overload the frame", presses[1], 130 * 9.80665 * 20 * 0.9, 8896},
		{"3 ton: a person cannot reach the plate", presses[3], 130 * 9.80665 * 22 * 0.9, 130 * 9.80665 * 22 * 0.9},
		{"stated efficiency", Press{Rated: 30000, Ratio: 10, Efficiency: 0.8}, 130 * 9.80665 * 8, 130 * 9.80665 * 8},
		{"lever and pinion", Press{Rated: 30000, Lever: 400, PinionRadius: 20}, 130 * 9.80665 * 20 * 0.9, 130 * 9.80665 * 20 * 0.9},
		{"no ratio: the plate", Press{Rated: 30000}, 0, 30000},
		{"NaN: the plate", Press{Rated: 30000, Ratio: math.NaN()}, 0, 30000},
		{"impossible efficiency: the plate", Press{Rated: 30000, Ratio: 20, Efficiency: 2}, 0, 30000},
	} {
		if most, stop := LeverMost(c.p), StopForce(c.p); math.Abs(most-c.most) > 1e-9*c.most || math.Abs(stop-c.stop) > 1e-9*c.stop {
			t.Errorf("%s: %g and %g, want %g and %g", c.name, most, stop, c.most, c.stop)
		}
	}
}

// What dead stops stand is never less than what the method is allowed to give.
func TestStopsStandWhatPasses(t *testing.T) {
	for _, p := range GenericPresses() {
		for _, rate := range []float64{12, 60, 360} {
			d := Demand{DesignForce: 1, RatePerHour: rate, HoursPerDay: 1}
			if f := Carries(ByPress, d, Bench{Presses: []Press{p}}); !(f > 0 && f < StopForce(p)) {
				t.Errorf("%s at %g an hour carries %g N, its stops %g N", p.Name, rate, f, StopForce(p))
			}
		}
	}
}

func TestHandsOnTheLever(t *testing.T) {
	p := Press{Name: "p", Rated: 8896, Ratio: 20, RamSquare: 30, Lever: 400}
	for _, c := range []struct {
		name              string
		ram, perHour      float64
		hours             float64
		hands             int
		oneHand, twoHands float64
	}{
		// Recommended: half of base times 0.8 m_f m_d; ram force over 20 * 0.85 is the pull.
		{"occasional, one hand", 500, 12, 1, 1, 30, 58},
		{"occasional, both", 900, 12, 1, 2, 30, 58},
		{"occasional, not even both", 1000, 12, 1, 0, 30, 58},
		{"line, one hand", 127, 360, 7.5, 1, 7.5, 14.5},
		{"line, both", 246, 360, 7.5, 2, 7.5, 14.5},
		{"line, not even both", 247, 360, 7.5, 0, 7.5, 14.5},
	} {
		d := Demand{DesignForce: c.ram, RatePerHour: c.perHour, HoursPerDay: c.hours, ActionSeconds: 1, Stroke: 10}
		l := d.lever(p, 0.15)
		if l.Hands != c.hands || math.Abs(l.OneHand-c.oneHand) > 1e-9 || math.Abs(l.TwoHands-c.twoHands) > 1e-9 {
			t.Errorf("%s: %+v", c.name, l)
		}
		if want := c.ram / 17; math.Abs(l.Pull-want) > 1e-9*want || l.Travel != 200 || math.Abs(l.Swing-0.5) > 1e-12 {
			t.Errorf("%s: pull %g of %g N, hands travel %g mm, swing %g rad", c.name, l.Pull, want, l.Travel, l.Swing)
		}
	}
}

func TestEccentricThrustLine(t *testing.T) {
	p := Press{Name: "p", Rated: 8896, Ratio: 20, RamSquare: 60, Guide: 100}
	l := Demand{DesignForce: 1000, ThrustWander: 20, RatePerHour: 12, HoursPerDay: 1, ActionSeconds: 1}.lever(p, 0.15)
	// The check value of a ram 20 mm off in a guide of 100 mm: 200 N, 6 %, 1063.8 N.
	if math.Abs(l.Side-200) > 1e-9 || math.Abs(l.Lost-0.06) > 1e-12 || math.Abs(l.Pull-1000/0.94/17) > 1e-9 || l.Tilt != 20000 {
		t.Errorf("%+v", l)
	}
}

func TestRatioFromLeverAndPinion(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Press
		want string // start of the fault; empty: none
	}{
		{"stated", Press{Ratio: 20}, ""},
		{"lever and pitch radius", Press{Lever: 400, PinionRadius: 20}, ""},
		{"lever, module and teeth", Press{Lever: 400, PinionModule: 3, PinionTeeth: 12}, ""},
		{"both and they agree", Press{Ratio: 20, Lever: 400, PinionRadius: 21}, ""},
		{"both and they do not", Press{Ratio: 20, Lever: 400, PinionRadius: 30}, "ratio: 20; does not agree with lever and pinion, which give 13.3"},
		{"neither", Press{}, "ratio: 0; is missing"},
		{"no lever", Press{PinionRadius: 20}, "ratio: 0; is missing"},
		{"no teeth", Press{Lever: 400, PinionModule: 3}, "ratio: 0; is missing"},
		{"a ratio below 1", Press{Lever: 30, PinionRadius: 40}, "ratio: 0.75 by lever and pinion; is out of range"},
		{"three teeth", Press{Lever: 400, PinionModule: 3, PinionTeeth: 3}, "pinion_teeth: 3; is out of range"},
		{"a tiny module", Press{Ratio: 20, PinionModule: 0.01}, "pinion_module: 0.01 mm; is missing or out of range"},
		{"a huge gear", Press{Ratio: 20, Gear: 1000}, "gear_ratio: 1000; is missing or out of range"},
		{"a pinion of NaN", Press{Ratio: 20, PinionRadius: math.NaN()}, "pinion_radius: NaN mm; is missing or out of range"},
	} {
		c.p.Name, c.p.Rated = "p", 8896
		faults := c.p.Validate()
		switch {
		case c.want == "" && len(faults) > 0:
			t.Errorf("%s: %v", c.name, faults)
		case c.want != "" && (len(faults) != 1 || faults[0].Error()[:min(len(c.want), len(faults[0].Error()))] != c.want):
			t.Errorf("%s: want one fault %q, got %v", c.name, c.want, faults)
		}
	}
	// The bench that was given is left as it was.
	b := Bench{Presses: []Press{{Name: "p", Rated: 8896, Lever: 400, PinionRadius: 20}}}
	got := Choose(lid(), b, nil)
	if b.Presses[0].Ratio != 0 || got.option(ByPress).Press.Ratio != 20 {
		t.Errorf("ratio given %g, used %g", b.Presses[0].Ratio, got.option(ByPress).Press.Ratio)
	}
}
