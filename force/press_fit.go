package force

import (
	"fmt"
	"math"
)

// A PressFit is a cylinder pressed into a boss.
type PressFit struct {
	Outside          string   `yaml:"outside" oneof:"lower upper" required:"true"` // the part with the boss
	JointDiameter    float64  `yaml:"joint_diameter" unit:"mm" required:"true"`    // [mm]
	Interference     float64  `yaml:"interference" unit:"mm" required:"true"`      // DIAMETRAL: pin diameter less bore diameter [mm]
	InterferenceTol  *float64 `yaml:"interference_tol" unit:"mm"`                  // plus or minus, diametral [mm]; left out: both parts' process tolerance, root of the sum of squares
	OuterDiameter    float64  `yaml:"outer_diameter" unit:"mm" required:"true"`    // of the boss [mm]
	InnerDiameter    float64  `yaml:"inner_diameter" unit:"mm"`                    // bore of the pin [mm]; 0 or left out: solid
	EngagementLength float64  `yaml:"engagement_length" unit:"mm" required:"true"` // at full interference [mm]
	LeadInAngle      *float64 `yaml:"lead_in_angle" unit:"deg"`                    // of the chamfer to the press axis [rad]; left out: a sharp edge
}

// Validate returns what is wrong with the fit, field paths relative to it.
func (f PressFit) Validate() []Fault {
	out := sideFault("outside", f.Outside)
	joint := lengthFault("joint_diameter", f.JointDiameter, 0.2, 2000)
	out = append(out, joint...)
	if len(joint) > 0 {
		return out
	}
	d := f.JointDiameter
	out = append(out, lengthFault("interference", f.Interference, smallest, 0.15*d)...)
	if f.InterferenceTol != nil {
		out = append(out, lengthFault("interference_tol", *f.InterferenceTol, 0, 0.15*d)...)
	}
	out = append(out, lengthFault("outer_diameter", f.OuterDiameter, 1.002*d, 1000*d)...)
	out = append(out, lengthFault("inner_diameter", f.InnerDiameter, 0, 0.998*d)...)
	out = append(out, lengthFault("engagement_length", f.EngagementLength, 0.01, 1000)...)
	if f.LeadInAngle != nil {
		out = append(out, angleFault("lead_in_angle", *f.LeadInAngle, 2, 60)...)
	}
	return out
}

// fit gives Lame's view of the joint.
func (f PressFit) fit(hub, shaft Material) Fit {
	return Fit{Joint: f.JointDiameter, HubOuter: f.OuterDiameter, ShaftBore: f.InnerDiameter, HubModulus: hub.Modulus.Value,
		HubPoisson: hub.Poisson.Value, ShaftModulus: shaft.Modulus.Value, ShaftPoisson: shaft.Poisson.Value}
}

// PressForce gives the force to slide a fit over an engaged length, F [N].
//
//	F = mu p pi d L
//
// mu: coefficient of friction [1]; p: pressure [MPa]; d: joint diameter [mm];
// L: engaged length [mm]; all 0 or above. Source: Engineering Plastics
// Handbook, p. 32 (read), as pull-out 2 pi mu L Rs p. Leaves out the lead-in.
func PressForce(mu, p, d, l float64) float64 { return mu * p * math.Pi * d * l }

// LeadInForce gives the force to drive a chamfer to depth s, F [N].
//
//	F = p pi d s^2/(2 c) tan(alpha + rho),  c = delta / (2 tan alpha)
//
// The pressure grows along the chamfer from 0 to p over its length c [mm]; s: 0
// to c [mm]. Without friction F(c) is p pi d delta/4, the elastic work of one mm
// of joint, as it must be. Source: own. Leaves out shaving.
func LeadInForce(factor, p, d, s, c float64) float64 {
	if c <= 0 {
		return 0
	}
	return p * math.Pi * d * s * s / (2 * c) * factor
}

// ready makes the joint ready to be evaluated.
func (f PressFit) ready(hub, shaft Material) joint {
	l := f.fit(hub, shaft)
	j := joint{kind: "press_fit", outerIsLower: f.Outside == "lower", d: f.JointDiameter, size: f.Interference, length: f.EngagementLength,
		kOuter: 1 / (f.JointDiameter * l.hubCompliance()), kInner: 1 / (f.JointDiameter * l.shaftCompliance()),
		secantOuter: hub.SecantZeroStrain.Value, secantInner: shaft.SecantZeroStrain.Value, ownStroke: f.EngagementLength}
	j.tol = math.Hypot(hub.ToleranceOn(f.JointDiameter), shaft.ToleranceOn(f.JointDiameter))
	if f.InterferenceTol != nil {
		j.tol = *f.InterferenceTol
	}
	if f.LeadInAngle != nil {
		j.alpha = *f.LeadInAngle
		j.ownStroke += f.Interference / 2 / math.Tan(j.alpha)
	}
	p := l.Pressure(f.Interference)
	j.formulas = []string{
		fmt.Sprintf("p = delta/(d [(Wh+nuh)/Eh + (Ws-nus)/Es]) = %.5g MPa at the small-strain moduli [Lame; Shigley, memory]", p),
		fmt.Sprintf("hoop stress: hub bore %.5g MPa, shaft surface %.5g MPa [same]", l.HubHoop(p), l.ShaftHoop(p)),
	}
	return j
}
