package force

// SecantModulus gives the modulus at a working strain, Es [MPa].
//
//	Es = E                                             up to eps1
//	Es = E [1 - (eps - eps1)^2/((eps0 - 4 eps1) eps)]  up to eps0/2 - eps1
//	Es = E eps0/(4 eps)                                beyond: the stress stays at its top, E eps0/4
//
// Up to eps1 stress is in proportion; from there the tangent modulus falls evenly to
// nothing. With eps1 = 0 that is a secant modulus on a straight line, E (1 - eps/eps0).
//
// e: modulus at small strain [MPa], above 0. eps: strain [1], 0 or above. eps0: strain
// where a line through it meets zero [1], above 4 eps1; 0 is a metal, and returns e.
// straight: eps1 [1].
//
// Source: own, through the chart of PC in Snap-Fit Joints for Plastics - A Design Guide,
// figure 16 (read), see pcLaw; for other polymers by modulus and strength, see
// [BoundStrain]. Leaves out rate and temperature.
func SecantModulus(e, eps, eps0, straight float64) float64 {
	m := member{stiffness: e, zero: eps0, knee: straight}
	if load, _, _ := single(&m, e, eps); eps > 0 {
		return load / eps
	}
	return e
}

// BoundStrain gives the strain at which the secant line meets zero for which the stress
// never passes its bound, eps0 [1].
//
//	eps0 = 4 h S/E
//
// e: modulus [MPa]; strength: S [MPa]; headroom: h of the bound over the strength [1];
// all above 0. Source: own, the top of the stress in [SecantModulus].
func BoundStrain(e, strength, headroom float64) float64 { return 4 * headroom * strength / e }

// Only the face at an arm's root, and the ring right under a bead, is strained as far as
// the law is asked for; the rest of the body still carries in proportion. So a body bends
// down later than its most strained fibre, by a reserve: the line of the whole meets zero
// at that many times the movement. What holds counts without it.
//
//	arm, finger: 1.5, the full plastic moment of a rectangle over that at its first yield;
//	    flexural strength of printed PLA over tensile: 1.8 to 2 (read)
//	ring: 1.5; by the energy of a long wall 1.67 far from its ends and 1.88 at one, at
//	    small strain; a ring no wider than its bead has none
//	bar in torsion: 4/3, the same for a round section
//	hub of a press fit: by [CollapsePressure] over the pressure at which its bore yields
//	pin: 1
//
// Where the law was read off a chart or stated, there is none: the published method takes
// the secant modulus at the largest strain as that of the whole. Source: own, see the tests.
const (
	bodyReserve = 1.5
	barReserve  = 4.0 / 3
)

// hubReserve is the reserve of a thick hub.
func hubReserve(outer, joint float64) float64 {
	return max(1, CollapsePressure(1, outer, joint)*lameRatio(outer, joint))
}

// The law of PC, through the nine points of the guide's chart from 0 to 4 % of strain,
// all within 2 %.
const (
	pcModulus  = 2245   // [MPa]
	pcZero     = 0.084  // eps0 [1]
	pcStraight = 0.0040 // eps1 [1]
)

// bound sets the law of stress over strain by modulus and strength, or by a chart.
func (m *Material) bound() {
	switch e, s := m.Modulus.Value, m.Strength.Value; {
	case m.Metal():
		m.SecantZero, m.SecantZeroLow, m.Straight = Figure{}, Figure{}, Figure{}
	case m.chart:
		// Its shape stays; a weaker or stiffer one is bounded by its strength all the same.
		zero := min(pcZero, BoundStrain(e, s, yieldHeadroom))
		m.SecantZero, m.SecantZeroLow, m.Straight = Figure{zero, MarkRead}, Figure{min(zero, BoundStrain(e, s, 1)),
			MarkRead}, Figure{pcStraight * zero / pcZero, MarkRead}
	default:
		m.SecantZero, m.SecantZeroLow = Figure{BoundStrain(e, s, yieldHeadroom), MarkOwn}, Figure{BoundStrain(e, s, 1), MarkOwn}
		m.Straight = Figure{}
	}
}

// follow gives a member the law of its material; strain: at the place that the law goes
// by, per movement [1/mm]; reserve: of the body, as above [1].
func (m member) follow(mat Material, strain, reserve float64) member {
	if mat.SecantZero.Mark != MarkOwn {
		reserve = 1
	}
	m.reserve = reserve
	m.zero, m.knee, m.low = reserve*mat.SecantZero.Value/strain, mat.Straight.Value/strain, mat.SecantZeroLow.Value/strain
	return m
}
