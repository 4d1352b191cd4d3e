package drawing

import (
	"cmp"
	"math"
	"slices"

	"ramnest/fixture/mesh"
)

// nearer is by how much something must lie in front to hide a line [mm].
const nearer = 0.004

// A segment is a straight line in a view.
type segment [2]point

// sight divides the edges of a mesh into what is seen and what is hidden. rims are the
// edges of the cut, plane its depth; without a cut there are none.
func sight(m *mesh.Mesh, edges []edge, plane float64) (seen, hidden, rims []segment) {
	for _, e := range edges {
		if e.rim {
			rims = append(rims, flat(m, e))
		}
	}
	g := newGrid(m)
	for _, e := range edges {
		if e.rim || !e.sharp && !e.outline {
			continue
		}
		p, q := m.Vertices[e.a], m.Vertices[e.b]
		if math.Hypot(q[0]-p[0], q[1]-p[1]) < 1e-6 {
			continue
		}
		if !e.seen {
			hidden = append(hidden, flat(m, e))
			continue
		}
		dark := g.over(p, q)
		if len(rims) > 0 && min(p[2], q[2]) < plane-nearer {
			dark = append(dark, within(rims, flat(m, e))...)
		}
		cut(flat(m, e), dark, &seen, &hidden)
	}
	return seen, hidden, rims
}

func flat(m *mesh.Mesh, e edge) segment {
	p, q := m.Vertices[e.a], m.Vertices[e.b]
	return segment{{p[0], p[1]}, {q[0], q[1]}}
}

// A stretch is a part of a segment, 0 at its start and 1 at its end.
type stretch [2]float64

