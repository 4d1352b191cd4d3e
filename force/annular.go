package force

import (
	"math"

	"ramnest/force/fault"
)

// An Annular is a bead that snaps into a groove all the way round, or round a
// collar that is split into fingers.
type Annular struct {
	Outside       string  `yaml:"outside" oneof:"lower upper" required:"true"` // the part whose tube is outside
	JointDiameter float64 `yaml:"joint_diameter" unit:"mm" required:"true"`    // at the joint [mm]

	// The undercut is written directly, or as two diameters.
	Undercut     float64  `yaml:"undercut" unit:"mm"`      // DIAMETRAL: bead diameter less the diameter it passes [mm]
	UndercutTol  *float64 `yaml:"undercut_tol" unit:"mm"`  // plus or minus, diametral [mm]; left out: both parts' process tolerance
	BeadDiameter float64  `yaml:"bead_diameter" unit:"mm"` // over the bead of the inner part [mm]
	BeadTol      *float64 `yaml:"bead_tol" unit:"mm"`      // plus or minus [mm]; left out: the process tolerance
	LipDiameter  float64  `yaml:"lip_diameter" unit:"mm"`  // inside the lip of the outer part that the bead passes [mm]
	LipTol       *float64 `yaml:"lip_tol" unit:"mm"`       // plus or minus [mm]; left out: the process tolerance

	MatingAngle float64 `yaml:"mating_angle" unit:"deg" required:"true"` // of the lead-in flank to the press axis [rad]
	ReturnAngle float64 `yaml:"return_angle" unit:"deg" required:"true"` // of the holding flank to the press axis [rad]
	Land        float64 `yaml:"land" unit:"mm"`                          // flat crest between the flanks [mm]; 0 if left out
	GrooveFloat float64 `yaml:"groove_float" unit:"mm"`                  // axial play of the bead in its groove [mm]; 0 if left out

	OuterDiameter float64  `yaml:"outer_diameter" unit:"mm" required:"true"` // of the outer tube [mm]
	InnerDiameter float64  `yaml:"inner_diameter" unit:"mm"`                 // bore of the inner part [mm]; 0 or left out: solid
	WallTol       *float64 `yaml:"wall_tol" unit:"mm"`                       // plus or minus on either wall [mm]; left out: half the floor of the process tolerance

	EndDistance      float64  `yaml:"end_distance" unit:"mm" required:"true"` // of the joint from the outer tube's free end [mm]
	EndDistanceInner *float64 `yaml:"end_distance_inner" unit:"mm"`           // of the joint from the inner part's free end [mm]; left out: remote, the stiffer case
	FarEnd           string   `yaml:"far_end" oneof:"long free floored"`      // of the outer tube; left out: long
	FarDistance      float64  `yaml:"far_distance" unit:"mm"`                 // of the joint from that end [mm]; needed unless long
	FarEndInner      string   `yaml:"far_end_inner" oneof:"long free floored"`
	FarDistanceInner float64  `yaml:"far_distance_inner" unit:"mm"`

	// A split collar: slots from its free end make fingers of one member.
	Split     string  `yaml:"split" oneof:"none outer inner"` // which member is slotted; left out: none
	Slots     int     `yaml:"slots" unit:"none"`              // number of slots, and of fingers
	SlotWidth float64 `yaml:"slot_width" unit:"mm"`           // [mm]
	SlotDepth float64 `yaml:"slot_depth" unit:"mm"`           // from the free end [mm]
}

// Validate returns what is wrong with the joint, field paths relative to it.
func (a Annular) Validate() []fault.Fault {
	out := sideFault("outside", a.Outside)
	joint := lengthFault("joint_diameter", a.JointDiameter, 0.5, 2000)
	out = append(out, joint...)
	if len(joint) > 0 {
		return out
	}
	d := a.JointDiameter
	out = append(out, a.undercutFaults()...)
	out = append(out, angleFault("mating_angle", a.MatingAngle, 2, 80)...)
	out = append(out, angleFault("return_angle", a.ReturnAngle, 2, 90)...)
	out = append(out, lengthFault("land", a.Land, 0, 100)...)
	out = append(out, lengthFault("groove_float", a.GrooveFloat, 0, 100)...)
	out = append(out, lengthFault("outer_diameter", a.OuterDiameter, 1.002*d, 20*d)...)
	out = append(out, lengthFault("inner_diameter", a.InnerDiameter, 0, 0.998*d)...)
	if a.WallTol != nil {
		out = append(out, lengthFault("wall_tol", *a.WallTol, 0, maxLength)...)
	}
	out = append(out, lengthFault("end_distance", a.EndDistance, 0, maxLength)...)
	if a.EndDistanceInner != nil {
		out = append(out, lengthFault("end_distance_inner", *a.EndDistanceInner, 0, maxLength)...)
	}
	out = append(out, farFault("", a.FarEnd, a.FarDistance)...)
	out = append(out, farFault("_inner", a.FarEndInner, a.FarDistanceInner)...)
	if len(out) > 0 {
		return out
	}
	return a.splitFaults()
}

