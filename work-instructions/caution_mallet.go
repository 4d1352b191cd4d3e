package workinstructions

// What a mallet and a vise can do (rules for hammers read in extracts of an
// occupational health centre's pages; the classes of the signal words are own).
var malletRules = []rule{
	fixed(byMallet, Caution{ID: "struck hand", Signal: Warning, Symbol: General, Places: []Place{AtPress}}),
	fixed(func(f Facts) bool { return byMallet(f) && f.Anvil },
		Caution{ID: "dead stop", Signal: Warning, Symbol: HandCrush, Places: []Place{AtAnvil, AtPress}}),
	fixed(func(f Facts) bool { return byMallet(f) && f.EccentricThrust },
		Caution{ID: "off centre", words: "off centre mallet", Signal: Careful, Symbol: General, Places: []Place{AtAim, AtPress}}),
	fixed(byMallet, Caution{ID: "bystanders", Signal: Careful, Symbol: General, Places: []Place{AtPress}}),
	fixed(byMallet, Caution{ID: "noise", Signal: Careful, Symbol: EarGuard, Places: []Place{AtPress}}),
	fixed(byMallet, Caution{ID: "vise", Signal: Careful, Symbol: HandCrush, Places: []Place{AtSetUp}}),
}
