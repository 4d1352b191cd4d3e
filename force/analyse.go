package force

import (
	"context"
	"errors"
	"fmt"
	"math"

	"ramnest/force/fault"
)

// An Assembly is one press step: two parts and the latches between them.
type Assembly struct {
	Lower, Upper MaterialSpec
	Latches      []Latch
	Shop         Shop     // the shop's own material table; nil: none
	Seed         uint64   // of the tolerance draws
	Draws        int      // number of tolerance draws; 0: 10000
	MostPlaces   int      // of all latches together; 0: 2000
	Service      *Service // what the joint goes through; nil: not stated, and no hold at the end of life
}

// Validate returns everything wrong with the assembly.
func (a Assembly) Validate() []fault.Fault {
	lower, out := a.Shop.Resolve(a.Lower)
	out = fault.Under("lower", out)
	upper, more := a.Shop.Resolve(a.Upper)
	out = append(out, fault.Under("upper", more)...)
	sound := len(out) == 0
	if a.Service != nil {
		out = append(out, fault.Under("service", a.Service.Validate())...)
	}
	if len(a.Latches) == 0 {
		out = append(out, fault.Fault{Field: "latches", Problem: "is empty", Want: "one latch or more"})
	}
	if a.Draws < 0 || a.Draws > 1_000_000 {
		out = append(out, fault.Fault{Field: "draws", Given: fmt.Sprint(a.Draws), Problem: "is outside what is drawn",
			Want: "100 to 1000000, 0 for 10000"})
	} else if a.Draws > 0 && a.Draws < 100 {
		out = append(out, fault.Fault{Field: "draws", Given: fmt.Sprint(a.Draws), Problem: "are too few for a P95", Want: "100 or more"})
	}
	seen := map[string]bool{}
	places, most := 0, a.MostPlaces
	if most <= 0 {
		most = maxPlaces
	}
	for i, l := range a.Latches {
		faults := l.validate(most)
		if l.ID != "" && seen[l.ID] {
			faults = append(faults, fault.Fault{Field: "id", Given: l.ID, Problem: "is taken by an earlier latch", Want: "a name of its own"})
		}
		seen[l.ID] = true
		places += len(l.At)
		if len(faults) == 0 && sound {
			faults = pairFaults(l, lower, upper)
		}
		out = append(out, fault.Under(fmt.Sprintf("latches[%d]", i), faults)...)
	}
	if places > most {
		out = append(out, fault.Fault{Field: "latches", Given: fmt.Sprint(places, " places"), Problem: "are too many",
			Want: fmt.Sprintf("%d at most, or a higher limit", most)})
	}
	return out
}

// pairFaults refuses what only shows with both materials known: tolerances as large
// as the part.
func pairFaults(l Latch, lower, upper Material) []fault.Fault {
	j := readyJoint(l, lower, upper)
	if lost := j.drawn - j.size; j.size < smallest {
		return []fault.Fault{{Field: l.Kind() + "." + l.sizeKey(), Given: figure(j.drawn) + " mm",
			Problem: fmt.Sprintf("is used up: holes and rough surfaces as they are made take %.3g mm off it, so that nothing is left to press",
				lost),
			Want: fmt.Sprintf("above %.3g mm, or a smoother finish", lost)}}
	}
	if j.path == ball && (j.size+2.2*j.worst)*j.half > 0.6*j.ballR {
		return []fault.Fault{{Field: "ball.ball_diameter", Given: fmt.Sprintf("%.6g mm", 2*j.ballR),
			Problem: fmt.Sprintf("is too small for a tolerance of %.3g mm on ball and mouth together", j.worst),
			Want:    "a larger ball, or ball_tol and mouth_tol as measured"}}
	}
	return nil
}

// Analyse computes the press step. It returns the faults joined if there are any.
func Analyse(a Assembly) (Result, error) { return AnalyseContext(context.Background(), a) }

// AnalyseContext is [Analyse] that can be stopped: it then gives the error of the
// context. A million draws take a minute.
func AnalyseContext(ctx context.Context, a Assembly) (Result, error) {
	if faults := a.Validate(); len(faults) > 0 {
		errs := make([]error, len(faults))
		for i, f := range faults {
			errs[i] = f
		}
		return Result{}, errors.Join(errs...)
	}
	lower, _ := a.Shop.Resolve(a.Lower)
	upper, _ := a.Shop.Resolve(a.Upper)
	mu := pairFriction(lower, upper)
	b := bandOf(lower, upper)
	r := Result{HoldLatch: -1, HoldLifeLatch: -1}
	if a.Service != nil {
		r.HoldWanted = a.Service.Hold
	}
	joints := make([]joint, len(a.Latches))
	profiles := make([]profile, len(a.Latches))
	counts := make([]int, len(a.Latches))
	stuck := 0.0 // lift at which the first one locks [mm]
	for i, l := range a.Latches {
		j := readyJoint(l, lower, upper)
		b.rough = b.rough || j.flatten > 0
		j.findNodes(mu.Value)
		joints[i], counts[i] = j, len(l.At)
		var s state
		profiles[i], s = j.nominalAt(mu.Value)
		r.Stroke = max(r.Stroke, profiles[i].first())
		lr := latchResult(l, &j, profiles[i], s, mu, b, lower, upper)
		if a.Service != nil {
			outer, inner := lower, upper
			if !j.outerIsLower {
				outer, inner = upper, lower
			}
			lr.Hold.Factors = lifeFactors(*a.Service, l, &j, s, outer, inner)
			if _, known := LifeShare(lr.Hold.Factors); known {
				lr.Formulas = append(lr.Formulas, "hold.life")
			}
		}
		r.Latches = append(r.Latches, lr)
		if lr.Locks {
			r.Locks, stuck = true, max(stuck, profiles[i].first())
		}
		r.PeakStack += lr.PeakAll
		r.Springback += float64(len(l.At)) * j.springback(mu.Value, s, &profiles[i])
	}
	r.Curve = sumCurve(profiles, counts)
	if r.Locks {
		r.Curve = r.Curve.above(stuck)
		r.PeakStack, r.Springback, r.Thrust = 0, 0, meanPlace(a.Latches)
	} else {
		r.Peak, r.PeakLift = r.Curve.Peak()
		r.Work, r.SeatForce, r.Humps = r.Curve.Work(), r.Curve.At(0), r.Curve.humps(0.05)
		r.thrustLine(a.Latches, profiles)
	}
	err := r.tolerance(ctx, a, drifting(joints, keepsApart(lower, upper), mu.Value), counts, b)
	if err != nil {
		return Result{}, err
	}
	r.tilt(a)
	r.curveBand(a, joints, counts, b)
	r.warn(a, mu.Value, lower, upper)
	return r, nil
}

// readyJoint makes one latch ready, with its place on the stroke.
func readyJoint(l Latch, lower, upper Material) joint {
	k := l.Joint()
	first, second := sides(k.First(), lower, upper)
	j := k.ready(first, second, l.Use)
	j.engage = j.stroke
	if l.Engage != nil {
		j.engage = *l.Engage
	}
	j.prepare()
	j.settle(pairFriction(lower, upper).Value)
	return j
}

// finite says whether a figure is a number that can be printed.
func finite(v float64) bool { return math.Abs(v) <= math.MaxFloat64 }
