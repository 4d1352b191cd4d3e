package force

import (
	"math"
	"math/rand/v2"
	"slices"
)

// trial is the bench of one draw, used again and again.
type trial struct {
	joints           []joint
	profiles         []profile // of all places, design by design
	ends             []int     // where the places of each design end
	nodes            []float64 // lifts where the sum can peak, rising
	sums             []float64 // the sum at each node
	state            state
	smooth           bool // there are balls: refine between nodes
	loose, over, jam bool
	jams             []bool  // of each design
	jamLift          float64 // highest first contact of a joint that jams [mm]
	hold             *holder // takes down the hold of every place; nil: not asked for
}

func newTrial(joints []joint, counts []int) *trial {
	t := &trial{joints: joints, nodes: []float64{0}}
	places := 0
	for i := range joints {
		places += counts[i]
		t.ends = append(t.ends, places)
		t.nodes = append(t.nodes, joints[i].nodes...)
		t.smooth = t.smooth || joints[i].path == ball
	}
	// Only lifts that are the same number are one: where two latches drop at lifts that
	// differ by rounding, the sum just before either drop is a peak of its own.
	slices.Sort(t.nodes)
	t.nodes = slices.Compact(t.nodes)
	t.jams = make([]bool, len(joints))
	t.sums, t.profiles = make([]float64, len(t.nodes)), make([]profile, places)
	return t
}

// draw evaluates every place under shared causes, each design by its own source of random
// numbers. means takes two standard
// normals for each design: the means of its own size and wall errors.
func (t *trial) draw(c *causes, from []*rand.Rand, share float64, means []float64) {
	t.forget()
	k := 0
	for m := range t.joints {
		j, rng := &t.joints[m], from[m]
		s := j.share(c)
		size := j.size + s.outerGrowth*j.fromOuter + s.innerGrowth*j.fromInner - c.flatten*j.flatten
		unheld := j.hold - c.flatten*j.flatten
		spread := share * math.Sqrt(j.fromOuter*j.fromOuter+j.fromInner*j.fromInner)
		var sizes, walls float64
		first := k
		for ; k < t.ends[m]; k++ {
			z := normal(rng)
			sizes += z
			o := own{size: size + spread*z}
			if j.outer.wall > 0 {
				z := normal(rng)
				walls += z
				o.outer = j.outer.wall * (s.outerGrowth + share*z)
			}
			if j.inner.wall > 0 {
				o.inner = j.inner.wall * (s.innerGrowth + share*normal(rng))
			}
			j.at(&s, o, &t.profiles[k], &t.state)
			t.note(m, k)
			t.loose = t.loose || o.size <= unheld
			if t.hold != nil {
				if unheld > 0 {
					o.size -= unheld
					j.at(&s, o, &t.hold.profile, &t.state)
					t.hold.see(m, j, s.mu, &t.state, &t.hold.profile)
				} else {
					t.hold.see(m, j, s.mu, &t.state, &t.profiles[k])
				}
			}
		}
		n := math.Sqrt(float64(k - first))
		means[2*m], means[2*m+1] = sizes/n, walls/n
	}
}

func (t *trial) forget() {
	t.loose, t.over, t.jam, t.jamLift = false, false, false, 0
	clear(t.jams)
}

// note takes down what was found of design m at place k.
func (t *trial) note(m, k int) {
	j, s := &t.joints[m], &t.state
	t.loose = t.loose || s.loose
	t.over = t.over || s.outerStrain > j.outer.limit || s.innerStrain > j.inner.limit
	if s.jam {
		t.jam, t.jams[m] = true, true
		t.jamLift = max(t.jamLift, t.profiles[k].first())
	}
}

// each sets every place of a design alike.
func (t *trial) each(c *causes, place func(j *joint) own) {
	t.forget()
	k := 0
	for m := range t.joints {
		j := &t.joints[m]
		s := j.share(c)
		o := place(j)
		for ; k < t.ends[m]; k++ {
			j.at(&s, o, &t.profiles[k], &t.state)
			t.note(m, k)
		}
	}
}

// sum of all places at a lift.
func (t *trial) sum(lift float64) float64 {
	var f float64
	for i := range t.profiles {
		f += t.profiles[i].at(lift)
	}
	return f
}

// peak is the largest sum at one lift. Forces rise from their first contact, so
// the sum peaks where one of them bends down or drops, which the nodes hold;
// round every summit that balls may make the highest, parabolas through three
// places are tried too.
func (t *trial) peak() float64 {
	clear(t.sums)
	for i := range t.profiles {
		t.profiles[i].addTo(t.sums, t.nodes)
	}
	f := t.sums[0]
	for _, v := range t.sums[1:] {
		if v > f {
			f = v
		}
	}
	if !t.smooth {
		return f
	}
	least := nearPeak * f
	for i := 1; i+1 < len(t.nodes); i++ {
		y0, y1, y2 := t.sums[i-1], t.sums[i], t.sums[i+1]
		if y1 < least || y1 < y0 || y1 < y2 {
			continue
		}
		x0, x1, x2 := t.nodes[i-1], t.nodes[i], t.nodes[i+1]
		for range 2 { // the second through the summit of the first
			a, b := (x1-x0)*(y1-y2), (x1-x2)*(y1-y0)
			v := x1 - ((x1-x0)*a-(x1-x2)*b)/(2*(a-b))
			if !(v > x0 && v < x2) || v == x1 {
				break
			}
			y := t.sum(v)
			f = max(f, y)
			switch {
			case v < x1 && y >= y1:
				x1, y1, x2, y2 = v, y, x1, y1
			case v > x1 && y >= y1:
				x0, y0, x1, y1 = x1, y1, v, y
			case v < x1:
				x0, y0 = v, y
			default:
				x2, y2 = v, y
			}
		}
	}
	return f
}

// nearPeak is the share of the largest sum at a node from which on a summit
// between nodes may yet be the highest [1].
const nearPeak = 0.9

// work of all places [mJ]; a ball by three Gauss points, good to a per cent.
func (t *trial) work() float64 {
	var w float64
	for i := range t.profiles {
		q := &t.profiles[i]
		for k := range q.n {
			p := &q.p[k]
			if !p.lip {
				w += p.work()
				continue
			}
			mid, half := (p.Hi+p.Lo)/2, (p.Hi-p.Lo)/2
			w += half / 9 * (8*q.lip.force(mid) + 5*(q.lip.force(mid+half*0.7745966692414834)+q.lip.force(mid-half*0.7745966692414834)))
		}
	}
	return w
}
