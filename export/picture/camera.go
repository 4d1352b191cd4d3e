package picture

import (
	"math"

	"ramnest/fixture/mesh"
)

// A Camera knows where points of a scene lie in its picture.
type Camera struct {
	right, up, toward [3]float64 // unit vectors: to the right, up, and to the viewer
	scale             float64    // [px/mm]
	x0, y0            float64    // place of the origin [px]
	near, far         float64    // depth of what is shown, along toward [mm]
}

// Project gives the place in the picture of a point, in pixels from the upper
// left corner, x to the right and y down. For many points make one [Camera].
func Project(s Scene, p [3]float64) (x, y float64, err error) {
	c, err := NewCamera(s)
	if err != nil {
		return 0, 0, err
	}
	x, y = c.Project(p)
	return x, y, nil
}

// NewCamera gives the camera with which [Render] draws the scene. It fits the
// frame around View.Fit or, without that, around what is left of all bodies
// behind the section and around arrows and lines.
//
// A scene with a fault gives the [SceneError] values that Render would give.
func NewCamera(s Scene) (Camera, error) {
	if err := s.check(); err != nil {
		return Camera{}, err
	}
	c, _, err := newCamera(&s)
	return c, err
}

// Project gives the place of a point in pixels from the upper left corner.
func (c Camera) Project(p [3]float64) (x, y float64) {
	return c.pixel(c.turn(p))
}

// Scale is how many pixels a millimetre square to the view is long.
func (c Camera) Scale() float64 { return c.scale }

// turn gives a point or direction in the axes of the picture: right, up, and
// to the viewer [mm].
func (c *Camera) turn(v [3]float64) [3]float64 {
	return [3]float64{mesh.Dot(c.right, v), mesh.Dot(c.up, v), mesh.Dot(c.toward, v)}
}

// pixel gives the place of a turned point.
func (c *Camera) pixel(t [3]float64) (x, y float64) {
	return c.x0 + float64(c.scale*t[0]), c.y0 - float64(c.scale*t[1])
}

// newCamera gives the camera and the vertices of all bodies in its axes.
func newCamera(s *Scene) (c Camera, turned [][][3]float64, err error) {
	sinA, cosA := sincos(s.View.Azimuth)
	sinE, cosE := sincos(s.View.Elevation)
	c = Camera{
		right:  [3]float64{cosA, sinA, 0},
		up:     [3]float64{-float64(sinA * sinE), float64(cosA * sinE), cosE},
		toward: [3]float64{float64(sinA * cosE), -float64(cosA * cosE), sinE},
	}
	turned, shown := c.turnAll(s)
	if shown.Min[0] > shown.Max[0] {
		return Camera{}, nil, &SceneError{Field: "Bodies", Problem: "there is nothing to draw"}
	}
	c.far, c.near = shown.Min[2], shown.Max[2]
	frame := shown
	if len(s.View.Fit) > 0 {
		frame = mesh.EmptyBox()
		for _, p := range s.View.Fit {
			frame.Add(c.turn(p))
		}
	}
	margin := s.View.Margin
	if margin == 0 {
		margin = 0.04
	}
	w, h := float64(s.Width), float64(s.Height)
	border := float64(margin * min(w, h))
	wide, high := frame.Max[0]-frame.Min[0], frame.Max[1]-frame.Min[1]
	// A frame without extent still gets a scale: a millimetre fills it.
	c.scale = min((w-2*border)/max(wide, 1e-3), (h-2*border)/max(high, 1e-3))
	c.x0 = w/2 - float64(c.scale*(frame.Min[0]+frame.Max[0])/2)
	c.y0 = h/2 + float64(c.scale*(frame.Min[1]+frame.Max[1])/2)
	for _, side := range []float64{shown.Min[0], shown.Max[0], shown.Min[1], shown.Max[1]} {
		if math.Abs(side*c.scale)+math.Abs(c.x0)+math.Abs(c.y0) > farthestPixel {
			return Camera{}, nil, &SceneError{Field: "View.Fit", Problem: "is too small or too far off for this scene"}
		}
	}
	return c, turned, nil
}

// farthestPixel keeps the integer coordinates of the canvas in range.
const farthestPixel = 1 << 20

// turnAll turns all vertices into the axes of the picture and finds the extent
// of what is shown there.
func (c *Camera) turnAll(s *Scene) (turned [][][3]float64, shown mesh.Box) {
	shown = mesh.EmptyBox()
	turned = make([][][3]float64, len(s.Bodies))
	for i := range s.Bodies {
		b := &s.Bodies[i]
		t := make([][3]float64, len(b.Vertices))
		for k, v := range b.Vertices {
			t[k] = c.turn(mesh.Add(v, b.Offset))
		}
		turned[i] = t
		if cut := s.Section.of(b, c); cut != nil {
			reachCut(b, t, cut, &shown)
		} else {
			reach(b, t, &shown)
		}
	}
	for _, a := range s.Arrows {
		shown.Add(c.turn(a.From))
		shown.Add(c.turn(a.To))
	}
	for _, l := range s.Lines {
		shown.Add(c.turn(l.From))
		shown.Add(c.turn(l.To))
	}
	return turned, shown
}

// reach adds the corners of all triangles; a vertex that no triangle has does
// not count.
func reach(b *Body, turned [][3]float64, shown *mesh.Box) {
	of := mesh.Mesh{Vertices: turned, Triangles: b.Triangles}
	if len(b.Triangles) == 0 {
		return
	}
	box := of.Bounds()
	shown.Add(box.Min)
	shown.Add(box.Max)
}

// reachCut adds what the section leaves.
func reachCut(b *Body, turned [][3]float64, cut *plane, shown *mesh.Box) {
	for _, t := range b.Triangles {
		for k := range t {
			p, q := turned[t[k]], turned[t[(k+1)%3]]
			dp, dq := cut.above(p), cut.above(q)
			if dp <= 0 {
				shown.Add(p)
			}
			if dp > 0 != (dq > 0) {
				shown.Add(mesh.Between(p, q, dp/(dp-dq)))
			}
		}
	}
}

// sincos keeps right angles exact, so that a wall seen from above is edge-on
// and not a hair to one side.
func sincos(angle float64) (sin, cos float64) {
	sin, cos = math.Sincos(angle)
	if math.Abs(sin) < 1e-12 {
		sin, cos = 0, math.Copysign(1, cos)
	}
	if math.Abs(cos) < 1e-12 {
		sin, cos = math.Copysign(1, sin), 0
	}
	return sin, cos
}
