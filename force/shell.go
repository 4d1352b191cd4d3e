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
	Band         float64 // width over which it bears, Mouth in its middle [mm]; 0: a line
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

// ShellStiffness gives the total transverse force per radial movement of a thin
// shell without shear across its wall, K [N/mm].
//
//	K = 2 pi R k b,  k = E t/R^2;  load at the mouth of a long tube: b = 1/(2 beta)
//
// Source: as [Beta]; beam on elastic foundation, Hetenyi 1946 (from memory). The
// form that the literature prints; [RingStiffness] is the one that governs.
func (t Tube) ShellStiffness() float64 {
	return 2 * math.Pi * t.Modulus * t.Wall / t.Radius * t.bandWidth(false)
}

// BandWidth gives the width of ring that resists the load, b [mm]: the radial
// line stiffness of the tube over its foundation modulus k = E t/R^2. The tube
// is a strip of wall on the elastic foundation that the hoop gives it.
//
//	w' = psi + V/S,  psi' = -M/D,  M' = V,  V' = k w - q
//	D = E t^3/(12 (1 - nu^2)),  S = (5/6) t E/(2 (1 + nu))
//	b = (A1 + A2 - (B2 - B1)^2/(C1 + C2))/k
//
// That is under a line; under a band see strip.spread. A, B, C: stiffness of the lengths on either side of the load, 1 to the mouth,
// 2 beyond: force and moment for unit movement and rotation; rotation at the
// load is free. Each length in closed form, see strip.length. For a long tube
//
//	b = 1/(2 alpha) at the mouth,  2 alpha/(2 alpha^2 - beta^2) far from both ends
//
// and without shear (alpha = beta) Hetenyi's 1/(2 beta) and 2/beta.
//
// Source: beam on elastic foundation, Hetenyi 1946, with Timoshenko's shear
// (from memory). Compared with axisymmetric finite elements in the tests.
// Leaves out the size of the bead and what the floor gives.
func (t Tube) BandWidth() float64 { return t.bandWidth(true) }

func (t Tube) bandWidth(shear bool) float64 {
	s := newStrip(t, shear)
	mouth, beyond := s.sides(t)
	return s.under(t, mouth, beyond).width
}

// strip is a unit width of wall as a beam on the foundation of its hoop, over the
// modulus.
type strip struct {
	k, d, invS         float64 // foundation [1/mm], bending [mm^3], 1/shear stiffness [1/mm]
	beta, alpha, gamma float64 // decay constants [1/mm]
}

// mostShear bounds Dbeta^2/S: at 1 the decay stops to swing, and a wall that
// thick is no shell. It is reached at t/R of about 1.8.
const mostShear = 0.95

func newStrip(t Tube, shear bool) strip {
	// Modulus drops out of the width: 1 MPa serves.
	s := strip{k: t.Wall / (t.Radius * t.Radius), d: math.Pow(t.Wall, 3) / (12 * (1 - t.Poisson*t.Poisson)),
		beta: Beta(t.Radius, t.Wall, t.Poisson)}
	share := 0.0
	if shear {
		share = min(mostShear, s.d*s.beta*s.beta*2*(1+t.Poisson)/(t.Wall*5/6))
		s.invS = share / (s.d * s.beta * s.beta)
	}
	s.alpha, s.gamma = s.beta*math.Sqrt(1+share), s.beta*math.Sqrt(1-share)
	return s
}

// RingStiffness gives the total transverse force per radial movement of the
// joint surface, K [N/mm].
//
//	K = 2 pi E/[(W + nu)/b + C/r]  outer member,  2 pi E/[(W - nu)/b + C/r]  inner member
//	W = (D1^2 + D2^2)/(D1^2 - D2^2),  D1, D2: outer and inner diameter [mm]
//
// b: band width of [Tube.BandWidth] [mm]. bore may be 0 (solid). isOuter: the
// joint is at the bore of this member. In a thin wall W +- nu is R/t and the
// formula is the shell's, so there is no switch between shell and Lame ring.
//
// C: [Tube.LocalGive]; r: joint radius [mm].
//
// Source: Lame's ring, Shigley, press and shrink fits (from memory), over the
// shell's band; the product is own. Axisymmetric finite elements under an even
// pressure over the band give 0.94 to 1.01 of it for t/R of 0.05 to the solid pin of 2,
// bands of 0.03 to 4 walls, at the mouth and away from it; see the tests.
func RingStiffness(t Tube, outer, bore float64, isOuter bool) float64 {
	nu := t.Poisson
	if !isOuter {
		nu = -nu
	}
	radius := outer / 2
	if isOuter {
		radius = bore / 2
	}
	return 2 * math.Pi * t.Modulus / ((lameRatio(outer, bore)+nu)/t.BandWidth() + t.LocalGive()/radius)
}
