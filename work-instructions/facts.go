package workinstructions

import (
	"ramnest/force/method"
	"ramnest/force/unit"
)

// Facts are what cautions and protective equipment follow from.
type Facts struct {
	Method      method.Method
	Overridden  bool // the method fails its assessment and is used all the same
	Conditional bool // a person with the skill must agree first

	Brittle         bool // a part breaks without yielding
	ShockSensitive  bool // a part does not stand blows
	Electronics     bool // a part carries electronics
	KeepOuts        bool // a part has places that must not be pressed
	SharpOrUncured  bool // edges that cut, or resin that is not cured
	Snaps           bool // a latch springs in, so that the force drops all at once
	Permanent       bool // a latch is not meant to come apart
	AcrossLayers    bool // a latch bends across its printed layers
	EccentricThrust bool // the ram does not go over the middle between the dead stops

	Overstrained float64     // share of assemblies in which a latch is strained beyond what is permitted [1]
	Jammed       float64     // share of assemblies with a joint that jams [1]
	Units        unit.System // that a caution with a figure is printed in
	Opening      float64     // left between anvil and nest beside the part at the dead stop [mm]; 0: not known
	AnvilCloses  bool        // the weight of the anvil alone may close latches
	Ejection     bool        // the nest has a hole through which the product is pushed out
	Past         float64     // how far past the seat the anvil lands on the dead stops [mm]

	Coupons    bool    // test coupons are pressed, without nest or anvil
	Anvil      bool    // an anvil closes on the nest, with a dead stop
	AnvilHeld  bool    // the anvil hangs on the ram
	ToolMassKg float64 // of the heaviest tool [kg]

	RatedForce float64 // of the press [N]; 0: not known
	WorstForce float64 // at the worst tolerances [N]; 0: not known
}

// heavy is the mass from which a tool is called heavy [kg]: the scope of
// ISO 11228-1 on lifting begins there (memory).
const heavy = 3