// undercutFaults checks the two ways to write the undercut.
func (a Annular) undercutFaults() []fault.Fault {
	d := a.JointDiameter
	direct, diameters := a.Undercut != 0 || a.UndercutTol != nil, a.BeadDiameter != 0 || a.LipDiameter != 0
	if direct == diameters {
		if direct {
			return []fault.Fault{{Field: "undercut", Problem: "is written in more than one way",
				Want: "undercut, or bead_diameter with lip_diameter"}}
		}
		return []fault.Fault{{Field: "undercut", Problem: "is missing", Want: "undercut, or bead_diameter with lip_diameter"}}
	}
	if direct {
		out := lengthFault("undercut", a.Undercut, smallest, 0.2*d)
		if a.UndercutTol != nil {
			out = append(out, lengthFault("undercut_tol", *a.UndercutTol, 0, 0.2*d)...)
		}
		return out
	}
	out := lengthFault("lip_diameter", a.LipDiameter, 0.8*d, 1.2*d)
	if len(out) == 0 {
		out = lengthFault("bead_diameter", a.BeadDiameter, a.LipDiameter+smallest, a.LipDiameter+0.2*d)
	}
	if a.BeadTol != nil {
		out = append(out, lengthFault("bead_tol", *a.BeadTol, 0, 0.2*d)...)
	}
	if a.LipTol != nil {
		out = append(out, lengthFault("lip_tol", *a.LipTol, 0, 0.2*d)...)
	}
	return out
}

func (a Annular) splitFaults() []fault.Fault {
	switch a.Split {
	case "", "none":
		if a.Slots != 0 || a.SlotWidth != 0 || a.SlotDepth != 0 {
			return []fault.Fault{{Field: "split", Given: a.Split, Problem: "says no member is slotted, but slots are given", Want: "outer or inner"}}
		}
		return nil
	case "outer", "inner":
	default:
		return []fault.Fault{{Field: "split", Given: a.Split, Problem: "is not known", Want: "none, outer or inner"}}
	}
	if a.Split == "inner" && a.InnerDiameter == 0 {
		return []fault.Fault{{Field: "inner_diameter", Given: "0 mm", Problem: "is needed for a split inner collar",
			Want: "the bore of the collar"}}
	}
	f := a.fingers()
	out := fingerFaults("", f)
	from := a.EndDistance
	if a.Split == "inner" {
		if a.EndDistanceInner == nil {
			return append(out, fault.Fault{Field: "end_distance_inner", Problem: "is missing",
				Want: "the distance of the joint from the inner part's free end"})
		}
		from = *a.EndDistanceInner
	}
	return append(out, lengthFault("slot_depth", a.SlotDepth, from+(f.outer-f.inner)/2, maxLength)...)
}

func (a Annular) fingers() fingers {
	f := fingers{count: a.Slots, inner: a.JointDiameter / 2, outer: a.OuterDiameter / 2, slot: a.SlotWidth, reach: a.SlotDepth - a.EndDistance,
		outward: true}
	if a.Split == "inner" {
		f.inner, f.outer, f.outward = a.InnerDiameter/2, a.JointDiameter/2, false
		if a.EndDistanceInner != nil {
			f.reach = a.SlotDepth - *a.EndDistanceInner
		}
	}
	return f
}

func farFault(suffix, end string, distance float64) []fault.Fault {
	switch end {
	case "", "long":
		return nil
	case "free", "floored":
		return lengthFault("far_distance"+suffix, distance, 0.01, maxLength)
	}
	return []fault.Fault{{Field: "far_end" + suffix, Given: end, Problem: "is not known", Want: "long, free or floored"}}
}

func farEnd(s string) FarEnd {
	switch s {
	case "free":
		return Free
	case "floored":
		return Floored
	}
	return Long
}

// outerTube is the outer member seen as a shell, under the bead.
func (a Annular) outerTube(m Material) Tube { return a.outerLine(m).bearing(a.beadWidth()) }

// innerTube is the inner member seen as a shell, under the bead.
func (a Annular) innerTube(m Material) Tube { return a.innerLine(m).bearing(a.beadWidth()) }

// outerLine is the outer member under a load on a line, as the guide has it.
func (a Annular) outerLine(m Material) Tube {
	wall := (a.OuterDiameter - a.JointDiameter) / 2
	return Tube{Radius: (a.OuterDiameter + a.JointDiameter) / 4, Wall: wall, Modulus: m.Modulus.Value, Poisson: m.Poisson.Value,
		Mouth: a.EndDistance, Beyond: a.FarDistance, Far: farEnd(a.FarEnd)}
}

