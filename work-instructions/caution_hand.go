package workinstructions

// What pushing by hand can do. That repeated strikes with the palm injure the
// ulnar artery is read; the rest is common practice.
var handRules = []rule{
	fixed(byHand, Caution{ID: "palm strike", Signal: Careful, Symbol: General,
		Hazard:      "The palm or the fist used as a hammer.",
		Consequence: "Blows injure an artery of the hand, and the harm can last.",
		Avoid:       []string{"Push steadily. Never strike with palm or fist."},
		Places:      []Place{AtPress}}),
	fixed(byHand, Caution{ID: "strain", Signal: Careful, Symbol: General,
		Hazard:      "Pushing again and again strains thumb, hand and arm.",
		Consequence: "Pain comes, and can stay.",
		Avoid:       []string{"Change hands or take turns.", "Stop at pain, and tell the person in charge."},
		Places:      []Place{AtPress}}),
	fixed(byHand, Caution{ID: "pinch", Signal: Careful, Symbol: HandCrush,
		Hazard:      "The parts close on each other when the latches snap in.",
		Consequence: "Skin between them is pinched.",
		Avoid:       []string{"Keep fingertips away from the joint."},
		Places:      []Place{AtPress, AtAim}}),
	fixed(func(f Facts) bool { return byHand(f) && f.Anvil }, Caution{ID: "dead stop", Signal: Careful, Symbol: HandCrush,
		Hazard:      "Anvil and nest close on each other at the dead stop.",
		Consequence: "A finger on a stop or on the rim of the nest is pinched.",
		Avoid:       []string{"Keep fingers off the stops and out of the gap between anvil and nest."},
		Places:      []Place{AtAnvil, AtPress}}),
	fixed(func(f Facts) bool { return byHand(f) && f.EccentricThrust }, Caution{ID: "off centre", Signal: Notice,
		Hazard:      "The force belongs on the thrust mark, which is not the middle between the dead stops.",
		Consequence: "Off the mark the latches seat unevenly, and parts are damaged.",
		Avoid:       []string{"Push over the thrust mark."},
		Places:      []Place{AtAim}}),
}
