package force

import (
	"fmt"
	"math"

	"ramnest/force/fault"
)

// A CrushRib is a pin or bore with ribs of triangular section that the mate
// crushes. The ribs flow: their resistance is a flow stress on the flattened
// crest, not an elastic fit, and bore and pin are taken as rigid.
type CrushRib struct {
	Ribs             string   `yaml:"ribs" oneof:"lower upper" required:"true"`    // the part that carries the ribs
	JointDiameter    float64  `yaml:"joint_diameter" unit:"mm" required:"true"`    // of the smooth mate [mm]
	Count            int      `yaml:"rib_count" unit:"none" required:"true"`       // ribs round the joint
	Height           float64  `yaml:"rib_height" unit:"mm" required:"true"`        // of one rib, uncrushed [mm]
	Width            float64  `yaml:"rib_width" unit:"mm" required:"true"`         // of one rib at its base [mm]
	Crush            float64  `yaml:"crush" unit:"mm" required:"true"`             // RADIAL: how far the mate reaches into a rib [mm]
	CrushTol         *float64 `yaml:"crush_tol" unit:"mm"`                         // plus or minus, radial [mm]; left out: half of both parts' process tolerance on the diameter
	EngagementLength float64  `yaml:"engagement_length" unit:"mm" required:"true"` // at full crush [mm]
	LeadInAngle      *float64 `yaml:"lead_in_angle" unit:"deg"`                    // of the chamfer to the press axis [rad]; left out: a sharp edge, counted as 45 deg
	RoughnessLoss    *float64 `yaml:"roughness_loss" unit:"mm"`                    // diametral, by which flattened asperities lessen twice the crush [mm]; left out: 0.4 to 0.8 of the summed Rz of both parts
	FlowStress       *float64 `yaml:"flow_stress" unit:"MPa"`                      // of the rib [MPa]; left out: 1.25 times the strength in the layers
}

// Validate returns what is wrong with the joint, field paths relative to it.
func (c CrushRib) Validate() []fault.Fault {
	out := sideFault("ribs", c.Ribs)
	out = append(out, lengthFault("joint_diameter", c.JointDiameter, 0.2, 2000)...)
	out = append(out, countFault("rib_count", c.Count, 2, 60)...)
	out = append(out, lengthFault("rib_height", c.Height, 0.05, 20)...)
	out = append(out, lengthFault("rib_width", c.Width, 0.05, 40)...)
	if len(out) > 0 {
		return out
	}
	out = append(out, lengthFault("crush", c.Crush, smallest, c.Height)...)
	if c.CrushTol != nil {
		out = append(out, lengthFault("crush_tol", *c.CrushTol, 0, c.Height)...)
	}
	out = append(out, lengthFault("engagement_length", c.EngagementLength, 0.01, 1000)...)
	if c.LeadInAngle != nil {
		out = append(out, angleFault("lead_in_angle", *c.LeadInAngle, 2, 60)...)
	}
	if c.RoughnessLoss != nil {
		out = append(out, lengthFault("roughness_loss", *c.RoughnessLoss, 0, 0.5)...)
	}
	if c.FlowStress != nil && !within(*c.FlowStress, 0.1, 5000) {
		out = append(out, fault.Fault{Field: "flow_stress", Given: fmt.Sprintf("%.6g MPa", *c.FlowStress),
			Problem: "is outside what a material can have", Want: "0.1 to 5000 MPa"})
	}
	if room := math.Pi * c.JointDiameter / c.Width; float64(c.Count) > room && len(out) == 0 {
		out = append(out, countFault("rib_count", c.Count, 2, int(room))...)
	}
	return out
}

// CrushLoad gives the transverse load per mm of engagement of all ribs, q [N/mm].
//
//	q = n C sigma b,  b = delta w/h
//
// n: ribs; sigma: flow stress [MPa]; delta: crush depth, radial [mm], 0 to h; w, h:
// base width and height of a rib [mm]; b: flattened width [mm]. C, the constraint
// by the metal or plastic behind the crest, is 1.5: between 1 (a free column) and
// 3 (a dent in a half space). Source: own, on a triangle; C common practice, no
// source. Leaves out the give of bore and pin, and how the chips pack.
func CrushLoad(n int, sigma, delta, w, h float64) float64 {
	return float64(n) * crushConstraint * sigma * delta * w / h
}

const (
	crushConstraint = 1.5  // [1]
	crushModel      = 1.5  // ratio standing for the model error; common practice, no source
	crushShare      = 0.75 // share of a rib's height that may be crushed; common practice, no source
)

func (c CrushRib) flowStress(rib Material) Figure {
	if c.FlowStress != nil {
		return Figure{*c.FlowStress, MarkJob}
	}
	return Figure{yieldHeadroom * rib.Strength.Value, rib.Strength.Mark}
}

// sizing is the crush with its tolerance, radial. Whether the ribs stand in the hole or
// on the pin the job does not say: of the two parts the one whose holes come out
// tighter is taken to have it.
func (c CrushRib) sizing(ribs, mate Material) sizing {
	s := sizing{d: c.JointDiameter, size: c.Crush}
	s.tolerance(c.CrushTol, ribs, mate, c.JointDiameter)
	if c.CrushTol == nil {
		s.outer, s.inner, s.worst = s.outer/2, s.inner/2, s.worst/2
		hole := ribs
		if a, _ := ribs.TighterHole(s.d); a < first(mate.TighterHole(s.d)) {
			hole, s.inward = mate, true
		}
		s.hole(hole, s.d)
		s.size, s.tight, s.hold = c.Crush+s.tight/2, s.tight/2, s.hold/2
	}
	s.rough(c.RoughnessLoss, ribs, mate, 0.5)
	return s
}

func first(v float64, _ bool) float64 { return v }

// ready makes the joint ready to be evaluated. The ribs are the only spring.
func (c CrushRib) ready(ribs, mate Material, _ string) joint {
	s := c.sizing(ribs, mate)
	j := joint{
		strained: "share of the rib crushed", flows: true, path: slide, outerIsLower: c.Ribs == "lower",
		size: s.size, drawn: s.drawn(), half: 1, fromOuter: s.outer, fromInner: s.inner, worst: s.worst, flatten: s.flatten, hold: s.hold,
		outer:   member{stiffness: CrushLoad(c.Count, c.flowStress(ribs).Value, 1, c.Width, c.Height), strain: 1 / c.Height, limit: crushShare},
		inner:   member{limit: 1},
		length:  c.EngagementLength,
		stroke:  c.EngagementLength,
		modelUp: math.Log(crushModel), modelDown: math.Log(crushModel),
	}
	if c.LeadInAngle != nil {
		j.alpha = *c.LeadInAngle
		j.stroke += s.size / math.Tan(j.alpha)
	}
	return j
}
