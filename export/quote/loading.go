package quote

import (
	"cmp"
	"slices"
)

// A load is one build with what stands in it.
type load struct {
	parts  []loaded
	pieces int
	height float64 // [mm]
	volume float64 // of print [mm3]
	room   float64 // sum of the boxes [mm3]
}

// loaded are the pieces of one item in a build.
type loaded struct {
	item         int
	count        float64
	volume, room float64 // of all of them [mm3]
}

// perBuild is how many equal boxes stand in a build, the better way round in the plan;
// stacked only where they may hang in powder.
func perBuild(m *Machine, box [3]float64, stack bool) (int, error) {
	build := m.Build
	if !stack {
		if box[2] > build[2] {
			return 0, nil
		}
		build[2] = box[2]
	}
	a, err := Packing(build, box, m.Spacing)
	if err != nil {
		return 0, err
	}
	b, err := Packing(build, [3]float64{box[1], box[0], box[2]}, m.Spacing)
	return max(a, b), err
}

// fill puts all pieces of a process into builds by their boxes: the highest first, in
// rows along x, row behind row, and in powder layer over layer. A box that is too long
// for a row is turned in the plan. It is no nesting: a shop that nests fills better.
func fill(m *Machine, items []Item, of []int, stack bool) []load {
	order := slices.Clone(of)
	slices.SortStableFunc(order, func(i, k int) int {
		return cmp.Or(cmp.Compare(items[k].Box[2], items[i].Box[2]), cmp.Compare(items[k].Box[1], items[i].Box[1]))
	})
	var out []load
	var x, y, z, depth, height float64
	const slack = 1e-9
	fresh := func() {
		out = append(out, load{})
		x, y, z, depth, height = 0, 0, 0, 0, 0
	}
	fresh()
	for _, i := range order {
		it := items[i]
		w, d, h := it.Box[0], it.Box[1], it.Box[2]
		if along, across := count(m, w, d), count(m, d, w); across > along {
			w, d = d, w
		}
		for range it.Count {
			if x > 0 && x+w > m.Build[0]+slack {
				x, y, depth = 0, y+depth+m.Spacing, 0
			}
			if y > 0 && y+d > m.Build[1]+slack {
				x, y, depth = 0, 0, 0
				if z += height + m.Spacing; !stack || z+h > m.Build[2]+slack {
					fresh()
				}
				height = 0
			} else if z+h > m.Build[2]+slack {
				fresh()
			}
			b := &out[len(out)-1]
			k := slices.IndexFunc(b.parts, func(p loaded) bool { return p.item == i })
			if k < 0 {
				k = len(b.parts)
				b.parts = append(b.parts, loaded{item: i})
			}
			room := it.Box[0] * it.Box[1] * h
			p := &b.parts[k]
			p.count, p.volume, p.room = p.count+1, p.volume+it.Volume, p.room+room
			b.pieces, b.volume, b.room = b.pieces+1, b.volume+it.Volume, b.room+room
			b.height = max(b.height, z+h)
			x, depth, height = x+w+m.Spacing, max(depth, d), max(height, h)
		}
	}
	return out
}

// count is how many boxes stand in one layer.
func count(m *Machine, w, d float64) int {
	const slack = 1e-9
	return int((m.Build[0]+m.Spacing)/(w+m.Spacing)+slack) * int((m.Build[1]+m.Spacing)/(d+m.Spacing)+slack)
}
