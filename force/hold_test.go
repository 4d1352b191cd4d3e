package force

import (
	"math"
	"math/rand/v2"
	"testing"

	"ramnest/force/warning"
)

// heldJob is a random rim, collar or hook of the tests' jobs, with a service.
func heldJob(rng *rand.Rand) Assembly {
	a := everyJob()[rng.IntN(7)]
	a.Seed = rng.Uint64()
	l := &a.Latches[0]
	v := func(lo, hi float64) float64 { return lo + (hi-lo)*rng.Float64() }
	switch {
	case l.Annular != nil:
		l.Annular.Undercut, l.Annular.ReturnAngle = v(0.5, 1), rad(v(20, 60))
	case l.Cantilever != nil:
		l.Cantilever.Undercut, l.Cantilever.ReturnAngle, l.Cantilever.Width = v(0.8, 1.4), rad(v(20, 90)), v(4, 12)
	case l.Torsional != nil:
		l.Torsional.Undercut, l.Torsional.ReturnAngle, l.Torsional.BarLength = v(0.4, 1), rad(v(20, 90)), v(4, 10)
	case l.PressFit != nil:
		l.PressFit.Interference = v(0.03, 0.1)
	case l.CrushRib != nil:
		l.CrushRib.Crush = v(0.15, 0.4)
	}
	a.Service = &Service{Hold: v(1, 500), After: ptr(v(0, 416)), Temperature: ptr(v(0, 60)), Moisture: []string{"dry", "room_air"}[rng.IntN(2)],
		Keeps: Keeps{Temperature: ptr(v(0.3, 1)), Set: ptr(v(0.5, 1))}}
	return a
}

func TestHoldFollowsItsLaws(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 5))
	known := 0
	for range 120 {
		a := heldJob(rng)
		r := mustAnalyse(t, a)
		if r.NoP95 {
			continue
		}
		l := r.Latches[0]
		h := l.Hold
		if !(h.P5 >= 0 && h.P5 <= h.P50 && h.P50 <= h.P95 && h.P95 <= 1e9) || r.HoldLatch != 0 {
			t.Fatalf("%s: %g, %g, %g N", l.Kind, h.P5, h.P50, h.P95)
		}
		if most := float64(l.Count) * h.Strength * 1.4; h.P95 > most {
			t.Errorf("%s: P95 %g N above every strength, %g N", l.Kind, h.P95, most)
		}
		k, sure := 1.0, true
		for _, f := range h.Factors {
			if f.Known && !(f.Value >= 0 && f.Value <= 1 && f.Mark != "") || !f.Known && f.Value != 0 || f.Why == "" {
				t.Errorf("factor %+v", f)
			}
			k, sure = k*f.Value, sure && f.Known
		}
		if sure != h.LifeKnown {
			t.Fatalf("known %v, factors %+v", h.LifeKnown, h.Factors)
		}
		if sure {
			known++
			near(t, "life", h.Life, k*h.P5, 1e-12)
			if h.Life > h.P5 {
				t.Errorf("rises from %g to %g N", h.P5, h.Life)
			}
			if short := r.Warnings; h.Life < a.Service.Hold != warned(short, warnHoldShort) {
				t.Errorf("holds %g of %g N and says %v", h.Life, a.Service.Hold, short)
			}
		} else if h.Life != 0 || !warned(r.Warnings, warnHoldUnknown) {
			t.Errorf("a figure %g N of what is not known", h.Life)
		}
		// Each influence alone can only take away.
		for name, worse := range map[string]func(s *Service){
			"time":     func(s *Service) { s.After = ptr(*s.After*3 + 1) },
			"openings": func(s *Service) { s.Openings += 5 },
			"heat":     func(s *Service) { s.Keeps.Temperature = ptr(*s.Keeps.Temperature * 0.9) },
			"moisture": func(s *Service) { s.Moisture = "immersed" },
			"wear":     func(s *Service) { s.Openings, s.Keeps.Openings = 5, ptr(0.9) },
		} {
			b, service := a, *a.Service
			worse(&service)
			b.Service = &service
			if w := mustAnalyse(t, b).Latches[0].Hold; w.LifeKnown && (!h.LifeKnown || w.Life > h.Life) || w.P5 != h.P5 {
				t.Errorf("%s: %g N after %g N", name, w.Life, h.Life)
			}
		}
	}
	if known < 30 {
		t.Errorf("only %d jobs with a hold that is known", known)
	}
}

func warned(all []warning.Warning, n int) bool {
	for _, w := range all {
		if w.Number == n {
			return true
		}
	}
	return false
}

