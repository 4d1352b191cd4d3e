package force

import (
	"cmp"
	"math"
	"slices"
)

// piece is a force over a stretch of lift, quadratic in the way x = Hi - lift:
// F = F0 + F1 x + F2 x^2 for lift from Hi down to Lo [mm, N].
type piece struct{ Hi, Lo, F0, F1, F2 float64 }

func (p piece) at(lift float64) float64 {
	x := p.Hi - lift
	return p.F0 + x*(p.F1+x*p.F2)
}

func (p piece) work() float64 {
	x := p.Hi - p.Lo
	return x * (p.F0 + x*(p.F1/2+x*p.F2/3))
}

// profile is the force of one joint over its stroke: at most four pieces, in
// order of falling lift, so that a draw allocates nothing.
type profile struct {
	n int
	p [4]piece
}

func (q *profile) add(p piece) {
	if p.Hi > p.Lo {
		q.p[q.n] = p
		q.n++
	}
}

// clip cuts the profile at the seat.
func (q *profile) clip() {
	n := 0
	for i := range q.n {
		if q.p[i].Hi <= 0 {
			continue
		}
		q.p[n] = q.p[i]
		q.p[n].Lo = max(0, q.p[n].Lo)
		n++
	}
	q.n = n
}

// at gives the force at a lift, the larger one where the force jumps.
func (q *profile) at(lift float64) float64 {
	var f float64
	for i := range q.n {
		if p := &q.p[i]; lift <= p.Hi && lift >= p.Lo {
			f = max(f, p.at(lift))
		}
	}
	return f
}

// peak gives the largest force and where it is.
func (q *profile) peak() (f, lift float64) {
	for i := range q.n {
		for _, at := range [2]float64{q.p[i].Hi, q.p[i].Lo} {
			if v := q.p[i].at(at); v > f {
				f, lift = v, at
			}
		}
	}
	return f, lift
}

func (q *profile) work() float64 {
	var w float64
	for i := range q.n {
		w += q.p[i].work()
	}
	return w
}

// A Curve is a force over the lift in closed pieces with exact break points.
type Curve struct{ pieces []piece }

// sumCurve adds profiles, each count times, on the common stroke.
func sumCurve(profiles []profile, counts []int) Curve {
	breaks := []float64{0}
	for i := range profiles {
		for k := range profiles[i].n {
			breaks = append(breaks, profiles[i].p[k].Hi, profiles[i].p[k].Lo)
		}
	}
	slices.SortFunc(breaks, func(a, b float64) int { return cmp.Compare(b, a) })
	// Two breaks a nanometre apart are one, differently rounded.
	breaks = slices.CompactFunc(breaks, func(a, b float64) bool { return math.Abs(a-b) < 1e-6 })
	var c Curve
	for i := 1; i < len(breaks); i++ {
		sum := piece{Hi: breaks[i-1], Lo: breaks[i]}
		mid := (sum.Hi + sum.Lo) / 2
		for k := range profiles {
			for m := range profiles[k].n {
				p := profiles[k].p[m]
				if mid > p.Hi || mid < p.Lo {
					continue
				}
				x, n := p.Hi-sum.Hi, float64(counts[k])
				sum.F0 += n * (p.F0 + x*(p.F1+x*p.F2))
				sum.F1 += n * (p.F1 + 2*x*p.F2)
				sum.F2 += n * p.F2
			}
		}
		c.pieces = append(c.pieces, sum)
	}
	return c
}

// Stroke is the lift where the first force begins [mm].
func (c Curve) Stroke() float64 {
	if len(c.pieces) == 0 {
		return 0
	}
	return c.pieces[0].Hi
}

// At gives the force [N] at a lift [mm]; where it jumps, the larger value; 0
// outside the stroke and for a lift that is no number.
func (c Curve) At(lift float64) float64 {
	var f float64
	for _, p := range c.pieces {
		if lift <= p.Hi && lift >= p.Lo {
			f = max(f, p.at(lift))
		}
	}
	return f
}

// Peak gives the largest force [N] and its lift [mm]. Every piece is convex or
// straight, so the peak lies at the end of one.
func (c Curve) Peak() (f, lift float64) {
	for _, p := range c.pieces {
		for _, at := range [2]float64{p.Hi, p.Lo} {
			if v := p.at(at); v > f {
				f, lift = v, at
			}
		}
	}
	return f, lift
}

// Work is the area under the curve down to the seat [mJ].
func (c Curve) Work() float64 {
	var w float64
	for _, p := range c.pieces {
		w += p.work()
	}
	return w
}

// Points gives pairs of lift [mm] and force [N] in order of falling lift: both
// sides of every break point and about n places evenly between.
func (c Curve) Points(n int) [][2]float64 {
	n = min(max(n, 2), 100000)
	var out [][2]float64
	for _, p := range c.pieces {
		k := max(1, int(math.Ceil(float64(n)*(p.Hi-p.Lo)/c.Stroke())))
		for i := range k + 1 {
			lift := max(p.Lo, p.Hi+(p.Lo-p.Hi)*float64(i)/float64(k))
			out = append(out, [2]float64{lift, max(0, p.at(lift))})
		}
	}
	return out
}

// humps counts the summits that stand at least share of the peak above the
// valley on either side of them.
func (c Curve) humps(share float64) int {
	peak, _ := c.Peak()
	step := share * peak
	if step <= 0 {
		return 0
	}
	count, low, high, rising := 0, 0.0, 0.0, true
	visit := func(f float64) {
		switch {
		case rising && f > high:
			high = f
		case rising && f < high-step:
			count, rising, low = count+1, false, f
		case !rising && f < low:
			low = f
		case !rising && f > low+step:
			rising, high = true, f
		}
	}
	for _, p := range c.pieces {
		visit(p.at(p.Hi))
		visit(p.at(p.Lo))
	}
	if rising && high > low+step/2 {
		count++ // the force ends high, at the seat
	}
	return count
}
