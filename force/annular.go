package force

import (
	"fmt"
	"math"
)

// An Annular is a bead that snaps into a groove all the way round.
type Annular struct {
	Outside       string   `yaml:"outside" oneof:"lower upper" required:"true"` // the part whose tube is outside
	JointDiameter float64  `yaml:"joint_diameter" unit:"mm" required:"true"`    // at the joint [mm]
	Undercut      float64  `yaml:"undercut" unit:"mm" required:"true"`          // DIAMETRAL: bead diameter less the diameter it passes [mm]
	UndercutTol   *float64 `yaml:"undercut_tol" unit:"mm"`                      // plus or minus, diametral [mm]; left out: both parts' process tolerance, root of the sum of squares
	MatingAngle   float64  `yaml:"mating_angle" unit:"deg" required:"true"`     // of the lead-in flank to the press axis [rad]
	ReturnAngle   float64  `yaml:"return_angle" unit:"deg" required:"true"`     // of the holding flank to the press axis [rad]
	Land          float64  `yaml:"land" unit:"mm"`                              // flat crest between the flanks [mm]; 0 if left out
	OuterDiameter float64  `yaml:"outer_diameter" unit:"mm" required:"true"`    // of the outer tube [mm]
	InnerDiameter float64  `yaml:"inner_diameter" unit:"mm"`                    // bore of the inner part [mm]; 0 or left out: solid

	EndDistance      float64  `yaml:"end_distance" unit:"mm" required:"true"` // of the joint from the outer tube's free end [mm]
	EndDistanceInner *float64 `yaml:"end_distance_inner" unit:"mm"`           // of the joint from the inner part's free end [mm]; left out: remote, the stiffer case
	FarEnd           string   `yaml:"far_end" oneof:"long free floored"`      // of the outer tube; left out: long
	FarDistance      float64  `yaml:"far_distance" unit:"mm"`                 // of the joint from that end [mm]; needed unless long
	FarEndInner      string   `yaml:"far_end_inner" oneof:"long free floored"`
	FarDistanceInner float64  `yaml:"far_distance_inner" unit:"mm"`
}

// Validate returns what is wrong with the joint, field paths relative to it.
func (a Annular) Validate() []Fault {
	out := sideFault("outside", a.Outside)
	joint := lengthFault("joint_diameter", a.JointDiameter, 0.5, 2000)
	out = append(out, joint...)
	if len(joint) > 0 {
		return out
	}
	d := a.JointDiameter
	out = append(out, lengthFault("undercut", a.Undercut, smallest, 0.2*d)...)
	if a.UndercutTol != nil {
		out = append(out, lengthFault("undercut_tol", *a.UndercutTol, 0, 0.2*d)...)
	}
	out = append(out, angleFault("mating_angle", a.MatingAngle, 2, 80)...)
	out = append(out, angleFault("return_angle", a.ReturnAngle, 2, 90)...)
	out = append(out, lengthFault("land", a.Land, 0, 100)...)
	out = append(out, lengthFault("outer_diameter", a.OuterDiameter, 1.002*d, 20*d)...)
	out = append(out, lengthFault("inner_diameter", a.InnerDiameter, 0, 0.998*d)...)
	out = append(out, lengthFault("end_distance", a.EndDistance, 0, maxLength)...)
	if a.EndDistanceInner != nil {
		out = append(out, lengthFault("end_distance_inner", *a.EndDistanceInner, 0, maxLength)...)
	}
	out = append(out, farFault("", a.FarEnd, a.FarDistance)...)
	return append(out, farFault("_inner", a.FarEndInner, a.FarDistanceInner)...)
}

