package calibrate

import (
	"math"

	"ramnest/force"
	"ramnest/force/planar"
)

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

// SizeOf gives the size of a valid latch between two parts.
func SizeOf(l force.Latch, lower, upper force.Material) Size {
	outer, inner := lower, upper
	if OuterPart(l) == "upper" {
		outer, inner = upper, lower
	}
	both := func(name string, value float64, stated *float64, dimension float64, faces float64) Size {
		s := Size{Name: name, Value: value, Outer: outer.ToleranceOn(dimension) * faces / 2, Inner: inner.ToleranceOn(dimension) * faces / 2, Diametral: faces == 2}
		if stated != nil {
			s.Outer, s.Inner = *stated/math.Sqrt2, *stated/math.Sqrt2
		}
		return s
	}
	apart := func(name string, opening, plug float64, openingTol, plugTol *float64) Size {
		s := Size{Name: name, Value: plug - opening, Outer: outer.ToleranceOn(opening), Inner: inner.ToleranceOn(plug), Diametral: true}
		if openingTol != nil {
			s.Outer = *openingTol
		}
		if plugTol != nil {
			s.Inner = *plugTol
		}
		return s
	}
	switch {
	case l.Annular != nil && l.Annular.BeadDiameter != 0:
		a := l.Annular
		return apart("bead_diameter less lip_diameter", a.LipDiameter, a.BeadDiameter, a.LipTol, a.BeadTol)
	case l.Annular != nil:
		return both("undercut", l.Annular.Undercut, l.Annular.UndercutTol, l.Annular.JointDiameter, 2)
	case l.Ball != nil:
		b := l.Ball
		return apart("ball_diameter less mouth_diameter", b.MouthDiameter, b.BallDiameter, b.MouthTol, b.BallTol)
	case l.Cantilever != nil:
		return both("undercut", l.Cantilever.Undercut, l.Cantilever.UndercutTol, l.Cantilever.Length, 1)
	case l.CrushRib != nil:
		return both("crush", l.CrushRib.Crush, l.CrushRib.CrushTol, l.CrushRib.JointDiameter, 1)
	case l.PressFit != nil:
		f := withDiameters(*l.PressFit)
		if f.PinDiameter == 0 {
			return both("interference", f.Interference, f.InterferenceTol, f.JointDiameter, 2)
		}
		return apart("pin_diameter less bore_diameter", f.BoreDiameter, f.PinDiameter, f.BoreTol, f.PinTol)
	}
	return Size{}
}

// OuterPart gives the part, lower or upper, that carries the outer member.
func OuterPart(l force.Latch) string {
	switch {
	case l.Annular != nil:
		return l.Annular.Outside
	case l.Ball != nil:
		return l.Ball.Socket
	case l.Cantilever != nil && l.Cantilever.Flexes == "lower":
		return "upper"
	case l.PressFit != nil:
		return l.PressFit.Outside
	}
	return "lower"
}

// Resize gives the latch with another size [mm], made by one member alone: the
// other one, and the diameter at which the joint is computed, stay.
func Resize(l force.Latch, size float64, m Member) force.Latch {
	change := func(opening, plug *float64) {
		if m == Outer {
			*opening = *plug - size
		} else {
			*plug = *opening + size
		}
	}
	switch {
	case l.Annular != nil:
		a := *l.Annular
		if a.BeadDiameter != 0 {
			change(&a.LipDiameter, &a.BeadDiameter)
		} else {
			a.Undercut = size
		}
		l.Annular = &a
	case l.Ball != nil:
		b := *l.Ball
		change(&b.MouthDiameter, &b.BallDiameter)
		l.Ball = &b
	case l.Cantilever != nil:
		c := *l.Cantilever
		c.Undercut = size
		l.Cantilever = &c
	case l.CrushRib != nil:
		c := *l.CrushRib
		c.Crush = size
		l.CrushRib = &c
	case l.PressFit != nil:
		f := withDiameters(*l.PressFit)
		if f.PinDiameter == 0 {
			f.Interference = size
		} else {
			if f.JointDiameter == 0 {
				f.JointDiameter = f.BoreDiameter
			}
			change(&f.BoreDiameter, &f.PinDiameter)
		}
		l.PressFit = &f
	}
	return l
}

// OnPlate gives the latch as a coupon carries it: one joint on its own stroke, an arm
// on the solid plate of the coupon instead of a base that the job states a factor for.
func OnPlate(l force.Latch) force.Latch {
	l.Engage, l.At = nil, []planar.Point{{}}
	if l.Cantilever == nil {
		return l
	}
	c := *l.Cantilever
	c.Toward = nil
	if c.BaseFactor != nil {
		c.BaseFactor = nil
		if c.Shape == "" || c.Shape == "straight" {
			c.Base = "solid"
		}
	}
	l.Cantilever = &c
	return l
}

// inPart gives the latch as the part carries it: one joint on its own stroke.
func inPart(l force.Latch) force.Latch {
	l.Engage, l.At = nil, []planar.Point{{}}
	if l.Cantilever != nil {
		c := *l.Cantilever
		c.Toward = nil
		l.Cantilever = &c
	}
	return l
}

// withDiameters writes an ISO fit as the two mean diameters and their tolerances.
func withDiameters(f force.PressFit) force.PressFit {
	fit, err := force.ParseISOFit(f.Fit)
	if f.Fit == "" || err != nil {
		return f
	}
	f.Fit = ""
	if f.JointDiameter == 0 {
		f.JointDiameter = fit.Nominal
	}
	f.BoreDiameter = fit.Nominal + (fit.HoleLower+fit.HoleUpper)/2
	f.PinDiameter = fit.Nominal + (fit.ShaftLower+fit.ShaftUpper)/2
	if f.BoreFinished {
		f.BoreTol = new(fit.HoleTol)
	}
	if f.PinFinished {
		f.PinTol = new(fit.ShaftTol)
	}
	return f
}

// withTolerance gives the latch with a plus or minus on its size [mm], which is then
// the one that the joint has: no tight holes nor asperities come off it.
func withTolerance(l force.Latch, tol float64) force.Latch {
	each := tol / math.Sqrt2
	switch {
	case l.Annular != nil:
		a := *l.Annular
		if a.BeadDiameter != 0 {
			a.BeadTol, a.LipTol = new(each), new(each)
		} else {
			a.UndercutTol = new(tol)
		}
		l.Annular = &a
	case l.Ball != nil:
		b := *l.Ball
		b.BallTol, b.MouthTol = new(each), new(each)
		l.Ball = &b
	case l.Cantilever != nil:
		c := *l.Cantilever
		c.UndercutTol = new(tol)
		l.Cantilever = &c
	case l.CrushRib != nil:
		c := *l.CrushRib
		c.CrushTol, c.RoughnessLoss = new(tol), new(0.0)
		l.CrushRib = &c
	case l.PressFit != nil:
		f := withDiameters(*l.PressFit)
		f.RoughnessLoss = new(0.0)
		if f.PinDiameter == 0 {
			f.InterferenceTol = new(tol)
		} else {
			f.PinTol, f.BoreTol = new(each), new(each)
		}
		l.PressFit = &f
	}
	return l
}
