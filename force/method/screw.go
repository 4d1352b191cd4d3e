package method

import "math"

// ClampForce gives the force of a vise screw [N]: F = 2 pi T eta / lead. torque: T
// [N mm], 0 or more. lead: [mm], above 0. eta: efficiency of the whole screw, 0 to 1;
// 0.25 for a bench vise (common practice). Source: work balance over one turn.
func ClampForce(torque, lead, eta float64) (n float64, ok bool) {
	if !(torque >= 0 && torque <= 1e9) || !(lead > 1e-6) || !(eta >= 0 && eta <= 1) {
		return 0, false
	}
	return 2 * math.Pi * torque * eta / lead, true
}

// ScrewTorque gives the torque to tighten a screw against a force [N mm].
//
//	T = F d/2 (l + pi mu d sec a) / (pi d - mu l sec a) + F mu_c d_c / 2
//
// force: F [N]. d: mean diameter, lead: l [mm], both above 0. mu: thread friction.
// halfAngle: a [rad], 0 for a square thread, below pi/2. muCollar, dCollar: collar,
// both 0 for none. Source: Shigley, Mechanical Engineering Design, eq. 8-1 and 8-5
// (memory). ok is false out of range and where the thread jams.
func ScrewTorque(force, d, lead, mu, halfAngle, muCollar, dCollar float64) (torque float64, ok bool) {
	if !(force >= 0 && force <= 1e7) || !(d > 0 && d <= 1e4) || !(lead > 0 && lead <= 1e4) || !(mu >= 0 && mu <= 10) ||
		!(halfAngle >= 0 && halfAngle < 1.5) || !(muCollar >= 0 && muCollar <= 10) || !(dCollar >= 0 && dCollar <= 1e4) {
		return 0, false
	}
	sec := 1 / math.Cos(halfAngle)
	below := math.Pi*d - mu*lead*sec
	if below <= 1e-9*d {
		return 0, false
	}
	return force*d/2*(lead+math.Pi*mu*d*sec)/below + force*muCollar*dCollar/2, true
}

// ScrewEfficiency gives useful over spent work of one turn [1]: F l / (2 pi T).
// Arguments as in [ScrewTorque]. Source: as there.
func ScrewEfficiency(d, lead, mu, halfAngle, muCollar, dCollar float64) (eta float64, ok bool) {
	t, ok := ScrewTorque(1, d, lead, mu, halfAngle, muCollar, dCollar)
	if !ok || t <= 0 {
		return 0, false
	}
	return lead / (2 * math.Pi * t), true
}
