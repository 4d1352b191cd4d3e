package force

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"ramnest/force/planar"

	"gonum.org/v1/gonum/integrate/quad"
)

// grow multiplies what a job's first latch interferes by, as drawn.
func grow(a Assembly, by float64) Assembly {
	l := a.Latches[0]
	a.Latches = []Latch{l.Resized(by*l.Size(Material{}, Material{}).Value, Outer)}
	return a
}

// growing are the variants whose size is one number.
func growing() []Assembly {
	var out []Assembly
	for _, a := range variants() {
		if p := a.Latches[0].PressFit; p == nil || p.Interference > 0 {
			out = append(out, a)
		}
	}
	return out
}

func TestMoreInterferenceNeverLowersThePeak(t *testing.T) {
	for i, a := range growing() {
		a.Draws = 100
		var last Result
		for k := range 24 {
			b := grow(a, 0.15+0.08*float64(k))
			if len(b.Validate()) > 0 {
				continue // too much of it: refused, which the fault table covers
			}
			r := mustAnalyse(t, b)
			if r.Peak < last.Peak*(1-1e-9) || r.Worst < last.Worst*(1-1e-9) || r.Work < last.Work*(1-1e-9) {
				t.Errorf("variant %d (%s), step %d: peak %g from %g, worst %g from %g, work %g from %g", i, a.Latches[0].ID, k, r.Peak, last.Peak, r.Worst, last.Worst, r.Work, last.Work)
			}
			last = r
		}
		if last.Peak == 0 {
			t.Errorf("variant %d was never analysed", i)
		}
	}
}

func TestEqualLatchesAddUp(t *testing.T) {
	for i, a := range variants() {
		a.Latches[0].At = []planar.Point{{X: 3, Y: 4}}
		one := mustAnalyse(t, a)
		a.Latches[0].At = make([]planar.Point, 7)
		many := mustAnalyse(t, a)
		near(t, "peak", many.Peak, 7*one.Peak, 1e-11)
		near(t, "work", many.Work, 7*one.Work, 1e-11)
		near(t, "stack", many.PeakStack, 7*one.PeakStack, 1e-11)
		if many.Humps != one.Humps {
			t.Errorf("variant %d: %d humps, one latch %d", i, many.Humps, one.Humps)
		}
	}
}

// TestWorkAgainstQuadrature integrates every piece between the break points.
func TestWorkAgainstQuadrature(t *testing.T) {
	for i, a := range append(variants(), mixed(), mixed24()) {
		r := mustAnalyse(t, a)
		breaks := r.Curve.Breaks()
		var sum float64
		for k := 1; k < len(breaks); k++ {
			sum += quad.Fixed(r.Curve.At, breaks[k], breaks[k-1], 200, nil, 0)
		}
		near(t, "work", r.Work, sum, 1e-6)
		var each float64
		for _, l := range r.Latches {
			each += l.Work
		}
		near(t, "sum of the latches' work", each, r.Work, 1e-9)
		peak := 0.0
		for k := range 100001 {
			peak = max(peak, r.Curve.At(r.Stroke*float64(k)/100000))
		}
		if peak > r.Peak*(1+1e-9) || peak < 0.999*r.Peak {
			t.Errorf("variant %d: peak %g, scan %g", i, r.Peak, peak)
		}
		near(t, "force at the lift of the peak", r.Curve.At(r.PeakLift), r.Peak, 1e-9)
	}
}

// TestCurvesJumpOnlyDown: force is continuous from the first contact on, but for
// the snaps, where a crest is passed and the force drops.
func TestCurvesJumpOnlyDown(t *testing.T) {
	for i, a := range append(variants(), mixed()) {
		r := mustAnalyse(t, a)
		pressed := slices.ContainsFunc(r.Latches, func(l LatchResult) bool { return l.Kind == "press_fit" || l.Kind == "crush_rib" })
		snaps := 0
		for k := 1; k < len(r.Curve.pieces); k++ {
			before, after := &r.Curve.pieces[k-1], &r.Curve.pieces[k]
			switch jump := after.at(after.Hi) - before.at(before.Lo); {
			case jump > 1e-6*r.Peak:
				if !pressed {
					t.Errorf("variant %d: the force jumps up by %g N at %g mm", i, jump, before.Lo)
				}
			case jump < -1e-6*r.Peak:
				snaps++
			}
		}
		if k := r.Latches[0].Kind; k == "annular" && snaps == 0 {
			t.Errorf("variant %d: a ring without a snap", i)
		}
		first := &r.Curve.pieces[0]
		if l := r.Latches[0]; (l.Kind != "press_fit" && l.Kind != "crush_rib") && first.at(first.Hi) > 1e-6*r.Peak {
			t.Errorf("variant %d: begins with %g N", i, first.at(first.Hi))
		}
	}
}

