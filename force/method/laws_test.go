package method

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"ramnest/force/planar"
)

var methods = []Method{ByHand, ByMallet, ByPress}

// anyDemand draws a valid demand, with some figures unknown.
func anyDemand(rng *rand.Rand) Demand {
	maybe := func(x float64) float64 { return x * float64(min(1, rng.IntN(5))) }
	d := Demand{RatePerHour: math.Exp(rng.Float64() * 8), HoursPerDay: 0.2 + 8.5*rng.Float64(), ActionSeconds: 0.3 + 4*rng.Float64()}
	push(&d, math.Exp(1+8*rng.Float64()))
	d.Work *= math.Exp(2 * rng.NormFloat64())
	d.Stroke, d.ThrustWander = maybe(1+8*rng.Float64()), maybe(10*rng.Float64())
	d.NestSize = [3]float64{maybe(30 + 150*rng.Float64()), maybe(30 + 150*rng.Float64()), maybe(15 + 60*rng.Float64())}
	d.Thrust = planar.Point{X: d.NestSize[0] * (rng.Float64() - 0.5), Y: d.NestSize[1] * (rng.Float64() - 0.5)}
	d.AnvilHeight, d.PartStackHeight, d.AnvilMass, d.UpperMass = maybe(30), 20*rng.Float64(), maybe(0.3*rng.Float64()), 0.1*rng.Float64()
	d.Brittle, d.ShockSensitive, d.Permanent = rng.IntN(8) == 0, rng.IntN(8) == 0, rng.IntN(4) == 0
	d.ShockLimit, d.JointStiffness = maybe(2000*rng.Float64()), maybe(1000*rng.Float64())
	return d
}

func TestHigherRateOrLongerDayNeverMakesAMethodEasier(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	b, _ := Bench{}.filled()
	for range 1500 {
		d := anyDemand(rng)
		busier := d
		busier.RatePerHour *= 1 + 3*rng.Float64()
		busier.HoursPerDay = min(24, busier.HoursPerDay*(1+rng.Float64()))
		busier.ActionSeconds *= 1 + rng.Float64()
		for _, m := range methods {
			easy, hard := weigh(m, d, b), weigh(m, busier, b)
			if hard.Verdict.better(easy.Verdict) {
				t.Fatalf("%s: %s at %+v but %s when busier %+v", m, easy.Verdict, d, hard.Verdict, busier)
			}
		}
	}
}

func TestStrongerPressNeverFailsByForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 14))
	for range 1500 {
		d := anyDemand(rng)
		p := Press{Name: "p", Rated: 1000 + 20000*rng.Float64(), Ratio: 8 + 40*rng.Float64(), RamSquare: 30, DaylightMax: 150, Throat: 80}
		strong := p
		strong.Rated *= 1 + 3*rng.Float64()
		strong.Ratio *= 1 + rng.Float64()
		b, _ := Bench{Presses: []Press{p}}.filled()
		bs, _ := Bench{Presses: []Press{strong}}.filled()
		if weak, got := weighPress(d, b), weighPress(d, bs); weak.Verdict.better(got.Verdict) {
			t.Fatalf("%s with %+v, %s with %+v: %s", weak.Verdict, p, got.Verdict, strong, got.Governing)
		}
	}
}

func TestMoreForceNeverMakesAMethodEasier(t *testing.T) {
	rng := rand.New(rand.NewPCG(15, 16))
	b, _ := Bench{}.filled()
	for range 1500 {
		d := anyDemand(rng)
		more := d.atForce(d.DesignForce * (1 + 2*rng.Float64()))
		for _, m := range methods {
			easy, hard := weigh(m, d, b), weigh(m, more, b)
			if hard.Verdict.better(easy.Verdict) {
				t.Fatalf("%s: %s at %g N but %s at %g N; %s", m, easy.Verdict, d.DesignForce, hard.Verdict, more.DesignForce, easy.Governing)
			}
		}
	}
}

// Among the methods that stay possible, more force or a higher rate never leads to a
// lesser one. Where a blow is forbidden the mallet falls out, but never comes back.
func TestMoreForceOrRateNeverChoosesALesserMethod(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	b, _ := Bench{}.filled()
	changed := 0
	for range 1500 {
		d := anyDemand(rng)
		more := d.atForce(d.DesignForce * (1 + 2*rng.Float64()))
		busier := d
		busier.RatePerHour *= 1 + 3*rng.Float64()
		now := free(d, b)
		for _, hard := range []Demand{more, busier} {
			then := free(hard, b)
			if then.Verdict.better(now.Verdict) {
				t.Fatalf("%s by %s, then %s by %s", now.Verdict, now.Method, then.Verdict, then.Method)
			}
			if then.Verdict == now.Verdict && then.Method.rank() < now.Method.rank() {
				t.Fatalf("%s, then the lesser %s, both %s; %+v", now.Method, then.Method, now.Verdict, d)
			}
			if then.Method != now.Method {
				changed++
			}
		}
	}
	if changed < 100 {
		t.Fatalf("only %d choices changed: the draw is no test", changed)
	}
}

