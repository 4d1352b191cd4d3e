package force

// humpProfile: a ramp up the lead-in, the land, and down the return flank as
// far as friction still asks for force. A flank that pulls the part in is not
// credited: the pull is too quick to relieve other latches.
func (j *joint) humpProfile(p *profile, s *shared, r *state, w, small float64) {
	end := s.lead
	if j.rotation != 0 && !r.jam {
		// The hook leans into the mate as the arm bends: tan(alpha + theta + rho).
		theta := j.rotation * r.outerMove
		t := theta * (1 + theta*theta*(1.0/3+theta*theta*2/15)) // tan, to 1e-6 up to 0.3 rad
		if d := 1 - s.lead*t; s.lead+t < jamFactor*d {
			end = (s.lead + t) / d
		} else {
			end, r.jam = jamFactor, true
		}
	}
	r.factor = end
	crest := j.crest
	p.add(ramp(crest+w/j.tanA, crest, small*j.tanA*s.lead, r.load*end))
	if j.land > 0 {
		p.add(piece{Hi: crest, Lo: crest - j.land, F0: s.mu * r.load})
	}
	if s.ret > 0 {
		down := w / j.tanBack
		f := r.load * s.ret
		p.add(piece{Hi: crest - j.land, Lo: crest - j.land - down, F0: f, F1: -f / down})
	}
}

// flank is the mating factor by the tangent of the angle, or jamFactor and true.
func flank(mu, tan float64) (factor float64, jam bool) {
	d := 1 - mu*tan
	if n := mu + tan; n < jamFactor*d {
		return n / d, false
	}
	return jamFactor, true
}

// jamFactor stands for the axial over transverse force of a locked flank in a
// draw: tan 85 deg. Such draws are counted and reported as jams.
const jamFactor = 11.43
