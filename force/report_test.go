package force

import (
	"math"
	"slices"
	"strings"
	"testing"

	"ramnest/force/planar"
	"ramnest/force/warning"
)

func numbers(ws []warning.Warning) []int {
	var out []int
	for _, w := range ws {
		out = append(out, w.Number)
	}
	return out
}

// TestWarningsAreRaised raises each warning of one latch and none without cause.
func TestWarningsAreRaised(t *testing.T) {
	for _, c := range []struct {
		name   string
		number int
		job    func() Assembly
		change func(*Latch, *Assembly)
	}{
		{"overstrained", warnOverstrained, armJob, func(l *Latch, _ *Assembly) { l.Cantilever.Thickness, l.Cantilever.TipThickness = 6, 6 }},
		{"locked", warnLockedRelease, capJob, func(l *Latch, _ *Assembly) { l.Use, l.Annular.ReturnAngle = "releasable", rad(80) }},
		{"not finished", warnNotFinished, capJob, func(l *Latch, _ *Assembly) { l.Engage = ptr(1.0) }},
		{"sharp edge", warnSharpEdge, pinJob, func(l *Latch, _ *Assembly) { l.PressFit.LeadInAngle = nil }},
		{"thick", warnThick, capJob, func(l *Latch, _ *Assembly) { l.Annular.InnerDiameter = 0 }},
		{"sharp root", warnSharpRoot, armJob, func(l *Latch, _ *Assembly) { l.Cantilever.RootRadius = nil }},
		{"small root", warnSharpRoot, armJob, func(l *Latch, _ *Assembly) { l.Cantilever.RootRadius = ptr(0.3) }},
		{"big deflection", warnBigDeflection, armJob, func(l *Latch, _ *Assembly) { l.Cantilever.Undercut, l.Cantilever.MatingAngle = 4.2, rad(20) }},
		{"ball room", warnBallRoom, ballJob, func(l *Latch, _ *Assembly) { l.Ball.SocketDiameter = 6.1 }},
		{"stem room", warnStemRoom, ballJob, func(l *Latch, _ *Assembly) { l.Ball.StemDiameter = 5.55 }},
		{"idle cone", warnCone, ballJob, func(l *Latch, _ *Assembly) { l.Ball.EntryAngle = ptr(rad(40)) }},
		{"wide finger", warnWideFinger, collarJob, func(l *Latch, _ *Assembly) { l.Annular.Slots = 2 }},
		{"layers", warnBuild, capJob, func(_ *Latch, a *Assembly) { a.Lower.Build = "across" }},
		{"fingers across layers", warnBendsAcross, collarJob, func(_ *Latch, a *Assembly) { a.Lower.Build = "along" }},
		{"fingers of the inner part, both parts alike", warnBendsAcross, capJob, func(l *Latch, _ *Assembly) {
			v := l.Annular
			v.Split, v.Slots, v.SlotWidth, v.SlotDepth = "inner", 8, 1.5, 12
		}},
		{"wall bends across its layers", warnWallBends, capJob, func(l *Latch, _ *Assembly) { l.Annular.EndDistance, l.Annular.Undercut = 20, 2 }},
		{"pin under its own force", warnPinPressed, pinJob, func(l *Latch, a *Assembly) {
			a.Upper = MaterialSpec{Material: "PA12"}
			l.PressFit.Interference = 0.12
		}},
		{"not sure to lock", warnHoldUnsure, capJob, func(l *Latch, _ *Assembly) { l.Annular.ReturnAngle = rad(62) }},
		{"may lock", warnLockedRelease, capJob, func(l *Latch, _ *Assembly) { l.Use, l.Annular.ReturnAngle = "releasable", rad(55) }},
		{"a ball that locks", warnLockedRelease, ballJob, func(l *Latch, a *Assembly) {
			l.Use, l.Ball.MouthDiameter, l.Ball.StemDiameter, l.Ball.EntryAngle = "releasable", 4.8, 3, ptr(rad(5))
			a.Lower.Friction, a.Upper.Friction = ptr(1.4), ptr(1.4)
		}},
	} {
		a := c.job()
		if slices.Contains(numbers(mustAnalyse(t, a).Latches[0].Warnings), c.number) && c.name != "fingers across layers" {
			t.Errorf("%s: warned without cause", c.name)
		}
		c.change(&a.Latches[0], &a)
		r := mustAnalyse(t, a)
		if !slices.Contains(numbers(r.Latches[0].Warnings), c.number) {
			t.Errorf("%s: no warning, only %v", c.name, r.Latches[0].Warnings)
		}
		for _, w := range r.Latches[0].Warnings {
			if !strings.HasPrefix(w.Text.String(), a.Latches[0].ID+": ") || strings.Contains(w.Text.String(), "%!") {
				t.Errorf("text %q", w.Text.String())
			}
		}
	}
}

