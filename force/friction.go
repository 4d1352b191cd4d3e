package force

import "math"

// MatingFactor gives the ratio of the axial to the transverse force on a flank.
//
//	W/P = tan(alpha + rho) = (mu + tan alpha) / (1 - mu tan alpha),  rho = atan mu
//
// mu: coefficient of friction [1], 0 or above. alpha: angle of the flank to the
// press axis [rad], 0 to below pi/2 - rho. Separation uses the return angle.
// ok is false from alpha + rho = pi/2 on: the flank locks, there is no force.
//
// Source: Snap-Fit Joints for Plastics - A Design Guide, p. 14 (read); DSM
// Technical Guide, 2005, p. 7 (read). Leaves out stick-slip and tilting.
func MatingFactor(mu, alpha float64) (factor float64, ok bool) {
	if !within(mu, 0, math.MaxFloat64) || !within(alpha, 0, math.Pi/2) || alpha+math.Atan(mu) >= math.Pi/2-1e-9 {
		return 0, false
	}
	t := math.Tan(alpha)
	return (mu + t) / (1 - mu*t), true
}

// SeparableLimit gives the largest return angle that still separates [rad].
//
//	alpha' = 90 deg - atan mu
//
// mu: coefficient of friction [1], 0 or above. Source: DSM Technical Guide,
// 2005, p. 7 (read). At the limit itself the joint is locked.
func SeparableLimit(mu float64) float64 { return math.Pi/2 - math.Atan(max(0, mu)) }

// RepeatedStrain gives the strain permitted for frequent joining [1].
//
//	eps_repeated = 0.6 eps_once
//
// Source: Snap-Fit Joints for Plastics - A Design Guide, table 2, p. 12 (read).
func RepeatedStrain(once float64) float64 { return repeatFactor * once }
