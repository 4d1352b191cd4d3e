package force

import (
	"math"
	"math/rand/v2"
	"testing"
)

// Where a latch has dropped, by hand: the crest stands above the home by the float of the
// groove and by what the lever and a pulling flank leave of either lead.
func TestHomeOfKnownLatches(t *testing.T) {
	cap := capJob()
	rim := cap.Latches[0].Annular
	rim.GrooveFloat = 1.5
	arm := armJob()
	square := armJob()
	square.Latches[0].Cantilever.ReturnAngle = math.Pi / 2
	high := armJob()
	high.Latches[0].Engage = ptr(8.0)
	ball := ballJob()
	for _, c := range []struct {
		name        string
		job         Assembly
		least, most float64
	}{
		{"a rim with float in its groove", cap, 1.5, 1.5 + 0.4/math.Tan(rad(25))},
		{"hooks on a pulling flank", arm, 1.2, 1.2 + 1.2/math.Tan(rad(30))},
		{"square hooks drop at their seat", square, 0, 1.2 / math.Tan(rad(30))},
		{"hooks that meet high above the seat", high, 8 - 1.2/math.Tan(rad(30)) - 0.3, 8},
		{"balls, drawn in below the lip", ball, 0, BallStroke(5.6, 6)},
		{"pins take force to the seat", pinJob(), 0, 0},
		{"ribs do", ribJob(), 0, 0},
	} {
		r, err := Analyse(c.job)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		l := r.Latches[0]
		if l.Home < c.least-1e-9 || l.Home > c.most || l.HomeLeast > l.Home || l.HomeLeast < 0 {
			t.Errorf("%s: %.4f, least %.4f mm; want %.4f to %.4f", c.name, l.Home, l.HomeLeast, c.least, c.most)
		}
	}
}

// Law: over random assemblies, sizes and frictions, no latch takes force below the lift
// at which it counts as home; and as drawn, it does so just above. By sampling the force,
// where the lift itself comes from the break points.
func TestBelowHomeNoForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(71, 72))
	var homes, tight, bound int
	for n := range 300 {
		jobs := everyJob()
		a := jobs[n%len(jobs)]
		a.Draws = 100
		l := &a.Latches[0]
		switch {
		case l.Annular != nil:
			v := l.Annular
			v.Undercut, v.ReturnAngle, v.MatingAngle, v.GrooveFloat, v.Land = 0.2+rng.Float64(), rad(15+70*rng.Float64()), rad(12+20*rng.Float64()), 3*rng.Float64(), rng.Float64()
		case l.Cantilever != nil:
			v := l.Cantilever
			v.Undercut, v.ReturnAngle, v.MatingAngle, v.Land = 0.3+rng.Float64(), rad(15+75*rng.Float64()), rad(15+20*rng.Float64()), rng.Float64()
		case l.Torsional != nil:
			v := l.Torsional
			v.Undercut, v.ReturnAngle, v.MatingAngle, v.Land = 0.3+rng.Float64(), rad(15+75*rng.Float64()), rad(15+20*rng.Float64()), rng.Float64()
		case l.Ball != nil:
			l.Ball.SeatDepth = 3 * rng.Float64()
			l.Ball.MouthDiameter = 5.3 + 0.4*rng.Float64()
		}
		if rng.IntN(3) == 0 {
			l.Engage = ptr(1 + 6*rng.Float64())
		}
		r, err := Analyse(a)
		if err != nil {
			continue
		}
		lower, _ := a.Shop.Resolve(a.Lower)
		upper, _ := a.Shop.Resolve(a.Upper)
		res := r.Latches[0]
		if res.Home > 0 {
			homes++
			if f := res.Curve.At(res.Home + 1e-7); f <= 0 {
				t.Errorf("%s: home at %.5f mm, and no force just above", l.Kind(), res.Home)
			}
		}
		if res.HomeLeast < res.Home {
			tight++
		}
		mu := pairFriction(lower, upper).Value
		spread := max(lower.FrictionSpread.Value, upper.FrictionSpread.Value)
		j := readyJoint(*l, lower, upper)
		for range 200 {
			c := nominal(mu * (1 + spread*(2*rng.Float64()-1)))
			c.lower, c.upper = 0.85+0.3*rng.Float64(), 0.85+0.3*rng.Float64()
			size := j.size + j.worst*(2*rng.Float64()-1)
			if rng.IntN(4) == 0 {
				size = j.size + j.worst
			}
			s := j.share(&c)
			var p profile
			var at state
			j.at(&s, own{size: size}, &p, &at)
			if at.loose {
				continue
			}
			for k := range 400 {
				lift := res.HomeLeast * (float64(k) + 0.5) / 400 * 0.9999
				if res.HomeLeast > 0 && p.at(lift) > 0 {
					t.Fatalf("%s %d: %.3f N at %.5f mm, home below %.5f", l.Kind(), n, p.at(lift), lift, res.HomeLeast)
				}
			}
			if p.end() < res.HomeLeast+1e-9 {
				bound++
			}
		}
	}
	if homes < 100 || tight < 20 || bound < 100 {
		t.Errorf("%d homes above the seat, %d moved by tolerance, %d draws at the bound: too few to judge", homes, tight, bound)
	}
}
