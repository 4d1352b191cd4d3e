package force

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"ramnest/force/fault"
)

// Coefficients that only the formulas themselves held, each by a second way.

// TestBallTooSmallForItsTolerance: nominal opening and 2.2 times the tolerance must
// stay below 0.6 of the radius; common practice, no source.
func TestBallTooSmallForItsTolerance(t *testing.T) {
	for tol, want := range map[float64]bool{0.72: false, 0.735: true} {
		a := ballJob()
		b := a.Latches[0].Ball
		b.BallTol, b.MouthTol = ptr(tol), ptr(tol)
		got := slices.ContainsFunc(a.Validate(), func(f fault.Fault) bool { return strings.HasSuffix(f.Field, "ball_diameter") })
		if got != want {
			t.Errorf("plus or minus %g mm on either: refused %v, want %v", tol, got, want)
		}
	}
}

// TestHumpsAreFeltFromATwentiethOn.
func TestHumpsAreFeltFromATwentiethOn(t *testing.T) {
	straight := func(hi, lo, from, to float64) sumPiece {
		return sumPiece{piece: piece{Hi: hi, Lo: lo, F0: from, F1: (to - from) / (hi - lo)}}
	}
	for valley, want := range map[float64]int{95.2: 1, 94.8: 2, 50: 2} {
		c := Curve{[]sumPiece{straight(4, 3, 0, 100), straight(3, 2, 100, valley), straight(2, 1, valley, 100), straight(1, 0, 100, 0)}}
		if got := c.humps(0.05); got != want {
			t.Errorf("valley of %g between 100 and 100: %d humps, want %d", valley, got, want)
		}
	}
	// So does a rise to the seat.
	for end, want := range map[float64]int{54.8: 1, 55.2: 2} {
		c := Curve{[]sumPiece{straight(3, 2, 0, 100), straight(2, 1, 100, 50), straight(1, 0, 50, end)}}
		if got := c.humps(0.05); got != want {
			t.Errorf("from 50 to %g at the seat: %d humps, want %d", end, got, want)
		}
	}
}

// TestSlottedMemberHasNoGuide: it counts as 1 in the ratio of the two models.
func TestSlottedMemberHasNoGuide(t *testing.T) {
	a := collarJob()
	m, _ := Resolve(a.Lower)
	v := a.Latches[0].Annular
	const ko, ki = 300, 700
	// A bead makes either stiffer than the line of which the guide speaks.
	line := v.innerLine(m)
	r, _, _, _ := GuideRatio(line, 40, 36.8, false, 40, GeometricFactorInner(40, 36.8, 0.4))
	near(t, "outer slotted", v.guideRatio(m, m, ko, ki), (1.0/ko+r/RingStiffness(line, 40, 36.8, false))/(1.0/ko+1.0/ki), 1e-12)
	v.Split = "inner"
	line = v.outerLine(m)
	r, _, _, _ = GuideRatio(line, 43.2, 40, true, 40, GeometricFactorOuter(40, 43.2, 0.4))
	near(t, "inner slotted", v.guideRatio(m, m, ko, ki), (r/RingStiffness(line, 43.2, 40, true)+1.0/ki)/(1.0/ko+1.0/ki), 1e-12)
}

// TestGuideBetweenItsTwoPlaces: r0 at the end, r1 from 1.8 sqrt(d t) on, their
// geometric mean halfway.
func TestGuideBetweenItsTwoPlaces(t *testing.T) {
	tube := Tube{Radius: 10.75, Wall: 1.5, Modulus: 2000, Poisson: 0.4}
	at := func(mouth float64) (r, r0, r1, u float64) {
		tube.Mouth = mouth
		return GuideRatio(tube, 23, 20, true, 20, GeometricFactorOuter(20, 23, 0.4))
	}
	remote := 1.8 * math.Sqrt(20*1.5)
	r, r0, r1, _ := at(0)
	near(t, "at the end", r, r0, 1e-12)
	r, _, _, u := at(remote / 2)
	near(t, "halfway", r, math.Sqrt(r0*r1), 1e-9)
	near(t, "place", u, 0.5, 1e-12)
	for _, far := range []float64{1, 1.05, 3} {
		r, _, _, u = at(far * remote)
		near(t, "remote", r, r1, 1e-12)
		near(t, "place", u, 1, 1e-12)
	}
}

