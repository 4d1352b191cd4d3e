package calibrate

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"sync"
	"testing"

	"ramnest/force"
	"ramnest/force/planar"
)

var pa12 = force.MaterialSpec{Material: "PA12", Process: "PBF", Build: "along"}

func rad(deg float64) float64 { return deg * math.Pi / 180 }

func rim() force.Latch {
	return force.Latch{ID: "rim", At: []planar.Point{{}}, Annular: &force.Annular{Outside: "upper", JointDiameter: 64, Undercut: 0.5, UndercutTol: new(0.2), MatingAngle: rad(20), ReturnAngle: rad(45),
		Land: 0.5, GrooveFloat: 0.3, OuterDiameter: 67.2, InnerDiameter: 60, EndDistance: 3, EndDistanceInner: new(7.0)}}
}

func pin() force.Latch {
	return force.Latch{ID: "pin", At: []planar.Point{{}}, PressFit: &force.PressFit{Outside: "lower", JointDiameter: 6, Interference: 0.12, InterferenceTol: new(0.1), OuterDiameter: 12, EngagementLength: 5, LeadInAngle: new(rad(15))}}
}

// ladder gives so many coupons of a latch.
func ladder(l force.Latch, nominal, step float64, n int) []Coupon {
	var out []Coupon
	for k := 1; k <= n; k++ {
		out = append(out, Coupon{Latch: l.ID, Name: fmt.Sprint(k), Size: nominal + float64(k-(n+1)/2)*step})
	}
	return out
}

// shop is a simulated workshop with a known truth. It computes every pair anew with
// package force, not with the tables of the model.
type shop struct {
	m                            *Model
	friction, stiffness, scatter float64
	offsets                      []float64
	rng                          *rand.Rand
}

// press presses every coupon so many times.
func (s shop) press(times int) []Measurement {
	var out []Measurement
	for i, c := range s.m.coupons {
		for range times {
			l := s.m.couponLatch[i]
			sub := &s.m.latches[l]
			size := c.Size + s.offsets[l] + s.scatter*sub.own()*s.rng.NormFloat64()
			var p float64
			if size > 1e-4 {
				if r, err := force.Analyse(s.m.assembly(sub, c.form(), s.friction, s.stiffness, size)); err == nil {
					p = r.Peak
				}
			}
			p += s.scatter*s.m.gauge*p*s.rng.NormFloat64() + floorForce*s.rng.NormFloat64()
			out = append(out, Measurement{Latch: c.Latch, Coupon: c.Name, Force: max(0, p)})
		}
	}
	return out
}

// truth draws a workshop from the prior.
func truth(m *Model, rng *rand.Rand) shop {
	s := shop{m: m, friction: m.friction * math.Exp(m.frictionSpread*rng.NormFloat64()), stiffness: math.Exp(m.stiffnessSpread * rng.NormFloat64()),
		scatter: math.Exp(scatterSpread * rng.NormFloat64()), rng: rng}
	for i := range m.latches {
		s.offsets = append(s.offsets, m.latches[i].offsetSpread()*rng.NormFloat64())
	}
	return s
}

// In repeated simulations with known truth the stated 95 % intervals hold the truth in
// 95 % of the runs, within three standard errors of that count.
func TestIntervalsHoldTheTruth(t *testing.T) {
	in := Input{Assembly: force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{rim(), pin()}}}
	in.Coupons = append(ladder(rim(), 0.5, 0.1, 5), ladder(pin(), 0.12, 0.03, 5)...)
	m, err := NewModel(in)
	if err != nil {
		t.Fatal(err)
	}
	const workers = 4
	runs := 60
	if os.Getenv("RAMNEST_LONG") != "" {
		runs = 240
	}
	tallies := make([]map[string]int, workers)
	var group sync.WaitGroup
	for w := range workers {
		group.Go(func() {
			tallies[w] = map[string]int{}
			rng := rand.New(rand.NewPCG(1, uint64(w)))
			for range runs / workers {
				holds(t, m, truth(m, rng), tallies[w])
			}
		})
	}
	group.Wait()
	held := map[string]int{}
	for _, tally := range tallies {
		for name, n := range tally {
			held[name] += n
		}
	}
	for name, n := range held {
		share := float64(n) / float64(runs)
		t.Logf("%s: %.1f %% of %d runs", name, 100*share, runs)
		if math.Abs(share-0.95) > 3*math.Sqrt(0.95*0.05/float64(runs)) {
			t.Errorf("%s: the 95 %% interval held the truth in %.1f %% of %d runs", name, 100*share, runs)
		}
	}
	if len(held) != 6 {
		t.Errorf("counted %v", held)
	}
}

// holds fits one simulated workshop and counts the intervals that hold its truth.
func holds(t *testing.T, m *Model, s shop, held map[string]int) {
	f, err := m.Fit(s.press(1))
	if err != nil {
		t.Error(err)
		return
	}
	count := func(name string, e Estimate, v float64) {
		if e.Low <= v && v <= e.High {
			held[name]++
		}
	}
	count("friction", f.Friction, s.friction)
	count("stiffness", f.Stiffness, s.stiffness)
	count("scatter", f.Scatter, s.scatter)
	count("offset of rim", f.Offsets[0], s.offsets[0])
	count("offset of pin", f.Offsets[1], s.offsets[1])
	r, err := force.Analyse(m.assembly(&m.latches[0], inJob, s.friction, s.stiffness, max(1e-3, 0.5+s.offsets[0])))
	if err != nil {
		t.Error(err)
		return
	}
	b, _ := f.Band("rim", 0.5, 1)
	count("force of rim", Estimate{Low: b.Low, High: b.High}, r.Peak)
}
