package force

// home gives the lift at which a latch has dropped, and below which it takes no force
// any more [mm], with everything as drawn and the least over the tolerances: 0 if it
// takes force to the seat.
//
//	end of the last piece of its force: crest - land, or where its flank lets go
//
// Friction at either end of its spread tells whether the return flank still asks for
// force; the size at either end of its tolerance, how long that flank is, and how deep a
// ball must go. The crest does not move with them, see [joint.prepare]. A latch that is
// loose at the small end does not count there: it has no drop. Source: own, from the
// break points of the force. Leaves out where along the axis each part has its half of
// the latch: whoever measures from a face knows how far away that is.
func (j *joint) home(b band) (nominal, least float64) {
	p, _ := j.nominalAt(b.mu.Value)
	nominal = p.end()
	least = nominal
	for _, mu := range []float64{b.mu.Low, b.mu.High} {
		c := causes{mu: mu, lower: 1, upper: 1}
		s := j.share(&c)
		for _, size := range []float64{j.size - j.worst, j.size, j.size + j.worst} {
			var r state
			j.at(&s, own{size: size}, &p, &r)
			if !r.loose {
				least = min(least, p.end())
			}
		}
	}
	return nominal, least
}

// end is the lift at which the last force of the profile ends [mm]: 0 at the seat, and
// of one that is empty, all of it lying below.
func (q *profile) end() float64 {
	if q.n == 0 {
		return 0
	}
	return q.p[q.n-1].Lo
}
