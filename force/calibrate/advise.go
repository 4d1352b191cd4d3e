package calibrate

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

// A Goal says what a latch is to do, and what is at stake.
type Goal struct {
	Latch string
	// Least and Most bound the peak force of one joint [N]. Zeros: from the P5 to the
	// P95 that the job was computed for, which is what tooling and method carry.
	Least, Most float64
	Hold        float64 // least force to pull one joint apart [N]; 0: not asked

	Failure float64 // what it costs if the fit of the series turns out wrong, in any currency; 0: not stated
	Round   float64 // what another ladder costs, in the same
}

// An Option is a size that could be drawn.
type Option struct {
	Coupon  string // its number, empty for a size between the coupons
	Size    float64
	Band    Band    // of one joint
	Light   float64 // share of pairs below the least force, or pulled apart too easily [1]
	Heavy   float64 // share above the most [1]
	Over    float64 // share strained past what is permitted [1]
	Failing float64 // share of pairs that fail in one way or another [1]
}

// An Advice is what to do next.
type Advice struct {
	Goal    Goal // with its defaults filled in
	Options []Option
	Take    int    // index of the option with the smallest share of failing pairs
	Between Option // the best size of all, in hundredths of a millimetre

	Risk      float64 // share of failing pairs of the best size, as known now [1]
	RiskAfter float64 // expected after another ladder of the same coupons [1]
	Saves     float64 // what that is worth less the price of the round, in the currency of the goal
	Another   bool    // another round is worth its price
	Text      unit.Text
}

const (
	advisePoints = 250  // of the fit, for the risk
	adviseWorlds = 40   // that the next round is tried in
	grainSize    = 0.01 // of the sizes between the coupons [mm]
	mostGrains   = 120
)

// Advise weighs the coupons of a latch as sizes to draw, and another round.
//
// The share of failing pairs is averaged over the fit. What another round would bring
// is tried out: in each of a number of worlds drawn from the fit the same ladder is
// pressed again, the fit reweighted by what comes out, and the best size then taken.
// Source: expected value of sample information, textbook (from memory); figures own.
func (f *Fit) Advise(g Goal) (Advice, error) { return f.AdviseContext(context.Background(), g) }

// AdviseContext is [Fit.Advise] that can be stopped: then it gives the error of the
// context.
func (f *Fit) AdviseContext(ctx context.Context, g Goal) (Advice, error) {
	m := f.model
	i := slices.IndexFunc(m.latches, func(s subject) bool { return s.latch.ID == g.Latch })
	if i < 0 {
		return Advice{}, fault.Fault{Field: "goal.latch", Given: g.Latch, Problem: "was not fitted", Want: "a latch of the ladder"}
	}
	for _, v := range []struct {
		field string
		x     float64
	}{{"least", g.Least}, {"most", g.Most}, {"hold", g.Hold}, {"failure", g.Failure}, {"round", g.Round}} {
		if !(v.x >= 0 && v.x <= 1e12) {
			return Advice{}, fault.Fault{Field: "goal." + v.field, Given: fmt.Sprint(v.x), Problem: "is out of range", Want: "0 or more"}
		}
	}
	if err := f.window(&g, i); err != nil {
		return Advice{}, err
	}
	a := Advice{Goal: g}
	sizes, names := f.candidates(i)
	r := f.risks(g, i, sizes)
	for k := range sizes {
		if names[k] == "" {
			continue
		}
		if err := ctx.Err(); err != nil {
			return Advice{}, err
		}
		a.Options = append(a.Options, f.option(r, k, sizes[k], names[k]))
	}
	a.Take = choose(a.Options, g)
	var all []Option
	for k := range sizes {
		if err := ctx.Err(); err != nil {
			return Advice{}, err
		}
		all = append(all, f.option(r, k, sizes[k], names[k]))
	}
	a.Between = all[choose(all, g)]
	a.Risk = a.Between.Failing
	after, err := f.after(ctx, r, i, sizes, names)
	if err != nil {
		return Advice{}, err
	}
	a.RiskAfter = min(a.Risk, after)
	a.Saves = (a.Risk-a.RiskAfter)*g.Failure - g.Round
	a.Another = g.Failure > 0 && a.Saves > 0
	a.Text = a.words()
	return a, nil
}

