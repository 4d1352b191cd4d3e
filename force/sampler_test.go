package force

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// sampler draws assemblies by itself: its own generator, its own reading of what is
// common and what is not, forces from the formulas as the literature prints them.
// From the package come only the figures that Explain prints, stiffness and lever
// at nominal size.
type sampler struct {
	rng             *rand.Rand
	mu              float64
	lower, upper    float64 // modulus over its nominal value
	model           float64
	growsLo, growUp float64 // surfaces of either part, in units of their tolerance
}

func (s *sampler) even(half float64) float64 { return 1 + half*(2*s.rng.Float64()-1) }

// bell is a normal draw of standard deviation one, cut at three, by the polar method.
func (s *sampler) bell() float64 {
	for {
		x, y := 2*s.rng.Float64()-1, 2*s.rng.Float64()-1
		if q := x*x + y*y; q > 0 && q < 1 {
			return math.Max(-3, math.Min(3, x*math.Sqrt(-2*math.Log(q)/q)))
		}
	}
}

// assembly draws what one assembly has in common: friction in its logarithm,
// 25 % at two deviations; moduli by 15 %, even; surfaces, half of the variance of a tolerance of two deviations; the
// model error, in its logarithm.
func (s *sampler) assembly(mu, up, down float64) {
	s.mu, s.lower, s.upper = mu*math.Pow(1.25, s.bell()/2), s.even(0.15), s.even(0.15)
	s.growsLo, s.growUp = 0.5*math.Sqrt(0.5)*s.bell(), 0.5*math.Sqrt(0.5)*s.bell()
	if z := s.bell(); z > 0 {
		s.model = math.Pow(up, z/2)
	} else {
		s.model = math.Pow(down, z/2)
	}
}

// size of one place: pins and walls grow, bores shrink, by both parts' tolerance.
func (s *sampler) size(nominal, lower, upper float64) float64 {
	return nominal + s.growsLo*lower + s.growUp*upper + 0.5*math.Sqrt(0.5)*math.Hypot(lower, upper)*s.bell()
}

// wall over its nominal value, its tolerance as a share.
func (s *sampler) wall(grown, share float64) float64 {
	return 1 + share*(grown+0.5*math.Sqrt(0.5)*s.bell())
}

// explained gives the values of a latch's explanation by symbol.
func explained(a Assembly) map[string]float64 {
	out := map[string]float64{}
	for _, l := range Explain(a, a.Latches[0].ID) {
		out[l.Symbol] = l.Value
	}
	return out
}

