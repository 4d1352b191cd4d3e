package workinstructions

// Gear is a piece of protective equipment.
type Gear struct {
	Symbol Symbol // empty: none
	Text   string
}

// Equipment gives the protective equipment that follows from the facts of the
// steps. Eye protection is always among it (own); gloves are not where a ram
// closes, since they do not stop it and take the feel away (own).
func Equipment(steps ...Facts) []Gear {
	any := func(is func(Facts) bool) bool {
		for _, f := range steps {
			if is(f) {
				return true
			}
		}
		return false
	}
	out := []Gear{{EyeGuard, "Eye protection with side protection."}}
	if any(byMallet) {
		out = append(out, Gear{EarGuard, "Ear protection at the mallet, for everybody near."})
	}
	if any(func(f Facts) bool { return f.ToolMassKg >= heavy }) {
		out = append(out, Gear{Footwear, "Safety footwear."})
	}
	if any(func(f Facts) bool { return f.SharpOrUncured }) {
		out = append(out, Gear{Gloves, "Gloves to handle parts that are sharp or not cured."})
	}
	if any(byPress) {
		out = append(out, Gear{"", "At the press: no gloves while the lever moves unless the site's assessment asks for them; no rings, no loose sleeves; long hair tied up."})
	}
	return out
}
