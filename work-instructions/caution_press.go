package workinstructions

// What an arbor press can do to a person (common practice, filtered by the
// job; the classes of the signal words are own). The words are in the catalogue.
var pressRules = []rule{
	fixed(byPress, Caution{ID: "crush", Signal: Warning, Symbol: HandCrush, Places: []Place{AtPress, AtAim}}),
	fixed(func(f Facts) bool { return byPress(f) && f.Anvil },
		Caution{ID: "dead stop", Signal: Warning, Symbol: HandCrush, Places: []Place{AtAnvil, AtPress}}),
	{byPress, func(f Facts) Caution {
		c := Caution{ID: "kick-back", Signal: Warning, Symbol: General, Places: []Place{AtPress, AtRetract}}
		if f.Snaps {
			c.words = "kick-back snap"
		}
		return c
	}},
	fixed(byPress, Caution{ID: "lever extension", Signal: Warning, Symbol: General, Places: []Place{AtPress}}),
	fixed(byPress, Caution{ID: "tipping", Signal: Warning, Symbol: General, Places: []Place{AtSetUp}}),
	{byPress, func(f Facts) Caution {
		c := Caution{ID: "falling ram", Signal: Warning, Symbol: HandCrush, Places: []Place{AtLoad, AtSetUp}}
		if f.AnvilHeld {
			c.words = "falling anvil"
		}
		return c
	}},
	fixed(func(f Facts) bool { return byPress(f) && f.EccentricThrust },
		Caution{ID: "off centre", words: "off centre press", Signal: Warning, Symbol: General, Places: []Place{AtSetUp, AtAim}}),
	fixed(byPress, Caution{ID: "guards", Signal: Warning, Symbol: ReadManual, Places: []Place{AtSetUp}}),
}