// TestPercentilesAgainstAnotherSampler: P5, P50 and P95 hold their shares of an
// independent sampler's assemblies, for every path of force.
func TestPercentilesAgainstAnotherSampler(t *testing.T) {
	pin, ring, arm, ball := stated(pinJob()), stated(capJob()), stated(armJob()), stated(ballJob())
	for _, c := range []struct {
		name string
		job  Assembly
		peak func(s *sampler, a Assembly, v map[string]float64) float64
	}{
		{"two pins", pin, func(s *sampler, a Assembly, v map[string]float64) float64 {
			p := a.Latches[0].PressFit
			d, tol := p.JointDiameter, *p.InterferenceTol/math.Sqrt2
			wh := (p.OuterDiameter*p.OuterDiameter + d*d) / (p.OuterDiameter*p.OuterDiameter - d*d)
			var sum float64
			for range a.Latches[0].At {
				delta := math.Max(0, s.size(p.Interference, tol, tol))
				q := s.model * math.Pi * delta / ((wh+0.4)/(2000*s.lower) + (1-0.3)/(210000*s.upper))
				tan := math.Tan(*p.LeadInAngle)
				sum += q*delta/2/(2*tan)*(s.mu+tan)/(1-s.mu*tan) + s.mu*q*(p.EngagementLength+v["e'"])
			}
			return sum
		}},
		{"a ring", ring, func(s *sampler, a Assembly, v map[string]float64) float64 {
			r := a.Latches[0].Annular
			tol := *r.UndercutTol / math.Sqrt2
			y := math.Max(0, s.size(r.Undercut, tol, tol))
			// Walls of 1.6 mm by half of 0.2 mm; stiffness by the wall to the power 1.5.
			ko := s.model * s.lower * v["K_o"] * math.Pow(s.wall(s.growsLo, 0.1/1.6), 1.5)
			ki := s.model * s.upper * v["K_i"] * math.Pow(s.wall(s.growUp, 0.1/1.6), 1.5)
			tan := math.Tan(r.MatingAngle)
			f := (s.mu + tan) / (1 - s.mu*tan)
			return ko * ki / (ko + ki) * y / 2 * f / (1 - f*v["kappa"])
		}},
		{"four arms", arm, func(s *sampler, a Assembly, v map[string]float64) float64 {
			c := a.Latches[0].Cantilever
			tol := *c.UndercutTol / math.Sqrt2
			var sum float64
			for range a.Latches[0].At {
				y := math.Max(0, s.size(c.Undercut, tol, tol))
				k := s.model * s.lower * v["K"] * math.Pow(s.wall(s.growsLo, 0.025/2), 3)
				// Modulus by the secant line, at the strain of the root.
				load := k * y * (1 - y*v["eps/y"]/0.0933)
				// The lean of the hook: by repeating.
				theta := 0.0
				for range 60 {
					f := math.Tan(c.MatingAngle + theta + math.Atan(s.mu))
					theta += (y*(v["theta/y"]-(v["turn/y"]-v["theta/y"])*f*v["kappa"]/(1-f*v["kappa"])) - theta) / 3
				}
				f := math.Tan(c.MatingAngle + theta + math.Atan(s.mu))
				sum += load * f / (1 - f*v["kappa"])
			}
			return sum
		}},
		{"six balls", ball, func(s *sampler, a Assembly, v map[string]float64) float64 {
			b := a.Latches[0].Ball
			big := b.BallDiameter / 2
			var sum [64]float64
			for range a.Latches[0].At {
				open := math.Max(0, s.size(b.BallDiameter-b.MouthDiameter, 0.05, 0.05)) / 2
				k := s.model * s.lower * v["K_s"] * math.Pow(s.wall(s.growsLo, 0.1/1.7), 1.5)
				for i := range sum {
					// The ball's centre above the lip, the same for all at one lift.
					z := 1.6 * float64(i) / float64(len(sum))
					phi := math.Asin(z / big)
					if w := big*math.Cos(phi) - big + open; w > 0 {
						f := math.Tan(phi + math.Atan(s.mu))
						sum[i] += k * w * f / (1 - f*v["kappa"])
					}
				}
			}
			return slices.Max(sum[:])
		}},
	} {
		a := c.job
		a.Draws = 20000
		r := mustAnalyse(t, a)
		v := explained(a)
		s := &sampler{rng: rand.New(rand.NewChaCha8([32]byte{1, 2, 3}))}
		const n = 20000
		peaks := make([]float64, n)
		for i := range peaks {
			s.assembly(v["mu"], v["M+"], v["M-"])
			peaks[i] = c.peak(s, a, v)
		}
		for _, q := range []struct{ share, got float64 }{{0.05, r.P5}, {0.5, r.P50}, {0.95, r.P95}} {
			below := 0
			for _, p := range peaks {
				if p < q.got {
					below++
				}
			}
			// Both are drawn: the deviation of the difference of two shares, four times.
			slack := 4 * math.Sqrt(2*q.share*(1-q.share)/n)
			if share := float64(below) / n; math.Abs(share-q.share) > slack {
				t.Errorf("%s: %.4f of the other sampler's assemblies lie below P%g, %.4g N; want within %.4f", c.name, share, 100*q.share, q.got, slack)
			}
		}
		slices.Sort(peaks)
		if beyond := n - countBelow(peaks, r.Worst); beyond > n/200 {
			t.Errorf("%s: %d of %d assemblies lie above the worst case of %.4g N", c.name, beyond, n, r.Worst)
		}
		t.Logf("%s: P95 %.4g N (standard error %.2g), other sampler %.4g N", c.name, r.P95, r.P95StdErr, peaks[n*95/100])
	}
}

// countBelow counts the values below v.
func countBelow(sorted []float64, v float64) int {
	i, _ := slices.BinarySearch(sorted, v)
	return i
}
