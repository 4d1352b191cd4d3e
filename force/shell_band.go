package force

import "math"

// sides are the lengths to the mouth and beyond, from the edges of the band that
// the load bears on.
func (s strip) sides(t Tube) (mouth, beyond length) {
	return s.length(max(0, t.Mouth-t.Band/2), Free), s.length(max(0, t.Beyond-t.Band/2), t.Far)
}

// under puts the two lengths together under the tube's own load.
func (s strip) under(t Tube, mouth, beyond length) joined {
	if s.narrow(t.Band) {
		return s.join(mouth, beyond)
	}
	j, _ := s.spread(mouth, beyond, t.Band)
	return j
}

// narrow says that a band bears as a line would: less than 1e-4 of its stiffness off.
func (s strip) narrow(band float64) bool { return s.beta*band < 0.001 }

// carried is a strip under a unit load that is spread over a band: edge 1 lies
// towards the mouth, edge 2 beyond.
type carried struct {
	coefficients [7]float64 // c0, c1, c2, c3, g0, g1, h of the band, see [strip.length]
	along        float64    // part of the band that is reckoned; the rest carries itself [mm]
	p            float64    // movement of a band that carries itself, 1/(k along) [mm]
	byW, byPsi   [4]float64 // movement, rotation, moment, shear at edge 2 by movement and by rotation of edge 1
	a1, a2, q    float64    // balance of moments at edge 2: a1 w1 + a2 psi1 = q p
	b1, b2, r    float64    // balance of forces there: b1 w1 + b2 psi1 = r p
	w1, psi1     float64    // movement and rotation of edge 1
	w2, psi2     float64    // and of edge 2
	f1, f2       float64    // load that goes out of the band into either length [1]
}

// spread puts the two lengths together under a load that is spread evenly over a
// band between them; width, slope and share of [joined] are those of its mean
// movement.
//
//	b = c/(1 - F1 - F2),  F1 = A1 w1 - B1 psi1,  F2 = A2 w2 + B2 psi2
//	slope = -(w2 - w1 - (M2 - M1)/S) k b/c,  M1 = B1 w1 - C1 psi1,  M2 = B2 w2 + C2 psi2
//
// c: width of the band [mm]; A, B, C: the lengths, 1 to the mouth, 2 beyond. The
// movement of the edges follows from the transfer matrix over the band, less p =
// 1/(k c), the movement of a band that carries itself. The force along the axis
// grows over the band, so that half of it stands against the band's own hoop.
// Source: as [Tube.BandWidth]; worked out from its transfer matrix (own).
func (s strip) spread(mouth, beyond length, band float64) (joined, carried) {
	c := carried{along: min(band, longLength/s.beta)}
	c.p = 1 / (s.k * c.along)
	c0, c1, c2, c3 := s.decay(c.along)
	ks, kd := s.k*s.invS, s.k/s.d
	g0, g1 := c0+c2*ks, c1+c3*ks
	h := c1*s.invS + c3*(ks*s.invS-1/s.d)
	c.coefficients = [7]float64{c0, c1, c2, c3, g0, g1, h}
	// The moment at edge 1 is B1 w1 - C1 psi1, the shear A1 w1 - B1 psi1.
	wByW, wByPsi := g0-c2/s.d*mouth.b+h*mouth.a, g1+c2/s.d*mouth.c-h*mouth.b
	psiByW, psiByPsi := -c3*kd-c1/s.d*mouth.b-c2/s.d*mouth.a, c0+c1/s.d*mouth.c+c2/s.d*mouth.b
	mByW, mByPsi := c2*s.k+c0*mouth.b+g1*mouth.a, c3*s.k-c0*mouth.c-g1*mouth.b
	vByW, vByPsi := s.k*g1-kd*c3*mouth.b+g0*mouth.a, s.k*c2+kd*c3*mouth.c-g0*mouth.b
	c.byW, c.byPsi = [4]float64{wByW, psiByW, mByW, vByW}, [4]float64{wByPsi, psiByPsi, mByPsi, vByPsi}
	c.a1, c.a2 = mByW-beyond.b*wByW-beyond.c*psiByW, mByPsi-beyond.b*wByPsi-beyond.c*psiByPsi
	c.q = c2*s.k - beyond.b*(g0-1) + beyond.c*c3*kd
	c.b1, c.b2 = vByW+beyond.a*wByW+beyond.b*psiByW, vByPsi+beyond.a*wByPsi+beyond.b*psiByPsi
	c.r = s.k*g1 + beyond.a*(g0-1) - beyond.b*c3*kd
	det := c.a1*c.b2 - c.a2*c.b1
	c.w1, c.psi1 = c.p*(c.q*c.b2-c.a2*c.r)/det, c.p*(c.a1*c.r-c.q*c.b1)/det
	c.w2 = wByW*c.w1 + wByPsi*c.psi1 - (g0-1)*c.p
	c.psi2 = psiByW*c.w1 + psiByPsi*c.psi1 + c3*kd*c.p
	c.f1, c.f2 = mouth.a*c.w1-mouth.b*c.psi1, beyond.a*c.w2+beyond.b*c.psi2
	inside := 1 - c.f1 - c.f2
	turned := c.w2 - c.w1 - s.invS*(beyond.b*c.w2+beyond.c*c.psi2-mouth.b*c.w1+mouth.c*c.psi1)
	ratio := c.along / band
	j := joined{
		width: c.along/inside + band - c.along,
		slope: -turned * s.k / inside * ratio,
	}
	hoop := c.f2 + beyond.held*c.w2 + beyond.heldPsi*c.psi2
	j.beyond = 0.5 + (hoop+inside/2-0.5)*ratio
	return j, c
}

