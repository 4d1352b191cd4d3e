package picture

import (
	"cmp"
	"slices"

	"ramnest/fixture/mesh"
)

// plane is a section in the axes of the picture.
type plane struct {
	normal [3]float64
	at     float64
}

// of gives the plane that cuts a body, nil if none does.
func (s *Section) of(b *Body, c *Camera) *plane {
	if s == nil || b.Whole {
		return nil
	}
	n := c.turn(unitVector(s.Normal))
	return &plane{normal: n, at: mesh.Dot(n, c.turn(s.Point))}
}

// above is the distance from the plane [mm], positive on the side that is
// taken away.
func (p *plane) above(q [3]float64) float64 { return mesh.Dot(p.normal, q) - p.at }

// A trace is where the plane cuts one triangle; the body lies left of it when
// the cut face is seen from outside.
type trace struct{ from, to spot }

// cutTriangle draws what the plane leaves of a triangle and notes its trace.
// A corner in the plane counts as left behind, so that the traces of a closed
// body are closed whatever corners lie in the plane.
func (sh *shape) cutTriangle(c *canvas, t [3]int32, s shade, draw bool) {
	var kept [4]spot
	n := 0
	var tr trace
	for k := range t {
		p, q := t[k], t[(k+1)%3]
		above := sh.above[p] > 0
		if !above {
			kept[n] = sh.spots[p]
			n++
		}
		if above == (sh.above[q] > 0) {
			continue
		}
		cut := sh.crossing(p, q)
		kept[n] = cut
		n++
		if above {
			tr.from = cut
		} else {
			tr.to = cut
		}
	}
	if n < 3 {
		return
	}
	if draw {
		c.triangle(kept[0], kept[1], kept[2], s)
		if n == 4 {
			c.triangle(kept[0], kept[2], kept[3], s)
		}
	}
	if tr.from != tr.to {
		sh.traces = append(sh.traces, tr)
	}
}

// crossing is where the plane cuts an edge; both triangles of the edge get the
// same spot, because it is reckoned from the lower vertex.
func (sh *shape) crossing(p, q int32) spot {
	if p > q {
		p, q = q, p
	}
	t := sh.above[p] / (sh.above[p] - sh.above[q])
	a, b := sh.spots[p], sh.spots[q]
	mix := func(a, b int32) int32 { return a + int32(float64(t*(float64(b)-float64(a)))) }
	return spot{mix(a.x, b.x), mix(a.y, b.y), mix(a.z, b.z)}
}

// A capFace is the plane of the cut faces on the canvas and the hatching with
// which they are filled.
type capFace struct {
	zx, zy, z0 float64 // depth at the centre of sample (x, y): z0 + zx*x + zy*y
	hatch      hatch
}

// newCap gives the plane on the canvas; seen is false if nothing is cut or the
// cut faces look away from the viewer.
func newCap(s *Section, l *lens) (f capFace, seen bool) {
	if s == nil {
		return capFace{}, false
	}
	n := l.camera.turn(unitVector(s.Normal))
	if n[2] <= edgeOn {
		return capFace{}, false
	}
	f.zx, f.zy = l.gradient(n)
	at := l.camera.turn(s.Point)
	x, y := l.camera.pixel(at)
	z := 32 + float64(l.deep*(at[2]-l.camera.far))
	f.z0 = z - float64(f.zx*(x*oversample-0.5)) - float64(f.zy*(y*oversample-0.5))
	return f, true
}

// fillCap fills the cut face between the traces row by row, where the winding
// number is not zero. A row in which the traces do not close, as a hole in a
// mesh leaves it, stays empty.
func (sh *shape) fillCap(c *canvas, f capFace) {
	type crossing struct {
		x    int64 // first sample not left of the trace
		turn int
	}
	rows := make([][]crossing, c.height)
	for _, t := range sh.traces {
		a, b, turn := t.from, t.to, 1
		if a.y > b.y {
			a, b, turn = b, a, -1
		}
		top, bottom := max(firstSample(a.y), 0), min(firstSample(b.y), int32(c.height))
		if top >= bottom {
			continue
		}
		e := newEdge(a, b, top)
		for row := top; row < bottom; row++ {
			rows[row] = append(rows[row], crossing{e.column, turn})
			e.step()
		}
	}
	for y, row := range rows {
		slices.SortStableFunc(row, func(a, b crossing) int { return cmp.Compare(a.x, b.x) })
		whole := 0
		for _, x := range row {
			whole += x.turn
		}
		if whole != 0 {
			continue
		}
		winding := 0
		for i, x := range row {
			if winding != 0 {
				f.fillRow(c, y, int(max(row[i-1].x, 0)), int(min(x.x, int64(c.width))))
			}
			winding += x.turn
		}
	}
}

func (f *capFace) fillRow(c *canvas, y, left, right int) {
	for x := left; x < right; x++ {
		z := int32(min(max(f.depthAt(float64(x), float64(y)), 1), depthSteps-2))
		at := y*c.width + x
		// The cut face wins against what lies in the plane by itself.
		if z+1 >= c.samples[at].depth() {
			c.samples[at] = sample(z+1)<<8 | sample(f.hatch.at(x, y))
		}
	}
}

// depthAt is the depth of the plane at the centre of a sample.
func (f *capFace) depthAt(x, y float64) float64 {
	return f.z0 + float64(f.zx*x) + float64(f.zy*y)
}

// A hatch is a pattern of parallel lines over the canvas, made once for one
// period and repeated along x.
type hatch struct {
	row     []shade
	falling bool
}

// newHatch gives neighbours in the list of bodies different directions and
// distances, as in a sectioned drawing.
func newHatch(tone Tone, body int, stroke float64) hatch {
	pitch := []float64{7, 7, 5, 5, 9, 9}[body%6] * stroke
	period := max(int(pitch*oversample*1.41421+0.5), 4)
	ground := ranges[tone][1]
	h := hatch{row: make([]shade, period), falling: body%2 == 1}
	for i := range h.row {
		// Distance from the nearest line, square to it, in pixels.
		d := min(float64(i), float64(period-i)) / 1.41421 / oversample
		cover := min(max(0.42*stroke-d+0.35, 0)/0.7, 1) * 0.8
		h.row[i] = shadeOf(ground*(1-cover)+ink*cover, tone)
	}
	return h
}

func (h *hatch) at(x, y int) shade {
	n := x + y
	if h.falling {
		n = x - y
	}
	if n %= len(h.row); n < 0 {
		n += len(h.row)
	}
	return h.row[n]
}
