package force

import (
	"fmt"
	"math"

	"ramnest/force/fault"
	"ramnest/force/planar"
)

// A Cantilever is a hook on an arm that bends aside and springs back.
type Cantilever struct {
	Flexes string         `yaml:"flexes" oneof:"lower upper" required:"true"`   // the part whose arm bends
	Bends  string         `yaml:"bends" oneof:"outward inward" required:"true"` // away from the middle of the part or towards it
	Shape  string         `yaml:"shape" oneof:"straight l_arm u_arm rocker"`    // left out: straight
	Toward []planar.Point `yaml:"toward" unit:"none"`                           // plan direction of "outward", one for all places or one each; left out: away from the plan's origin

	Undercut    float64  `yaml:"undercut" unit:"mm" required:"true"`      // how far the hook must bend aside [mm]
	UndercutTol *float64 `yaml:"undercut_tol" unit:"mm"`                  // plus or minus [mm]; left out: both parts' process tolerance
	MatingAngle float64  `yaml:"mating_angle" unit:"deg" required:"true"` // of the lead-in flank to the press axis [rad]
	ReturnAngle float64  `yaml:"return_angle" unit:"deg" required:"true"` // of the holding flank to the press axis [rad]
	Land        float64  `yaml:"land" unit:"mm"`                          // flat crest between the flanks [mm]; 0 if left out
	LeadIn      string   `yaml:"lead_in" oneof:"hook mate"`               // which of the two carries the lead-in flank; left out: the hook, whose flank leans as the arm bends

	Length       float64  `yaml:"length" unit:"mm" required:"true"` // of the arm, root to hook; of the leg of a u_arm; lever of a rocker [mm]
	Thickness    float64  `yaml:"thickness" unit:"mm"`              // at the root, in the direction of bending [mm]; not for a rocker
	ThicknessTol *float64 `yaml:"thickness_tol" unit:"mm"`          // plus or minus [mm]; left out: half the floor of the process tolerance
	TipThickness float64  `yaml:"tip_thickness" unit:"mm"`          // [mm]; 0 or left out: as at the root
	Width        float64  `yaml:"width" unit:"mm"`                  // at the root [mm]; not for ring_segment and rocker
	TipWidth     float64  `yaml:"tip_width" unit:"mm"`              // [mm]; 0 or left out: as at the root

	Section     string  `yaml:"section" oneof:"rectangle trapezoid ring_segment"` // left out: rectangle
	NarrowWidth float64 `yaml:"narrow_width" unit:"mm"`                           // trapezoid: the narrow face; width is the wide one [mm]
	Tension     string  `yaml:"tension" oneof:"wide narrow"`                      // trapezoid: the face that the mate pushes on, in tension
	OuterRadius float64 `yaml:"outer_radius" unit:"mm"`                           // ring_segment [mm]; its thickness is the difference
	InnerRadius float64 `yaml:"inner_radius" unit:"mm"`                           // ring_segment [mm]
	Arc         float64 `yaml:"arc" unit:"deg"`                                   // ring_segment: its whole angle [rad]

	BaseLength    float64 `yaml:"base_length" unit:"mm"`         // l_arm: of the strip that the arm stands on [mm]
	BaseThickness float64 `yaml:"base_thickness" unit:"mm"`      // l_arm [mm]
	BendRadius    float64 `yaml:"bend_radius" unit:"mm"`         // u_arm: mean radius [mm]
	BendSide      string  `yaml:"bend_side" oneof:"away toward"` // u_arm: where the bend lies, away from the mate that comes (left out; it needs more force) or toward it
	BarRadius     float64 `yaml:"bar_radius" unit:"mm"`          // rocker: of the torsion bars [mm]
	BarLength     float64 `yaml:"bar_length" unit:"mm"`          // rocker: of one bar [mm]
	Bars          int     `yaml:"bars" unit:"none"`              // rocker: 1 or 2; 0 or left out: 2

	Base       string   `yaml:"base" oneof:"rigid solid"` // straight arm: rigid (left out), or a solid block that yields a little
	BaseFactor *float64 `yaml:"base_factor" unit:"none"`  // Q, measured or from a chart; instead of base
	RootRadius *float64 `yaml:"root_radius" unit:"mm"`    // fillet at the root, on the tensile face [mm]; left out: taken as sharp, 0.1 of the thickness
}

// shape is the arm's shape with its default.
func (c Cantilever) shape() string {
	if c.Shape == "" {
		return "straight"
	}
	return c.Shape
}

