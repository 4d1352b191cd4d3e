package force

import "math"

// straight explains stiffness, strain and slope of a straight arm.
func (e *explainer) straight(c Cantilever, a armSpring, modulus float64, s Section, tensile float64) {
	l := c.Length
	kt, kw := c.tapers()
	if kt != 1 || kw != 1 {
		e.given("kt", kt, "1", "tip over root thickness", MarkJob)
		e.given("kw", kw, "1", "tip over root width", MarkJob)
	}
	t := TaperFactor(kt, kw)
	const source = sourceBeam
	e.taper("arm.taper", "T", t, "T = 3 Int (1-s)^2/((1-(1-kt)s)^3 (1-(1-kw)s)) ds from 0 to 1", 3, 2, kt, kw)
	switch {
	case c.BaseFactor != nil:
		e.step("arm.base", "Q", a.q, "1", "Q: give of the base, as the job states it", "job", MarkJob, "%s", a.q)
	case c.Base == "solid":
		e.step("arm.base", "Q", a.q, "1", "Q = 1 + 16.67 t/(4 pi L T), a solid base", "O'Donnell, J. Appl. Mech. 1960", MarkMemory,
			"1 + 16.67*%s/(4*pi*%s*%s)", c.thickness(), l, t)
	default:
		e.step("arm.base", "Q", a.q, "1", "Q = 1, a rigid base", source, MarkOwn, "1")
	}
	e.step("arm.stiffness", "K", a.stiffness, "N/mm", "K = 3 E I/(L^3 T Q)", sourceGuide+", p. 9, as P = Z Es eps/L", MarkRead,
		"3*%s*%s/(%s^3*%s*%s)", modulus, s.Inertia, l, t, a.q)
	e.step("arm.root", "eps/y", a.root, "1/mm", "eps/y = 3 c/(L^2 T Q) at the root", sourceGuide+", p. 9", MarkRead, "3*%s/(%s^2*%s*%s)",
		tensile, l, t, a.q)
	if a.axial > a.root {
		place := weakest(kt, kw)
		ta, tb := 1-kt, 1-kw
		if tb == 0 {
			e.step("arm.weakest", "s*", place, "1", "s* = 2 - 1/(1 - kt), where the strain is largest", source, MarkOwn, "2 - 1/(1 - %s)", kt)
		} else {
			e.step("arm.weakest", "s*", place, "1", "s* = [a + 3 a b - sqrt((a + 3 a b)^2 - 8 a b (2 a + b - 1))]/(4 a b), a = 1 - kt, b = 1 - kw, where the strain is largest", source, MarkOwn,
				"(%[1]s + 3*%[1]s*%[2]s - sqrt((%[1]s + 3*%[1]s*%[2]s)^2 - 8*%[1]s*%[2]s*(2*%[1]s + %[2]s - 1)))/(4*%[1]s*%[2]s)", ta, tb)
		}
		e.step("arm.along", "eps*/y", a.axial, "1/mm", "eps*/y = (eps/y) (1 - s*)/((1 - (1 - kt) s*)^2 (1 - (1 - kw) s*)), the largest along the arm", source, MarkOwn, "%[1]s*(1 - %[2]s)/((1 - %[3]s*%[2]s)^2*(1 - %[4]s*%[2]s))", a.root, place, ta, tb)
	}
	slope := TipSlopeFactor(kt, kw) * t / 3
	e.taper("arm.taper_slope", "T1", slope, "T1 = Int (1-s)/((1-(1-kt)s)^3 (1-(1-kw)s)) ds from 0 to 1", 1, 1, kt, kw)
	turn := TipTurnFactor(kt, kw)
	e.taper("arm.taper_turn", "T0", turn, "T0 = Int 1/((1-(1-kt)s)^3 (1-(1-kw)s)) ds from 0 to 1", 1, 0, kt, kw)
	e.step("arm.tip_slope", "theta/y", a.slope, "1/mm", "theta/y = (3 T1/T + Q - 1)/(L Q), slope of the tip by a force across the arm", source,
		MarkOwn, "(3*%[1]s/%[2]s + %[3]s - 1)/(%[4]s*%[3]s)", slope, t, a.q, l)
	e.step("arm.tip_turn", "turn/y", a.turn, "1/mm", "turn/y = (3 T0/T + Q - 1)/(L^2 Q)/(theta/y), by a moment at the tip", source, MarkOwn,
		"(3*%[1]s/%[2]s + %[3]s - 1)/(%[4]s^2*%[3]s)/%[5]s", turn, t, a.q, l, a.slope)
}

// weakest is the place along a tapered arm where its strain is largest [1], where
// the slope of the strain is 0.
func weakest(kt, kw float64) float64 {
	a, b := 1-kt, 1-kw
	if b == 0 {
		return 2 - 1/a
	}
	m := a + 3*a*b
	return (m - math.Sqrt(m*m-8*a*b*(2*a+b-1))) / (4 * a * b)
}

