package export

import (
	"bufio"
	"encoding/binary"
	"io"
	"math"

	"ramnest/fixture/mesh"
)

const (
	stlHeader = 80 // bytes before the count
	stlRecord = 50 // bytes a triangle: normal, three corners, attribute
)

// WriteSTL writes a mesh as binary STL. Vertices are in mm, triangles
// counter-clockwise seen from outside; normals are computed here. STL has no
// unit of its own, so the header says mm.
//
// The header never starts with the word solid, by which many readers tell an
// ASCII file, and holds no equals sign, by which some take a colour.
//
// A mesh with no triangle, with a corner that is not a number, or with a
// triangle that float32 rounding leaves without area is a [*MeshError], and
// nothing has been written then.
func WriteSTL(w io.Writer, name string, m *mesh.Mesh) error {
	rounded, err := singlePrecision(name, m)
	if err != nil {
		return err
	}
	out := bufio.NewWriterSize(w, 64*1024)
	var head [stlHeader + 4]byte
	for i := range stlHeader {
		head[i] = ' '
	}
	copy(head[:stlHeader], "binary STL, mm: "+plainASCII(name))
	binary.LittleEndian.PutUint32(head[stlHeader:], uint32(len(m.Triangles)))
	out.Write(head[:])
	var record [stlRecord]byte
	for _, t := range m.Triangles {
		a, b, c := rounded[t[0]], rounded[t[1]], rounded[t[2]]
		at := 0
		for _, v := range [...][3]float32{unit(areaVector(a, b, c)), a, b, c} {
			for _, x := range v {
				binary.LittleEndian.PutUint32(record[at:], math.Float32bits(x))
				at += 4
			}
		}
		out.Write(record[:])
	}
	return out.Flush()
}

// plainASCII replaces every rune that a header should not hold.
func plainASCII(s string) string {
	out := make([]byte, 0, len(s))
	for _, r := range s {
		switch {
		case r == '=':
			out = append(out, '-')
		case r < ' ' || r > '~':
			out = append(out, '?')
		default:
			out = append(out, byte(r))
		}
	}
	return string(out)
}
