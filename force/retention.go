package force

import "math"

// Pulled apart, the axial part of the contact force helps the joint to open, as it
// hinders it on the way in: the lever counts the other way.

// separation gives the force to pull one joint apart [N]; locked if no force does.
// s and p are as the joint stands at that friction.
func (j *joint) separation(mu float64, s state, p *profile) (f float64, locked bool) {
	if s.loose {
		return 0, false
	}
	switch j.path {
	case slide:
		// Without the wall beyond the pin, and thinner by the pull: both on the low side.
		return mu * s.load * j.length / (1 + mu*j.swell), false
	case ball:
		l := p.lip
		l.zero, l.lever = 0, -l.lever
		if _, ok := MatingFactor(mu, math.Atan(l.contact()/l.half)); !ok {
			return 0, true
		}
		f, _ = l.peak(l.contact(), l.release())
		return f, false
	}
	factor, ok := MatingFactor(mu, max(0, j.back-j.backLean(mu, s.outerMove)))
	if !ok {
		return 0, true
	}
	return s.load * factor / (1 + j.lever*factor), false
}

// held is the size that holds, at the end of its tolerance that side says [mm]: low
// with no hole tighter than drawn and all asperities flattened.
func (j *joint) held(side float64) float64 {
	if side > 0 {
		return j.size + side*j.worst
	}
	return j.size - j.hold + side*j.worst
}

// holding evaluates the joint as it holds, nominal.
func (j *joint) holding(mu float64) (profile, state) {
	c := nominal(mu)
	s := j.share(&c)
	var p profile
	var r state
	j.at(&s, own{size: j.held(0)}, &p, &r)
	return p, r
}

// separations gives the least and the most force that may pull one joint apart [N],
// everything at its bad end at once, and the nominal one if a hook that leans far
// makes it the lesser or the greater; low 0 for a loose joint or one that locks even
// so, high 0 for one that locks.
func (j *joint) separations(b band, nominal float64) (low, high float64) {
	at := func(side float64) (float64, bool) {
		j := *j
		if side < 0 {
			j.outer.zero, j.inner.zero = j.outer.low, j.inner.low
		}
		c := causes{mu: b.mu.At(2 * side), lower: 1 + side*b.lower, upper: 1 + side*b.upper, model: side}
		s := j.share(&c)
		var p profile
		var st state
		j.at(&s, own{size: j.held(side), outer: side * j.outer.wall, inner: side * j.inner.wall}, &p, &st)
		if st.loose {
			return 0, false
		}
		return j.separation(c.mu, st, &p)
	}
	low, lowLocks := at(-1)
	high, highLocks := at(1)
	if nominal > 0 && !lowLocks {
		low = min(low, nominal)
	}
	if nominal > 0 && !highLocks {
		high = max(high, nominal)
	}
	return low, high
}

// backLean gives by how much a hook that has moved aside by y leans away from its
// return flank, the more for the pull [rad].
func (j *joint) backLean(mu, y float64) float64 {
	theta := j.rotation * y
	if f, ok := MatingFactor(mu, max(0, j.back-theta)); ok {
		theta += j.turning * y * f * j.lever / (1 + f*j.lever)
	}
	return theta
}

// springback is the axial force with which a joint that stops on its way pushes
// the parts apart again [N]: the flank or the ball it stands on, less friction.
func (j *joint) springback(mu float64, r state, p *profile) float64 {
	switch {
	case j.path == hump && j.crest > 0, j.path == slide, r.loose || p.n == 0:
		return 0
	case j.path == hump:
		t, _ := flank(-mu, j.tanA, j.lever)
		return max(0, p.at(0)/r.factor*t)
	}
	z := -p.lip.zero
	c := math.Sqrt(max(0, p.lip.radius*p.lip.radius-z*z))
	w := c - p.lip.half
	if w <= 0 || z <= 0 {
		return 0
	}
	t, _ := flank(-mu, z/c, p.lip.lever)
	return max(0, w*(p.lip.a-p.lip.b*w)*t)
}
