package method

import (
	"math"
	"strings"
	"testing"
)

func TestDemandFaults(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		want string // start of the fault
		d    Demand
	}{
		{"design_force: 0 N; must be above 0", with(func(d *Demand) { d.DesignForce = 0 })},
		{"design_force: 2e+06 N", with(func(d *Demand) { d.DesignForce = 2e6 })},
		{"p50: -1 N", with(func(d *Demand) { d.P50 = -1 })},
		{"worst: NaN N", with(func(d *Demand) { d.Worst = nan })},
		{"peak_force: -1 N", with(func(d *Demand) { d.PeakForce = -1 })},
		{"work: -1 mJ", with(func(d *Demand) { d.Work = -1 })},
		{"seat_force: +Inf N", with(func(d *Demand) { d.SeatForce = math.Inf(1) })},
		{"stroke: 1001 mm", with(func(d *Demand) { d.Stroke = 1001 })},
		{"rate_per_hour: 20001 an hour", with(func(d *Demand) { d.RatePerHour = 20001 })},
		{"hours_per_day: 25 h", with(func(d *Demand) { d.HoursPerDay = 25 })},
		{"action_seconds: 601 s", with(func(d *Demand) { d.ActionSeconds = 601 })},
		{"thrust.x: 31 mm; lies outside the nest", with(func(d *Demand) { d.Thrust.X = 31 })},
		{"thrust.y: -26 mm; lies outside the nest", with(func(d *Demand) { d.Thrust.Y = -26 })},
		{"thrust_wander: -1 mm", with(func(d *Demand) { d.ThrustWander = -1 })},
		{"nest_size[2]: -1 mm", with(func(d *Demand) { d.NestSize[2] = -1 })},
		{"anvil_height: NaN mm", with(func(d *Demand) { d.AnvilHeight = nan })},
		{"part_stack_height: -1 mm", with(func(d *Demand) { d.PartStackHeight = -1 })},
		{"anvil_mass: 101 kg", with(func(d *Demand) { d.AnvilMass = 101 })},
		{"upper_mass: -1 kg", with(func(d *Demand) { d.UpperMass = -1 })},
		{"shock_limit: -1 N", with(func(d *Demand) { d.ShockLimit = -1 })},
		{"joint_stiffness: NaN N/mm", with(func(d *Demand) { d.JointStiffness = nan })},
		{"jaw_thickness: -1 mm", with(func(d *Demand) { d.JawThickness = -1 })},
		{"anvil_bearing: NaN MPa", with(func(d *Demand) { d.AnvilBearing = nan })},
	} {
		faults := c.d.Validate()
		if len(faults) != 1 || !strings.HasPrefix(faults[0].Error(), c.want) {
			t.Errorf("want one fault %q, got %v", c.want, faults)
		}
		got := Choose(c.d, Bench{}, nil)
		if got.Chosen != None || !strings.HasPrefix(got.Reason.String(), "nothing was computed: demand."+strings.SplitN(c.want, ":", 2)[0]) {
			t.Errorf("%s: %s", c.want, got.Reason)
		}
		if f := Carries(ByHand, c.d, Bench{}); f != 0 {
			t.Errorf("%s: carries %g N", c.want, f)
		}
	}
}

// At each bound of a limit the demand that equals the capacity is kept, and a hair
// above it is not.
func TestLimitsHoldAtTheBound(t *testing.T) {
	press := Press{Name: "p", Rated: 10000, Ratio: 400, RamSquare: 30, DaylightMax: 138, RamStroke: 23, Throat: 25}
	b := Bench{Presses: []Press{press}, Without: []string{"mallet"}}
	base := with(func(d *Demand) {
		push(d, 900)
		d.Worst = 0
		// 25 nest + 10 parts + 20 anvil + 3 stroke + 10 to load = 68; reach 25.
	})
	for _, c := range []struct {
		name    string
		at, off func(*Demand)
	}{
		{"rated force with margin", func(d *Demand) { d.DesignForce = 6000 }, func(d *Demand) { d.DesignForce = 6000.01 }},
		{"worst case against the plate", func(d *Demand) { d.Worst = 10000 }, func(d *Demand) { d.Worst = 10000.01 }},
		{"daylight", func(d *Demand) { d.NestSize[2] = 95 }, func(d *Demand) { d.NestSize[2] = 95.001 }},
		{"ram stroke", func(d *Demand) { d.Stroke = 13 }, func(d *Demand) { d.Stroke = 13.001 }},
		{"throat", func(d *Demand) { d.NestSize[1] = 50 }, func(d *Demand) { d.NestSize[1] = 50.001 }},
		{"ram face", func(d *Demand) { d.ThrustWander = 15 }, func(d *Demand) { d.ThrustWander = 15.001 }},
	} {
		at, off := base, base
		c.at(&at)
		c.off(&off)
		if got := Choose(at, b, nil).option(ByPress); got.Verdict != Pass {
			t.Errorf("%s, at the bound: %s", c.name, got.Reason)
		}
		if got := Choose(off, b, nil).option(ByPress); got.Verdict != Fail || got.Governing != c.name {
			t.Errorf("%s, past the bound: %s by %s", c.name, got.Verdict, got.Governing)
		}
	}
	for _, c := range []struct {
		name    string
		m       Method
		at, off func(*Demand)
		worse   Verdict
	}{
		{"hand force", ByHand, func(d *Demand) { push(d, 80); d.Worst = 90 }, func(d *Demand) { push(d, 80.01); d.Worst = 90 }, Conditional},
		{"largest hand force", ByHand, func(d *Demand) { push(d, 149.25); d.Worst = 160 }, func(d *Demand) { push(d, 149.26); d.Worst = 160 }, Fail},
		{"repetition", ByMallet, func(d *Demand) { push(d, 240); d.RatePerHour = MalletRate }, func(d *Demand) { push(d, 240); d.RatePerHour = MalletRate + 0.01 }, Conditional},
		{"largest repetition", ByMallet, func(d *Demand) { push(d, 240); d.RatePerHour = MalletRateMax }, func(d *Demand) { push(d, 240); d.RatePerHour = MalletRateMax + 0.01 }, Fail},
	} {
		at, off := lid(), lid()
		c.at(&at)
		c.off(&off)
		a, o := Choose(at, Bench{}, nil).option(c.m), Choose(off, Bench{}, nil).option(c.m)
		if !a.Verdict.better(o.Verdict) || o.Verdict != c.worse || o.Governing != c.name {
			t.Errorf("%s: %s at the bound, %s past it by %s", c.name, a.Verdict, o.Verdict, o.Governing)
		}
	}
}
