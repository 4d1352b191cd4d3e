package method

import (
	"math"
	"math/rand/v2"
	"testing"
)

// A blow simulated as it is, apart from the bounds: head m1 on its face k1, which
// pushes and never pulls, the struck mass m2 under it, parts k2 on a rigid vise; step by
// step (velocity Verlet), rebounds and second contacts included, no damping.
func twoMass(m1, k1, m2, k2, v float64) (face, parts float64) {
	k1, k2 = 1000*k1, 1000*k2 // N/m
	if m2 == 0 {
		m2 = 1e-4 * m1
	}
	fastest := math.Sqrt(max(k1/m1, (k1+k2)/m2))
	slowest := math.Sqrt(min(k1/m1, k2/(m1+m2)))
	dt := 0.04 / fastest
	x1, v1, x2, v2 := 0.0, v, 0.0, 0.0
	pushes := func() (a, b float64) { return max(0, k1*(x1-x2)), max(0, k2*x2) }
	c, j := pushes()
	for t := 0.0; t < 12/slowest; t += dt {
		v1, v2 = v1-c/m1*dt/2, v2+(c-j)/m2*dt/2
		x1, x2 = x1+v1*dt, x2+v2*dt
		c, j = pushes()
		v1, v2 = v1-c/m1*dt/2, v2+(c-j)/m2*dt/2
		face, parts = max(face, c), max(parts, j)
		if c == 0 && j == 0 && v1 < 0 && v2 <= 0 && v1 <= v2 {
			break // both fly off, and apart
		}
	}
	return face, parts
}

// TestHardestBlowCoversTheSimulation: over random heads, faces, anvils and parts, the
// force through the parts is below the bound, known or not known; and not by more than
// a factor that would make the limit idle.
func TestHardestBlowCoversTheSimulation(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 70))
	log := func(lo, hi float64) float64 { return lo * math.Exp(rng.Float64()*math.Log(hi/lo)) }
	nearest, oldExceeded := 0.0, 0
	for range 1500 {
		m := Mallet{Mass: log(0.1, 2), Speed: 1 + 4*rng.Float64(), FaceStiffness: log(softFace, stiffFace)}
		driven, joint := log(0.02, 3), log(20, 20000)
		_, parts := twoMass(m.Mass, m.FaceStiffness, driven, joint, m.Speed)
		bound := HardestBlow(m, driven, joint)
		for name, f := range map[string]float64{"all known": bound, "parts not known": HardestBlow(m, driven, 0), "nothing known": HardestBlow(m, math.Inf(1), 0)} {
			if parts > f*(1+1e-3) { // the steps are good to less; a blow that leaves its whole energy in the parts lies on the bound
				t.Errorf("%s: %+v on %.3g kg and %.4g N/mm puts %.4g N through, the bound is %.4g N", name, m, driven, joint, parts, f)
			}
		}
		free := m
		free.FaceStiffness = 0
		if open := HardestBlow(free, driven, 0); parts > open {
			t.Errorf("face not known: %.4g N through, the bound is %.4g N", parts, open)
		}
		if k, _ := SeriesStiffness(m.FaceStiffness, joint); parts > PeakOfBlow(BlowEnergy(m.Mass, m.Speed), k) {
			oldExceeded++ // what one mass on two springs gives
		}
		nearest = max(nearest, parts/HardestBlow(m, driven, joint))
	}
	if nearest < 0.9 {
		t.Errorf("the bound is at best %.2f used: idle", nearest)
	}
	if oldExceeded < 300 {
		t.Errorf("only %d of 1500 cases are beyond one mass on two springs: not the cases that matter", oldExceeded)
	}
	// 0.79 kg at 3 m/s on a face of 200 N/mm, an anvil of half a kilogram: beyond the
	// 1195 N of a rigid support.
	heavy := Mallet{Mass: 28 * ounce, Speed: 3, FaceStiffness: 200}
	rigid := PeakOfBlow(BlowEnergy(heavy.Mass, 3), 200)
	most := 0.0
	for k := 100.0; k < 3000; k *= 1.05 {
		_, parts := twoMass(heavy.Mass, 200, 0.5, k, 3)
		most = max(most, parts)
	}
	if !(most > 1.05*rigid) || HardestBlow(heavy, 0.5, 0) < most {
		t.Errorf("heavy mallet: %.0f N through, rigid %.0f N, bound %.0f N", most, rigid, HardestBlow(heavy, 0.5, 0))
	}
}

