package drawing

import (
	"math"
	"slices"
)

// hatched fills closed outlines with lines at 45 degrees, pitch apart.
func hatched(rims []segment, pitch float64) []segment {
	const half = math.Sqrt2 / 2
	// In axes turned by 45 degrees the lines are level.
	to := func(p point) point { return point{float64(half * (p[0] + p[1])), float64(half * (p[1] - p[0]))} }
	from := func(u, v float64) point { return point{float64(half * (u - v)), float64(half * (u + v))} }
	rows := map[int][]float64{}
	for _, r := range rims {
		a, b := to(r[0]), to(r[1])
		if a[1] > b[1] {
			a, b = b, a
		}
		for k := int(math.Ceil(a[1]/pitch - 0.5)); (float64(k)+0.5)*pitch < b[1]; k++ {
			if v := (float64(k) + 0.5) * pitch; v >= a[1] {
				rows[k] = append(rows[k], a[0]+(v-a[1])*(b[0]-a[0])/(b[1]-a[1]))
			}
		}
	}
	var order []int
	for k := range rows {
		order = append(order, k)
	}
	slices.Sort(order)
	var out []segment
	for _, k := range order {
		row := rows[k]
		slices.Sort(row)
		for i := 1; i < len(row); i += 2 {
			if row[i]-row[i-1] > 0.02 {
				v := (float64(k) + 0.5) * pitch
				out = append(out, segment{from(row[i-1], v), from(row[i], v)})
			}
		}
	}
	return out
}
