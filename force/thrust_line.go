package force

import "math"

// thrustLine finds the force-weighted centre at the peak, the tilt moment about
// the mean latch position, and how far the centre wanders along the stroke
// while the force is at least a fifth of the peak.
func (r *Result) thrustLine(latches []Latch, profiles []profile) {
	var mean Point
	var n float64
	for _, l := range latches {
		for _, p := range l.At {
			mean.X, mean.Y, n = mean.X+p.X, mean.Y+p.Y, n+1
		}
	}
	mean.X, mean.Y = mean.X/n, mean.Y/n
	r.Thrust = centre(latches, profiles, r.PeakLift, mean)
	r.TiltMoment = r.Peak * math.Hypot(r.Thrust.X-mean.X, r.Thrust.Y-mean.Y)
	for _, p := range r.Curve.pieces {
		// Just inside the piece, so that a jump counts on its own side.
		for _, lift := range [2]float64{p.Hi - 1e-9, p.Lo + 1e-9} {
			if p.at(lift) < r.Peak/5 {
				continue
			}
			c := centre(latches, profiles, lift, mean)
			r.ThrustWander = max(r.ThrustWander, math.Hypot(c.X-r.Thrust.X, c.Y-r.Thrust.Y))
		}
	}
}

// centre is the force-weighted centre at a lift, otherwise where no force acts.
func centre(latches []Latch, profiles []profile, lift float64, otherwise Point) Point {
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
	return Point{x / sum, y / sum}
}