func TestAnotherPressOnTheBenchNeverHurts(t *testing.T) {
	rng := rand.New(rand.NewPCG(23, 24))
	for range 1500 {
		d := anyDemand(rng)
		press := func(name string) Press {
			return Press{Name: name, Rated: 1000 + 20000*rng.Float64(), Ratio: 8 + 40*rng.Float64(), RamSquare: 20 + 20*rng.Float64(), DaylightMax: 60 + 200*rng.Float64(), Throat: 30 + 120*rng.Float64()}
		}
		one, _ := Bench{Presses: []Press{press("a")}}.filled()
		two, _ := Bench{Presses: []Press{one.Presses[0], press("b")}}.filled()
		if alone, got := weighPress(d, one), weighPress(d, two); alone.Verdict.better(got.Verdict) {
			t.Fatalf("%s with one press, %s with another beside it", alone.Verdict, got.Verdict)
		}
	}
}

func TestCarriesIsTheEdgeOfAPass(t *testing.T) {
	rng := rand.New(rand.NewPCG(17, 18))
	b, _ := Bench{}.filled()
	found := 0
	for range 150 {
		d := anyDemand(rng)
		for _, m := range methods {
			f := Carries(m, d, Bench{})
			if f == 0 {
				continue
			}
			found++
			if v := weigh(m, d.atForce(f), b).Verdict; v != Pass {
				t.Fatalf("%s: %s at the %g N it carries", m, v, f)
			}
			if f < maxForce*0.99 && weigh(m, d.atForce(f*1.002), b).Verdict == Pass {
				t.Fatalf("%s: still passes above %g N", m, f)
			}
		}
	}
	if found < 100 {
		t.Fatalf("only %d edges found: the draw is no test", found)
	}
}

func TestSameDemandSameDecision(t *testing.T) {
	rng := rand.New(rand.NewPCG(19, 20))
	for range 25 {
		d := anyDemand(rng)
		one, two := Choose(d, Bench{}, nil), Choose(d, Bench{}, nil)
		checkShape(t, one)
		if !reflect.DeepEqual(one, two) {
			t.Fatalf("two answers for %+v", d)
		}
	}
}

func TestImpactAgainstTimeSteps(t *testing.T) {
	const m, v, k = 0.45, 2.0, 200e3 // kg, m/s, N/m
	x, u, peak, time := 0.0, v, 0.0, 0.0
	const dt = 1e-7
	for x >= 0 {
		u -= k * x / m * dt
		x += u * dt
		peak = max(peak, k*x)
		time += dt
	}
	if got := PeakOfBlow(BlowEnergy(m, v), k/1000); math.Abs(got-peak) > 1e-3*peak {
		t.Errorf("peak %g, time steps give %g", got, peak)
	}
	if got, ok := ContactTime(m, k/1000); !ok || math.Abs(got-time) > 1e-3*time {
		t.Errorf("contact %g s, time steps give %g", got, time)
	}
}

func FuzzChoose(f *testing.F) {
	f.Add(60.0, 70.0, 90.0, 3.0, 12.0, 1.0, 1.0, 60.0, 25.0, 0.1, 2000.0, 8896.0, 20.0, 140.0, 0.4)
	f.Add(math.NaN(), -1.0, math.Inf(1), 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, math.NaN())
	f.Add(1e6, 1e6, 1e9, 1e-300, 20000.0, 8.0, 600.0, 5000.0, 5000.0, 100.0, 1e-300, 100.0, 1.0, 10.0, 0.01)
	f.Fuzz(func(t *testing.T, design, worst, work, stroke, rate, hours, action, nest, anvil, mass, shock, rated, ratio, daylight, share float64) {
		d := Demand{DesignForce: design, Worst: worst, Work: work, PeakForce: design / 2, Stroke: stroke, RatePerHour: rate, HoursPerDay: hours, ActionSeconds: action,
			NestSize: [3]float64{nest, nest, anvil}, AnvilHeight: anvil, AnvilMass: mass, ShockLimit: shock, ThrustWander: stroke}
		b := Bench{PressMargin: share, GuideMu: share, Presses: []Press{{Name: "p", Rated: rated, Ratio: ratio, DaylightMax: daylight, RamSquare: 25, Efficiency: share}},
			Mallets: []Mallet{{Name: "m", Mass: mass, Restitution: share}}, Vises: []Vise{{Name: "v", JawWidth: nest, Opening: anvil}}}
		got := Choose(d, b, nil)
		checkShape(t, got)
		for _, a := range got.Options {
			for _, l := range a.Limits {
				for _, x := range []float64{l.Demand, l.Capacity} {
					if math.IsNaN(x) || math.IsInf(x, 0) {
						t.Errorf("%s: %s: %g", a.Method, l.Name, x)
					}
				}
			}
		}
	})
}
