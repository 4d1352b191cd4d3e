package force

import (
	"slices"
	"strings"
	"testing"

	"ramnest/force/planar"
)

func TestStaggerTakesLatchesOneAfterAnother(t *testing.T) {
	a := capJob()
	a.Latches = append(a.Latches, ballJob().Latches[0], armJob().Latches[0])
	a.Latches[1].At = a.Latches[1].At[:4]
	before := mustAnalyse(t, a)
	b, what, ok := Stagger(a)
	if !ok {
		t.Fatal("nothing gained")
	}
	after := mustAnalyse(t, b)
	highest := 0.0
	for _, l := range before.Latches {
		highest = max(highest, l.PeakAll)
	}
	if after.Peak < highest || after.Peak > 1.1*highest {
		t.Errorf("%s: peak %g N, the heaviest latch alone %g N", what, after.Peak, highest)
	}
	if after.P95 >= before.P95 || slices.Contains(numbers(after.Warnings), warnStagger) {
		t.Errorf("P95 %g N, before %g N; warnings %v", after.P95, before.P95, after.Warnings)
	}
	for _, l := range after.Latches {
		if slices.Contains(numbers(l.Warnings), warnNotFinished) {
			t.Errorf("%s does not come home", l.ID)
		}
	}
	near(t, "work", after.Work, before.Work, 0.02)
	if !strings.Contains(what.String(), "mm earlier") {
		t.Errorf("says %q", what)
	}
	if a.Latches[0].Engage != nil || a.Latches[1].Engage != nil || a.Latches[2].Engage != nil {
		t.Error("the assembly itself was changed")
	}
}

func TestStaggerHalvesASingleDesign(t *testing.T) {
	a := ballJob()
	before := mustAnalyse(t, a)
	b, _, ok := Stagger(a)
	if !ok || len(b.Latches) != 2 || len(b.Latches[0].At) != 3 || len(b.Latches[1].At) != 3 {
		t.Fatalf("%v, %+v", ok, b.Latches)
	}
	after := mustAnalyse(t, b)
	near(t, "half", after.Peak, before.Peak/2, 0.05)
	// Every other place of a hexagon has the hexagon's middle.
	if d := after.ThrustWander; d > 1e-9 {
		t.Errorf("the thrust line wanders by %g mm", d)
	}
	arms := armJob()
	arms.Latches[0].Cantilever.Toward = []planar.Point{{X: 1, Y: 0}, {X: 1, Y: 0}, {X: -1, Y: 0}, {X: -1, Y: 0}}
	b, _, ok = Stagger(arms)
	if !ok {
		t.Fatal("nothing gained with arms")
	}
	for _, l := range b.Latches {
		for i, p := range l.At {
			if toward := l.Cantilever.Toward[i]; toward.X*p.X < 0 {
				t.Errorf("arm at %v goes towards %v", p, toward)
			}
		}
	}
}

func TestStaggerKnowsWhereThereIsNothingToGain(t *testing.T) {
	pins := pinJob() // two places only
	if _, what, ok := Stagger(pins); ok {
		t.Errorf("two pins: %s", what)
	}
	pins.Latches[0].At = make([]planar.Point, 6) // friction stays to the seat
	if _, what, ok := Stagger(pins); ok {
		t.Errorf("six pins: %s", what)
	}
	faulty := capJob()
	faulty.Latches[0].Annular.Undercut = -1
	if _, _, ok := Stagger(faulty); ok {
		t.Error("a faulty job was staggered")
	}
}

// TestBandDoesNotCountOnADistanceThatTheProcessDoesNotKeep: rings that peak 0.1 mm
// apart in lift have the band of rings that peak together; the further apart, the less, and
// nowhere a step.
func TestBandDoesNotCountOnADistanceThatTheProcessDoesNotKeep(t *testing.T) {
	with := func(apart float64) Result {
		a := capJob()
		a.Latches[0].Annular.MatingAngle, a.Latches[0].Annular.Land = rad(40), 0
		b := a.Latches[0]
		b.ID, b.Engage = "second", ptr(mustAnalyse(t, a).Latches[0].Stroke+apart)
		a.Latches = append(a.Latches, b)
		return mustAnalyse(t, a)
	}
	together, near1, far := with(0), with(0.19), with(0.5)
	if near1.Peak >= 0.95*together.Peak {
		t.Fatalf("nominal %g N, together %g N", near1.Peak, together.Peak)
	}
	near(t, "P95", near1.P95, together.P95, 1e-12)
	near(t, "worst case", near1.Worst, together.Worst, 1e-12)
	last := near1.P95
	for lift := 0.2; lift < 0.6; lift += 0.02 {
		p95 := with(lift).P95
		if p95 > last*(1+1e-9) || p95 < 0.9*last {
			t.Errorf("P95 %g N at %.2f mm apart, %g N at 0.02 mm less", p95, lift, last)
		}
		last = p95
	}
	if far.P95 >= 0.95*together.P95 {
		t.Errorf("0.5 mm apart, of which PBF keeps 0.3: P95 %g N, together %g N", far.P95, together.P95)
	}
}

// TestStaggerLeavesPressedJointsToTheEnd, and tells what goes later.
func TestStaggerLeavesPressedJointsToTheEnd(t *testing.T) {
	a := pinJob()
	a.Upper = MaterialSpec{Material: "PA12"}
	a.Latches[0].At = a.Latches[0].At[:1]
	ring := capJob().Latches[0]
	ring.Engage = ptr(2.0) // not home at the seat: brought there
	ring.Annular.GrooveFloat = 0
	a.Latches = append(a.Latches, ring)
	late := a
	late.Latches = append([]Latch(nil), a.Latches...)
	late.Latches[1].Engage = ptr(30.0)
	b, what, ok := Stagger(late)
	if ok && (b.Latches[0].Engage != nil || !strings.Contains(what.String(), "rim")) {
		t.Errorf("moved %s; pin at %v", what, b.Latches[0].Engage)
	}
	// Three rings at one lift, one of them too early by far: it comes back.
	three := capJob()
	for _, id := range []string{"b", "c"} {
		l := three.Latches[0]
		l.ID = id
		three.Latches = append(three.Latches, l)
	}
	three.Latches[2].Engage = ptr(60.0)
	b, what, ok = Stagger(three)
	if !ok || !strings.Contains(what.String(), "later") {
		t.Fatalf("%v: %s", ok, what)
	}
	if r := mustAnalyse(t, b); r.Stroke > 20 {
		t.Errorf("stroke of %g mm", r.Stroke)
	}
}
