package force

import (
	"math"
	"slices"
)

// A BandPoint is the force over the draws at one lift.
type BandPoint struct {
	Lift         float64 // [mm]
	P5, P50, P95 float64 // [N]
}

const (
	bandDraws = 400 // assemblies that the band along the stroke is drawn from
	bandLifts = 64  // evenly over the nominal stroke, both ends included
)

// curveBand draws the band along the stroke, in order of falling lift. It stands
// on fewer draws than the peak, of which it says nothing: every lift for itself.
func (r *Result) curveBand(a Assembly, joints []joint, counts []int, b band) {
	s := newStreams(a.Seed, "band along the stroke", a.Latches)
	s.begin(0)
	t := newTrial(joints, counts)
	lifts := make([]float64, bandLifts)
	for i := range lifts {
		lifts[i] = r.Stroke * float64(i) / (bandLifts - 1)
	}
	forces := make([][bandDraws]float64, bandLifts)
	sums, means := make([]float64, bandLifts), make([]float64, 2*len(joints))
	for k := range bandDraws {
		c, _ := b.draw(s.common)
		t.draw(&c, s.own, apartShare, means)
		clear(sums)
		for i := range t.profiles {
			t.profiles[i].addTo(sums, lifts)
		}
		for i, f := range sums {
			if t.jam && lifts[i] <= t.jamLift {
				f = math.Inf(1) // it gets no further
			}
			forces[i][k] = f
		}
	}
	for i := bandLifts - 1; i >= 0; i-- {
		f := forces[i][:]
		slices.Sort(f)
		p5, p50, p95 := percentiles(f)
		if known(p95) < p95 {
			return
		}
		r.Band = append(r.Band, BandPoint{lifts[i], max(0, p5), max(0, p50), max(0, p95)})
	}
}
