package method

// Formulas of the publications that the figures of this room are held against; the program
// itself does not need them.

import (
	"math"

	"ramnest/force/unit"
)

// NormalQuantile gives the z of the standard normal distribution below which the
// share p lies. p: above 0, below 1. Source: definition, by the inverse error
// function of the standard library. ok is false out of range.
func NormalQuantile(p float64) (z float64, ok bool) {
	if !(p > 0 && p < 1) {
		return 0, false
	}
	z = -math.Sqrt2 * math.Erfcinv(2*p)
	return z, !math.IsInf(z, 0)
}

// StrengthPercentile gives the force [N] a share p of a population does not reach,
// from mean and spread of the logarithm of its strength.
//
//	F = exp(mean + z_p sd)
//
// meanLn, sdLn: mean and standard deviation of ln F, F in N; sdLn 0 or more. p: above
// 0, below 1. Source: EN 1005-3:2002, Annex A.3.3 and A.4 (read in an identical
// adoption). ok is false out of range.
func StrengthPercentile(meanLn, sdLn, p float64) (f float64, ok bool) {
	z, ok := NormalQuantile(p)
	if !ok || !(sdLn >= 0) {
		return 0, false
	}
	f = math.Exp(meanLn + z*sdLn)
	return f, !math.IsInf(f, 0) && !math.IsNaN(f)
}

// LogMoments turns mean [N] and coefficient of variation [1] of a strength into mean
// and standard deviation of its logarithm.
//
//	sd^2 = ln(1 + cv^2);  mean = ln(mean_N) - sd^2/2
//
// mean: above 0. cv: 0 or more. Source: log-normal distribution, definition. ok is
// false out of range.
func LogMoments(mean, cv float64) (meanLn, sdLn float64, ok bool) {
	if !(mean > 0 && mean <= maxForce) || !(cv >= 0 && cv <= 10) {
		return 0, 0, false
	}
	v := math.Log(1 + cv*cv)
	return math.Log(mean) - v/2, math.Sqrt(v), true
}

// Ocra holds the multipliers of the OCRA index, each above 0, at most 2 (tM reaches 2 in short shifts).
type Ocra struct {
	Force, Posture, Repetitiveness, Additional, Recovery, Duration float64 // FM, PM, ReM, AM, RcM, tM [1]
}

// Index gives technical actions, reference actions and their quotient, the OCRA index.
//
//	ATA = actions * minutes;  RTA = 30 FM PM ReM AM RcM tM * minutes;  index = ATA/RTA
//
// perMinute: technical actions a minute, 0 or more. minutes: of repetitive work in the
// shift, above 0. Source: ISO 11228-3:2007, Table 2 (constant 30 read, multipliers
// memory); up to 2.2 acceptable, above 3.5 risk (memory). It needs the whole job, so
// [Choose] does not use it; it is here for the ergonomist. ok is false out of range.
func (o Ocra) Index(perMinute, minutes float64) (ata, rta, index float64, ok bool) {
	if !(perMinute >= 0 && perMinute <= 1e4) || !(minutes > 0 && minutes <= 1440) {
		return 0, 0, 0, false
	}
	rta = 30 * minutes
	for _, m := range []float64{o.Force, o.Posture, o.Repetitiveness, o.Additional, o.Recovery, o.Duration} {
		if !(m > 1e-6 && m <= 2) {
			return 0, 0, 0, false
		}
		rta *= m
	}
	ata = perMinute * minutes
	return ata, rta, ata / rta, true
}

// ContactTime gives half a period of the head on the spring [s]: pi sqrt(m/k) with k
// in N/m. kg above 0, stiffness above 0 [N/mm]. Source: as [PeakOfBlow]. ok is false
// out of range.
func ContactTime(kg, stiffness float64) (seconds float64, ok bool) {
	if !(kg > 0 && kg <= 1e3) || !(stiffness > 1e-9) {
		return 0, false
	}
	return math.Pi * math.Sqrt(kg/(1000*stiffness)), true
}

// DropSpeed gives the speed of a head let fall by mm [m/s]: sqrt(2 g h). Source: free
// fall, g = 9.80665 m/s^2. mm: 0 or more; below 0 it gives 0.
func DropSpeed(mm float64) float64 { return math.Sqrt(2 * unit.Gravity * max(0, mm) / 1000) }

// DrivenShare gives the share carried by the driven mass alone just after the blow [1].
//
//	eta2 = m1 m2 (1+e)^2 / (m1 + m2)^2
//
// Arguments as in [BlowEfficiency]. Source: momentum and restitution (own).
func DrivenShare(head, driven, e float64) (eta2 float64, ok bool) {
	if !blowArgs(head, driven, e) {
		return 0, false
	}
	s := head + driven
	return head * driven * (1 + e) * (1 + e) / (s * s), true
}

// LeverSwing gives the angle of the lever [rad] for a stroke: stroke over pitch
// radius, both [mm], radius above 0. ok is false out of range.
func LeverSwing(stroke, radius float64) (angle float64, ok bool) {
	if !(stroke >= 0 && stroke <= 1e5) || !(radius > 1e-3) {
		return 0, false
	}
	return stroke / radius, true
}

// RamTilt gives the tilt of a ram by its play [rad] and the side step of its tip [mm]:
// play / guide, and overhang times that. All [mm], guide above 0.
func RamTilt(play, guide, overhang float64) (tilt, lateral float64, ok bool) {
	if !(play >= 0 && play <= 1e3) || !(guide > 1e-3) || !(overhang >= 0 && overhang <= 1e5) {
		return 0, 0, false
	}
	return math.Atan2(play, guide), overhang * play / guide, true
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
