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
//	b = (A - B^2/C)/k
//
// A, B, C: stiffness of the two lengths on either side of the load, summed:
// force and moment for unit movement and rotation; rotation at the load is free.
// Each length in closed form. Without shear (S without bound) the limits are
// Hetenyi's: 1/(2 beta) at the mouth of a long tube, 2/beta far from both ends.
//
// Source: beam on elastic foundation, Hetenyi 1946, with Timoshenko's shear
// (from memory). Compared with axisymmetric finite elements in the tests.
// Leaves out the size of the bead and what the floor gives.
func (t Tube) BandWidth() float64 { return t.bandWidth(true) }

func (t Tube) bandWidth(shear bool) float64 {
	s := newStrip(t, shear)
	a1, b1, c1 := s.lengthStiffness(t.Mouth, Free)
	far := math.Inf(1)
	if t.Far != Long {
		far = t.Beyond
	}
	a2, b2, c2 := s.lengthStiffness(far, t.Far)
	a, b, c := a1+a2, b2-b1, c1+c2
	if c > 0 {
		a -= b * b / c
	}
	return a / s.k
}

// strip is a unit width of wall as a beam on the foundation of its hoop.
type strip struct {
	k, d, invS         float64 // foundation, bending, 1/shear stiffness per mm
	beta, alpha, gamma float64 // decay constants [1/mm]
}

// mostShear bounds Dbeta^2/S: at 1 the decay stops to swing, and a wall that
// thick is no shell. It is reached at t/R of about 1.8.
const mostShear = 0.95

func newStrip(t Tube, shear bool) strip {
	// Modulus drops out of the width: 1 MPa serves.
	s := strip{k: t.Wall / (t.Radius * t.Radius), d: math.Pow(t.Wall, 3) / (12 * (1 - t.Poisson*t.Poisson)), beta: Beta(t.Radius, t.Wall, t.Poisson)}
	share := 0.0
	if shear {
		share = min(mostShear, s.d*s.beta*s.beta*2*(1+t.Poisson)/(t.Wall*5/6))
		s.invS = share / (s.d * s.beta * s.beta)
	}
	s.alpha, s.gamma = s.beta*math.Sqrt(1+share), s.beta*math.Sqrt(1-share)
	return s
}

// lengthStiffness gives force and moment at the start of a length for unit
// movement and unit rotation: F = a w + b psi, M = b w + c psi.
func (s strip) lengthStiffness(length float64, end FarEnd) (a, b, c float64) {
	// Beyond 10 decay lengths the end is not felt (e^-20); below a thousandth a
	// free stub is a plain spring and a stub on a floor is the floor.
	if x := s.beta * length; x > 10 {
		length = 10 / s.beta
	} else if x < 1e-3 {
		if end == Free {
			return s.k * length, s.k * length * length / 2, s.k * length * length * length / 3
		}
		length = 1e-3 / s.beta
	}
	sh, ch := math.Sinh(s.alpha*length), math.Cosh(s.alpha*length)
	sn, cs := math.Sin(s.gamma*length), math.Cos(s.gamma*length)
	// exp(A x) = c0 + c1 A + c2 A^2 + c3 A^3, A the matrix of the equations above.
	half, omega, root := s.k*s.invS/2, 2*s.alpha*s.gamma, 2*s.beta*s.beta
	c2 := sh * sn / omega
	c0 := ch*cs - half*c2
	c3 := (s.alpha*ch*sn - s.gamma*sh*cs) / (root * omega)
	c1 := (s.alpha*sh*cs+s.gamma*ch*sn)/root - half*c3
	m := [4][4]float64{{0, 1, 0, s.invS}, {0, 0, -1 / s.d, 0}, {0, 0, 0, 1}, {s.k, 0, 0, 0}}
	m2 := product(m, m)
	m3 := product(m2, m)
	var e [4][4]float64
	for i := range 4 {
		e[i][i] = c0
		for j := range 4 {
			e[i][j] += c1*m[i][j] + c2*m2[i][j] + c3*m3[i][j]
		}
	}
	first := 2 // a free end has no moment and no shear
	if end != Free {
		first = 0 // a floor has no movement and no rotation
	}
	p, q := e[first], e[first+1]
	// p, q times (w, psi, M, V) are 0: solve for M and V.
	det := p[2]*q[3] - p[3]*q[2]
	solve := func(col int) (moment, shear float64) {
		return (-p[col]*q[3] + q[col]*p[3]) / det, (-p[2]*q[col] + q[2]*p[col]) / det
	}
	_, v1 := solve(0)
	m2nd, v2 := solve(1)
	return -v1, -v2, m2nd
}

func product(a, b [4][4]float64) (c [4][4]float64) {
	for i := range 4 {
		for j := range 4 {
			for k := range 4 {
				c[i][j] += a[i][k] * b[k][j]
			}
		}
	}
	return c
}

// RingStiffness gives the total transverse force per radial movement of the
// joint surface, K [N/mm].
//
//	K = 2 pi E b/(W + nu)  outer member,  2 pi E b/(W - nu)  inner member
//	W = (D1^2 + D2^2)/(D1^2 - D2^2),  D1, D2: outer and inner diameter [mm]
//
// b: band width of [Tube.BandWidth] [mm]. bore may be 0 (solid). isOuter: the
// joint is at the bore of this member. In a thin wall W +- nu is R/t and the
// formula is the shell's, so there is no switch between shell and Lame ring.
//
// Source: Lame's ring, Shigley, press and shrink fits (from memory), over the
// shell's band; the product is own. Against axisymmetric finite elements, up to
// t/R = 0.7: see the tests. Beyond that it is an extrapolation.
func RingStiffness(t Tube, outer, bore float64, isOuter bool) float64 {
	nu := t.Poisson
	if !isOuter {
		nu = -nu
	}
	return 2 * math.Pi * t.Modulus * t.BandWidth() / (lameRatio(outer, bore) + nu)
}
