package export

import (
	"fmt"
	"math"
	"strconv"

	"ramnest/fixture/mesh"
)

// A MeshError says why a mesh cannot be written as it stands.
type MeshError struct {
	Object   string // name of the mesh
	Triangle int    // number of the triangle from 0; -1 if it is not about one
	Problem  string // what is wrong
}

// Error gives the fault on one line.
func (e *MeshError) Error() string {
	if e.Triangle < 0 {
		return fmt.Sprintf("mesh %q: %s", e.Object, e.Problem)
	}
	return fmt.Sprintf("mesh %q: triangle %d %s", e.Object, e.Triangle, e.Problem)
}

// maxTriangles is the most that the 32-bit count of a binary STL and the
// int32 indices here can hold.
const maxTriangles = math.MaxInt32

// singlePrecision rounds the vertices to the float32 that STL stores and that
// most readers of 3MF keep, and refuses a mesh that does not survive it:
// coordinates out of range, indices that point nowhere, triangles that have no
// area left.
func singlePrecision(name string, m *mesh.Mesh) ([][3]float32, error) {
	vertices, triangles := m.Vertices, m.Triangles
	if len(triangles) == 0 {
		return nil, &MeshError{Object: name, Triangle: -1, Problem: "has no triangles"}
	}
	if len(triangles) > maxTriangles {
		return nil, &MeshError{Object: name, Triangle: -1,
			Problem: "has " + strconv.Itoa(len(triangles)) + " triangles, more than the format can count"}
	}
	rounded := make([][3]float32, len(vertices))
	for i, v := range vertices {
		var bad byte
		if rounded[i], bad = roundPoint(v); bad != 0 {
			return nil, &MeshError{Object: name, Triangle: -1,
				Problem: fmt.Sprintf("vertex %d has %c = %g mm, not a length that can be stored", i, bad, v[bad-'x'])}
		}
	}
	for i, t := range triangles {
		for _, corner := range t {
			if corner < 0 || int(corner) >= len(vertices) {
				return nil, &MeshError{Object: name, Triangle: i, Problem: fmt.Sprintf("points to vertex %d, but there are %d", corner, len(vertices))}
			}
		}
		a, b, c := rounded[t[0]], rounded[t[1]], rounded[t[2]]
		if a == b || b == c || c == a {
			return nil, &MeshError{Object: name, Triangle: i, Problem: "collapses to a line when its corners are rounded to single precision"}
		}
		if areaVector(a, b, c) == [3]float64{} {
			return nil, &MeshError{Object: name, Triangle: i, Problem: "has no area once its corners are rounded to single precision"}
		}
	}
	return rounded, nil
}

// roundPoint rounds a point to single precision; bad names the axis that cannot
// be stored, 0 if all can.
func roundPoint(p [3]float64) (r [3]float32, bad byte) {
	for axis, c := range p {
		// Adding zero turns a negative zero into a positive one.
		r[axis] = float32(c) + 0
		// The comparison is false for NaN too.
		if !(math.Abs(float64(r[axis])) <= math.MaxFloat32) {
			return r, "xyz"[axis]
		}
	}
	return r, 0
}

// areaVector is the cross product of two edges of a triangle, which points
// outward and is twice the area long.
//
//	n = (b - a) x (c - a)
//
// Each product is rounded on its own so that a fused multiply-add gives no
// other bytes on another processor.
func areaVector(a, b, c [3]float32) [3]float64 {
	ux, uy, uz := float64(b[0])-float64(a[0]), float64(b[1])-float64(a[1]), float64(b[2])-float64(a[2])
	vx, vy, vz := float64(c[0])-float64(a[0]), float64(c[1])-float64(a[1]), float64(c[2])-float64(a[2])
	return [3]float64{
		float64(uy*vz) - float64(uz*vy),
		float64(uz*vx) - float64(ux*vz),
		float64(ux*vy) - float64(uy*vx),
	}
}

// unit scales a vector to length 1. It divides by the largest component first,
// because the area of a triangle of a few micrometres squared would leave the
// range of a float32.
func unit(v [3]float64) [3]float32 {
	largest := max(math.Abs(v[0]), math.Abs(v[1]), math.Abs(v[2]))
	x, y, z := v[0]/largest, v[1]/largest, v[2]/largest
	length := math.Sqrt(float64(x*x) + float64(y*y) + float64(z*z))
	// A zero component must not keep the sign of its rounding.
	return [3]float32{float32(x/length) + 0, float32(y/length) + 0, float32(z/length) + 0}
}