// scaleLengths multiplies every length of a struct by s, by its unit tags.
func scaleLengths(v reflect.Value, s float64) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			c := reflect.New(v.Elem().Type())
			c.Elem().Set(v.Elem())
			scaleLengths(c.Elem(), s)
			v.Set(c)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Field(i)
			if f.Kind() == reflect.Pointer && f.Type().Elem().Kind() == reflect.Struct {
				scaleLengths(f, s)
				continue
			}
			if v.Type().Field(i).Tag.Get("unit") != "mm" {
				continue
			}
			switch f.Kind() {
			case reflect.Float64:
				f.SetFloat(s * f.Float())
			case reflect.Pointer:
				if !f.IsNil() {
					f.Set(reflect.ValueOf(ptr(s * f.Elem().Float())))
				}
			}
		}
	}
}

// TestTwiceTheSizeIsFourTimesTheForce: with the same material a part s times as
// large needs s^2 times the force and s^3 times the work, whatever the unit.
func TestTwiceTheSizeIsFourTimesTheForce(t *testing.T) {
	const s = 2
	zero := ptr(0.0)
	for i, a := range variants() {
		if f := a.Latches[0].PressFit; f != nil && f.Fit != "" {
			continue // a fit knows its size
		}
		a.Lower.Tolerance, a.Lower.ToleranceShare = zero, ptr(0.004)
		a.Upper.Tolerance, a.Upper.ToleranceShare = zero, ptr(0.004)
		small := mustAnalyse(t, a)
		big := a
		big.Latches = []Latch{a.Latches[0]}
		l := reflect.ValueOf(&big.Latches[0]).Elem()
		scaleLengths(l, s)
		r := mustAnalyse(t, big)
		near(t, "peak", r.Peak, s*s*small.Peak, 1e-9)
		slack := 1e-9
		if thinAt(a) != thinAt(big) {
			slack = 0.03 // a sintered arm is no longer thin
		}
		near(t, "P95", r.P95, s*s*small.P95, slack)
		near(t, "work", r.Work, s*s*s*small.Work, 1e-9)
		near(t, "stroke", r.Stroke, s*small.Stroke, 1e-9)
		near(t, "strain", r.Latches[0].Strain, small.Latches[0].Strain, 1e-9)
		if i == 0 && big.Latches[0].Annular.JointDiameter != 80 {
			t.Error("the job was not scaled")
		}
	}
}

func TestStifferMaterialNeedsProportionallyMore(t *testing.T) {
	for i, a := range variants() {
		if a.Latches[0].CrushRib != nil {
			continue
		}
		raise := func(s *MaterialSpec, by float64) {
			m, _ := Resolve(*s)
			s.Modulus, s.Strength, s.StrengthZ = ptr(by*m.Modulus.Value), ptr(by*m.Strength.Value), ptr(by*m.StrengthZ.Value)
		}
		once := mustAnalyse(t, a)
		raise(&a.Lower, 1.5)
		raise(&a.Upper, 1.5)
		near(t, a.Latches[0].ID, mustAnalyse(t, a).Peak, 1.5*once.Peak, 1e-9)
		_ = i
	}
}

func TestMoreFrictionNeedsMoreForce(t *testing.T) {
	for i, a := range variants() {
		last := 0.0
		for _, mu := range []float64{0, 0.1, 0.2, 0.35, 0.5} {
			a.Lower.Friction, a.Upper.Friction = ptr(mu), ptr(mu)
			r := mustAnalyse(t, a)
			if r.Peak <= last && !(mu == 0 && r.Peak >= 0) {
				t.Errorf("variant %d: %g N at a friction of %g, %g N at less", i, r.Peak, mu, last)
			}
			last = r.Peak
		}
	}
}

