package force

import (
	"math"
	"reflect"
	"testing"

	"ramnest/force/planar"
)

func mustAnalyse(t *testing.T, a Assembly) Result {
	t.Helper()
	r, err := Analyse(a)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// mixed joins pins and rings that engage at different depths.
func mixed() Assembly {
	a, p := capJob(), pinJob()
	a.Upper = MaterialSpec{Material: "PC", Process: "moulded"}
	p.Latches[0].At = []planar.Point{{X: 30, Y: 5}, {X: -20, Y: 4}, {X: 3, Y: -25}}
	early := p.Latches[0]
	early.ID, early.Engage, early.At = "early pin", ptr(14.5), []planar.Point{{X: 8, Y: 8}}
	a.Latches = append(a.Latches, p.Latches[0], early)
	return a
}

func TestThrustLineFollowsTheForce(t *testing.T) {
	r := mustAnalyse(t, pinJob())
	if r.Thrust != (planar.Point{}) || r.TiltMoment != 0 {
		t.Errorf("two equal pins: thrust %v, tilt %g, want the middle and 0", r.Thrust, r.TiltMoment)
	}
	// Add a third pin that is not there yet at the others' peak but has passed its own.
	a := pinJob()
	a.Latches = append(a.Latches, a.Latches[0])
	a.Latches[1].ID, a.Latches[1].At = "off", []planar.Point{{X: 0, Y: 30}}
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
	a.Latches[0].At = make([]planar.Point, 40)
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
