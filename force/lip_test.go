package force

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

func TestLipWorkAgainstQuadrature(t *testing.T) {
	for _, mu := range []float64{0, 0.1, 0.3, 0.6, 1.2} {
		for _, half := range []float64{4.2, 4.6, 4.8, 4.99} {
			for _, b := range []float64{0, 300} {
				for _, lever := range []float64{0, 0.15, -0.15} {
					l := lip{radius: 5, half: half, a: 1785, b: b, mu: mu, sinRho: mu / math.Sqrt(1+mu*mu), lever: lever, zero: 2}
					if _, jam := flank(mu, l.contact()/half, lever); jam {
						continue // locks: refused, never integrated
					}
					hi, lo := l.zero+l.contact(), l.zero+l.release()
					want := quad.Fixed(l.force, lo, hi, 400, nil, 0)
					near(t, "work", l.work(hi, lo), want, 1e-6)
					// Two parts make the whole.
					near(t, "parts", l.work(hi, 2)+l.work(2, lo), l.work(hi, lo), 1e-10)
					// A land adds its length at the force of the equator, wherever it is cut.
					whole := l.work(hi, lo)
					l.land = 0.7
					flat := l.force(2)
					near(t, "work with a land", l.work(hi, lo-0.7), whole+0.7*flat, 1e-9)
					near(t, "parts of a land", l.work(hi, 1.6)+l.work(1.6, 1.1)+l.work(1.1, lo-0.7), whole+0.7*flat, 1e-9)
				}
			}
		}
	}
}

func TestLipPeakAgainstScanAndStationarity(t *testing.T) {
	for _, mu := range []float64{0, 0.15, 0.3, 0.6} {
		l := lip{radius: 5, half: 4.8, a: 1785, mu: mu, sinRho: mu / math.Sqrt(1+mu*mu)}
		f, at := l.peak(l.contact(), l.release())
		best := 0.0
		for i := range 200000 {
			best = max(best, l.force(l.release()+(l.contact()-l.release())*float64(i)/199999))
		}
		near(t, "peak", f, best, 1e-9)
		// 0.5 sin(phi) sin(2 (phi + rho)) = cos(phi) - d/D at the peak.
		phi, rho := math.Asin(at/5), math.Atan(mu)
		near(t, "stationarity", 0.5*math.Sin(phi)*math.Sin(2*(phi+rho)), math.Cos(phi)-4.8/5, 1e-5)
	}
}

func TestFrictionlessBallStoresItsElasticWork(t *testing.T) {
	l := lip{radius: 5, half: 4.8, a: 1785}
	near(t, "K w^2/2", l.work(l.contact(), 0), 1785*0.2*0.2/2, 1e-12)
}

func TestLipIsSilentOutsideContact(t *testing.T) {
	l := lip{radius: 5, half: 4.8, a: 1785, mu: 0.3, sinRho: 0.3 / math.Sqrt(1.09)}
	for _, z := range []float64{l.contact() + 1e-9, 3, -3, 7, math.Inf(1)} {
		if f := l.force(z); f != 0 {
			t.Errorf("at %g: %g N, want 0", z, f)
		}
	}
	near(t, "no force at first contact", 1+l.force(l.contact()-1e-12), 1, 1e-6)
	near(t, "no force where it is drawn in", 1+l.force(l.release()), 1, 1e-6)
}

// TestBallOverConeIsContinuous: from the cone to the lip the force does not jump.
func TestBallOverConeIsContinuous(t *testing.T) {
	a := ballJob()
	a.Latches[0].Ball.EntryAngle = ptr(rad(10))
	r := mustAnalyse(t, a)
	_, hand := ConeContact(5.6, 6, rad(10))
	zero := r.Latches[0].Stroke - func() float64 { first, _ := ConeContact(5.6, 6, rad(10)); return first }()
	c := r.Latches[0].Curve
	near(t, "hand over", c.At(zero+hand+1e-7), c.At(zero+hand-1e-7), 1e-4)
	sharp := mustAnalyse(t, ballJob())
	if r.Peak > sharp.Peak*(1+1e-9) {
		t.Errorf("a cone raised the peak from %g to %g", sharp.Peak, r.Peak)
	}
}

// TestBallOverALand: the stroke grows by the land, the force stays on it, and the far
// edge lets go as a sharp lip does; the mouth is the stiffer the wider the land.
func TestBallOverALand(t *testing.T) {
	sharp, a := ballJob(), ballJob()
	sharp.Latches[0].Ball.Land, a.Latches[0].Ball.Land = ptr(0.0), ptr(0.6)
	r, s := mustAnalyse(t, a).Latches[0], mustAnalyse(t, sharp).Latches[0]
	near(t, "stroke", r.Stroke, s.Stroke+0.6, 1e-12)
	zero := BallStroke(5.6, 6) + 0.6 // the equator at the outer edge of the lip
	k := r.PeakEach / s.PeakEach
	if k < 1.3 {
		t.Errorf("a land of a third of the wall makes the force %.3f of that of a sharp lip", k)
	}
	for _, x := range []float64{0, 0.2, 0.6} {
		near(t, "on the land", r.Curve.At(zero-x), r.Curve.At(zero), 1e-9)
	}
	if f := r.Curve.At(zero - 0.7); f > 0.95*r.Curve.At(zero) || f <= 0 {
		t.Errorf("past the land: %g N", f)
	}
	// Left out, the lip bears over a quarter of the wall and has no land.
	left := mustAnalyse(t, ballJob()).Latches[0]
	quarter := ballJob()
	quarter.Latches[0].Ball.Land = ptr(1.7 / 4)
	near(t, "bearing", left.PeakEach, mustAnalyse(t, quarter).Latches[0].PeakEach, 1e-9)
	near(t, "and no land", left.Stroke, s.Stroke, 1e-12)
}

// TestBearingKeepsTheLengthOfTheWall: a band at the mouth stands off from it by half its
// width, at the cost of what lies beyond; a short ring gives it half of its length.
func TestBearingKeepsTheLengthOfTheWall(t *testing.T) {
	b := Ball{BallDiameter: 6, MouthDiameter: 5.6, OuterDiameter: 9, SocketDepth: 2, Land: ptr(0.6)}
	tube := b.mouth(Material{})
	near(t, "lip", tube.Mouth, 0.3, 1e-12)
	near(t, "floor", tube.Mouth+tube.Beyond, 2, 1e-12)
	a := *capJob().Latches[0].Annular
	a.EndDistance, a.FarEnd, a.FarDistance = 0.1, "floored", 4
	ring := a.outerTube(Material{})
	near(t, "bead", ring.Mouth, a.beadWidth()/2, 1e-12)
	near(t, "wall", ring.Mouth+ring.Beyond, 4.1, 1e-12)
	a.FarDistance = 1.3
	near(t, "short ring", a.outerTube(Material{}).Band, 0.7, 1e-12)
}
