package drawing

import (
	"math"

	"ramnest/export/page"
)

// marks puts centre lines, tags, the origin and the traces of the sections on the views.
func (l *layout) marks(k *ink, at [3]point) {
	plan := func(p [2]float64) point { return l.on(0, at[0], p) }
	cross := func(p [2]float64, rx, ry float64) {
		c := plan(p)
		rx, ry = l.k*rx+2.5, l.k*ry+2.5
		k.line(Centre, point{c[0] - rx, c[1]}, point{c[0] + rx, c[1]})
		k.line(Centre, point{c[0], c[1] - ry}, point{c[0], c[1] + ry})
	}
	done := map[[2]float64]bool{}
	for _, f := range l.widestFirst() {
		if f.Tag == "" || f.Hidden || done[f.At] {
			continue
		}
		done[f.At] = true
		cross(f.At, max(f.Diameter, f.Size[0])/2, max(f.Diameter, f.Size[1])/2)
	}
	// Axes of what the sections cut.
	for _, f := range l.body.Features {
		if f.Tag == "" {
			continue
		}
		z := [2]float64{min(f.Z[0], f.Z[1]), max(f.Z[0], f.Z[1])}
		for i, off := range [2]float64{f.At[1] - l.body.Cut[1], f.At[0] - l.body.Cut[0]} {
			if math.Abs(off) > 0.01 || f.Hidden {
				continue
			}
			v := &l.views[i+1]
			h := v.view.turn([3]float64{f.At[0], f.At[1], 0})[0]
			a, b := l.on(i+1, at[i+1], point{h, z[0]}), l.on(i+1, at[i+1], point{h, z[1]})
			k.line(Centre, point{a[0], a[1] + 3}, point{b[0], b[1] - 3})
		}
	}
	l.traces(k, at[0])
	l.tags(k, at[0])
	low := l.views[0].low
	o := plan(low)
	k.loop(Thin, circle(o, 1.2)...)
	k.text(o[0]-1.8, o[1]+4.2, 1, 8, "0")
}

// widestFirst puts features that share their middle in order of size.
func (l *layout) widestFirst() []Feature {
	var out []Feature
	for _, f := range l.body.Features {
		at := len(out)
		for i, o := range out {
			if o.At == f.At && o.Diameter < f.Diameter {
				at = i
				break
			}
		}
		out = append(out, Feature{})
		copy(out[at+1:], out[at:])
		out[at] = f
	}
	return out
}

func circle(c point, r float64) []point {
	const n = 32
	out := make([]point, n)
	for i := range out {
		s, co := math.Sincos(2 * math.Pi * float64(i) / n)
		out[i] = point{c[0] + float64(r*co), c[1] + float64(r*s)}
	}
	return out
}

// traces says in the plan where the sections run and which way they look.
func (l *layout) traces(k *ink, at point) {
	c := l.on(0, at, l.body.Cut)
	x0, x1, y0, y1 := at[0], at[0]+l.wide, at[1], at[1]+l.deep
	const gap, long, head = 1.5, 4.5, 5.0
	end := func(p, outward, looks point, letter string) {
		a := point{p[0] + gap*outward[0], p[1] + gap*outward[1]}
		b := point{p[0] + (gap+long)*outward[0], p[1] + (gap+long)*outward[1]}
		k.line(CutEnd, a, b)
		tip := point{b[0] + head*looks[0], b[1] + head*looks[1]}
		k.line(Thin, b, tip)
		k.arrows = append(k.arrows, arrow{tip, looks})
		t := point{b[0] + 3.2*outward[0] - 0.5*looks[0], b[1] + 3.2*outward[1] - 0.5*looks[1]}
		k.labels = append(k.labels, label{at: point{t[0], t[1] + 1.5}, align: 0.5, size: 11, bold: true, text: letter, blank: true})
	}
	up, down, left, right := point{0, -1}, point{0, 1}, point{-1, 0}, point{1, 0}
	end(point{x0, c[1]}, left, up, "A")
	end(point{x1, c[1]}, right, up, "A")
	looks := right
	if l.thirdAngle() {
		looks = left
	}
	end(point{c[0], y0}, up, looks, "B")
	end(point{c[0], y1}, down, looks, "B")
}

