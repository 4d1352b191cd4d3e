package force

// piece is a force over a stretch of lift, quadratic in the way x = Hi - lift:
// F = F0 + F1 x + F2 x^2 for lift from Hi down to Lo [mm, N]; or, if lip is set,
// the force of a ball on its lip there, see [lip].
type piece struct {
	Hi, Lo, F0, F1, F2 float64
	lip                bool
}

func (p *piece) at(lift float64) float64 {
	x := p.Hi - lift
	return p.F0 + x*(p.F1+x*p.F2)
}

func (p *piece) work() float64 {
	x := p.Hi - p.Lo
	return x * (p.F0 + x*(p.F1/2+x*p.F2/3))
}

// profile is the force of one joint over its stroke: at most five pieces, in
// order of falling lift, so that a draw allocates nothing.
//
// Where the depth of the joint is not known to better than drift, its largest force most,
// at the end of piece top, counts over so much more lift, and what follows comes so much later:
// that is the most that the joint asks for at a lift, wherever in that range it stands.
type profile struct {
	n     int
	p     [5]piece
	lip   lip
	top   int
	drift float64 // [mm]
	most  float64 // [N]
}

func (q *profile) add(p piece) {
	if p.Hi > p.Lo {
		q.p[q.n] = p
		q.n++
	}
}

// first is the lift of the first contact [mm]; 0 if there is none.
func (q *profile) first() float64 {
	if q.n == 0 {
		return 0
	}
	return q.p[0].Hi
}

// clip cuts the profile at the seat.
func (q *profile) clip() {
	for q.n > 0 {
		p := &q.p[q.n-1]
		if p.Hi > 0 {
			if p.Lo < 0 {
				p.Lo = 0
				if q.n-1 == q.top {
					q.most = q.of(p, 0) // it gets no further
				}
			}
			return
		}
		q.n--
	}
}

// at gives the force at a lift, the larger one where the force jumps.
func (q *profile) at(lift float64) float64 {
	var f float64
	for i := range q.n {
		p := &q.p[i]
		own := lift
		if i > q.top {
			own += q.drift
		}
		if own < p.Lo {
			if i == q.top && own >= p.Lo-q.drift {
				f = max(f, q.most)
			}
			continue
		}
		if own > p.Hi {
			break // the pieces fall
		}
		f = max(f, q.of(p, own))
	}
	return f
}

// addTo adds the force to the sums at nodes, lifts that rise; the larger one where
// the force jumps at a node.
func (q *profile) addTo(sums, nodes []float64) {
	if q.n == 0 {
		return
	}
	i := len(nodes) - 1
	for i >= 0 && nodes[i] > q.p[0].Hi {
		i--
	}
	added, at := 0.0, -1 // the force added last, and the node it was added at
	shift := 0.0
	for k := range q.n {
		p := &q.p[k]
		hi, lo, f0, f1, f2 := p.Hi-shift, p.Lo-shift, p.F0, p.F1, p.F2
		if at >= 0 && nodes[at] == hi {
			if v := q.of(p, p.Hi); v > added {
				sums[at] += v - added
			}
		}
		if p.lip {
			for ; i >= 0 && nodes[i] >= lo; i-- {
				added, at = q.lip.force(nodes[i]+shift), i
				sums[i] += added
			}
		} else {
			for ; i >= 0 && nodes[i] >= lo; i-- {
				x := hi - nodes[i]
				added, at = f0+x*(f1+x*f2), i
				sums[i] += added
			}
		}
		if k == q.top && q.drift > 0 {
			f := q.most
			if at >= 0 && nodes[at] == lo && f > added {
				sums[at] += f - added
			}
			shift = q.drift
			for ; i >= 0 && nodes[i] >= lo-shift; i-- {
				added, at = f, i
				sums[i] += f
			}
		}
	}
}

// of gives the force of one of its pieces.
func (q *profile) of(p *piece, lift float64) float64 {
	if p.lip {
		return q.lip.force(lift)
	}
	return p.at(lift)
}

// ramp is a rising quadratic piece from 0 with a given slope at its start up to
// end. The slope is cut at twice the mean, so that the piece never falls.
func ramp(hi, lo, slope, end float64) piece {
	x := hi - lo
	slope = min(slope, 2*end/x)
	return piece{Hi: hi, Lo: lo, F1: slope, F2: (end - slope*x) / (x * x)}
}