// balanced shares a movement between two springs whose modulus falls along a line, by
// halving.
func balanced(ko, ki, ao, ai, w float64) (load, wo float64) {
	lo, hi := 0.0, w
	for range 80 {
		wo = (lo + hi) / 2
		if ko*wo*(1-wo/ao) < ki*(w-wo)*(1-(w-wo)/ai) {
			lo = wo
		} else {
			hi = wo
		}
	}
	return ko * wo * (1 - wo/ao), wo
}

// TestSecantLineASecondTime: the line of PC meets zero at a strain of 9.33 %, which is
// 0.0933 d/2 of radial movement.
func TestSecantLineASecondTime(t *testing.T) {
	pc := stated(armJob()).Lower
	ring := capJob()
	ring.Lower, ring.Upper = pc, pc
	ko, _ := wallMember(43.2, 40, 3, 0, 2310, 0.37, Long, true)
	ki, _ := wallMember(40, 36.8, 2, 0, 2310, 0.37, Long, false)
	load, wo := balanced(ko, ki, 0.0933*20, 0.0933*20, 0.4)
	v := explained(ring)
	near(t, "ring: load", v["P"], load, 2e-3)
	near(t, "ring: outer strain", v["eps_o"], 2*wo/40, 2e-3)
	near(t, "ring: inner strain", v["eps_i"], 2*(0.4-wo)/40, 2e-3)

	ball := stated(ballJob())
	ball.Lower = pc
	k, _ := wallUnder(9, 5.6, 1.7/8, 1.7/4, 8-1.7/8, 2310, 0.37, Floored, true)
	near(t, "ball: load, past the top of its line", explained(ball)["P"], k*0.0933*2.8/4, 2e-3)
	ball.Latches[0].Ball.MouthDiameter = 5.8
	k, _ = wallUnder(9, 5.8, 0.2, 0.4, 7.8, 2310, 0.37, Floored, true)
	near(t, "ball: load", explained(ball)["P"], k*0.1*(1-0.1/(0.0933*2.9)), 2e-3)

	pin := stated(pinJob())
	pin.Lower, pin.Upper = pc, pc
	wh, ws := (121.0+25)/(121-25), 1.0
	kh, ks := 2*math.Pi*2310/(wh+0.37), 2*math.Pi*2310/(ws-0.37)
	load, wo = balanced(kh, ks, 0.0933*2.5, 0.0933*2.5, 0.025)
	v = explained(pin)
	near(t, "pin: load", v["P"], load, 1e-6)
	near(t, "pin: strain", v["eps_o"], 2*wo/5, 1e-6)
	r := mustAnalyse(t, pin).Latches[0]
	near(t, "pin: strain nearest its limit", r.Strain, max(2*wo/5, 2*(0.025-wo)/5), 1e-6)

	// A soft pin in a hub of steel: all of the strain is its own.
	pin.Lower = MaterialSpec{Material: "steel", Figures: Figures{StrainOnce: ptr(0.5)}}
	pin.Latches[0].PressFit.EngagementLength = 3 // a longer one would lock
	wo = 0.025 * ks / (ks + 2*math.Pi*210000/(wh+0.3))
	r = mustAnalyse(t, pin).Latches[0]
	near(t, "soft pin: strain", r.Strain, 2*(0.025-wo)/5, 5e-3)
	if r.StrainOf != "hoop of the inner part" || r.ElasticPart != "upper" {
		t.Errorf("soft pin: %s, %s gives way", r.StrainOf, r.ElasticPart)
	}
}

