package force

import "math"

// path says how a joint turns its transverse load into a force over the stroke.
type path int

const (
	hump  path = iota // up a lead-in flank, over a land, down a return flank
	slide             // up a chamfer, then friction over the engaged length
	ball              // a sphere over a lip
)

// joint is one latch design made ready to be evaluated many times: springs at
// small strain and geometry, no material table, no strings in the loop.
type joint struct {
	kind         string
	path         path
	outerIsLower bool

	size         float64 // undercut or interference as the job writes it, nominal [mm]
	half         float64 // movement of the springs per size: 0.5 for diametral sizes, 1 for others
	fromOuter    float64 // plus or minus on size from the outer member's process [mm]
	fromInner    float64 // same, inner member [mm]
	worst        float64 // plus or minus on size, all limits at once [mm]
	outer, inner member
	cap          float64 // load at which the joint yields [N/mm]; 0: none

	alpha    float64 // mating or lead-in angle [rad]
	back     float64 // return angle [rad]
	rotation float64 // slope of the hook per movement of it [rad/mm]
	land     float64 // [mm]
	length   float64 // engaged length [mm]
	engage   float64 // lift at first contact, nominal [mm]
	stroke   float64 // the joint's own, from first contact to home [mm]
	ballR    float64 // radius of the ball [mm]
	seated   float64 // height of the ball's centre below the lip when home [mm]
	modelLog float64 // |ln(governing model/other model)|, two standard deviations of the model error

	nodes []float64 // lifts at which the sum of such joints can peak [mm], falling

	// Made by prepare.
	tanA, tanBack float64 // tangents of alpha and back; a sharp edge counts as sharpAngle
	sinA          float64
	crest         float64 // lift at the end of the lead-in [mm], the same whatever the size
}

// prepare fills in what every draw needs; the rest of the joint must stand.
func (j *joint) prepare() {
	angle := j.alpha
	if j.path == slide && angle == 0 {
		angle = sharpAngle
	}
	j.tanA, j.sinA = math.Tan(angle), math.Sin(angle)
	j.tanBack = math.Tan(min(j.back, 89.99/degree))
	j.crest = j.engage
	if j.alpha > 0 {
		j.crest -= j.size * j.half / j.tanA
	}
}

// causes are what all latches of one assembly share.
type causes struct {
	mu                         float64 // coefficient of friction [1]
	lower, upper               float64 // factor on each modulus [1]
	model                      float64 // model error in units of modelLog [1]
	processLower, processUpper float64 // growth of each part's surfaces, in units of its tolerance [1]
}

func nominal(mu float64) causes { return causes{mu: mu, lower: 1, upper: 1} }

// shared is what the joints of one design share under one set of causes.
type shared struct {
	mu           float64
	outer, inner float64 // stiffness at small strain with modulus and model error
	outerGrowth  float64 // process offset of the outer member's part, in units of its tolerance
	innerGrowth  float64
	lead, ret    float64 // tan(alpha + rho), tan(rho - return angle)
	sinRho       float64
	jam          bool
}

// own is what one place has of its own.
type own struct {
	size         float64 // [mm] as the job writes it
	outer, inner float64 // change of each wall, share of it
}

// state is what one evaluation of a joint found.
type state struct {
	load        float64 // transverse force [N], or per mm of engagement [N/mm], at full size
	move        float64 // movement of both members together [mm]
	outerMove   float64 // of the outer member [mm]
	outerStrain float64 // [1]
	innerStrain float64 // [1]
	factor      float64 // axial over transverse force at the peak [1]; a ball: at first contact
	jam         bool    // a flank locks at this friction
	loose       bool    // no interference left
	yields      bool    // the load was cut off at the cap
}

// jamFactor stands for the axial over transverse force of a locked flank in a
// draw: tan 85 deg. Such draws are counted and reported as jams.
const jamFactor = 11.43

// sharpAngle is the lead-in that a sharp edge counts as [rad], 45 deg. Common
// practice, no source.
const sharpAngle = math.Pi / 4

// share puts the causes into the joint's own terms.
func (j *joint) share(c *causes) shared {
	s := shared{mu: c.mu, sinRho: c.mu / math.Sqrt(1+c.mu*c.mu)}
	model := 1.0
	if j.modelLog != 0 && c.model != 0 {
		model = math.Exp(c.model * j.modelLog)
	}
	fo, fi := c.lower, c.upper
	s.outerGrowth, s.innerGrowth = c.processLower, c.processUpper
	if !j.outerIsLower {
		fo, fi = fi, fo
		s.outerGrowth, s.innerGrowth = s.innerGrowth, s.outerGrowth
	}
	s.outer, s.inner = j.outer.stiffness*fo*model, j.inner.stiffness*fi*model
	s.lead, s.jam = flank(c.mu, j.tanA)
	if j.path == hump {
		s.ret = (c.mu - j.tanBack) / (1 + c.mu*j.tanBack)
	}
	return s
}

