package force

import "math"

// length is a stretch of wall between the load and an end: what it takes to move
// and to turn its beginning, over the modulus.
//
//	F = a w + b psi,  M = b w + c psi
type length struct {
	a, b, c float64 // [1], [mm], [mm^2]
	held    float64 // shear at a floor per movement, and per rotation of the beginning [1], [mm]
	heldPsi float64
}

// joined is a strip under a ring load with its two lengths.
type joined struct {
	width  float64 // b of [Tube.BandWidth] [mm]
	slope  float64 // rotation of the wall at the load per movement, the mouth leading [1/mm]
	beyond float64 // share of the load that the wall beyond the load carries by its hoop [1]
}

// decay coefficients of a length x, of which the transfer matrix of the strip
// consists: exp(x A) = c0 + c1 A + c2 A^2 + c3 A^3.
func (s strip) decay(x float64) (c0, c1, c2, c3 float64) {
	sh, ch := math.Sinh(s.alpha*x), math.Cosh(s.alpha*x)
	sn, cs := math.Sincos(s.gamma * x)
	half, omega, root := s.k*s.invS/2, 2*s.alpha*s.gamma, 2*s.beta*s.beta
	c2 = sh * sn / omega
	c0 = ch*cs - half*c2
	c3 = (s.alpha*ch*sn - s.gamma*sh*cs) / (root * omega)
	c1 = (s.alpha*sh*cs+s.gamma*ch*sn)/root - half*c3
	return c0, c1, c2, c3
}

const (
	longLength = 10.0 // decay lengths beyond which an end is not felt, e^-20
	stubLength = 1e-3 // decay lengths below which a free stub is a plain spring and a stub on a floor is the floor
)

// length gives the stiffness of a length of wall, free or held at its end.
//
// Endless:
//
//	a = k alpha/m,  b = 2 beta^4 D/m,  c = 2 alpha beta^2 D/m,  m = 2 alpha^2 - beta^2
//
// Free at its end, with g0 = c0 + c2 k/S, g1 = c1 + c3 k/S, det = c0 g0 + c3 g1 k/D:
//
//	a = k (c0 g1 + c2 c3 k/D)/det,  b = k (c0 c2 + c3^2 k/D)/det,  c = k (c2 g1 - c3 g0)/det
//
// Held at its end, with h = c1/S + c3 (k/S^2 - 1/D), det = (c2^2/D + c1 h)/D:
//
//	a = (c1 g0 + c2 c3 k/D)/(D det),  b = (c1 g1 - c0 c2)/(D det),  c = (c0 h + c2 g1/D)/det
//
// Source: as [Tube.BandWidth]; worked out from its transfer matrix (own).
func (s strip) length(x float64, end FarEnd) length {
	switch {
	case end == Long, s.beta*x > longLength:
		b4, m := math.Pow(s.beta, 4), 2*s.alpha*s.alpha-s.beta*s.beta
		return length{a: s.k * s.alpha / m, b: 2 * b4 * s.d / m, c: 2 * s.alpha * s.beta * s.beta * s.d / m}
	case s.beta*x < stubLength && end == Free:
		return length{a: s.k * x, b: s.k * x * x / 2, c: s.k * x * x * x / 3}
	}
	x = max(x, stubLength/s.beta)
	c0, c1, c2, c3 := s.decay(x)
	ks, kd := s.k*s.invS, s.k/s.d
	g0, g1 := c0+c2*ks, c1+c3*ks
	if end == Free {
		det := c0*g0 + c3*g1*kd
		return length{a: s.k * (c0*g1 + c2*c3*kd) / det, b: s.k * (c0*c2 + c3*c3*kd) / det, c: s.k * (c2*g1 - c3*g0) / det}
	}
	h := c1*s.invS + c3*(s.k*s.invS*s.invS-1/s.d)
	det := (c2*c2/s.d + c1*h) / s.d
	l := length{a: (c1*g0 + c2*c3*kd) / (s.d * det), b: (c1*g1 - c0*c2) / (s.d * det), c: (c0*h + c2*g1/s.d) / det}
	// Shear at the floor: V = k g1 w + k c2 psi - (k/D) c3 M + g0 V at the load.
	l.held = s.k*g1 - kd*c3*l.b - g0*l.a
	l.heldPsi = s.k*c2 - kd*c3*l.c - g0*l.b
	return l
}

// join puts the two lengths together under a load that is free to turn.
func (s strip) join(mouth, beyond length) joined {
	a, b, c := mouth.a+beyond.a, beyond.b-mouth.b, mouth.c+beyond.c
	var j joined
	if c > 0 {
		j.slope = b / c
	}
	whole := a - b*j.slope
	j.width = whole / s.k
	// The hoop beyond carries what the load gives to that side, less what the
	// floor takes.
	j.beyond = (beyond.a - beyond.b*j.slope + beyond.held - beyond.heldPsi*j.slope) / whole
	return j
}

// RingBending gives the largest tension along the axis, by bending of the wall, per
// radial movement of a ring load, eps/w [1/mm].
//
//	eps = (t/2) M/D + nu w/R (inner member),  far from both ends and thin: M t/(2 D) = 1.6 w/R
//
// It stands beside the hoop strain w/R, and pulls at the layers of a part that is
// built along the axis. The moment is looked for at the load and along both
// lengths. A member that is pressed inward stretches along the axis besides; one
// that is opened shortens, which is not credited. Source: as [Tube.BandWidth].
// Leaves out the bead's own edge.
func (t Tube) RingBending(isOuter bool) float64 {
	t.Band = 0 // a line bends the wall most
	s := newStrip(t, true)
	mouth, beyond := s.sides(t)
	j := s.join(mouth, beyond)
	most := func(l length, x, psi float64) float64 {
		m, v := l.b+l.c*psi, -(l.a + l.b*psi)
		best := math.Abs(m)
		const steps = 64
		reach := min(x, 4/s.beta)
		for i := 1; i <= steps; i++ {
			c0, c1, c2, c3 := s.decay(reach * float64(i) / steps)
			best = max(best, math.Abs(s.k*(c2+c3*psi)+c0*m+(c1+c3*s.k*s.invS)*v))
		}
		return best
	}
	far := t.Beyond
	if t.Far == Long {
		far = longLength / s.beta
	}
	moment := most(beyond, far, -j.slope)
	if t.Mouth > 0 {
		moment = max(moment, most(mouth, t.Mouth, j.slope))
	}
	strain := t.Wall / 2 * moment / s.d
	if !isOuter {
		strain += t.Poisson / t.Radius
	}
	return strain
}