// TestModelErrorOfThickWallsAndBeads: 1.15 up to a wall of 0.8 of its radius, 0.2 per
// radius more beyond, by the share of the give; and a bead as a hoop.
func TestModelErrorOfThickWallsAndBeads(t *testing.T) {
	a := capJob()
	v := a.Latches[0].Annular
	v.InnerDiameter, v.Undercut, v.Land = 0, 0.01, 0
	m, _ := Resolve(a.Lower)
	ko, _ := wallMember(43.2, 40, 3, 0, 2000, 0.4, Long, true)
	ki, _ := wallMember(40, 0, 2, 0, 2000, 0.4, Long, false)
	thick := 1.15 + 0.2*(2-0.8)
	near(t, "solid pin alone", memberModel(v.innerTube(m)), thick, 1e-12)
	near(t, "thin wall alone", memberModel(v.outerTube(m)), 1.15, 1e-12)
	near(t, "solid pin", math.Exp(v.ready(m, m, "").modelUp), (1/ko+1/ki)/(1/(1.15*ko)+1/(thick*ki)), 2e-3)

	v.InnerDiameter, v.Undercut, v.Land = 36.8, 2, 1
	ki, _ = wallMember(40, 36.8, 2, 0, 2000, 0.4, Long, false)
	section := 1 * (1 + 0.5*(1/math.Tan(rad(25))+1/math.Tan(rad(40))))
	hoop := 2 * math.Pi * 2000 * section / 20
	stiffer := max((1/ko+1/ki)/(1/(ko+hoop)+1/ki), (1/ko+1/ki)/(1/ko+1/(ki+hoop)))
	near(t, "bead", math.Exp(v.ready(m, m, "").modelUp), 1.15*stiffer, 2e-3)
}

// TestCantileverStrainAtItsRoot: unstated fillets count as a tenth of the thickness,
// 1.9545 times (Norton, from memory); a base that gives takes its share of strain and
// force.
func TestCantileverStrainAtItsRoot(t *testing.T) {
	a := armJob()
	c := a.Latches[0].Cantilever
	c.TipThickness = 0
	c.RootRadius = ptr(0.2)
	stated := mustAnalyse(t, a).Latches[0]
	near(t, "3 t y/(2 L^2)", stated.Strain, 1.9545*1.5*2*1.2/(19*19), 1e-4)
	c.RootRadius = nil
	near(t, "unstated", mustAnalyse(t, a).Latches[0].Strain, stated.Strain, 1e-12)
	for _, shape := range []string{"straight", "l_arm", "u_arm", "rocker"} {
		c.Shape, c.BaseLength, c.BaseThickness, c.BendRadius, c.BarRadius, c.BarLength = shape, 8, 1.6, 3, 1.2, 8
		m, _ := Resolve(a.Lower)
		c.BaseFactor = nil
		rigid := c.spring(m)
		c.BaseFactor = ptr(1.5)
		soft := c.spring(m)
		near(t, shape+": stiffness", soft.stiffness, rigid.stiffness/1.5, 1e-12)
		near(t, shape+": strain", max(soft.axial, soft.across), max(rigid.axial, rigid.across)/1.5, 1e-12)
		// At the same force the arm bends as before and its root turns by half of that
		// over its length; by a moment alike.
		near(t, shape+": slope", soft.slope*1.5, rigid.slope+0.5/19, 1e-12)
		near(t, shape+": turn", soft.turn*soft.slope*1.5, rigid.turn*rigid.slope+0.5/(19*19), 1e-12)
		if shape == "rocker" {
			near(t, "slope of a lever", rigid.slope, 1.0/19, 1e-12)
			near(t, "turn of a lever", rigid.turn, 1.0/19, 1e-12)
		}
	}
}

