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
	path         path
	strained     string // the strain nearest its limit, where the springs do not say
	flows        bool   // ribs that are crushed: no spring comes back
	arm          bool   // bends by itself, not as a finger of a ring
	outerIsLower bool

	size         float64 // undercut or interference as the job writes it, nominal [mm]
	drawn        float64 // the same before printed holes and asperities [mm]
	half         float64 // movement of the springs per size: 0.5 for diametral sizes, 1 for others
	fromOuter    float64 // plus or minus on size from the outer member's process [mm]
	fromInner    float64 // same, inner member [mm]
	worst        float64 // plus or minus on size, all limits at once [mm]
	flatten      float64 // by which rough surfaces may lose more of the size than its nominal value has lost [mm]
	hold         float64 // by which the size is less for what holds, flatten included [mm]
	outer, inner member
	cap          float64 // load at which the joint yields [N/mm]; 0: none

	alpha              float64 // mating or lead-in angle [rad]
	back               float64 // return angle [rad]
	rotation           float64 // slope of the hook per movement by a force across the arm [rad/mm]
	turning            float64 // and how much more it is by a moment [rad/mm]
	upright            bool    // the lead-in does not lean: the mate carries it
	lever              float64 // of the axial part of the contact force, see [RingLever] and [ArmLever] [1]
	unsure             float64 // how far the lever may lie on either side, where the job does not say [1]
	land               float64 // [mm]
	length             float64 // engaged length [mm]
	edge               float64 // length by which the wall beyond the engaged length adds to it [mm]
	swell              float64 // of a pin under the force along it, per friction, see [Fit.Swelling] [1]
	engage             float64 // lift at first contact, nominal [mm]
	drift              float64 // range of depth over which the joint may peak, see [profile] [mm]
	summit, wayUp      float64 // of a ball: nominal lift of the largest force on the lip, and way to it [mm]
	stroke             float64 // the joint's own, from first contact to home [mm]
	ballR              float64 // radius of the ball [mm]
	seated             float64 // height of the ball's centre below the lip when home [mm]
	modelUp, modelDown float64 // ln of the ratio by which the force may lie higher or lower, two standard deviations
	thin               float64 // ln of the ratio by which a thin sintered arm may be softer, in modelDown when settled

	nodes []float64 // lifts at which the sum of such joints can peak [mm], falling

	// Made by prepare.
	tanA, tanBack float64 // tangents of alpha and back; a sharp edge counts as sharpAngle
	sinA          float64
	rise          float64 // way along the lead-in per movement [1]; the contact comes to meet the mate by the lever
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
	j.rise = 1 / j.tanA
	if j.path == hump {
		j.rise = max(j.rise-j.lever, 0.05*j.rise)
	}
	j.crest = j.engage
	if j.alpha > 0 {
		j.crest -= j.size * j.half * j.rise
	}
}

// settle puts the lever and the lean of a hook into the model error, at a friction:
// published formulas have neither, so that the force may lie lower by what they add.
func (j *joint) settle(mu float64) {
	j.modelDown += j.thin
	if j.path == slide {
		return
	}
	tan := j.tanA
	if j.path == ball {
		tan = 0 // near the peak; the cone is less steep than the ball was
	}
	plain, _ := flank(mu, tan, 0)
	if !j.upright {
		tan = leaning(tan, j.lean(mu, tan, j.size*j.half))
	}
	most := func(lever float64) float64 { f, _ := flank(mu, tan, lever); return f }
	with := most(j.lever)
	j.modelDown += math.Log(with / min(with, plain, most(j.lever-j.unsure)))
	j.modelUp += math.Log(most(j.lever+j.unsure) / with)
}

// causes are what all latches of one assembly share.
type causes struct {
	mu                         float64 // coefficient of friction [1]
	lower, upper               float64 // factor on each modulus [1]
	model                      float64 // model error in units of modelUp or modelDown [1]
	processLower, processUpper float64 // growth of each part's surfaces, in units of its tolerance [1]
	flatten                    float64 // how far rough surfaces flatten between the least and the most [1]

	exponent, power float64 // the last ratio worked out, most designs having the same
}