func TestWarningsOfTheStep(t *testing.T) {
	a := capJob()
	b := a.Latches[0]
	b.ID, b.Engage = "second", ptr(mustAnalyse(t, a).Stroke+0.1)
	a.Latches = append(a.Latches, b)
	r := mustAnalyse(t, a)
	if !slices.Contains(numbers(r.Warnings), warnStagger) {
		t.Errorf("rings 0.1 mm apart: %v", r.Warnings)
	}
	near(t, "all at once", r.PeakStack, r.Latches[0].PeakAll+r.Latches[1].PeakAll, 1e-12)

	loose := pinJob()
	loose.Latches[0].PressFit.InterferenceTol = nil // the process keeps 0.2 mm
	r = mustAnalyse(t, loose)
	if !slices.Contains(numbers(r.Warnings), warnLoose) || r.Loose == 0 {
		t.Errorf("a printed fit is never loose? %v", r.Warnings)
	}
	slippery := capJob()
	slippery.Lower.Friction, slippery.Upper.Friction = ptr(0.1), ptr(0.1)
	slippery.Latches[0].Engage = ptr(0.5)
	r = mustAnalyse(t, slippery)
	if !slices.Contains(numbers(r.Warnings), warnSpringback) {
		t.Fatalf("stopped on its lead-in, it must spring back: %v", r.Warnings)
	}
	// Pushing in needs tan(alpha + rho), holding up tan(alpha - rho), each with the
	// lever of its axial force.
	rho := math.Atan(0.1)
	lower, _ := Resolve(slippery.Lower)
	lever := readyJoint(slippery.Latches[0], lower, lower).lever
	axial := func(angle float64) float64 { f := math.Tan(angle); return f / (1 - lever*f) }
	near(t, "springback", r.Springback, r.SeatForce*axial(rad(25)-rho)/axial(rad(25)+rho), 1e-9)
}

func TestBallStoppedOnItsLipSpringsBack(t *testing.T) {
	a := ballJob()
	a.Lower.Friction, a.Upper.Friction = ptr(0.05), ptr(0.05)
	a.Latches[0].Engage = ptr(0.4)
	r := mustAnalyse(t, a)
	if !(r.Springback > 0 && r.Springback < r.SeatForce) {
		t.Errorf("springback %g, seat force %g", r.Springback, r.SeatForce)
	}
	if home := mustAnalyse(t, ballJob()); home.Springback != 0 {
		t.Errorf("home, but springs back with %g N", home.Springback)
	}
}

func TestSwingSaysWhereArmsGo(t *testing.T) {
	a := armJob()
	s := mustAnalyse(t, a).Latches[0].Swing
	if s.Part != "lower" || s.Outward != 1.2 || s.Inward != 0 || s.Width != 6 || s.Radius != 0 || s.ZLow != 15-19 || s.ZHigh <= 15 {
		t.Errorf("%+v", s)
	}
	for i, p := range a.Latches[0].At {
		d := s.Toward[i]
		near(t, "unit", math.Hypot(d.X, d.Y), 1, 1e-12)
		if d.X*p.X+d.Y*p.Y <= 0 {
			t.Errorf("arm at %v goes towards %v, not outward", p, d)
		}
	}
	c := a.Latches[0].Cantilever
	c.Bends, c.Toward = "inward", []planar.Point{{X: 2, Y: 0}}
	s = mustAnalyse(t, a).Latches[0].Swing
	if s.Outward != 0 || s.Inward != 1.2 || s.Toward[3] != (planar.Point{X: 1, Y: 0}) {
		t.Errorf("%+v", s)
	}
}

func TestSwingOfRingsIsWhatTheyMove(t *testing.T) {
	r := mustAnalyse(t, capJob())
	s := r.Latches[0].Swing
	if s.Part != "lower" || s.Radius != 21.6 || s.ZHigh != 23 || s.ZLow >= 20 {
		t.Errorf("%+v", s)
	}
	if s.Outward <= 0 || s.Outward >= 0.4 {
		t.Errorf("the outer ring moves %g mm of the 0.4 that both share", s.Outward)
	}
	steel := capJob()
	steel.Upper = MaterialSpec{Material: "steel"}
	near(t, "all of it on a steel plug", mustAnalyse(t, steel).Latches[0].Swing.Outward, 0.4, 0.02)
}

