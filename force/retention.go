package force

import "math"

// separation gives the force to pull one joint apart [N]; locked if no force does.
func (j *joint) separation(mu float64, s state) (f float64, locked bool) {
	switch j.path {
	case slide:
		return mu * s.load * j.length, false
	case ball:
		p, _ := j.nominalAt(mu)
		l := p.lip
		l.zero = 0
		if _, jam := flank(mu, l.contact()/l.half); jam {
			return 0, true
		}
		f, _ = l.peak(l.contact(), l.release())
		return f, false
	}
	factor, ok := MatingFactor(mu, max(0, j.back-j.rotation*s.outerMove))
	if !ok {
		return 0, true
	}
	return s.load * factor, false
}

// springback is the axial force with which a joint that stops on its way pushes
// the parts apart again [N]: the flank or the ball it stands on, less friction.
func (j *joint) springback(mu float64, r state, p *profile) float64 {
	switch {
	case j.path == hump && j.crest > 0, j.path == slide, r.loose || p.n == 0:
		return 0
	case j.path == hump:
		w := max(0, r.move+j.crest*j.tanA)
		t := (j.tanA - mu) / (1 + mu*j.tanA)
		return max(0, r.load*w/r.move*t)
	}
	z := -p.lip.zero
	c := math.Sqrt(max(0, p.lip.radius*p.lip.radius-z*z))
	w := c - p.lip.half
	if w <= 0 || z <= 0 {
		return 0
	}
	return max(0, w*(p.lip.a-p.lip.b*w)*(z-mu*c)/(c+mu*z))
}
