package drawing

import (
	"cmp"
	"math"
	"slices"
)

// sharpTurn is the cosine of the angle by which faces turn at an edge that is drawn:
// more than that between the chords of small curves (own).
const sharpTurn = 0.82 // 35 degrees

// An edge of a mesh with what lies beside it.
type edge struct {
	a, b  int32
	rim   bool // of the cut
	sharp bool
	// outline: one face looks to the viewer, the other away
	outline, seen bool // seen: a face beside it looks to the viewer
}

// edges lists the edges of a mesh in the order of their ends.
func (m mesh) edges() []edge {
	type half struct{ a, b, face int32 }
	halves := make([]half, 0, 3*len(m.triangles))
	normals := make([][3]float64, len(m.triangles))
	for i, t := range m.triangles {
		normals[i] = m.normal(t)
		for k := range 3 {
			a, b := t[k], t[(k+1)%3]
			halves = append(halves, half{min(a, b), max(a, b), int32(i)})
		}
	}
	slices.SortFunc(halves, func(p, q half) int {
		return cmp.Or(cmp.Compare(p.a, q.a), cmp.Compare(p.b, q.b), cmp.Compare(p.face, q.face))
	})
	var out []edge
	for i := 0; i < len(halves); {
		j := i + 1
		for j < len(halves) && halves[j].a == halves[i].a && halves[j].b == halves[i].b {
			j++
		}
		e := edge{a: halves[i].a, b: halves[i].b, rim: j == i+1, sharp: j != i+2}
		front, other := false, false // a face seen edge-on counts as turned away
		for _, h := range halves[i:j] {
			front = front || normals[h.face][2] > 1e-9
			other = other || normals[h.face][2] <= 1e-9
		}
		if j == i+2 {
			e.sharp = dot(normals[halves[i].face], normals[halves[i+1].face]) < sharpTurn
		}
		e.outline, e.seen = front && other, front || e.rim
		out = append(out, e)
		i = j
	}
	return out
}

func (m mesh) normal(t [3]int32) [3]float64 {
	p, q, r := m.at[t[0]], m.at[t[1]], m.at[t[2]]
	u := [3]float64{q[0] - p[0], q[1] - p[1], q[2] - p[2]}
	v := [3]float64{r[0] - p[0], r[1] - p[1], r[2] - p[2]}
	n := [3]float64{float64(u[1]*v[2]) - float64(u[2]*v[1]), float64(u[2]*v[0]) - float64(u[0]*v[2]), float64(u[0]*v[1]) - float64(u[1]*v[0])}
	l := math.Sqrt(dot(n, n))
	if l == 0 {
		return n
	}
	return [3]float64{n[0] / l, n[1] / l, n[2] / l}
}
