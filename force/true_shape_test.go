package force

import (
	"math"
	"testing"
)

// bentArm is an arm in its true bent shape, an independent numerical solution: the
// angle of the arm along its length by Runge-Kutta, any rotation, the contact force
// on the leaning flank with its moment about every section, a root that turns with
// the moment on it. No stiffness, slope or lever of the package goes into it.
type bentArm struct {
	length, modulus, width float64
	thickness              func(s float64) float64 // at s from 0, the root, to 1
	root                   float64                 // turn of the root per moment [rad/(N mm)]
	face                   float64                 // of the neutral axis to the face of the mate, at the tip [mm]
	hook                   float64                 // how far the crest stands out from that face [mm]
	alpha, mu              float64
	upright                bool // the flank does not lean
	pull                   bool // out, on the return flank, which leans away
}

// ratio is the axial over the transverse force at an angle of the tip, towards the
// root above 0.
func (a bentArm) ratio(tip float64) float64 {
	switch rho := math.Atan(a.mu); {
	case a.pull:
		return -math.Tan(a.alpha - tip + rho)
	case a.upright:
		return math.Tan(a.alpha + rho)
	default:
		return math.Tan(a.alpha + tip + rho)
	}
}

// shape bends the arm by a force p across it at the crest, and by the axial force
// that belongs to it on the leaning flank. It gives how far the crest has moved
// aside, and the axial over the transverse force.
func (a bentArm) shape(p float64) (aside, f float64) {
	const steps = 100
	e, h := a.face+a.hook, a.length/100
	// Where the crest stands and how the tip leans is found by repeating.
	x, z := -e, a.length
	f = a.ratio(0)
	for range 200 {
		moment := func(px, pz float64) float64 { return p*(z-pz) - f*p*(px-x) }
		px, pz, theta := 0.0, 0.0, a.root*moment(0, 0)
		slope := func(s, px, pz float64) float64 {
			t := a.thickness(s / a.length)
			return moment(px, pz) * 12 / (a.modulus * a.width * t * t * t)
		}
		for i := range steps {
			s := float64(i) * h
			mid := theta + h/2*slope(s, px, pz)
			theta += h * slope(s+h/2, px+h/2*math.Sin(theta), pz+h/2*math.Cos(theta))
			px, pz = px+h*math.Sin(mid), pz+h*math.Cos(mid)
		}
		nx, nz, nf := px-e*math.Cos(theta), pz+e*math.Sin(theta), a.ratio(theta)
		done := math.Abs(nx-x)+math.Abs(nz-z)+math.Abs(nf-f) < 1e-9
		x, z, f = (x+nx)/2, (z+nz)/2, (f+nf)/2
		if done {
			break
		}
	}
	return x + e, f
}

// force is the axial force at which the crest has moved aside by y.
func (a bentArm) force(y float64) float64 {
	lo, hi := 0.0, 0.5
	for {
		if aside, _ := a.shape(hi); aside >= y {
			break
		}
		lo, hi = hi, 1.3*hi
	}
	for range 24 {
		mid := (lo + hi) / 2
		if aside, _ := a.shape(mid); aside < y {
			lo = mid
		} else {
			hi = mid
		}
	}
	_, f := a.shape(hi)
	return math.Abs(f) * hi
}

// bentAs is the arm of a job in its true shape.
func bentAs(c Cantilever, q, mu float64) bentArm {
	tip := c.Thickness
	if c.TipThickness > 0 {
		tip = c.TipThickness
	}
	b := bentArm{length: c.Length, modulus: 2000, width: c.Width, thickness: func(s float64) float64 { return c.Thickness + (tip-c.Thickness)*s },
		face: c.Thickness / 2, hook: c.Undercut, alpha: c.MatingAngle, mu: mu, upright: c.LeadIn == "mate"}
	// The root turns so that a force at the tip moves it q times as far.
	rigid := 0.0
	for i := range 2000 {
		s := (float64(i) + 0.5) / 2000
		t := b.thickness(s)
		rigid += (1 - s) * (1 - s) / (t * t * t) / 2000
	}
	b.root = (q - 1) * rigid * 12 * c.Length / (b.modulus * b.width)
	return b
}