// choose takes the option with the smallest share of failing pairs; of those that
// are as good but for evenly, the one whose force is nearest to the middle of the
// window, in proportion.
func choose(options []Option, g Goal) int {
	const evenly = 0.005
	least := math.Inf(1)
	for _, o := range options {
		least = min(least, o.Failing)
	}
	middle := math.Sqrt(g.Least * g.Most)
	best, off := 0, math.Inf(1)
	for k, o := range options {
		if o.Failing > least+evenly {
			continue
		}
		if d := math.Abs(math.Log(max(o.Band.Mid, 1e-9) / middle)); d < off-1e-12 {
			best, off = k, d
		}
	}
	return best
}

// window fills in the bounds of the force from what the job was computed for.
func (f *Fit) window(g *Goal, latch int) error {
	if g.Least > 0 && g.Most > 0 {
		if g.Least >= g.Most {
			return fault.Fault{Field: "goal.least", Given: fmt.Sprintf("%g N", g.Least), Problem: "must be below the most",
				Want: fmt.Sprintf("below %g N", g.Most)}
		}
		return nil
	}
	m := f.model
	a := m.input.Assembly
	a.Latches, a.Draws = []force.Latch{m.latches[latch].latches[inJob]}, 4000
	r, err := force.Analyse(a)
	if err != nil {
		return err
	}
	if g.Most == 0 && r.NoP95 {
		return fault.Fault{Field: "goal.most", Problem: "is missing, and the latch as drawn jams too often for a P95 to take in its place",
			Want: "the most force that may be [N]"}
	}
	if g.Least == 0 && r.P5 == 0 && r.Jammed > 0 {
		return fault.Fault{Field: "goal.least", Problem: "is missing, and nearly every latch as drawn jams",
			Want: "the least force that may be [N]"}
	}
	if g.Most == 0 {
		g.Most = max(r.P95, 1.05*g.Least)
	}
	if g.Least == 0 {
		g.Least = min(r.P5, 0.95*g.Most)
	}
	return nil
}

// candidates are the sizes of the coupons and those between them, with their numbers.
func (f *Fit) candidates(latch int) (sizes []float64, names []string) {
	m := f.model
	for k, c := range m.coupons {
		if m.couponLatch[k] == latch && !slices.Contains(sizes, c.Size) {
			sizes, names = append(sizes, c.Size), append(names, c.Name)
		}
	}
	lo, hi := slices.Min(sizes), slices.Max(sizes)
	step := max(grainSize, math.Ceil((hi-lo)/mostGrains/grainSize)*grainSize)
	for x := math.Ceil(lo/step) * step; x <= hi+1e-9; x += step {
		if !slices.ContainsFunc(sizes, func(s float64) bool { return math.Abs(s-x) < step/4 }) {
			sizes, names = append(sizes, math.Round(x*1e4)/1e4), append(names, "")
		}
	}
	return sizes, names
}

// risk holds the shares of failing pairs of every size in every point.
type risk struct {
	latch              string
	points             []theta
	light, heavy, over [][]float64 // by size, then by point
	failing            [][]float64
}

// risks computes them. A pair fails below the least force or the least hold, above the
// most, or strained past what is permitted; its force scatters with its size.
func (f *Fit) risks(g Goal, latch int, sizes []float64) *risk {
	m := f.model
	s := &m.latches[latch]
	r := &risk{latch: s.latch.ID, points: make([]theta, 0, advisePoints)}
	for k := range advisePoints {
		r.points = append(r.points, f.points[(2*k+1)*len(f.points)/(2*advisePoints)])
	}
	least := g.Least
	if g.Hold > 0 && !s.curves[inJob].locks && s.curves[inJob].separation > 0 {
		least = max(least, g.Hold/s.curves[inJob].separation)
	}
	for _, x := range sizes {
		light, heavy := make([]float64, len(r.points)), make([]float64, len(r.points))
		over, failing := make([]float64, len(r.points)), make([]float64, len(r.points))
		for k, t := range r.points {
			grip := m.gripAt(t, latch, inJob)
			p, sd := m.expect(&grip, s, x, m.offsetOf(t, latch), scatterOf(t), 1, false)
			sd = max(sd, 1e-9)
			light[k], heavy[k] = normalCDF((least-p)/sd), normalCDF((p-g.Most)/sd)
			if s.curves[inJob].strain > 0 && s.curves[inJob].permitted > 0 {
				own := max(1e-9, s.own()*scatterOf(t))
				over[k] = normalCDF((x + m.offsetOf(t, latch) - s.curves[inJob].permitted/s.curves[inJob].strain) / own)
			}
			failing[k] = min(1, light[k]+max(heavy[k], over[k]))
		}
		r.light, r.heavy, r.over, r.failing = append(r.light, light), append(r.heavy, heavy), append(r.over, over), append(r.failing, failing)
	}
	return r
}

