package force

import (
	"fmt"
	"math"

	"ramnest/force/fault"
)

// A PressFit is a cylinder pressed into a boss. Its size is written in one of
// three ways: interference; pin_diameter and bore_diameter; or an ISO 286 fit.
type PressFit struct {
	Outside       string  `yaml:"outside" oneof:"lower upper" required:"true"` // the part with the boss
	JointDiameter float64 `yaml:"joint_diameter" unit:"mm"`                    // [mm]; left out: the bore's, or the fit's nominal size

	Interference    float64  `yaml:"interference" unit:"mm"`     // DIAMETRAL: pin diameter less bore diameter [mm]
	InterferenceTol *float64 `yaml:"interference_tol" unit:"mm"` // plus or minus, diametral [mm]; left out: both parts' process tolerance

	PinDiameter  float64  `yaml:"pin_diameter" unit:"mm"`  // [mm]
	PinTol       *float64 `yaml:"pin_tol" unit:"mm"`       // plus or minus [mm]; left out: the process tolerance
	BoreDiameter float64  `yaml:"bore_diameter" unit:"mm"` // [mm]
	BoreTol      *float64 `yaml:"bore_tol" unit:"mm"`      // plus or minus [mm]; left out: the process tolerance

	Fit string `yaml:"fit"` // "12 H7/s6"; hole and shaft by ISO 286
	// BoreFinished and PinFinished say that the feature is machined to the fit's
	// tolerance after printing; otherwise the process tolerance stands if it is wider.
	// A finished bore is also as drawn, not tight as printed, and as smooth as machined.
	BoreFinished bool `yaml:"bore_finished"`
	PinFinished  bool `yaml:"pin_finished"`

	OuterDiameter    float64  `yaml:"outer_diameter" unit:"mm" required:"true"`    // of the boss [mm]
	InnerDiameter    float64  `yaml:"inner_diameter" unit:"mm"`                    // bore of the pin [mm]; 0 or left out: solid
	EngagementLength float64  `yaml:"engagement_length" unit:"mm" required:"true"` // at full interference [mm]
	BoreBeyond       *float64 `yaml:"bore_beyond" unit:"mm"`                       // how far the boss goes on beyond the pin's tip when home [mm]; left out: far, the stiffer case
	LeadInAngle      *float64 `yaml:"lead_in_angle" unit:"deg"`                    // of the chamfer to the press axis [rad]; left out: a sharp edge, counted as 45 deg
	RoughnessLoss    *float64 `yaml:"roughness_loss" unit:"mm"`                    // diametral, by which flattened asperities lessen the interference [mm]; left out: 0.4 to 0.8 of the summed Rz of both parts
}

// Validate returns what is wrong with the fit, field paths relative to it.
func (f PressFit) Validate() []fault.Fault {
	out := sideFault("outside", f.Outside)
	out = append(out, f.sizeFaults()...)
	if f.RoughnessLoss != nil {
		out = append(out, lengthFault("roughness_loss", *f.RoughnessLoss, 0, 0.5)...)
	}
	if len(out) > 0 {
		return out
	}
	d := f.drawn().d
	out = append(out, lengthFault("outer_diameter", f.OuterDiameter, 1.002*d, 1000*d)...)
	out = append(out, lengthFault("inner_diameter", f.InnerDiameter, 0, 0.998*d)...)
	out = append(out, lengthFault("engagement_length", f.EngagementLength, 0.01, 1000)...)
	if f.BoreBeyond != nil {
		out = append(out, lengthFault("bore_beyond", *f.BoreBeyond, 0, maxLength)...)
	}
	if f.LeadInAngle != nil {
		out = append(out, angleFault("lead_in_angle", *f.LeadInAngle, 2, 60)...)
	}
	return out
}