func TestThrustPathAndTilt(t *testing.T) {
	r := mustAnalyse(t, mixed())
	if len(r.ThrustPath) == 0 {
		t.Fatal("no path")
	}
	last := math.Inf(1)
	for _, p := range r.ThrustPath {
		if p.Lift > last || p.Force < 0 || !finite(p.At.X) || !finite(p.At.Y) {
			t.Errorf("point %+v after lift %g", p, last)
		}
		last = p.Lift
	}
	if m := r.TiltAbout(r.Thrust); m < 0 || m >= r.TiltAbout(planar.Point{X: 500, Y: 0}) {
		t.Errorf("tilt about the thrust line %g, about a far point %g", m, r.TiltAbout(planar.Point{X: 500, Y: 0}))
	}
}

func TestReleasableCountsTheRepeatedStrain(t *testing.T) {
	a := armJob()
	once := mustAnalyse(t, a).Latches[0].Permitted
	a.Latches[0].Use = "releasable"
	near(t, "permitted", mustAnalyse(t, a).Latches[0].Permitted, 0.6*once, 1e-12)
}

func TestSeparationOfAShallowFlankIsBelowASteepOne(t *testing.T) {
	last := 0.0
	for _, back := range []float64{10, 20, 30, 40, 50} {
		a := stated(capJob())
		a.Latches[0].Annular.ReturnAngle = rad(back)
		l := mustAnalyse(t, a).Latches[0]
		if l.SelfLocking || l.Separation <= last {
			t.Errorf("return angle %g deg: %g N, less steep %g N", back, l.Separation, last)
		}
		last = l.Separation
	}
	a := stated(capJob())
	a.Latches[0].Annular.ReturnAngle = rad(60) // friction 0.6 locks above 59.04 deg
	if l := mustAnalyse(t, a).Latches[0]; !l.SelfLocking || l.Separation != 0 {
		t.Errorf("must lock: %+v", l)
	}
}

// TestBallPullsOutAsItPushesIn but for the lever of the axial force, which hinders
// the one and helps the other.
func TestBallPullsOutAsItPushesIn(t *testing.T) {
	a := ballJob()
	lower, _ := Resolve(a.Lower)
	j := readyJoint(a.Latches[0], lower, lower)
	j.lever = 0
	p, s := j.nominalAt(0.3)
	in, _ := sumCurve([]profile{p}, []int{1}).Peak()
	out, locked := j.separation(0.3, s, &p)
	if locked {
		t.Fatal("locked")
	}
	near(t, "without the lever", out, in, 1e-9)
	if r := mustAnalyse(t, a); r.Latches[0].Separation >= r.Latches[0].PeakEach {
		t.Errorf("pulled out by %g N, pushed in by %g N", r.Latches[0].Separation, r.Latches[0].PeakEach)
	}
}

// TestHoldAtEitherEnd: a pin at the ends of friction, size, moduli and model, by
// Lame, once more.
func TestHoldAtEitherEnd(t *testing.T) {
	a := stated(pinJob())
	l := mustAnalyse(t, a).Latches[0]
	hold := func(side, model float64) float64 {
		mu, delta, factor := 0.4*math.Pow(1.25, side), 0.05+side*0.02, 1+side*0.15
		w := (11.0*11 + 25) / (11*11 - 25)
		p := delta / (5 * ((w+0.4)/(2000*factor) + 0.7/(210000*factor)))
		return model * mu * p * math.Pi * 5 * 10
	}
	near(t, "nominal", l.Separation, hold(0, 1), 1e-9)
	near(t, "least", l.SeparationLow, hold(-1, 1/1.10), 1e-9)
	near(t, "most", l.SeparationHigh, hold(1, 1.10), 1e-9)
	a.Latches[0].PressFit.InterferenceTol = ptr(0.06)
	if l := mustAnalyse(t, a).Latches[0]; l.SeparationLow != 0 {
		t.Errorf("may be loose, and holds %g N", l.SeparationLow)
	}
}