// LocalGive gives how much further the loaded face gives way than the wall, by the
// load itself: its radial compliance times E and the length of the band round the
// joint, C [1].
//
//	C = (1 - s) 0.6 ln(1 + (q'/c)^2.5) + s (1 - nu^2)/pi ln(1 + (q/c)^2)
//	s = min(1, 2 x/t),  c: band, not below 0.03 t
//	q = 0.48 t (1 - e^(-8 x')) (1 - 0.32 (x' - 0.9)),  q' = 0.23 t (1 - e^(-20 x')) (1 - 0.25 (x' - 0.5)),  x' = t/R
//
// x: from the mouth to the band [mm]. The logarithm is that of an elastic half-plane
// under a strip of load (2 (1 - nu^2)/pi for each factor e of width); at the very
// mouth, where half of it is missing, 1.5 in its place. q, q': width at which it ends;
// neither last bracket counts above 1. Source: own, the figures fitted to
// axisymmetric finite elements, on the side of the stiffer member; see the tests. 0
// for a load on a line, Band 0: the stiffness is then that of the wall alone.
func (t Tube) LocalGive() float64 {
	if t.Band == 0 {
		return 0
	}
	far, mouth, c, s := t.local()
	return (1-s)*0.6*math.Log1p(math.Pow(mouth/c, 2.5)) + s*(1-t.Poisson*t.Poisson)/math.Pi*math.Log1p(far*far/(c*c))
}

// leastBand is the narrowest band that is told apart, share of the wall [1]; own.
const leastBand = 0.03

// local gives q, q', c and s of [Tube.LocalGive].
func (t Tube) local() (far, mouth, c, s float64) {
	x := t.Wall / t.Radius
	far = 0.48 * t.Wall * (1 - math.Exp(-8*x)) * min(1, 1-0.32*(x-0.9))
	mouth = 0.23 * t.Wall * (1 - math.Exp(-20*x)) * min(1, 1-0.25*(x-0.5))
	return far, mouth, max(t.Band, leastBand*t.Wall), min(1, 2*max(0, t.Mouth-t.Band/2)/t.Wall)
}

// leverShare is the share of the slope that counts in the lever of a thick member
// under a wide band [1].
//
//	inner 1/(1 + 0.65 c t/R^2),  outer 1/(1 + 0.3 c t/R^2)
//
// Source: own, fitted to axisymmetric finite elements, t/R of 0.05 to 2.
func (t Tube) leverShare(isOuter bool) float64 {
	if isOuter {
		return 1 / (1 + 0.3*t.Band*t.Wall/(t.Radius*t.Radius))
	}
	return 1 / (1 + 0.65*t.Band*t.Wall/(t.Radius*t.Radius))
}
