package force

import (
	"math"
	"math/rand/v2"
	"ramnest/force/unit"
	"slices"
	"strings"
)

// A Hold is what all joints of one latch hold together in a straight pull along the
// press axis, right after pressing and at the end of life. Peel, tilt and side loads open
// a joint at far less and are left out.
//
//	now, one joint:   min(W', R)          W': force to pull it apart, R: least strength
//	all n together:   max (n - i) w_i     w_i: rising, i = 0 to n - 1
//	end of life:      K P5                K: product of the factors
//
// All n share the pull evenly, and those that have let go carry nothing: the strength of
// a bundle. Over draws of the same friction, moduli, sizes and model error as the force,
// and a strength of its own scatter. Jammed assemblies are no joint and do not count.
type Hold struct {
	P5, P50, P95 float64 // [N]; 0 if too many jam, see Result.HoldLatch
	Breaks       float64 // share of assemblies in which a strength limits the weakest joint [1]
	Strength     float64 // least strength of one joint at nominal size and strength [N]
	Limit        string  // which that is

	// At the end of life; nil and 0 without a Service. LifeKnown is false if a factor is
	// not known: then there is no figure.
	Factors   []LifeFactor
	Share     float64 // product of the factors, K [1]
	Life      float64 // K P5 [N]
	LifeKnown bool
}

// holdDraws of the draws of the force are looked at: a P5 of them is good to a few per
// cent, and they cost little. Own.
const holdDraws = 1024

// Scatter of a strength: coefficient of variation within one spool, extruded parts.
// Source: 42 and 45 runs of tensile specimens (read); taken for every process.
const (
	scatterAcross = 0.12  // across the layers [1]
	scatterWithin = 0.036 // in the layers, and of what has none [1]
)

// holder gathers the hold of every design over the draws.
type holder struct {
	seed    uint64
	latches []Latch
	rng     *rand.Rand
	joints  []joint
	bounds  [][]strength
	scatter [2]float64 // of the lower and the upper part
	drawn   [2]float64 // factor on the strength of each in this draw
	places  [][]float64
	holds   [][]float64
	breaks  []int
	weakest []float64 // of the places of a design in this draw [N]
	broke   []bool    // whether a strength limits that
	profile profile   // of a joint at the size that is sure to hold
}

func newHolder(a Assembly, joints []joint, counts []int) *holder {
	lower, _ := a.Shop.Resolve(a.Lower)
	upper, _ := a.Shop.Resolve(a.Upper)
	h := &holder{seed: a.Seed, latches: a.Latches, rng: rand.New(rand.NewPCG(a.Seed, 0x686f6c64)), joints: joints,
		bounds: make([][]strength, len(joints)), places: make([][]float64, len(joints)),
		holds: make([][]float64, len(joints)), breaks: make([]int, len(joints)), weakest: make([]float64, len(joints)), broke: make([]bool,
			len(joints))}
	for i, m := range []Material{lower, upper} {
		h.scatter[i] = scatterWithin
		if m.Layered() {
			h.scatter[i] = scatterAcross
		}
	}
	for i, l := range a.Latches {
		j := &joints[i]
		outer, inner := lower, upper
		if !j.outerIsLower {
			outer, inner = upper, lower
		}
		h.bounds[i] = leastOf(strengths(l.Joint(), j, outer, inner))
		h.places[i] = make([]float64, 0, counts[i])
		h.holds[i] = make([]float64, 0, holdDraws)
	}
	h.next()
	return h
}

// leastOf keeps the least bound of each member, of those that grow with the size and of
// those that do not: none of the others ever decides.
func leastOf(all []strength) []strength {
	var out []strength
	for _, s := range all {
		if i := slices.IndexFunc(out, func(o strength) bool { return o.outer == s.outer && o.grows == s.grows }); i < 0 {
			out = append(out, s)
		} else if s.force < out[i].force {
			out[i] = s
		}
	}
	return out
}

// leastStrength is the bound that decides at nominal size and strength.
func leastStrength(all []strength) strength {
	least := all[0]
	for _, s := range all[1:] {
		if s.force < least.force {
			least = s
		}
	}
	return least
}

// next draws the strengths of an assembly and forgets the one before.
func (h *holder) next() {
	for i, s := range h.scatter {
		h.drawn[i] = 1 + s*normal(h.rng)
	}
	for m := range h.places {
		h.places[m], h.weakest[m], h.broke[m] = h.places[m][:0], math.Inf(1), false
	}
}