// ratio is the factor that the model error makes of a stiffness.
func (c *causes) ratio(up, down float64) float64 {
	x := c.model * up
	if c.model < 0 {
		x = c.model * down
	}
	if x == 0 {
		return 1
	}
	if x != c.exponent {
		c.exponent, c.power = x, math.Exp(x)
	}
	return c.power
}

func nominal(mu float64) causes { return causes{mu: mu, lower: 1, upper: 1} }

// shared is what the joints of one design share under one set of causes.
type shared struct {
	mu           float64
	outer, inner float64 // stiffness at small strain with modulus and model error
	outerGrowth  float64 // process offset of the outer member's part, in units of its tolerance
	innerGrowth  float64
	lead, ret    float64 // axial force over the load of the springs on either flank
	land         float64 // same on the land
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
	factor      float64 // axial force at the peak over the load of the springs [1]; a ball: at first contact
	jam         bool    // a flank locks at this friction
	loose       bool    // no interference left
	yields      bool    // the load was cut off at the cap
}

// share puts the causes into the joint's own terms.
func (j *joint) share(c *causes) shared {
	s := shared{mu: c.mu, sinRho: c.mu / math.Sqrt(1+c.mu*c.mu)}
	model := c.ratio(j.modelUp, j.modelDown)
	fo, fi := c.lower, c.upper
	s.outerGrowth, s.innerGrowth = c.processLower, c.processUpper
	if !j.outerIsLower {
		fo, fi = fi, fo
		s.outerGrowth, s.innerGrowth = s.innerGrowth, s.outerGrowth
	}
	s.outer, s.inner = j.outer.stiffness*fo*model, j.inner.stiffness*fi*model
	s.lead, s.jam = flank(c.mu, j.tanA, j.lever)
	if j.path == hump && j.rotation == 0 {
		s.land, _ = flank(c.mu, 0, j.lever)
		s.ret, _ = flank(c.mu, -j.tanBack, j.lever)
	}
	return s
}

// at evaluates the joint at one place, into p and r.
func (j *joint) at(s *shared, o own, p *profile, r *state) {
	*r = state{}
	p.n, p.top, p.drift = 0, 0, 0
	if o.size <= 0 {
		r.loose = true
		return
	}
	w := o.size * j.half
	ko, ki := s.outer*j.outer.wallFactor(o.outer), s.inner*j.inner.wallFactor(o.inner)
	var small float64
	r.load, r.outerMove, small = series(&j.outer, &j.inner, ko, ki, w)
	if j.cap > 0 && r.load >= j.cap*(1-1e-9) {
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
		j.humpProfile(p, s, r, w, small)
	case slide:
		j.slideProfile(p, s, r, w)
	case ball:
		j.ballProfile(p, s, r, w, small)
	}
	p.clip()
}

// nominalAt evaluates the joint at its nominal size.
func (j *joint) nominalAt(mu float64) (profile, state) {
	j.prepare()
	c := nominal(mu)
	s := j.share(&c)
	var p profile
	var r state
	j.at(&s, own{size: j.size}, &p, &r)
	return p, r
}

// findNodes sets the lifts at which a sum of such joints can peak: where the
// force of one bends down or drops. A ball has a summit that moves with friction
// and size: five lifts round the nominal one stand for it.
func (j *joint) findNodes(mu float64) {
	var at []float64
	switch j.path {
	case hump:
		at = append(at, j.crest, j.crest-j.drift)
		if j.land > 0 {
			at = append(at, j.crest-j.land-j.drift)
		}
	case slide:
		at = append(at, j.crest, j.crest-j.length)
	case ball:
		p, _ := j.nominalAt(mu)
		hi, lo := j.lipRange(&p.lip)
		_, top := p.lip.peak(hi, lo)
		way := hi - top
		j.summit, j.wayUp = top, way
		at = append(at, hi, top+way/2, top)
		if j.drift > 0 {
			at = append(at, top+way/4, top+way/8, top-j.drift, top-j.drift-way/4, top-j.drift-3*way/4)
		}
		at = append(at, top-way/2-j.drift, top-way-j.drift)
		if l := &p.lip; l.land > 0 { // from where to where the force stays
			at = append(at, l.zero, l.zero-j.drift, l.zero-l.land-j.drift)
		}
	}
	j.nodes = j.nodes[:0]
	for _, lift := range at {
		if lift > 0 {
			j.nodes = append(j.nodes, lift)
		}
	}
}
