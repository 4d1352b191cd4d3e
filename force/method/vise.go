package method

import (
	"cmp"
	"fmt"
	"math"
)

// What a nest for the vise looks like [mm] (own).
const (
	TongueThickness = 20 // between the jaws
	TongueDepth     = 25 // below the flange
)

// Figures of nest and vise.
const (
	handTight      = 4712 // clamp force of 100 N on 150 mm, lead 5, efficiency 0.25 [N] (common practice)
	tonguePressure = 4    // least contact limit of printed tooling [MPa] (common practice)
	overhang       = 2    // nest along the jaws over jaw width [1] (own)
	defaultJaw     = 15   // thickness of a jaw under the flange [mm] (own)
	jawFriction    = 0.2  // printed tongue in steel jaws [1], the low end (own)
	tipSafety      = 2    // on the grip of the jaws [1] (own)
	strikeScatter  = 10   // how far beside the strike face's middle a blow lands [mm] (own)
)

// TipOut gives how far off the middle of the tongue a blow may land before the nest
// tips out of the vise, across or along the jaws [mm].
//
//	e = s (1 + 2 mu N / (n F))
//
// half: s, from the middle of the tongue to where the flange ends on the jaws [mm],
// above 0. clamp: N of the jaws, 0 or more; peak: F of the blow [N], above 0. mu: of
// tongue and jaws, 0 or more. safety: n, 1 or more. Source: moment balance about the
// end of the bearing, both faces of the tongue held by friction (own). Left out: the
// weight of the nest, the short time of a blow. ok is false out of range.
func TipOut(half, clamp, peak, mu, safety float64) (e float64, ok bool) {
	if !(half > 0 && half <= 1e5) || !(clamp >= 0 && clamp <= 1e7) || !(peak > 0) || !(mu >= 0 && mu <= 10) ||
		!(safety >= 1 && safety <= 1e3) {
		return 0, false
	}
	e = half * (1 + 2*mu*clamp/(safety*peak))
	return e, !math.IsInf(e, 0)
}

// viseLimits holds the nest against the vise. peak is the largest force of a blow [N].
func viseLimits(d Demand, v Vise, peak float64) []Limit {
	along, short := max(d.NestSize[0], d.NestSize[1]), min(d.NestSize[0], d.NestSize[1])
	sized := short > 0
	wide := v.JawWidth > 0 && sized
	clamp := cmp.Or(v.ClampForce, handTight)
	pressure := 0.0
	if wide {
		pressure = clamp / (min(along, v.JawWidth) * TongueDepth)
	}
	limits := []Limit{
		limitIfKnown("vise opening", TongueThickness, v.Opening, "mm", v.from("opening, for the tongue of the nest"), v.Opening > 0,
			"opening of the vise"),
		limitIfKnown("vise depth", TongueDepth, v.Depth, "mm", v.from("depth, for the tongue of the nest"), v.Depth > 0, "depth of the vise"),
		limitIfKnown("vise jaws", along, overhang*v.JawWidth, "mm", own("long side of the nest over twice the jaws"), wide,
			"jaw width or nest size"),
		limitIfKnown("clamp pressure on the tongue", pressure, tonguePressure, "MPa", practice("hand tight on a printed tongue"), wide,
			"jaw width or nest size"),
	}
	// The tongue lies along the long side.
	offAcross, offAlong := math.Abs(d.Thrust.Y)+strikeScatter, math.Abs(d.Thrust.X)+strikeScatter
	if d.NestSize[1] > d.NestSize[0] {
		offAcross, offAlong = offAlong, offAcross
	}
	for _, way := range []struct {
		name     string
		off, end float64
		known    bool
	}{
		{"tip-out across the jaws", offAcross, min(short/2, TongueThickness/2+cmp.Or(d.JawThickness, defaultJaw)), sized},
		{"tip-out along the jaws", offAlong, min(along, v.JawWidth) / 2, wide},
	} {
		least, _ := TipOut(way.end, clamp, peak, jawFriction, tipSafety)
		limits = append(limits, limitIfKnown(way.name, way.off, least, "mm",
			own(fmt.Sprintf("moment balance, jaws closed with %s N, peak of the blow %s N, landing %d mm off", num(clamp), num(peak),
				strikeScatter)), way.known && least > 0, "nest size or jaw width"))
	}
	return limits
}

// from is where the figures of the vise come from.
func (v Vise) from(text string) basis {
	if v == GenericVise() {
		return practice(text)
	}
	return ofShop(text)
}
