package picture

import (
	"context"

	"ramnest/fixture/mesh"
)

// A seam is an edge of a body with the two triangles that meet there; the
// second is -1 where the body is open.
type seam struct {
	a, b     int32 // vertices, a < b
	one, two int32 // triangles
	agree    bool  // the two run along it in opposite directions, as they should
}

// seams pairs the triangles of a body along their edges. closed tells whether
// every edge has exactly two that agree.
func seams(ctx context.Context, of *mesh.Mesh) (found []seam, closed bool, err error) {
	found = make([]seam, 0, 3*len(of.Triangles)/2+1)
	closed = true
	of.Edges(func(low int32, halves []mesh.Half) bool {
		if err = often(ctx, int(low)); err != nil {
			return false
		}
		s := seam{a: low, b: halves[0].High, one: halves[0].Triangle(), two: -1}
		if len(halves) == 1 {
			found = append(found, s)
			closed = false
		}
		for i := 1; i < len(halves); i++ {
			s.one, s.two = halves[i-1].Triangle(), halves[i].Triangle()
			s.agree = halves[i-1].Up() != halves[i].Up()
			found = append(found, s)
			closed = closed && len(halves) == 2 && s.agree
		}
		return true
	})
	if err != nil {
		return nil, false, err
	}
	return found, closed, nil
}
