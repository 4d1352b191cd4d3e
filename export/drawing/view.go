package drawing

import "math"

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
	return [3]float64{dot(w.h, p), dot(w.v, p), dot(w.toward, p)}
}

// a mesh in the axes of a view.
type mesh struct {
	at        [][3]float64
	triangles [][3]int32
}

func (w view) of(b Body) mesh {
	m := mesh{at: make([][3]float64, len(b.Vertices)), triangles: b.Triangles}
	for i, p := range b.Vertices {
		m.at[i] = w.turn(p)
	}
	return m
}

// behind keeps what lies no nearer than a depth; the mesh is left open there. Vertices
// lie on a grid of 1 µm, so the plane is put between its points.
func (m mesh) behind(depth float64) (kept mesh, plane float64) {
	plane = math.Floor(depth*1000)/1000 + 0.0005
	kept.at = append(kept.at, m.at...)
	cuts := map[[2]int32]int32{}
	cut := func(u, v int32) int32 {
		if u > v {
			u, v = v, u
		}
		n, known := cuts[[2]int32{u, v}]
		if !known {
			p, q := m.at[u], m.at[v]
			t := (plane - p[2]) / (q[2] - p[2])
			n = int32(len(kept.at))
			cuts[[2]int32{u, v}] = n
			kept.at = append(kept.at, [3]float64{p[0] + float64(t*(q[0]-p[0])), p[1] + float64(t*(q[1]-p[1])), plane})
		}
		return n
	}
	for _, t := range m.triangles {
		var poly [4]int32
		n := 0
		for k := range 3 {
			u, v := t[k], t[(k+1)%3]
			in := m.at[u][2] < plane
			if in {
				poly[n] = u
				n++
			}
			if in != (m.at[v][2] < plane) {
				poly[n] = cut(u, v)
				n++
			}
		}
		for k := 2; k < n; k++ {
			kept.triangles = append(kept.triangles, [3]int32{poly[0], poly[k-1], poly[k]})
		}
	}
	return kept, plane
}

// box is the room of the mesh in the view.
func (m mesh) box() (low, high point) {
	low, high = point{math.Inf(1), math.Inf(1)}, point{math.Inf(-1), math.Inf(-1)}
	for _, t := range m.triangles {
		for _, i := range t {
			for k := range 2 {
				low[k], high[k] = min(low[k], m.at[i][k]), max(high[k], m.at[i][k])
			}
		}
	}
	return low, high
}

func dot(a, b [3]float64) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}
