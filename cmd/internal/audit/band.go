package audit

import (
	"context"
	"encoding/binary"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"ramnest/force"
)

// How many assemblies are put together again. Own: a share of those of the run, so that
// the audit costs a share of its time, and never so few that a latch that is left out
// could hide.
const (
	redrawnShare, redrawnLeast, redrawnMost = 150, 12, 80
	drawnShare, drawnLeast, drawnMost       = 60, 40, 180
	// Of what looks wrong, so many times as many are drawn before anything is said.
	again = 16
)

// Deviations from which on a share looks wrong, and from which on it is said to be. The
// first costs a second look, once in some ten jobs; the second stops a run.
const (
	looksWrong = 2.5
	isWrong    = 5.5
)

// band puts assemblies together again: those of the run, draw by draw, and others.
func (f *finding) band(ctx context.Context, a force.Assembly, r force.Result) error {
	d, err := force.NewDoubt(a)
	if err != nil {
		return err
	}
	n := a.Draws
	if n == 0 {
		n = 10000
	}
	places := 0
	for _, g := range d.Designs {
		places += g.Count
	}
	pushes := make([]force.Push, places)
	f.redraw(d, pushes, min(max(n/redrawnShare, redrawnLeast), redrawnMost, n))
	f.worst(d, pushes, r, slack(a))
	o := newOther(a, d, pushes)
	most := min(max(n/drawnShare, drawnLeast), drawnMost)
	if err := o.draw(ctx, most); err != nil {
		return err
	}
	if wrong := o.against(r, n, looksWrong); len(wrong) == 0 {
		return nil
	}
	if err := o.draw(ctx, again*most); err != nil {
		return err
	}
	for _, text := range o.against(r, n, isWrong) {
		f.say("the band holds for other draws", "%s", text)
	}
	return nil
}

// redraw holds the first assemblies of the run against their own places.
func (f *finding) redraw(d *force.Doubt, pushes []force.Push, n int) {
	const law = "the peak of each draw lies between its largest latch and all at one lift"
	var s sum
	for i := range n {
		peak, jams := d.Redraw(pushes)
		if jams {
			continue
		}
		t := s.of(pushes)
		by := rounding
		if t.round {
			by = searchedOnce
		}
		switch {
		case peak < t.largest*(1-by):
			f.say(law, "draw %d has a peak of %.6g N, one latch alone %.6g N", i+1, peak, t.largest)
		case peak > t.stack*(1+by):
			f.say(law, "draw %d has a peak of %.6g N, all latches at one lift %.6g N", i+1, peak, t.stack)
		case peak < t.least*(1-by):
			f.say("the peak of each draw is the most that its places add up to", "draw %d has a peak of %.6g N, its places add up to %.6g N", i+1,
				peak, t.least)
		default:
			continue
		}
		return // one draw says it
	}
}

// worst puts everything at its bad end.
func (f *finding) worst(d *force.Doubt, pushes []force.Push, r force.Result, by float64) {
	d.Under(d.Common(highFriction, 1, 1, 2))
	k := 0
	for m, g := range d.Designs {
		for range g.Count {
			d.Place(m, force.Own{Size: g.Size + g.Worst, Outer: g.OuterWall, Inner: g.InnerWall}, &pushes[k])
			k++
		}
	}
	if r.WorstJams {
		return // a bound, which nobody is shown
	}
	var s sum
	const law = "the worst case is the sum of its places"
	switch t := s.of(pushes); {
	case r.Worst < t.least*(1-by):
		f.say(law, "worst case %.6g N, its places add up to %.6g N", r.Worst, t.least)
	case r.Worst > t.stack*(1+by):
		f.say(law, "worst case %.6g N, all latches at one lift %.6g N", r.Worst, t.stack)
	}
}

// An other draws other assemblies than the run, by other code: uniform numbers of
// another generator, normal ones by Box and Muller, sizes by the words of [force.Design].
type other struct {
	rng    *rand.Rand
	d      *force.Doubt
	places []force.Push
	sum    sum
	by     float64 // how far a peak may lie below the true one, share of it

	peaks               []float64 // infinite where a joint jams
	jams, loose, beyond int
}

func newOther(a force.Assembly, d *force.Doubt, places []force.Push) *other {
	var key [32]byte
	copy(key[:], "a second opinion on the band")
	binary.LittleEndian.PutUint64(key[24:], a.Seed^0x5bd1e995)
	return &other{rng: rand.New(rand.NewChaCha8(key)), d: d, places: places, by: slack(a)}
}

// normal is a standard normal draw, cut at three.
func (o *other) normal() float64 {
	r := math.Sqrt(-2 * math.Log(1-o.rng.Float64()))
	return max(-3, min(3, r*math.Cos(2*math.Pi*o.rng.Float64())))
}

