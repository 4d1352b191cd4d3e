package drawing

import (
	"math"
	"slices"

	"ramnest/fixture/mesh"
)

// A view looks at a body along an axis: h runs to the right, v up, toward to the viewer.
type view struct {
	h, v, toward [3]float64
}

// The three views. Section B is seen from the left in first angle, from the right in
// third angle.
var (
	fromAbove = view{[3]float64{1, 0, 0}, [3]float64{0, 1, 0}, [3]float64{0, 0, 1}}
	fromFront = view{[3]float64{1, 0, 0}, [3]float64{0, 0, 1}, [3]float64{0, -1, 0}}
	fromLeft  = view{[3]float64{0, -1, 0}, [3]float64{0, 0, 1}, [3]float64{-1, 0, 0}}
	fromRight = view{[3]float64{0, 1, 0}, [3]float64{0, 0, 1}, [3]float64{1, 0, 0}}
)

// turn gives a point in the axes of the view.
func (w view) turn(p [3]float64) [3]float64 {
	return [3]float64{mesh.Dot(w.h, p), mesh.Dot(w.v, p), mesh.Dot(w.toward, p)}
}

// of gives a body in the axes of the view.
func (w view) of(b Body) *mesh.Mesh { return b.Moved(w.turn) }

// cutBehind keeps what lies no nearer than a depth; the mesh is left open there. Vertices
// lie on a grid of 1 µm, so the plane is put between its points.
func cutBehind(m *mesh.Mesh, depth float64) (kept *mesh.Mesh, plane float64) {
	plane = math.Floor(depth*1000)/1000 + 0.0005
	kept = &mesh.Mesh{Vertices: slices.Clone(m.Vertices)}
	cuts := map[[2]int32]int32{}
	cut := func(u, v int32) int32 {
		if u > v {
			u, v = v, u
		}
		n, known := cuts[[2]int32{u, v}]
		if !known {
			p, q := m.Vertices[u], m.Vertices[v]
			t := (plane - p[2]) / (q[2] - p[2])
			n = int32(len(kept.Vertices))
			cuts[[2]int32{u, v}] = n
			kept.Vertices = append(kept.Vertices, [3]float64{p[0] + float64(t*(q[0]-p[0])), p[1] + float64(t*(q[1]-p[1])), plane})
		}
		return n
	}
	for _, t := range m.Triangles {
		var poly [4]int32
		n := 0
		for k := range 3 {
			u, v := t[k], t[(k+1)%3]
			in := m.Vertices[u][2] < plane
			if in {
				poly[n] = u
				n++
			}
			if in != (m.Vertices[v][2] < plane) {
				poly[n] = cut(u, v)
				n++
			}
		}
		for k := 2; k < n; k++ {
			kept.Triangles = append(kept.Triangles, [3]int32{poly[0], poly[k-1], poly[k]})
		}
	}
	return kept, plane
}

// boxOf is the room of the mesh in the view.
func boxOf(m *mesh.Mesh) (low, high point) {
	b := m.Bounds()
	return point{b.Min[0], b.Min[1]}, point{b.Max[0], b.Max[1]}
}