const tagType = 8.0

// tags names features in the plan, each where it is least in the way.
func (l *layout) tags(k *ink, at point) {
	type room struct{ x0, y0, x1, y1 float64 }
	meets := func(a, b room) bool { return a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1 }
	var taken, rings []room
	c := l.on(0, at, l.body.Cut)
	taken = append(taken, room{c[0] - 0.3, at[1] - 20, c[0] + 0.3, at[1]}, room{c[0] - 0.3, at[1] + l.deep, c[0] + 0.3, at[1] + l.deep + 20})
	for _, f := range l.body.Features {
		if f.Tag != "" {
			p, rx, ry := l.on(0, at, f.At), l.k*max(f.Diameter, f.Size[0])/2, l.k*max(f.Diameter, f.Size[1])/2
			rings = append(rings, room{p[0] - rx, p[1] - ry, p[0] + rx, p[1] + ry})
		}
	}
	// drawn counts lines under a room, up to four.
	drawn := func(r room) float64 {
		n := 0.0
		for _, s := range l.views[0].seen {
			q := s.points[len(s.points)-1]
			if !s.closed {
				q = s.points[0]
			}
			b := l.on(0, at, q)
			for _, p := range s.points {
				a := b
				b = l.on(0, at, p)
				if a != b && meets(r, room{min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])}) &&
					crosses(a, b, r.x0, r.y0, r.x1, r.y1) {
					if n++; n == 4 {
						return n
					}
				}
			}
		}
		return n
	}
	f := page.Font{Face: page.Bold, Size: tagType}
	for i, feature := range l.body.Features {
		if feature.Tag == "" {
			continue
		}
		p := l.on(0, at, feature.At)
		w, h := l.book.Width(f, feature.Tag)+0.6, 3.0
		rx, ry := l.k*max(feature.Diameter, feature.Size[0])/2, l.k*max(feature.Diameter, feature.Size[1])/2
		var best room
		least := math.Inf(1)
		for _, far := range []float64{0, 1.2, 2.5, 4, 6, 8} {
			for turn := range 8 {
				s, co := math.Sincos(math.Pi/4 + math.Pi/4*float64(turn))
				x, y := p[0]+(rx*0.78+far)*co, p[1]-(ry*0.78+far)*s
				if far == 0 { // within the outline, if it is large enough
					x, y = p[0]+rx*0.45*co, p[1]-ry*0.45*s
				}
				r := room{x - w/2 + math.Copysign(w/2, co)*b2f(far > 0), y - h/2 - math.Copysign(h/2, s)*b2f(far > 0), 0, 0}
				r.x1, r.y1 = r.x0+w, r.y0+h
				cost := far + 0.2*float64(turn%2) + 0.01*float64(turn)
				if far == 0 && (rx < 1.3*w || ry < 1.3*h) {
					cost += 40
				}
				for _, t := range taken {
					if meets(r, t) {
						cost += 100
					}
				}
				for j, t := range rings {
					if j != i && meets(r, t) {
						cost += 8
					}
				}
				cost += 5 * drawn(r)
				if cost < least {
					least, best = cost, r
				}
			}
		}
		taken = append(taken, best)
		k.labels = append(k.labels, label{at: point{(best.x0 + best.x1) / 2, best.y1 - 0.6}, align: 0.5, size: tagType, bold: true,
			text: feature.Tag, blank: true})
	}
}

// crosses tells whether a line whose box meets a room passes through it: its corners
// do not all lie on one side.
func crosses(a, b point, x0, y0, x1, y1 float64) bool {
	left, right := false, false
	for _, c := range [4]point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} {
		s := float64((b[0]-a[0])*(c[1]-a[1])) - float64((b[1]-a[1])*(c[0]-a[0]))
		left, right = left || s >= 0, right || s <= 0
	}
	return left && right
}

func b2f(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
