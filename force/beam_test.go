package force

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

func TestTaperFactorAgainstClosedForms(t *testing.T) {
	for _, k := range []float64{0.1, 0.25, 0.5, 0.7, 0.9, 1.5, 2} {
		a := 1 - k
		near(t, "thickness", TaperFactor(k, 1), 3/(a*a*a)*(2*k-k*k/2-math.Log(k)-1.5), 1e-8)
		near(t, "width", TaperFactor(1, k), 3/(a*a*a)*(0.5-2*k+1.5*k*k-k*k*math.Log(k)), 1e-8)
	}
	for _, k := range []float64{0.25, 0.5, 0.8, 1.6} {
		near(t, "turn, thickness", TipTurnFactor(k, 1), (1+k)/(2*k*k), 1e-8)
		near(t, "turn, width", TipTurnFactor(1, k), -math.Log(k)/(1-k), 1e-8)
	}
	near(t, "uniform", TaperFactor(1, 1), 1, 1e-14)
	near(t, "uniform tip slope", TipSlopeFactor(1, 1), 1.5, 1e-14)
}

// armByIntegration bends a tapered arm by integrating its curvature twice.
func armByIntegration(kt, kw float64) (deflection, slope float64) {
	curvature := func(s float64) float64 {
		a, b := 1-(1-kt)*s, 1-(1-kw)*s
		return (1 - s) / (a * a * a * b)
	}
	angle := func(s float64) float64 { return quad.Fixed(curvature, 0, s, 60, nil, 0) }
	return quad.Fixed(angle, 0, 1, 60, nil, 0), angle(1)
}

func TestArmAgainstDoubleIntegration(t *testing.T) {
	for _, k := range [][2]float64{{1, 1}, {0.5, 1}, {0.4, 0.5}, {0.8, 0.3}, {1.4, 2}} {
		y, slope := armByIntegration(k[0], k[1])
		near(t, "deflection", TaperFactor(k[0], k[1]), 3*y, 1e-6)
		near(t, "slope", TipSlopeFactor(k[0], k[1]), slope/y, 1e-6)
	}
}

func TestPeakStrainMovesFromTheRoot(t *testing.T) {
	for _, k := range []float64{0.15, 0.3, 0.4, 0.499} {
		near(t, "1/(4k(1-k))", PeakStrainFactor(k, 1), 1/(4*k*(1-k)), 1e-9)
	}
	for _, k := range []float64{0.5, 0.7, 1} {
		near(t, "at the root", PeakStrainFactor(k, 1), 1, 1e-12)
	}
}

// TestUArmAgainstEnergy integrates the bending energy along the U itself.
func TestUArmAgainstEnergy(t *testing.T) {
	const l, r = 12.0, 2.5
	// Force at the tip across the legs: moment = distance from the tip along the leg.
	leg := quad.Fixed(func(x float64) float64 { return x * x }, 0, l, 20, nil, 0)
	bend := quad.Fixed(func(a float64) float64 { m := l + r*math.Sin(a); return m * m * r }, 0, math.Pi, 60, nil, 0)
	// Slope of the tip, and its movement by an axial force at the tip, against that of
	// the force across: moments multiplied along the same way, the bend away.
	const face = 0.6
	slope := 2*l*l/2 + quad.Fixed(func(a float64) float64 { return (l + r*math.Sin(a)) * r }, 0, math.Pi, 60, nil, 0)
	axial := face*l*l/2 + (face+2*r)*l*l/2 + quad.Fixed(func(a float64) float64 { return (l + r*math.Sin(a)) * (face + r*(1-math.Cos(a))) * r }, 0, math.Pi, 60, nil, 0)
	c := Cantilever{Shape: "u_arm", Length: l, Thickness: 2 * face, Width: 1, BendRadius: r}
	m := Material{Modulus: Figure{Value: 1}}
	a := c.spring(m)
	inertia := Rectangle(1, 2*face).Inertia
	near(t, "compliance", inertia/a.stiffness, 2*leg+bend, 1e-9)
	near(t, "slope", a.slope, a.stiffness*slope/inertia, 1e-9)
	near(t, "lever", a.lever(c, 0), a.stiffness*axial/inertia, 1e-9)
	near(t, "turn", a.turn, (2*l+math.Pi*r)/slope, 1e-9)
}

func TestLArmAgainstEnergy(t *testing.T) {
	const l1, l2, i1, i2 = 12.0, 8.0, 1.4, 3.3
	arm := quad.Fixed(func(x float64) float64 { return x * x / i1 }, 0, l1, 20, nil, 0)
	w := working{value: map[string]float64{"L": l1, "L2": l2, "I": i1, "b": 12 * i2, "t2": 1, "c": 1, "E": 1, "Q": 1}}
	w.by(lArm...)
	near(t, "compliance", 1/w.value["K"], arm+l1*l1*l2/i2, 1e-12)

	// Slope by a force across, turn by a moment, and what an axial force on the strip
	// does to the tip, by unit moments.
	c := Cantilever{Shape: "l_arm", Length: l1, Thickness: 1.5, Width: 5, BaseLength: l2, BaseThickness: 2}
	m := Material{Modulus: Figure{Value: 1}}
	a := c.spring(m)
	ia, is := Rectangle(5, 1.5).Inertia, Rectangle(5, 2).Inertia
	slope := quad.Fixed(func(x float64) float64 { return x / ia }, 0, l1, 20, nil, 0) + l1*l2/is
	near(t, "slope", a.slope, a.stiffness*slope, 1e-12)
	near(t, "turn", a.turn, (l1/ia+l2/is)/slope, 1e-12)
	near(t, "strip", a.unsure, a.stiffness*quad.Fixed(func(x float64) float64 { return l1 * x / is }, 0, l2, 20, nil, 0), 1e-12)
	near(t, "lever", a.lever(c, 2), 0.75*a.slope+0.3*2/l1, 1e-12)
}

