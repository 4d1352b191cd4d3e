package force

import "math"

// A Section is the cross-section of an arm in the plane it bends in.
type Section struct {
	Area    float64 // [mm^2]
	Inertia float64 // second moment about the neutral axis, I [mm^4]
	Inner   float64 // distance of the neutral axis to the inner or narrow face [mm]
	Outer   float64 // to the outer or wide face [mm]
}

// Rectangle gives the section of a flat arm: I = b h^3/12. b: width, h: thickness
// in the bending direction [mm]. Source: beam theory.
func Rectangle(b, h float64) Section { return Section{b * h, b * h * h * h / 12, h / 2, h / 2} }

// Trapezoid gives the section of an arm with one wide and one narrow face.
//
//	c_narrow = h (2 a + b) / (3 (a + b)),  I = h^3 (a^2 + 4 a b + b^2) / (36 (a + b))
//
// wide, narrow: the parallel sides a, b, h: their distance [mm]. Inner is the
// narrow face. Source: Roark, table of sections (from memory).
func Trapezoid(wide, narrow, h float64) Section {
	c := h * (2*wide + narrow) / (3 * (wide + narrow))
	return Section{
		Area:    h * (wide + narrow) / 2,
		Inertia: h * h * h * (wide*wide + 4*wide*narrow + narrow*narrow) / (36 * (wide + narrow)),
		Inner:   c, Outer: h - c,
	}
}

// RingSegment gives the section of a finger cut from a tube, bending radially.
//
//	A = phi (R^2 - r^2),  xc = 2 sin(phi) (R^3 - r^3) / (3 A)
//	I = (R^4 - r^4) (phi + sin(phi) cos(phi)) / 4 - A xc^2
//	c_outer = R - xc,  c_inner = xc - r cos(phi)
//
// inner, outer: radii r, R [mm]; arc: the whole angle 2 phi [rad], up to pi.
// The inner face ends lowest at its edges. Source: own, integrals of an annular
// sector. Leaves out that a wide, thin sector flattens.
func RingSegment(inner, outer, arc float64) Section {
	phi := arc / 2
	sn, cs := math.Sincos(phi)
	a := phi * (outer*outer - inner*inner)
	xc := 2 * sn * (outer*outer*outer - inner*inner*inner) / (3 * a)
	i := (math.Pow(outer, 4)-math.Pow(inner, 4))*(phi+sn*cs)/4 - a*xc*xc
	return Section{Area: a, Inertia: i, Inner: xc - inner*cs, Outer: outer - xc}
}
