package force

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"testing"
)

func mustAnalyse(t *testing.T, a Assembly) Result {
	t.Helper()
	r, err := Analyse(a)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestMoreUndercutOrInterferenceNeverLowersThePeak(t *testing.T) {
	var lastCap, lastPin Result
	for i := range 60 {
		a, p := capJob(), pinJob()
		a.Draws, p.Draws = 100, 100
		a.Latches[0].Annular.Undercut = 0.05 * float64(i+1)
		p.Latches[0].PressFit.Interference = 0.005 * float64(i+1)
		rc, rp := mustAnalyse(t, a), mustAnalyse(t, p)
		if rc.Peak < lastCap.Peak || rp.Peak < lastPin.Peak || rc.Worst < lastCap.Worst || rp.Worst < lastPin.Worst {
			t.Errorf("step %d: peaks fell: cap %g from %g, pin %g from %g", i, rc.Peak, lastCap.Peak, rp.Peak, lastPin.Peak)
		}
		lastCap, lastPin = rc, rp
	}
}

func TestManyEqualLatchesAreOneTimesTheirNumber(t *testing.T) {
	one := mustAnalyse(t, capJob())
	a := capJob()
	a.Latches[0].At = make([]Point, 7)
	many := mustAnalyse(t, a)
	near(t, "peak", many.Peak, 7*one.Peak, 1e-12)
	near(t, "work", many.Work, 7*one.Work, 1e-12)
	b := capJob()
	b.Latches = append(b.Latches, b.Latches[0])
	b.Latches[1].ID = "second"
	two := mustAnalyse(t, b)
	near(t, "two entries", two.Peak, 2*one.Peak, 1e-12)
}

// mixed joins pins and rings that engage at different depths.
func mixed() Assembly {
	a, p := capJob(), pinJob()
	a.Upper = MaterialSpec{Material: "PC", Process: "moulded"}
	p.Latches[0].At = []Point{{30, 5}, {-20, 4}, {3, -25}}
	early := p.Latches[0]
	early.ID, early.Engage, early.At = "early pin", ptr(14.5), []Point{{8, 8}}
	a.Latches = append(a.Latches, p.Latches[0], early)
	return a
}

func TestWorkIsTheAreaUnderTheCurve(t *testing.T) {
	for _, a := range []Assembly{capJob(), pinJob(), mixed()} {
		r := mustAnalyse(t, a)
		const n = 400000
		var sum, peak float64
		for i := range n {
			f := r.Curve.At(r.Stroke * (float64(i) + 0.5) / n)
			sum += f * r.Stroke / n
			peak = max(peak, f)
		}
		near(t, "work", r.Work, sum, 1e-4)
		near(t, "peak", r.Peak, peak, 1e-3)
		var each float64
		for _, l := range r.Latches {
			each += l.Work
		}
		near(t, "sum of the latches' work", r.Work, each, 1e-9)
	}
}

func TestThrustLineFollowsTheForce(t *testing.T) {
	r := mustAnalyse(t, pinJob())
	if r.Thrust != (Point{}) || r.TiltMoment != 0 {
		t.Errorf("two equal pins: thrust %v, tilt %g, want the middle and 0", r.Thrust, r.TiltMoment)
	}
	// Add a third pin that is not there yet at the others' peak but has passed its own.
	a := pinJob()
	a.Latches = append(a.Latches, a.Latches[0])
	a.Latches[1].ID, a.Latches[1].At = "off", []Point{{0, 30}}
	r = mustAnalyse(t, a)
	near(t, "thrust y", r.Thrust.Y, 10, 1e-12)
	a.Latches[1].PressFit = &PressFit{Outside: "lower", JointDiameter: 5, Interference: 0.1, OuterDiameter: 11, EngagementLength: 10, LeadInAngle: ptr(rad(15))}
	r = mustAnalyse(t, a)
	if !(r.Thrust.Y > 14 && r.TiltMoment > 0) {
		t.Errorf("double interference at y = 30: thrust %v, tilt %g", r.Thrust, r.TiltMoment)
	}
}

func TestBandIsOrderedSeededAndHoldsTheNominal(t *testing.T) {
	for _, a := range []Assembly{capJob(), pinJob(), mixed()} {
		a.Draws = 0
		r := mustAnalyse(t, a)
		if !(0 < r.P5 && r.P5 < r.P50 && r.P50 < r.P95 && r.P95 < r.Worst && r.Design == r.P95) {
			t.Errorf("band out of order: %g %g %g worst %g", r.P5, r.P50, r.P95, r.Worst)
		}
		if r.Peak < r.P5 || r.Peak > r.P95 {
			t.Errorf("nominal %g outside %g to %g", r.Peak, r.P5, r.P95)
		}
		if !(r.P95StdErr > 0 && r.P95StdErr < 0.03*r.P95) {
			t.Errorf("standard error of P95 %g at P95 %g", r.P95StdErr, r.P95)
		}
		if again := mustAnalyse(t, a); !reflect.DeepEqual(again, r) {
			t.Error("same seed, other result")
		}
		a.Seed++
		if other := mustAnalyse(t, a); other.P95 == r.P95 || math.Abs(other.P95-r.P95) > 6*math.Hypot(r.P95StdErr, other.P95StdErr) {
			t.Errorf("other seed: P95 %g against %g, standard error %g", other.P95, r.P95, r.P95StdErr)
		}
	}
}

func TestCommonCausesDoNotAverageOut(t *testing.T) {
	one := mustAnalyse(t, capJob())
	a := capJob()
	a.Latches[0].At = make([]Point, 40)
	many := mustAnalyse(t, a)
	if spread := (many.P95 - many.P5) / many.P50; spread < 0.5*(one.P95-one.P5)/one.P50 {
		t.Errorf("relative spread of 40 latches %g: common causes were averaged away", spread)
	}
}

func TestHumpsOfTwoDepths(t *testing.T) {
	a := capJob()
	second := a.Latches[0]
	second.ID, second.Engage = "late", ptr(6.0)
	a.Latches = append(a.Latches, second)
	if r := mustAnalyse(t, a); r.Humps != 2 {
		t.Errorf("two rings 3 mm apart: %d humps, want 2", r.Humps)
	}
	if r := mustAnalyse(t, pinJob()); r.Humps != 1 || r.SeatForce != r.Peak {
		t.Errorf("pins: %d humps, seat force %g of %g, want 1 and equal", r.Humps, r.SeatForce, r.Peak)
	}
}

func TestSteelPlugIsRigid(t *testing.T) {
	a := capJob()
	a.Upper = MaterialSpec{Material: "steel"}
	r := mustAnalyse(t, a)
	if got := r.Latches[0].ElasticPart; got != "lower" {
		t.Errorf("elastic part %q, want lower", got)
	}
	near(t, "strain is y/d", r.Latches[0].Strain, 0.8/40, 0.02)
}

func TestPartsSwappedGiveTheSameForce(t *testing.T) {
	a := mixed()
	want := mustAnalyse(t, a)
	a.Lower, a.Upper = a.Upper, a.Lower
	for i := range a.Latches {
		l := &a.Latches[i]
		if l.Annular != nil {
			v := *l.Annular
			v.Outside = "upper"
			l.Annular = &v
		} else {
			v := *l.PressFit
			v.Outside = "upper"
			l.PressFit = &v
		}
	}
	got := mustAnalyse(t, a)
	near(t, "peak", got.Peak, want.Peak, 1e-12)
	near(t, "worst", got.Worst, want.Worst, 1e-12)
}

func TestFaultsNameTheField(t *testing.T) {
	for _, c := range []struct {
		field  string
		change func(*Assembly)
	}{
		{"lower.material", func(a *Assembly) { a.Lower.Material = "unobtainium" }},
		{"upper.modulus", func(a *Assembly) { a.Upper.Modulus = ptr(math.NaN()) }},
		{"upper.process", func(a *Assembly) { a.Upper.Process = "MEX" }},
		{"lower.build", func(a *Assembly) { a.Lower.Build = "up" }},
		{"latches", func(a *Assembly) { a.Latches = nil }},
		{"draws", func(a *Assembly) { a.Draws = -1 }},
		{"latches[0].at", func(a *Assembly) { a.Latches[0].At = nil }},
		{"latches[0].at[0]", func(a *Assembly) { a.Latches[0].At[0].X = math.Inf(1) }},
		{"latches[0].z", func(a *Assembly) { a.Latches[0].Z = math.NaN() }},
		{"latches[0].engage", func(a *Assembly) { a.Latches[0].Engage = ptr(-1) }},
		{"latches[0].use", func(a *Assembly) { a.Latches[0].Use = "often" }},
		{"latches[0].id", func(a *Assembly) { a.Latches[0].ID = "" }},
		{"latches[1].id", func(a *Assembly) { a.Latches = append(a.Latches, a.Latches[0]) }},
		{"latches[0]", func(a *Assembly) { a.Latches[0].Annular = nil }},
		{"latches[0].annular.undercut", func(a *Assembly) { a.Latches[0].Annular.Undercut = -0.1 }},
		{"latches[0].annular.outside", func(a *Assembly) { a.Latches[0].Annular.Outside = "" }},
		{"latches[0].annular.outer_diameter", func(a *Assembly) { a.Latches[0].Annular.OuterDiameter = 39 }},
		{"latches[0].annular.inner_diameter", func(a *Assembly) { a.Latches[0].Annular.InnerDiameter = 41 }},
		{"latches[0].annular.return_angle", func(a *Assembly) { a.Latches[0].Annular.ReturnAngle = 2 }},
		{"latches[0].annular.mating_angle", func(a *Assembly) { a.Latches[0].Annular.MatingAngle = rad(70) }},
		{"latches[0].annular.far_distance", func(a *Assembly) { a.Latches[0].Annular.FarEnd = "floored" }},
	} {
		a := capJob()
		c.change(&a)
		fields := []string{}
		for _, f := range a.Validate() {
			fields = append(fields, f.Field)
			if f.Problem == "" {
				t.Errorf("%s: fault without a problem", f.Field)
			}
		}
		if !slices.Contains(fields, c.field) {
			t.Errorf("want a fault in %s, got %v", c.field, fields)
		}
		_, err := Analyse(a)
		if _, ok := errors.AsType[Fault](err); !ok {
			t.Errorf("%s: Analyse returned %v, want faults", c.field, err)
		}
	}
}
