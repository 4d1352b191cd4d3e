package drawings

import (
	"math"
	"slices"

	"ramnest/fixture/plan"
	"ramnest/fixture/solid"
)

// named are the features of a body of one name, in their order.
func named(b solid.Body, name string) []solid.Feature {
	var out []solid.Feature
	for _, f := range b.Features {
		if f.Name == name {
			out = append(out, f)
		}
	}
	return out
}

// An outline is where a feature lies in the plan [mm].
type outline struct {
	low, high [2]float64
	// ends are points of the outline at its least x, greatest x, least y, greatest y
	ends [4][2]float64
}

func outlineOf(fs ...solid.Feature) outline {
	var pts []plan.Point
	for _, f := range fs {
		for _, l := range f.Loops {
			pts = append(pts, l...)
		}
		for _, t := range f.Facets {
			pts = append(pts, t.Corners...)
		}
	}
	o := outline{low: [2]float64{math.Inf(1), math.Inf(1)}, high: [2]float64{math.Inf(-1), math.Inf(-1)}}
	for _, p := range pts {
		x, y := p.MM()
		at := [2]float64{x, y}
		for k := range 2 {
			if at[k] < o.low[k] {
				o.low[k], o.ends[2*k] = at[k], at
			}
			if at[k] > o.high[k] {
				o.high[k], o.ends[2*k+1] = at[k], at
			}
		}
	}
	return o
}

func (o outline) middle() [2]float64 {
	return [2]float64{round((o.low[0] + o.high[0]) / 2), round((o.low[1] + o.high[1]) / 2)}
}

func (o outline) size() [2]float64 {
	return [2]float64{round(o.high[0] - o.low[0]), round(o.high[1] - o.low[1])}
}

// across is the diameter of a circle by its chords [mm]: of the circle that they touch,
// or of the one on which their ends lie.
func across(f solid.Feature, side plan.Side) float64 {
	if len(f.Loops) == 0 {
		return 0
	}
	m := centre(f)
	least, most := math.Inf(1), 0.0
	l := f.Loops[0]
	for i, p := range l {
		ax, ay := p.MM()
		bx, by := l[(i+1)%len(l)].MM()
		most = max(most, math.Hypot(ax-m[0], ay-m[1]))
		least = min(least, math.Hypot((ax+bx)/2-m[0], (ay+by)/2-m[1]))
	}
	if side == plan.Outside {
		return round(2 * least)
	}
	return round(2 * most)
}

// centre is the middle of a circle: the mean of the ends of its chords, for their box may
// lie to one side [mm].
func centre(f solid.Feature) [2]float64 {
	var m [2]float64
	l := f.Loops[0]
	for _, p := range l {
		x, y := p.MM()
		m[0], m[1] = m[0]+x/float64(len(l)), m[1]+y/float64(len(l))
	}
	return [2]float64{round(m[0]), round(m[1])}
}

// heights are the least and the greatest height of the surface of a feature [mm].
func heights(f solid.Feature) (low, high float64) {
	if len(f.Facets) == 0 {
		return plan.Millimetres(f.Z), plan.Millimetres(f.Z)
	}
	low, high = math.Inf(1), math.Inf(-1)
	for _, t := range f.Facets {
		low, high = min(low, plan.Millimetres(slices.Min(t.Z))), max(high, plan.Millimetres(slices.Max(t.Z)))
	}
	return low, high
}

// round keeps what a drawing states to a hundredth of a millimetre, by way of the grid, so
// that a half is a half.
func round(v float64) float64 { return math.Round(math.Round(v*1000)/10)/100 + 0 }

func up(at [2]float64, z float64) [3]float64 { return [3]float64{at[0], at[1], z} }
