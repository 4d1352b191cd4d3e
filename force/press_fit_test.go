package force

import (
	"math"
	"testing"
)

// pressedByIntegration integrates the force along a pin from its tip to the mouth of
// the boss, an independent numerical solution: at every depth the load follows the
// oversize there, the pin swollen by the force along it, the boss, which stands on
// its foot, widened by what has gone over into it.
func pressedByIntegration(f Fit, k, w, mu, length float64) float64 {
	d := f.Joint
	pin, boss := math.Pi/4*(d*d-f.ShaftBore*f.ShaftBore), math.Pi/4*(f.HubOuter*f.HubOuter-d*d)
	// The whole force stands on the right-hand side: found by repeating.
	whole := 0.0
	for range 100 {
		const steps = 2000
		along := 0.0
		for range steps {
			u := w + d/2*(f.ShaftPoisson*along/(f.ShaftModulus*pin)-f.HubPoisson*(whole-along)/(f.HubModulus*boss))
			along += mu * k * u * length / steps
		}
		if math.Abs(along-whole) < 1e-9*along {
			break
		}
		whole = along
	}
	return whole
}

func TestSwellingAgainstIntegration(t *testing.T) {
	for _, c := range []struct {
		f          Fit
		mu, length float64
	}{
		{Fit{5, 11, 0, 1700, 0.4, 1700, 0.4}, 0.4, 8},
		{Fit{10, 18, 5, 1700, 0.4, 2100, 0.36}, 0.35, 12},
		{Fit{4, 12, 2, 2000, 0.4, 1800, 0.4}, 0.3, 6},
		{Fit{6, 20, 0, 2000, 0.4, 2000, 0.4}, 0.6, 8},
	} {
		k := 2 * math.Pi / (c.f.hubCompliance() + c.f.shaftCompliance())
		plain := c.mu * k * 0.02 * c.length
		m := c.mu * c.f.Swelling(k, c.length)
		in, out := pressedByIntegration(c.f, k, 0.02, c.mu, c.length), -pressedByIntegration(c.f, k, 0.02, -c.mu, c.length)
		t.Logf("%+v, friction %g: %.4g N, pressed in %.4g N (ours %.4g), pulled out %.4g N (ours %.4g)", c.f, c.mu, plain, in, plain/(1-m), out, plain/(1+m))
		if got := plain / (1 - m); got < in || got > 1.05*in {
			t.Errorf("pressed in: %g N, integrated %g N; want up to 5 %% above", got, in)
		}
		near(t, "pulled out", plain/(1+m), out, 0.03)
	}
}

// TestSteelPinDoesNotSwell: the boss gives more.
func TestSteelPinDoesNotSwell(t *testing.T) {
	a := pinJob()
	lower, _ := Resolve(a.Lower)
	upper, _ := Resolve(a.Upper)
	if j := readyJoint(a.Latches[0], lower, upper); j.swell != 0 || j.edge <= 0 {
		t.Errorf("swelling %g, edge %g; want none, and a boss that goes on", j.swell, j.edge)
	}
	with := mustAnalyse(t, a)
	a.Latches[0].PressFit.BoreBeyond = ptr(0.0)
	if r := mustAnalyse(t, a); r.Peak >= with.Peak || r.Latches[0].Separation != with.Latches[0].Separation {
		t.Errorf("boss as long as the pin: %g N and %g N to pull; going on: %g N and %g N", r.Peak, r.Latches[0].Separation, with.Peak, with.Latches[0].Separation)
	}
}

// TestPinThatLocksCounts: a long soft pin at high friction locks in its bore.
func TestPinThatLocksCounts(t *testing.T) {
	a := pinJob()
	a.Upper = MaterialSpec{Material: "PA12"}
	a.Lower.Friction, a.Upper.Friction = ptr(0.6), ptr(0.6)
	a.Latches[0].PressFit.EngagementLength = 22
	r := mustAnalyse(t, a)
	if r.Jammed == 0 {
		t.Error("no assembly jams")
	}
	a.Latches[0].PressFit.EngagementLength = 40
	if r = mustAnalyse(t, a); !r.Locks || !r.NoP95 || r.Peak != 0 || r.P95 != 0 {
		t.Errorf("40 mm: locks %t, peak %g N, P95 %g N; want it to lock, and no force", r.Locks, r.Peak, r.P95)
	}
}
