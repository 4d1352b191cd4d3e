package workinstructions

import "ramnest/force/unit"

// A Gap is what is measured to accept a seated part.
type Gap struct {
	Low, High   float64 // least and most that is accepted [mm]; 0: any
	Kind        GapKind
	Between     [2]string  // names of lower and upper part, but for UnderAnvil
	Alone       [2]float64 // for OnPair: what each part measures before, about [mm]
	First, Each int        // the first pieces, then one in so many; 0: every piece
	Where       string     // in words of the job; empty: as the kind says
	Gauge       string     // in words of the job; empty: as the kind says
	What        string     // in words of the job; empty: as the kind says
}

// GapKind is what is measured.
type GapKind string

// The kinds of gap.
const (
	BetweenParts GapKind = ""       // a gap between the two parts
	OverAll      GapKind = "height" // the height of both
	BelowRim     GapKind = "depth"  // of the upper part's top below that of the lower one
	OnPair       GapKind = "pair"   // the height of both, less that of each alone
	UnderAnvil   GapKind = "anvil"  // the gap at the dead stops
)

// gapWords are the keys of what is measured, where and with what.
var gapWords = map[GapKind][3]string{
	BetweenParts: {"acc.gap", "acc.between", "acc.feeler"},
	OverAll:      {"acc.height", "acc.over all", "acc.caliper"},
	BelowRim:     {"acc.depth", "acc.below rim", "acc.depth gauge"},
	OnPair:       {"acc.pair", "acc.on pair", "acc.caliper"},
	UnderAnvil:   {"acc.gap", "acc.under anvil", "acc.feeler"},
}

// what is the thing measured.
func (f figures) what(g Gap) string {
	if g.What != "" {
		return g.What
	}
	return f.say(gapWords[g.Kind][0])
}

// where is the place at which it is measured.
func (f figures) where(g Gap) string {
	if g.Where != "" {
		return g.Where
	}
	lower, upper := part(g.Between[0]), part(g.Between[1])
	switch g.Kind {
	case UnderAnvil:
		return f.say(gapWords[g.Kind][1])
	case OnPair:
		return f.say(gapWords[g.Kind][1], lower, f.length(g.Alone[0]), upper, f.length(g.Alone[1]))
	}
	return f.say(gapWords[g.Kind][1], lower, upper)
}

// gauge is what it is measured with.
func (f figures) gauge(g Gap) string {
	if g.Gauge != "" {
		return g.Gauge
	}
	return f.say(gapWords[g.Kind][2])
}

// gap prints the limits of a gap. Rounding never makes them wider, and a limit
// at or below nothing is none.
func (f figures) gap(g Gap) string {
	lo := unit.Length.Of(g.Low).To(unit.Fine).Inward(f.units, true)
	hi := unit.Length.Of(g.High).To(unit.Fine).Inward(f.units, false)
	switch {
	case lo.Value <= 0:
		return f.say("gap.most", f.text(hi))
	case hi.Value <= 0:
		return f.say("gap.least", f.text(lo))
	}
	return f.say("gap.range", lo.Number(f.units, f.minus), f.text(hi))
}