// Until a strength decides, a steeper flank and a taller bead hold more.
func TestHoldRisesWithFlankAndBead(t *testing.T) {
	for _, change := range []func(a *Annular, f float64){
		func(a *Annular, f float64) { a.ReturnAngle = rad(20 + 20*f) },
		func(a *Annular, f float64) { a.Undercut = 0.6 + 0.4*f },
	} {
		last := 0.0
		for i := range 8 {
			a := capJob()
			change(a.Latches[0].Annular, float64(i)/7)
			h := mustAnalyse(t, a).Latches[0].Hold
			if h.P5 <= last || h.Breaks > 0.9 {
				t.Errorf("step %d: %g N after %g N, breaks %g", i, h.P5, last, h.Breaks)
			}
			last = h.P5
		}
	}
}

// A hook that locks is held by its material, and no more.
func TestALockingHookHoldsNoMoreThanItsArm(t *testing.T) {
	a := armJob()
	v := a.Latches[0].Cantilever
	v.ReturnAngle = rad(90)
	h := mustAnalyse(t, a).Latches[0].Hold
	// By hand: 1 mm tip, 6 mm wide, e = 0.5 + 0.6; 60 MPa.
	near(t, "strength", h.Strength, 60/(1/6.0+1.1*0.5/(6.0/12)), 1e-9)
	if h.Breaks != 1 || h.Limit != "pull of the arm, off its middle" || h.P5 >= 4*h.Strength || h.P5 < 0.8*4*h.Strength {
		t.Errorf("%+v", h)
	}
	v.RootRadius, v.TipThickness = ptr(1.0), 2
	if thick := mustAnalyse(t, a).Latches[0].Hold; thick.P5 < 2*h.P5 {
		t.Errorf("an arm twice as thick holds %g N, the thin one %g N", thick.P5, h.P5)
	}
}

// With nothing drawn every percentile is the force that pulls apart, times the places.
func TestHoldWithoutSpreadIsTheSeparation(t *testing.T) {
	a := pinJob()
	fixed := Figures{FrictionSpread: ptr(0.0), ModulusSpread: ptr(0.0), Friction: ptr(0.3)}
	a.Lower.Figures, a.Upper.Figures = fixed, fixed
	a.Latches[0].PressFit.InterferenceTol = ptr(0.0)
	l := mustAnalyse(t, a).Latches[0]
	// What is left is the model error and the wall.
	near(t, "median", l.Hold.P50, 2*l.Separation, 0.05)
}

// The bound of each strength by hand, for a rim.
func TestStrengthsOfARim(t *testing.T) {
	a := capJob()
	m, _ := Resolve(a.Lower)
	j := readyJoint(a.Latches[0], m, m)
	base := 0.4 + 0.4/math.Tan(rad(25)) + 0.4/math.Tan(rad(40))
	want := map[string]float64{
		"shear of the bead":         math.Pi * 40 * base * 0.5 * m.StrengthZ.Value,
		"pressure on the flank":     math.Pi * 40 * 0.4 * m.Strength.Value,
		"section of the outer part": math.Pi / 4 * (43.2*43.2 - 40.8*40.8) * m.StrengthZ.Value,
		"section of the inner part": math.Pi / 4 * (39.2*39.2 - 36.8*36.8) * m.StrengthZ.Value,
	}
	for _, s := range strengths(a.Latches[0].Joint(), &j, m, m) {
		near(t, s.what, s.force, want[s.what], 0.02)
	}
}

// The even share of a bundle, against every order in which its joints let go.
func TestBundleIsTheMostThatAnEvenShareReaches(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 9))
	for range 200 {
		each := make([]float64, 1+rng.IntN(7))
		for i := range each {
			each[i] = rng.Float64()
		}
		// Raise the pull in small steps, those that cannot take their share let go.
		var pull float64
		alive := append([]float64(nil), each...)
		for len(alive) > 0 {
			least := math.Inf(1)
			for _, f := range alive {
				least = min(least, f)
			}
			pull = max(pull, least*float64(len(alive)))
			var rest []float64
			for _, f := range alive {
				if f*float64(len(alive)) > pull {
					rest = append(rest, f)
				}
			}
			alive = rest
		}
		near(t, "bundle", bundle(each), pull, 1e-12)
	}
}

func TestRelaxationKeepsToItsRule(t *testing.T) {
	for _, c := range [][2]float64{{0, 1}, {0.5, 0.75}, {1, 0.75}, {1000, 0.5}, {10000, 0.75 - 1.0/3}} {
		if k, ok := Relaxation(c[0]); !ok || math.Abs(k-c[1]) > 1e-12 {
			t.Errorf("%g h: %g, %v", c[0], k, ok)
		}
	}
	for _, v := range []float64{-1, 10001, math.NaN(), math.Inf(1)} {
		if k, ok := Relaxation(v); ok || k != 0 {
			t.Errorf("%g h: %g", v, k)
		}
	}
}