// TestStripsAndBarsKeepTheirOwnLimit: what bends across the axis has no fillet, what
// twists has.
func TestStripsAndBarsKeepTheirOwnLimit(t *testing.T) {
	strip := armSpring{axial: 0.01, root: 0.01, across: 0.03, kt: 1.5}
	if s, l := strip.governs(0.02, 0.04); s != 0.015 || l != 0.02 {
		t.Errorf("root governs: %g of %g", s, l)
	}
	if s, l := strip.governs(0.02, 0.03); s != 0.03 || l != 0.03 {
		t.Errorf("strip governs: %g of %g", s, l)
	}
	bar := armSpring{root: 0.01, across: 0.01, kt: 1.5}
	if s, l := bar.governs(0.02, 0.04); s != 0.015 || l != 0.04 {
		t.Errorf("bar: %g of %g", s, l)
	}
}

// TestUnstatedTolerances: that of both processes on a diameter, half of it on what has
// one face each.
func TestUnstatedTolerances(t *testing.T) {
	arm, rib, ring, pin, ball := armJob(), ribJob(), capJob(), pinJob(), ballJob()
	arm.Latches[0].Cantilever.UndercutTol = nil
	rib.Latches[0].CrushRib.CrushTol = nil
	ring.Latches[0].Annular.UndercutTol = nil
	pin.Latches[0].PressFit.InterferenceTol = nil
	ball.Latches[0].Ball.BallTol, ball.Latches[0].Ball.MouthTol = nil, nil
	for _, c := range []struct {
		name         string
		job          Assembly
		outer, inner float64
	}{
		{"arm of moulded PC", arm, 0.025, 0.025},
		{"ribs of PETG on steel", rib, 0.15, 0.005},
		{"ring of PA12", ring, 0.2, 0.2},
		{"steel pin in PA12", pin, 0.2, 0.01},
		{"ball of PA12", ball, 0.2, 0.2},
	} {
		lower, _ := Resolve(c.job.Lower)
		upper, _ := Resolve(c.job.Upper)
		j := readyJoint(c.job.Latches[0], lower, upper)
		near(t, c.name+", outer", j.fromOuter, c.outer, 1e-12)
		near(t, c.name+", inner", j.fromInner, c.inner, 1e-12)
		near(t, c.name+", worst", j.worst, c.outer+c.inner, 1e-12)
	}
}

// TestCrushedRibsASecondTime: three triangles 0.8 wide and 0.6 high, flattened by 0.3,
// under 1.5 times 1.25 times the strength of PETG.
func TestCrushedRibsASecondTime(t *testing.T) {
	a := stated(ribJob())
	l := mustAnalyse(t, a).Latches[0]
	q := 3 * 1.5 * 1.25 * 40 * 0.8 * 0.3 / 0.6
	mu, tan := 0.45, math.Tan(rad(20))
	near(t, "across the axis", l.Transverse, q*8, 1e-9)
	near(t, "push", l.PeakEach, q*0.3/2/tan*math.Tan(rad(20)+math.Atan(mu))+mu*q*8, 1e-9)
	near(t, "pull", l.Separation, mu*q*8, 1e-9)
	near(t, "share", l.Strain, 0.5, 1e-12)
	near(t, "of what may be crushed", l.Permitted, 0.75, 1e-12)
	near(t, "stroke", l.Stroke, 8+0.3/tan, 1e-12)
}

// TestFrictionlessLeadInStoresElasticWork: without friction the force on the chamfer is
// the energy that a mm of joint holds, p pi d delta/4, whatever the angle.
func TestFrictionlessLeadInStoresElasticWork(t *testing.T) {
	for _, angle := range []float64{10, 20, 45} {
		a := stated(pinJob())
		a.Lower.Friction, a.Upper.Friction = ptr(0.0), ptr(0.0)
		a.Latches[0].PressFit.LeadInAngle = ptr(rad(angle))
		l := mustAnalyse(t, a).Latches[0]
		p := explained(a)["p0"]
		near(t, "lead-in", l.PeakEach, p*math.Pi*5*0.05/4, 1e-9)
		near(t, "stroke", l.Stroke, 10+0.025/math.Tan(rad(angle)), 1e-12)
	}
}

