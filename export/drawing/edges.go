package drawing

import "ramnest/fixture/mesh"

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

// edgesOf lists the edges of a mesh in the order of their ends.
func edgesOf(m *mesh.Mesh) []edge {
	normals := make([]mesh.Vector, len(m.Triangles))
	for i := range m.Triangles {
		normals[i] = mesh.Unit(m.Normal(i))
	}
	var out []edge
	m.Edges(func(low int32, of []mesh.Half) bool {
		e := edge{a: low, b: of[0].High, rim: len(of) == 1, sharp: len(of) != 2}
		front, other := false, false // a face seen edge-on counts as turned away
		for _, h := range of {
			front = front || normals[h.Triangle()][2] > 1e-9
			other = other || normals[h.Triangle()][2] <= 1e-9
		}
		if len(of) == 2 {
			e.sharp = mesh.Dot(normals[of[0].Triangle()], normals[of[1].Triangle()]) < sharpTurn
		}
		e.outline, e.seen = front && other, front || e.rim
		out = append(out, e)
		return true
	})
	return out
}
