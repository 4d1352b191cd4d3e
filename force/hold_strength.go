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

// bounds gathers every bound of what one joint holds.
type bounds struct {
	j            *joint
	outer, inner Material
	all          []strength
}

// strengths gives every bound of a joint.
func strengths(k Kind, j *joint, outer, inner Material) []strength {
	b := bounds{j: j, outer: outer, inner: inner}
	k.strengths(&b)
	return b.all
}

func (b *bounds) of(outer bool) Material {
	if outer {
		return b.outer
	}
	return b.inner
}

func (b *bounds) add(what string, outer, grows bool, force float64, formula, numbers string, vals ...float64) {
	b.all = append(b.all, strength{what, outer, force, grows, formula, numbers, vals})
}

// shear bounds it by an area that shears off [mm^2], of the outer member or not.
func (b *bounds) shear(what string, area float64, outer ...bool) {
	for _, o := range outer {
		s := b.of(o).StrengthZ.Value
		b.add(what, o, false, area*shearShare*s, "R = A S_z/2", "%s*%s/2", area, s)
	}
}

// pressed bounds it by the area of a flank that is pressed [mm^2].
func (b *bounds) pressed(area float64) {
	for _, o := range []bool{true, false} {
		s := b.of(o).Strength.Value
		b.add("pressure on the flank", o, true, area*s, "R = A S", "%s*%s", area, s)
	}
}

// section bounds it by an area that is pulled along the axis [mm^2].
func (b *bounds) section(what string, outer bool, area float64) {
	s := b.of(outer).AxialStrength().Value
	b.add(what, outer, false, area*s, "R = A S", "%s*%s", area, s)
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
		return strength{"bending of the bars", true, f, false, "R = n S_z pi r^3/(4 l)", "%s*%s*pi*%s^3/(4*%s)",
			[]float64{bars, m.StrengthZ.Value, c.BarRadius, c.BarLength}}
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
			return strength{"bending of the strip", true, strip, false, "R = S_z b t2^2/(6 L2)", "%s*%s*%s^2/(6*%s)",
				[]float64{m.StrengthZ.Value, b, c.BaseThickness, c.BaseLength}}
		}
	}
	return strength{"pull of the arm, off its middle", true, f, false, "R = S/(1/A + e c/I)", "%s/(1/%s + %s*%s/%s)",
		[]float64{axial, s.Area, e, face, s.Inertia}}
}
