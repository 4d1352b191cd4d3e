package workinstructions

import (
	"math"

	"ramnest/export/page"
)

// Sketches of how the hands are held: own drawings, seen from the front, in a frame of
// 120 by 90 units. The ground is the top of the anvil or part, the cross on it the
// thrust mark.
const (
	holdWide, holdHigh = 120.0, 90.0
	holdGround         = 68.0 // where hands touch, from the top
)

// A limb is a rounded stroke with an outline: a finger, a hand or an arm.
type limb struct{ x0, y0, x1, y1, thick float64 }

// limbs are what is drawn of each hand action, the farthest first.
var limbs = map[string][]limb{
	"one thumb":              {{88, 15, 84, 34, 24}, {84, 34, 62, 60.5, 14}, {84, 40, 92, 60, 11}},
	"two thumbs":             {{18, 15, 26, 34, 24}, {102, 15, 94, 34, 24}, {26, 36, 53, 60, 14}, {94, 36, 67, 60, 14}},
	"one palm, pushing down": {{60, 13, 60, 44, 22}, {44, 61, 84, 61, 14}},
	"both palms, standing":   {{34, 13, 52, 42, 20}, {86, 13, 68, 42, 20}, {38, 61, 82, 61, 13}, {40, 48, 80, 48, 13}},
}

// outline is the limb as a path.
func (l limb) outline() *page.Path {
	dx, dy := l.x1-l.x0, l.y1-l.y0
	long := math.Hypot(dx, dy)
	ux, uy, r := dx/long, dy/long, l.thick/2
	nx, ny := -uy*r, ux*r
	const k = 0.5523 // of a quarter of a circle by a cubic
	end := func(p *page.Path, cx, cy, ax, ay, bx, by float64) {
		p.Curve(cx+ax+k*bx, cy+ay+k*by, cx+bx+k*ax, cy+by+k*ay, cx+bx, cy+by)
	}
	p := new(page.Path).Move(l.x0+nx, l.y0+ny).Line(l.x1+nx, l.y1+ny)
	end(p, l.x1, l.y1, nx, ny, ux*r, uy*r)
	end(p, l.x1, l.y1, ux*r, uy*r, -nx, -ny)
	p.Line(l.x0-nx, l.y0-ny)
	end(p, l.x0, l.y0, -nx, -ny, -ux*r, -uy*r)
	end(p, l.x0, l.y0, -ux*r, -uy*r, nx, ny)
	return p.Close()
}

// holding draws how the hands are held, in a frame of a width [mm].
func holding(action string, width float64) page.Block {
	parts, ok := limbs[action]
	if !ok {
		return page.Block{}
	}
	k := width / holdWide
	return page.Block{Height: holdHigh * k, Draw: func(p *page.Page, x, y float64) {
		put := func(path *page.Path, st page.Style) { p.Draw(path.Placed(x, y, k), st) }
		put(new(page.Path).Polygon(22, holdGround, 98, holdGround, 98, 88, 22, 88), page.Style{Filled: true, Fill: page.Grey, Stroke: 0.35})
		for _, l := range parts {
			put(l.outline(), page.Style{Filled: true, Fill: page.White, Stroke: 0.5})
		}
		put(new(page.Path).Move(60, holdGround+2).Line(60, 86).Move(52, 77).Line(68, 77), page.Style{Stroke: 0.35})
		for _, ax := range []float64{8, 112} {
			put(new(page.Path).Polygon(ax-2.2, 28, ax+2.2, 28, ax+2.2, 52, ax+6, 52, ax, 62, ax-6, 52, ax-2.2, 52),
				page.Style{Filled: true, Fill: page.Black})
		}
		p.Box(x, y, width, holdHigh*k, page.Hairline)
	}}
}
