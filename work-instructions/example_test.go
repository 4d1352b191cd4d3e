package workinstructions_test

import (
	"fmt"

	"ramnest/force/method"
	workinstructions "ramnest/work-instructions"
)

// Two brittle halves pushed together by hand: what has to be said of that.
func ExampleCautions() {
	for _, c := range workinstructions.Cautions(workinstructions.Facts{Method: method.ByHand, Brittle: true}) {
		fmt.Printf("%s %d: %s %s\n", c.Signal, c.Number, c.Hazard, c.Avoid[0])
	}
	// Output:
	// CAUTION 1: The palm or the fist used as a hammer. Push steadily. Never strike with palm or fist.
	// CAUTION 2: Pushing again and again strains thumb, hand and arm. Change hands or take turns.
	// CAUTION 3: The parts close on each other when the latches snap in. Keep fingertips away from the joint.
	// CAUTION 4: The parts are brittle: they break without a sign before, and throw fragments. Wear eye protection with side protection, also when you only look on.
	// CAUTION 5: A jam, a crack or a strange sound means that something gives way. Stop at once. Do not force it. Set it aside as a reject.
	// CAUTION 6: This sheet does not replace instruction, local law or the site's own assessment. Do this work only if you are trained for it and authorised, and a competent person has released the set-up.
	// NOTICE 7: The parts are brittle. Let cold parts come to room temperature first.
}
