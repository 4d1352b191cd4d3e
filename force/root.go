package force

import "math"

// BaseFactor gives how much more an arm yields on a solid base than on a rigid
// one, at equal force, Q [1].
//
//	Q = 1 + theta L / (P f),  theta = 16.67 P L / (pi E b t^2)
//	uniform rectangle: Q = 1 + 1.327 t/L
//
// length, thickness: of the arm at its root [mm]; taper: [TaperFactor]. At equal
// deflection, force and strain are divided by Q. Above 0.
//
// Source: rotation of the edge of a half plane, O'Donnell, J. Appl. Mech. 1960
// (from memory). The one published factor at hand, 1.20 for a tapered arm of L/t
// = 5.92, lies within 2 % of it. A thin wall as base yields more.
func BaseFactor(length, thickness, taper float64) float64 {
	return 1 + 16.67*thickness/(4*math.Pi*length*taper)
}

// RootConcentration gives the strain at a filleted root over the nominal one,
// Kt [1].
//
//	Kt = 0.9072 (r/t)^-0.33333, not below 1
//
// ratio: fillet radius over arm thickness, 0.02 to 1. Source: Norton, Machine
// Design, appendix, flat bar with shoulder fillet in bending, D/d = 3 (from
// memory), as a stand-in for an arm on a wall. The usual advice is r/t of 0.5.
func RootConcentration(ratio float64) float64 {
	return max(1, 0.90720*math.Pow(ratio, -0.33333))
}

const (
	sharpRoot  = 0.1 // r/t that an unstated fillet counts as; common practice, no source
	adviseRoot = 0.5 // r/t usually advised; common practice, no source
)
