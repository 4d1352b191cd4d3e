package calibrate

import (
	"context"
	"math"
	"math/rand/v2"
)

const (
	proposals    = 2000 // of each round
	kept         = 1000 // equally likely points that stand for the posterior
	tailFreedom  = 5    // degrees of freedom of the proposal, whose tails are wider than the posterior's
	fewestPoints = 150  // effective points below which the sampling is not trusted
	seedLow      = 0x63616c6962726174
)

// sample draws equally likely points of the posterior by importance sampling: the
// proposal is a t distribution about the mode with the curvature there, then one about
// the mean and covariance of the first round. The seed is fixed, so that the same
// measurements give the same result. effective is the number of independent points
// that the weights are worth.
//
// Source: importance sampling, textbook (from memory); figures own.
func (m *Model) sample(ctx context.Context, data []datum) (points []theta, effective float64, err error) {
	centre, precision, err := m.mode(ctx, data)
	if err != nil {
		return nil, 0, err
	}
	n := len(centre)
	for damp := 0.0; ; damp = max(0.05, 2*damp) {
		a := clone(precision)
		for i := range n {
			a[i][i] += damp
		}
		if _, ok := cholesky(a); ok {
			precision = a
			break
		}
	}
	rng := rand.New(rand.NewPCG(seedLow, 1))
	var drawn []theta
	var weights []float64
	for round := range 3 {
		if drawn, weights, err = m.propose(ctx, rng, centre, precision, data); err != nil {
			return nil, 0, err
		}
		var sum, squares float64
		for _, w := range weights {
			sum, squares = sum+w, squares+w*w
		}
		effective = sum * sum / squares
		if round > 0 && effective > proposals/4 || round == 2 {
			break
		}
		centre, precision = spread(drawn, weights)
	}
	return resample(drawn, weights, kept), effective, nil
}

// propose draws from the t distribution and weighs each point by the posterior over
// the density with which it was drawn.
func (m *Model) propose(ctx context.Context, rng *rand.Rand, centre theta, precision [][]float64, data []datum) ([]theta, []float64,
	error) {
	n := len(centre)
	l, _ := cholesky(precision)
	drawn, logs := make([]theta, proposals), make([]float64, proposals)
	top := math.Inf(-1)
	z := make([]float64, n)
	for k := range proposals {
		if err := ctx.Err(); err != nil {
			return nil, nil, err
		}
		var chi, square float64
		for range tailFreedom {
			v := rng.NormFloat64()
			chi += v * v
		}
		shrink := math.Sqrt(tailFreedom / chi)
		for i := range z {
			z[i] = rng.NormFloat64() * shrink
			square += z[i] * z[i]
		}
		t := theta(backward(l, z))
		for i := range t {
			t[i] += centre[i]
		}
		drawn[k] = t
		logs[k] = m.logPosterior(t, data) + float64(tailFreedom+n)/2*math.Log(1+square/tailFreedom)
		top = max(top, logs[k])
	}
	for k := range logs {
		logs[k] = math.Exp(logs[k] - top)
	}
	return drawn, logs, nil
}

// spread gives weighted mean and precision of points.
func spread(points []theta, weights []float64) (theta, [][]float64) {
	n := len(points[0])
	mean := make(theta, n)
	var sum float64
	for k, t := range points {
		sum += weights[k]
		for i := range t {
			mean[i] += weights[k] * t[i]
		}
	}
	for i := range mean {
		mean[i] /= sum
	}
	cov := make([][]float64, n)
	for i := range cov {
		cov[i] = make([]float64, n)
		cov[i][i] = 1e-6
	}
	for k, t := range points {
		for i := range n {
			for j := range n {
				cov[i][j] += weights[k] / sum * (t[i] - mean[i]) * (t[j] - mean[j])
			}
		}
	}
	l, _ := cholesky(cov)
	precision := make([][]float64, n)
	for i := range n {
		unit := make([]float64, n)
		unit[i] = 1
		precision[i] = solve(l, unit)
	}
	for i := range n {
		for j := range i {
			v := (precision[i][j] + precision[j][i]) / 2
			precision[i][j], precision[j][i] = v, v
		}
	}
	return mean, precision
}

// resample turns weighted points into equally likely ones, at even steps of the sum of
// weights.
func resample(points []theta, weights []float64, n int) []theta {
	var sum float64
	for _, w := range weights {
		sum += w
	}
	out := make([]theta, 0, n)
	var upTo float64
	k := -1
	for i := range n {
		at := (float64(i) + 0.5) / float64(n) * sum
		for upTo < at && k+1 < len(points) {
			k++
			upTo += weights[k]
		}
		out = append(out, points[max(0, k)])
	}
	return out
}
