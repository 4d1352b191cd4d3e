package method

import (
	"cmp"
	"fmt"
	"math"
	"ramnest/force/unit"
)

// A Lever is what a press asks of the person at it, and what a person could do to it.
type Lever struct {
	Pull     float64 // at the design force [N]
	Hands    int     // on the lever for the recommended pull at this rate: 1, 2; 0: not even two
	OneHand  float64 // recommended with one hand, at this rate [N]: of 75 N, one arm down (read; its use at a lever is own)
	TwoHands float64 // recommended with both hands, at this rate [N]: of 145 N, standing pull (read; that it takes both is own)
	Travel   float64 // of the hands over the stroke [mm]; 0: stroke not known
	Swing    float64 // of the lever over the stroke [rad]; 0: lever or stroke not known
	Most     float64 // ram force of one person who leans on the lever, see [LeverMost] [N]
	Stop     float64 // what dead stops have to stand, see [StopForce] [N]
	Overload bool    // one person can give more than the frame is rated for

	Side float64 // force on the guide while the thrust line is farthest off the ram axis [N]
	Lost float64 // share of the force that the guide takes then [1]
	Tilt float64 // moment on the guide then [N mm]
}

// maxSwing is the angle through which a lever is pulled in one go [rad] (own).
const maxSwing = 2

// leaning is the weight of one person who hangs on a lever [N]: 130 kg, a little
// above the 95th percentile of adult men in the USA, about 127 kg (NHANES, memory);
// taking the whole of it is own. A jerk gives more.
const leaning = 130 * unit.Gravity

// leaningEfficiency is the upper end of 0.75 to 0.9 for rack and guided ram (common
// practice): what is lost does not load the tooling.
const leaningEfficiency = 0.9

// LeverMost gives the largest ram force that a person can give through the lever [N],
// whatever the plate says: one person leans on its end with the whole weight.
//
//	F = 130 kg g ratio eta
//
// p: its ratio, or lever and pinion; efficiency as stated, else 0.9, the upper end.
// Source: own; weight from memory, see above. Left out: a jerk, a second person, a
// pipe on the lever. 0 for a press without a usable ratio.
func LeverMost(p Press) float64 {
	ratio, ok := p.leverRatio()
	most, okMost := RamForce(leaning, ratio, cmp.Or(p.Efficiency, leaningEfficiency))
	if !ok || !okMost {
		return 0
	}
	return most
}

// StopForce gives the force that dead stops have to stand [N]: the rated force, or
// [LeverMost] where a person cannot reach the rated force. Source: own.
func StopForce(p Press) float64 {
	if most := LeverMost(p); most > 0 {
		return min(p.Rated, most)
	}
	return p.Rated
}

// leverRatio gives the ratio, stated or from lever and pinion.
func (p Press) leverRatio() (ratio float64, ok bool) {
	if p.Ratio != 0 {
		return p.Ratio, p.Ratio >= 1 && p.Ratio <= maxRatio
	}
	if ratio, ok = p.pinionRatio(); !ok || ratio < 1 || ratio > maxRatio {
		return 0, false
	}
	return ratio, true
}

const maxRatio = 500

// pinionRatio is the ratio by lever and pinion.
func (p Press) pinionRatio() (ratio float64, ok bool) {
	return LeverRatio(p.Lever, cmp.Or(p.PinionRadius, PitchRadius(p.PinionModule, p.PinionTeeth)), cmp.Or(p.Gear, 1))
}

// guide is the length of the ram guide [mm], 0 if nothing is known of it.
func (p Press) guide() float64 { return cmp.Or(p.Guide, guidePerRam*p.RamSquare) }

// lever works out what the press asks of a person.
func (d Demand) lever(p Press, mu float64) Lever {
	ratio, _ := p.leverRatio()
	l := Lever{Most: LeverMost(p), Stop: StopForce(p), Travel: ratio * d.Stroke, Tilt: d.DesignForce * d.ThrustWander}
	l.Overload = l.Most > p.Rated
	if p.Lever > 0 {
		l.Swing = l.Travel / p.Lever
	}
	push := d.DesignForce
	if side, lost, eased, ok := RamBinding(d.DesignForce, d.ThrustWander, p.guide(), mu); ok {
		l.Side, l.Lost, push = side, lost, eased
	}
	l.Pull, _ = LeverEffort(push, ratio, cmp.Or(p.Efficiency, defaultEfficiency))
	one, okOne := effortOf(l.Pull, ArmDownSeated, d.RatePerHour, d.ActionSeconds, d.HoursPerDay)
	two, okTwo := effortOf(l.Pull, BodyPull, d.RatePerHour, d.ActionSeconds, d.HoursPerDay)
	if !okOne || !okTwo {
		return l
	}
	l.OneHand, l.TwoHands = one.Strict, two.Strict
	switch {
	case l.Pull <= l.OneHand:
		l.Hands = 1
	case l.Pull <= l.TwoHands:
		l.Hands = 2
	}
	return l
}

// manner says how the lever is held.
func (l Lever) manner() string {
	switch l.Hands {
	case 1:
		return ", one hand on the lever"
	case 2:
		return ", both hands on the lever"
	}
	return ""
}

// leverLimits holds the pull on the lever against what a person gives at the rate,
// and the thrust line against the guide of the ram.
func leverLimits(d Demand, p Press, l Lever, mu float64) []Limit {
	guide := p.guide()
	limits := exertion(string(LimitLever), l.Pull, BodyPull, read("145 N standing pull, P15"), d)
	limits = append(limits, limitIfKnown("thrust line off the ram axis", d.ThrustWander, jamShare*guide/(2*max(mu, 1e-9)), "mm",
		own(fmt.Sprintf("half of where the ram jams in a guide of %s mm at friction %.2g", num(guide), mu)), guide > 0, "ram guide"))
	if l.Swing > 0 {
		deg := 180 / math.Pi
		limits = append(limits, newLimit("swing of the lever under force", l.Swing*deg, maxSwing*deg, "deg",
			own("one pull without taking a new hold")).soft(engineer))
	}
	return limits
}

// jamShare is how near a ram may come to jamming [1] (own).
const jamShare = 0.5