// flank is the mating factor by the tangent of the angle, or jamFactor and true.
func flank(mu, tan float64) (factor float64, jam bool) {
	d := 1 - mu*tan
	if n := mu + tan; n < jamFactor*d {
		return n / d, false
	}
	return jamFactor, true
}

// at evaluates the joint at one place.
func (j *joint) at(s *shared, o own, p *profile) state {
	var r state
	p.n = 0
	if o.size <= 0 {
		r.loose = true
		return r
	}
	w := o.size * j.half
	ko, ki := s.outer*j.outer.wallFactor(o.outer), s.inner*j.inner.wallFactor(o.inner)
	var small float64
	r.load, r.outerMove, small = series(&j.outer, &j.inner, ko, ki, w)
	if j.cap > 0 && r.load > j.cap {
		r.load, r.yields = j.cap, true
		small = min(small, 2*r.load/w)
	}
	r.move = w
	r.outerStrain, r.innerStrain = r.outerMove*j.outer.strain, (w-r.outerMove)*j.inner.strain
	if j.outer.law != ringWall {
		r.outerStrain *= 1 + o.outer
	}
	if j.inner.law != ringWall {
		r.innerStrain *= 1 + o.inner
	}
	r.jam, r.factor = s.jam, s.lead
	switch j.path {
	case hump:
		j.humpProfile(p, s, &r, w, small)
	case slide:
		j.slideProfile(p, s, &r, w)
	case ball:
		j.ballProfile(p, s, &r, w, small)
	}
	p.clip()
	return r
}

// nominalAt evaluates the joint at its nominal size.
func (j *joint) nominalAt(mu float64) (profile, state) {
	j.prepare()
	c := nominal(mu)
	s := j.share(&c)
	var p profile
	r := j.at(&s, own{size: j.size}, &p)
	return p, r
}

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

// slideProfile: the chamfer, then sliding friction over the engaged length, and
// on at the same force if the joint has further to go.
func (j *joint) slideProfile(p *profile, s *shared, r *state, w float64) {
	start := j.crest
	c := w / j.tanA
	first := LeadInForce(s.lead, r.load, c, c)
	if j.alpha > 0 {
		p.add(piece{Hi: start + c, Lo: start, F2: first / (c * c)})
	}
	per := s.mu * r.load
	end := start - j.length
	p.add(piece{Hi: start, Lo: end, F0: first, F1: per})
	if end > 0 {
		p.add(piece{Hi: end, Lo: 0, F0: first + per*j.length})
	}
}

// ballProfile: the entry cone as far as it is touched, then the lip.
func (j *joint) ballProfile(p *profile, s *shared, r *state, w, small float64) {
	a := min(small, 2*r.load/w)
	p.lip = lip{radius: j.ballR, half: j.ballR - w, a: a, b: (a*w - r.load) / (w * w), mu: s.mu, sinRho: s.sinRho, zero: j.seated - (j.stroke - j.engage)}
	l := &p.lip
	contact := l.contact()
	hi := contact
	r.factor, r.jam = 0, contact+s.mu*l.half >= jamFactor*(l.half-s.mu*contact)
	if t := j.tanA; j.alpha > 0 && hi > j.ballR*j.sinA {
		// The cone is touched first: w = R/cos ac - h - z tan ac.
		hand := j.ballR * j.sinA
		over := j.ballR*math.Sqrt(1+t*t) - l.half
		open := over - hand*t
		from := over / t
		f := open * (l.a - l.b*open) * s.lead
		p.add(ramp(l.zero+from, l.zero+hand, l.a*t*s.lead, f))
		r.factor, r.jam = s.lead, s.jam
		hi = hand
	}
	p.add(piece{Hi: l.zero + hi, Lo: l.zero - min(contact, l.radius*l.sinRho), lip: true})
}

// lipRange is where the ball stands on its lip, whether or not the seat lies in
// between: lifts from the first contact, or the end of the cone, to the release.
func (j *joint) lipRange(l *lip) (hi, lo float64) {
	hi = l.contact()
	if j.alpha > 0 {
		hi = min(hi, j.ballR*j.sinA)
	}
	return l.zero + hi, l.zero + l.release()
}

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

// findNodes sets the lifts at which a sum of such joints can peak: where the
// force of one bends down or drops. A ball has a summit that moves with friction
// and size: four lifts round the nominal one stand for it.
func (j *joint) findNodes(mu float64) {
	var at []float64
	switch j.path {
	case hump:
		at = append(at, j.crest)
		if j.land > 0 {
			at = append(at, j.crest-j.land)
		}
	case slide:
		at = append(at, j.crest, j.crest-j.length)
	case ball:
		p, _ := j.nominalAt(mu)
		hi, lo := j.lipRange(&p.lip)
		_, top := p.lip.peak(hi, lo)
		way := hi - top
		if j.alpha > 0 {
			at = append(at, hi)
		}
		at = append(at, top+way/2, top, top-way/2, top-way)
	}
	j.nodes = j.nodes[:0]
	for _, lift := range at {
		if lift > 0 {
			j.nodes = append(j.nodes, lift)
		}
	}
}
