package force

import "math"

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
	whole := j.length + j.edge
	m := s.mu * j.swell
	if m > mostSwelling {
		m, r.jam = mostSwelling, true
	}
	// (s + e) (1 + g (s + e)/(L + e)): the pin swells as the force along it grows.
	g := m / (1 - m) / whole
	end := start - j.length
	p.add(piece{Hi: start, Lo: end, F0: first + per*j.edge*(1+g*j.edge), F1: per * (1 + 2*g*j.edge), F2: per * g})
	if end > 0 {
		p.add(piece{Hi: end, Lo: 0, F0: first + per*whole*(1+g*whole)})
	}
}

// mostSwelling bounds friction times [Fit.Swelling]: towards 1 the pin locks in
// its bore. Such draws are counted and reported as jams.
const mostSwelling = 0.8

// PressForce gives the force to slide a fit over an engaged length, F [N].
//
//	F = mu p pi d L
//
// mu: coefficient of friction [1]; p: pressure [MPa]; d: joint diameter [mm];
// L: engaged length [mm]; all 0 or above. Source: Engineering Plastics
// Handbook, p. 32 (read), as pull-out 2 pi mu L Rs p. Leaves out the lead-in.
func PressForce(mu, p, d, l float64) float64 { return mu * p * math.Pi * d * l }

// LeadInForce gives the force to drive a chamfer to depth s, F [N].
//
//	F = q s^2/(2 c) tan(alpha + rho)
//
// factor: tan(alpha + rho) [1]; q: transverse load per mm of engagement at full
// size [N/mm], p pi d for a press fit; c: length of the chamfer that is pressed
// [mm], half the interference over tan alpha; s: 0 to c [mm]. Without friction
// F(c) is the elastic work of one mm of joint, as it must be. Source: own. Leaves
// out shaving.
func LeadInForce(factor, q, s, c float64) float64 {
	if c <= 0 {
		return 0
	}
	return q * s * s / (2 * c) * factor
}

// sharpAngle is the lead-in that a sharp edge counts as [rad], 45 deg. Common
// practice, no source.
const sharpAngle = math.Pi / 4
