package method_test

import (
	"fmt"

	"ramnest/force"
	"ramnest/force/method"
	"ramnest/force/unit"
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

// What 30 N with both palms means on a line: how much of it one person may do.
func ExampleShiftOf() {
	s, _ := method.ShiftOf(30, method.BodyPush, 360, 1, 7.5)
	fmt.Printf("%d a shift, %g an hour, %g s between two; %d people, by %s\n", s.PerShift, s.PerHour, s.Rest, s.People, s.By)
	// Output: 900 a shift, 120 an hour, 29 s between two; 3 people, by EN 1005-3
}

// What the dead stops have to stand: one person who leans on the lever.
func ExampleStopForce() {
	for _, p := range method.GenericPresses()[2:4] {
		fmt.Printf("%s: rated %.0f N, a person gives %.0f N, stops for %.0f N\n", p.Name, p.Rated, method.LeverMost(p), method.StopForce(p))
	}
	// Output:
	// 2 ton class: rated 17793 N, a person gives 22948 N, stops for 17793 N
	// 3 ton class: rated 26689 N, a person gives 25242 N, stops for 25242 N
}

// The caller computes the joint with one thing changed; the package says what each
// change allows, what helps most first.
func ExampleDecision_Advised() {
	d := method.Demand{DesignForce: 900, Stroke: 3, Brittle: true, RatePerHour: 360, HoursPerDay: 7.5}
	staggered := d.WithResult(force.Result{Design: 380, P50: 340, Worst: 450, Peak: 350, Work: 600, Stroke: 5})
	greased := d.WithResult(force.Result{Design: 620, P50: 560, Worst: 700, Peak: 580, Work: 900, Stroke: 3})
	decision := method.Choose(d, method.Bench{}, nil).Advised(d, 60, method.Bench{}, []method.Alternative{
		{Change: method.Lubricate, What: unit.Say("friction 0.3 instead of 0.6"), Demand: greased, Holds: 40},
		{Change: method.StaggerDepths, What: unit.Say("hooks 2 mm later"), Demand: staggered, Holds: 60},
		{Change: method.SlotCollar, Undone: "there is no collar"},
	})
	for _, o := range decision.Alternatives {
		fmt.Println(o.Text)
	}
	// Output:
	// stagger depths, hooks 2 mm later: 380 N instead of 900 N (-58 %), arbor press passes; it comes apart at 60 N
	// lubricated friction, friction 0.3 instead of 0.6: 620 N instead of 900 N (-31 %), arbor press if an ergonomist agrees; it comes apart at 40 N instead of 60 N
	// slots in the collar: not worked out, there is no collar
}