// run draws the first assemblies of the force once more, for what they hold.
func (h *holder) run(t *trial, b band, n int) {
	s := newStreams(h.seed, "tolerance", h.latches)
	means := make([]float64, 2*len(h.joints))
	t.hold = h
	for i := range n {
		if i%blockDraws == 0 {
			s.begin(i / blockDraws)
		}
		c, _ := b.draw(s.common)
		t.draw(&c, s.own, apartShare, means)
		h.done(t.jam)
	}
	t.hold = nil
}

// see takes down one place of design m.
func (h *holder) see(m int, j *joint, mu float64, s *state, p *profile) {
	if s.loose || s.jam {
		h.places[m], h.weakest[m], h.broke[m] = append(h.places[m], 0), 0, false
		return
	}
	limit := math.Inf(1)
	for _, b := range h.bounds[m] {
		v := b.force
		if b.outer == j.outerIsLower {
			v *= h.drawn[0]
		} else {
			v *= h.drawn[1]
		}
		if b.grows {
			v *= s.move / (j.size * j.half)
		}
		limit = min(limit, v)
	}
	f, locked := j.pull(mu, s, p)
	breaks := locked || f > limit
	if breaks {
		f = limit
	}
	if f < h.weakest[m] {
		h.weakest[m], h.broke[m] = f, breaks
	}
	h.places[m] = append(h.places[m], f)
}

// pull is [joint.separation] in fewer steps for a ball, whose summit it looks for at
// sixteen places: never above it, and below by less than a per cent.
func (j *joint) pull(mu float64, s *state, p *profile) (f float64, locked bool) {
	if j.path != ball {
		return j.separation(mu, *s, p)
	}
	l := p.lip
	l.zero, l.lever = 0, -l.lever
	hi, lo := l.contact(), l.release()
	if mu*hi >= l.half { // tan phi of 1/mu or more
		return 0, true
	}
	for i := range 16 {
		f = max(f, l.force(hi+(lo-hi)*float64(i)/16))
	}
	return f, false
}

// done ends a draw.
func (h *holder) done(jam bool) {
	for m := range h.places {
		if !jam {
			h.holds[m] = append(h.holds[m], bundle(h.places[m]))
			h.breaks[m] += one(h.broke[m])
		}
	}
	h.next()
}

// bundle is what joints hold together that share a pull evenly; it sorts them.
func bundle(each []float64) float64 {
	slices.Sort(each)
	var most float64
	for i, f := range each {
		most = max(most, float64(len(each)-i)*f)
	}
	return most
}

// holds puts the hold of every latch into the result.
func (r *Result) holds(a Assembly, h *holder) {
	for m := range r.Latches {
		q := &r.Latches[m].Hold
		if len(h.holds[m]) == 0 {
			continue
		}
		slices.Sort(h.holds[m])
		q.P5, q.P50, q.P95 = percentiles(h.holds[m])
		q.Breaks = float64(h.breaks[m]) / float64(len(h.holds[m]))
		least := leastStrength(h.bounds[m])
		q.Strength, q.Limit = least.force, least.what
		if r.HoldLatch < 0 || q.P5 > r.Latches[r.HoldLatch].Hold.P5 {
			r.HoldLatch = m
		}
		if a.Service == nil {
			continue
		}
		if q.Share, q.LifeKnown = LifeShare(q.Factors); !q.LifeKnown {
			continue
		}
		q.Life = q.Share * q.P5
		if r.HoldLifeLatch < 0 || q.Life > r.Latches[r.HoldLifeLatch].Hold.Life {
			r.HoldLifeLatch = m
		}
	}
}

// warnHold says whether the step holds the pull that is wanted of it.
func (r *Result) warnHold(add func(int, string, ...any)) {
	if r.HoldWanted == 0 {
		return
	}
	if r.HoldLifeLatch < 0 {
		var why []string
		for _, l := range r.Latches {
			for _, f := range l.Hold.Factors {
				if !f.Known {
					why = append(why, l.ID+": "+f.Name+": "+f.Why)
				}
			}
		}
		if len(why) == 0 {
			why = []string{"too many assemblies jam"}
		}
		add(warnHoldUnknown, "that %v are held at the end of life cannot be shown: %s", unit.Force.Of(r.HoldWanted).To(4),
			strings.Join(why, "; "))
		return
	}
	if l := r.Latches[r.HoldLifeLatch]; l.Hold.Life < r.HoldWanted {
		held, wanted := unit.Apart(4, unit.Force, l.Hold.Life, r.HoldWanted)
		add(warnHoldShort, "%s holds %v at the end of life (P5, straight pull), below the %v that are wanted", l.ID, held, wanted)
	}
}