// cut shares a segment out: what lies in a stretch is hidden.
func cut(s segment, dark []stretch, seen, hidden *[]segment) {
	slices.SortFunc(dark, func(a, b stretch) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	long := math.Hypot(s[1][0]-s[0][0], s[1][1]-s[0][1])
	add := func(to *[]segment, a, b float64) {
		if float64((b-a)*long) > 0.01 {
			*to = append(*to, segment{s.at(a), s.at(b)})
		}
	}
	at := 0.0
	for _, d := range dark {
		if d[0] > at+0.01/long {
			add(seen, at, d[0])
			at = d[0]
		}
		if d[1] > at {
			add(hidden, at, d[1])
			at = d[1]
		}
	}
	if float64((1-at)*long) > 0.01 || at == 0 {
		add(seen, at, 1)
	}
}

func (s segment) at(t float64) point {
	switch t {
	case 0:
		return s[0]
	case 1:
		return s[1]
	}
	return point{s[0][0] + float64(t*(s[1][0]-s[0][0])), s[0][1] + float64(t*(s[1][1]-s[0][1]))}
}

// within gives the stretches of a segment inside closed outlines, by even and odd.
func within(rims []segment, s segment) []stretch {
	marks := []float64{0, 1}
	d := point{s[1][0] - s[0][0], s[1][1] - s[0][1]}
	for _, r := range rims {
		e := point{r[1][0] - r[0][0], r[1][1] - r[0][1]}
		den := float64(d[0]*e[1]) - float64(d[1]*e[0])
		if den == 0 {
			continue
		}
		o := point{r[0][0] - s[0][0], r[0][1] - s[0][1]}
		t, u := (float64(o[0]*e[1])-float64(o[1]*e[0]))/den, (float64(o[0]*d[1])-float64(o[1]*d[0]))/den
		if t > 0 && t < 1 && u >= 0 && u <= 1 {
			marks = append(marks, t)
		}
	}
	slices.Sort(marks)
	var out []stretch
	for i := 1; i < len(marks); i++ {
		if marks[i] > marks[i-1] && inside(rims, s.at((marks[i-1]+marks[i])/2)) {
			out = append(out, stretch{marks[i-1], marks[i]})
		}
	}
	return out
}

// inside tells by even and odd whether a point lies in closed outlines.
func inside(rims []segment, p point) bool {
	in := false
	for _, r := range rims {
		if (r[0][1] > p[1]) != (r[1][1] > p[1]) && p[0] < r[0][0]+(p[1]-r[0][1])*(r[1][0]-r[0][0])/(r[1][1]-r[0][1]) {
			in = !in
		}
	}
	return in
}

// A grid finds the triangles over a place.
type grid struct {
	*mesh.Mesh
	low   point
	step  float64
	cells [gridSide * gridSide][]int32
	seen  []int32 // by which search a triangle was looked at last
	turn  int32
}

const gridSide = 64

func newGrid(m *mesh.Mesh) *grid {
	low, high := boxOf(m)
	g := &grid{Mesh: m, low: low, step: max(high[0]-low[0], high[1]-low[1], 1e-6) / gridSide * 1.0001, seen: make([]int32, len(m.Triangles))}
	for i, t := range m.Triangles {
		p, q, r := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		g.each(min(p[0], q[0], r[0]), min(p[1], q[1], r[1]), max(p[0], q[0], r[0]), max(p[1], q[1], r[1]), func(c int) {
			g.cells[c] = append(g.cells[c], int32(i))
		})
	}
	return g
}

// each visits the cells of a box.
func (g *grid) each(x0, y0, x1, y1 float64, visit func(int)) {
	cell := func(v, low float64) int { return min(gridSide-1, max(0, int((v-low)/g.step))) }
	for y := cell(y0, g.low[1]); y <= cell(y1, g.low[1]); y++ {
		for x := cell(x0, g.low[0]); x <= cell(x1, g.low[0]); x++ {
			visit(y*gridSide + x)
		}
	}
}

// over gives the stretches of an edge that lie behind triangles.
func (g *grid) over(p, q [3]float64) []stretch {
	var out []stretch
	g.turn++
	low := min(p[2], q[2])
	g.each(min(p[0], q[0]), min(p[1], q[1]), max(p[0], q[0]), max(p[1], q[1]), func(c int) {
		for _, i := range g.cells[c] {
			if g.seen[i] == g.turn {
				continue
			}
			g.seen[i] = g.turn
			a, b, c := g.Vertices[g.Triangles[i][0]], g.Vertices[g.Triangles[i][1]], g.Vertices[g.Triangles[i][2]]
			if max(a[2], b[2], c[2]) <= low+nearer {
				continue
			}
			if s, ok := behind(p, q, a, b, c); ok {
				out = append(out, s)
			}
		}
	})
	return out
}

// behind gives the stretch of the edge pq that lies behind a triangle.
func behind(p, q, a, b, c [3]float64) (stretch, bool) {
	area := cross(a, b, c)
	if math.Abs(area) < 1e-7 { // seen edge-on
		return stretch{}, false
	}
	from, to := 0.0, 1.0
	narrow := func(at0, at1 float64) bool { // what is above 0
		if at0 <= 0 && at1 <= 0 {
			return false
		}
		if t := at0 / (at0 - at1); at0 <= 0 {
			from = max(from, t)
		} else if at1 <= 0 {
			to = min(to, t)
		}
		return from < to
	}
	for _, side := range [3][2][3]float64{{a, b}, {b, c}, {c, a}} {
		u, v := side[0], side[1]
		s := math.Copysign(1, area) / max(math.Hypot(v[0]-u[0], v[1]-u[1]), 1e-9)
		// A line along the side of a triangle is not behind it.
		if !narrow(s*cross(u, v, p)-1e-6, s*cross(u, v, q)-1e-6) {
			return stretch{}, false
		}
	}
	height := func(r [3]float64) float64 {
		wa, wb, wc := cross(b, c, r)/area, cross(c, a, r)/area, cross(a, b, r)/area
		return float64(wa*a[2]) + float64(wb*b[2]) + float64(wc*c[2]) - r[2] - nearer
	}
	if !narrow(height(p), height(q)) {
		return stretch{}, false
	}
	return stretch{from, to}, true
}

// cross is twice the area of a triangle in the view.
func cross(a, b, c [3]float64) float64 {
	return float64((b[0]-a[0])*(c[1]-a[1])) - float64((b[1]-a[1])*(c[0]-a[0]))
}