// What each part is known to keep, and what is not known.
func TestLifeFactorsOfMaterials(t *testing.T) {
	for _, c := range []struct {
		material string
		of       func(Material) LifeFactor
		want     float64 // below 0: not known
	}{
		{"PA12", func(m Material) LifeFactor { return m.warm(23) }, 1}, {"PA12", func(m Material) LifeFactor { return m.warm(60) }, 0.3},
		{"PA12", func(m Material) LifeFactor { return m.warm(31.5) }, 0.65}, {"PA12", func(m Material) LifeFactor { return m.warm(61) }, -1},
		{"PA12", func(m Material) LifeFactor { return m.warm(-1) }, -1}, {"PLA", func(m Material) LifeFactor { return m.warm(40) }, -1},
		{"steel", func(m Material) LifeFactor { return m.warm(90) }, 1}, {"PA12", func(m Material) LifeFactor { return m.moist("dry") }, 1},
		{"PA12", func(m Material) LifeFactor { return m.moist("room_air") }, 1100.0 / 1450}, {"PA12-GB", func(m Material) LifeFactor { return m.moist("room_air") }, 1100.0 / 1450},
		{"PA", func(m Material) LifeFactor { return m.moist("room_air") }, 1100.0 / 3000}, {"PA12", func(m Material) LifeFactor { return m.moist("immersed") }, -1},
		{"PC", func(m Material) LifeFactor { return m.moist("room_air") }, 1}, {"RESIN", func(m Material) LifeFactor { return m.moist("room_air") }, -1},
		{"RESIN", func(m Material) LifeFactor { return m.overTime(1000) }, -1}, {"PETG", func(m Material) LifeFactor { return m.overTime(1000) }, 0.5},
	} {
		m, faults := Resolve(MaterialSpec{Material: c.material})
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		if f := c.of(m); f.Known != (c.want >= 0) || f.Known && math.Abs(f.Value-c.want) > 1e-12 {
			t.Errorf("%s: %+v, want %g", c.material, f, c.want)
		}
	}
}

func TestSetFollowsFromTheStrain(t *testing.T) {
	j := joint{path: hump, outer: member{stiffness: 1, zero: 10, limit: 0.04}}
	if f := setLeft(&j, state{move: 2, outerMove: 2, outerStrain: 0.03}); !f.Known || math.Abs(f.Value-0.8) > 1e-12 {
		t.Errorf("%+v", f)
	}
	for _, s := range []state{{move: 2, outerMove: 2, outerStrain: 0.041}, {move: 5, outerMove: 5, outerStrain: 0.03}} {
		if f := setLeft(&j, s); f.Known {
			t.Errorf("%+v", f)
		}
	}
	j.outer.zero = 0
	if f := setLeft(&j, state{move: 2, outerMove: 2, outerStrain: 0.03}); f.Known {
		t.Errorf("no secant data: %+v", f)
	}
}

func TestServiceIsChecked(t *testing.T) {
	for field, s := range map[string]Service{
		"hold": {Hold: -1}, "after": {After: ptr(math.NaN())}, "openings": {Openings: -1}, "temperature": {Temperature: ptr(400.0)},
		"moisture": {Moisture: "damp"}, "keeps.set": {Keeps: Keeps{Set: ptr(1.1)}},
	} {
		if f := s.Validate(); len(f) != 1 || f[0].Field != field {
			t.Errorf("%s: %v", field, f)
		}
	}
	if f := (Service{}).Validate(); len(f) > 0 {
		t.Error(f)
	}
}

// The lines of the explanation give the hold at the end of life from the P5 of now.
func TestHoldIsRedoneFromItsExplanation(t *testing.T) {
	for _, a := range everyJob() {
		a.Service = &Service{Temperature: ptr(30.0), Keeps: Keeps{Set: ptr(0.9), Temperature: ptr(0.8)}}
		l := mustAnalyse(t, a).Latches[0]
		found := map[string]float64{}
		for _, line := range Explain(a, l.ID) {
			found[line.ID] = line.Value
		}
		near(t, l.Kind+": strength", found["hold.strength"], l.Hold.Strength, 1e-12)
		near(t, l.Kind+": life", found["hold.life"]*l.Hold.P5, l.Hold.Life, 1e-12)
	}
}

// The short search for the summit of a ball is never above the long one, and near it.
func TestPullOfABallIsItsSeparation(t *testing.T) {
	a := ballJob()
	m, _ := Resolve(a.Lower)
	j := readyJoint(a.Latches[0], m, m)
	for i := range 30 {
		mu := 0.05 + 0.05*float64(i)
		p, s := j.nominalAt(mu)
		long, locks := j.separation(mu, s, &p)
		short, locked := j.pull(mu, &s, &p)
		if locked != locks || short > long*(1+1e-9) || short < 0.99*long {
			t.Errorf("friction %g: %g of %g N, locks %v and %v", mu, short, long, locked, locks)
		}
	}
}
