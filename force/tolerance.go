package force

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
)

const (
	defaultDraws = 10000
	// A stated plus or minus is taken as two standard deviations and drawn normal, cut
	// at three; half its variance is common to the part (its surfaces grew or shrank
	// together in that build), half is each dimension's own: the root of a half, of
	// half the tolerance. Common practice, no source.
	togetherShare = math.Sqrt2 / 4 // [1]
	apartShare    = math.Sqrt2 / 4 // [1]
)

// band is the friction, log-normal, and the half widths of the moduli, drawn evenly.
type band struct {
	mu           Friction
	lower, upper float64 // plus or minus, share [1]
	rough        bool    // what is pressed loses interference to its asperities, within a range
}

// bandOf is that of two parts.
func bandOf(lower, upper Material) band {
	return band{mu: pairFriction(lower, upper), lower: lower.ModulusSpread.Value, upper: upper.ModulusSpread.Value}
}

// The names of the common inputs, in the order of the draws.
var commonInputs = [...]string{"friction", "modulus of lower", "modulus of upper", "force model", "surfaces of lower", "surfaces of upper",
	"flattened asperities"}

// tolerance draws assemblies and fills the band. Friction is log-normal, see [Friction];
// modulus even over its spread; the growth of each part's surfaces, which makes pins and
// walls thick and bores narrow, and the model error are normal and common to an
// assembly; sizes and walls of each joint at each place have their own besides.
// An assembly with a joint that jams has no force and counts as above all others.
// The model error is in the logarithm, with another half for more than for less:
// down, two standard deviations are the ratio of the governing model to another
// one; up, what the governing model itself may miss.
func (r *Result) tolerance(ctx context.Context, a Assembly, joints []joint, counts []int, b band) error {
	n := a.Draws
	if n == 0 {
		n = defaultDraws
	}
	d := draws{assembly: a, joints: joints, counts: counts, band: b, peaks: make([]float64, n), works: make([]float64, n)}
	h := newHolder(a, joints, counts)
	var holds sync.WaitGroup
	holds.Go(func() { h.run(newTrial(joints, counts), b, min(n, holdDraws)) })
	err := d.run(ctx)
	holds.Wait()
	if err != nil {
		return err
	}
	t := newTrial(joints, counts)
	if err := d.jams.goOn(ctx, t, a, b); err != nil {
		return err
	}
	r.Jammed = d.jams.share(d.jams.any)
	for i := range joints {
		r.Latches[i].Jammed = d.jams.share(d.jams.each[i])
	}
	r.Spread = d.spread.shares()
	peaks, works := d.peaks, d.works
	slices.Sort(peaks)
	slices.Sort(works)
	p5, p50, p95 := percentiles(peaks)
	r.Loose, r.Overstrained = float64(d.loose)/float64(n), float64(d.over)/float64(n)
	r.P5, r.P50 = known(p5), known(p50)
	if r.NoP95 = r.Locks || r.Jammed > JamsForP95 || known(p95) < p95; !r.NoP95 {
		_, _, work := percentiles(works)
		r.P95, r.Design, r.P95StdErr, r.WorkP95 = p95, p95, known(p95Error(peaks)), known(work)
	}

	if !r.NoP95 {
		r.holds(a, h)
	}

	// The plain worst case: everything at its bad end at once.
	c := b.worst()
	t.each(&c, func(j *joint) own {
		return own{size: j.size + j.worst, outer: j.outer.wall, inner: j.inner.wall}
	})
	r.Worst, r.WorstJams = t.peak(), t.jam
	return nil
}

// worst is all that an assembly has in common at the end where the force is most, each
// at its stated end.
func (b band) worst() causes {
	return causes{mu: b.mu.High, lower: 1 + b.lower, upper: 1 + b.upper, model: 1}
}

// highest is the highest friction that is drawn [1].
func (b band) highest() float64 { return b.mu.At(3) }

// draw draws what one assembly has in common, and gives the inputs in the order of
// commonInputs.
func (b band) draw(rng *rand.Rand) (causes, [len(commonInputs)]float64) {
	var x [len(commonInputs)]float64
	x[0], x[1], x[2] = normal(rng), 2*rng.Float64()-1, 2*rng.Float64()-1
	x[3], x[4], x[5] = normal(rng), normal(rng), normal(rng)
	c := causes{mu: b.mu.At(x[0]), lower: 1 + b.lower*x[1], upper: 1 + b.upper*x[2], model: 0.5 * x[3],
		processLower: togetherShare * x[4], processUpper: togetherShare * x[5]}
	if b.rough {
		c.flatten = rng.Float64()
		x[6] = 6*c.flatten - 3
	}
	return c, x
}

// normal is a standard normal draw cut at three.
func normal(rng *rand.Rand) float64 {
	z := rng.NormFloat64()
	if z > 3 {
		return 3
	}
	if z < -3 {
		return -3
	}
	return z
}

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}

// percentiles gives P5, P50 and P95 of sorted values.
func percentiles(sorted []float64) (p5, p50, p95 float64) {
	return quantile(sorted, 0.05), quantile(sorted, 0.50), quantile(sorted, 0.95)
}

// p95Error is the standard error of the P95 of sorted values: half the distance of
// the order statistics one standard error of their rank away, sqrt(p (1 - p)/n).
func p95Error(sorted []float64) float64 {
	half := math.Sqrt(0.05 * 0.95 / float64(len(sorted)))
	return (quantile(sorted, 0.95+half) - quantile(sorted, 0.95-half)) / 2
}

// quantile of sorted values, linear between order statistics.
func quantile(sorted []float64, q float64) float64 {
	x := max(0, min(1, q)) * float64(len(sorted)-1)
	i := int(x)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	if math.IsInf(sorted[i+1], 1) {
		return sorted[i+1]
	}
	return sorted[i] + (x-float64(i))*(sorted[i+1]-sorted[i])
}
