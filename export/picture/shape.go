package picture

import (
	"context"
	"math"

	"ramnest/fixture/mesh"
)

// shape is a body as the camera sees it.
type shape struct {
	body    *Body
	spots   []spot       // vertices on the canvas
	above   []float64    // distance of vertices from the section; nil if not cut
	normals [][3]float64 // unit normals of triangles in the axes of the picture
	facing  []int8       // 1 to the viewer, -1 away, 0 edge-on or without area
	seams   []seam
	solid   bool // closed, so that faces seen from behind are never visible
	traces  []trace
	// insideOut tells that the triangles of a closed body run clockwise seen
	// from outside; the normals are turned then.
	insideOut bool
}

// newShape sees a body, its vertices already turned, through the lens; it
// draws nothing yet.
func newShape(ctx context.Context, b *Body, seen [][3]float64, l *lens, cut *plane) (*shape, error) {
	sh := &shape{body: b}
	sh.spots = make([]spot, len(seen))
	for i, p := range seen {
		sh.spots[i] = l.spot(p)
	}
	if cut != nil {
		sh.above = make([]float64, len(seen))
		for i, p := range seen {
			sh.above[i] = cut.above(p)
		}
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	var err error
	if sh.seams, sh.solid, err = seams(ctx, &b.Mesh); err != nil {
		return nil, err
	}
	sh.faceAll(seen)
	return sh, ctx.Err()
}

// edgeOn is the sine below which a face counts as seen exactly from the side.
const edgeOn = 1e-6

// faceAll finds normals and which way the triangles face.
func (sh *shape) faceAll(seen [][3]float64) {
	triangles := sh.body.Triangles
	sh.normals = make([][3]float64, len(triangles))
	sh.facing = make([]int8, len(triangles))
	flat := make([]bool, len(triangles))
	// The noise of single precision coordinates turns a triangle lower than a
	// few of their steps any way it likes.
	extent := mesh.EmptyBox()
	for _, p := range seen {
		extent.Add(p)
	}
	diagonal := mesh.Sub(extent.Max, extent.Min)
	size := mesh.Dot(diagonal, diagonal)
	noise := 4e-7 * 4e-7 * size
	volume := 0.0
	for i, t := range triangles {
		a, b, c := seen[t[0]], seen[t[1]], seen[t[2]]
		ab, ac := mesh.Sub(b, a), mesh.Sub(c, a)
		n := mesh.Cross(ab, ac)
		square := mesh.Dot(n, n)
		// No edge is longer than the body, so most need no closer look.
		if square <= noise*size {
			bc := mesh.Sub(c, b)
			if square <= noise*max(mesh.Dot(ab, ab), mesh.Dot(ac, ac), mesh.Dot(bc, bc)) {
				flat[i] = true
				continue
			}
		}
		sh.normals[i] = mesh.Scale(n, 1/math.Sqrt(square))
		volume += mesh.Dot(mesh.Sub(a, extent.Min), n)
	}
	sh.lendNormals(flat, seen)
	sh.insideOut = sh.solid && volume < 0
	if sh.insideOut {
		for i, n := range sh.normals {
			sh.normals[i] = mesh.Scale(n, -1)
		}
	}
	for i, n := range sh.normals {
		switch {
		case n[2] > edgeOn:
			sh.facing[i] = 1
		case n[2] < -edgeOn:
			sh.facing[i] = -1
		}
	}
}

// lendNormals gives a triangle without area the normal of its neighbour across
// its longest edge, so that a crease along its other edges is still found.
func (sh *shape) lendNormals(flat []bool, seen [][3]float64) {
	lend := func(s *seam, to, from int32) {
		t := sh.body.Triangles[to]
		long := mesh.Dot(mesh.Sub(seen[s.a], seen[s.b]), mesh.Sub(seen[s.a], seen[s.b]))
		for k := range t {
			e := mesh.Sub(seen[t[k]], seen[t[(k+1)%3]])
			if mesh.Dot(e, e) > long {
				return
			}
		}
		sh.normals[to] = sh.normals[from]
	}
	for i := range sh.seams {
		s := &sh.seams[i]
		if s.two < 0 || flat[s.one] == flat[s.two] {
			continue
		}
		if flat[s.one] {
			lend(s, s.one, s.two)
		} else {
			lend(s, s.two, s.one)
		}
	}
}

// fill draws the surface.
func (sh *shape) fill(ctx context.Context, c *canvas) error {
	for i, t := range sh.body.Triangles {
		if err := often(ctx, i); err != nil {
			return err
		}
		facing := sh.facing[i]
		draw := facing > 0 || facing < 0 && !sh.solid
		cut := sh.above != nil && (sh.above[t[0]] > 0 || sh.above[t[1]] > 0 || sh.above[t[2]] > 0)
		if !draw && !cut {
			continue
		}
		n := sh.normals[i]
		if facing < 0 {
			n = mesh.Scale(n, -1)
		}
		s := lit(sh.body.Tone, n)
		if cut {
			sh.cutTriangle(c, t, s, draw)
		} else {
			c.triangle(sh.spots[t[0]], sh.spots[t[1]], sh.spots[t[2]], s)
		}
	}
	return nil
}
