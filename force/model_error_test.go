package force

import (
	"math"
	"testing"
)

// With every tolerance, friction and modulus spread at nothing, the model error
// alone is left. It is normal in the logarithm and its stated ratio is two
// standard deviations, so P95 lies above the nominal peak by the ratio to the
// power 1.6449/2 (normal quantile, from tables) and the plain worst case by the
// ratio itself. The ratios stand here as figures, common practice, no source: a
// design force must not lose them unseen.
func TestModelErrorRaisesTheDesignForce(t *testing.T) {
	zero := ptr(0.0)
	still := Figures{FrictionSpread: zero, ModulusSpread: zero, Tolerance: zero, ToleranceShare: zero}
	ring, arm, pin := capJob(), armJob(), pinJob()
	// A bead that hardly stiffens anything.
	ring.Latches[0].Annular.UndercutTol, ring.Latches[0].Annular.Undercut, ring.Latches[0].Annular.Land = zero, 0.01, 0
	arm.Latches[0].Cantilever.UndercutTol = zero
	pin.Latches[0].PressFit.InterferenceTol = zero
	rib := ribJob()
	rib.Latches[0].CrushRib.CrushTol = zero
	for _, c := range []struct {
		name  string
		job   Assembly
		ratio float64
	}{
		{"annular", ring, 1.15},
		{"cantilever", arm, 1.15},
		{"press fit", pin, 1.10},
		{"crush rib", rib, 1.5},
	} {
		c.job.Lower.Figures, c.job.Upper.Figures, c.job.Draws = still, still, 20000
		r := mustAnalyse(t, c.job)
		if got := r.Worst / r.Peak; math.Abs(got/c.ratio-1) > 1e-3 {
			t.Errorf("%s: worst case over nominal peak %.4f; want %.4f", c.name, got, c.ratio)
		}
		if got, want := r.WorkP95/r.Work, math.Pow(c.ratio, 1.6449/2); math.Abs(got/want-1) > 0.015 {
			t.Errorf("%s: P95 of the work over the nominal %.4f; want %.4f", c.name, got, want)
		}
		if got, want := r.P95/r.Peak, math.Pow(c.ratio, 1.6449/2); math.Abs(got/want-1) > 0.01 {
			t.Errorf("%s: P95 over nominal peak %.4f; want %.4f", c.name, got, want)
		}
	}
}

// Where the guide lies above the governing model the upper side must carry it,
// where below, the lower.
func TestGuideWidensTheSideOnWhichItLies(t *testing.T) {
	a := capJob().Latches[0].Annular
	m, faults := Resolve(capJob().Lower)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	j := a.ready(m, m, "permanent")
	ratio := a.guideRatio(m, m, j.outer.stiffness, j.inner.stiffness)
	if j.modelUp < math.Log(1/ratio) || j.modelDown < math.Log(ratio) || j.modelUp < math.Log(1.15)-1e-12 || j.modelDown < math.Log(1.15)-1e-12 {
		t.Errorf("governing over guide %.3f, band up %.3f and down %.3f; the band must hold the guide and 1.15 either way", ratio, math.Exp(j.modelUp), math.Exp(j.modelDown))
	}
}
