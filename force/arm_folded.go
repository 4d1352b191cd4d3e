package force

import "slices"

// An L: an arm L, I [mm, mm^4] that stands at a right angle on a strip L2, I2 that bends
// with it. A U: two equal legs L and a bend of mean radius R, the force across the legs at
// the tip; its largest moment, P (L + R), stands at the crown. c: neutral axis to tensile
// face [mm]; E: modulus [MPa]; Q: base factor [1]. They leave out the stretch of strip and
// legs. Source: own, Castigliano; strains by beam theory.
var (
	lArm = []relation{
		{"arm.strip", "I2", "mm^4", "b*t2^3/12", "", "second moment of the strip of an L", sourceBeam, MarkMemory},
		{"arm.stiffness", "K", "N/mm", "E/(L^3/(3*I) + L^2*L2/I2)/Q", "", "stiffness of the arm", "Castigliano", MarkOwn},
		{"arm.root", "eps_y", "1/mm", "K*L*c/(E*I)", "eps/y at the root", "strain at the root per deflection", sourceBeam, MarkMemory},
		{"arm.across", "eps2_y", "1/mm", "K*L*t2/2/(E*I2)", "eps/y in the strip",
			"strain across the axis, in the strip of an L or the bend of a U", sourceBeam, MarkMemory},
		{"arm.tip_slope", "theta_y", "1/mm", "K*(L^2/(2*I) + L*L2/I2)/E + (Q - 1)/(L*Q)", "theta/y",
			"slope of the tip per deflection by a force", "Castigliano", MarkOwn},
		{"arm.tip_turn", "turn_y", "1/mm", "(K*(L/I + L2/I2)/E + (Q - 1)/(L^2*Q))/theta_y", "turn/y, moved by a moment at the tip",
			"slope of the tip per deflection by a moment", "Castigliano", MarkOwn},
	}
	uArm = []relation{
		{"arm.stiffness", "K", "N/mm", "6*E*I/(4*L^3 + 6*pi*L^2*R + 24*L*R^2 + 3*pi*R^3)/Q", "", "stiffness of the arm", "Castigliano", MarkOwn},
		{"arm.root", "eps_y", "1/mm", "K*L*c/(E*I)", "eps/y along the legs", "strain at the root per deflection", sourceBeam, MarkMemory},
		{"arm.across", "eps2_y", "1/mm", "K*(L + R)*c/(E*I)", "eps/y at the crown of the bend",
			"strain across the axis, in the strip of an L or the bend of a U", sourceBeam, MarkMemory},
		{"arm.tip_slope", "theta_y", "1/mm", "K*(L^2 + pi*L*R + 2*R^2)/(E*I) + (Q - 1)/(L*Q)", "theta/y",
			"slope of the tip per deflection by a force", "Castigliano", MarkOwn},
		{"arm.tip_turn", "turn_y", "1/mm", "(K*(2*L + pi*R)/(E*I) + (Q - 1)/(L^2*Q))/theta_y", "turn/y, moved by a moment at the tip",
			"slope of the tip per deflection by a moment", "Castigliano", MarkOwn},
	}
)

func (c Cantilever) relations() []relation { return slices.Concat(lArm, uArm, torsionBase) }

// folded works out an L, a U or a rocker.
func (c Cantilever) folded(m Material) working {
	q := 1.0
	if c.BaseFactor != nil {
		q = *c.BaseFactor
	}
	if c.shape() == "rocker" {
		w := Torsional{Length: c.Length, BarRadius: c.BarRadius, BarLength: c.BarLength, Bars: c.Bars}.springs(m)
		w.with("Q", q)
		w.by(torsionBase...)
		return w
	}
	s, tensile := c.root()
	w := working{value: map[string]float64{"L": c.Length, "L2": c.BaseLength, "t2": c.BaseThickness, "b": c.Width, "R": c.BendRadius,
		"I": s.Inertia, "c": tensile, "E": m.Modulus.Value, "Q": q}}
	if c.shape() == "l_arm" {
		w.by(lArm...)
	} else {
		w.by(uArm...)
	}
	return w
}
