package pictures

import (
	"math"

	"ramnest/export/picture"
)

// Size of the exploded view [px], upright.
const (
	tallWidth, tallHeight = 480, 620
)

// A Layer is where a body stands in the exploded view: the right end of it and the
// middle of its height, as shares of width and height of the picture from its upper
// left corner.
type Layer struct{ X, Y float64 }

// A tower is the stack apart along the press axis, from the top: anvil, upper part,
// lower part, nest.
type tower struct {
	scene  picture.Scene
	groups [4][]picture.Body
}

// exploded takes the stack apart along the press axis, which stands in it as a chain
// line where the force goes in.
func (s stack) exploded() tower {
	nest := []picture.Body{s.holder()}
	lower, upper, anvil := s.base(0), []picture.Body{s.upper(0)}, []picture.Body{s.pusher(0)}
	room := 0.15*(s.anvil.Size[0]+s.anvil.Size[1]) + 6
	_, top := extent(nest)
	for _, g := range [][]picture.Body{lower, upper, anvil} {
		lo, hi := extent(g)
		lift := top + room - lo
		for i := range g {
			g[i].Offset[2] += lift
		}
		top = hi + lift
	}
	t := tower{groups: [4][]picture.Body{anvil, upper, lower, nest}}
	for _, g := range t.groups {
		t.scene.Bodies = append(t.scene.Bodies, g...)
	}
	t.scene.View, t.scene.Width, t.scene.Height = picture.View{Azimuth: usual.Azimuth, Elevation: 0.40}, tallWidth, tallHeight
	low, _ := extent(nest)
	falling(&t.scene, s.anvil.Thrust, top+room/2, low-room/3)
	t.scene.Lines[0].Weight = picture.Normal
	return t
}

// layers are where the bodies stand in the picture.
func (t tower) layers() ([4]Layer, error) {
	c, err := picture.NewCamera(t.scene)
	if err != nil {
		return [4]Layer{}, err
	}
	var out [4]Layer
	for i, g := range t.groups {
		right, above, below := math.Inf(-1), math.Inf(1), math.Inf(-1)
		for _, b := range g {
			for _, v := range b.Vertices {
				x, y := c.Project([3]float64{v[0] + b.Offset[0], v[1] + b.Offset[1], v[2] + b.Offset[2]})
				right, above, below = max(right, x), min(above, y), max(below, y)
			}
		}
		out[i] = Layer{right / tallWidth, (above + below) / 2 / tallHeight}
	}
	return out, nil
}

// extent is where bodies begin and end along the press axis [mm].
func extent(bodies []picture.Body) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, b := range bodies {
		for _, v := range b.Vertices {
			low, high = min(low, v[2]+b.Offset[2]), max(high, v[2]+b.Offset[2])
		}
	}
	return low, high
}