// beadWidth is how wide the bead bears, halfway up its flanks, c [mm].
//
//	c = land + (h/2) (cot alpha + cot alpha'),  h: undercut, radial
//
// Source: own, geometry.
func (a Annular) beadWidth() float64 {
	h := a.Undercut / 2
	if a.BeadDiameter != 0 {
		h = (a.BeadDiameter - a.LipDiameter) / 2
	}
	return a.Land + h/2*(1/math.Tan(a.MatingAngle)+max(0, 1/math.Tan(a.ReturnAngle)))
}

// bearing is the tube under a bead so wide. A narrower bead than half a wall, in a
// thick member 0.4 of its radius, makes the face give more, which is not credited: the
// bead may be part of the member. A bead wider than its distance from the mouth
// begins there; it takes up at most half of a short ring. Source: own.
func (t Tube) bearing(width float64) Tube {
	t.Band = max(width, min(t.Wall/2, 0.4*t.Radius))
	if t.Far != Long {
		t.Band = min(t.Band, (t.Mouth+t.Beyond)/2)
	}
	if shift := t.Band/2 - t.Mouth; shift > 0 {
		t.Mouth, t.Beyond = t.Mouth+shift, max(0, t.Beyond-shift)
	}
	return t
}

// innerLine is the inner member under a load on a line.
func (a Annular) innerLine(m Material) Tube {
	t := Tube{Radius: (a.JointDiameter + a.InnerDiameter) / 4, Wall: (a.JointDiameter - a.InnerDiameter) / 2, Modulus: m.Modulus.Value,
		Poisson: m.Poisson.Value, Mouth: maxLength, Beyond: a.FarDistanceInner, Far: farEnd(a.FarEndInner)}
	if a.EndDistanceInner != nil {
		t.Mouth = *a.EndDistanceInner
	}
	return t
}

// guideRatio is the governing stiffness over the guide's, both members in series.
// A slotted member has no figure in the guide and counts as 1.
func (a Annular) guideRatio(outer, inner Material, ko, ki float64) float64 {
	d := a.JointDiameter
	ro, ri, lo, li := 1.0, 1.0, ko, ki
	if a.Split != "outer" {
		t := a.outerLine(outer)
		ro, _, _, _ = GuideRatio(t, a.OuterDiameter, d, true, d, GeometricFactorOuter(d, a.OuterDiameter, outer.Poisson.Value))
		lo = RingStiffness(t, a.OuterDiameter, d, true)
	}
	if a.Split != "inner" {
		t := a.innerLine(inner)
		ri, _, _, _ = GuideRatio(t, d, a.InnerDiameter, false, d, GeometricFactorInner(d, a.InnerDiameter, inner.Poisson.Value))
		li = RingStiffness(t, d, a.InnerDiameter, false)
	}
	return (ro/lo + ri/li) / (1/ko + 1/ki)
}

func (a Annular) sizing(outer, inner Material) sizing {
	s := sizing{d: a.JointDiameter, size: a.Undercut}
	if a.BeadDiameter == 0 {
		s.tolerance(a.UndercutTol, outer, inner, s.d)
		if a.UndercutTol == nil {
			s.hole(outer, s.d)
		}
		return s
	}
	s.size, s.outer, s.inner = a.BeadDiameter-a.LipDiameter, outer.ToleranceOn(a.LipDiameter), inner.ToleranceOn(a.BeadDiameter)
	if a.LipTol != nil {
		s.outer = *a.LipTol
	} else {
		s.hole(outer, a.LipDiameter)
	}
	if a.BeadTol != nil {
		s.inner = *a.BeadTol
	}
	s.worst = s.outer + s.inner
	return s
}

// wallShare is the plus or minus on a wall, share of it.
func wallShare(stated *float64, m Material, wall float64) float64 {
	t := m.WallTolerance()
	if stated != nil {
		t = *stated
	}
	return min(mostWall, t/wall)
}

// mostWall bounds the tolerance of a wall, share of it: a wall that may vanish
// is no wall.
const mostWall = 0.5

