package method

import (
	"cmp"
	"fmt"
	"math"
	"ramnest/force/unit"
	"slices"
)

// loadingGap is the room to put the upper part in under the raised anvil [mm] (own).
const loadingGap = 10

// assessPress takes the smallest press that passes, and says why not a smaller one.
func assessPress(d Demand, b Bench) Assessment {
	best := weighPress(d, b)
	if best.Press == nil {
		return best.worded(unit.Text{})
	}
	best.Effort, best.Shift = d.effort(best.Lever.Pull, BodyPull, p15Both)
	best.Placement = d.place(*best.Press)
	manner := unit.Say(best.Lever.manner())
	if best.Placement != nil && best.Placement.Plate > 0 {
		manner = manner.Plus(unit.Textf(", a steel plate of %v under the nest", unit.Length.Of(best.Placement.Plate)))
	}
	return best.worded(manner)
}

// weighPress is assessPress without the words.
func weighPress(d Demand, b Bench) Assessment {
	if b.lacks(ByPress) {
		return Assessment{Method: ByPress, Action: unit.Say(ByPress.Title()),
			Limits: []Limit{refusal("the shop has no arbor press", ofShop("bench"))}}.weigh()
	}
	presses := slices.Clone(b.Presses)
	slices.SortStableFunc(presses, func(a, b Press) int { return cmp.Compare(a.Rated, b.Rated) })
	var best Assessment
	var tried []Assessment
	for i, p := range presses {
		l := d.lever(p, b.GuideMu)
		got := Assessment{Method: ByPress, Press: &presses[i], Action: unit.Say(p.Name), Lever: &l, Limits: pressLimits(d, p, l, b)}.weigh()
		if i == 0 || got.betterThan(best) {
			best = got
		}
		tried = append(tried, got)
	}
	for _, t := range tried {
		if t.Press == best.Press {
			break
		}
		_, at := judge(t.Limits)
		best.Skipped = append(best.Skipped, Skipped{t.Press.Name, t.Verdict, t.Limits[at]})
	}
	return best.jams(d)
}

// from is where the figures of the press come from.
func (p Press) from(text string) basis {
	if p.Generic {
		return practice(text)
	}
	return ofShop(text)
}

func pressLimits(d Demand, p Press, l Lever, b Bench) []Limit {
	limits := []Limit{newLimit(string(LimitRated), d.DesignForce, b.PressMargin*p.Rated, "N",
		practice(fmt.Sprintf("%.2g of the plate", b.PressMargin)))}
	if d.Worst > 0 {
		limits = append(limits, newLimit("worst case against the plate", d.Worst, p.Rated, "N", p.from("rated force of the frame")))
	}
	limits = append(limits, leverLimits(d, p, l, b.GuideMu)...)
	limits = append(limits, roomLimits(d, p)...)
	limits = append(limits, limitIfKnown("ram face", d.ThrustWander, p.RamSquare/2, "mm",
		own("the thrust line stays within the face of the ram"), p.RamSquare > 0, "ram size"))
	if face := p.ramFace(); face > 0 && d.AnvilBearing > 0 {
		limits = append(limits, newLimit("pressure under the ram", d.DesignForce/face, d.AnvilBearing, "MPa",
			stated("contact limit of the anvil, less the bore of the ram")))
	}
	if p.NotBolted {
		limits = append(limits, limitIfKnown("tipping of a press that is not bolted down", l.Pull, p.tipsAt(), "N",
			own(fmt.Sprintf("weight of %s kg on half a base of %s mm, lever %s mm high", num(p.Mass), num(cmp.Or(p.BaseDepth, defaultBase)),
				num(cmp.Or(p.LeverHeight, defaultLeverHeight)))), p.Mass > 0, "mass of the press"))
		if p.Mass == 0 {
			limits = append(limits, refusal("the press is not bolted down and its mass is not known", own("it tips by its lever")))
		}
	}
	return limits
}

// roomLimits holds nest, parts and anvil against the room in the press.
func roomLimits(d Demand, p Press) []Limit {
	tall := d.NestSize[2] > 0 && d.AnvilHeight > 0 && d.Stroke > 0 && p.DaylightMax > 0
	lift := d.Stroke + loadingGap
	stack := d.NestSize[2] + d.PartStackHeight + d.AnvilHeight + lift + d.tablePlate(p)
	need, side := d.reach()
	wide := d.NestSize[0] > 0 && d.NestSize[1] > 0 && p.Throat > 0
	return []Limit{
		limitIfKnown("daylight", stack, p.DaylightMax, "mm",
			p.from("nest, parts, anvil, stroke, a plate if one is needed, and 10 mm (own) to load"),
			tall || p.DaylightMax > 0 && stack > p.DaylightMax, "nest, anvil, stroke or daylight"),
		limitIfKnown("ram stroke", lift, p.travel(), "mm", p.from("stroke and 10 mm (own) to load"), p.travel() > 0 && d.Stroke > 0,
			"stroke or ram travel"),
		limitIfKnown("throat", need, p.Throat, "mm", p.from("thrust line under the ram, "+side+" side of the nest to the column"), wide,
			"nest size or throat"),
	}
}

// travel is how far the ram goes [mm], 0 if nothing is known of it.
func (p Press) travel() float64 { return cmp.Or(p.RamStroke, strokePerDaylight*p.DaylightMax) }

// ramFace is the area of the end of the ram, less its bore [mm2]; 0: not known.
func (p Press) ramFace() float64 {
	return p.RamSquare*p.RamSquare - math.Pi/4*p.RamBore*p.RamBore
}

// tipsAt is the pull on the lever at which a loose press tips [N]; 0: not known.
func (p Press) tipsAt() float64 {
	height := cmp.Or(p.LeverHeight, defaultLeverHeight)
	perNewton, holding := TippingMoments(1, height, p.Mass, cmp.Or(p.BaseDepth, defaultBase)/2)
	return holding / perNewton
}

// Base and lever of a press that are not stated [mm] (own, the example of a small
// press on a bench).
const (
	defaultBase        = 150
	defaultLeverHeight = 450
)

// reach gives the least distance from the thrust line to an edge of the nest and the
// side where it is: that side goes to the column.
func (d Demand) reach() (float64, string) {
	x, y := d.NestSize[0]/2, d.NestSize[1]/2
	need, side := y-d.Thrust.Y, "+y" // the way it lies in the plan, unless another is better
	for _, s := range []struct {
		need float64
		side string
	}{{x - d.Thrust.X, "+x"}, {x + d.Thrust.X, "-x"}, {y + d.Thrust.Y, "-y"}} {
		if s.need < need {
			need, side = s.need, s.side
		}
	}
	return need, side
}
