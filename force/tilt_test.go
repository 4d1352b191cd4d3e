package force

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

// flatCurve is a force of one Newton from a lift down to another.
func flatCurve(hi, lo float64) Curve {
	return sumCurve([]profile{{n: 1, p: [5]piece{{Hi: hi, Lo: lo, F0: 1}}}}, []int{1})
}

// TestTiltedForceInClosedForm: a force that stays from the first contact to the seat
// stands all round once the far edge is in contact; with the far edge at the stroke
// the hand there carries half of it. One that stands on the last part only, from a
// share of the stroke on, is met by an arc of a known angle.
func TestTiltedForceInClosedForm(t *testing.T) {
	together, far := TiltedEntry(flatCurve(2, 0))
	near(t, "all the way", together, 1, 1e-9)
	near(t, "far edge", far, 0.5, 1e-9)
	// From lift 2 down to 1: with the far edge at 2 the arc of x over 1/2 is half.
	together, far = TiltedEntry(flatCurve(2, 1))
	near(t, "half of the stroke", together, 0.5, 0.02)
	near(t, "half of the stroke, far edge", far, 0.25+0.5/math.Pi, 0.02)
}

// TestTiltedEntryAgainstQuadrature: by integral over the share of the lift instead of
// the angle, and by a search of its own.
func TestTiltedEntryAgainstQuadrature(t *testing.T) {
	for _, steep := range []float64{15, 30, 40} {
		a := capJob()
		a.Latches[0].Annular.MatingAngle = rad(steep)
		c := mustAnalyse(t, a).Latches[0].Curve
		peak, _ := c.Peak()
		wantT, wantH := 0.0, 0.0
		for i := range 400 {
			z := c.Stroke() * (0.2 + 3.8*float64(i)/399)
			// x = sin^2 u takes away the poles at both ends.
			half := func(f func(x float64) float64) float64 {
				return quad.Fixed(func(u float64) float64 { x := math.Pow(math.Sin(u), 2); return 2 / math.Pi * f(x) }, 0, math.Pi/2, 300, nil, 0)
			}
			wantT = math.Max(wantT, half(func(x float64) float64 { return c.At(z * x) })/peak)
			wantH = math.Max(wantH, half(func(x float64) float64 { return c.At(z*x) * x })/peak)
		}
		got, far := TiltedEntry(c)
		near(t, "together", got, wantT, 0.02)
		near(t, "far edge", far, wantH, 0.02)
		if far >= got || got >= 0.9 {
			t.Errorf("at %g deg: %g together, %g at the far edge; both should lie below the straight force", steep, got, far)
		}
	}
}

// TestTiltedIsForOneClosedRingOnly, and lowers no other figure.
func TestTiltedIsForOneClosedRingOnly(t *testing.T) {
	r := mustAnalyse(t, capJob())
	if r.Tilted <= 0 || r.Tilted >= r.Design || r.TiltedFar >= r.Tilted {
		t.Errorf("tilted in %g N, far edge %g N of %g N", r.Tilted, r.TiltedFar, r.Design)
	}
	near(t, "share of the design force", r.Tilted, r.Design*explained(capJob())["tau"], 1e-9)
	for _, a := range []Assembly{collarJob(), ballJob(), armJob(), pinJob()} {
		if r := mustAnalyse(t, a); r.Tilted != 0 {
			t.Errorf("%s: %g N tilted in", a.Latches[0].ID, r.Tilted)
		}
	}
	two := capJob()
	two.Latches = append(two.Latches, two.Latches[0])
	two.Latches[1].ID = "second"
	if r := mustAnalyse(t, two); r.Tilted != 0 {
		t.Errorf("two rings: %g N tilted in", r.Tilted)
	}
	thick := capJob()
	thick.Latches[0].Annular.InnerDiameter = 0
	if r := mustAnalyse(t, thick); r.Tilted != 0 {
		t.Errorf("a solid inner part: %g N tilted in", r.Tilted)
	}
	locks, _ := steepen(capJob(), 70)
	if r := mustAnalyse(t, locks); r.Tilted != 0 {
		t.Errorf("a ring that locks: %g N tilted in", r.Tilted)
	}
}
