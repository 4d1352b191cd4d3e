package force

// TaperFactor gives the deflection of a tapered arm over that of a uniform arm of
// the root's section, at equal force, T [1].
//
//	T = 3 Int_0^1 (1 - s)^2 / [ (1 - (1 - kt) s)^3 (1 - (1 - kw) s) ] ds
//
// kt, kw: tip over root thickness and width [1], 0.05 to 20. At equal root strain
// the deflection grows by the same factor. Published roundings: 1.64 for kt =
// 0.5, 1.28 for kw = 0.25.
//
// Source: beam theory; quadrature here. Snap-Fit Joints for Plastics - A Design
// Guide, table 1, p. 9 (read) has the two special cases. Leaves out shear.
func TaperFactor(kt, kw float64) float64 {
	return 3 * integrate(func(s float64) float64 {
		return (1 - s) * (1 - s) / taperedInertia(kt, kw, s)
	})
}

// TipSlopeFactor gives the slope of the tip times length over deflection for a
// force at the tip [1]: 1.5 for a uniform arm. Arguments and source as
// [TaperFactor].
func TipSlopeFactor(kt, kw float64) float64 {
	return 3 * integrate(func(s float64) float64 { return (1 - s) / taperedInertia(kt, kw, s) }) / TaperFactor(kt, kw)
}

// TipTurnFactor gives the slope of the tip by a moment there over that of a uniform
// arm of the root's section [1].
//
//	Int_0^1 ds / [ (1 - (1 - kt) s)^3 (1 - (1 - kw) s) ]
//
// Arguments and source as [TaperFactor].
func TipTurnFactor(kt, kw float64) float64 {
	return integrate(func(s float64) float64 { return 1 / taperedInertia(kt, kw, s) })
}

// PeakStrainFactor gives the largest strain along a tapered arm over the strain
// at its root [1]; 1 unless the arm tapers so much that its weakest section lies
// away from the root.
//
//	max over s of (1 - s) / [ (1 - (1 - kt) s)^2 (1 - (1 - kw) s) ];  kw = 1, kt < 1/2: 1/(4 kt (1 - kt))
//
// Arguments and source as [TaperFactor].
func PeakStrainFactor(kt, kw float64) float64 {
	f := func(s float64) float64 {
		a, b := 1-(1-kt)*s, 1-(1-kw)*s
		return (1 - s) / (a * a * b)
	}
	const parts = 64
	best := 1.0
	for i := range parts {
		best = max(best, f(summit(f, float64(i)/parts, float64(i+1)/parts)))
	}
	return best
}

func taperedInertia(kt, kw, s float64) float64 {
	a, b := 1-(1-kt)*s, 1-(1-kw)*s
	return a * a * a * b
}

// integrate over 0 to 1 by 32 panels of five Gauss points: exact to rounding
// for the smooth functions of this file.
func integrate(f func(float64) float64) float64 {
	nodes := [5]float64{0, 0.5384693101056831, -0.5384693101056831, 0.9061798459386640, -0.9061798459386640}
	weights := [5]float64{0.5688888888888889, 0.4786286704993665, 0.4786286704993665, 0.2369268850561891, 0.2369268850561891}
	const panels = 32
	var sum float64
	for i := range panels {
		for k, x := range nodes {
			sum += weights[k] * f((float64(i)+(1+x)/2)/panels)
		}
	}
	return sum / (2 * panels)
}

// RootStrain gives the strain at the root of an arm bent at its tip [1].
//
//	eps = 3 c y / (L^2 T)
//
// c: distance of the neutral axis to the tensile face [mm], y: deflection [mm],
// L: length [mm], taper: [TaperFactor]. c = h/2, T = 1 is y = 0.67 eps L^2/h.
// Source: beam theory; Snap-Fit Joints for Plastics - A Design Guide, p. 10
// (from memory); the uniform case read at synectic.net/snap-fit-design.
func RootStrain(c, y, length, taper float64) float64 { return 3 * c * y / (length * length * taper) }

// PermittedDeflection is [RootStrain] the other way round: y = eps L^2 T/(3 c) [mm].
func PermittedDeflection(eps, c, length, taper float64) float64 {
	return eps * length * length * taper / (3 * c)
}

// DeflectionForce gives the force that bends an arm to a root strain, P [N].
//
//	P = Z Es eps / L
//
// z: section modulus I/c at the root [mm^3], es: secant modulus [MPa], eps: strain
// [1], length: [mm]. Source: Snap-Fit Joints for Plastics - A Design Guide, table
// 1, p. 9 (read).
func DeflectionForce(z, es, eps, length float64) float64 { return z * es * eps / length }
