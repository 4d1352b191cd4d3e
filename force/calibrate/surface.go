package calibrate

import (
	"context"
	"fmt"
	"math"

	"ramnest/force"
)

// A surface is the peak force of one joint over friction, stiffness and size, as
// ln of force over size and stiffness, which bends little. Between its nodes it is
// linear in ln friction, in ln stiffness and in size.
type surface struct {
	friction, stiffness axis      // of ln
	size                axis      // [mm]
	values              []float64 // friction slowest, size fastest
	strain              float64   // of the part nearest its limit, per mm of size at the nominal one [1/mm]
	permitted           float64   // [1]
	separation          float64   // over peak, at the nominal one [1]; 0 if it locks
	locks               bool
}

// An axis is evenly divided.
type axis struct {
	from, step float64
	n          int
}

func evenly(from, to float64, n int) axis { return axis{from, (to - from) / float64(n-1), n} }

func (a axis) at(i int) float64 { return a.from + float64(i)*a.step }

// find gives the interval of a place and the share of the way; outside it is the end.
func (a axis) find(v float64) (int, float64) {
	x := max(0, min(float64(a.n-1), (v-a.from)/a.step))
	i := min(a.n-2, int(x))
	return i, x - float64(i)
}

const (
	frictionNodes  = 25
	stiffnessNodes = 3
	sizeNodes      = 16
	reachSpreads   = 3.6 // how far the axes reach, in standard deviations of the prior
	locked         = 4.0 // ln of the factor on the last force that stands for a joint which friction locks
)

// fill computes the nodes.
func (f *surface) fill(ctx context.Context, m *Model, s *subject, on form, largest float64) error {
	mu := math.Log(m.friction)
	f.friction = evenly(mu-reachSpreads*m.frictionSpread, min(mu+reachSpreads*m.frictionSpread, math.Log(2)), frictionNodes)
	f.stiffness = evenly(-reachSpreads*m.stiffnessSpread, reachSpreads*m.stiffnessSpread, stiffnessNodes)
	nominal, err := force.AnalyseContext(ctx, m.assembly(s, on, m.friction, 1, s.size.Value))
	if err != nil {
		return fmt.Errorf("latch %s: %w", s.latch.ID, err)
	}
	one := nominal.Latches[0]
	if one.Locks {
		return fmt.Errorf("latch %s: locks at its friction as drawn: there is no force to compare with, state a friction below %.3g", s.latch.ID,
			one.LocksFrom)
	}
	f.strain, f.permitted, f.locks = one.Strain/s.size.Value, one.Permitted, one.SelfLocking
	if !one.SelfLocking && one.PeakEach > 0 {
		f.separation = one.Separation / one.PeakEach
	}
	// Sizes from near nothing to the largest for which there is a force.
	for range 40 {
		if r, err := force.AnalyseContext(ctx, m.assembly(s, on, m.friction, 1, largest)); err == nil && !r.Locks {
			break
		}
		if err := ctx.Err(); err != nil {
			return err
		}
		largest -= 0.05 * (largest - s.size.Value)
	}
	f.size = evenly(largest/sizeNodes, largest, sizeNodes)
	f.values = make([]float64, frictionNodes*stiffnessNodes*sizeNodes)
	for i := range frictionNodes {
		for k := range stiffnessNodes {
			for j := range sizeNodes {
				at := (i*stiffnessNodes+k)*sizeNodes + j
				e, x := math.Exp(f.stiffness.at(k)), f.size.at(j)
				r, err := force.AnalyseContext(ctx, m.assembly(s, on, math.Exp(f.friction.at(i)), e, x))
				switch {
				case ctx.Err() != nil:
					return ctx.Err()
				case err == nil && r.Peak > 0:
					f.values[at] = math.Log(r.Peak / (e * x))
				case i > 0:
					f.values[at] = f.values[at-stiffnessNodes*sizeNodes] + locked
				case err == nil:
					return fmt.Errorf("latch %s: locks at a size of %s even at the lowest friction looked at", s.latch.ID, mm(x))
				default:
					return fmt.Errorf("latch %s: no force at a size of %s: %w", s.latch.ID, mm(x), err)
				}
			}
		}
	}
	return nil
}

// A grip is a surface cut at one friction and stiffness: what is left is size.
type grip struct {
	f      *surface
	values [sizeNodes]float64
	scale  float64
}

// at cuts the surface at ln friction and ln stiffness.
func (f *surface) at(mu, e float64) grip {
	i, s := f.friction.find(mu)
	k, t := f.stiffness.find(e)
	g := grip{f: f, scale: math.Exp(e)}
	const row, plane = sizeNodes, stiffnessNodes * sizeNodes
	a := f.values[i*plane+k*row:]
	for j := range sizeNodes {
		g.values[j] = (1-s)*((1-t)*a[j]+t*a[row+j]) + s*((1-t)*a[plane+j]+t*a[plane+row+j])
	}
	return g
}

// peak gives the force of one joint at a size [N] and its slope [N/mm]; below 0 the
// joint is loose, and the slope is that with which it begins.
func (g *grip) peak(size float64) (p, slope float64) {
	j, s := g.f.size.find(size)
	v := math.Exp(g.values[j]+s*(g.values[j+1]-g.values[j])) * g.scale
	if size <= 0 {
		return 0, v
	}
	if s > 0 {
		slope = v * size * (g.values[j+1] - g.values[j]) / g.f.size.step
	}
	return v * size, v + slope
}
