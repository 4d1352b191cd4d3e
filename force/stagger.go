package force

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"ramnest/force/planar"
	"ramnest/force/unit"
)

// keepsApart is the distance in lift that two latches of a pair of parts keep from
// each other [mm]: the coarser of the two floors of process tolerance. Common
// practice, no source.
func keepsApart(lower, upper Material) float64 {
	return max(lower.Tolerance.Value, upper.Tolerance.Value)
}

// staggered says whether two designs peak apart, but by less than the process keeps.
func staggered(latches []LatchResult, keeps float64) bool {
	for i, a := range latches {
		for _, b := range latches[:i] {
			if d := math.Abs(a.PeakLift - b.PeakLift); d > 1e-6 && d < keeps {
				return true
			}
		}
	}
	return false
}

// drifting is the joints with the depth of each unknown by what the process keeps, if there
// are several: wherever in that range the peak of one lies, it may meet the peak of another,
// and the band must not count on the distance.
func drifting(joints []joint, keeps, mu float64) []joint {
	out := slices.Clone(joints)
	if len(out) < 2 {
		return out
	}
	for i := range out {
		if out[i].path == slide {
			continue // its force lasts to the seat
		}
		out[i].drift = keeps
		out[i].nodes = nil
		out[i].findNodes(mu)
	}
	return out
}

// Stagger gives the assembly with its latches one after another along the stroke,
// and says what was moved: from the seat upward, each design by as little as takes
// the peak of the sum down to that of the heaviest, with what the process keeps to
// spare. Four places or more of a single design are taken in two halves, every other
// place round their middle. What is pressed goes last, since its force stays. ok is
// false if the design force does not fall by a twentieth, or the assembly has faults.
// The work stays, the stroke grows.
func Stagger(a Assembly) (staggered Assembly, what unit.Text, ok bool) {
	before, err := Analyse(quick(a))
	if err != nil || before.NoP95 {
		return Assembly{}, unit.Text{}, false
	}
	a.Latches = slices.Clone(a.Latches)
	if len(a.Latches) == 1 {
		if len(a.Latches[0].At) < 4 {
			return Assembly{}, unit.Text{}, false
		}
		a.Latches = halves(a.Latches[0])
	}
	lower, _ := a.Shop.Resolve(a.Lower)
	upper, _ := a.Shop.Resolve(a.Upper)
	gap := keepsApart(lower, upper)
	mu := pairFriction(lower, upper).Value
	joints, order := make([]joint, len(a.Latches)), make([]int, len(a.Latches))
	force, heaviest := make([]float64, len(a.Latches)), 0.0
	for i, l := range a.Latches {
		l.Engage = nil
		joints[i], order[i] = readyJoint(l, lower, upper), i
		f, _ := sumCurve([]profile{joints[i].shifted(0, mu)}, []int{len(l.At)}).Peak()
		force[i], heaviest = f, max(heaviest, f)
	}
	// From the seat upward: what is pressed, then the weakest.
	slices.SortStableFunc(order, func(x, y int) int {
		if s, t := joints[x].path == slide, joints[y].path == slide; s != t {
			if s {
				return -1
			}
			return 1
		}
		return cmp.Compare(force[x], force[y])
	})
	var moved []unit.Text
	var below []profile
	var counts []int
	for _, i := range order {
		counts = append(counts, len(a.Latches[i].At))
		together := func(shift float64) float64 {
			f, _ := sumCurve(append(below, joints[i].shifted(shift, mu)), counts).Peak()
			return f
		}
		shift := 0.0
		if len(below) > 0 {
			shift = apart(together, heaviest, gap)
		}
		below = append(below, joints[i].shifted(shift, mu))
		engage := joints[i].stroke + shift
		now := joints[i].stroke
		if e := a.Latches[i].Engage; e != nil {
			now = *e
		}
		if d := engage - now; math.Abs(d) > 1e-9 {
			way := "earlier"
			if d < 0 {
				way = "later"
			}
			moved = append(moved, unit.Textf("%s %v %s", a.Latches[i].ID, unit.Length.Of(math.Abs(d)), way))
			a.Latches[i].Engage = &engage
		}
	}
	after, err := Analyse(quick(a))
	if err != nil || after.NoP95 || after.Design > leastGain*before.Design {
		return Assembly{}, unit.Text{}, false
	}
	slices.SortFunc(moved, func(a, b unit.Text) int { return strings.Compare(a.String(), b.String()) })
	return a, unit.Join(moved, ", "), true
}

// apart finds how far up a latch has to go so that the sum with those below it is
// no more than the heaviest, with the gap to spare either way; or where it is least.
func apart(together func(shift float64) float64, heaviest, gap float64) float64 {
	const steps, furthest = 400, 20.0 // [mm]
	best, least := 0.0, math.Inf(1)
	for k := range steps {
		shift := furthest * float64(k) / steps
		worst := max(together(shift), together(shift+gap/2), together(shift+gap), together(shift+1.5*gap), together(shift+2*gap))
		if worst < least*(1-1e-6) {
			best, least = shift+gap, worst
		}
		if least <= 1.02*heaviest {
			break
		}
	}
	return best
}

// shifted is the nominal profile of a joint that makes contact so much earlier.
func (j joint) shifted(up, mu float64) profile {
	j.engage = j.stroke + up
	p, _ := j.nominalAt(mu)
	return p
}

// leastGain is the share of the design force down to which staggering must bring it
// to be worth its stroke [1]; common practice, no source.
const leastGain = 0.95

// quick is the assembly with draws enough to compare two of them.
func quick(a Assembly) Assembly {
	a.Draws = 2000
	return a
}

// halves takes every other place of a design, in order round their middle, so that
// the thrust line of either half stays near it.
func halves(l Latch) []Latch {
	var x, y float64
	for _, p := range l.At {
		x, y = x+p.X/float64(len(l.At)), y+p.Y/float64(len(l.At))
	}
	order := make([]int, len(l.At))
	for i := range order {
		order[i] = i
	}
	round := func(i int) float64 { return math.Atan2(l.At[i].Y-y, l.At[i].X-x) }
	slices.SortStableFunc(order, func(i, k int) int { return cmp.Compare(round(i), round(k)) })
	first, second := l, l
	first.ID, second.ID = l.ID+", every other one", l.ID+", the rest"
	first.At, second.At = nil, nil
	var toward [2][]planar.Point
	for k, i := range order {
		if k%2 == 0 {
			first.At = append(first.At, l.At[i])
		} else {
			second.At = append(second.At, l.At[i])
		}
		if c := l.Cantilever; c != nil && len(c.Toward) == len(l.At) {
			toward[k%2] = append(toward[k%2], c.Toward[i])
		}
	}
	if c := l.Cantilever; c != nil && len(c.Toward) == len(l.At) && len(c.Toward) > 1 {
		one, other := *c, *c
		one.Toward, other.Toward = toward[0], toward[1]
		first.Cantilever, second.Cantilever = &one, &other
	}
	return []Latch{first, second}
}
