package force

import "math"

// A FarEnd says what a tube does at the end away from its mouth.
type FarEnd int

// The far ends of a tube.
const (
	Long    FarEnd = iota // goes on beyond the reach of the joint
	Free                  // ends open
	Floored               // has a floor, taken as stiff: no movement, no rotation
)

// A Tube is one member of a ring joint, seen as a cylindrical shell.
type Tube struct {
	Radius, Wall float64 // mid-wall radius and wall thickness [mm]
	Modulus      float64 // [MPa]
	Poisson      float64 // [1]
	Mouth        float64 // distance of the ring load from the free end [mm]
	Beyond       float64 // distance of the ring load from the far end [mm]; not used if Far is Long
	Far          FarEnd
}

// Beta gives the decay constant of the shell [1/mm].
//
//	beta = (3 (1 - nu^2))^(1/4) / sqrt(R t)
//
// R, t: mid-wall radius and wall [mm], above 0. nu: Poisson ratio [1].
// Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, the
// cylindrical shell loaded symmetrically (from memory).
func Beta(radius, wall, poisson float64) float64 {
	return math.Pow(3*(1-poisson*poisson), 0.25) / math.Sqrt(radius*wall)
}

// BandWidth gives the width of ring that resists the load, b [mm]: the radial
// line stiffness of the shell over its foundation modulus k = E t / R^2.
//
//	D w'''' + k w = q at the load,  beta^4 = k/(4 D)
//	b = (A - B^2/C) / (4 beta)
//
// A, B, C: stiffness of the two lengths on either side of the load, summed, in
// units of D beta^3; rotation at the load is free. Closed form by Krylov's
// functions for each length, exponentials beyond beta l = 10, where the two
// differ by less than 1e-8. Limits: load at the mouth of a long tube, b =
// 1/(2 beta); load far from both ends, b = 2/beta, four times that.
//
// Source: beam on elastic foundation, Hetenyi 1946 (from memory). Leaves out
// shear across the wall, the size of the bead and whatever the floor gives.
func (t Tube) BandWidth() float64 {
	beta := Beta(t.Radius, t.Wall, t.Poisson)
	a1, b1, c1 := lengthStiffness(beta*t.Mouth, Free)
	far := math.Inf(1)
	if t.Far != Long {
		far = beta * t.Beyond
	}
	a2, b2, c2 := lengthStiffness(far, t.Far)
	a, b, c := a1+a2, b2-b1, c1+c2
	if c > 0 {
		a -= b * b / c
	}
	return a / (4 * beta)
}

// lengthStiffness gives force and moment at the start of a length x = beta l
// for unit movement and unit rotation: F = a w + b w', M = b w + c w'.
func lengthStiffness(x float64, end FarEnd) (a, b, c float64) {
	if x > 10 {
		return 4, 2, 2
	}
	if x < 1e-3 {
		// Shorter than a thousandth of 1/beta: a free stub is a plain spring
		// and a stub on a floor is the floor.
		if end == Free {
			return 4 * x, 2 * x * x, 4 * x * x * x / 3
		}
		x = 1e-3
	}
	sh, ch, sn, cs := math.Sinh(x), math.Cosh(x), math.Sin(x), math.Cos(x)
	f1, f2, f3, f4 := ch*cs, (ch*sn+sh*cs)/2, sh*sn/2, (ch*sn-sh*cs)/4
	// Two end conditions p (w'', w''') = -q (w, w').
	var p11, p12, p21, p22, q11, q12, q21, q22 float64
	if end == Free {
		p11, p12, q11, q12 = f1, f2, -4*f3, -4*f4
		p21, p22, q21, q22 = -4*f4, f1, -4*f2, -4*f3
	} else {
		p11, p12, q11, q12 = f3, f4, f1, f2
		p21, p22, q21, q22 = f2, f3, -4*f4, f1
	}
	det := p11*p22 - p12*p21
	w3byW := -(p11*q21 - p21*q11) / det
	w3byR := -(p11*q22 - p21*q12) / det
	w2byR := -(p22*q12 - p12*q22) / det
	return w3byW, w3byR, -w2byR
}

const (
	shellUpTo   = 0.10 // t/R up to which the shell holds; common practice, no source
	lameBeyond  = 0.20 // t/R beyond which the ring is Lame's; common practice, no source
	shellRegime = "thin shell"
	mixedRegime = "between shell and Lame ring"
	lameRegime  = "Lame ring over the shell's band"
)

// RingStiffness gives the total transverse force per radial movement of the
// joint surface, K [N/mm], and the regime that gave it.
//
//	thin (t/R <= 0.1):   K = 2 pi R (E t/R^2) b
//	thick (t/R >= 0.2):  K = 2 pi E b / (W + nu) outer,  2 pi E b / (W - nu) inner
//	                     W = (D1^2 + D2^2) / (D1^2 - D2^2),  D1, D2 outer and inner diameter
//	between:             linear in t/R from one to the other
//
// b: band width of [Tube.BandWidth] [mm]. outer, bore: diameters of the member
// [mm]; bore may be 0 (solid). isOuter: the joint is at its bore.
//
// Source: shell as above; Lame's ring, Shigley, press and shrink fits (from
// memory); the switch is common practice, no source. A solid or very thick
// member has no shell band: its b is an extrapolation.
func RingStiffness(t Tube, outer, bore float64, isOuter bool) (k float64, regime string) {
	b := t.BandWidth()
	w := lameRatio(outer, bore)
	nu := t.Poisson
	if !isOuter {
		nu = -nu
	}
	thin := 2 * math.Pi * t.Modulus * t.Wall / t.Radius * b
	thick := 2 * math.Pi * t.Modulus * b / (w + nu)
	ratio := t.Wall / t.Radius
	switch {
	case ratio <= shellUpTo:
		return thin, shellRegime
	case ratio >= lameBeyond:
		return thick, lameRegime
	}
	s := (ratio - shellUpTo) / (lameBeyond - shellUpTo)
	return thin + s*(thick-thin), mixedRegime
}
