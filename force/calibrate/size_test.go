package calibrate

import (
	"math"
	"testing"

	"ramnest/force"
	"ramnest/force/planar"
)

// Size and tolerance are those that package force computes with: its own account of a
// latch says the plus or minus with all limits at once.
func TestSizeAndToleranceAreThoseOfForce(t *testing.T) {
	steel := force.MaterialSpec{Material: "steel"}
	stated := func(l force.Latch, change func(*force.Latch)) force.Latch { change(&l); return l }
	for _, c := range []struct {
		name  string
		latch force.Latch
		upper force.MaterialSpec
		size  float64 // [mm]
		whole bool    // one figure is stated for both members
	}{
		{"undercut stated", rim(), pa12, 0.5, true},
		{"undercut by process", stated(rim(), func(l *force.Latch) { l.Annular.UndercutTol = nil }), pa12, 0.5, false},
		{"bead and lip", stated(rim(), func(l *force.Latch) {
			l.Annular.Undercut, l.Annular.UndercutTol, l.Annular.BeadDiameter, l.Annular.LipDiameter, l.Annular.LipTol = 0, nil, 64.4, 63.9, new(0.05)
		}), pa12, 0.5, false},
		{"ball", stud(), pa12, 0.4, false},
		{"arm stated", arm(), pa12, 0.8, true},
		{"arm by process", stated(arm(), func(l *force.Latch) { l.Cantilever.UndercutTol = nil }), pa12, 0.8, false},
		{"rib stated", rib(), pa12, 0.15, true},
		{"rib by process", stated(rib(), func(l *force.Latch) { l.CrushRib.CrushTol = nil }), steel, 0.15, false},
		{"pin stated", pin(), pa12, 0.12, true},
		{"pin and bore", force.Latch{PressFit: &force.PressFit{Outside: "lower", PinDiameter: 4, PinTol: new(0.005), BoreDiameter: 3.97, OuterDiameter: 10, EngagementLength: 6}}, steel, 0.03, false},
		{"fit", force.Latch{PressFit: &force.PressFit{Outside: "lower", Fit: "12 H7/s6", BoreFinished: true, PinFinished: true, OuterDiameter: 20, EngagementLength: 6}}, steel, 0.0245, false},
		{"fit as printed", force.Latch{PressFit: &force.PressFit{Outside: "lower", Fit: "12 H7/s6", PinFinished: true, OuterDiameter: 20, EngagementLength: 6}}, steel, 0.0245, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := c.latch
			l.ID, l.At = "x", []planar.Point{{}}
			a := force.Assembly{Lower: pa12, Upper: c.upper, Latches: []force.Latch{l}}
			lower, _ := force.Resolve(a.Lower)
			upper, _ := force.Resolve(a.Upper)
			s := l.Size(lower, upper)
			got := s.Outer + s.Inner
			if c.whole {
				got = s.Tolerance()
			}
			var want float64
			for _, line := range force.Explain(a, "x") {
				if line.Symbol == "T" {
					want = line.Value
				}
			}
			if math.Abs(s.Value-c.size) > 1e-9 || !(math.Abs(got-want) < 1e-9) {
				t.Errorf("size %g, want %g; plus or minus %g, force takes %g", s.Value, c.size, got, want)
			}
			// Another size by either member, and back.
			for _, m := range []force.Member{force.Outer, force.Inner} {
				r := l.Resized(s.Value+0.01, m)
				if v := r.Size(lower, upper).Value; math.Abs(v-s.Value-0.01) > 1e-9 {
					t.Errorf("resized to %g, want %g", v, s.Value+0.01)
				}
				r.ID = "x"
				if faults := r.Validate(); len(faults) > 0 {
					t.Error(faults)
				}
			}
			// A tolerance put on it is the one that force then takes.
			a.Latches = []force.Latch{l.Toleranced(0.06)}
			lines := force.Explain(a, "x")
			if lines == nil {
				t.Fatalf("with a tolerance: %v", a.Validate())
			}
			if v := a.Latches[0].Size(lower, upper).Tolerance(); math.Abs(v-0.06) > 1e-9 {
				t.Errorf("a tolerance of 0.06 mm reads as %g", v)
			}
		})
	}
}
