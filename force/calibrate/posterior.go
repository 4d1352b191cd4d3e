package calibrate

import (
	"context"
	"math"
)

// theta is a point of the parameters in standard deviations of the prior: ln
// friction, ln stiffness, ln scatter, then the offset of each latch.
type theta []float64

const (
	atFriction = iota
	atStiffness
	atScatter
	atOffset // of the first latch
)

// meaning of a point.
func (m *Model) frictionOf(t theta) float64 {
	return m.friction * math.Exp(m.frictionSpread*t[atFriction])
}
func (m *Model) stiffnessOf(t theta) float64 { return math.Exp(m.stiffnessSpread * t[atStiffness]) }
func scatterOf(t theta) float64              { return math.Exp(scatterSpread * t[atScatter]) }
func (m *Model) offsetOf(t theta, latch int) float64 {
	return m.latches[latch].offsetSpread() * t[atOffset+latch]
}

// Of the mixture that lets one pair be wrong without spoiling the rest (own).
const (
	outlierShare = 0.03 // of pairs, expected before anything is known
	outlierWide  = 8.0  // how much wider an outlier scatters
)

// datum is a measurement with its place in the model.
type datum struct {
	Measurement
	coupon, latch int
	on            form
	size          float64
	places        float64
}

// expect gives the force of a pair as drawn [N] and its standard deviation from pair
// to pair: that of the size, and with gauge that of the measurement.
func (m *Model) expect(g *grip, s *subject, size, offset, scatter, places float64, gauge bool) (p, sd float64) {
	p, slope := g.peak(size + offset)
	p *= places
	v := slope * s.own() * scatter * math.Sqrt(places)
	sd = v * v
	if gauge {
		v = m.gauge * p * scatter
		sd += v*v + floorForce*floorForce
	}
	return p, math.Sqrt(sd)
}

// logPosterior is ln of prior times likelihood, up to a constant.
//
//	-|z|^2/2 + sum ln [ (1 - q) N(F; P, s) + q N(F; P, 8 s) ],  q = 0.03
//
// F: measured, P: computed force, s: standard deviation of a pair, see expect. A pair
// that did not go together at F counts with the probability that it takes more.
// Source: Bayes' rule with a normal mixture for outliers (own choice of figures).
func (m *Model) logPosterior(t theta, data []datum) float64 {
	var sum float64
	for _, z := range t {
		sum -= z * z / 2
	}
	scatter := scatterOf(t)
	mu, e := math.Log(m.friction)+m.frictionSpread*t[atFriction], m.stiffnessSpread*t[atStiffness]
	var grips [mostLatches][2]grip
	for i := range m.latches {
		c := &m.latches[i].curves
		grips[i][inJob] = c[inJob].at(mu, e)
		grips[i][onCoupon] = grips[i][inJob]
		if c[onCoupon] != c[inJob] {
			grips[i][onCoupon] = c[onCoupon].at(mu, e)
		}
	}
	for i := range data {
		d := &data[i]
		p, sd := m.expect(&grips[d.latch][d.on], &m.latches[d.latch], d.size, m.offsetOf(t, d.latch), scatter, d.places, true)
		good, bad := likelihood(d, p, sd)
		sum += math.Log(good + bad)
	}
	return sum
}

// likelihood of a measurement as a good pair and as an outlier.
func likelihood(d *datum, p, sd float64) (good, bad float64) {
	if d.NoGo {
		return (1-outlierShare)*normalCDF((p-d.Force)/sd) + 1e-300, outlierShare * 0.5
	}
	z := (d.Force - p) / sd
	w := z / outlierWide
	return (1 - outlierShare) / sd * math.Exp(-z*z/2), outlierShare/(outlierWide*sd)*math.Exp(-w*w/2) + 1e-300
}

func normalCDF(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// mode climbs to the top of the posterior by damped Newton steps with numeric
// derivatives, and gives the precision there: minus the second derivatives.
func (m *Model) mode(ctx context.Context, data []datum) (theta, [][]float64, error) {
	n := atOffset + len(m.latches)
	t := make(theta, n)
	f := m.logPosterior(t, data)
	damping := 1.0
	var h [][]float64
	for range 40 {
		g, second, err := m.derivatives(ctx, t, data, f)
		if err != nil {
			return nil, nil, err
		}
		h = second
		moved := false
		for range 8 {
			a := clone(h)
			for i := range n {
				a[i][i] += damping
			}
			l, ok := cholesky(a)
			if !ok {
				damping = max(1, 4*damping)
				continue
			}
			step := solve(l, g)
			next := make(theta, n)
			for i := range n {
				next[i] = t[i] + max(-1, min(1, step[i]))
			}
			if v := m.logPosterior(next, data); v > f {
				moved = v-f > 1e-7
				t, f, damping = next, v, damping/4
				break
			}
			damping *= 4
		}
		if !moved {
			break
		}
	}
	_, h, err := m.derivatives(ctx, t, data, f)
	return t, h, err
}

// derivatives gives gradient and minus the second derivatives, by differences.
func (m *Model) derivatives(ctx context.Context, t theta, data []datum, f float64) (g []float64, h [][]float64, err error) {
	n := len(t)
	const d = 0.02
	up, down := make([]float64, n), make([]float64, n)
	at := func(i int, x float64, k int, y float64) float64 {
		s := append(theta(nil), t...)
		s[i] += x
		s[k] += y
		return m.logPosterior(s, data)
	}
	g, h = make([]float64, n), make([][]float64, n)
	for i := range n {
		up[i], down[i] = at(i, d, i, 0), at(i, -d, i, 0)
		g[i] = (up[i] - down[i]) / (2 * d)
		h[i] = make([]float64, n)
		h[i][i] = -(up[i] - 2*f + down[i]) / (d * d)
		for k := range i {
			if err := ctx.Err(); err != nil {
				return nil, nil, err
			}
			v := -(at(i, d, k, d) - up[i] - up[k] + 2*f - down[i] - down[k] + at(i, -d, k, -d)) / (2 * d * d)
			h[i][k], h[k][i] = v, v
		}
	}
	return g, h, nil
}