// Validate returns what is wrong with the joint, field paths relative to it.
func (c Cantilever) Validate() []fault.Fault {
	out := sideFault("flexes", c.Flexes)
	out = append(out, choiceFault("bends", c.Bends, "outward", "inward")...)
	out = append(out, choiceFault("shape", c.shape(), "straight", "l_arm", "u_arm", "rocker")...)
	out = append(out, lengthFault("length", c.Length, 0.5, 500)...)
	if len(out) > 0 {
		return out
	}
	out = append(out, lengthFault("undercut", c.Undercut, smallest, 0.5*c.Length)...)
	if c.UndercutTol != nil {
		out = append(out, lengthFault("undercut_tol", *c.UndercutTol, 0, 0.5*c.Length)...)
	}
	out = append(out, angleFault("mating_angle", c.MatingAngle, 2, 80)...)
	out = append(out, angleFault("return_angle", c.ReturnAngle, 2, 90)...)
	out = append(out, lengthFault("land", c.Land, 0, 100)...)
	if c.LeadIn != "" {
		out = append(out, choiceFault("lead_in", c.LeadIn, "hook", "mate")...)
	}
	for i, p := range c.Toward {
		if n := math.Hypot(p.X, p.Y); !within(n, 1e-6, 1e6) {
			out = append(out, fault.Fault{Field: fmt.Sprintf("toward[%d]", i), Given: fmt.Sprintf("%.6g, %.6g", p.X, p.Y),
				Problem: "is no direction", Want: "such as 1, 0"})
		}
	}
	out = append(out, c.armFaults()...)
	if c.RootRadius != nil && len(out) == 0 {
		out = append(out, lengthFault("root_radius", *c.RootRadius, 0.02*c.thickness(), c.thickness())...)
	}
	if c.Base != "" {
		out = append(out, choiceFault("base", c.Base, "rigid", "solid")...)
		if c.shape() != "straight" {
			out = append(out, fault.Fault{Field: "base", Given: c.Base, Problem: "is for straight arms only", Want: "left out"})
		}
	}
	if q := c.BaseFactor; q != nil && !within(*q, 1, 20) {
		out = append(out, fault.Fault{Field: "base_factor", Given: fmt.Sprintf("%.6g", *q), Problem: "is outside what a base can do",
			Want: "1 to 20"})
	}
	if c.BaseFactor != nil && c.Base != "" {
		out = append(out, fault.Fault{Field: "base_factor", Given: fmt.Sprintf("%.6g", *c.BaseFactor), Problem: "stands beside base",
			Want: "one of the two"})
	}
	return out
}

// armFaults checks the dimensions of the arm by shape and section.
func (c Cantilever) armFaults() []fault.Fault {
	if c.shape() == "rocker" {
		out := lengthFault("bar_radius", c.BarRadius, 0.1, 50)
		out = append(out, lengthFault("bar_length", c.BarLength, 0.1, 500)...)
		if c.Bars != 0 {
			out = append(out, countFault("bars", c.Bars, 1, 2)...)
		}
		return out
	}
	section := c.Section
	if section == "" {
		section = "rectangle"
	}
	out := choiceFault("section", section, "rectangle", "trapezoid", "ring_segment")
	if section == "ring_segment" {
		out = append(out, lengthFault("outer_radius", c.OuterRadius, 0.2, 1000)...)
		out = append(out, lengthFault("inner_radius", c.InnerRadius, 0, c.OuterRadius*0.998)...)
		out = append(out, angleFault("arc", c.Arc, 2, 180)...)
		if c.TipThickness != 0 || c.TipWidth != 0 {
			out = append(out, fault.Fault{Field: "tip_thickness", Problem: "is not for a ring segment", Want: "left out"})
		}
		if c.shape() != "straight" {
			out = append(out, fault.Fault{Field: "section", Given: section, Problem: "is for straight arms only", Want: "rectangle or trapezoid"})
		}
		return out
	}
	thick := lengthFault("thickness", c.Thickness, 0.05, c.Length)
	width := lengthFault("width", c.Width, 0.05, 1000)
	out = append(append(out, thick...), width...)
	if c.ThicknessTol != nil && len(thick) == 0 {
		out = append(out, lengthFault("thickness_tol", *c.ThicknessTol, 0, c.Thickness/2)...)
	}
	if c.TipThickness != 0 && len(thick) == 0 {
		out = append(out, lengthFault("tip_thickness", c.TipThickness, 0.1*c.Thickness, 2*c.Thickness)...)
	}
	if c.TipWidth != 0 && len(width) == 0 {
		out = append(out, lengthFault("tip_width", c.TipWidth, 0.1*c.Width, 4*c.Width)...)
	}
	if section == "trapezoid" {
		out = append(out, choiceFault("tension", c.Tension, "wide", "narrow")...)
		out = append(out, lengthFault("narrow_width", c.NarrowWidth, 0.05, c.Width)...)
	}
	switch c.shape() {
	case "l_arm":
		out = append(out, lengthFault("base_length", c.BaseLength, 0.1, 500)...)
		out = append(out, lengthFault("base_thickness", c.BaseThickness, 0.05, 500)...)
	case "u_arm":
		out = append(out, lengthFault("bend_radius", c.BendRadius, c.Thickness/2, 500)...)
		if c.BendSide != "" {
			out = append(out, choiceFault("bend_side", c.BendSide, "away", "toward")...)
		}
	}
	if c.shape() != "straight" && (c.TipThickness != 0 || c.TipWidth != 0) {
		out = append(out, fault.Fault{Field: "tip_thickness", Problem: "is for straight arms only", Want: "left out"})
	}
	return out
}

