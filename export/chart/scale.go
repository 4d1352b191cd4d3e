package chart

import (
	"cmp"
	"math"
	"slices"
)

// niceStep is the least of 1, 2, 5 times a power of ten that is not below v.
func niceStep(v float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(v)))
	for _, k := range []float64{1, 2, 5} {
		if k*p >= v*0.9999 {
			return k * p
		}
	}
	return 10 * p
}

// count is how many steps, 0 among them, an axis up to an end has.
func count(end, step float64) int { return int(end/step*1.0001) + 1 }

// decimals are those that a step needs.
func decimals(step float64) int { return max(0, int(math.Ceil(-math.Log10(step)-1e-9))) }

// merged puts the names of equal levels on one label, highest first.
func merged(levels []Level) []Level {
	var out []Level
	for _, l := range levels {
		if k := slices.IndexFunc(out, func(o Level) bool { return o.Force == l.Force }); k >= 0 {
			out[k].Name += ", " + l.Name
			out[k].Strong = out[k].Strong || l.Strong
			continue
		}
		out = append(out, l)
	}
	slices.SortStableFunc(out, func(a, b Level) int { return cmp.Compare(b.Force, a.Force) })
	return out
}

// spread moves places, rising, apart by a gap at least, and keeps them from lo to hi if
// there is room.
func spread(places []float64, gap, lo, hi float64) {
	at := lo
	for i := range places {
		places[i] = max(places[i], at)
		at = places[i] + gap
	}
	at = hi
	for i := len(places) - 1; i >= 0; i-- {
		places[i] = min(places[i], at)
		at = places[i] - gap
	}
}
