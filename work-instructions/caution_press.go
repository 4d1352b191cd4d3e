package workinstructions

// What an arbor press can do to a person (common practice, filtered by the
// job; the classes of the signal words are own).
var pressRules = []rule{
	fixed(byPress, Caution{ID: "crush", Signal: Warning, Symbol: HandCrush,
		Hazard:      "The ram closes with more force than fingers stand.",
		Consequence: "Fingers between ram, anvil, parts and nest are crushed.",
		Avoid:       []string{"Let go of anvil and parts before the lever moves.", "Keep both hands on the lever until the ram is up again.", "One person works the press, alone."},
		Places:      []Place{AtPress, AtAim}}),
	fixed(func(f Facts) bool { return byPress(f) && f.Anvil }, Caution{ID: "dead stop", Signal: Warning, Symbol: HandCrush,
		Hazard:      "Anvil and nest close on each other at the dead stop.",
		Consequence: "A finger on a stop or on the rim of the nest is crushed.",
		Avoid:       []string{"Keep fingers off the stops and out of the gap between anvil and nest."},
		Places:      []Place{AtAnvil, AtPress}}),
	{byPress, func(f Facts) Caution {
		c := Caution{ID: "kick-back", Signal: Warning, Symbol: General,
			Hazard:      "Let go of under load, the lever flies back.",
			Consequence: "It strikes head, face or arm.",
			Avoid:       []string{"Keep your head out of the arc of the lever.", "Guide the lever back, and never let go of it under load."},
			Places:      []Place{AtPress, AtRetract}}
		if f.Snaps {
			c.Hazard = "When a latch snaps in, the resistance drops and the lever jumps; let go of, it can fly back."
			c.Consequence = "The lever strikes head, face or arm."
		}
		return c
	}},
	fixed(byPress, Caution{ID: "lever extension", Signal: Warning, Symbol: General,
		Hazard:      "A pipe or a second person on the lever overloads the press.",
		Consequence: "Frame, rack or tooling break, and pieces fly.",
		Avoid:       []string{"Use the lever as it is, one person, no extension.", "Never go past the dead stop or the force that the action states."},
		Places:      []Place{AtPress}}),
	fixed(byPress, Caution{ID: "tipping", Signal: Warning, Symbol: General,
		Hazard:      "A press that is not bolted down tips or walks when the lever is pulled.",
		Consequence: "It falls on feet or hands.",
		Avoid:       []string{"Bolt the press to a bench that cannot tip, before the first stroke."},
		Places:      []Place{AtSetUp}}),
	{byPress, func(f Facts) Caution {
		c := Caution{ID: "falling ram", Signal: Warning, Symbol: HandCrush,
			Hazard:      "A ram that is not held falls, and its lever with it.",
			Consequence: "A hand under it is crushed.",
			Avoid:       []string{"Reach under the ram only when it is up and held."},
			Places:      []Place{AtLoad, AtSetUp}}
		if f.AnvilHeld {
			c.Hazard = "A ram that is not held falls; an anvil that hangs on the ram can drop."
			c.Avoid = append(c.Avoid, "Secure the anvil on the ram and tug at it before you reach under.")
		}
		return c
	}},
	fixed(func(f Facts) bool { return byPress(f) && f.EccentricThrust }, Caution{ID: "off centre", Signal: Warning, Symbol: General,
		Hazard:      "The force belongs on the thrust mark, which is not the middle between the dead stops.",
		Consequence: "Off the mark the anvil tips, the ram jams, and parts can be thrown out.",
		Avoid:       []string{"Set the ram over the thrust mark, and check it after every change of tooling."},
		Places:      []Place{AtSetUp, AtAim}}),
	fixed(byPress, Caution{ID: "guards", Signal: Warning, Symbol: ReadManual,
		Hazard:      "The place where a hand press closes is open.",
		Consequence: "Hands reach into it.",
		Avoid:       []string{"Fit the guards that local codes and the site's own assessment ask for.", "Add no motor or cylinder: that makes it another machine, which needs a new assessment."},
		Places:      []Place{AtSetUp}}),
}