// TestArmAgainstItsTrueShape: the force at the end of the lead-in lies up to 6 %
// above that of the arm in its true shape (13 % where nearly all of the give is in
// the base) and up to 3 % below it; the force that pulls it out up to 7 % above. The
// published formula, without the lean of the hook and the lever of the axial force,
// gives 0.59 to 0.90 of the force in these cases.
func TestArmAgainstItsTrueShape(t *testing.T) {
	for _, c := range []struct {
		length, root, tip, undercut, mating, mu, q float64
		leadIn                                     string
		high                                       float64
	}{
		{20, 2, 2, 0.5, 30, 0.2, 1, "", 1.02},
		{20, 2, 2, 1, 30, 0.3, 1, "", 1.03},
		{20, 2, 2, 1, 30, 0.6, 1, "", 1.04},
		{20, 2, 2, 2, 30, 0.3, 1, "", 1.07},
		{20, 2, 1, 1, 30, 0.3, 1, "", 1.03},
		{19, 2, 1, 1.2, 30, 0.66, 1, "", 1.06},
		{20, 2, 2, 1, 30, 0.3, 1.3, "", 1.03},
		{10, 2, 2, 0.5, 25, 0.3, 1, "", 1.04},
		{14, 1.6, 1.6, 0.8, 30, 0.35, 1, "", 1.04},
		{14, 1.6, 1.6, 0.8, 30, 0.35, 1, "mate", 1.04},
		{20, 2, 1, 1, 40, 0.5, 1, "mate", 1.06},
		{2.5, 1, 1, 0.3, 26.6, 0.3, 12, "", 1.14},
		{2.5, 1, 1, 0.3, 26.6, 0.3, 12, "mate", 1.10},
	} {
		arm := Cantilever{Flexes: "lower", Bends: "outward", Undercut: c.undercut, MatingAngle: rad(c.mating), ReturnAngle: rad(35), LeadIn: c.leadIn,
			Length: c.length, Thickness: c.root, Width: 5}
		if c.tip != c.root {
			arm.TipThickness = c.tip
		}
		if c.q > 1 {
			arm.BaseFactor = ptr(c.q)
		}
		m := Material{Modulus: Figure{Value: 2000}, StrainOnce: Figure{Value: 1}, StrainOnceZ: Figure{Value: 1}}
		j := arm.ready(m, m, "")
		j.engage = j.stroke
		p, s := j.nominalAt(c.mu)
		got, _ := sumCurve([]profile{p}, []int{1}).Peak()
		b := bentAs(arm, c.q, c.mu)
		want := b.force(c.undercut)
		f, _ := MatingFactor(c.mu, arm.MatingAngle)
		b.alpha, b.pull, b.upright = arm.ReturnAngle, true, false
		pull, apart := b.force(c.undercut), 0.0
		apart, _ = j.separation(c.mu, s, &p)
		t.Logf("%+v: true shape %.4g N, ours over it %.3f, published %.3f; apart %.4g N, ours %.3f", c, want, got/want, s.load*f/want, pull, apart/pull)
		if got < 0.97*want || got > c.high*want {
			t.Errorf("%+v: %g N, in its true shape %g N", c, got, want)
		}
		if apart < 0.97*pull || apart > 1.07*pull {
			t.Errorf("%+v: pulled apart by %g N, in its true shape %g N", c, apart, pull)
		}
	}
}

// TestArmBentFar: up to a fifth of its length the force to bend an arm in is never below
// that of its true shape, and what pulls it out lies no further above the true pull than
// the lower end of the model allows for.
func TestArmBentFar(t *testing.T) {
	for _, c := range []struct {
		length, root, tip, undercut, mating, mu, q float64
		leadIn                                     string
	}{
		{20, 2, 2, 3, 30, 0.3, 1, ""},
		{20, 2, 2, 4, 20, 0.3, 1, ""},
		{20, 2, 2, 4, 30, 0.6, 1, ""},
		{20, 2, 1, 4, 30, 0.3, 1, ""},
		{20, 2, 2, 4, 30, 0.3, 1.3, ""},
		{20, 2, 2, 4, 30, 0.3, 1, "mate"},
		{20, 1, 0.5, 4, 25, 0.2, 1, ""},
		{10, 1, 1, 2, 30, 0.35, 1, ""},
		{20, 3, 3, 4, 25, 0.3, 1, ""},
		{20, 2, 1, 4, 20, 0.5, 1.2, "mate"},
	} {
		arm := Cantilever{Flexes: "lower", Bends: "outward", Undercut: c.undercut, MatingAngle: rad(c.mating), ReturnAngle: rad(35), LeadIn: c.leadIn,
			Length: c.length, Thickness: c.root, Width: 5}
		if c.tip != c.root {
			arm.TipThickness = c.tip
		}
		if c.q > 1 {
			arm.BaseFactor = ptr(c.q)
		}
		m := Material{Modulus: Figure{Value: 2000}, StrainOnce: Figure{Value: 1}, StrainOnceZ: Figure{Value: 1}}
		j := arm.ready(m, m, "")
		j.engage = j.stroke
		p, s := j.nominalAt(c.mu)
		got, _ := sumCurve([]profile{p}, []int{1}).Peak()
		b := bentAs(arm, c.q, c.mu)
		want := b.force(c.undercut)
		b.alpha, b.pull, b.upright = arm.ReturnAngle, true, false
		pull := b.force(c.undercut)
		apart, _ := j.separation(c.mu, s, &p)
		allowed := math.Exp(j.modelDown)
		t.Logf("y/L %.2f, %+v: true %.4g N, ours over it %.3f; apart %.3f, allowed %.3f", c.undercut/c.length, c, want, got/want, apart/pull, allowed)
		if got < want || got > 1.6*want {
			t.Errorf("%+v: %g N, in its true shape %g N", c, got, want)
		}
		if apart < pull || apart > allowed*pull {
			t.Errorf("%+v: pulled apart by %g N, in its true shape %g N; want up to %.3f of it", c, apart, pull, allowed)
		}
	}
}
