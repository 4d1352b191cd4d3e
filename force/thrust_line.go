package force

import (
	"math"

	"ramnest/force/planar"
)

// thrustLine finds the force-weighted centre at the peak and along the stroke,
// the tilt moment about the mean latch position, and how far the centre wanders
// while the force is at least a fifth of the peak.
func (r *Result) thrustLine(latches []Latch, profiles []profile) {
	mean := meanPlace(latches)
	r.Thrust = centre(latches, profiles, r.PeakLift, mean)
	r.TiltMoment = r.Peak * math.Hypot(r.Thrust.X-mean.X, r.Thrust.Y-mean.Y)
	least := r.Peak / 5
	wander := func(lift float64) {
		c := centre(latches, profiles, lift, mean)
		r.ThrustWander = max(r.ThrustWander, math.Hypot(c.X-r.Thrust.X, c.Y-r.Thrust.Y))
	}
	for i := range r.Curve.pieces {
		// Just inside the piece, so that a jump counts on its own side.
		p := &r.Curve.pieces[i]
		inside := min(1e-9, (p.Hi-p.Lo)/4)
		hi, lo := p.Hi-inside, p.Lo+inside
		const steps, each = 64, 16 // looked at, and kept
		var last, before float64
		for k := range steps + 1 {
			lift := hi - (hi-lo)*float64(k)/steps
			f := max(0, p.at(lift))
			if k%each == 0 {
				r.ThrustPath = append(r.ThrustPath, ThrustPoint{lift, f, centre(latches, profiles, lift, mean)})
			}
			if k > 0 && (f >= least) != (before >= least) {
				wander(crossing(p.at, least, lift, last, f >= least))
			}
			if f >= least {
				wander(lift)
			}
			last, before = lift, f
		}
	}
}

// meanPlace is the mean latch position.
func meanPlace(latches []Latch) planar.Point {
	var mean planar.Point
	var n float64
	for _, l := range latches {
		for _, p := range l.At {
			mean.X, mean.Y, n = mean.X+p.X, mean.Y+p.Y, n+1
		}
	}
	return planar.Point{X: mean.X / n, Y: mean.Y / n}
}

// crossing finds where a force passes a level between two lifts, on the side where
// it is at least the level: at first, if firstAbove.
func crossing(at func(float64) float64, level, first, second float64, firstAbove bool) float64 {
	above, below := first, second
	if !firstAbove {
		above, below = second, first
	}
	for range 40 {
		if mid := (above + below) / 2; at(mid) >= level {
			above = mid
		} else {
			below = mid
		}
	}
	return above
}

// TiltAbout gives the largest moment along the stroke about a plan point, such
// as the middle of the ram [N mm].
func (r Result) TiltAbout(p planar.Point) float64 {
	m := r.Peak * math.Hypot(r.Thrust.X-p.X, r.Thrust.Y-p.Y)
	for _, t := range r.ThrustPath {
		m = max(m, t.Force*math.Hypot(t.At.X-p.X, t.At.Y-p.Y))
	}
	return m
}

// centre is the force-weighted centre at a lift, otherwise where no force acts.
func centre(latches []Latch, profiles []profile, lift float64, otherwise planar.Point) planar.Point {
	var x, y, sum float64
	for i, l := range latches {
		f := profiles[i].at(lift)
		for _, p := range l.At {
			x, y, sum = x+f*p.X, y+f*p.Y, sum+f
		}
	}
	if sum <= 0 {
		return otherwise
	}
	return planar.Point{X: x / sum, Y: y / sum}
}
