package method

import "fmt"

// What a nest for the vise looks like, and what a mallet is good for [own, common
// practice].
const (
	TongueThickness = 20   // between the jaws [mm]
	TongueDepth     = 25   // below the flange [mm]
	MaxBlows        = 5    // more is the wrong method (common practice)
	MalletRate      = 30   // assemblies an hour a mallet is fine for (own: repeated work is for a press)
	MalletRateMax   = 60   // and the most at all (own)
	handTight       = 4712 // clamp force of 100 N on 150 mm, lead 5, efficiency 0.25 [N] (common practice)
	tonguePressure  = 4    // least contact limit of printed tooling [MPa] (common practice)
	tooManyBlows    = 1e6  // more are not counted
	overhang        = 2    // nest along the jaws over jaw width (own)
)

// refusals lists what forbids a blow, whatever its size.
func refusals(d Demand) []Limit {
	const practice = "when not to strike (common practice)"
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
			out = append(out, refusal(r.name, practice))
		}
	}
	if d.Permanent {
		out = append(out, refusal("permanent joint: a blow gives no feel of the seat, so the dead stop must show it", practice).soft())
	}
	return out
}

// assessMallet takes the lightest mallet and the gentlest blow that passes.
func assessMallet(d Demand, b Bench) Assessment {
	if b.lacks(ByMallet) {
		return Assessment{Method: ByMallet, Action: "mallet and vise", Limits: []Limit{refusal("the shop has no mallet and vise", "bench")}}.conclude()
	}
	fixed := append(refusals(d),
		newLimit("repetition", d.RatePerHour, MalletRate, "an hour", "repeated work is for a press (own)").soft(),
		newLimit("repetition, at most", d.RatePerHour, MalletRateMax, "an hour", "repeated work is for a press (own)"))
	vise, viseLimits := pickVise(d, b.Vises)
	var best Assessment
	first := true
	for _, m := range b.Mallets {
		speeds := []float64{m.Speed}
		if m.Speed == 0 {
			speeds = []float64{tapSpeed, firmSpeed}
		}
		for _, v := range speeds {
			blow, n := blowLimits(d, m, v)
			limits := append(append(append([]Limit(nil), fixed...), blow...), viseLimits...)
			head := m
			head.Speed = v
			jaws := vise
			got := Assessment{Method: ByMallet, Mallet: &head, Vise: &jaws, Blows: n, Limits: limits,
				Action: fmt.Sprintf("%s at %s m/s, nest in the %s", m.Name, num(v), vise.Name)}.conclude()
			if first || got.betterThan(best) {
				best, first = got, false
			}
		}
	}
	return best
}

// blowLimits holds one blow against the work, the latch force and the parts.
func blowLimits(d Demand, m Mallet, speed float64) ([]Limit, int) {
	face := m.FaceStiffness
	if face == 0 {
		face = defaultFace
	}
	driven := d.AnvilMass + d.UpperMass
	known := d.AnvilMass > 0
	energy := BlowEnergy(m.Mass, speed)
	eta, _ := BlowEfficiency(m.Mass, driven, m.Restitution)
	work := d.workAtDesign()
	n, ok := BlowsNeeded(work, eta*energy)
	if !ok {
		n = tooManyBlows
	}

	// Without the anvil's mass the count is the least there can be: it may still be too
	// many. The force that gets through is reckoned with the softest, the shock with the
	// stiffest joint that is not ruled out: unknown stiffness helps neither.
	soft, stiff, reach := face, face, true
	switch {
	case d.JointStiffness > 0:
		soft, _ = SeriesStiffness(face, d.JointStiffness)
		stiff = soft
	case d.Stroke > 0:
		soft, reach = SeriesStiffness(face, d.DesignForce/d.Stroke)
	default:
		reach = false
	}
	limits := []Limit{
		limitIfKnown("blows", float64(n), MaxBlows, "", fmt.Sprintf("work %s mJ over %.2g of %s mJ a blow; more than %d is the wrong method (common practice)", num(work), eta, num(energy), MaxBlows),
			known && work > 0 || n > MaxBlows, "mass of the anvil or work to the seat"),
		limitIfKnown("force a blow must reach", d.DesignForce, PeakOfBlow(energy, soft), "N", "v sqrt(k m) with the softest joint; below it the head bounces (Shigley, memory)", reach, "stiffness or stroke"),
		limitIfKnown("shock", PeakOfBlow(energy, stiff), d.ShockLimit, "N", "permitted by the parts, as the job states", d.ShockLimit > 0, "shock limit of the parts not stated"),
		limitIfKnown("weight of anvil and upper part", driven, m.Mass, "kg", "lighter than the head, or the blow is wasted (common practice)", known, "mass of the anvil").soft(),
	}
	if work == 0 || !reach {
		limits = append(limits, refusal("work or stroke of the joint not known: the blow was not reckoned", "forces").soft())
	}
	if !known || work == 0 {
		n = 0
	}
	return limits, n
}

// pickVise takes the first vise that is good, else the best.
func pickVise(d Demand, vises []Vise) (Vise, []Limit) {
	var best Assessment
	at := 0
	for i, v := range vises {
		got := Assessment{Limits: viseLimits(d, v)}
		got.Verdict, _ = judge(got.Limits)
		if i == 0 || got.Verdict.better(best.Verdict) {
			best, at = got, i
		}
	}
	return vises[at], best.Limits
}

func viseLimits(d Demand, v Vise) []Limit {
	along := max(d.NestSize[0], d.NestSize[1])
	sized := d.NestSize[0] > 0 && d.NestSize[1] > 0
	pressure := 0.0
	if v.JawWidth > 0 && sized {
		pressure = handTight / (min(along, v.JawWidth) * TongueDepth)
	}
	return []Limit{
		limitIfKnown("vise opening", TongueThickness, v.Opening, "mm", "tongue of the nest (own)", v.Opening > 0, "opening of the vise"),
		limitIfKnown("vise depth", TongueDepth, v.Depth, "mm", "tongue of the nest (own)", v.Depth > 0, "depth of the vise"),
		limitIfKnown("vise jaws", along, overhang*v.JawWidth, "mm", "long side of the nest over twice the jaws (own)", v.JawWidth > 0 && sized, "jaw width or nest size"),
		limitIfKnown("clamp pressure on the tongue", pressure, tonguePressure, "MPa", "hand tight on a printed tongue (common practice)", v.JawWidth > 0 && sized, "jaw width or nest size"),
	}
}
