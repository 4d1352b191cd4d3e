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

func (q *profile) force(i int, lift float64) float64 {
	if q.p[i].lip {
		return q.lip.force(lift)
	}
	return q.p[i].at(lift)
}

// at gives the force at a lift, the larger one where the force jumps.
func (q *profile) at(lift float64) float64 {
	var f float64
	for i := range q.n {
		if p := &q.p[i]; lift <= p.Hi && lift >= p.Lo {
			f = max(f, q.force(i, lift))
		}
	}
	return f
}

// ramp is a rising quadratic piece from 0 with a given slope at its start, or
// half as steep again as the mean where that is steeper, up to end. It never
// falls on the way.
func ramp(hi, lo, slope, end float64) piece {
	x := hi - lo
	slope = min(slope, 2*end/x)
	return piece{Hi: hi, Lo: lo, F1: slope, F2: (end - slope*x) / (x * x)}
}
