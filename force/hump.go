package force

import "math"

// humpProfile: a ramp up the lead-in, the land, and down the return flank as
// far as friction still asks for force. A flank that pulls the part in is not
// credited: the pull is too quick to relieve other latches.
func (j *joint) humpProfile(p *profile, s *shared, r *state, w, small float64) {
	lead, land, ret := s.lead, s.land, s.ret
	if j.rotation != 0 {
		// The hook leans into the mate as the arm bends, and its crest with it.
		theta := j.lean(s.mu, j.tanA, r.outerMove)
		if !j.upright {
			lead, r.jam = flank(s.mu, leaning(j.tanA, theta), j.lever)
		}
		var stuck bool
		land, stuck = flank(s.mu, leaning(0, theta), j.lever)
		r.jam = r.jam || stuck
		ret, _ = flank(s.mu, leaning(-j.tanBack, theta), j.lever)
	}
	r.factor = lead
	p.drift = j.drift
	crest := j.crest
	p.most = r.load * lead
	p.add(ramp(crest+w*j.rise, crest, small*s.lead/j.rise, p.most))
	if j.land > 0 {
		p.add(piece{Hi: crest, Lo: crest - j.land, F0: r.load * land})
	}
	if ret > 0 {
		down := w / j.tanBack
		f := r.load * ret
		p.add(piece{Hi: crest - j.land, Lo: crest - j.land - down, F0: f, F1: -f / down})
	}
}

// lean gives the slope of the hook at a movement y, on a flank of tangent tan, by
// both parts of the contact force, theta [rad].
//
//	theta = theta0 - x f kappa/(1 - f kappa),  f = tan(alpha + theta + rho)
//
// theta0: slope by a force across the arm that moves it by y; x: what the slope by
// a moment that moves it by y has more. The axial force moves the hook back by f
// kappa/(1 - f kappa) y, and turns it back more than that. Solved with tan theta =
// theta. Source: own.
func (j *joint) lean(mu, tan, y float64) float64 {
	theta, x := j.rotation*y, j.turning*y
	d := 1 - mu*tan
	if d <= 0 {
		return theta
	}
	f := (mu + tan) / d
	a := f + j.lever
	b := 1 - j.lever*f + theta*a + x*j.lever
	c := theta*(1-j.lever*f) - x*j.lever*f
	if q := b*b - 4*a*c; q >= 0 {
		return max(0, 2*c/(b+math.Sqrt(q)))
	}
	return theta
}

// leaning gives the tangent of a flank that has turned by theta [rad], or that of
// a right angle: tan(alpha + theta).
func leaning(tan, theta float64) float64 {
	q := theta * theta
	t := theta * (1 + q*(1.0/3+q*(2.0/15+q*17/315))) // tan, to 2e-6 up to 0.3 rad
	if d := 1 - tan*t; d > 1e-6 {
		return (tan + t) / d
	}
	return 1e6
}

// flank is the axial force over the load of the springs on a flank, by the tangent
// of its angle, or jamFactor and true.
//
//	f/(1 - f kappa),  f = (mu + tan alpha)/(1 - mu tan alpha)
func flank(mu, tan, lever float64) (factor float64, jam bool) {
	n := mu + tan
	if d := 1 - mu*tan - lever*n; n < jamFactor*d {
		return n / d, false
	}
	return jamFactor, true
}

// jamFactor is the axial force over the load of the springs from which on a flank
// counts as locked [1]: tan 85 deg. Common practice, no source: within 5 deg of where
// no force moves it, the least change of friction or angle stops it.
const jamFactor = 11.43