// sizeFaults checks the three ways to write the size.
func (f PressFit) sizeFaults() []fault.Fault {
	var out []fault.Fault
	ways := 0
	for _, used := range [3]bool{f.Interference != 0 || f.InterferenceTol != nil, f.PinDiameter != 0 || f.BoreDiameter != 0, f.Fit != ""} {
		if used {
			ways++
		}
	}
	if ways != 1 {
		problem := "is missing"
		if ways > 1 {
			problem = "is written in more than one way"
		}
		return []fault.Fault{{Field: "interference", Problem: problem, Want: "one of interference, pin_diameter with bore_diameter, fit"}}
	}
	d := f.JointDiameter
	switch {
	case f.Fit != "":
		fit, err := ParseISOFit(f.Fit)
		if err != nil {
			return []fault.Fault{{Field: "fit", Given: f.Fit, Problem: "cannot be used: " + err.Error(), Want: "such as 12 H7/s6"}}
		}
		if fit.Interference < smallest {
			out = append(out, fault.Fault{Field: "fit", Given: f.Fit,
				Problem: fmt.Sprintf("is loose at its mean sizes, by %.3g mm", -fit.Interference), Want: "an interference fit, such as H7/p6 or H7/s6"})
		}
		if d == 0 {
			d = fit.Nominal
		} else if math.Abs(d-fit.Nominal) > 0.5 {
			out = append(out, fault.Fault{Field: "joint_diameter", Given: fmt.Sprintf("%.6g mm", d), Problem: "is not the nominal size of the fit",
				Want: fmt.Sprintf("%.6g mm, or left out", fit.Nominal)})
		}
	case f.PinDiameter != 0 || f.BoreDiameter != 0:
		out = append(out, lengthFault("pin_diameter", f.PinDiameter, 0.2, 2000)...)
		out = append(out, lengthFault("bore_diameter", f.BoreDiameter, 0.2, 2000)...)
		if len(out) == 0 {
			out = append(out, lengthFault("pin_diameter", f.PinDiameter, f.BoreDiameter+smallest, 1.15*f.BoreDiameter)...)
		}
		if d == 0 {
			d = f.BoreDiameter
		}
		for _, t := range []struct {
			field string
			v     *float64
		}{{"pin_tol", f.PinTol}, {"bore_tol", f.BoreTol}} {
			if t.v != nil {
				out = append(out, lengthFault(t.field, *t.v, 0, 0.15*f.BoreDiameter)...)
			}
		}
	default:
		out = append(out, lengthFault("joint_diameter", d, 0.2, 2000)...)
		if len(out) == 0 {
			out = append(out, lengthFault("interference", f.Interference, smallest, 0.15*d)...)
			if f.InterferenceTol != nil {
				out = append(out, lengthFault("interference_tol", *f.InterferenceTol, 0, 0.15*d)...)
			}
		}
	}
	if len(out) == 0 {
		out = append(out, lengthFault("joint_diameter", d, 0.2, 2000)...)
	}
	return out
}

// sizing is a size with its tolerance, diametral for rings and what is pressed.
type sizing struct {
	d            float64 // joint diameter [mm]
	size         float64 // that decides how hard to press, nominal [mm]
	outer, inner float64 // plus or minus from each member [mm]
	worst        float64 // [mm]

	tight   float64 // by which a printed hole adds to the size [mm]
	inward  bool    // that hole is the inner member's
	loss    float64 // by which asperities lessen it at least [mm]
	flatten float64 // and how much more it may be [mm]
	hold    float64 // by which the size that holds is less [mm]
}

// drawn is the size before printed holes and asperities [mm].
func (s sizing) drawn() float64 { return s.size - s.tight + s.loss }

// hole adds to the size what a printed hole is narrower than drawn.
func (s *sizing) hole(outer Material, d float64) {
	tight, known := outer.TighterHole(d)
	s.tight = tight
	s.size += tight
	if !known {
		s.hold += tight
	}
}

// rough takes off the size what asperities lose, at least; share: of a diametral size
// that this one counts [1].
func (s *sizing) rough(stated *float64, outer, inner Material, share float64) {
	least, most := Flattened(outer, inner)
	if stated != nil {
		least, most = *stated, *stated
	}
	s.loss, s.flatten = share*least, share*(most-least)
	s.size -= s.loss
	s.hold += s.flatten
}

// drawn is the size as the job writes it.
func (f PressFit) drawn() sizing { return f.asDrawn(Material{}, Material{}) }

func (f PressFit) sizing(hub, shaft Material) sizing {
	s := f.asDrawn(hub, shaft)
	if !f.BoreFinished && f.InterferenceTol == nil && f.BoreTol == nil {
		s.hole(hub, s.d)
	}
	if f.BoreFinished {
		hub = hub.machined()
	}
	if f.PinFinished {
		shaft = shaft.machined()
	}
	s.rough(f.RoughnessLoss, hub, shaft, 1)
	return s
}

// asDrawn is the size before printed holes and asperities.
func (f PressFit) asDrawn(hub, shaft Material) sizing {
	s := sizing{d: f.JointDiameter}
	switch {
	case f.Fit != "":
		fit, _ := ParseISOFit(f.Fit)
		s.size, s.outer, s.inner = fit.Interference, fit.HoleTol, fit.ShaftTol
		if !f.BoreFinished {
			s.outer = max(s.outer, hub.ToleranceOn(fit.Nominal))
		}
		if !f.PinFinished {
			s.inner = max(s.inner, shaft.ToleranceOn(fit.Nominal))
		}
		if s.d == 0 {
			s.d = fit.Nominal
		}
	case f.PinDiameter != 0:
		s.size, s.outer, s.inner = f.PinDiameter-f.BoreDiameter, hub.ToleranceOn(f.BoreDiameter), shaft.ToleranceOn(f.PinDiameter)
		if f.BoreTol != nil {
			s.outer = *f.BoreTol
		}
		if f.PinTol != nil {
			s.inner = *f.PinTol
		}
		if s.d == 0 {
			s.d = f.BoreDiameter
		}
	default:
		s.size = f.Interference
		s.tolerance(f.InterferenceTol, hub, shaft, s.d)
		return s // a stated tolerance is that of both together
	}
	s.worst = s.outer + s.inner
	return s
}

