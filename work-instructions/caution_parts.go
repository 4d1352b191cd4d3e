package workinstructions

import (
	"fmt"
	"math"

	"ramnest/force/method"
)

// fragments is in force wherever something can break under load or under a
// blow; by hand only where a part is brittle.
var fragments = rule{func(f Facts) bool { return byPress(f) || byMallet(f) || f.Brittle }, func(f Facts) Caution {
	c := Caution{ID: "fragments", Signal: Warning, Symbol: EyeGuard,
		Hazard:      "A part or a tool that breaks under load throws fragments.",
		Consequence: "They injure eyes.",
		Avoid:       []string{"Wear eye protection with side protection, also when you only look on."},
		Places:      []Place{AtSetUp, AtPress}}
	if f.Brittle {
		c.Hazard = "The parts are brittle: they break without a sign before, and throw fragments."
	}
	switch f.Method {
	case method.ByMallet:
		c.Hazard = "Struck tools and parts throw chips."
		if f.Brittle {
			c.Hazard = "The parts are brittle: struck, they break without a sign before, and throw fragments."
		}
		c.Avoid = append(c.Avoid, "Use no mallet with a chipped face, a loose head or a cracked handle.", "Never strike one hammer with another.")
	case method.ByHand:
		c.Signal = Careful
	}
	return c
}}

// decisionRules say what the choice of the method leaves open.
var decisionRules = []rule{
	fixed(func(f Facts) bool { return f.Overridden }, Caution{ID: "override", Signal: Warning, Symbol: General,
		Hazard:      "The method on this sheet fails its own assessment and is used all the same.",
		Consequence: "People, press, tooling or parts can be overloaded, and people injured.",
		Avoid:       []string{"Work only if the person who gave the reason at the head of the page has released it in writing.", "Stop at the first thing that differs from this sheet."},
		Places:      []Place{AtSetUp, AtPress}}),
	fixed(func(f Facts) bool { return f.Conditional && !f.Overridden }, Caution{ID: "condition", Signal: Warning, Symbol: ReadManual,
		Hazard:      "The method on this sheet is good on one condition only, which stands under force and method.",
		Consequence: "If the condition is not met, people, tooling or parts can be overloaded, and people injured.",
		Avoid:       []string{"Do not start before a competent person has confirmed the condition and signed this sheet."},
		Places:      []Place{AtSetUp}}),
	fixed(func(f Facts) bool { return byPress(f) && f.RatedForce > 0 && f.WorstForce > f.RatedForce }, Caution{ID: "above rated", Signal: Warning, Symbol: General,
		Hazard:      "At the worst tolerances the joint asks for more than the rated force of the press.",
		Consequence: "Frame or tooling break, and pieces fly.",
		Avoid:       []string{"Stop as soon as the lever goes harder than the action says. Do not add force."},
		Places:      []Place{AtPress}}),
}

// pinch is in force where a finger fits between anvil and nest at the end and has no
// room there. 25 mm: EN 349, now ISO 13854 (read in a page after it); 6 mm own.
var pinch = rule{func(f Facts) bool { return f.Anvil && f.Opening > 6 && f.Opening < 25 }, func(f Facts) Caution {
	return Caution{ID: "narrow opening", Signal: Warning, Symbol: HandCrush,
		Hazard:      fmt.Sprintf("Beside the part only %.0f mm are left between anvil and nest at the end: a finger fits in, and not when it closes.", math.Floor(f.Opening)),
		Consequence: "It is crushed.",
		Avoid:       []string{"Hold nothing between anvil and nest. Hands are off the tooling before it moves."},
		Places:      []Place{AtPress}}
}}

// strained is in force where a share of the assemblies asks too much of a latch.
var strained = rule{func(f Facts) bool { return f.Overstrained > 0.01 }, func(f Facts) Caution {
	return Caution{ID: "overstrained latch", Signal: Warning, Symbol: EyeGuard,
		Hazard:      fmt.Sprintf("By computation about %.0f of 100 assemblies strain a latch beyond what its material is permitted.", math.Ceil(100*f.Overstrained)),
		Consequence: "A latch that breaks throws pieces, and one that is damaged lets go later.",
		Avoid:       []string{"Do not start a series before the person in charge has looked at pressed samples, and pulled them.", "Look at every latch for white lines and cracks."},
		Places:      []Place{AtSetUp, AtPress}}
}}

// closes is in force where the anvil is heavy for the joint.
var closes = rule{func(f Facts) bool { return f.AnvilCloses }, func(f Facts) Caution {
	return Caution{ID: "anvil closes latches", Signal: Careful, Symbol: HandCrush,
		Hazard:      "The anvil is heavy enough to close latches by its own weight.",
		Consequence: "Fingers between the parts are pinched when it is put on.",
		Avoid:       []string{"Lower it with both hands on its sides, fingers above its plate."},
		Places:      []Place{AtAnvil}}
}}

