package picture

import (
	"cmp"
	"context"
	"slices"
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
//
// Edges are sorted by counting, the lower vertex first, so that the order never
// depends on a map.
func seams(ctx context.Context, vertices int, triangles [][3]int32) (found []seam, closed bool, err error) {
	start := make([]int32, vertices+1)
	for _, t := range triangles {
		for k := range t {
			if a, b := t[k], t[(k+1)%3]; a != b {
				start[min(a, b)+1]++
			}
		}
	}
	for i := range vertices {
		start[i+1] += start[i]
	}
	type half struct {
		high     int32
		triangle int32 // complemented if the triangle runs from high to low
	}
	halves := make([]half, start[vertices])
	next := slices.Clone(start[:vertices])
	for i, t := range triangles {
		for k := range t {
			a, b := t[k], t[(k+1)%3]
			switch {
			case a < b:
				halves[next[a]] = half{b, int32(i)}
				next[a]++
			case b < a:
				halves[next[b]] = half{a, ^int32(i)}
				next[b]++
			}
		}
	}
	found = make([]seam, 0, len(halves)/2+1)
	closed = true
	for low := range vertices {
		if err := often(ctx, low); err != nil {
			return nil, false, err
		}
		of := halves[start[low]:start[low+1]]
		if len(of) > 32 {
			slices.SortStableFunc(of, func(x, y half) int { return cmp.Compare(x.high, y.high) })
		} else {
			for i := 1; i < len(of); i++ {
				for j := i; j > 0 && of[j].high < of[j-1].high; j-- {
					of[j], of[j-1] = of[j-1], of[j]
				}
			}
		}
		for len(of) > 0 {
			n := 1
			for n < len(of) && of[n].high == of[0].high {
				n++
			}
			s := seam{a: int32(low), b: of[0].high, one: plain(of[0].triangle), two: -1}
			if n == 1 {
				found = append(found, s)
				closed = false
			}
			for i := 1; i < n; i++ {
				s.one, s.two = plain(of[i-1].triangle), plain(of[i].triangle)
				s.agree = (of[i-1].triangle < 0) != (of[i].triangle < 0)
				found = append(found, s)
				closed = closed && n == 2 && s.agree
			}
			of = of[n:]
		}
	}
	return found, closed, nil
}

func plain(triangle int32) int32 {
	if triangle < 0 {
		return ^triangle
	}
	return triangle
}
