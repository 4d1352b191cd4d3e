package method

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestEffortNamesZoneAndSteps(t *testing.T) {
	for _, c := range []struct {
		name                        string
		force, base, perHour, hours float64
		zone, steps, strictBy       string
		strict                      float64
	}{
		// The worked example: 30 N in a batch, then the same on a line.
		{"batch", 30, BodyPush, 60, 1.5, "recommended", "over 12 to 120 an hour, up to 3 s each, over 1 to 2 h a day", byEN, 51.2},
		{"twice that", 60, BodyPush, 60, 1.5, "not recommended", "over 12 to 120 an hour, up to 3 s each, over 1 to 2 h a day", byEN, 51.2},
		{"line", 30, BodyPush, 360, 7.5, "to be avoided", "over 120 to 1200 an hour, up to 3 s each, over 2 to 8 h a day", byEN, 20},
		{"occasional, at the bound", 80, BodyPush, 12, 1, "recommended", "up to 12 an hour, up to 3 s each, up to 1 h a day", byEN, 80},
		{"hardly any rest", 1, BodyPush, 3400, 1, "recommended", "over 1200 an hour, up to 3 s each, up to 1 h a day", byPotvin, 200 * (1 - math.Pow(3400.0/3600-1.0/28800, 0.24))},
	} {
		e, ok := EffortOf(c.force, c.base, c.perHour, 1, c.hours)
		if !ok || e.Zone != c.zone || e.Steps != c.steps || e.StrictBy != c.strictBy || math.Abs(e.Strict-c.strict) > 1e-9 || e.Other < e.Strict {
			t.Errorf("%s: %+v, %v", c.name, e, ok)
		}
	}
	for _, x := range [][5]float64{{-1, 75, 60, 1, 1}, {1, math.NaN(), 60, 1, 1}, {1, 75, 60, 1, 9}, {1, 75, 1300, 4, 1}, {1, 75, -1, 1, 1}, {math.Inf(1), 75, 60, 1, 1}} {
		if e, ok := EffortOf(x[0], x[1], x[2], x[3], x[4]); ok {
			t.Errorf("%v was taken: %+v", x, e)
		}
	}
}

func TestShift(t *testing.T) {
	for _, c := range []struct {
		name                                string
		force, base, perHour, second, hours float64
		perShift, people                    int
		by                                  string
	}{
		// 30 N with both palms over a shift: 40 N is the reduced force in the bin to 20 a
		// minute, 64 in that to 2 a minute; half of it is recommended.
		{"both palms on a line", 30, 200, 360, 1, 7.5, 900, 3, byEN},
		{"less force, the next bin", 20, 200, 360, 1, 7.5, 9000, 1, byEN},
		{"an hour of it", 30, 200, 360, 1, 1, 1200, 1, byEN},
		{"once in five minutes", 40, 200, 30, 1, 8, 96, 3, byEN},
		{"too much at any rate", 41, 200, 30, 1, 8, 0, 0, byEN},
		{"more than the base", 201, 200, 30, 1, 1, 0, 0, byEN},
		// 2 % of 200 N: EN 1005-3 knows no bound; 0.98^(1/0.24) = 0.9193 of 28800 s, and
		// one second; for half a second each the decree's 27600 movements come first.
		{"light and fast", 4, 200, 3600, 1, 8, 26475, 2, byPotvin},
		{"lighter and faster", 4, 200, 3600, 0.5, 8, 27600, 2, "decree 361/2007"},
	} {
		s, ok := ShiftOf(c.force, c.base, c.perHour, c.second, c.hours)
		if !ok || s.PerShift != c.perShift || s.People != c.people || s.By != c.by {
			t.Errorf("%s: %+v, %v", c.name, s, ok)
		}
		if s.PerShift > 0 && math.Abs(s.PerHour*(s.Rest+c.second)-3600) > 1e-6 {
			t.Errorf("%s: rest of %g s does not fill the hour at %g", c.name, s.Rest, s.PerHour)
		}
	}
	for _, x := range [][5]float64{{-1, 75, 60, 1, 1}, {1, 0, 60, 1, 1}, {1, 75, 60, 0, 1}, {1, 75, 60, 1, 8.1}, {1, 75, math.NaN(), 1, 1}, {1, 75, 60, 1, 0}} {
		if s, ok := ShiftOf(x[0], x[1], x[2], x[3], x[4]); ok {
			t.Errorf("%v was taken: %+v", x, s)
		}
	}
}