// TestForceAlongASwellingPin: at every depth s the force is first + mu q (s + e) (1 + g
// (s + e)), with g so that it ends at 1/(1 - m) of the plain one.
func TestForceAlongASwellingPin(t *testing.T) {
	a := stated(capJob())
	a.Latches = pinJob().Latches
	a.Upper.Build = ""
	l := mustAnalyse(t, a).Latches[0]
	v := explained(a)
	plain := 0.6 * v["P"]
	g := v["m"] / (1 - v["m"]) / (10 + v["e'"])
	for _, s := range []float64{0.001, 3, 7, 10} {
		u := s + v["e'"]
		near(t, fmt.Sprint("at ", s, " mm"), l.Curve.At(10-s), v["F1"]+plain*u*(1+g*u), 1e-6)
	}
	// Pushed in further than home, the force stays.
	deep := a
	deep.Latches = slices.Clone(a.Latches)
	deep.Latches[0].Engage = ptr(l.Stroke + 2)
	near(t, "beyond home", mustAnalyse(t, deep).Latches[0].Curve.At(1), l.PeakEach, 1e-9)
}

// TestStubOfWall: shorter than a thousandth of its decay it is a plain spring.
func TestStubOfWall(t *testing.T) {
	s := newStrip(Tube{Radius: 15, Wall: 1.2, Poisson: 0.4}, true)
	x := 0.9 * stubLength / s.beta
	l := s.length(x, Free)
	k := 1.2 / (15.0 * 15)
	near(t, "force", l.a, k*x, 1e-9)
	near(t, "coupling", l.b, k*x*x/2, 1e-9)
	near(t, "moment", l.c, k*x*x*x/3, 1e-9)
	// A floor so near lets nothing move.
	if w := (Tube{Radius: 15, Wall: 1.2, Poisson: 0.4, Mouth: 5, Beyond: 1e-6, Far: Floored}).BandWidth(); w < 1e4 {
		t.Errorf("on the floor itself: width %g mm", w)
	}
}

// TestBendingBesideTheLoad: far from both ends and thin, sqrt(3/(1 - nu^2)) times the
// hoop strain, and nu more in a member that is pressed inward (Timoshenko and
// Woinowsky-Krieger, from memory: M = P/(4 beta), w = P/(8 beta^3 D)).
func TestBendingBesideTheLoad(t *testing.T) {
	tube := Tube{Radius: 100, Wall: 0.5, Poisson: 0.3, Mouth: 1e3}
	want := math.Sqrt(3*(1-0.3*0.3)) / 100
	near(t, "opened", tube.RingBending(true), want, 0.01)
	near(t, "pressed inward", tube.RingBending(false), want+0.3/100, 0.01)
	// At the mouth: M = 0.3224 P/beta at a quarter of the swing, w = P/(2 beta^3 D).
	tube.Mouth = 0
	near(t, "at the mouth", tube.RingBending(true), 0.3224*want, 0.01)
}

