package force

import "math"

// The contact force of a snap has a part along the press axis. It acts on the
// face of a wall or arm, not in its middle, and so turns it against the way it has
// to give: the axial force makes the spring stiffer. With lever kappa [1],
//
//	P = K w/(1 - f kappa),  W = f P,  f = tan(alpha + rho)
//
// and pulled apart, with the axial force the other way,
//
//	W' = f' K w/(1 + f' kappa),  f' = tan(alpha' + rho)
//
// The published guides leave it out. Source: own, by the reciprocity of elastic
// bodies; compared with axisymmetric finite elements and with an arm bent to its
// true shape in the tests.

// RingLever gives the lever of the axial part of the contact force on a ring
// member, kappa [1].
//
//	kappa = (t/2) sigma -+ nu K r phi/(E A),  under a line: sigma = (B2 - B1)/(C1 + C2)
//
// The first part is the slope of the wall at the load, per movement, times the
// distance of the face from mid-wall, less in thick members under a wide band, see
// leverShare. The second is the give of the wall beyond
// the load, which the axial force compresses: it widens, which helps an outer
// member to open (minus) and hinders an inner one from closing (plus). B, C: as
// [Tube.BandWidth]; r: joint radius [mm]; A: section of the wall [mm^2]; phi: share
// of the load that the wall beyond carries, 1 at the mouth and 1/2 far from both
// ends, half of the band's own besides; K: [RingStiffness]. Arguments as [RingStiffness]. A short ring that stands
// on its end finds the reaction below the load and turns no more than an endless
// wall.
//
// Source: own. Against axisymmetric finite elements: see the tests.
func RingLever(t Tube, outer, bore float64, isOuter bool) float64 {
	s := newStrip(t, true)
	mouth, beyond := s.sides(t)
	j := s.under(t, mouth, beyond)
	area := math.Pi * (outer*outer - bore*bore) / 4
	radius, sign := outer/2, 1.0
	if isOuter {
		radius, sign = bore/2, -1
	}
	return t.leverSlope(j, isOuter)*t.Wall/2 + sign*t.Poisson*RingStiffness(t, outer, bore, isOuter)/t.Modulus*radius*j.beyond/area
}

// bareSlope is the slope of the wall at the load that an axial force there works
// on [1/mm].
func (t Tube) bareSlope(j joined) float64 {
	if t.Far != Free {
		return j.slope
	}
	s := newStrip(t, true)
	mouth, _ := s.sides(t)
	return min(j.slope, s.under(t, mouth, s.length(0, Long)).slope)
}

// leverSlope is what counts of it.
func (t Tube) leverSlope(j joined, isOuter bool) float64 {
	slope := t.bareSlope(j)
	if slope > 0 {
		slope *= t.leverShare(isOuter)
	}
	return slope
}

// ArmLever gives the lever of the axial part of the contact force on a bending
// arm, kappa [1].
//
//	kappa = c theta/y + m y,  uniform arm: 1.5 c/L + 0.3 y/L
//
// c: distance of the neutral axis to the face that the mate pushes on [mm];
// slope: of the tip per deflection, theta/y [1/mm]; bow: m [1/mm]; y: deflection
// [mm]. The contact is taken to lie in that face when the arm is bent fully aside;
// a hook that stands further out has more lever.
//
// Source: own. Against an arm bent to its true shape: see the tests.
func ArmLever(c, slope, bow, y float64) float64 { return c*slope + bow*y }

// armBow is m L of a uniform arm on a rigid base [1]; taken for every arm, the
// term being small. Source: own, the moment of the axial force on the bent arm.
const armBow = 0.3