// TestFrictionlessSnapStoresElasticWork: without friction the ramp's work is the
// energy of the spring, whatever the angle.
func TestFrictionlessSnapStoresElasticWork(t *testing.T) {
	zero := ptr(0.0)
	for _, angle := range []float64{15, 30, 45, 60} {
		a := stated(capJob())
		a.Lower.Friction, a.Upper.Friction = zero, zero
		a.Latches[0].Annular.MatingAngle = rad(angle)
		r := mustAnalyse(t, a)
		near(t, "work", r.Work, explained(a)["P"]*0.4/2, 1e-9)
	}
}

func TestRemoteRingIsStifferThanNear(t *testing.T) {
	last := 0.0
	for _, end := range []float64{0, 0.5, 1, 2, 4, 8, 16} {
		a := capJob()
		a.Latches[0].Annular.EndDistance, a.Latches[0].Annular.EndDistanceInner = end, ptr(end)
		r := mustAnalyse(t, a)
		if r.Peak < last*(1-1e-3) { // a little over the remote value on the way, as shells do
			t.Errorf("end distance %g: %g N, nearer %g N", end, r.Peak, last)
		}
		last = r.Peak
	}
}

func TestSlotsSoftenAndFloorsStiffen(t *testing.T) {
	closed, split := mustAnalyse(t, capJob()), mustAnalyse(t, collarJob())
	if split.Peak >= closed.Peak {
		t.Errorf("split %g N, closed %g N", split.Peak, closed.Peak)
	}
	floor := capJob()
	floor.Latches[0].Annular.FarEnd, floor.Latches[0].Annular.FarDistance = "floored", 2
	if r := mustAnalyse(t, floor); r.Peak <= closed.Peak {
		t.Errorf("floored %g N, long %g N", r.Peak, closed.Peak)
	}
	free := capJob()
	free.Latches[0].Annular.FarEnd, free.Latches[0].Annular.FarDistance = "free", 2
	if r := mustAnalyse(t, free); r.Peak >= closed.Peak {
		t.Errorf("short free ring %g N, long %g N", r.Peak, closed.Peak)
	}
}

// TestYieldingBossIsLimited: beyond the collapse pressure more interference adds
// nothing but strain.
func TestYieldingBossIsLimited(t *testing.T) {
	a := stated(pinJob())
	a.Latches[0].PressFit.Interference, a.Latches[0].PressFit.InterferenceTol = 0.5, ptr(0.0)
	r := mustAnalyse(t, a)
	lower, _ := Resolve(a.Lower)
	// (2/sqrt 3) 1.25 sigma ln(do/d), sigma in the layers.
	p := 2 / math.Sqrt(3) * 1.25 * lower.Strength.Value * math.Log(11.0/5)
	near(t, "transverse load", r.Latches[0].Transverse, p*math.Pi*5*10, 1e-9)
	found := false
	for _, w := range r.Latches[0].Warnings {
		found = found || w.Number == warnYield
	}
	if !found {
		t.Error("no warning that the boss yields")
	}
}

func TestTurningTheJobUpsideDown(t *testing.T) {
	other := map[string]string{"lower": "upper", "upper": "lower"}
	for i, a := range variants() {
		want := mustAnalyse(t, a)
		a.Lower, a.Upper = a.Upper, a.Lower
		l := &a.Latches[0]
		k := reflect.New(reflect.TypeOf(l.Joint())).Elem()
		k.Set(reflect.ValueOf(l.Joint()))
		for n := range k.NumField() {
			if k.Type().Field(n).Tag.Get("oneof") == "lower upper" {
				k.Field(n).SetString(other[k.Field(n).String()])
			}
		}
		*l = l.With(k.Interface().(Kind))
		got := mustAnalyse(t, a)
		near(t, "peak", got.Peak, want.Peak, 1e-12)
		near(t, "worst", got.Worst, want.Worst, 1e-12)
		s, w := got.Latches[0].Swing, want.Latches[0].Swing
		if s.Part == w.Part {
			t.Errorf("variant %d: the same part %q swings upside down", i, s.Part)
		}
		z := a.Latches[0].Z
		near(t, "room below is room above", s.ZHigh-z, z-w.ZLow, 1e-12)
		near(t, "and the other way", z-s.ZLow, w.ZHigh-z, 1e-12)
	}
}

// thinAt says how much softer the first latch may be for its thickness.
func thinAt(a Assembly) float64 {
	lower, _ := Resolve(a.Lower)
	upper, _ := Resolve(a.Upper)
	return readyJoint(a.Latches[0], lower, upper).thin
}
