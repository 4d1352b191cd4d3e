package method_test

import (
	"fmt"

	"ramnest/force/method"
)

// A lid that needs 60 N is pushed home by hand twelve times an hour, and not on a line.
func ExampleChoose() {
	lid := method.Demand{DesignForce: 60, Work: 90, Stroke: 3, ActionSeconds: 1, RatePerHour: 12, HoursPerDay: 1}
	fmt.Println(method.Choose(lid, method.Bench{}, nil).Reason)
	lid.RatePerHour, lid.HoursPerDay = 360, 7.5
	fmt.Println(method.Choose(lid, method.Bench{}, nil).Reason)
	// Output:
	// by hand: both palms, standing, within every limit; the nearest is hand force, 60 of 80 N (partly our own figure)
	// arbor press: 0.5 ton class, one hand on the lever, within every limit; the nearest is lever effort, 7.06 of 14.5 N. Not known yet: daylight, throat
}

// The worked example of a batch: once a minute for an hour and a half, both palms.
func ExampleZoneOf() {
	z, _ := method.ZoneOf(method.BodyPush, 60, 1, 1.5)
	fmt.Printf("reduced %.1f N, recommended to %.1f N, avoid above %.1f N\n", z.Reduced, z.Recommended, z.Avoid)
	// Output: reduced 102.4 N, recommended to 51.2 N, avoid above 71.7 N
}