// TestBlowReachesWhatIsCounted: the force that a blow is counted to reach is below the
// simulation, without damping, of any face and any parts in series.
func TestBlowReachesWhatIsCounted(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 70))
	log := func(lo, hi float64) float64 { return lo * math.Exp(rng.Float64()*math.Log(hi/lo)) }
	for range 600 {
		m := Mallet{Name: "m", Mass: log(0.1, 2), FaceStiffness: log(softFace, stiffFace)}
		speed, driven, stroke := 1+4*rng.Float64(), log(0.02, 2), log(0.3, 6)
		need := log(50, 2000)
		limits, _, _ := blowLimits(Demand{DesignForce: need, Worst: 1.5 * need, PeakForce: need, Work: need * stroke / 3, Stroke: stroke, AnvilMass: driven}, m, speed)
		for _, l := range limits {
			joint := need / stroke
			switch l.Name {
			case "worst case a blow must reach":
				joint *= 1.5
			case "force a blow must reach":
			default:
				continue
			}
			if _, parts := twoMass(m.Mass, m.FaceStiffness, driven, joint, speed); l.Capacity > parts {
				t.Errorf("%s: counted to %.4g N, simulated %.4g N: %+v at %.3g m/s, %.3g kg, %.4g N/mm", l.Name, l.Capacity, parts, m, speed, driven, joint)
			}
		}
	}
}

// TestTheFaceThatIsAgainstItDecides: with no face stated, each limit is that of the
// worse end, and no stated face between is worse.
func TestTheFaceThatIsAgainstItDecides(t *testing.T) {
	d := Demand{DesignForce: 200, Worst: 320, PeakForce: 150, Work: 150, Stroke: 2, AnvilMass: 0.2, UpperMass: 0.05, ShockLimit: 2000}
	open, _, openPeak := blowLimits(d, Mallet{Name: "m", Mass: 0.45}, 3)
	for k := 70.0; k <= 490; k += 10 {
		stated, _, peak := blowLimits(d, Mallet{Name: "m", Mass: 0.45, FaceStiffness: k}, 3)
		if peak > openPeak {
			t.Errorf("%g N/mm: %g N, unknown %g N", k, peak, openPeak)
		}
		for i := range stated {
			if stated[i].Name != open[i].Name || stated[i].Utilisation > open[i].Utilisation*(1+1e-12) {
				t.Errorf("%g N/mm: %s used %g, unknown %g", k, stated[i].Name, stated[i].Utilisation, open[i].Utilisation)
			}
		}
	}
}

// TestMalletKnowsTheWorstCase: a joint whose worst case no blow reaches, or only in many
// blows, passes on a condition at most, as by hand.
func TestMalletKnowsTheWorstCase(t *testing.T) {
	d := Demand{DesignForce: 120, Worst: 150, P50: 80, PeakForce: 90, Work: 60, Stroke: 1.5, RatePerHour: 10, HoursPerDay: 1, NestSize: [3]float64{80, 60, 50}, AnvilMass: 0.1, UpperMass: 0.02}
	if a := weighMallet(d, mustFill(Bench{})); a.Verdict != Pass {
		t.Fatalf("the plain case: %s, %s", a.Verdict, a.Governing)
	}
	last := Pass
	for _, worst := range []float64{200, 400, 800, 1600, 3200} {
		d.Worst = worst
		a := weighMallet(d, mustFill(Bench{}))
		if a.Verdict.better(last) {
			t.Errorf("worst case %g N: %s after %s", worst, a.Verdict, last)
		}
		last = a.Verdict
	}
	if last != Conditional {
		t.Errorf("worst case of 3200 N: %s", last)
	}
}

func mustFill(b Bench) Bench { b, _ = b.filled(); return b }
