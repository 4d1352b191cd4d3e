package force

import "testing"

// TestBandAlongTheStroke: in order, over the whole stroke, and round the nominal
// curve where that is not steep.
func TestBandAlongTheStroke(t *testing.T) {
	for _, a := range append(everyJob(), mixed()) {
		r := mustAnalyse(t, a)
		if len(r.Band) != bandLifts || r.Band[0].Lift != r.Stroke || r.Band[bandLifts-1].Lift != 0 {
			t.Fatalf("%s: %d points from %g to %g mm", a.Latches[0].ID, len(r.Band), r.Band[0].Lift, r.Band[len(r.Band)-1].Lift)
		}
		inside, highest := 0, 0.0
		for _, p := range r.Band {
			if p.P5 > p.P50 || p.P50 > p.P95 || p.P5 < 0 {
				t.Errorf("%s: %+v", a.Latches[0].ID, p)
			}
			if f := r.Curve.At(p.Lift); p.P5 <= f*1.001 && f*0.999 <= p.P95 {
				inside++
			}
			highest = max(highest, p.P95)
		}
		if inside < bandLifts*9/10 {
			t.Errorf("%s: the nominal curve lies in the band at %d of %d lifts", a.Latches[0].ID, inside, bandLifts)
		}
		// At no lift does the force exceed the peak: nor does its P95, but for the draw.
		if highest > 1.05*r.P95 || highest < 0.75*r.P95 {
			t.Errorf("%s: highest P95 along the stroke %g N, of the peak %g N", a.Latches[0].ID, highest, r.P95)
		}
	}
}

// TestBandOfNoToleranceIsTheCurve but for the model error.
func TestBandOfNoToleranceIsTheCurve(t *testing.T) {
	a := pinJob()
	zero := ptr(0.0)
	a.Lower.Figures = Figures{FrictionSpread: zero, ModulusSpread: zero, Tolerance: zero, ToleranceShare: zero}
	a.Upper.Figures = a.Lower.Figures
	a.Latches[0].PressFit.InterferenceTol = zero
	r := mustAnalyse(t, a)
	for _, p := range r.Band {
		if f := r.Curve.At(p.Lift); f > 0 {
			near(t, "P50", p.P50, f, 0.01)
			near(t, "P95", p.P95, f*1.0815, 0.015) // 1.10 to the power 1.645/2
		}
	}
}
