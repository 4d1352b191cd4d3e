package audit

import (
	"slices"

	"ramnest/force"
)

// A sum adds the forces of one assembly in a way of its own: at every lift at which the
// force of any place ends or jumps, from either side of it, and at lifts spread evenly
// over the stroke. It shares no lift and no rule with the code that it doubts. Its bench
// is used again and again.
type sum struct {
	pieces []force.Stretch
	ends   []int // where the pieces of each place end
	lifts  []float64
}

const (
	evenly = 12 // lifts over the stroke; a sum may have a summit between two breaks
	finely = 48 // where a ball stands on its lip, the summit of which is inside
)

// A total is what a sum came to.
type total struct {
	least   float64 // no peak of the sum is lower than this [N]
	largest float64 // of one place alone [N]
	stack   float64 // if all peaked at one lift [N]
	round   bool    // there are balls: largest and stack are searched
}

// of adds the places of one assembly.
func (s *sum) of(places []force.Push) total {
	s.pieces, s.ends, s.lifts = s.pieces[:0], s.ends[:0], s.lifts[:0]
	var t total
	var top, hi, lo float64
	for i := range places {
		var alone float64
		for p := range places[i].Stretches() {
			if p.Hi <= 0 {
				break // it would begin below the seat
			}
			p.Lo = max(p.Lo, 0)
			s.pieces = append(s.pieces, p)
			top = max(top, p.Hi)
			if first := p.At(p.Hi); first > 0 {
				s.lifts, alone = append(s.lifts, p.Hi), max(alone, first)
			}
			if last := p.At(p.Lo); last > 0 {
				s.lifts, alone = append(s.lifts, p.Lo), max(alone, last)
			}
			if p.Round {
				alone = max(alone, summit(p))
				if !t.round {
					t.round, hi, lo = true, p.Hi, p.Lo
				}
				hi, lo = max(hi, p.Hi), min(lo, p.Lo)
			}
		}
		s.ends = append(s.ends, len(s.pieces))
		t.largest, t.stack = max(t.largest, alone), t.stack+alone
	}
	for k := range evenly {
		s.lifts = append(s.lifts, top*float64(k)/evenly)
	}
	if t.round {
		for k := range finely + 1 {
			s.lifts = append(s.lifts, lo+(hi-lo)*float64(k)/finely)
		}
	}
	slices.Sort(s.lifts)
	for _, lift := range slices.Compact(s.lifts) { // only what is one lift to the last bit
		above, below := s.sides(lift)
		t.least = max(t.least, above, below)
	}
	return t
}

// sides gives the sum just above a lift and just below it. Where two pieces of one place
// overlap by rounding, the larger counts.
func (s *sum) sides(lift float64) (above, below float64) {
	i := 0
	for _, end := range s.ends {
		var over, under float64
		for ; i < end; i++ {
			p := &s.pieces[i]
			if lift > p.Hi || lift < p.Lo {
				continue
			}
			f := p.At(lift)
			if lift < p.Hi {
				over = max(over, f)
			}
			if lift > p.Lo || lift == 0 {
				under = max(under, f)
			}
		}
		above, below = above+over, below+under
	}
	return above, below
}

// summit of a ball on its lip, by even steps and one parabola.
func summit(p force.Stretch) float64 {
	const steps = 16
	var v [steps + 1]float64
	best := 0
	for k := range v {
		v[k] = p.At(p.Lo + (p.Hi-p.Lo)*float64(k)/steps)
		if v[k] > v[best] {
			best = k
		}
	}
	if best == 0 || best == steps {
		return v[best]
	}
	d, bend := v[best+1]-v[best-1], v[best+1]-2*v[best]+v[best-1]
	if bend >= 0 {
		return v[best]
	}
	return v[best] - d*d/(8*bend)
}
