package force

import (
	"ramnest/force/fault"
	"ramnest/force/planar"
	"ramnest/force/unit"
)

// A Kind is one joint design: all that a latch of its sort must be able to say. Kinds are
// values; what gives a Kind back gives a changed copy. The first member of a joint is the
// one whose part [Kind.First] names: tube, socket, arm, boss, ribs.
type Kind interface {
	// Validate returns what is wrong with the joint, field paths relative to it.
	Validate() []fault.Fault

	// First is the part, lower or upper, of the first member.
	First() string
	// Opening is the part with the opening: bore, mouth, ledge. See [Outer].
	Opening() string
	// Carrier is the part that alone can carry another size in a test coupon; empty if
	// either can.
	Carrier() string
	// Searched says whether its peak is found by search, not by formula.
	Searched() bool
	// Snaps says whether it springs in and is home there; otherwise it holds by friction
	// wherever it stops.
	Snaps() bool

	// Size is what the joint interferes by, between the part with the opening and the
	// one that goes in.
	Size(opening, plug Material) Size
	// Resized gives it another size [mm], made by one member alone: the other one, and
	// the diameter at which the joint is computed, stay.
	Resized(size float64, m Member) Kind
	// Toleranced gives it a plus or minus on its size [mm], which is then the one that
	// the joint has: no tight holes nor asperities come off it.
	Toleranced(tol float64) Kind
	// Largest is the largest size for which a joint of its dimensions has a force [mm];
	// loose says that a ladder of it may go on below none.
	Largest() (most float64, loose bool)

	// ready makes the joint ready to be evaluated, between the part of its first member
	// and the other one.
	ready(first, second Material, use string) joint
	// strengths notes all that bounds what it holds.
	strengths(b *bounds)
	// swing is the room it needs at the latch while its first member moves aside so far [mm].
	swing(l *Latch, aside float64, first Material) Swing
	// explain gives every formula behind its force, in order.
	explain(e *explainer)
	// relations are its formulas, as far as they are data.
	relations() []relation
	// warn says what a person should know of it.
	warn(w *warner)
	// usual lists its sizes with what such joints have.
	usual() []usualSize
	// sizeKey is the key of the size by which it interferes, writtenAs the key under which
	// it writes a size that can be written in more than one way.
	sizeKey() string
	writtenAs(key string) string
	// AcrossLayers says whether it pulls the layers of a printed part apart.
	AcrossLayers(first, second Material) bool
	// Assumed is a key that the job left out, and what is taken for it; empty if nothing
	// worth saying.
	Assumed() (key string, text unit.Text)

	// Footprint is what it takes up in the plan.
	Footprint() Footprint
	// Play is how far it may rise again from its seat, as drawn [mm].
	Play() float64
	// Deeper is how much further than drawn one of a size must go that comes out larger
	// by an offset [mm].
	Deeper(size, offset float64, m Member) float64

	// Looser gives it that share of its size, and says so; nil if it is not one number.
	Looser(share float64) (Kind, unit.Text)
	// Gentler gives it a lead-in of an angle [rad] at most, and the key that says so; nil
	// if it has less. first: that is among the first things to try.
	Gentler(angle float64) (k Kind, key string, first bool)
	// Slotted cuts it into fingers, and says how; nil if that is not to be had.
	Slotted() (Kind, unit.Text)
	// Kept is the joint with what it says of each of its places, for these alone; nil:
	// for one by itself.
	Kept(places []int) Kind
	// Stiffened scales what it has in the place of a modulus, and gives the key and what
	// it is then [MPa]; an empty key if the modulus is all.
	Stiffened(first Material, by float64) (k Kind, key string, now float64)

	// OnPlate is the joint on the solid plate of a coupon, and what there is to say of it.
	OnPlate() (Kind, string)
	// Aside is how far from the middle two of them stand opposite each other in a coupon
	// [mm], since one by itself pushes the parts aside; 0: it is round.
	Aside() float64

	// Accept calls the method of its kind.
	Accept(v Visitor)
}

// sizeKey is the key under which the latch writes what it interferes by.
func (l Latch) sizeKey() string {
	k := l.Joint()
	return k.writtenAs(k.sizeKey())
}

// sides gives the materials of the part that is named, and of the other one.
func sides(part string, lower, upper Material) (this, other Material) {
	if part == "upper" {
		return upper, lower
	}
	return lower, upper
}

// otherPart names the other one.
func otherPart(part string) string {
	if part == "lower" {
		return "upper"
	}
	return "lower"
}

// Size is what the latch interferes by, between two parts.
func (l Latch) Size(lower, upper Material) Size {
	k := l.Joint()
	return k.Size(sides(k.Opening(), lower, upper))
}

// Footprint is what the latch takes up in the plan round each place; nothing if it states
// no joint.
func (l Latch) Footprint() Footprint {
	if k := l.Joint(); k != nil {
		return k.Footprint()
	}
	return Footprint{}
}

// AcrossLayers says whether the latch pulls the layers of a printed part apart: an
// arm or a finger that bends, built along the press axis, or a ring that widens,
// built across it. A part that does not state its build direction counts as built
// the weaker way.
func (l Latch) AcrossLayers(lower, upper Material) bool {
	k := l.Joint()
	return k.AcrossLayers(sides(k.First(), lower, upper))
}

// Resized is the latch with another size, see [Kind].
func (l Latch) Resized(size float64, m Member) Latch { return l.With(l.Joint().Resized(size, m)) }

// Toleranced is the latch with a plus or minus on its size, see [Kind].
func (l Latch) Toleranced(tol float64) Latch { return l.With(l.Joint().Toleranced(tol)) }

// Stiffened is the latch with what it has in the place of a modulus scaled, see [Kind].
func (l Latch) Stiffened(lower, upper Material, by float64) (out Latch, key string, now float64) {
	k := l.Joint()
	first, _ := sides(k.First(), lower, upper)
	k, key, now = k.Stiffened(first, by)
	return l.With(k), key, now
}

// Alone is one joint of the latch, on its own stroke, as the part carries it.
func (l Latch) Alone() Latch {
	l.Engage, l.At = nil, []planar.Point{{}}
	return l.With(l.Joint().Kept(nil))
}

// OnPlate is one joint of the latch as a coupon carries it, and what there is to say of it.
func (l Latch) OnPlate() (Latch, string) {
	l = l.Alone()
	k, note := l.Joint().OnPlate()
	return l.With(k), note
}
