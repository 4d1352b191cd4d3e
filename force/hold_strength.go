package force

import "math"

// A hold never exceeds what the material carries. A joint that locks itself is held by
// that alone: the shear of its bead or hook, the pressure on the flank, the section
// behind it. Strengths are those across the layers where layers are pulled apart or
// slide on one another, whatever the build; shear counts as half the tensile strength
// (the maximum shear rule, the lower of the two usual ones; common practice).

// shearShare is the shear over the tensile strength [1].
const shearShare = 0.5

// strength is one bound of the hold of one joint.
type strength struct {
	what  string
	outer bool    // of the outer member's material
	force float64 // at nominal size [N]
	grows bool    // with the size

	formula, numbers string
	vals             []float64
}

// AxialStrength is the strength along the press axis [MPa]: across the layers unless the
// part is built across the axis.
func (m Material) AxialStrength() Figure {
	if m.Build == "across" || !m.Layered() {
		return m.Strength
	}
	return m.StrengthZ
}

// strengths gives every bound of a latch.
func strengths(l Latch, j *joint, outer, inner Material) []strength {
	var out []strength
	of := func(o bool) Material {
		if o {
			return outer
		}
		return inner
	}
	add := func(what string, o, grows bool, force float64, formula, numbers string, vals ...float64) {
		out = append(out, strength{what, o, force, grows, formula, numbers, vals})
	}
	shear := func(what string, area float64, sides ...bool) {
		for _, o := range sides {
			s := of(o).StrengthZ.Value
			add(what, o, false, area*shearShare*s, "R = A S_z/2", "%s*%s/2", area, s)
		}
	}
	bearing := func(area float64) {
		for _, o := range []bool{true, false} {
			add("pressure on the flank", o, true, area*of(o).Strength.Value, "R = A S", "%s*%s", area, of(o).Strength.Value)
		}
	}
	section := func(what string, o bool, area float64) {
		s := of(o).AxialStrength().Value
		add(what, o, false, area*s, "R = A S", "%s*%s", area, s)
	}
	switch {
	case l.Annular != nil:
		a := l.Annular
		d, h, share := a.JointDiameter, j.size/2, 1.0
		if a.Split == "outer" || a.Split == "inner" {
			share = float64(a.Slots) * a.fingers().arc() / (2 * math.Pi)
		}
		shear("shear of the bead", math.Pi*d*share*flankBase(h, a.MatingAngle, a.ReturnAngle, a.Land), true, false)
		bearing(math.Pi * d * share * h)
		wo, wi := (a.OuterDiameter-d)/2, (d-a.InnerDiameter)/2
		section("section of the outer part", true, share*math.Pi*(d+wo)*neck(wo, h))
		section("section of the inner part", false, share*math.Pi*(d-wi)*neck(wi, h))
	case l.Ball != nil:
		b := l.Ball
		share := 1.0
		if b.Slots > 0 {
			share = float64(b.Slots) * b.fingers().arc() / (2 * math.Pi)
		}
		bearing(share * math.Pi / 4 * (b.BallDiameter*b.BallDiameter - b.MouthDiameter*b.MouthDiameter))
		w := (b.OuterDiameter - b.MouthDiameter) / 2
		section("section of the socket", true, share*math.Pi*(b.OuterDiameter-w)*neck(w, (max(b.BallDiameter, b.SocketDiameter)-b.MouthDiameter)/2))
		if b.StemDiameter > 0 {
			section("section of the stem", false, math.Pi/4*b.StemDiameter*b.StemDiameter)
		}
	case l.Cantilever != nil:
		c := l.Cantilever
		b := c.hookWidth()
		shear("shear of the hook", b*flankBase(c.Undercut, c.MatingAngle, c.ReturnAngle, c.Land), true, false)
		bearing(b * c.Undercut)
		out = append(out, c.armPull(outer))
	case l.PressFit != nil:
		f := l.PressFit
		d := f.drawn().d
		shear("shear of the bore's surface", math.Pi*d*f.EngagementLength, true, false)
		section("section of the boss", true, math.Pi/4*(f.OuterDiameter*f.OuterDiameter-d*d))
		section("section of the pin", false, math.Pi/4*(d*d-f.InnerDiameter*f.InnerDiameter))
	case l.CrushRib != nil:
		c := l.CrushRib
		shear("shear of the ribs", float64(c.Count)*c.Width*c.EngagementLength, true)
	}
	return out
}