// ready makes the joint ready to be evaluated.
func (a Annular) ready(outer, inner Material, use string) joint {
	to, ti := a.outerTube(outer), a.innerTube(inner)
	s := a.sizing(outer, inner)
	d := a.JointDiameter
	j := joint{
		path: hump, outerIsLower: a.Outside == "lower",
		size: s.size, drawn: s.drawn(), half: 0.5, fromOuter: s.outer, fromInner: s.inner, worst: s.worst, hold: s.hold,
		alpha: a.MatingAngle, back: a.ReturnAngle, land: a.Land,
		outer: member{stiffness: RingStiffness(to, a.OuterDiameter, d, true), strain: 2 / d, limit: outer.PermittedHoop(use).Value,
			wall: wallShare(a.WallTol, outer, to.Wall)}.follow(outer, 2/d, bodyReserve),
		inner: member{stiffness: RingStiffness(ti, d, a.InnerDiameter, false), strain: 2 / d, limit: inner.PermittedHoop(use).Value,
			wall: wallShare(a.WallTol, inner, ti.Wall)}.follow(inner, 2/d, bodyReserve),
	}
	switch a.Split {
	case "outer":
		j.outer = a.fingers().soften(j.outer, outer, use)
	case "inner":
		j.inner = a.fingers().soften(j.inner, inner, use)
	}
	wo, wi := 1/j.outer.stiffness, 1/j.inner.stiffness
	lo, li := RingLever(to, a.OuterDiameter, d, true), RingLever(ti, d, a.InnerDiameter, false)
	if j.outer.law == armWall {
		lo = a.fingers().lever(s.size / 2)
	}
	if j.inner.law == armWall {
		li = a.fingers().lever(s.size / 2)
	}
	j.lever = (max(0, lo)*wo + max(0, li)*wi) / (wo + wi)
	// The guide widens the band on the side on which it lies: where it is above
	// the governing model, the design force must know.
	ratio := math.Log(a.guideRatio(outer, inner, j.outer.stiffness, j.inner.stiffness))
	up := math.Log(seriesModel(to, ti, j.outer.stiffness, j.inner.stiffness) * a.beadModel(outer, inner, j.outer.stiffness, j.inner.stiffness))
	j.modelUp = max(up, -ratio)
	j.modelDown = max(math.Log(ringModel), ratio)
	if j.outer.law == armWall || j.inner.law == armWall {
		j.modelDown = max(j.modelDown, math.Log(a.fingers().baseFactor()))
		f, slotted := a.fingers(), outer
		if a.Split == "inner" {
			slotted = inner
		}
		j.thin = thinness(slotted, f.outer-f.inner)
	}
	j.stroke = s.size/2/math.Tan(a.MatingAngle) + a.Land + a.GrooveFloat
	if a.ReturnAngle < math.Pi/2-1e-6 {
		j.stroke += s.size / 2 / math.Tan(a.ReturnAngle)
	}
	return j
}

// ringModel is the ratio that stands for the model error of a ring upward, and at
// least downward, two standard deviations; common practice, no source. It covers
// the finite elements of the tests up to thickWall.
const ringModel = 1.15

// memberModel is ringModel of a wall of t/R; thicker than thickWall the stiffness
// depends on how wide the bead bears: a solid pin is a third stiffer under a band of
// a quarter of its diameter than under one of an eighth. Source: own, the finite
// elements of the tests.
func memberModel(t Tube) float64 {
	return ringModel + 0.2*max(0, t.Wall/t.Radius-thickWall)
}

// seriesModel is the model error of two members in series.
func seriesModel(outer, inner Tube, ko, ki float64) float64 {
	return (1/ko + 1/ki) / (1/(ko*memberModel(outer)) + 1/(ki*memberModel(inner)))
}

// beadModel is how much the bead may stiffen the member that carries it, as a hoop
// of its section at the joint, 2 pi E A/r. Which one carries it the job does not
// say; a groove would weaken it.
func (a Annular) beadModel(outer, inner Material, ko, ki float64) float64 {
	h := a.sizing(outer, inner).size / 2
	area := h * (a.Land + h/2*(1/math.Tan(a.MatingAngle)+1/math.Tan(a.ReturnAngle)))
	hoop := 4 * math.Pi * area / a.JointDiameter
	plain := 1/ko + 1/ki
	return max(plain/(1/(ko+hoop*outer.Modulus.Value)+1/ki), plain/(1/ko+1/(ki+hoop*inner.Modulus.Value)))
}

// swing is the room the outer tube needs while the bead passes.
func (a Annular) swing(l *Latch, outward float64, outer Material) Swing {
	z := l.Z
	t := a.outerTube(outer)
	reach := math.Pi / Beta(t.Radius, t.Wall, t.Poisson)
	if a.Split == "outer" {
		reach = a.SlotDepth
	}
	body := reach
	if a.FarEnd == "free" || a.FarEnd == "floored" {
		body = min(body, a.FarDistance)
	}
	mouth := min(reach, a.EndDistance)
	s := Swing{Part: a.Outside, Outward: outward, Radius: a.OuterDiameter / 2, ZLow: z - body, ZHigh: z + mouth}
	if a.Outside == "upper" {
		s.ZLow, s.ZHigh = z-mouth, z+body
	}
	return s
}
