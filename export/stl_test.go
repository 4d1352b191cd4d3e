package export_test

import (
	"bytes"
	"encoding/binary"
	"math"
	"strings"
	"testing"

	"ramnest/export"
	"ramnest/fixture/mesh"
)

// The bytes of a tetrahedron, read without the code that wrote them: count, corners in
// their order, and normals of length 1 that point out, by the rule of the right hand.
//
// Source: the published description of the format: header of 80 bytes, 50 a triangle
// (from memory).
func TestWriteSTLByteByByte(t *testing.T) {
	t.Parallel()
	vertices := [][3]float64{{0, 0, 0}, {10, 0, 0}, {0, 10, 0}, {0, 0, 10}}
	triangles := [][3]int32{{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {2, 0, 3}}
	third := float32(1 / math.Sqrt(3))
	normals := [][3]float32{{0, 0, -1}, {0, -1, 0}, {third, third, third}, {-1, 0, 0}}
	var b bytes.Buffer
	if err := export.WriteSTL(&b, "solid of = four", &mesh.Mesh{Vertices: vertices, Triangles: triangles}); err != nil {
		t.Fatal(err)
	}
	data := b.Bytes()
	if len(data) != 84+50*4 || binary.LittleEndian.Uint32(data[80:]) != 4 || strings.HasPrefix(string(data), "solid") {
		t.Fatalf("%d bytes, head %q", len(data), data[:84])
	}
	for i, tri := range triangles {
		record := data[84+50*i:]
		at := func(k, axis int) float32 {
			return math.Float32frombits(binary.LittleEndian.Uint32(record[12*k+4*axis:]))
		}
		for axis := range 3 {
			if n := at(0, axis); math.Abs(float64(n-normals[i][axis])) > 1e-6 {
				t.Errorf("triangle %d: normal %g, want %g", i, n, normals[i][axis])
			}
			for k := range 3 {
				if got, want := at(k+1, axis), float32(vertices[tri[k]][axis]); got != want {
					t.Errorf("triangle %d, corner %d: %g, want %g", i, k, got, want)
				}
			}
		}
		if record[48] != 0 || record[49] != 0 {
			t.Errorf("triangle %d: attribute bytes %v", i, record[48:50])
		}
	}
}