func farFault(suffix, end string, distance float64) []Fault {
	switch end {
	case "", "long":
		return nil
	case "free", "floored":
		return lengthFault("far_distance"+suffix, distance, 0.01, maxLength)
	}
	return []Fault{{Field: "far_end" + suffix, Given: end, Problem: "is not known", Want: "long, free or floored"}}
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

// outerTube is the outer member seen as a shell.
func (a Annular) outerTube(m Material) Tube {
	wall := (a.OuterDiameter - a.JointDiameter) / 2
	return Tube{Radius: (a.OuterDiameter + a.JointDiameter) / 4, Wall: wall, Modulus: m.Modulus.Value, Poisson: m.Poisson.Value,
		Mouth: a.EndDistance, Beyond: a.FarDistance, Far: farEnd(a.FarEnd)}
}

// innerTube is the inner member seen as a shell.
func (a Annular) innerTube(m Material) Tube {
	t := Tube{Radius: (a.JointDiameter + a.InnerDiameter) / 4, Wall: (a.JointDiameter - a.InnerDiameter) / 2, Modulus: m.Modulus.Value,
		Poisson: m.Poisson.Value, Mouth: maxLength, Beyond: a.FarDistanceInner, Far: farEnd(a.FarEndInner)}
	if a.EndDistanceInner != nil {
		t.Mouth = *a.EndDistanceInner
	}
	return t
}

// guideStiffness is the guide's transverse force per RADIAL movement, both
// members in series, each with its own factor for the distance from the end.
func (a Annular) guideStiffness(outer, inner Material) float64 {
	d := a.JointDiameter
	to, ti := a.outerTube(outer), a.innerTube(inner)
	ko := 2 * GuideTransverse(1, d, outer.Modulus.Value, GeometricFactorOuter(d, a.OuterDiameter, outer.Poisson.Value)) * GuideRemoteFactor(to.Mouth, d, to.Wall)
	ki := 2 * GuideTransverse(1, d, inner.Modulus.Value, GeometricFactorInner(d, a.InnerDiameter, inner.Poisson.Value)) * GuideRemoteFactor(ti.Mouth, d, ti.Wall)
	return ko * ki / (ko + ki)
}

// ready makes the joint ready to be evaluated.
func (a Annular) ready(outer, inner Material) joint {
	to, ti := a.outerTube(outer), a.innerTube(inner)
	j := joint{kind: "annular", outerIsLower: a.Outside == "lower", d: a.JointDiameter, size: a.Undercut,
		alpha: a.MatingAngle, back: a.ReturnAngle, land: a.Land,
		secantOuter: outer.SecantZeroStrain.Value, secantInner: inner.SecantZeroStrain.Value}
	var regimeOuter, regimeInner string
	j.kOuter, regimeOuter = RingStiffness(to, a.OuterDiameter, a.JointDiameter, true)
	j.kInner, regimeInner = RingStiffness(ti, a.JointDiameter, a.InnerDiameter, false)
	k := j.kOuter * j.kInner / (j.kOuter + j.kInner)
	guide := a.guideStiffness(outer, inner)
	j.modelLog = math.Abs(math.Log(k / guide))
	j.tol = math.Hypot(outer.ToleranceOn(a.JointDiameter), inner.ToleranceOn(a.JointDiameter))
	if a.UndercutTol != nil {
		j.tol = *a.UndercutTol
	}
	j.ownStroke = a.Undercut/2/math.Tan(a.MatingAngle) + a.Land
	if a.ReturnAngle < math.Pi/2-1e-6 {
		j.ownStroke += a.Undercut / 2 / math.Tan(a.ReturnAngle)
	}
	j.formulas = []string{
		fmt.Sprintf("outer: R = %.4g mm, t = %.4g mm, t/R = %.3g: %s; band b = %.4g mm; K = %.5g N/mm radial [shell as beam on elastic foundation, memory; switch: common practice]", to.Radius, to.Wall, to.Wall/to.Radius, regimeOuter, to.BandWidth(), j.kOuter),
		fmt.Sprintf("inner: R = %.4g mm, t = %.4g mm, t/R = %.3g: %s; band b = %.4g mm; K = %.5g N/mm radial [same]", ti.Radius, ti.Wall, ti.Wall/ti.Radius, regimeInner, ti.BandWidth(), j.kInner),
		fmt.Sprintf("in series: K = %.5g N/mm radial [own]", k),
		fmt.Sprintf("published guide, y diametral: K = %.5g N/mm radial, shell/guide = %.3g [design guide p. 21-22, memory and read; cross-check only, its ratio widens the band]", guide, k/guide),
	}
	if a.EndDistanceInner == nil {
		j.formulas = append(j.formulas, "inner free end: not stated, taken as remote (the stiffer case)")
	}
	j.reach = math.Pi / Beta(to.Radius, to.Wall, to.Poisson)
	return j
}

// swing is the room the outer tube needs while the bead passes.
func (a Annular) swing(z, outward, reach float64) Swing {
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
