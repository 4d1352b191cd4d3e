package method

import "ramnest/force/unit"

// Tons on a press plate [N]. US plates usually mean the short ton; take it when the
// plate does not say. Source: definitions, see package unit.
const (
	ShortTon  = 2000 * unit.PoundForce
	MetricTon = 1000 * unit.Gravity
	LongTon   = 2240 * unit.PoundForce
)

// PitchRadius gives the pitch radius of a pinion [mm], m z / 2. module [mm], above 0;
// teeth, 1 or more. Source: gear geometry.
func PitchRadius(module float64, teeth int) float64 { return module * float64(teeth) / 2 }

// LeverRatio gives force on the ram over force on the lever without friction [1].
//
//	ratio = lever / pitch radius * gear
//
// lever, radius: [mm], above 0. gear: further stage, 1 for none. Source: rack and
// pinion. It is also handle travel over ram travel. ok is false out of range.
func LeverRatio(lever, radius, gear float64) (ratio float64, ok bool) {
	if !(lever > 0 && lever <= 1e5) || !(radius > 1e-3) || !(gear > 0 && gear <= 1e3) {
		return 0, false
	}
	return lever / radius * gear, true
}

// LeverEffort gives the force on the lever [N]: F_ram / (ratio eta). ram: [N], 0 or
// more. ratio: above 0. eta: above 0, at most 1; 0.75 to 0.9 for rack and guided ram
// (common practice). ok is false out of range.
func LeverEffort(ram, ratio, eta float64) (n float64, ok bool) {
	if !(ram >= 0 && ram <= 1e9) || !(ratio > 1e-3) || !(eta > 1e-3 && eta <= 1) {
		return 0, false
	}
	return ram / (ratio * eta), true
}

// RamForce gives the force on the ram [N] for one on the lever: F_lever ratio eta, the
// reverse of [LeverEffort]; arguments as there. ok is false out of range.
func RamForce(lever, ratio, eta float64) (n float64, ok bool) {
	if !(lever >= 0 && lever <= 1e7) || !(ratio > 1e-3 && ratio <= 1e4) || !(eta > 1e-3 && eta <= 1) {
		return 0, false
	}
	return lever * ratio * eta, true
}

// RamBinding gives what an eccentric load does to a ram in its guide.
//
//	side = F e / L;  lost = 2 mu e / L;  push = F / (1 - lost)
//
// force: F [N]. e: distance of load and ram axis, guide: L between the two guide
// points [mm], guide above 0. mu: 0.15 for greased iron (common practice). Source:
// moment balance on a two-point guide (own); it binds at lost = 1, which is the 2:1
// rule of plain linear bearings at mu 0.25 (read). ok is false out of range and when
// it binds.
func RamBinding(force, e, guide, mu float64) (side, lost, push float64, ok bool) {
	if !(force >= 0 && force <= 1e9) || !(e >= 0 && e <= 1e5) || !(guide > 1e-3) || !(mu >= 0 && mu <= 10) {
		return 0, 0, 0, false
	}
	lost = 2 * mu * e / guide
	if lost >= 1-1e-9 {
		return 0, 0, 0, false
	}
	return force * e / guide, lost, force / (1 - lost), true
}

// TippingMoments gives the moment that tips a press that is not bolted down and the
// one that holds it [N mm]: pull times height, weight times half the base. pull: level
// part of the lever force [N]. height, halfBase: [mm]. kg: mass. Source: moment
// balance about the edge of the base (own).
func TippingMoments(pull, height, kg, halfBase float64) (tipping, holding float64) {
	return pull * height, kg * unit.Gravity * halfBase
}
