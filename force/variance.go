package force

import (
	"cmp"
	"slices"
)

// variance gathers how much of the spread of the peak each input explains by
// itself: the first-order index, variance of the mean of the peak given the input
// over the whole variance, by bins of equal width.
//
// Source: Sobol's first-order index (from memory), estimated from the same
// draws. What the bins explain by chance is taken off.
type variance struct {
	names  []string
	x      []float64 // inputs of the draw at hand
	sum    [][varianceBins]float64
	count  [][varianceBins]float64
	n      float64
	total  float64
	square float64
}

const (
	varianceBins = 16
	leastShare   = 0.005 // shares below it are not listed
)

func newVariance(latches []Latch) *variance {
	v := &variance{names: commonInputs[:]}
	for _, l := range latches {
		v.names = append(v.names, "sizes of "+l.ID, "walls of "+l.ID)
	}
	v.x = make([]float64, len(v.names))
	v.sum, v.count = make([][varianceBins]float64, len(v.names)), make([][varianceBins]float64, len(v.names))
	return v
}

// add takes the peak that belongs to the inputs in x. Inputs lie in -3 to 3; the
// moduli in -1 to 1.
func (v *variance) add(peak float64) {
	v.n++
	v.total += peak
	v.square += peak * peak
	for i, x := range v.x {
		if i == 1 || i == 2 {
			x *= 3
		}
		b := min(varianceBins-1, max(0, int((x+3)*(varianceBins/6.0))))
		v.sum[i][b] += peak
		v.count[i][b]++
	}
}

// join adds the draws of another one of the same inputs.
func (v *variance) join(o *variance) {
	v.n, v.total, v.square = v.n+o.n, v.total+o.total, v.square+o.square
	for i := range o.sum {
		for b := range varianceBins {
			v.sum[i][b] += o.sum[i][b]
			v.count[i][b] += o.count[i][b]
		}
	}
}

// shares lists the inputs by their share, largest first.
func (v *variance) shares() []Share {
	if v.n == 0 {
		return nil // every assembly jams
	}
	mean := v.total / v.n
	whole := v.square/v.n - mean*mean
	if whole <= 1e-18*mean*mean {
		return nil
	}
	var out []Share
	for i, name := range v.names {
		var between float64
		used := 0.0
		for b := range varianceBins {
			if c := v.count[i][b]; c > 0 {
				d := v.sum[i][b]/c - mean
				between += c * d * d
				used++
			}
		}
		share := between/v.n/whole - (used-1)/v.n
		if share >= leastShare {
			out = append(out, Share{name, min(1, share)})
		}
	}
	slices.SortStableFunc(out, func(a, b Share) int { return cmp.Compare(b.Share, a.Share) })
	return out
}