// tolerance fills in a stated tolerance, shared by both members, or that of both
// processes.
func (s *sizing) tolerance(stated *float64, outer, inner Material, dimension float64) {
	if stated == nil {
		s.outer, s.inner = outer.ToleranceOn(dimension), inner.ToleranceOn(dimension)
		s.worst = s.outer + s.inner
		return
	}
	s.worst = *stated
	s.outer, s.inner = *stated/math.Sqrt2, *stated/math.Sqrt2
}

// beyond is how far the boss goes on beyond the pin's tip [mm].
func (f PressFit) beyond() float64 {
	if f.BoreBeyond != nil {
		return *f.BoreBeyond
	}
	return maxLength
}

// lame gives Lame's view of the joint.
func (f PressFit) lame(d float64, hub, shaft Material) Fit {
	return Fit{Joint: d, HubOuter: f.OuterDiameter, ShaftBore: f.InnerDiameter, HubModulus: hub.Modulus.Value,
		HubPoisson: hub.Poisson.Value, ShaftModulus: shaft.Modulus.Value, ShaftPoisson: shaft.Poisson.Value}
}

// CollapsePressure gives the pressure at which a hub flows through its whole
// wall [MPa], the most that a press fit can hold.
//
//	p = (2/sqrt 3) sigma ln(do/d)
//
// sigma: yield strength [MPa]; do above d: outer and joint diameter [mm]. Source:
// thick ring, ideally plastic, von Mises in plane strain (from memory).
func CollapsePressure(sigma, do, d float64) float64 {
	return 2 / math.Sqrt(3) * sigma * math.Log(do/d)
}

const (
	// yieldHeadroom raises the strength for the load at which a boss gives way:
	// table strengths are the lower end of their range, and too low a limit would
	// make the force too low. Common practice, no source.
	yieldHeadroom = 1.25
	pressModel    = 1.10 // ratio standing for the model error of Lame on a printed boss; common practice, no source
)

// ready makes the joint ready to be evaluated.
func (f PressFit) ready(hub, shaft Material, use string) joint {
	s := f.sizing(hub, shaft)
	d := s.d
	l := f.lame(d, hub, shaft)
	// Load per mm of engagement over radial movement: p pi d over delta/2.
	perRadial := 2 * math.Pi * d
	j := joint{
		path: slide, outerIsLower: f.Outside == "lower",
		size: s.size, drawn: s.drawn(), half: 0.5, fromOuter: s.outer, fromInner: s.inner, worst: s.worst, flatten: s.flatten, hold: s.hold,
		outer: member{stiffness: perRadial / (d * l.hubCompliance()), strain: 2 / d, limit: hub.PermittedHoop(use).Value}.follow(hub, 2/d,
			hubReserve(f.OuterDiameter, d)),
		inner: member{stiffness: perRadial / (d * l.shaftCompliance()), strain: 2 / d, limit: shaft.PermittedHoop(use).Value}.follow(shaft, 2/d,
			1),
		length:  f.EngagementLength,
		stroke:  f.EngagementLength,
		modelUp: math.Log(pressModel), modelDown: math.Log(pressModel),
	}
	kh, ks := j.outer.stiffness, j.inner.stiffness
	j.edge = BossEdge(f.OuterDiameter, d, f.beyond()) * ks / (kh + ks)
	j.swell = max(0, l.Swelling(kh*ks/(kh+ks), f.EngagementLength+j.edge))
	// Strength in the layers, whichever way the part is built: the limit must not make
	// the force too low.
	limit := CollapsePressure(yieldHeadroom*hub.Strength.Value, f.OuterDiameter, d)
	if f.InnerDiameter > 0 {
		limit = min(limit, CollapsePressure(yieldHeadroom*shaft.Strength.Value, d, f.InnerDiameter))
	}
	j.cap = limit * math.Pi * d
	if f.LeadInAngle != nil {
		j.alpha = *f.LeadInAngle
		j.stroke += s.size / 2 / math.Tan(j.alpha)
	}
	return j
}

// swing is the room the boss needs.
func (f PressFit) swing(l *Latch, outward float64, _ Material) Swing {
	z := l.Z
	half := f.EngagementLength / 2
	return Swing{Part: f.Outside, Outward: outward, Radius: f.OuterDiameter / 2, ZLow: z - half, ZHigh: z + half}
}
