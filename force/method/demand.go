package method

import (
	"fmt"
	"math"

	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/planar"
	"ramnest/force/unit"
)

// A Demand is what the joint, the parts and the line ask of a method. Zero means
// not known where a field says so; such a limit stays open.
type Demand struct {
	DesignForce float64 // force the method must give, P95 of the total unless the job says otherwise [N]; above 0, or 0 with NoP95
	Jammed      float64 // share of assemblies with a joint that jams [1]
	NoP95       bool    // so many jam that there is no design force
	Tilted      float64 // beside DesignForce, of both hands that roll a ring in from one edge [N]; own model; 0: does not apply
	P50, Worst  float64 // median and worst total over the tolerance draws [N]; 0: not known
	PeakForce   float64 // nominal peak of the total [N]; 0: not known
	Work        float64 // down to the seat, at the nominal force [mJ]; 0: not known
	SeatForce   float64 // still needed at the seat [N]
	Stroke      float64 // from first contact to the seat [mm]; 0: not known

	RatePerHour   float64 // assemblies an hour; 0: a default, listed
	HoursPerDay   float64 // hours of this and similar work a day [h]; 0: a default, listed
	ActionSeconds float64 // time force is given in one assembly [s]; 0: a default, listed

	Thrust       planar.Point // thrust line, from the centre of the nest's plan box [mm]
	ThrustWander float64      // how far it moves along the stroke [mm]

	NestSize        [3]float64 // x, y and height of the nest without tongue or foot [mm]; 0: not known
	AnvilHeight     float64    // below the ram [mm]; 0: not known
	PartStackHeight float64    // how far the seated parts stand above the nest [mm]; may be 0
	AnvilMass       float64    // [kg]; 0: not known
	UpperMass       float64    // of the part that moves [kg]

	Brittle, ShockSensitive, Electronics bool // of the parts
	Permanent                            bool // a latch cannot be opened again
	AcrossLayers                         bool // a latch bends across its printed layers

	ShockLimit     float64 // largest force a blow may put through the parts [N]; 0: not stated
	JointStiffness float64 // of parts and anvil under the blow [N/mm]; 0: not known

	JawThickness float64 // of the vise jaws under the flange of the nest [mm]; 0: a default, listed
	AnvilBearing float64 // contact pressure that the material of the anvil stands [MPa]; 0: not held against the ram
}

// Validate returns everything wrong with the demand.
func (d Demand) Validate() []fault.Fault {
	var out []fault.Fault
	bound := func(field string, x, lo, hi float64, unit string) {
		if !(x >= lo && x <= hi) {
			out = append(out, fault.Fault{Field: field, Given: fmt.Sprintf("%g %s", x, unit), Problem: "is out of range",
				Want: fmt.Sprintf("%g to %g %s", lo, hi, unit)})
		}
	}
	if !(d.DesignForce > 0 && d.DesignForce <= maxForce) && !(d.NoP95 && d.DesignForce == 0) {
		out = append(out, fault.Fault{Field: "design_force", Given: fmt.Sprintf("%g N", d.DesignForce), Problem: "must be above 0",
			Want: fmt.Sprintf("above 0, at most %g N", float64(maxForce))})
	}
	bound("jammed", d.Jammed, 0, 1, "")
	bound("tilted", d.Tilted, 0, maxForce, "N")
	bound("p50", d.P50, 0, maxForce, "N")
	bound("worst", d.Worst, 0, maxForce, "N")
	bound("peak_force", d.PeakForce, 0, maxForce, "N")
	bound("work", d.Work, 0, 1e9, "mJ")
	bound("seat_force", d.SeatForce, 0, maxForce, "N")
	bound("stroke", d.Stroke, 0, 1000, "mm")
	bound("rate_per_hour", d.RatePerHour, 0, 20000, "an hour")
	bound("hours_per_day", d.HoursPerDay, 0, 24, "h")
	bound("action_seconds", d.ActionSeconds, 0, 600, "s")
	bound("thrust.x", d.Thrust.X, -5000, 5000, "mm")
	bound("thrust.y", d.Thrust.Y, -5000, 5000, "mm")
	bound("thrust_wander", d.ThrustWander, 0, 5000, "mm")
	for i, s := range d.NestSize {
		bound(fmt.Sprintf("nest_size[%d]", i), s, 0, 5000, "mm")
	}
	bound("anvil_height", d.AnvilHeight, 0, 5000, "mm")
	bound("part_stack_height", d.PartStackHeight, 0, 5000, "mm")
	bound("anvil_mass", d.AnvilMass, 0, 100, "kg")
	bound("upper_mass", d.UpperMass, 0, 100, "kg")
	bound("shock_limit", d.ShockLimit, 0, 1e7, "N")
	bound("joint_stiffness", d.JointStiffness, 0, 1e9, "N/mm")
	bound("jaw_thickness", d.JawThickness, 0, 500, "mm")
	bound("anvil_bearing", d.AnvilBearing, 0, 1e4, "MPa")
	for i, t := range []float64{d.Thrust.X, d.Thrust.Y} {
		if s := d.NestSize[i]; s > 0 && math.Abs(t) > s/2 {
			out = append(out, fault.Fault{Field: "thrust." + string("xy"[i]), Given: fmt.Sprintf("%g mm", t), Problem: "lies outside the nest",
				Want: fmt.Sprintf("within %g mm of its centre", s/2)})
		}
	}
	return out
}

const maxForce = 1e6 // [N]; own: far above any manual press, keeps every product finite

// Defaults of the line [own]: the careful side of "not stated".
const (
	defaultRate   = 60 // assemblies an hour
	defaultHours  = 8  // a day [h]
	defaultAction = 1  // force in one assembly [s]
)

// filled puts the defaults of the line in and says which.
func (d Demand) filled() (Demand, []unit.Text) {
	var used []unit.Text
	if d.RatePerHour == 0 {
		d.RatePerHour = defaultRate
		used = append(used, unit.Textf("rate: %d an hour (none stated)", defaultRate))
	}
	if d.HoursPerDay == 0 {
		d.HoursPerDay = defaultHours
		used = append(used, unit.Textf("hours of this work a day: %d (none stated)", defaultHours))
	}
	if d.ActionSeconds == 0 {
		d.ActionSeconds = defaultAction
		used = append(used, unit.Textf("time under force in one assembly: %d s (none stated)", defaultAction))
	}
	return d, used
}

// WithResult is the demand with the forces of a computed joint put in; all else
// stays. It is how an [Alternative] comes from the demand of the joint as it is.
func (d Demand) WithResult(r force.Result) Demand {
	d.DesignForce, d.P50, d.Worst, d.PeakForce = r.Design, r.P50, r.Worst, r.Peak
	d.Jammed, d.NoP95, d.Tilted = r.Jammed, r.NoP95, r.Tilted
	d.Work, d.SeatForce, d.Stroke, d.ThrustWander = r.Work, r.SeatForce, r.Stroke, r.ThrustWander
	return d
}

// atForce is the demand with another design force; the worst case goes along in
// proportion, and so does the work through workAtDesign.
func (d Demand) atForce(f float64) Demand {
	d.Worst *= f / d.DesignForce
	d.Tilted *= f / d.DesignForce
	d.DesignForce = f
	return d
}

// workAtDesign scales the nominal work to the design force [mJ].
func (d Demand) workAtDesign() float64 {
	if d.PeakForce > 0 && d.DesignForce > d.PeakForce {
		return d.Work * d.DesignForce / d.PeakForce
	}
	return d.Work
}
