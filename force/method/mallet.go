package method

import (
	"fmt"
	"math"
	"ramnest/force/unit"
	"slices"
)

// What a mallet is good for.
const (
	MaxBlows      = 5   // more is the wrong method (common practice)
	MalletRate    = 30  // assemblies an hour a mallet is fine for (own: repeated work is for a press)
	MalletRateMax = 60  // and the most at all (own)
	tooManyBlows  = 1e6 // more are not counted
)

// refusals lists what forbids a blow, whatever its size.
func refusals(d Demand) []Limit {
	when := practice("when not to strike")
	var out []Limit
	for _, r := range []struct {
		is   bool
		name string
	}{
		{d.Brittle, "brittle part: it may shatter under a blow"},
		{d.ShockSensitive, "shock-sensitive part: no blow at all"},
		{d.Electronics, "electronics in the parts: no blow over them"},
		{d.AcrossLayers, "a latch bends across its printed layers: a blow splits it"},
	} {
		if r.is {
			out = append(out, refusal(r.name, when))
		}
	}
	if d.Permanent {
		out = append(out, refusal("permanent joint: a blow gives no feel of the seat, so the dead stop must show it", when).soft(engineer))
	}
	return out
}

// assessMallet takes the lightest mallet and the gentlest blow that passes.
func assessMallet(d Demand, b Bench) Assessment {
	best := weighMallet(d, b)
	if best.Mallet != nil {
		best.Shift = malletShift(d)
	}
	return best.worded(unit.Text{})
}

// weighMallet is assessMallet without the words.
func weighMallet(d Demand, b Bench) Assessment {
	if b.lacks(ByMallet) {
		return Assessment{Method: ByMallet, Action: unit.Say(ByMallet.Title()),
			Limits: []Limit{refusal("the shop has no mallet and vise", ofShop("bench"))}}.weigh()
	}
	fixed := append(refusals(d),
		newLimit("repetition", d.RatePerHour, MalletRate, "an hour", own("repeated work is for a press")).soft(ergonomist),
		newLimit(largest+"repetition", d.RatePerHour, MalletRateMax, "an hour", own("repeated work is for a press")))
	var best Assessment
	first := true
	for _, m := range b.Mallets {
		speeds := []float64{m.Speed}
		if m.Speed == 0 {
			speeds = []float64{tapSpeed, firmSpeed}
		}
		for _, v := range speeds {
			blow, n, peak := blowLimits(d, m, v)
			head := m
			head.Speed = v
			for k := range b.Vises {
				jaws := b.Vises[k]
				got := Assessment{Method: ByMallet, Mallet: &head, Vise: &jaws, Blows: n, Limits: slices.Concat(fixed, blow, viseLimits(d, jaws, peak)),
					Action: unit.Textf("%s%v at %v, nest in the %s%v", m.Name, sized(m.Mass, unit.Mass), unit.Speed.Of(v), jaws.Name,
						sized(jaws.JawWidth, unit.Length))}.weigh()
				if first || got.betterThan(best) {
					best, first = got, false
				}
			}
		}
	}
	return best.jams(d)
}

// sized is the size of a tool behind its name, if it is known.
func sized(v float64, k unit.Kind) unit.Text {
	if v == 0 {
		return unit.Text{}
	}
	return unit.Textf(" %v", k.Of(v))
}

// malletShift is how much of the work one person may do with a mallet: no source
// says, so the pace is the package's own.
func malletShift(d Demand) *Shift {
	n := int(MalletRate * d.HoursPerDay)
	if n == 0 {
		return nil
	}
	return &Shift{PerHour: MalletRate, PerShift: n, Hours: d.HoursPerDay, People: max(1, int(math.Ceil(d.RatePerHour/MalletRate-1e-9))),
		By: "our own limit"}
}

// faces gives the softest and the stiffest face of a mallet [N/mm]: the stated one, or
// the range of soft heads.
func (m Mallet) faces() (soft, stiff float64) {
	if m.FaceStiffness > 0 {
		return m.FaceStiffness, m.FaceStiffness
	}
	return softFace, stiffFace
}

// blowLimits holds one blow against the work, the latch force, the worst case and the
// parts; of what is a range, the end that is against it decides. It also gives the
// number of blows and the largest force of one [N].
func blowLimits(d Demand, m Mallet, speed float64) (limits []Limit, blows int, peak float64) {
	soft, _ := m.faces()
	driven := d.AnvilMass + d.UpperMass
	known := d.AnvilMass > 0
	energy := BlowEnergy(m.Mass, speed)
	eta, _ := BlowEfficiency(m.Mass, driven, m.Restitution)
	count := func(work float64) int {
		n, ok := BlowsNeeded(work, eta*energy)
		if !ok {
			n = tooManyBlows
		}
		return n
	}
	work := d.workAtDesign()
	n := count(work)

	// Without the anvil's mass the count is the least there can be: it may still be too
	// many. The force that gets through is reckoned with the softest face and joint and
	// with what a blow without rebound leaves, the shock with the stiffest face and any
	// joint: what is not known helps neither.
	reach := d.JointStiffness > 0 || d.Stroke > 0
	least := func(need float64) float64 {
		joint := d.JointStiffness
		if joint == 0 {
			joint = need / d.Stroke
		}
		k, _ := SeriesStiffness(soft, joint)
		left, _ := BlowEfficiency(m.Mass, driven, 0)
		return PeakOfBlow(left*energy, k)
	}
	capacity, atWorst := 0.0, 0.0
	if reach {
		capacity, atWorst = least(d.DesignForce), least(max(d.Worst, d.DesignForce))
	}
	at := m
	at.Speed = speed
	mass := math.Inf(1)
	if known {
		mass = driven
	}
	peak = HardestBlow(at, mass, d.JointStiffness)
	limits = []Limit{
		limitIfKnown("blows", float64(n), MaxBlows, "", practice(fmt.Sprintf("work %s mJ over %.2g of %s mJ a blow; more than %d is the wrong method", num(work), eta, num(energy), MaxBlows)),
			known && work > 0 || n > MaxBlows, "mass of the anvil or work to the seat"),
		limitIfKnown("force a blow must reach", d.DesignForce, capacity, "N",
			memory("v sqrt(k m) with the softest face and joint, Shigley; below it the head bounces"), reach, "stiffness or stroke"),
		limitIfKnown("shock", peak, d.ShockLimit, "N", stated("permitted by the parts"), d.ShockLimit > 0, "shock limit of the parts not stated"),
		limitIfKnown("weight of anvil and upper part", driven, m.Mass, "kg", practice("lighter than the head, or the blow is wasted"), known,
			"mass of the anvil").soft(engineer),
	}
	if d.Worst > 0 {
		limits = append(limits, limitIfKnown("worst case a blow must reach", d.Worst, atWorst, "N",
			memory("v sqrt(k m) with the softest face and joint, Shigley; below it the head bounces"), reach, "stiffness or stroke").soft(engineer))
		if d.PeakForce > 0 && work > 0 {
			most := count(d.Work * max(1, d.Worst/d.PeakForce))
			limits = append(limits, limitIfKnown("blows in the worst case", float64(most), MaxBlows, "",
				practice(fmt.Sprintf("more than %d is the wrong method", MaxBlows)), known || most > MaxBlows, "mass of the anvil").soft(engineer))
		}
	}
	if work == 0 || !reach {
		limits = append(limits, refusal("work or stroke of the joint not known: the blow was not reckoned",
			own("nothing is passed that was not computed")).soft(engineer))
	}
	if !known || work == 0 {
		n = 0
	}
	return limits, n, peak
}