// hookSizing is the undercut of a hook with its tolerance: one face of either part, not
// a diameter.
func hookSizing(undercut float64, tol *float64, length float64, arm, mate Material) sizing {
	s := sizing{size: undercut}
	s.tolerance(tol, arm, mate, length)
	if tol == nil {
		s.outer, s.inner, s.worst = s.outer/2, s.inner/2, s.worst/2
	}
	return s
}

// ready makes the joint ready to be evaluated. The mate is taken as rigid.
func (c Cantilever) ready(arm, mate Material, use string) joint {
	a := c.spring(arm)
	s := hookSizing(c.Undercut, c.UndercutTol, c.Length, arm, mate)
	strain, limit := a.governs(arm.PermittedAxial(use).Value, arm.PermittedHoop(use).Value)
	j := joint{
		strained: "bending of the arm, with the root's concentration", arm: true, path: hump, outerIsLower: c.Flexes == "lower",
		size: s.size, drawn: s.size, half: 1, fromOuter: s.outer, fromInner: s.inner, worst: s.worst,
		alpha: c.MatingAngle, back: c.ReturnAngle, land: c.Land,
		outer: member{stiffness: a.stiffness, strain: strain, limit: limit, wall: wallShare(c.ThicknessTol, arm, c.thickness()), law: armWall},
		inner: member{limit: 1},
	}
	if c.shape() == "rocker" {
		j.outer.law, j.strained = barWall, "shear of the torsion bars over 1 + nu, with the root's concentration"
	}
	// The secant modulus follows the nominal strain, not that in the fillet.
	reserve := bodyReserve
	if c.shape() == "rocker" {
		reserve = barReserve
	}
	j.outer = j.outer.follow(arm, max(a.root, a.axial, a.across), reserve)
	j.thin = thinness(arm, c.thickness())
	// With its bend toward the mate the free leg of a U turns the other way and needs
	// less force: not credited.
	if c.shape() != "u_arm" || c.BendSide != "toward" {
		j.rotation, j.turning = a.slope, a.turn-a.slope
		j.lever = a.lever(c, s.size)
		j.upright = c.LeadIn == "mate"
	}
	j.unsure = a.unsure
	j.modelUp, j.modelDown = math.Log(armModel), math.Log(max(armModel, a.solid/a.q)*farBent(c.Undercut/c.Length))
	j.stroke = s.size/math.Tan(c.MatingAngle) + c.Land
	if c.ReturnAngle < math.Pi/2-1e-6 {
		j.stroke += s.size / math.Tan(c.ReturnAngle)
	}
	return j
}

// armModel is the ratio that stands for the model error of an arm upward, and at
// least downward, two standard deviations; common practice, no source.
const armModel = 1.15

// swing is the room the arm needs, and which way it goes at each place.
func (c Cantilever) swing(l *Latch, _ float64, _ Material) Swing {
	z, at := l.Z, l.At
	hook := c.Undercut/math.Tan(c.MatingAngle) + c.Land
	reach := c.Length
	switch {
	case c.shape() == "rocker":
		reach = hook
	case c.shape() == "u_arm":
		reach += c.BendRadius + c.Thickness/2
		if c.BendSide == "toward" {
			reach, hook = hook, max(hook, reach)
		}
	}
	s := Swing{Part: c.Flexes, Width: c.Width, ZLow: z - reach, ZHigh: z + hook}
	if c.Flexes == "upper" {
		s.ZLow, s.ZHigh = z-hook, z+reach
	}
	switch {
	case c.shape() == "rocker":
		s.Width = 2 * c.BarRadius
	case c.Section == "ring_segment":
		s.Width = 2 * c.OuterRadius * math.Sin(c.Arc/2)
	}
	s.Outward = c.Undercut
	if c.Bends == "inward" {
		s.Outward, s.Inward = 0, c.Undercut
	}
	for i, p := range at {
		d := p
		switch {
		case len(c.Toward) == 1:
			d = c.Toward[0]
		case i < len(c.Toward):
			d = c.Toward[i]
		}
		if n := math.Hypot(d.X, d.Y); n > 1e-9 {
			d = planar.Point{X: d.X / n, Y: d.Y / n}
		} else {
			d = planar.Point{X: 1, Y: 0}
		}
		s.Toward = append(s.Toward, d)
	}
	return s
}
