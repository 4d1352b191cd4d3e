package workinstructions

import (
	"math"
	"strconv"

	"ramnest/force/method"
	"ramnest/force/unit"
)

// decisionRules say what the choice of the method leaves open.
var decisionRules = []rule{
	fixed(func(f Facts) bool { return f.Overridden },
		Caution{ID: "override", Signal: Warning, Symbol: General, Places: []Place{AtSetUp, AtPress}}),
	fixed(func(f Facts) bool { return f.Conditional && !f.Overridden },
		Caution{ID: "condition", Signal: Warning, Symbol: ReadManual, Places: []Place{AtSetUp}}),
	fixed(func(f Facts) bool { return byPress(f) && f.RatedForce > 0 && f.WorstForce > f.RatedForce },
		Caution{ID: "above rated", Signal: Warning, Symbol: General, Places: []Place{AtPress}}),
}

// fragments is in force wherever something can break under load or under a
// blow; by hand only where a part is brittle.
var fragments = rule{func(f Facts) bool { return byPress(f) || byMallet(f) || f.Brittle }, func(f Facts) Caution {
	c := Caution{ID: "fragments", Signal: Warning, Symbol: EyeGuard, Places: []Place{AtSetUp, AtPress}}
	switch {
	case byMallet(f) && f.Brittle:
		c.words = "chips brittle"
	case byMallet(f):
		c.words = "chips"
	case f.Brittle:
		c.words = "fragments brittle"
	}
	if f.Method == method.ByHand {
		c.Signal = Careful
	}
	return c
}}

// pinch is in force where a finger fits between anvil and nest at the end and has no
// room there. 25 mm: EN 349, now ISO 13854 (read in a page after it); 6 mm own.
var pinch = rule{func(f Facts) bool { return f.Anvil && f.Opening > 6 && f.Opening < 25 }, func(f Facts) Caution {
	c := Caution{ID: "narrow opening", size: unit.Length.Of(f.Opening).To(unit.Shop), Signal: Warning, Symbol: HandCrush,
		Places: []Place{AtPress}}
	if byHand(f) { // the hands are what pushes: they cannot be off the tooling
		c.words = "narrow opening hand"
	}
	return c
}}

// strained is in force where a share of the assemblies asks too much of a latch.
var strained = rule{func(f Facts) bool { return f.Overstrained > 0.01 }, func(f Facts) Caution {
	return Caution{ID: "overstrained latch", fill: strconv.Itoa(int(math.Ceil(100 * f.Overstrained))), Signal: Warning, Symbol: EyeGuard,
		Places: []Place{AtSetUp, AtPress}}
}}

// jams is in force where any of the assemblies that were drawn jams.
var jams = rule{func(f Facts) bool { return f.Jammed > 0 }, func(f Facts) Caution {
	return Caution{ID: "jam", fill: strconv.Itoa(int(math.Ceil(1000*f.Jammed - 1e-9))), Signal: Warning, Symbol: EyeGuard,
		Places: []Place{AtPress, AtCheck}}
}}

// partRules follow from the parts and the tooling, whatever the method.
var partRules = []rule{
	fragments,
	pinch,
	strained,
	jams,
	fixed(func(f Facts) bool { return f.AnvilCloses },
		Caution{ID: "anvil closes latches", Signal: Careful, Symbol: HandCrush, Places: []Place{AtAnvil}}),
	fixed(func(f Facts) bool { return f.ToolMassKg >= heavy },
		Caution{ID: "heavy tooling", Signal: Careful, Symbol: Footwear, Places: []Place{AtSetUp}}),
	{func(f Facts) bool { return f.SharpOrUncured }, func(f Facts) Caution {
		c := Caution{ID: "sharp or uncured", Signal: Careful, Symbol: Gloves, Places: []Place{AtLoad}}
		if byPress(f) {
			c.words = "sharp press"
		}
		return c
	}},
	fixed(func(f Facts) bool { return f.Permanent }, Caution{ID: "permanent", Signal: Careful, Symbol: General,
		Places: []Place{AtPosition, AtCheck}}),
	{func(f Facts) bool { return f.Brittle }, func(f Facts) Caution {
		c := Caution{ID: "brittle", Signal: Notice, Places: []Place{AtPress, AtCheck}}
		if byMallet(f) {
			c.words = "brittle mallet"
		}
		return c
	}},
	{func(f Facts) bool { return f.ShockSensitive }, func(f Facts) Caution {
		if byMallet(f) {
			return Caution{ID: "shock", words: "shock mallet", Signal: Notice, Places: []Place{AtPress}}
		}
		return Caution{ID: "shock", Signal: Notice, Places: []Place{AtAim, AtPress}}
	}},
	fixed(func(f Facts) bool { return f.Electronics }, Caution{ID: "electronics", Signal: Notice, Places: []Place{AtLoad, AtPosition}}),
	{func(f Facts) bool { return f.KeepOuts }, func(f Facts) Caution {
		c := Caution{ID: "keep-out", Signal: Notice, Places: []Place{AtAim}}
		if !f.Anvil { // the hands are on the part itself
			c.words = "keep-out bare"
		}
		return c
	}},
	fixed(func(f Facts) bool { return f.AcrossLayers }, Caution{ID: "across layers", Signal: Notice, Places: []Place{AtPress, AtCheck}}),
}

// everyoneRules hold for every sheet.
var everyoneRules = []rule{
	fixed(always, Caution{ID: "strange sound", Signal: Careful, Symbol: General, Places: []Place{AtPress}}),
	{always, func(f Facts) Caution {
		c := Caution{ID: "competent person", Signal: Warning, Symbol: ReadManual, Places: []Place{AtSetUp}}
		if byHand(f) {
			c.Signal = Careful
		}
		return c
	}},
}