func TestSectionsAgainstStrips(t *testing.T) {
	// Cut into strips across the bending direction.
	strips := func(lo, hi float64, width func(float64) float64) (area, inertia, centroid float64) {
		area = quad.Fixed(width, lo, hi, 4000, nil, 0)
		centroid = quad.Fixed(func(x float64) float64 { return x * width(x) }, lo, hi, 4000, nil, 0) / area
		inertia = quad.Fixed(func(x float64) float64 { return (x - centroid) * (x - centroid) * width(x) }, lo, hi, 4000, nil, 0)
		return area, inertia, centroid
	}
	area, inertia, c := strips(0, 2, func(x float64) float64 { return 2 + x }) // narrow 2 to wide 4
	s := Trapezoid(4, 2, 2)
	near(t, "trapezoid area", s.Area, area, 1e-9)
	near(t, "trapezoid inertia", s.Inertia, inertia, 1e-9)
	near(t, "trapezoid face", s.Inner, c, 1e-9)

	const r, big = 17.5, 20.0
	phi := rad(37.5)
	area, inertia, c = strips(r*math.Cos(phi), big, func(x float64) float64 {
		half := min(math.Sqrt(big*big-x*x), x*math.Tan(phi))
		if x < r {
			half -= math.Sqrt(r*r - x*x)
		}
		return 2 * half
	})
	s = RingSegment(r, big, 2*phi)
	near(t, "sector area", s.Area, area, 1e-4)
	near(t, "sector inertia", s.Inertia, inertia, 1e-3)
	near(t, "sector face", s.Outer, big-c, 1e-4)
}

// TestTurnOfATaperedArm: slope by a moment at the tip over the deflection by it, with a
// base that turns too.
func TestTurnOfATaperedArm(t *testing.T) {
	c := Cantilever{Length: 19, Thickness: 2, TipThickness: 1, Width: 6, TipWidth: 3, BaseFactor: ptr(1.4)}
	m := Material{Modulus: Figure{Value: 1800}}
	a := c.spring(m)
	inertia := func(s float64) float64 { h := 2 - s; return (6 - 3*s) * h * h * h / 12 }
	at := func(f func(s float64) float64) float64 { return quad.Fixed(f, 0, 1, 60, nil, 0) }
	across := 19 * 19 * 19 * at(func(s float64) float64 { return (1 - s) * (1 - s) / inertia(s) }) / 1800
	slope := 19 * 19 * at(func(s float64) float64 { return (1 - s) / inertia(s) }) / 1800
	turn := 19 * at(func(s float64) float64 { return 1 / inertia(s) }) / 1800
	root := 0.4 * across / (19 * 19) // of the base, by a moment on it
	near(t, "stiffness", a.stiffness, 1/(1.4*across), 1e-6)
	near(t, "slope", a.slope, (slope+19*root)/(1.4*across), 1e-6)
	near(t, "turn", a.turn, (turn+root)/(slope+19*root), 1e-6)
}

func TestLeaningIsTheTangentOfTheSum(t *testing.T) {
	for _, alpha := range []float64{-0.6, 0, 0.5} {
		for _, theta := range []float64{0.05, 0.15, 0.3} {
			near(t, "tan", leaning(math.Tan(alpha), theta), math.Tan(alpha+theta), 3e-6)
		}
	}
	if leaning(math.Tan(1.5), 0.2) < 1e5 {
		t.Error("past a right angle it must lock")
	}
}

func TestThinRingSegmentIsAFlatStrip(t *testing.T) {
	s := RingSegment(1000, 1002, 0.01)
	near(t, "inertia", s.Inertia, 10.01*8/12, 2e-3)
}

func TestBaseAndRootLaws(t *testing.T) {
	near(t, "uniform arm", BaseFactor(10, 1, 1), 1.1327, 1e-3)
	if RootConcentration(1) != 1 || RootConcentration(0.1) < RootConcentration(0.2) {
		t.Error("a larger fillet must not concentrate more")
	}
	soft, rigid := armJob(), armJob()
	soft.Latches[0].Cantilever.Base = "solid"
	rs, rr := mustAnalyse(t, soft), mustAnalyse(t, rigid)
	if rs.Peak >= rr.Peak || rs.Latches[0].Strain >= rr.Latches[0].Strain {
		t.Errorf("solid base: %g N and %g, rigid %g N and %g", rs.Peak, rs.Latches[0].Strain, rr.Peak, rr.Latches[0].Strain)
	}
}