// At the pace that ShiftOf gives, the stricter source still recommends the force, and
// just above it one of the sources does not.
func TestShiftIsTheEdge(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	edges := 0
	for range 3000 {
		base, seconds, hours := 75+125*rng.Float64(), 0.3+5*rng.Float64(), 0.2+7.8*rng.Float64()
		force := base * rng.Float64() * rng.Float64()
		s, ok := ShiftOf(force, base, 100, seconds, hours)
		if !ok {
			t.Fatalf("refused %g of %g N", force, base)
		}
		if s.PerShift == 0 {
			continue
		}
		e, ok := EffortOf(force, base, s.PerHour*(1-1e-12), seconds, hours)
		if !ok || force > e.Strict*(1+1e-9) {
			t.Fatalf("%g N at %g an hour: strict %g N (%v)", force, s.PerHour, e.Strict, ok)
		}
		if most, _ := MostMovements(force / base); s.PerShift > most {
			t.Fatalf("%d movements, the decree allows %d", s.PerShift, most)
		}
		if up := s.PerHour * 1.001; up*seconds < 3600 && s.By != "decree 361/2007" {
			edges++
			if e, ok := EffortOf(force, base, up, seconds, hours); ok && force <= e.Strict {
				t.Fatalf("%g N of %g at %g an hour would still be recommended; gave %g by %s", force, base, up, s.PerHour, s.By)
			}
		}
	}
	if edges < 500 {
		t.Fatalf("only %d edges: the draw is no test", edges)
	}
}

func TestMostMovements(t *testing.T) {
	for _, c := range []struct {
		share float64
		most  int
		ok    bool
	}{{0, 27600, true}, {0.07, 27600, true}, {0.0701, 24300, true}, {0.10, 19800, true}, {0.12, 16700, true}, {0.13, 3200, true}, {0.48, 3200, true}, {0.53, 1800, true}, {0.531, 0, false}, {-0.1, 0, false}, {math.NaN(), 0, false}} {
		if most, ok := MostMovements(c.share); most != c.most || ok != c.ok {
			t.Errorf("%g of strength: %d, %v; want %d", c.share, most, ok, c.most)
		}
	}
}

func TestCrew(t *testing.T) {
	d := lid()
	d.RatePerHour, d.HoursPerDay = 360, 7.5
	got := Choose(d, Bench{}, nil)
	for _, c := range []struct {
		m                        Method
		cycle                    float64
		byTime, byEffort, people int
	}{
		{ByPress, 5.8, 1, 1, 1}, // 360 * 5.8 * 1.15 = 2401 s
		{ByPress, 8.6, 1, 1, 1},
		{ByPress, 8.7, 2, 1, 2},    // 360 * 8.7 * 1.15 = 3602 s
		{ByMallet, 5.8, 1, 12, 12}, // 30 an hour each, our own limit
	} {
		crew, ok := got.option(c.m).Crew(360, c.cycle)
		if !ok || crew != (Crew{c.byTime, c.byEffort, c.people}) {
			t.Errorf("%s, %g s: %+v, %v", c.m, c.cycle, crew, ok)
		}
	}
	if crew, ok := got.option(ByHand).Crew(360, 6); ok {
		t.Errorf("60 N all day by hand was given a crew: %+v", crew)
	}
	for _, x := range [][2]float64{{0, 5}, {60, 0}, {math.NaN(), 5}, {60, math.Inf(1)}} {
		if crew, ok := got.option(ByPress).Crew(x[0], x[1]); ok {
			t.Errorf("%v was taken: %+v", x, crew)
		}
	}
}