// mean of a figure over the points, weighted if weights are given.
func mean(v, weights []float64) float64 {
	var sum, all float64
	for k, x := range v {
		w := 1.0
		if weights != nil {
			w = weights[k]
		}
		sum, all = sum+w*x, all+w
	}
	return sum / all
}

// best is the size with the smallest share of failing pairs.
func (r *risk) best(weights []float64) int {
	at, least := 0, math.Inf(1)
	for k := range r.failing {
		if v := mean(r.failing[k], weights); v < least-1e-12 {
			at, least = k, v
		}
	}
	return at
}

func (f *Fit) option(r *risk, k int, size float64, name string) Option {
	o := Option{Coupon: name, Size: size, Light: mean(r.light[k], nil), Heavy: mean(r.heavy[k], nil), Over: mean(r.over[k], nil),
		Failing: mean(r.failing[k], nil)}
	o.Band, _ = f.Band(r.latch, size, 1)
	return o
}

// after is the risk that is left, on average, once the ladder is pressed again.
func (f *Fit) after(ctx context.Context, r *risk, latch int, sizes []float64, names []string) (float64, error) {
	m := f.model
	s := &m.latches[latch]
	type forces struct{ p, sd []float64 } // of one coupon, by point
	var ladder []forces
	for k, name := range names {
		if name == "" {
			continue
		}
		var c forces
		for _, t := range r.points {
			g := m.gripAt(t, latch, onCoupon)
			p, sd := m.expect(&g, s, sizes[k], m.offsetOf(t, latch), scatterOf(t), 1, true)
			c.p, c.sd = append(c.p, p), append(c.sd, sd)
		}
		ladder = append(ladder, c)
	}
	rng := rand.New(rand.NewPCG(seedLow, 2))
	var left float64
	weights := make([]float64, len(r.points))
	for w := range adviseWorlds {
		if err := ctx.Err(); err != nil {
			return 0, err
		}
		world := (2*w + 1) * len(r.points) / (2 * adviseWorlds)
		clear(weights)
		for _, c := range ladder {
			measured := c.p[world] + c.sd[world]*rng.NormFloat64()
			for k := range weights {
				z := (measured - c.p[k]) / c.sd[k]
				weights[k] -= z*z/2 + math.Log(c.sd[k])
			}
		}
		top := slices.Max(weights)
		for k := range weights {
			weights[k] = math.Exp(weights[k] - top)
		}
		left += mean(r.failing[r.best(weights)], weights) / adviseWorlds
	}
	return left, nil
}

// words puts the advice into a sentence or two.
func (a Advice) words() unit.Text {
	take := a.Options[a.Take]
	text := unit.Textf("take coupon %v, %v as drawn: %.0f %% of pairs fail", take.Coupon, drawn(take.Size), 100*take.Failing)
	if why := largestOf(take); why != "" {
		text = text.Plus(", most of them " + why)
	}
	if a.Between.Coupon == "" && a.Between.Failing < take.Failing-0.01 {
		text = text.Plus(unit.Textf("; better draw %v: %.0f %%", drawn(a.Between.Size), 100*a.Between.Failing))
	}
	if before, after := math.Round(100*a.Risk), math.Round(100*a.RiskAfter); before > after {
		text = text.Plus(fmt.Sprintf(". Another round would bring that from %.0f to about %.0f %%", before, after))
	} else {
		text = text.Plus(". Another round would hardly change that")
	}
	switch {
	case a.Goal.Failure == 0:
		text = text.Plus("; what a wrong fit costs is not stated, so its price cannot be weighed")
	case a.Another:
		text = text.Plus(fmt.Sprintf("; it is worth its price, by %.4g", a.Saves))
	default:
		text = text.Plus(fmt.Sprintf("; it costs %.4g more than it is worth", -a.Saves))
	}
	return text.Plus(".")
}

// drawn is a size as a drawing has it.
func drawn(v float64) unit.Figure { return unit.Length.Of(v).To(unit.Grid) }

// largestOf names the way in which most pairs fail.
func largestOf(o Option) string {
	switch most := max(o.Light, o.Heavy, o.Over); {
	case most < 0.005:
		return ""
	case most == o.Over:
		return "strained past what is permitted"
	case most == o.Heavy:
		return "too hard to push"
	}
	return "too loose"
}
