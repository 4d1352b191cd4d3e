package picture

import (
	"context"
	"math"

	"ramnest/fixture/mesh"
)

// creaseCosine is the cosine of the angle, 25 degrees, above which two faces
// meet in an edge that is drawn.
var creaseCosine = math.Cos(25 * math.Pi / 180)

// drawSeams draws the edges of a body that an illustrator would: where it
// turns away from the viewer, where two faces meet at an angle, and where the
// mesh is open.
func (sh *shape) drawSeams(ctx context.Context, p *pen) error {
	crease := p.weigh(creaseWidth, sh.body.Outline)
	outline := p.weigh(outlineWidth, sh.body.Outline)
	if outline == 0 {
		return nil
	}
	for i := range sh.seams {
		if err := often(ctx, i); err != nil {
			return err
		}
		s := &sh.seams[i]
		turns, folds := sh.classify(s)
		if !turns && !folds {
			continue
		}
		a, b, left := sh.leftOf(s)
		if !left {
			continue
		}
		v := view{pen: p, a: a, b: b}
		v.look(sh, s)
		p.trace(a, b, func(at place) float64 {
			switch {
			case turns && v.clear(at) && v.open(at):
				return outline
			case turns && v.clear(at), v.onFace(at):
				return crease
			}
			return 0
		})
	}
	return nil
}

// classify tells whether the body turns away from the viewer at a seam, or
// ends there, and whether two visible faces fold.
func (sh *shape) classify(s *seam) (turns, folds bool) {
	if s.two < 0 {
		return true, false
	}
	f, g := sh.facing[s.one], sh.facing[s.two]
	bend := mesh.Dot(sh.normals[s.one], sh.normals[s.two])
	if !s.agree {
		bend, g = -bend, -g
	}
	if sh.solid && f <= 0 && g <= 0 {
		return false, false
	}
	return (f > 0) != (g > 0), bend < creaseCosine
}

// leftOf gives the ends of what the section leaves of a seam.
func (sh *shape) leftOf(s *seam) (a, b place, left bool) {
	p, q := sh.spots[s.a], sh.spots[s.b]
	if sh.above != nil {
		pAbove, qAbove := sh.above[s.a] > 0, sh.above[s.b] > 0
		switch {
		case pAbove && qAbove:
			return a, b, false
		case pAbove:
			p = sh.crossing(s.a, s.b)
		case qAbove:
			q = sh.crossing(s.a, s.b)
		}
	}
	return placeOf(p), placeOf(q), true
}

// view decides whether an edge can be seen, from what is drawn beside it: on
// the edge itself rounding would decide.
type view struct {
	pen     *pen
	a, b    place
	acrossX float64 // unit vector square to the edge, in samples
	acrossY float64
	faces   [2]beside
	count   int
	away    float64 // side of the edge on which the body is not: 1 or -1
}

// steepest is the slope, in depth over width, that a face beside an edge is
// credited with.
const steepest = 5

// beside is a visible face next to an edge.
type beside struct {
	side   float64 // 1 or -1: on which side of the edge
	zx, zy float64 // depth from one sample to the next
	slack  float64 // by how much the surface drawn may be nearer
}

func (v *view) look(sh *shape, s *seam) {
	dx, dy := v.b.x-v.a.x, v.b.y-v.a.y
	long := math.Sqrt(dx*dx + dy*dy)
	if long > 0 {
		v.acrossX, v.acrossY = -dy/long, dx/long
	}
	for _, t := range [...]int32{s.one, s.two} {
		if t < 0 || sh.facing[t] == 0 || sh.facing[t] < 0 && sh.solid {
			continue
		}
		f := beside{side: v.sideOf(sh, s, t)}
		f.zx, f.zy = v.pen.lens.gradient(sh.normals[t])
		// A corner is snapped to a 16th of a sample and the edge runs anywhere
		// through it, so the slack grows with the slope; a face seen almost
		// from the side would then let through what lies behind walls.
		one := v.pen.lens.perSample()
		if steep := math.Hypot(f.zx, f.zy) / (steepest * one); steep > 1 {
			f.zx, f.zy = f.zx/steep, f.zy/steep
		}
		f.slack = 0.75*one + 0.3*(math.Abs(f.zx)+math.Abs(f.zy))
		v.faces[v.count] = f
		v.count++
	}
	if v.count > 0 {
		v.away = -v.faces[0].side
	}
}

