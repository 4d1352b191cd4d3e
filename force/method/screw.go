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
