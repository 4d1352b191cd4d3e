package force

import (
	"context"
	"math"
)

// A joint jams where friction and flank stand so that no axial force moves it, or
// one above any that counts: from jamFactor times the load across the axis on, and
// for a pin from mostSwelling on. Such an assembly has no force. It is counted, and
// stands above every other in the order of the forces.

// JamsForP95 is the share of assemblies that may jam if there is to be a P95 [1]: by
// definition of P95, since those that jam lie above every force.
const JamsForP95 = 0.05

// The share that jams is counted over so many assemblies, so that one in a thousand
// shows, ten of them, give or take three; or until so many jam that their number is
// known to a tenth. Own.
const (
	jamDraws = 10000
	jamSure  = 100
)

// locksFrom is the friction from which on the nominal joint locks [1]; 0 if it does
// at none up to the highest that a material can have.
func (j *joint) locksFrom() float64 {
	jams := func(mu float64) bool {
		_, s := j.nominalAt(mu)
		return s.jam
	}
	if !jams(maxFriction) {
		return 0
	}
	free, locked := 0.0, maxFriction
	for range 40 {
		if mid := (free + locked) / 2; jams(mid) {
			locked = mid
		} else {
			free = mid
		}
	}
	return locked
}

// jamCount counts the assemblies that jam: by a joint of each design, and by any.
type jamCount struct {
	drawn, any int
	each       []int
}

func (c *jamCount) add(t *trial) {
	c.drawn++
	if !t.jam {
		return
	}
	c.any++
	for m, jams := range t.jams {
		if jams {
			c.each[m]++
		}
	}
}

// goOn draws more assemblies for the count alone, if any can jam: the force rises
// with friction and size, so none does where all at their bad end do not.
func (c *jamCount) goOn(ctx context.Context, t *trial, a Assembly, b band) error {
	if c.drawn >= jamDraws || c.any == 0 && !canJam(t, b) {
		return nil
	}
	s, means := newStreams(a.Seed, "more jams", a.Latches), make([]float64, 2*len(t.joints))
	s.begin(0)
	for c.drawn < jamDraws && c.any < jamSure {
		if c.drawn%256 == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		causes, _ := b.draw(s.common)
		t.draw(&causes, s.own, apartShare, means)
		c.add(t)
	}
	return nil
}

// join adds what another count found.
func (c *jamCount) join(o jamCount) {
	c.drawn, c.any = c.drawn+o.drawn, c.any+o.any
	for m, n := range o.each {
		c.each[m] += n
	}
}

// canJam says whether any draw may jam: friction and sizes as far at their bad end as
// draws reach.
func canJam(t *trial, b band) bool {
	worst := b.worst()
	worst.mu = b.highest()
	t.each(&worst, func(j *joint) own {
		far := 3 * (togetherShare + apartShare)
		return own{size: j.size + far*(j.fromOuter+j.fromInner)}
	})
	return t.jam
}

func (c *jamCount) share(n int) float64 { return float64(n) / float64(c.drawn) }

// known gives a quantile of sorted values of which some are without bound, or 0 if it
// is one of those.
func known(v float64) float64 {
	if math.IsInf(v, 1) || math.IsNaN(v) {
		return 0
	}
	return v
}
