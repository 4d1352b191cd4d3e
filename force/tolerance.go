package force

import (
	"math"
	"math/rand/v2"
	"slices"
)

const (
	defaultDraws = 10000
	// A stated plus or minus is taken as two standard deviations and drawn
	// normal, cut at three; half its variance is common to the assembly (the
	// process offset of that build), half is each dimension's own. Common
	// practice, no source.
	commonShare = 0.5
)

// tolerance draws assemblies and fills the band. Friction (plus or minus 25 %,
// uniform), modulus (15 %, uniform, one for each part), process offset and model
// error are common to an assembly; the size of each joint at each place is not.
// The model error is normal in the logarithm, two standard deviations being the
// ratio of the governing shell force to the published guide's; cut at three.
func (r *Result) tolerance(a Assembly, joints []joint, limits []limit, mu float64) {
	n := a.Draws
	if n == 0 {
		n = defaultDraws
	}
	rng := rand.New(rand.NewPCG(a.Seed, 0x72616d6e657374))
	places := 0
	for _, l := range a.Latches {
		places += len(l.At)
	}
	draws := make([]float64, n)
	bench := make([]profile, places)
	var loose, over, jammed int
	for i := range draws {
		c := causes{
			mu: mu * (1 + frictionSpread*(2*rng.Float64()-1)), lower: 1 + modulusSpread*(2*rng.Float64()-1), upper: 1 + modulusSpread*(2*rng.Float64()-1),
			model: 0.5 * normal(rng), process: 0.5 * math.Sqrt(commonShare) * normal(rng),
		}
		var anyLoose, anyOver, anyJam bool
		k := 0
		for m := range joints {
			j := &joints[m]
			for range a.Latches[m].At {
				own := 0.5 * math.Sqrt(1-commonShare) * normal(rng)
				p, s := j.at(c, j.size+j.tol*(c.process+own))
				bench[k] = p
				k++
				anyLoose, anyJam, anyOver = anyLoose || s.loose, anyJam || s.jam, anyOver || limits[m].over(s)
			}
		}
		draws[i] = peakOfSum(bench)
		loose, over, jammed = loose+one(anyLoose), over+one(anyOver), jammed+one(anyJam)
	}
	slices.Sort(draws)
	r.P5, r.P50, r.P95 = quantile(draws, 0.05), quantile(draws, 0.50), quantile(draws, 0.95)
	r.Design = r.P95
	// Half the distance of the order statistics one standard error away.
	half := math.Sqrt(0.05 * 0.95 / float64(n))
	r.P95StdErr = (quantile(draws, 0.95+half) - quantile(draws, 0.95-half)) / 2
	r.Loose, r.Overstrained, r.Jammed = float64(loose)/float64(n), float64(over)/float64(n), float64(jammed)/float64(n)

	worst := causes{mu: mu * (1 + frictionSpread), lower: 1 + modulusSpread, upper: 1 + modulusSpread, model: 1, process: 1}
	k := 0
	for m := range joints {
		p, _ := joints[m].at(worst, joints[m].size+joints[m].tol)
		for range a.Latches[m].At {
			bench[k] = p
			k++
		}
	}
	r.Worst = peakOfSum(bench)
}

// normal is a standard normal draw cut at three.
func normal(rng *rand.Rand) float64 { return max(-3, min(3, rng.NormFloat64())) }

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}

// quantile of sorted values, linear between order statistics.
func quantile(sorted []float64, q float64) float64 {
	x := max(0, min(1, q)) * float64(len(sorted)-1)
	i := int(x)
	if i+1 >= len(sorted) {
		return sorted[len(sorted)-1]
	}
	return sorted[i] + (x-float64(i))*(sorted[i+1]-sorted[i])
}

// peakOfSum is the largest sum of the profiles at one lift. Pieces are convex or
// straight, so the sum peaks at an end of one; an end where a piece only begins
// to rise from nothing cannot be it.
func peakOfSum(ps []profile) float64 {
	var peak float64
	for i := range ps {
		for k := range ps[i].n {
			p := &ps[i].p[k]
			for _, lift := range [2]float64{p.Hi, p.Lo} {
				if p.at(lift) <= 0 {
					continue
				}
				var sum float64
				for m := range ps {
					sum += ps[m].at(lift)
				}
				peak = max(peak, sum)
			}
		}
	}
	return peak
}