// sideOf tells on which side of a seam a triangle is seen. It goes by the sense
// of rotation, not by the third corner, which lies on the wrong side by rounding
// where the body turns away from the viewer.
func (v *view) sideOf(sh *shape, s *seam, triangle int32) float64 {
	side := -1.0 // counter-clockwise and from a to b: the face is to the left
	if (sh.facing[triangle] < 0) != sh.insideOut {
		side = 1
	}
	t := sh.body.Triangles[triangle]
	for k := range t {
		if t[k] == s.b && t[(k+1)%3] == s.a {
			return -side
		}
	}
	return side
}

// onFace tells whether the face on one side of the edge, or the other, is what
// was drawn there.
func (v *view) onFace(at place) bool {
	for _, f := range v.faces[:v.count] {
		x := int(math.Floor(at.x + 0.8*f.side*v.acrossX))
		y := int(math.Floor(at.y + 0.8*f.side*v.acrossY))
		expected := at.z + f.zx*(float64(x)+0.5-at.x) + f.zy*(float64(y)+0.5-at.y)
		if float64(v.pen.depthAt(x, y)) <= expected+f.slack {
			return true
		}
	}
	return false
}

// clear tells whether nothing is nearer than the edge just outside the body.
func (v *view) clear(at place) bool {
	x := int(math.Floor(at.x + v.away*v.acrossX))
	y := int(math.Floor(at.y + v.away*v.acrossY))
	return float64(v.pen.depthAt(x, y)) <= at.z+v.pen.lens.perSample()
}

// open tells whether there is only background just outside the body.
func (v *view) open(at place) bool {
	// Facets beside it may stand out from a curved outline by a sample.
	for _, d := range [...]float64{2.8, 4.2} {
		x := int(math.Floor(at.x + d*v.away*v.acrossX))
		y := int(math.Floor(at.y + d*v.away*v.acrossY))
		if v.pen.depthAt(x, y) != 0 {
			return false
		}
	}
	return true
}

// drawTraces draws the edges of a cut face.
func (sh *shape) drawTraces(p *pen, f capFace) {
	width := p.weigh(cutWidth, sh.body.Outline)
	if width == 0 {
		return
	}
	slack := p.lens.perSample() + 0.3*(math.Abs(f.zx)+math.Abs(f.zy))
	for _, t := range sh.traces {
		p.trace(placeOf(t.from), placeOf(t.to), func(at place) float64 {
			// The cut face lies on one side; which one does not matter, since
			// nothing lies in front of the plane on the other.
			for _, d := range [...][2]float64{{0, 0}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
				x, y := math.Floor(at.x+d[0]), math.Floor(at.y+d[1])
				if float64(p.depthAt(int(x), int(y))) <= f.depthAt(x, y)+slack {
					return width
				}
			}
			return 0
		})
	}
}

// line draws a free line where no body hides it.
func (p *pen) line(l Line) {
	width := p.weigh(axisWidth, l.Weight)
	if width == 0 {
		return
	}
	a, b := placeOf(p.lens.spot(p.lens.camera.turn(l.From))), placeOf(p.lens.spot(p.lens.camera.turn(l.To)))
	var pattern []float64 // drawn and skipped lengths in turn [px at stroke 1]
	switch l.Dash {
	case Dashed:
		pattern = []float64{7, 4}
	case Chain:
		pattern = []float64{16, 4, 3, 4}
	}
	slack := p.lens.perSample()
	p.trace(a, b, func(at place) float64 {
		if len(pattern) > 0 && !drawn(pattern, math.Hypot(at.x-a.x, at.y-a.y)/(oversample*p.stroke)) {
			return 0
		}
		if float64(p.depthAt(int(math.Floor(at.x)), int(math.Floor(at.y)))) > at.z+slack {
			return 0
		}
		return width
	})
}

// drawn tells whether a dashed line is drawn at a distance from its start.
func drawn(pattern []float64, along float64) bool {
	period := 0.0
	for _, p := range pattern {
		period += p
	}
	along = math.Mod(along, period)
	for i, p := range pattern {
		if along < p {
			return i%2 == 0
		}
		along -= p
	}
	return false
}
