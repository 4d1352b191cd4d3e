package workinstructions

// What pushing by hand can do. That repeated strikes with the palm injure the
// ulnar artery is read; the rest is common practice.
var handRules = []rule{
	fixed(byHand, Caution{ID: "palm strike", Signal: Careful, Symbol: General, Places: []Place{AtPress}}),
	fixed(byHand, Caution{ID: "strain", Signal: Careful, Symbol: General, Places: []Place{AtPress}}),
	fixed(byHand, Caution{ID: "pinch", Signal: Careful, Symbol: HandCrush, Places: []Place{AtPress, AtAim}}),
	fixed(func(f Facts) bool { return byHand(f) && f.Anvil },
		Caution{ID: "dead stop", words: "dead stop hand", Signal: Careful, Symbol: HandCrush, Places: []Place{AtAnvil, AtPress}}),
	fixed(func(f Facts) bool { return byHand(f) && f.EccentricThrust },
		Caution{ID: "off centre", words: "off centre hand", Signal: Notice, Places: []Place{AtAim}}),
}
