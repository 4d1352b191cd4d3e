package force

import (
	"math"

	"ramnest/force/fault"
)

// fingers is a ring cut into fingers by slots from its free end.
type fingers struct {
	count        int
	inner, outer float64 // radii of the wall [mm]
	slot         float64 // width of a slot [mm]
	reach        float64 // from the root of the slots to the joint [mm]
	outward      bool    // bends outward: its bore is in tension
}

// arc is the angle of one finger [rad], measured at mid-wall.
func (f fingers) arc() float64 {
	return 2*math.Pi/float64(f.count) - 2*f.slot/(f.inner+f.outer)
}

func (f fingers) section() Section { return RingSegment(f.inner, f.outer, f.arc()) }

// tensile is the distance of the neutral axis to the face in tension [mm].
func (f fingers) tensile() float64 {
	if f.outward {
		return f.section().Inner
	}
	return f.section().Outer
}

// baseFactor is how much softer the fingers would be on a base that gives.
func (f fingers) baseFactor() float64 { return BaseFactor(f.reach, f.outer-f.inner, 1) }

// FingerStiffness gives the total transverse force of n fingers per radial
// movement, K [N/mm].
//
//	K = n 3 E I / a^3
//
// e: modulus [MPa]; i: second moment of one finger's section, [RingSegment]
// [mm^4]; a: from the root of the slots to the joint [mm], above 0. Source: beam
// theory. Leaves out shear and the give of the base, so that it lies high; a
// finger stiffer than its share of the closed ring counts as that.
func FingerStiffness(n int, e, i, a float64) float64 { return float64(n) * 3 * e * i / (a * a * a) }

// lever is [ArmLever] of a finger that moves by w [mm].
func (f fingers) lever(w float64) float64 {
	return ArmLever(f.tensile(), 1.5/f.reach, armBow/f.reach, w)
}

// soften turns a closed ring member into a slotted one.
func (f fingers) soften(m member, mat Material, use string) member {
	k := FingerStiffness(f.count, mat.Modulus.Value, f.section().Inertia, f.reach)
	if k >= m.stiffness {
		return m
	}
	strain := RootStrain(f.tensile(), 1, f.reach, 1)
	return member{stiffness: k, strain: strain, limit: mat.PermittedAxial(use).Value, wall: m.wall, law: armWall}.follow(mat, strain,
		bodyReserve)
}

// fingerFaults checks slots: count, their width and the reach of the fingers.
func fingerFaults(prefix string, f fingers) []fault.Fault {
	out := countFault(prefix+"slots", f.count, 2, 48)
	if len(out) > 0 {
		return out
	}
	pitch := math.Pi * (f.inner + f.outer) / float64(f.count)
	out = append(out, lengthFault(prefix+"slot_width", f.slot, 0.05, 0.8*pitch)...)
	return out
}