// partRules follow from the parts and the tooling, whatever the method.
var partRules = []rule{
	fragments,
	pinch,
	strained,
	closes,
	fixed(func(f Facts) bool { return f.ToolMassKg >= heavy }, Caution{ID: "heavy tooling", Signal: Careful, Symbol: Footwear,
		Hazard:      "The tooling is heavy.",
		Consequence: "It bruises feet and hands when it drops or tips over.",
		Avoid:       []string{"Lift it with both hands, and lay it down flat on the bench.", "Wear safety footwear."},
		Places:      []Place{AtSetUp}}),
	{func(f Facts) bool { return f.SharpOrUncured }, func(f Facts) Caution {
		c := Caution{ID: "sharp or uncured", Signal: Careful, Symbol: Gloves,
			Hazard:      "The parts have sharp edges, or resin on them that is not cured.",
			Consequence: "They cut or irritate the skin.",
			Avoid:       []string{"Wear gloves made for it when you handle the parts."},
			Places:      []Place{AtLoad}}
		if byPress(f) {
			c.Avoid = append(c.Avoid, "Gloves do not stop a ram: take them off before the lever moves, unless the site's assessment says otherwise.")
		}
		return c
	}},
	fixed(func(f Facts) bool { return f.Permanent }, Caution{ID: "permanent", Signal: Careful, Symbol: General,
		Hazard:      "This joint is permanent: it is not meant to come apart.",
		Consequence: "The tool that pries or cuts it open slips and injures the hand, and the parts are lost.",
		Avoid:       []string{"Make sure before pressing that these are the right parts, the right way round.", "Never pry or cut the joint open."},
		Places:      []Place{AtPosition, AtCheck}}),
	{func(f Facts) bool { return f.Brittle }, func(f Facts) Caution {
		c := Caution{ID: "brittle", Signal: Notice,
			Hazard:      "The parts are brittle.",
			Consequence: "They crack at once, or later in use.",
			Avoid:       []string{"Let cold parts come to room temperature first.", "Push slowly, without a jerk, and look for cracks afterwards."},
			Places:      []Place{AtPress, AtCheck}}
		if byMallet(f) {
			c.Avoid[1] = "Begin with the lightest blow, and look for cracks after each one."
		}
		return c
	}},
	{func(f Facts) bool { return f.ShockSensitive }, func(f Facts) Caution {
		c := Caution{ID: "shock", Signal: Notice,
			Hazard:      "The parts do not stand a shock.",
			Consequence: "They are damaged inside, where nobody sees it.",
			Avoid:       []string{"Set everything down softly, and push without a jerk."},
			Places:      []Place{AtAim, AtPress}}
		if byMallet(f) {
			c.Avoid = []string{"Use only the mallet and the number of blows that this sheet states."}
			c.Places = []Place{AtPress}
		}
		return c
	}},
	fixed(func(f Facts) bool { return f.Electronics }, Caution{ID: "electronics", Signal: Notice,
		Hazard:      "The parts carry electronics.",
		Consequence: "A touch can discharge into them; pressure breaks components.",
		Avoid:       []string{"Follow the site's rules against static electricity.", "Hold the parts at their housing only."},
		Places:      []Place{AtLoad, AtPosition}}),
	fixed(func(f Facts) bool { return f.KeepOuts }, Caution{ID: "keep-out", Signal: Notice,
		Hazard:      "Some places on the parts must not be pressed.",
		Consequence: "They are marked, or break.",
		Avoid:       []string{"Press through the tooling on this sheet only, never on the part itself."},
		Places:      []Place{AtAim}}),
	fixed(func(f Facts) bool { return f.AcrossLayers }, Caution{ID: "across layers", Signal: Notice,
		Hazard:      "A latch bends across its printed layers.",
		Consequence: "It splits along a layer, at once or later in use.",
		Avoid:       []string{"Push slowly.", "Look at each latch for white lines and cracks."},
		Places:      []Place{AtPress, AtCheck}}),
}

// everyoneRules hold for every sheet.
var everyoneRules = []rule{
	fixed(always, Caution{ID: "strange sound", Signal: Careful, Symbol: General,
		Hazard:      "A jam, a crack or a strange sound means that something gives way.",
		Consequence: "Forced on, parts or tooling break and injure the hand.",
		Avoid:       []string{"Stop at once. Do not force it. Set it aside as a reject."},
		Places:      []Place{AtPress}}),
	{always, func(f Facts) Caution {
		c := Caution{ID: "competent person", Signal: Warning, Symbol: ReadManual,
			Hazard:      "This sheet does not replace instruction, local law or the site's own assessment.",
			Consequence: "Who works without them gets hurt.",
			Avoid:       []string{"Do this work only if you are trained for it and authorised, and a competent person has released the set-up."},
			Places:      []Place{AtSetUp}}
		if byHand(f) {
			c.Signal = Careful
		}
		return c
	}},
}
