package force

import "math"

// TiltedEntry gives the forces that roll a ring joint in from one edge, over the force
// of the same joint pushed straight along its axis [1]: of both hands together, and of
// the hand at the far edge alone, each where it is largest.
//
//	T = max over Z of (1/2 pi) Int F(Z x) dphi,  H the same with F(Z x) x dphi
//	x = (1 - cos phi)/2,  Z x: lift at the angle phi from the edge that is in first
//
// curve: axial force of one joint over the lift, the latch's own [N over mm]. Z: lift
// of the far edge, from far beyond the stroke down to the seat.
//
// The upper part turns about the edge that is hooked first. Each element of the
// circumference is taken to resist as its share of the straight joint does at the same
// lift. A closed ring resists less: what opens part of it may push the rest inward
// instead of stretching it. So the model lies high for thin walls. Source: own model.
// Snap-Fit Joints for Plastics - A Design Guide, p. 23 (read), says of its example that
// the force is far smaller by hand, tilted in, and gives no figure. Leaves out what
// guides the parts straight, the groove's play and the bending round the
// circumference: it holds for walls up to 0.2 of their radius.
func TiltedEntry(curve Curve) (together, far float64) {
	peak, _ := curve.Peak()
	if !(peak > 0) {
		return 0, 0
	}
	at := func(z float64) (sum, lever float64) {
		const elements = 90 // of half the circumference
		for i := range elements {
			x := (1 - math.Cos(math.Pi*(float64(i)+0.5)/elements)) / 2
			f := curve.At(z*x) / elements
			sum, lever = sum+f, lever+f*x
		}
		return sum, lever
	}
	const steps = 120
	for i := range steps {
		sum, lever := at(curve.Stroke() * 4 * float64(i+1) / steps)
		together, far = max(together, sum/peak), max(far, lever/peak)
	}
	return together, far
}

// tiltable says whether a step can be rolled in from one edge: one closed ring at one
// place, of two thin walls. Two rings, or anything beside one, hold the part straight; a
// thick wall carries a load on an arc of it by what lies beside the arc.
func tiltable(latches []Latch) bool {
	if len(latches) != 1 || len(latches[0].At) != 1 {
		return false
	}
	a := latches[0].Annular
	return a != nil && a.tiltable()
}

// thinTilted is the thickest wall for which each element of the circumference stands
// alone, share of its radius [1]. Source: own.
const thinTilted = 0.2

func (a Annular) tiltable() bool {
	outer, inner := a.outerLine(Material{}), a.innerLine(Material{})
	return (a.Split == "" || a.Split == "none") && max(outer.Wall/outer.Radius, inner.Wall/inner.Radius) <= thinTilted
}

// tilt fills in the forces of an entry by hand from one edge.
func (r *Result) tilt(a Assembly) {
	if r.Locks || r.NoP95 || !tiltable(a.Latches) {
		return
	}
	together, far := TiltedEntry(r.Latches[0].Curve)
	r.Tilted, r.TiltedFar = together*r.Design, far*r.Design
}
