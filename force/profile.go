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

// profile is the force of one joint over its stroke: at most four pieces, in
// order of falling lift, so that a draw allocates nothing.
type profile struct {
	n   int
	p   [4]piece
	lip lip
}

func (q *profile) add(p piece) {
	if p.Hi > p.Lo {
		q.p[q.n] = p
		q.n++
	}
}

// clip cuts the profile at the seat.
func (q *profile) clip() {
	for q.n > 0 {
		p := &q.p[q.n-1]
		if p.Hi > 0 {
			if p.Lo < 0 {
				p.Lo = 0
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
		if lift > p.Hi || lift < p.Lo {
			continue
		}
		v := 0.0
		if p.lip {
			v = q.lip.force(lift)
		} else {
			v = p.at(lift)
		}
		if v > f {
			f = v
		}
	}
	return f
}

// ramp is a rising quadratic piece from 0 with a given slope at its start up to
// end. The slope is cut at twice the mean, so that the piece never falls.
func ramp(hi, lo, slope, end float64) piece {
	x := hi - lo
	slope = min(slope, 2*end/x)
	return piece{Hi: hi, Lo: lo, F1: slope, F2: (end - slope*x) / (x * x)}
}
