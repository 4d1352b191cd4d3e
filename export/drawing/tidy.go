package drawing

import (
	"cmp"
	"math"
	"slices"
)

// tidied joins what lies on one line and drops what is drawn twice; what is hidden under
// a line that is seen goes.
func tidied(seen, hidden []segment) (s, h []segment) {
	s = joined(seen)
	h = joined(hidden)
	known := map[segment]bool{}
	for _, x := range s {
		known[key(x)] = true
	}
	levels := byLine(s)
	var out []segment
	for _, x := range h {
		if known[key(x)] {
			continue
		}
		if axis, at, a, b, level := x.level(); level {
			for _, piece := range without(a, b, levels[line{axis, at}]) {
				out = append(out, onLine(axis, at, piece[0], piece[1]))
			}
			continue
		}
		out = append(out, x)
	}
	return s, out
}

// micron rounds to the grid on which ends are compared.
func micron(v float64) float64 { return math.Round(v*1000)/1000 + 0 }

// key is a segment with its lesser end first, on the grid.
func key(s segment) segment {
	for i := range s {
		s[i] = point{micron(s[i][0]), micron(s[i][1])}
	}
	if slices.Compare(s[0][:], s[1][:]) > 0 {
		s[0], s[1] = s[1], s[0]
	}
	return s
}

// A line is level (axis 0) or upright (axis 1), at a height or a distance.
type line struct {
	axis int
	at   float64
}

// level tells whether a segment is level or upright, and where.
func (s segment) level() (axis int, at, a, b float64, ok bool) {
	k := key(s)
	switch {
	case k[0][1] == k[1][1]:
		return 0, k[0][1], k[0][0], k[1][0], true
	case k[0][0] == k[1][0]:
		return 1, k[0][0], k[0][1], k[1][1], true
	}
	return 0, 0, 0, 0, false
}

func onLine(axis int, at, a, b float64) segment {
	if axis == 0 {
		return segment{{a, at}, {b, at}}
	}
	return segment{{at, a}, {at, b}}
}

// joined makes one segment of level or upright ones that touch, and drops doubles.
func joined(all []segment) []segment {
	lines := map[line][][2]float64{}
	known := map[segment]bool{}
	var out []segment
	for _, s := range all {
		if axis, at, a, b, ok := s.level(); ok {
			lines[line{axis, at}] = append(lines[line{axis, at}], [2]float64{min(a, b), max(a, b)})
		} else if k := key(s); !known[k] {
			known[k] = true
			out = append(out, k)
		}
	}
	var order []line
	for l := range lines {
		order = append(order, l)
	}
	slices.SortFunc(order, func(p, q line) int { return cmp.Or(cmp.Compare(p.axis, q.axis), cmp.Compare(p.at, q.at)) })
	for _, l := range order {
		for _, r := range union(lines[l]) {
			out = append(out, onLine(l.axis, l.at, r[0], r[1]))
		}
	}
	return out
}

// byLine gathers level and upright segments by their line.
func byLine(all []segment) map[line][][2]float64 {
	out := map[line][][2]float64{}
	for _, s := range all {
		if axis, at, a, b, ok := s.level(); ok {
			out[line{axis, at}] = append(out[line{axis, at}], [2]float64{min(a, b), max(a, b)})
		}
	}
	return out
}

// union joins ranges that touch.
func union(ranges [][2]float64) [][2]float64 {
	slices.SortFunc(ranges, func(a, b [2]float64) int { return cmp.Or(cmp.Compare(a[0], b[0]), cmp.Compare(a[1], b[1])) })
	var out [][2]float64
	for _, r := range ranges {
		if n := len(out); n > 0 && r[0] <= out[n-1][1]+0.002 {
			out[n-1][1] = max(out[n-1][1], r[1])
			continue
		}
		out = append(out, r)
	}
	return out
}

// without is a range less others.
func without(a, b float64, others [][2]float64) [][2]float64 {
	var out [][2]float64
	for _, r := range union(slices.Clone(others)) {
		if r[1] <= a || r[0] >= b {
			continue
		}
		if r[0] > a+0.01 {
			out = append(out, [2]float64{a, r[0]})
		}
		a = max(a, r[1])
	}
	if b > a+0.01 {
		out = append(out, [2]float64{a, b})
	}
	return out
}

// chained joins segments end to end, so that dashes run on round a curve.
func chained(all []segment) []stroke {
	at := map[point][]int{}
	ends := make([]segment, len(all))
	for i, s := range all {
		ends[i] = segment{{micron(s[0][0]), micron(s[0][1])}, {micron(s[1][0]), micron(s[1][1])}}
		at[ends[i][0]] = append(at[ends[i][0]], i)
		at[ends[i][1]] = append(at[ends[i][1]], i)
	}
	used := make([]bool, len(all))
	// follow runs on from an end while just one other segment goes on there.
	follow := func(i int, p point) []point {
		var out []point
		for {
			next := -1
			if there := at[p]; len(there) == 2 {
				next = there[0] + there[1] - i
			}
			if next < 0 || used[next] {
				return out
			}
			used[next] = true
			i = next
			if ends[i][0] == p {
				p = ends[i][1]
			} else {
				p = ends[i][0]
			}
			out = append(out, p)
		}
	}
	var out []stroke
	for i := range all {
		if used[i] {
			continue
		}
		used[i] = true
		pts := []point{ends[i][0], ends[i][1]}
		pts = append(pts, follow(i, ends[i][1])...)
		before := follow(i, ends[i][0])
		slices.Reverse(before)
		pts = append(before, pts...)
		s := stroke{points: pts}
		if n := len(pts); n > 3 && pts[0] == pts[n-1] {
			s.points, s.closed = pts[:n-1], true
		}
		out = append(out, s)
	}
	return out
}
