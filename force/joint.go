package force

import "math"

// joint is one latch design made ready to be evaluated many times: stiffnesses
// at small strain and geometry, no material table, no strings in the loop.
type joint struct {
	kind         string
	outerIsLower bool
	d            float64 // joint diameter [mm]
	size         float64 // diametral undercut or interference, nominal [mm]
	tol          float64 // plus or minus on size [mm]
	alpha        float64 // mating or lead-in angle [rad]; 0: sharp edge of a press fit
	back         float64 // return angle [rad]
	land         float64 // [mm]
	length       float64 // engaged length of a press fit [mm]
	engage       float64 // lift at first contact, nominal [mm]
	ownStroke    float64 // [mm]
	reach        float64 // decay length of the outer tube [mm]

	// Stiffness of each member: annular [N/mm radial], press fit [MPa/mm diametral].
	kOuter, kInner           float64
	secantOuter, secantInner float64 // strain where the secant modulus meets 0; 0 no data
	modelLog                 float64 // |ln(governing/guide)|; 0 for an exact model

	formulas []string
}

// causes are what all latches of one assembly share.
type causes struct {
	mu           float64 // coefficient of friction [1]
	lower, upper float64 // factor on each modulus [1]
	model        float64 // model error in units of modelLog [1]
	process      float64 // common part of every size error, in units of tol [1]
}

func nominal(mu float64) causes { return causes{mu: mu, lower: 1, upper: 1} }

// state is what one evaluation of a joint found.
type state struct {
	load        float64 // transverse force [N] or pressure [MPa] at full size
	outerStrain float64 // hoop strain of the outer member at the joint [1]
	innerStrain float64 // [1]
	outward     float64 // radial movement of the outer member [mm]
	jam         bool    // a flank locks at this friction
	loose       bool    // no interference left
}

// jamFactor stands for the axial over transverse force of a locked flank in a
// draw: tan 85 deg. Such draws are counted and reported as jams.
const jamFactor = 11.43

// at evaluates the joint under shared causes with its own size [mm], diametral.
func (j *joint) at(c causes, size float64) (profile, state) {
	var p profile
	var s state
	if size <= 0 {
		s.loose = true
		return p, s
	}
	fo, fi := c.lower, c.upper
	if !j.outerIsLower {
		fo, fi = fi, fo
	}
	ko, ki := j.kOuter*fo, j.kInner*fi
	model := 1.0
	if j.modelLog != 0 && c.model != 0 {
		model = math.Exp(c.model * j.modelLog)
	}
	// The secant modulus depends on the strain, the strain on the split of the
	// size between the members: a fixed point, four rounds reach 1e-4 on the
	// material lines of the table.
	so, si := ko, ki
	for range 4 {
		share := si / (so + si)
		s.outerStrain, s.innerStrain = size*share/j.d, size*(1-share)/j.d
		if j.secantOuter == 0 && j.secantInner == 0 {
			break
		}
		so, si = SecantModulus(ko, s.outerStrain, j.secantOuter), SecantModulus(ki, s.innerStrain, j.secantInner)
	}
	s.outward = s.outerStrain * j.d / 2
	k := so * si / (so + si) * model
	factor, ok := MatingFactor(c.mu, j.alpha)
	if !ok {
		factor, s.jam = jamFactor, true
	}
	if j.kind == "press_fit" {
		s.load = k * size
		j.pressProfile(&p, c.mu, factor, size, s.load)
	} else {
		s.load = k * size / 2
		j.annularProfile(&p, c.mu, factor, size/2, s.load)
	}
	p.clip()
	return p, s
}

// annularProfile: a ramp up the lead-in, the land, and down the return flank as
// far as friction still asks for force. A flank that pulls the part in is not
// credited: the pull is too quick to relieve other latches.
func (j *joint) annularProfile(p *profile, mu, factor, w, transverse float64) {
	tan := math.Tan(j.alpha)
	crest := j.engage - j.size/2/tan
	p.add(piece{Hi: crest + w/tan, Lo: crest, F1: transverse * factor / (w / tan)})
	if j.land > 0 {
		p.add(piece{Hi: crest, Lo: crest - j.land, F0: mu * transverse})
	}
	if over := math.Atan(mu) - j.back; over > 0 {
		down := w / math.Tan(j.back)
		f := transverse * math.Tan(over)
		p.add(piece{Hi: crest - j.land, Lo: crest - j.land - down, F0: f, F1: -f / down})
	}
}

// pressProfile: the chamfer, then sliding friction over the engaged length, and
// on at the same force if the joint has further to go.
func (j *joint) pressProfile(p *profile, mu, factor, size, pressure float64) {
	start := j.engage
	slide := PressForce(mu, pressure, j.d, 1)
	var first float64
	if j.alpha > 0 {
		tan := math.Tan(j.alpha)
		c := size / 2 / tan
		full := j.engage - j.size/2/tan
		start = full
		first = LeadInForce(factor, pressure, j.d, c, c)
		p.add(piece{Hi: full + c, Lo: full, F2: first / (c * c)})
	}
	end := start - j.length
	p.add(piece{Hi: start, Lo: end, F0: first, F1: slide})
	if end > 0 {
		p.add(piece{Hi: end, Lo: 0, F0: first + slide*j.length})
	}
}

// separation gives the force to pull one joint apart [N]; locked if no force does.
func (j *joint) separation(mu float64, s state) (f float64, locked bool) {
	if j.kind == "press_fit" {
		return PressForce(mu, s.load, j.d, j.length), false
	}
	factor, ok := MatingFactor(mu, j.back)
	if !ok {
		return 0, true
	}
	return s.load * factor, false
}