// TestSwingsOfEveryKind: the room beside a latch, by its dimensions.
func TestSwingsOfEveryKind(t *testing.T) {
	decay := math.Pi * math.Sqrt(20.8*1.6) / math.Pow(3*(1-0.16), 0.25)
	socket := math.Pi * math.Sqrt(3.65*1.7) / math.Pow(3*(1-0.16), 0.25)
	hook := 1.2/math.Tan(rad(30)) + 0.3
	arm := func(change func(*Cantilever)) Assembly {
		a := armJob()
		a.Latches[0].Cantilever.TipThickness = 0
		change(a.Latches[0].Cantilever)
		return a
	}
	long, slotted, deep := ballJob(), ballJob(), capJob()
	long.Latches[0].Ball.SocketDepth = 0
	slotted.Latches[0].Ball.Slots, slotted.Latches[0].Ball.SlotWidth, slotted.Latches[0].Ball.SlotDepth = 4, 0.8, 6
	deep.Latches[0].Annular.FarEnd, deep.Latches[0].Annular.FarDistance, deep.Latches[0].Annular.EndDistance = "floored", 4, 30
	for _, c := range []struct {
		name                  string
		job                   Assembly
		below, above          float64 // of the joint line
		radius, width, inward float64
	}{
		{"ring", capJob(), decay, 3, 21.6, 0, 0},
		{"ring on a floor, far from its mouth", deep, 4, decay, 21.6, 0, 0},
		{"collar", collarJob(), 14, 3, 21.6, 0, 0},
		{"ball on a floor", ballJob(), min(8, socket), 0, 4.5, 0, 0},
		{"ball", long, socket, 0, 4.5, 0, 0},
		{"slotted ball", slotted, 6, 0, 4.5, 0, 0},
		{"arm", armJob(), 19, hook, 0, 6, 0},
		{"U", arm(func(c *Cantilever) { c.Shape, c.BendRadius = "u_arm", 3 }), 19 + 3 + 1, hook, 0, 6, 0},
		{"U, bend toward the mate", arm(func(c *Cantilever) { c.Shape, c.BendRadius, c.BendSide = "u_arm", 3, "toward" }), hook, 19 + 3 + 1, 0, 6, 0},
		{"rocker", arm(func(c *Cantilever) {
			c.Shape, c.BarRadius, c.BarLength, c.Thickness, c.Width, c.Bends = "rocker", 1.2, 8, 0, 0, "inward"
		}), hook, hook, 0, 2.4, 1.2},
		{"ring segment", arm(func(c *Cantilever) {
			c.Section, c.OuterRadius, c.InnerRadius, c.Arc = "ring_segment", 12, 10.4, rad(60)
		}), 19, hook, 0, 12, 0},
		{"pin", pinJob(), 5, 5, 5.5, 0, 0},
		{"rib", ribJob(), 4, 4, 0, 0, 0},
	} {
		s, z := mustAnalyse(t, c.job).Latches[0].Swing, c.job.Latches[0].Z
		for name, v := range map[string][2]float64{"below": {z - s.ZLow, c.below}, "above": {s.ZHigh - z, c.above}, "radius": {s.Radius, c.radius}, "width": {s.Width, c.width}, "inward": {s.Inward, c.inward}} {
			if math.Abs(v[0]-v[1]) > 1e-9 {
				t.Errorf("%s: %s %g mm, want %g", c.name, name, v[0], v[1])
			}
		}
	}
}

// TestWhoGivesWay: both, unless one gives less than a tenth.
func TestWhoGivesWay(t *testing.T) {
	for share, want := range map[float64]string{0.09: "upper", 0.105: "both", 0.5: "both", 0.895: "both", 0.91: "lower"} {
		if got := elasticPart(state{outerMove: share, move: 1}, true); got != want {
			t.Errorf("outer, lower part gives %g: %s, want %s", share, got, want)
		}
	}
}

// TestLeverOfAFinger: 1.5 c/a + 0.3 w/a, w the movement of both members.
func TestLeverOfAFinger(t *testing.T) {
	for _, split := range []string{"outer", "inner"} {
		a := collarJob()
		v := a.Latches[0].Annular
		v.Split, v.SlotDepth = split, 12
		big, small, reach, outward := 43.2, 40.0, 9.0, true
		if split == "inner" {
			big, small, reach, outward = 40, 36.8, 10, false
		}
		_, want, _ := fingersOf(8, big, small, 1.5, reach, 2000, 0.4, outward)
		near(t, split, explained(a)["kappa_f"], want, 1e-4)
		near(t, split+", base that gives", v.fingers().baseFactor(), 1+16.67*1.6/(4*math.Pi*reach), 1e-9)
	}
	b := ballJob()
	b.Latches[0].Ball.Slots, b.Latches[0].Ball.SlotWidth, b.Latches[0].Ball.SlotDepth = 4, 0.8, 6
	_, want, _ := fingersOf(4, 9, 5.6, 0.8, 6, 2000, 0.2, true)
	near(t, "mouth", explained(b)["kappa"], want, 1e-4)
}

