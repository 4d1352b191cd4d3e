package workinstructions

import "slices"

// Gear is a piece of protective equipment.
type Gear struct {
	Symbol Symbol // empty: none
	Text   string
}

// Equipment gives the protective equipment that follows from the facts of the
// steps, in English. Eye protection is always among it (own); gloves are not where a
// ram closes, since they do not stop it and take the feel away (own).
func Equipment(steps ...Facts) []Gear { return figures{}.equipment(steps) }

func (f figures) equipment(steps []Facts) []Gear {
	out := []Gear{{EyeGuard, f.say("gear.eye")}}
	if slices.ContainsFunc(steps, byMallet) {
		out = append(out, Gear{EarGuard, f.say("gear.ear")})
	}
	if slices.ContainsFunc(steps, func(f Facts) bool { return f.ToolMassKg >= heavy }) {
		out = append(out, Gear{Footwear, f.say("gear.feet")})
	}
	if slices.ContainsFunc(steps, func(f Facts) bool { return f.SharpOrUncured }) {
		out = append(out, Gear{Gloves, f.say("gear.gloves")})
	}
	if slices.ContainsFunc(steps, byPress) {
		out = append(out, Gear{"", f.say("gear.press")})
	}
	return out
}
