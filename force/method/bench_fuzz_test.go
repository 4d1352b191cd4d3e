package method

import (
	"math"
	"strings"
	"testing"
)

// FuzzBench holds any bench to this: it has faults that name their field, or the
// decision is computed and finite, and what was given is left as it was.
func FuzzBench(f *testing.F) {
	f.Add("bench press", 8896.0, 20.0, 0.85, 28.0, 8.0, 140.0, 0.0, 70.0, 0.0, 400.0, 16.0, 0.0, 0.0, 0, 0.0, 14.0, 0.0, 0.0, false, 100.0, 80.0, 55.0, 0.0)
	f.Add("", math.NaN(), -1.0, 2.0, 5.0, 5.0, 1e9, 1e9, 0.0, -1.0, 0.0, 0.5, 1e-9, 1e9, -5, 1e9, 1.0, 20.0, 50.0, true, math.Inf(1), 5.0, 5.0, 1e9)
	f.Add("loose", 100.0, 0.0, 0.01, 300.0, 200.0, 3000.0, 1.0, 5.0, 5.0, 5000.0, 5000.0, 2.0, 0.2, 5, 100.0, 500.0, 3000.0, 50.0, true, 20.0, 2000.0, 1000.0, 100.0)
	f.Fuzz(func(t *testing.T, name string, rated, ratio, eta, ram, bore, daylight, stroke, throat, guide, lever, mass, radius, module float64, teeth int, gear, slot, base, height float64, loose bool, jaw, opening, depth, clamp float64) {
		b := Bench{
			Presses: []Press{{Name: name, Rated: rated, Ratio: ratio, Efficiency: eta, RamSquare: ram, RamBore: bore, DaylightMax: daylight, RamStroke: stroke, Throat: throat, Guide: guide, Lever: lever, Mass: mass,
				PinionRadius: radius, PinionModule: module, PinionTeeth: teeth, Gear: gear, TableSlot: slot, BaseDepth: base, LeverHeight: height, NotBolted: loose}},
			Vises: []Vise{{Name: "v", JawWidth: jaw, Opening: opening, Depth: depth, ClampForce: clamp}},
		}
		before := b.Presses[0]
		faults := b.Validate()
		for _, fault := range faults {
			if fault.Field == "" || fault.Problem == "" || fault.Want == "" {
				t.Errorf("a fault that does not help: %+v", fault)
			}
		}
		d := lid()
		d.ThrustWander, d.AnvilBearing = 3, 10
		got := Choose(d, b, nil)
		checkShape(t, got)
		if refused := strings.HasPrefix(got.Reason.String(), "nothing was computed"); refused != (len(faults) > 0) {
			t.Errorf("%d faults, and %s", len(faults), got.Reason)
		}
		if after := b.Presses[0]; len(faults) == 0 && after != before {
			t.Errorf("the bench has changed: %+v, was %+v", after, before)
		}
		var all []float64
		for _, a := range got.Options {
			for _, l := range a.Limits {
				all = append(all, l.Demand, l.Capacity)
			}
			if l := a.Lever; l != nil {
				all = append(all, l.Pull, l.OneHand, l.TwoHands, l.Travel, l.Swing, l.Most, l.Stop, l.Side, l.Lost, l.Tilt)
				if l.Stop > a.Press.Rated || l.Pull <= 0 {
					t.Errorf("%+v", l)
				}
			}
			if p := a.Placement; p != nil {
				all = append(all, p.Back, p.Right, p.Reach, p.Gap, p.Middle, p.Bridges, p.Plate, p.TipsAt)
			}
		}
		for _, x := range all {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf("%g among the figures of %+v", x, b)
			}
		}
	})
}
