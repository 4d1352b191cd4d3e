package force

import (
	"cmp"
	"math"
	"slices"
)

// A Curve is a force over the lift in closed pieces with exact break points.
type Curve struct{ pieces []sumPiece }

// sumPiece is the sum of the pieces of several joints over one stretch of lift.
type sumPiece struct {
	piece
	lips []lipTerm
}

type lipTerm struct {
	count float64
	lip   lip
}

func (p *sumPiece) at(lift float64) float64 {
	f := p.piece.at(lift)
	for i := range p.lips {
		f += p.lips[i].count * p.lips[i].lip.force(lift)
	}
	return f
}

func (p *sumPiece) work() float64 {
	w := p.piece.work()
	for i := range p.lips {
		w += p.lips[i].count * p.lips[i].lip.work(p.Hi, p.Lo)
	}
	return w
}

// peak of one stretch: a parabola's vertex or end is exact; with balls in it, the
// higher summits among 32 parts are searched by golden section.
func (p *sumPiece) peak() (f, lift float64) {
	visit := func(at float64) {
		if v := p.at(at); v > f {
			f, lift = v, at
		}
	}
	visit(p.Hi)
	visit(p.Lo)
	if len(p.lips) == 0 {
		if p.F2 < 0 {
			if x := -p.F1 / (2 * p.F2); x > 0 && x < p.Hi-p.Lo {
				visit(p.Hi - x)
			}
		}
		return f, lift
	}
	const parts = 32
	step := (p.Hi - p.Lo) / parts
	var v [parts + 1]float64
	top := f
	for i := range v {
		v[i] = p.at(p.Lo + float64(i)*step)
		top = max(top, v[i])
	}
	least := 0.95 * top
	for i := range v {
		if before, after := max(0, i-1), min(parts, i+1); v[i] >= least && v[i] >= v[before] && v[i] >= v[after] {
			visit(summit(p.at, p.Lo+float64(before)*step, p.Lo+float64(after)*step))
			visit(p.Lo + float64(i)*step)
		}
	}
	return f, lift
}

// sumCurve adds profiles, each count times, on the common stroke.
func sumCurve(profiles []profile, counts []int) Curve {
	breaks := []float64{0}
	for i := range profiles {
		for k := range profiles[i].n {
			breaks = append(breaks, profiles[i].p[k].Hi, profiles[i].p[k].Lo)
		}
	}
	slices.SortFunc(breaks, func(a, b float64) int { return cmp.Compare(b, a) })
	// Only breaks that are the same number are one: a force may drop between two that
	// differ by rounding, and the sum before it must not be lost.
	breaks = slices.Compact(breaks)
	var c Curve
	for i := 1; i < len(breaks); i++ {
		sum := sumPiece{piece: piece{Hi: breaks[i-1], Lo: breaks[i]}}
		for k := range profiles {
			n := float64(counts[k])
			for m := range profiles[k].n {
				p := profiles[k].p[m]
				switch {
				case p.Hi < sum.Hi || p.Lo > sum.Lo:
				case p.lip:
					sum.lips = append(sum.lips, lipTerm{n, profiles[k].lip})
				default:
					x := p.Hi - sum.Hi
					sum.F0 += n * (p.F0 + x*(p.F1+x*p.F2))
					sum.F1 += n * (p.F1 + 2*x*p.F2)
					sum.F2 += n * p.F2
				}
			}
		}
		c.pieces = append(c.pieces, sum)
	}
	return c
}

// above is the curve down to a lift at which a force begins, one of its breaks.
func (c Curve) above(lift float64) Curve {
	n := 0
	for n < len(c.pieces) && c.pieces[n].Lo >= lift {
		n++
	}
	return Curve{c.pieces[:n]}
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
	for i := range c.pieces {
		if p := &c.pieces[i]; lift <= p.Hi && lift >= p.Lo {
			f = max(f, p.at(lift))
		}
	}
	return f
}

// Peak gives the largest force [N] and its lift [mm].
func (c Curve) Peak() (f, lift float64) {
	for i := range c.pieces {
		if v, at := c.pieces[i].peak(); v > f {
			f, lift = v, at
		}
	}
	return f, lift
}

// Work is the area under the curve down to the seat [mJ].
func (c Curve) Work() float64 {
	var w float64
	for i := range c.pieces {
		w += c.pieces[i].work()
	}
	return w
}

// Breaks gives the lifts between the pieces, from the first contact to the seat [mm].
func (c Curve) Breaks() []float64 {
	if len(c.pieces) == 0 {
		return nil
	}
	out := []float64{c.pieces[0].Hi}
	for i := range c.pieces {
		out = append(out, c.pieces[i].Lo)
	}
	return out
}

// Points gives pairs of lift [mm] and force [N] in order of falling lift: both
// sides of every break point, the highest place of every piece, and about n places
// evenly between. The largest force among them is that of [Curve.Peak].
func (c Curve) Points(n int) [][2]float64 {
	n = min(max(n, 2), 100000)
	var out [][2]float64
	for i := range c.pieces {
		p := &c.pieces[i]
		k := max(1, int(math.Ceil(float64(n)*(p.Hi-p.Lo)/c.Stroke())))
		top, summit := p.peak()
		for i := range k + 1 {
			lift := max(p.Lo, p.Hi+(p.Lo-p.Hi)*float64(i)/float64(k))
			if i > 0 && summit < out[len(out)-1][0] && summit > lift {
				out = append(out, [2]float64{summit, top})
			}
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
	for i := range c.pieces {
		p := &c.pieces[i]
		visit(p.at(p.Hi))
		if _, at := p.peak(); at < p.Hi && at > p.Lo {
			visit(p.at(at))
		}
		visit(p.at(p.Lo))
	}
	if rising && high > low {
		count++ // the force ends high, at the seat
	}
	return count
}
