package force

import "math"

// A Member is one side of a joint: the one with the opening, or the one that goes in.
type Member int

// The members of a joint. Of a cantilever the arm is the inner one and the ledge the
// outer one; of ribs the part that carries them is neither more nor less than the
// other, so the lower part, with the bore, is the outer one.
const (
	Outer Member = iota
	Inner
)

// A Size is what a latch interferes by.
type Size struct {
	Name  string  // of the figure in the job file
	Value float64 // nominal [mm]
	// Outer and Inner are the plus or minus that each member's process leaves on it
	// [mm]: as stated, or else by the table.
	Outer, Inner float64
	Diametral    bool // counts two faces; otherwise one
}

// Tolerance is the plus or minus on the size, both members in quadrature [mm].
func (s Size) Tolerance() float64 { return math.Hypot(s.Outer, s.Inner) }

// sizeOfBoth is a size written as one figure, of so many faces; stated: its tolerance.
func sizeOfBoth(name string, value float64, stated *float64, dimension, faces float64, outer, inner Material) Size {
	s := Size{Name: name, Value: value, Outer: outer.ToleranceOn(dimension) * faces / 2, Inner: inner.ToleranceOn(dimension) * faces / 2,
		Diametral: faces == 2}
	if stated != nil {
		s.Outer, s.Inner = *stated/math.Sqrt2, *stated/math.Sqrt2
	}
	return s
}

// sizeApart is a size written as two diameters.
func sizeApart(name string, opening, plug float64, openingTol, plugTol *float64, outer, inner Material) Size {
	s := Size{Name: name, Value: plug - opening, Outer: outer.ToleranceOn(opening), Inner: inner.ToleranceOn(plug), Diametral: true}
	if openingTol != nil {
		s.Outer = *openingTol
	}
	if plugTol != nil {
		s.Inner = *plugTol
	}
	return s
}

// change makes the size of two diameters by one member.
func (m Member) change(opening, plug *float64, size float64) {
	if m == Outer {
		*opening = *plug - size
	} else {
		*plug = *opening + size
	}
}

// each is the tolerance of either member where both make up a tolerance alike [mm].
func each(tol float64) *float64 { return new(tol / math.Sqrt2) }

// A Footprint is what a joint takes up in the plan, round each of its places [mm].
type Footprint struct {
	Radius       float64 // of a round joint; 0: an arm
	Slack        float64 // by which it may lie further out than its part
	Ring         bool    // it bears round its circle, not at its middle
	Within, Size float64 // material gives way from the one radius to the other
	Hole         bool    // and what fills it there need not be drawn
}

// steeper says whether a lead-in lies above an angle, or is none.
func steeper(v *float64, angle float64) bool { return v == nil || *v > angle }

// cotDeeper is how much deeper a holding flank ends by an offset across the axis [mm].
func cotDeeper(offset, angle float64) float64 {
	if angle > math.Pi/2-1e-6 {
		return 0
	}
	return offset * (1 / math.Tan(angle))
}

// armAcross says whether what bends along the axis pulls layers apart: built any way
// but across it.
func armAcross(m Material) bool { return m.Layered() && !m.Metal() && m.Build != "across" }

// ringAcross says whether what widens pulls layers apart: built any way but along the axis.
func ringAcross(m Material) bool { return m.Layered() && !m.Metal() && m.Build != "along" }