// TestWarningsBeginWhereTheyShould: on either side of each threshold.
func TestWarningsBeginWhereTheyShould(t *testing.T) {
	fit := func(share float64) func(*Latch, *Assembly) {
		return func(l *Latch, a *Assembly) {
			l.PressFit.Interference, l.PressFit.InterferenceTol, l.PressFit.JointDiameter, l.PressFit.Fit, l.PressFit.PinFinished = 0, nil, 0, "5 H7/s6", true
			a.Lower.Tolerance, a.Lower.ToleranceShare = ptr(share*0.006), ptr(0.0) // half of IT7, 12 um
		}
	}
	for _, c := range []struct {
		name      string
		number    int
		job       func() Assembly
		below, at func(*Latch, *Assembly)
	}{
		{"room round the ball, 0.13 mm", warnBallRoom, ballJob, func(l *Latch, _ *Assembly) { l.Ball.SocketDiameter = 6.264 }, func(l *Latch, _ *Assembly) { l.Ball.SocketDiameter = 6.256 }},
		{"room round the stem, 0.06 mm", warnStemRoom, ballJob, func(l *Latch, _ *Assembly) { l.Ball.StemDiameter = 5.476 }, func(l *Latch, _ *Assembly) { l.Ball.StemDiameter = 5.484 }},
		{"wide fingers, 120 deg", warnWideFinger, collarJob, func(l *Latch, _ *Assembly) { l.Annular.Slots, l.Annular.SlotWidth = 3, 0.3 }, func(l *Latch, _ *Assembly) { l.Annular.Slots, l.Annular.SlotWidth = 2, 18 }},
		{"big deflection, a fifth of the length", warnBigDeflection, armJob, func(l *Latch, _ *Assembly) { l.Cantilever.Undercut, l.Cantilever.MatingAngle = 3.75, rad(10) }, func(l *Latch, _ *Assembly) { l.Cantilever.Undercut, l.Cantilever.MatingAngle = 3.85, rad(10) }},
		{"fillet of half the thickness", warnSharpRoot, armJob, func(l *Latch, _ *Assembly) { l.Cantilever.RootRadius = ptr(1.02) }, func(l *Latch, _ *Assembly) { l.Cantilever.RootRadius = ptr(0.98) }},
		{"thick wall, 0.8 of its radius", warnThick, capJob, func(l *Latch, _ *Assembly) { l.Annular.InnerDiameter = 17.4 }, func(l *Latch, _ *Assembly) { l.Annular.InnerDiameter = 16.9 }},
		{"a process that does not keep the fit", warnFitOnPrint, pinJob, fit(1.47), fit(1.53)},
	} {
		a, b := c.job(), c.job()
		c.below(&a.Latches[0], &a)
		c.at(&b.Latches[0], &b)
		if slices.Contains(numbers(mustAnalyse(t, a).Latches[0].Warnings), c.number) {
			t.Errorf("%s: warned too early", c.name)
		}
		if !slices.Contains(numbers(mustAnalyse(t, b).Latches[0].Warnings), c.number) {
			t.Errorf("%s: not warned", c.name)
		}
	}
	text := func(a Assembly, number int) string {
		for _, w := range mustAnalyse(t, a).Latches[0].Warnings {
			if w.Number == number {
				return w.Text.String()
			}
		}
		return ""
	}
	over := armJob()
	over.Latches[0].Cantilever.Thickness, over.Latches[0].Cantilever.TipThickness, over.Latches[0].Cantilever.RootRadius = 6, 0, ptr(6.0)
	// 3 t y/(2 L^2) of 4 %.
	if got, want := text(over, warnOverstrained), "arm: bending of the arm, with the root's concentration: 2.99 % is above the permitted 4 %"; strings.Contains(got, "is above") {
		t.Errorf("%q: 2.99 %% of 4 %% is no reason to warn like %q", got, want)
	}
	over.Latches[0].Use = "releasable"
	if got, want := text(over, warnOverstrained), "arm: bending of the arm, with the root's concentration: 2.99 % is above the permitted 2.4 %"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	// The pin's own stress: force over section, here round about its strength.
	pin := pinJob()
	pin.Upper = MaterialSpec{Material: "PA12"}
	force := mustAnalyse(t, pin).Latches[0].PeakEach
	stress := force / (math.Pi * 2.5 * 2.5)
	for share, want := range map[float64]bool{1.04: false, 0.96: true} {
		pin.Upper.Strength = ptr(share * stress)
		if got := text(pin, warnPinPressed) != ""; got != want {
			t.Errorf("strength %g of the stress: warned %v", share, got)
		}
	}
}
