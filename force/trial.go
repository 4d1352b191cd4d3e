package force

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// trial is the bench of one draw, used again and again.
type trial struct {
	joints           []joint
	counts           []int
	profiles         []profile // of all places
	nodes            []float64 // lifts where the sum can peak
	order            []int     // of the nodes, the nominally largest sum first
	sums             []float64 // the sum at each node, NaN if not yet needed
	designs          []reach
	smooth           bool // there are balls: refine between nodes
	loose, over, jam bool
}

func newTrial(joints []joint, counts []int, mu float64) *trial {
	t := &trial{joints: joints, counts: counts, nodes: []float64{0}}
	places := 0
	for i := range joints {
		places += counts[i]
		t.nodes = append(t.nodes, joints[i].nodes...)
		t.smooth = t.smooth || joints[i].path == ball
	}
	slices.Sort(t.nodes)
	t.nodes = slices.CompactFunc(t.nodes, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })
	t.sums, t.profiles, t.order = make([]float64, len(t.nodes)), make([]profile, places), make([]int, len(t.nodes))
	for i, from := 0, 0; i < len(joints); i++ {
		t.designs = append(t.designs, reach{from: from, to: from + counts[i]})
		from += counts[i]
	}
	// The nominal sums say where to look first.
	c := nominal(mu)
	t.each(&c, func(j *joint) own { return own{size: j.size} })
	for i, lift := range t.nodes {
		t.order[i], t.sums[i] = i, t.sum(lift)
	}
	slices.SortStableFunc(t.order, func(a, b int) int { return cmp.Compare(t.sums[b], t.sums[a]) })
	return t
}

// reach bounds the forces of one design in one draw.
type reach struct {
	from, to int     // its places among the profiles
	hi, lo   float64 // lifts outside which they are 0 [mm]
	most     float64 // what they cannot exceed together [N]
}

// include takes one place's profile into the bounds.
func (d *reach) include(q *profile) {
	if q.n == 0 {
		return
	}
	d.hi, d.lo = max(d.hi, q.p[0].Hi), min(d.lo, q.p[q.n-1].Lo)
	var most float64
	for i := range q.n {
		p := &q.p[i]
		if p.lip {
			d.most = math.Inf(1)
			return
		}
		// Rising pieces end highest; those that fall begin highest.
		most = max(most, p.F0, p.at(p.Lo))
	}
	d.most += most
}

// draw evaluates every place under shared causes. means takes two standard
// normals for each design: the means of its own size and wall errors.
func (t *trial) draw(c *causes, rng *rand.Rand, share float64, means []float64) {
	t.loose, t.over, t.jam = false, false, false
	for m := range t.joints {
		j, d := &t.joints[m], &t.designs[m]
		d.hi, d.lo, d.most = 0, math.Inf(1), 0
		s := j.share(c)
		size := j.size + s.outerGrowth*j.fromOuter + s.innerGrowth*j.fromInner
		spread := share * math.Sqrt(j.fromOuter*j.fromOuter+j.fromInner*j.fromInner)
		var sizes, walls float64
		for k := d.from; k < d.to; k++ {
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
			st := j.at(&s, o, &t.profiles[k])
			d.include(&t.profiles[k])
			t.note(j, st)
		}
		n := math.Sqrt(float64(t.counts[m]))
		means[2*m], means[2*m+1] = sizes/n, walls/n
	}
}

func (t *trial) note(j *joint, s state) {
	t.loose, t.jam = t.loose || s.loose, t.jam || s.jam
	t.over = t.over || s.outerStrain > j.outer.limit || s.innerStrain > j.inner.limit
}

// each sets every place of a design alike.
func (t *trial) each(c *causes, place func(j *joint) own) {
	for m := range t.joints {
		j, d := &t.joints[m], &t.designs[m]
		d.hi, d.lo, d.most = 0, math.Inf(1), 0
		s := j.share(c)
		o := place(j)
		for k := d.from; k < d.to; k++ {
			j.at(&s, o, &t.profiles[k])
			d.include(&t.profiles[k])
		}
	}
}

// sum of all places at a lift.
func (t *trial) sum(lift float64) float64 {
	var f float64
	for m := range t.designs {
		d := &t.designs[m]
		if lift > d.hi || lift < d.lo {
			continue
		}
		for k := d.from; k < d.to; k++ {
			f += t.profiles[k].at(lift)
		}
	}
	return f
}

// bound is what the sum at a lift cannot exceed.
func (t *trial) bound(lift float64) float64 {
	var f float64
	for m := range t.designs {
		if d := &t.designs[m]; lift <= d.hi && lift >= d.lo {
			f += d.most
		}
	}
	return f
}

// peak is the largest sum at one lift. Forces rise from their first contact, so
// the sum peaks where one of them bends down or drops, which the nodes hold;
// round every summit that balls may make the highest, a parabola through three
// nodes is tried too.
func (t *trial) peak() float64 {
	for i := range t.sums {
		t.sums[i] = math.NaN()
	}
	f := t.at(t.order[0])
	for _, i := range t.order[1:] {
		if t.bound(t.nodes[i]) > f {
			f = max(f, t.at(i))
		}
	}
	if !t.smooth {
		return f
	}
	least := nearPeak * f
	for i := 1; i+1 < len(t.nodes); i++ {
		y0, y1, y2 := t.at(i-1), t.at(i), t.at(i+1)
		if y1 < least || y1 < y0 || y1 < y2 {
			continue
		}
		x0, x1, x2 := t.nodes[i-1], t.nodes[i], t.nodes[i+1]
		a, b := (x1-x0)*(y1-y2), (x1-x2)*(y1-y0)
		if d := a - b; d != 0 {
			if v := x1 - ((x1-x0)*a-(x1-x2)*b)/(2*d); v > x0 && v < x2 {
				f = max(f, t.sum(v))
			}
		}
	}
	return f
}

// nearPeak is the share of the largest sum at a node from which on a summit
// between nodes may yet be the highest [1].
const nearPeak = 0.9

// at gives the sum at a node, computed once a draw.
func (t *trial) at(i int) float64 {
	if math.IsNaN(t.sums[i]) {
		t.sums[i] = t.sum(t.nodes[i])
	}
	return t.sums[i]
}

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
