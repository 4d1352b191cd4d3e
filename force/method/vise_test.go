package method

import (
	"math"
	"testing"
)

func TestTipOut(t *testing.T) {
	// Forces on the nest, added up about the end of the jaw: blow down, both faces of
	// the tongue held by friction.
	const half, clamp, peak, mu = 25.0, 4712.0, 600.0, 0.2
	e, ok := TipOut(half, clamp, peak, mu, 1)
	hold := mu*clamp*(half-10) + mu*clamp*(half+10) // tongue faces 10 mm each side of the middle
	if tip := peak * (e - half); !ok || math.Abs(tip-hold) > 1e-6 {
		t.Errorf("tips with %g N mm, held by %g", tip, hold)
	}
	if e, ok := TipOut(half, 0, peak, mu, 2); !ok || e != half {
		t.Errorf("without a clamp it tips at the end of the jaw, %g: got %g, %v", half, e, ok)
	}
	for _, x := range [][5]float64{{0, 1, 1, 1, 1}, {1, -1, 1, 1, 1}, {1, 1, 0, 1, 1}, {1, 1, 1, math.NaN(), 1}, {1, 1, 1, 1, 0.5}, {1, 1e7, 1e-320, 10, 1}} {
		if e, ok := TipOut(x[0], x[1], x[2], x[3], x[4]); ok {
			t.Errorf("%v was taken: %g", x, e)
		}
	}
}

func TestViseLimits(t *testing.T) {
	d := lid() // nest 60 x 50
	find := func(d Demand, v Vise, name string) Limit {
		for _, l := range viseLimits(d, v, 441) {
			if l.Name == name {
				return l
			}
		}
		t.Fatalf("no limit %q", name)
		return Limit{}
	}
	v := GenericVise()
	if l := find(d, v, "clamp pressure on the tongue"); math.Abs(l.Demand-4712/(60.0*25)) > 1e-9 {
		t.Errorf("pressure %g MPa", l.Demand)
	}
	v.ClampForce = 10000
	if l := find(d, v, "clamp pressure on the tongue"); l.OK || math.Abs(l.Demand-10000/(60.0*25)) > 1e-9 {
		t.Errorf("10 kN: pressure %g MPa, ok %v", l.Demand, l.OK)
	}
	if l := find(Demand{DesignForce: 1}, Vise{Name: "v"}, "tip-out along the jaws"); !l.Open {
		t.Errorf("nothing is known, and it is not open: %+v", l)
	}
	// Turned by a quarter the same nest gives the same limits.
	turned := d
	d.Thrust.X, d.Thrust.Y = 12, 7
	turned.NestSize[0], turned.NestSize[1] = d.NestSize[1], d.NestSize[0]
	turned.Thrust.X, turned.Thrust.Y = -7, 12
	for _, name := range []string{"tip-out across the jaws", "tip-out along the jaws", "vise jaws"} {
		if a, b := find(d, GenericVise(), name), find(turned, GenericVise(), name); a != b {
			t.Errorf("%s: %+v, turned %+v", name, a, b)
		}
	}
}
