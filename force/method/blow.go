package method

import "math"

// BlowEnergy gives the energy of a head [mJ]: 1000 m v^2 / 2. kg: mass of the head,
// speed: at impact [m/s]. Source: elementary mechanics.
func BlowEnergy(kg, speed float64) float64 { return 1000 * kg * speed * speed / 2 }

// BlowEfficiency gives the share of the energy left after the impact [1].
//
//	eta = (m1 + e^2 m2) / (m1 + m2)
//
// head, driven: masses m1 and m2 [kg], head above 0, driven 0 or more (anvil and
// upper part). e: restitution, 0 to 1; take 0 for soft faces. Source: Hiley formula,
// a geotechnical textbook page (read). Part of it sits in the rebounding head, see
// [DrivenShare]; a springy bench loses more. ok is false out of range.
func BlowEfficiency(head, driven, e float64) (eta float64, ok bool) {
	if !blowArgs(head, driven, e) {
		return 0, false
	}
	return (head + e*e*driven) / (head + driven), true
}

func blowArgs(head, driven, e float64) bool {
	return head > 0 && head <= 1e3 && driven >= 0 && driven <= 1e3 && e >= 0 && e <= 1
}

// SeriesStiffness gives the stiffness of springs one behind the other [N/mm],
// 1/k = sum of 1/k_i; each above 0. Source: springs in series. ok is false for none
// or for one that is not above 0.
func SeriesStiffness(ks ...float64) (k float64, ok bool) {
	var sum float64
	for _, x := range ks {
		if !(x > 1e-9) {
			return 0, false
		}
		sum += 1 / x
	}
	if sum == 0 {
		return 0, false
	}
	return 1 / sum, true
}

// PeakOfBlow gives the largest force of an elastic blow on a spring [N].
//
//	F = sqrt(2 E k) = v sqrt(k m)
//
// energy: E [mJ]; stiffness: k of face, anvil and parts in series [N/mm]; both 0 or
// more. Source: Shigley, Mechanical Engineering Design, impact (memory). Left out:
// mass of what is struck, which [HardestBlow] counts, damping, plastic give.
func PeakOfBlow(energy, stiffness float64) float64 {
	return math.Sqrt(2 * max(0, energy) * max(0, stiffness))
}

// HardestBlow gives a bound for the force that one blow puts through the parts [N],
// whatever the stiffness below the struck mass, and the parts' own if that is known.
//
//	F <= v sqrt(k1 m1) (1 + m2/(m1 + m2)),  F <= v sqrt(k2 m1)
//
// m: mallet, its mass m1 and speed v; no stated speed: the firm one; no stated face:
// the stiffest, k1. driven: mass struck m2, anvil and upper part [kg], 0 or more;
// +Inf: not known, which counts twice. joint: stiffness of parts and anvil k2 [N/mm];
// 0: not known. Source: own. The second is the whole energy of the head in the parts.
// The first counts what the struck mass adds by swinging on: at a stiff support up to
// once more the force of the face, and nothing if it is light; the two-mass
// simulation of the tests lies below it by up to a tenth. Left out: damping, plastic
// give, a second mass below.
func HardestBlow(m Mallet, driven, joint float64) float64 {
	_, face := m.faces()
	speed := m.Speed
	if speed == 0 {
		speed = firmSpeed
	}
	energy := BlowEnergy(m.Mass, speed)
	swing := 1.0
	if !math.IsInf(driven, 1) {
		swing = max(0, driven) / (m.Mass + max(0, driven))
	}
	f := PeakOfBlow(energy, face) * (1 + swing)
	if joint > 0 {
		f = min(f, PeakOfBlow(energy, joint))
	}
	return f
}

// BlowsNeeded gives the number of blows: work over useful energy of one, rounded up.
// work: down to the seat [mJ], 0 or more. useful: eta E [mJ], above 0. Source: work
// balance (own). ok is false out of range and for more than a million.
func BlowsNeeded(work, useful float64) (n int, ok bool) {
	if !(work >= 0) || !(useful > 0) || work > 1e6*useful {
		return 0, false
	}
	return max(1, int(math.Ceil(work/useful-1e-9))), true
}
