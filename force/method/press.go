package method

import (
	"cmp"
	"fmt"
	"slices"
)

// loadingGap is the room to put the upper part in under the raised anvil [mm] (own).
const loadingGap = 10

// assessPress takes the smallest press that passes.
func assessPress(d Demand, b Bench) Assessment {
	if b.lacks(ByPress) {
		return Assessment{Method: ByPress, Action: "arbor press", Limits: []Limit{refusal("the shop has no arbor press", "bench")}}.conclude()
	}
	presses := slices.Clone(b.Presses)
	slices.SortStableFunc(presses, func(a, b Press) int { return cmp.Compare(a.Rated, b.Rated) })
	var best Assessment
	for i, p := range presses {
		got := Assessment{Method: ByPress, Press: &presses[i], Action: p.Name, Limits: pressLimits(d, p, b)}.conclude()
		if i == 0 || got.betterThan(best) {
			best = got
		}
	}
	return best
}

func pressLimits(d Demand, p Press, b Bench) []Limit {
	limits := []Limit{newLimit("rated force with margin", d.DesignForce, b.PressMargin*p.Rated, "N", fmt.Sprintf("%.2g of the plate (common practice)", b.PressMargin))}
	if d.Worst > 0 {
		limits = append(limits, newLimit("worst case against the plate", d.Worst, p.Rated, "N", "rated force of the frame"))
	}
	limits = append(limits, leverLimits(d, p, b.GuideMu)...)

	tall := d.NestSize[2] > 0 && d.AnvilHeight > 0 && d.Stroke > 0 && p.DaylightMax > 0
	lift := d.Stroke + loadingGap
	stack := d.NestSize[2] + d.PartStackHeight + d.AnvilHeight + lift
	travel := p.RamStroke
	if travel == 0 {
		travel = strokePerDaylight * p.DaylightMax
	}
	need, side := throatNeeded(d)
	wide := d.NestSize[0] > 0 && d.NestSize[1] > 0 && p.Throat > 0
	return append(limits,
		limitIfKnown("daylight", stack, p.DaylightMax, "mm", "nest, parts, anvil, stroke and 10 mm to load (own)", tall || p.DaylightMax > 0 && stack > p.DaylightMax, "nest, anvil, stroke or daylight"),
		limitIfKnown("ram stroke", lift, travel, "mm", "stroke and 10 mm to load (own)", travel > 0 && d.Stroke > 0, "stroke or ram travel"),
		limitIfKnown("throat", need, p.Throat, "mm", "thrust line under the ram, "+side+" side of the nest to the column", wide, "nest size or throat"),
		limitIfKnown("ram face", d.ThrustWander, p.RamSquare/2, "mm", "the thrust line stays within the face of the ram (own)", p.RamSquare > 0, "ram size"),
	)
}

// leverLimits holds the pull on the lever against what a person gives at the rate.
func leverLimits(d Demand, p Press, mu float64) []Limit {
	eta := p.Efficiency
	if eta == 0 {
		eta = defaultEfficiency
	}
	guide := p.Guide
	if guide == 0 {
		guide = guidePerRam * p.RamSquare
	}
	push := d.DesignForce
	if guide > 0 {
		var ok bool
		if _, _, push, ok = RamBinding(d.DesignForce, d.ThrustWander, guide, mu); !ok {
			return []Limit{refusal(fmt.Sprintf("the ram binds: thrust line %s mm off its axis in a guide of %s mm", num(d.ThrustWander), num(guide)), "two-point guide (own)")}
		}
	}
	pull, _ := LeverEffort(push, p.Ratio, eta)
	return exertion("lever effort", pull, BodyPull, "145 N standing pull, P15 (read)", d)
}

// throatNeeded gives the least distance from the thrust line to an edge of the nest
// and the side where it is: that side goes to the column.
func throatNeeded(d Demand) (float64, string) {
	x, y := d.NestSize[0]/2, d.NestSize[1]/2
	need, side := x-d.Thrust.X, "+x"
	for _, s := range []struct {
		need float64
		side string
	}{{x + d.Thrust.X, "-x"}, {y - d.Thrust.Y, "+y"}, {y + d.Thrust.Y, "-y"}} {
		if s.need < need {
			need, side = s.need, s.side
		}
	}
	return need, side
}