// taper explains an integral along a tapered arm of (1-s)^n over its inertia, times
// by: in closed form, or by five points of Gauss where the arm tapers too little
// for the closed form to keep its digits.
func (e *explainer) taper(id, symbol string, v float64, formula string, by, n, kt, kw float64) {
	e.exact = true
	defer func() { e.exact = false }()
	if g := by * gauss(n, kt, kw); math.Abs(g-v) < 2e-7*v {
		numbers := ""
		for i, x := range gaussNodes {
			if i > 0 {
				numbers += " + "
			}
			numbers += weightText[i] + "*(1 - " + number(x, true) + ")^%[2]s/((1 - %[3]s*" + number(x, true) + ")^3*(1 - %[4]s*" + number(x, true) +
				"))"
		}
		e.step(id, symbol, v, "1", formula+"; by five points of Gauss", sourceBeam, MarkOwn, "%[1]s*("+numbers+")", by, n, 1-kt, 1-kw)
		return
	}
	switch {
	case kw == 1:
		e.step(id, symbol, v, "1", formula+"; width even", sourceBeam, MarkOwn,
			[3]string{"%[1]s*(1 + %[2]s)/(2*%[2]s^2)", "%[1]s/(2*%[2]s)",
				"%[1]s/(1 - %[2]s)^3*(2*%[2]s - %[2]s^2/2 - ln(%[2]s) - 1.5)"}[int(n)], by, kt)
	case kt == 1:
		e.step(id, symbol, v, "1", formula+"; thickness even", sourceBeam, MarkOwn,
			[3]string{"%[1]s*(0 - ln(%[2]s))/(1 - %[2]s)", "%[1]s/(1 - %[2]s)^2*(1 - %[2]s + %[2]s*ln(%[2]s))",
				"%[1]s/(1 - %[2]s)^3*(0.5 - 2*%[2]s + 1.5*%[2]s^2 - %[2]s^2*ln(%[2]s))"}[int(n)], by, kw)
	case math.Abs(kt-kw) < 1e-9:
		e.step(id, symbol, v, "1", formula+"; both tapers alike", sourceBeam, MarkOwn,
			[3]string{"%[1]s*(1/%[2]s^3 - 1)/(3*(1 - %[2]s))", "%[1]s/(1 - %[2]s)^2*((1/%[2]s^2 - 1)/2 - %[2]s*(1/%[2]s^3 - 1)/3)",
				"%[1]s/(1 - %[2]s)^3*(1/%[2]s - 1 - %[2]s*(1/%[2]s^2 - 1) + %[2]s^2*(1/%[2]s^3 - 1)/3)"}[int(n)], by, kt)
	default:
		e.fractions(id, symbol, v, formula, by, n, kt, kw)
	}
}

// fractions explains the integral by partial fractions.
func (e *explainer) fractions(id, symbol string, v float64, formula string, by, n, kt, kw float64) {
	a, b := 1-kt, 1-kw
	w := math.Pow(1-1/b, n) / math.Pow(1-a/b, 3)
	z := math.Pow(1-1/a, n) / (1 - b/a)
	x := -w * a / b
	y := 1 - x - z - w
	e.step("arm.taper_w", "w_"+symbol, w, "1", "w = (1 - 1/b)^n/(1 - a/b)^3, a = 1 - kt, b = 1 - kw; partial fractions", sourceBeam, MarkOwn,
		"(1 - 1/%[2]s)^%[3]s/(1 - %[1]s/%[2]s)^3", a, b, n)
	e.step("arm.taper_z", "z_"+symbol, z, "1", "z = (1 - 1/a)^n/(1 - b/a)", sourceBeam, MarkOwn, "(1 - 1/%[1]s)^%[3]s/(1 - %[2]s/%[1]s)", a, b,
		n)
	e.step("arm.taper_x", "x_"+symbol, x, "1", "x = -w a/b", sourceBeam, MarkOwn, "0 - %s*%s/%s", w, a, b)
	e.step("arm.taper_y", "y_"+symbol, y, "1", "y = 1 - x - z - w", sourceBeam, MarkOwn, "1 - %s - %s - %s", x, z, w)
	e.step(id, symbol, v, "1", formula+" = -x ln(kt)/a + y/kt + z (1/kt^2 - 1)/(2 a) - w ln(kw)/b", sourceBeam, MarkOwn,
		"%[1]s*(0 - %[2]s*ln(%[6]s)/%[8]s + %[3]s/%[6]s + %[4]s*(1/%[6]s^2 - 1)/(2*%[8]s) - %[5]s*ln(%[7]s)/%[9]s)", by, x, y, z, w, kt, kw, a, b)
}

// Five points of Gauss over 0 to 1.
var (
	gaussNodes = [5]float64{0.0469100770306680, 0.2307653449471585, 0.5, 0.7692346550528415, 0.9530899229693320}
	weightText = [5]string{"0.118463442528095", "0.239314335249683", "0.284444444444444", "0.239314335249683", "0.118463442528095"}
)

func gauss(n, kt, kw float64) float64 {
	weights := [5]float64{0.118463442528095, 0.239314335249683, 0.284444444444444, 0.239314335249683, 0.118463442528095}
	var sum float64
	for i, s := range gaussNodes {
		sum += weights[i] * math.Pow(1-s, n) / taperedInertia(kt, kw, s)
	}
	return sum
}