// TestRightAngleHasNoReturnFlank: the stroke ends with the land and the float.
func TestRightAngleHasNoReturnFlank(t *testing.T) {
	ring, arm := capJob(), armJob()
	ring.Latches[0].Annular.ReturnAngle, ring.Latches[0].Annular.GrooveFloat = rad(90), 0.25
	arm.Latches[0].Cantilever.ReturnAngle = rad(90)
	near(t, "ring", mustAnalyse(t, ring).Stroke, 0.4/math.Tan(rad(25))+0.4+0.25, 1e-9)
	near(t, "arm", mustAnalyse(t, arm).Stroke, 1.2/math.Tan(rad(30))+0.3, 1e-9)
	for _, a := range []Assembly{ring, arm} {
		if l := mustAnalyse(t, a).Latches[0]; !l.SelfLocking || l.Separation != 0 {
			t.Errorf("%s: %+v", l.ID, l.Separation)
		}
	}
}

// TestTwoDiametersAreAnUndercut: bead 40.4 over a lip of 39.6 mm, each with its own
// tolerance, or with that of the process.
func TestTwoDiametersAreAnUndercut(t *testing.T) {
	direct, two := capJob(), capJob()
	v := two.Latches[0].Annular
	v.Undercut, v.UndercutTol, v.BeadDiameter, v.LipDiameter = 0, nil, 40.4, 39.6
	m, _ := Resolve(two.Lower)
	if s := v.sizing(m, m); math.Abs(s.size-0.8-0.15*(2-39.6/20)) > 1e-12 || math.Abs(s.drawn()-0.8) > 1e-12 || s.outer != 0.2 || s.inner != 0.2 || s.worst != 0.4 {
		t.Errorf("unstated tolerances: %+v", s)
	}
	v.BeadTol, v.LipTol, v.WallTol = ptr(0.08), ptr(0.05), ptr(0.12)
	if s := v.sizing(m, m); s.outer != 0.05 || s.inner != 0.08 || math.Abs(s.worst-0.13) > 1e-12 {
		t.Errorf("stated tolerances: %+v", s)
	}
	near(t, "peak", mustAnalyse(t, two).Peak, mustAnalyse(t, direct).Peak, 1e-9)
	j := v.ready(m, m, "")
	near(t, "outer wall", j.outer.wall, 0.12/1.6, 1e-12)
	v.WallTol = ptr(1.2) // never more than half a wall
	near(t, "outer wall", v.ready(m, m, "").outer.wall, 0.5, 1e-12)
	checkFaults(t, func() Assembly { return two }, []wrong{
		{"latches[0].annular.bead_tol", func(a *Assembly) { w := *v; w.BeadTol = ptr(-1.0); a.Latches[0].Annular = &w }},
		{"latches[0].annular.lip_tol", func(a *Assembly) { w := *v; w.BeadTol, w.LipTol = nil, ptr(99.0); a.Latches[0].Annular = &w }},
	})
}

// TestFingersOfPCSoften: their secant line by the bending strain.
func TestFingersOfPCSoften(t *testing.T) {
	a := stated(collarJob())
	a.Lower = stated(armJob()).Lower
	_, _, strain := fingersOf(8, 43.2, 40, 1.5, 11, 2310, 0.4, true)
	k, _, _ := fingersOf(8, 43.2, 40, 1.5, 11, 2310, 0.4, true)
	ki, _ := wallMember(40, 36.8, 2, 0, 2000, 0.4, Long, false)
	load, _ := balanced(k, ki, 0.0933/strain, 1e9, 0.4)
	near(t, "load", explained(a)["P"], load, 2e-3)
}