// flankBase is the length along the axis over which a bead or hook stands on its wall
// [mm]: both flanks and the land.
func flankBase(h, mating, back, land float64) float64 {
	base := land + h/math.Tan(mating)
	if back < math.Pi/2 {
		base += h / math.Tan(back)
	}
	return base
}

// neck is what a groove of depth h leaves of a wall [mm], at least half of it: which
// part carries the groove the job does not say. Own.
func neck(wall, h float64) float64 { return max(wall-h, wall/2) }

// hookWidth is the width that carries the hook [mm].
func (c Cantilever) hookWidth() float64 {
	switch {
	case c.shape() == "rocker":
		return 2 * c.BarRadius
	case c.Section == "ring_segment":
		return 2 * c.InnerRadius * math.Sin(min(c.Arc, math.Pi)/2)
	}
	b := c.Width
	for _, w := range []float64{c.TipWidth, c.NarrowWidth} {
		if w > 0 {
			b = min(b, w)
		}
	}
	return b
}

// armPull is the pull that an arm takes, off its neutral axis by the hook.
//
//	F = S/(1/A + e c/I),  e = c + y/2
//	L: F = S_z b t2^2/(6 L2) in the strip besides;  U: e + 2 R
//	rocker: F = n S_z pi r^3/(4 l) in the bars
//
// S: strength along the axis, S_z across the layers [MPa]; A, I, c: of the thinnest
// section [mm^2, mm^4, mm]; y: undercut [mm]. Source: own, beam theory; the support that
// the mate gives a hook from behind is not credited.
func (c Cantilever) armPull(m Material) strength {
	if c.shape() == "rocker" {
		bars := 2.0
		if c.Bars == 1 {
			bars = 1
		}
		f := bars * m.StrengthZ.Value * math.Pi * c.BarRadius * c.BarRadius * c.BarRadius / (4 * c.BarLength)
		return strength{"bending of the bars", true, f, false, "R = n S_z pi r^3/(4 l)", "%s*%s*pi*%s^3/(4*%s)", []float64{bars, m.StrengthZ.Value, c.BarRadius, c.BarLength}}
	}
	b, t := c.hookWidth(), c.Thickness
	if c.TipThickness > 0 {
		t = min(t, c.TipThickness)
	}
	s := Rectangle(b, t)
	if c.Section == "ring_segment" {
		s = RingSegment(c.InnerRadius, c.OuterRadius, c.Arc)
	}
	face := max(s.Inner, s.Outer)
	e := face + c.Undercut/2
	if c.shape() == "u_arm" {
		e += 2 * c.BendRadius
	}
	axial := m.AxialStrength().Value
	f := axial / (1/s.Area + e*face/s.Inertia)
	if c.shape() == "l_arm" {
		if strip := m.StrengthZ.Value * b * c.BaseThickness * c.BaseThickness / (6 * c.BaseLength); strip < f {
			return strength{"bending of the strip", true, strip, false, "R = S_z b t2^2/(6 L2)", "%s*%s*%s^2/(6*%s)", []float64{m.StrengthZ.Value, b, c.BaseThickness, c.BaseLength}}
		}
	}
	return strength{"pull of the arm, off its middle", true, f, false, "R = S/(1/A + e c/I)", "%s/(1/%s + %s*%s/%s)", []float64{axial, s.Area, e, face, s.Inertia}}
}
