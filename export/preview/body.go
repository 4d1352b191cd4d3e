package preview

import (
	"encoding/base64"
	"encoding/binary"
	"math"

	"ramnest/fixture/mesh"
)

// A packed body is what the file holds of a mesh: each coordinate in 16 bits over the
// longest side of its box (3 µm on 200 mm), each corner in 2 bytes, or 3 where
// there are more vertices than those can count.
type packed struct {
	Origin    [3]float64 `json:"origin"` // [mm]
	Step      float64    `json:"step"`   // of the grid [mm]
	Vertices  string     `json:"vertices"`
	Triangles string     `json:"triangles"`
	Wide      bool       `json:"wide"`   // corners in 3 bytes
	Closed    bool       `json:"closed"` // a cut through it can be filled
	Of        int        `json:"of"`     // triangles of the mesh itself, if fewer are shown; else 0
	shown     int
}

// mostTriangles is how many triangles of one body a file holds: up to 2 MB of text.
const mostTriangles = 120_000

// pack stores a body; one that has too many triangles is coarsened.
func pack(b Body) packed {
	m := snapped(b, 65535)
	of := 0
	for cells := 1024.0; len(m.triangles) > mostTriangles && cells >= 16; cells /= 1.5 {
		of = len(b.Triangles)
		m = snapped(b, math.Floor(cells))
	}
	p := packed{Origin: m.origin, Step: m.step, Wide: len(m.vertices) > 1<<16, Closed: m.closed(), Of: of, shown: len(m.triangles)}
	v := make([]byte, 0, 6*len(m.vertices))
	for _, q := range m.vertices {
		for _, c := range q {
			v = binary.LittleEndian.AppendUint16(v, c)
		}
	}
	t := make([]byte, 0, 9*len(m.triangles))
	for _, tri := range m.triangles {
		for _, c := range tri {
			t = append(t, byte(c), byte(c>>8))
			if p.Wide {
				t = append(t, byte(c>>16))
			}
		}
	}
	p.Vertices, p.Triangles = base64.StdEncoding.EncodeToString(v), base64.StdEncoding.EncodeToString(t)
	return p
}

// A grid mesh has its vertices on a grid.
type gridMesh struct {
	origin    [3]float64
	step      float64
	vertices  [][3]uint16
	triangles [][3]int32
}

// closed tells whether a cut can be filled.
func (m gridMesh) closed() bool {
	of := mesh.Mesh{Vertices: make([]mesh.Vector, len(m.vertices)), Triangles: m.triangles}
	return of.Closed()
}

// snapped puts a mesh on a grid of so many cells along its longest side. Vertices
// that fall together become one, triangles that lose a corner go.
func snapped(b Body, cells float64) gridMesh {
	lo, hi := b.Vertices[b.Triangles[0][0]], b.Vertices[b.Triangles[0][0]]
	for _, t := range b.Triangles {
		for _, i := range t {
			for k, c := range b.Vertices[i] {
				lo[k], hi[k] = min(lo[k], c), max(hi[k], c)
			}
		}
	}
	long := max(hi[0]-lo[0], hi[1]-lo[1], hi[2]-lo[2], 1e-6)
	m := gridMesh{origin: lo, step: long / cells}
	number := make(map[[3]uint16]int32, len(b.Vertices))
	to := func(i int32) int32 {
		var q [3]uint16
		for k, c := range b.Vertices[i] {
			q[k] = uint16(math.Round((c - lo[k]) / m.step))
		}
		n, known := number[q]
		if !known {
			n = int32(len(m.vertices))
			number[q] = n
			m.vertices = append(m.vertices, q)
		}
		return n
	}
	for _, t := range b.Triangles {
		if u := [3]int32{to(t[0]), to(t[1]), to(t[2])}; u[0] != u[1] && u[1] != u[2] && u[2] != u[0] {
			m.triangles = append(m.triangles, u)
		}
	}
	return m
}
