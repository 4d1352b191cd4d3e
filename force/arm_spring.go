package force

import "math"

// thickness is that of the root [mm].
func (c Cantilever) thickness() float64 {
	switch {
	case c.shape() == "rocker":
		return 2 * c.BarRadius
	case c.Section == "ring_segment":
		return c.OuterRadius - c.InnerRadius
	}
	return c.Thickness
}

// root is the section at the root and the distance to its tensile face [mm].
// The mate pushes on the face that is in tension: the inner one of an arm that
// bends outward.
func (c Cantilever) root() (s Section, tensile float64) {
	switch c.Section {
	case "ring_segment":
		s = RingSegment(c.InnerRadius, c.OuterRadius, c.Arc)
		if c.Bends == "inward" {
			return s, s.Outer
		}
		return s, s.Inner
	case "trapezoid":
		s = Trapezoid(c.Width, c.NarrowWidth, c.Thickness)
		if c.Tension == "wide" {
			return s, s.Outer
		}
		return s, s.Inner
	}
	s = Rectangle(c.Width, c.Thickness)
	return s, s.Inner
}

func (c Cantilever) tapers() (kt, kw float64) {
	kt, kw = 1, 1
	if c.TipThickness != 0 {
		kt = c.TipThickness / c.Thickness
	}
	if c.TipWidth != 0 {
		kw = c.TipWidth / c.Width
	}
	return kt, kw
}

// armSpring is an arm per mm of deflection, for one modulus.
type armSpring struct {
	stiffness float64 // [N/mm]
	axial     float64 // largest strain along the press axis, without the fillet [1/mm]
	root      float64 // strain at the root, without the fillet [1/mm]; a rocker: shear strain over 1 + nu
	across    float64 // largest strain across the press axis, in strip or bend [1/mm]
	kt        float64 // concentration at the root [1]
	slope     float64 // of the tip, moved by a force across the arm [rad/mm]
	turn      float64 // of the tip, moved by a moment there [rad/mm]
	q         float64 // base factor used [1]
	solid     float64 // base factor of a solid base, for the model error [1]
	face      float64 // distance of the neutral axis to the face that the mate pushes on [mm]
	unsure    float64 // how far the lever of the axial force may lie on either side [1]
}

// lever is [ArmLever] at a deflection y [mm].
func (a armSpring) lever(c Cantilever, y float64) float64 {
	switch c.shape() {
	case "rocker":
		return ArmLever(a.face, a.slope, 0, y)
	case "u_arm":
		// The mean lever about free leg, bend and rooted leg.
		return ArmLever(a.face+c.BendRadius, a.slope, 0, y)
	}
	return ArmLever(a.face, a.slope, armBow/c.Length, y)
}

// farBent is how much lower, as a ratio, the forces of an arm may lie besides its model
// error, bent to y/L of its length [1].
//
//	1 + 1.6 (y/L - 0.1) above 0.1
//
// Small deflections count the whole length as lever; the tip of an arm bent far comes
// down and slides along the mate. Pressed in, the force of the model lies above the true
// one; pulled apart it would promise too much. Source: own, an arm bent to its true shape
// in the tests, y/L to 0.2: 1.29 for the worst of them.
func farBent(share float64) float64 { return 1 + 1.6*max(0, share-0.1) }

func (c Cantilever) spring(m Material) armSpring {
	e, l := m.Modulus.Value, c.Length
	a := armSpring{kt: RootConcentration(sharpRoot), q: 1, solid: 1}
	if c.RootRadius != nil {
		a.kt = RootConcentration(*c.RootRadius / c.thickness())
	}
	s, tensile := Section{}, 0.0
	if c.shape() != "rocker" {
		s, tensile = c.root()
	}
	a.face = tensile
	switch c.shape() {
	case "straight":
		kt, kw := c.tapers()
		t := TaperFactor(kt, kw)
		a.solid = BaseFactor(l, c.thickness(), t)
		switch {
		case c.BaseFactor != nil:
			a.q = *c.BaseFactor
		case c.Base == "solid":
			a.q = a.solid
		}
		a.stiffness = 3 * e * s.Inertia / (l * l * l * t * a.q)
		a.root = RootStrain(tensile, 1, l, t) / a.q
		a.axial = a.root * PeakStrainFactor(kt, kw)
		// The base turns the tip by its rotation on top of the arm's own slope.
		a.slope = (TipSlopeFactor(kt, kw) + a.q - 1) / (l * a.q)
		a.turn = (3*TipTurnFactor(kt, kw)/t + a.q - 1) / (l * l * a.q) / a.slope
	default:
		w := c.folded(m).value
		a.q, a.stiffness, a.slope, a.turn = w["Q"], w["K"], w["theta_y"], w["turn_y"]
		a.root, a.axial, a.across = w["eps_y"], w["eps_y"], w["eps2_y"]
		switch c.shape() {
		case "l_arm":
			// The axial force also bends the strip: towards the mate or away from it,
			// by which side of the arm the strip is held on.
			a.unsure = w["K"] * l * c.BaseLength * c.BaseLength / (2 * w["I2"]) / e
		case "u_arm":
			a.kt, a.root = 1, 0 // the root carries little of the moment
		case "rocker":
			a.stiffness, a.root, a.across, a.face = w["K_Q"], w["eps_Q"], w["eps_Q"], w["c"]
		}
	}
	return a
}

// governs gives the strain per mm nearest its limit, and that limit [1].
func (a armSpring) governs(axial, across float64) (strain, limit float64) {
	strain, limit = max(a.axial, a.root*a.kt), axial
	if a.axial == 0 { // a rocker strains its bars only
		strain = 0
	}
	if b := a.across * max(1, a.barKt()); b/across > strain/limit {
		strain, limit = b, across
	}
	return strain, limit
}

// barKt is the concentration for what bends or twists across the axis: only a
// rocker's bars have their root there.
func (a armSpring) barKt() float64 {
	if a.axial == 0 {
		return a.kt
	}
	return 1
}

// Sintered arms below thinArm in width and thickness had a flexural modulus 45 % below
// that of the bulk (abstract: ASME IMECE 2021, V003T03A005). How it falls with the
// thickness is not published, nor whether a given shop's does: the softer end is in the
// band, downward, for what holds; what presses gets no relief. For rings and press fits
// nothing is published.
const (
	thinArm  = 3.0  // [mm]
	thinLeft = 0.55 // modulus left, two standard deviations down [1]
)

// thinness is the ln of the ratio by which an arm of a thickness [mm] may be softer.
func thinness(m Material, thickness float64) float64 {
	if m.Process != "PBF" || thickness >= thinArm {
		return 0
	}
	return -math.Log(thinLeft)
}
