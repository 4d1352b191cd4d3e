package force

import (
	"errors"
	"fmt"
	"math"
)

// An Assembly is one press step: two parts and the latches between them.
type Assembly struct {
	Lower, Upper MaterialSpec
	Latches      []Latch
	Seed         uint64 // of the tolerance draws
	Draws        int    // number of tolerance draws; 0: 10000
}

// A Swing is the room the outer ring needs: it moves outward by Outward [mm] at
// its outer radius Radius [mm] between the heights ZLow and ZHigh [mm].
type Swing struct {
	Part                         string // lower, upper
	Outward, Radius, ZLow, ZHigh float64
}

// A Warning is a caution with a number that stays the same for the same matter.
type Warning struct {
	Number int
	Text   string
}

// A LatchResult is what one latch design does.
type LatchResult struct {
	ID, Kind    string
	Count       int
	PeakEach    float64 // largest force of one joint [N]
	PeakAll     float64 // of all of them [N]
	PeakLift    float64 // lift at that peak [mm]
	Work        float64 // of all of them down to the seat [mJ]
	Strain      float64 // hoop strain of the part nearest its limit [1]
	Permitted   float64 // what that part may take [1]
	ElasticPart string  // lower, upper or both: who gives way
	Separation  float64 // force to pull one joint apart [N]; 0 and no meaning if SelfLocking
	SelfLocking bool
	Humps       int
	Swing       Swing
	Formulas    []string
	Warnings    []Warning
}

// A Result is what the whole press step does.
type Result struct {
	Latches      []LatchResult
	Curve        Curve
	Peak         float64 // nominal [N]
	PeakLift     float64 // [mm]
	Work         float64 // [mJ]
	SeatForce    float64 // still needed at the seat [N]
	Stroke       float64 // [mm]
	Humps        int
	Thrust       Point   // force-weighted centre at the peak
	TiltMoment   float64 // about the mean latch position at the peak [N mm]
	ThrustWander float64 // how far the thrust line moves from Thrust along the stroke [mm]

	P5, P50, P95, Worst, Design float64 // peak of the total over the draws [N]; Design is P95
	P95StdErr                   float64 // standard error of P95 [N]
	Loose, Overstrained, Jammed float64 // share of assemblies with such a latch [1]

	Warnings []Warning
}

// Validate returns everything wrong with the assembly.
func (a Assembly) Validate() []Fault {
	lower, out := Resolve(a.Lower)
	out = Under("lower", out)
	upper, more := Resolve(a.Upper)
	out = append(out, Under("upper", more)...)
	mu := pairFriction(lower, upper).Value
	if len(a.Latches) == 0 {
		out = append(out, Fault{Field: "latches", Problem: "is empty", Want: "one latch or more"})
	}
	if a.Draws < 0 || a.Draws > 1_000_000 {
		out = append(out, Fault{Field: "draws", Given: fmt.Sprint(a.Draws), Problem: "is outside what is drawn", Want: "100 to 1000000, 0 for 10000"})
	} else if a.Draws > 0 && a.Draws < 100 {
		out = append(out, Fault{Field: "draws", Given: fmt.Sprint(a.Draws), Problem: "are too few for a P95", Want: "100 or more"})
	}
	seen := map[string]bool{}
	places := 0
	for i, l := range a.Latches {
		at := fmt.Sprintf("latches[%d]", i)
		faults := l.Validate()
		if l.ID != "" && seen[l.ID] {
			faults = append(faults, Fault{Field: "id", Given: l.ID, Problem: "is taken by an earlier latch", Want: "a name of its own"})
		}
		seen[l.ID] = true
		places += len(l.At)
		if len(faults) == 0 {
			faults = lockFault(l, mu)
		}
		out = append(out, Under(at, faults)...)
	}
	if places > maxPlaces {
		out = append(out, Fault{Field: "latches", Given: fmt.Sprint(places, " places"), Problem: "are too many", Want: fmt.Sprintf("%d at most", maxPlaces)})
	}
	return out
}

// lockFault refuses a lead-in flank that friction locks.
func lockFault(l Latch, mu float64) []Fault {
	field, alpha := "annular.mating_angle", 0.0
	switch {
	case l.Annular != nil:
		alpha = l.Annular.MatingAngle
	case l.PressFit.LeadInAngle != nil:
		field, alpha = "press_fit.lead_in_angle", *l.PressFit.LeadInAngle
	}
	if f, ok := MatingFactor(mu, alpha); ok && f < jamFactor {
		return nil
	}
	return []Fault{{Field: field, Given: fmt.Sprintf("%.4g deg", alpha*degree), Problem: fmt.Sprintf("locks at a friction of %.3g: no push joins it", mu),
		Want: fmt.Sprintf("below %.3g deg, better 45 deg or less", SeparableLimit(mu)*degree-5)}}
}

const degree = 180 / math.Pi // [deg/rad]

// Analyse computes the press step. It returns the faults joined if there are any.
func Analyse(a Assembly) (Result, error) {
	if faults := a.Validate(); len(faults) > 0 {
		errs := make([]error, len(faults))
		for i, f := range faults {
			errs[i] = f
		}
		return Result{}, errors.Join(errs...)
	}
	lower, _ := Resolve(a.Lower)
	upper, _ := Resolve(a.Upper)
	mu := pairFriction(lower, upper)
	var r Result
	joints := make([]joint, len(a.Latches))
	limits := make([]limit, len(a.Latches))
	profiles := make([]profile, len(a.Latches))
	counts := make([]int, len(a.Latches))
	for i, l := range a.Latches {
		joints[i] = readyJoint(l, lower, upper)
		counts[i] = len(l.At)
		p, s := joints[i].at(nominal(mu.Value), joints[i].size)
		profiles[i] = p
		limits[i] = limitOf(&joints[i], l.Use, lower, upper)
		r.Latches = append(r.Latches, latchResult(l, &joints[i], limits[i], p, s, mu, lower, upper))
	}
	r.Curve = sumCurve(profiles, counts)
	r.Peak, r.PeakLift = r.Curve.Peak()
	r.Work, r.Stroke, r.SeatForce, r.Humps = r.Curve.Work(), r.Curve.Stroke(), r.Curve.At(0), r.Curve.humps(0.05)
	r.thrustLine(a.Latches, profiles)
	r.tolerance(a, joints, limits, mu.Value)
	r.warn()
	return r, nil
}

// readyJoint makes one latch ready, with its place on the stroke.
func readyJoint(l Latch, lower, upper Material) joint {
	var j joint
	pick := func(outside string) (outer, inner Material) {
		if outside == "lower" {
			return lower, upper
		}
		return upper, lower
	}
	if l.Annular != nil {
		j = l.Annular.ready(pick(l.Annular.Outside))
	} else {
		j = l.PressFit.ready(pick(l.PressFit.Outside))
	}
	j.engage = j.ownStroke
	if l.Engage != nil {
		j.engage = *l.Engage
	}
	return j
}

// limit is what the members of a joint may be strained [1].
type limit struct{ outer, inner float64 }

func limitOf(j *joint, use string, lower, upper Material) limit {
	lo, up := lower.PermittedHoop(use).Value, upper.PermittedHoop(use).Value
	if j.outerIsLower {
		return limit{lo, up}
	}
	return limit{up, lo}
}

func (l limit) over(s state) bool { return s.outerStrain > l.outer || s.innerStrain > l.inner }