// draw puts n more assemblies together.
func (o *other) draw(ctx context.Context, n int) error {
	half := math.Sqrt(0.5) / 2 // of a plus or minus: two deviations, half of the variance
	type member struct{ outer, inner float64 }
	owns := make([]force.Own, len(o.places))
	for i := range n {
		if i%64 == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		friction, lower, upper, model := o.rng.Float64(), o.rng.Float64(), o.rng.Float64(), o.normal()
		grownLower, grownUpper, flat := half*o.normal(), half*o.normal(), o.rng.Float64()
		k, loose := 0, false
		for _, g := range o.d.Designs {
			grown := member{grownUpper, grownLower}
			if g.OuterIsLower {
				grown = member{grownLower, grownUpper}
			}
			for range g.Count {
				own := force.Own{Size: g.Size + grown.outer*g.FromOuter + grown.inner*g.FromInner +
					half*math.Hypot(g.FromOuter, g.FromInner)*o.normal() - flat*g.Flatten}
				own.Outer = g.OuterWall * (grown.outer + half*o.normal())
				own.Inner = g.InnerWall * (grown.inner + half*o.normal())
				owns[k], loose = own, loose || own.Size <= max(0, g.Unheld-flat*g.Flatten)
				k++
			}
		}
		peak, jams, beyond := o.together(friction, lower, upper, model, owns)
		o.peaks = append(o.peaks, peak)
		o.jams, o.loose, o.beyond = o.jams+one(jams), o.loose+one(loose), o.beyond+one(beyond)
	}
	return nil
}

// together gives the peak of one assembly.
func (o *other) together(friction, lower, upper, model float64, owns []force.Own) (peak float64, jams, beyond bool) {
	o.d.Under(o.d.Common(friction, lower, upper, model))
	k := 0
	for m, g := range o.d.Designs {
		for range g.Count {
			p := &o.places[k]
			o.d.Place(m, owns[k], p)
			jams, beyond = jams || p.Jams, beyond || p.Overstrained
			k++
		}
	}
	if jams {
		return math.Inf(1), jams, beyond
	}
	return o.sum.of(o.places).least, jams, beyond
}

// against holds the shares that a result states against those of the other draws, n being
// the draws of the run, and says which lie more than so many deviations apart.
func (o *other) against(r force.Result, n int, deviations float64) []string {
	var out []string
	here := float64(len(o.peaks))
	// wrong compares two shares, each drawn; the square root of a share, taken as an
	// angle, has the same deviation whatever the share.
	wrong := func(stated, found, draws float64) bool {
		angle := func(p float64) float64 { return 2 * math.Asin(math.Sqrt(max(0, min(1, p)))) }
		return math.Abs(angle(stated)-angle(found)) > deviations*math.Sqrt(1/here+1/draws)
	}
	slices.Sort(o.peaks)
	for _, p := range []struct {
		name         string
		share, value float64
	}{{"P5", 0.05, r.P5}, {"P50", 0.5, r.P50}, {"P95", 0.95, r.P95}} {
		if p.value == 0 {
			continue
		}
		// Peaks are searched: that many lie below a figure a little lower, or a little higher.
		low, _ := slices.BinarySearch(o.peaks, p.value*(1-o.by))
		high, _ := slices.BinarySearch(o.peaks, p.value*(1+o.by))
		found := max(float64(low)/here, min(float64(high)/here, p.share))
		if wrong(p.share, found, float64(n)) {
			out = append(out, fmt.Sprintf("%s is %.6g N, and %.2f %% of %.0f other assemblies lie below it", p.name, p.value, 100*found, here))
		}
	}
	counted := float64(max(n, 10000))
	if r.Jammed > 0 {
		counted = max(float64(n), min(10000, 100/r.Jammed)) // the count may end early
	}
	for _, s := range []struct {
		what   string
		stated float64
		found  int
		draws  float64
	}{{"jam", r.Jammed, o.jams, counted}, {"are loose", r.Loose, o.loose, float64(n)}, {"are overstrained", r.Overstrained, o.beyond,
		float64(n)}} {
		if found := float64(s.found) / here; wrong(s.stated, found, s.draws) {
			out = append(out, fmt.Sprintf("%.4g %% are said to %s, and %.4g %% of %.0f other assemblies do", 100*s.stated, s.what, 100*found, here))
		}
	}
	return out
}

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}

// highFriction is the share of assemblies below the high end of the friction, two
// standard deviations above the middle [1].
var highFriction = (1 + math.Erf(math.Sqrt2)) / 2
