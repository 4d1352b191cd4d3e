package force

import (
	"math"
	"math/rand/v2"
	"testing"
)

// force of one member at a movement, straight from the definition.
func memberLoad(m member, w float64) float64 {
	if m.zero == 0 {
		return m.stiffness * w
	}
	// The tangent is K up to the knee and falls evenly to nothing at the top.
	top := m.zero/2 - m.knee
	v := min(w, top)
	if v <= m.knee {
		return m.stiffness * v
	}
	tangent := m.stiffness * (top - v) / (top - m.knee)
	return m.stiffness*m.knee + (v-m.knee)*(m.stiffness+tangent)/2
}

func TestSeriesBalancesBothMembers(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 5000 {
		o, i := member{stiffness: math.Exp(4 * rng.Float64())}, member{stiffness: math.Exp(4 * rng.Float64())}
		if rng.IntN(3) > 0 {
			o.zero = 0.1 + rng.Float64()
		}
		if rng.IntN(3) > 0 {
			i.zero = 0.1 + rng.Float64()
		}
		if rng.IntN(2) > 0 {
			o.knee, i.knee = 0.2*o.zero*rng.Float64(), 0.2*i.zero*rng.Float64()
		}
		w := 1.5 * rng.Float64()
		load, wo, _ := series(&o, &i, o.stiffness, i.stiffness, w)
		if wo < -1e-12 || wo > w+1e-12 {
			t.Fatalf("outer moves %g of %g", wo, w)
		}
		if got, want := memberLoad(o, wo), memberLoad(i, w-wo); math.Abs(got-want) > 1e-9*(1+want) || math.Abs(got-load) > 1e-9*(1+want) {
			t.Fatalf("outer %+v at %g carries %g, inner %+v at %g carries %g, load %g", o, wo, got, i, w-wo, want, load)
		}
	}
}

func TestSeriesNeverLosesLoadWithMovement(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		o, i := member{stiffness: 10 * rng.Float64(), zero: rng.Float64()}, member{stiffness: 10 * rng.Float64(), zero: rng.Float64()}
		o.knee = 0.2 * o.zero * rng.Float64()
		last := 0.0
		for k := range 200 {
			load, _, _ := series(&o, &i, o.stiffness, i.stiffness, 0.01*float64(k))
			if load < last-1e-12 {
				t.Fatalf("load fell from %g to %g at %g: %+v %+v", last, load, 0.01*float64(k), o, i)
			}
			last = load
		}
	}
}

func TestRigidMemberLeavesAllToTheOther(t *testing.T) {
	o, rigid := member{stiffness: 7}, member{}
	load, wo, small := series(&o, &rigid, 7, 0, 0.3)
	if load != 2.1 || wo != 0.3 || small != 7 {
		t.Errorf("got %g, %g, %g", load, wo, small)
	}
	load, wo, _ = series(&rigid, &o, 0, 7, 0.3)
	if load != 2.1 || wo != 0 {
		t.Errorf("got %g, %g", load, wo)
	}
}

func TestRampsNeverFall(t *testing.T) {
	for _, slope := range []float64{0.1, 1, 2, 5, 100} {
		p := ramp(3, 1, slope, 2)
		near(t, "end", p.at(1), 2, 1e-12)
		last := 0.0
		for k := range 101 {
			f := p.at(3 - 0.02*float64(k))
			if f < last-1e-12 {
				t.Errorf("slope %g: falls to %g from %g", slope, f, last)
			}
			last = f
		}
	}
}
