package force

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ramnest/force/planar"
)

// rimAndHooks is a rim of 50 mm and two hooks beside it, whose peaks the levelling puts at
// lifts that differ by rounding only: in round figures, the most ordinary job there is.
func rimAndHooks() Assembly {
	part := MaterialSpec{Material: "PA12", Process: "PBF", Build: "along", Figures: Figures{Friction: ptr(0.35)}}
	return Assembly{
		Lower: part, Upper: part, Draws: 1000,
		Latches: []Latch{
			{ID: "rim", At: []planar.Point{{}}, Z: 24, Annular: &Annular{
				Outside: "upper", JointDiameter: 50, Undercut: 0.5, MatingAngle: rad(30), ReturnAngle: rad(45),
				OuterDiameter: 54, InnerDiameter: 46, EndDistance: 3, EndDistanceInner: ptr(7),
			}},
			{ID: "hook", At: []planar.Point{{X: 25, Y: 0}, {X: -25, Y: 0}}, Z: 24, Cantilever: &Cantilever{
				Flexes: "upper", Bends: "outward", Undercut: 0.3, MatingAngle: rad(20), ReturnAngle: rad(45),
				Length: 8, Thickness: 1.2, Width: 5, RootRadius: ptr(0.5),
			}},
		},
	}
}

// densePeaks draws the assembly again, with the same causes, and looks for the largest sum
// by itself: from the pieces of every place, at either side of every end and at hundreds
// of lifts between, each force by its own formula.
func densePeaks(t *testing.T, a Assembly) (peaks []float64, worst float64) {
	t.Helper()
	lower, _ := a.Shop.Resolve(a.Lower)
	upper, _ := a.Shop.Resolve(a.Upper)
	mu := pairFriction(lower, upper).Value
	var joints []joint
	var counts []int
	for _, l := range a.Latches {
		j := readyJoint(l, lower, upper)
		j.findNodes(mu)
		joints, counts = append(joints, j), append(counts, len(l.At))
	}
	tr := newTrial(joints, counts)
	keeps := keepsApart(lower, upper)
	if len(joints) == 1 {
		keeps = 0
	}
	b := bandOf(lower, upper)
	s := newStreams(a.Seed, "tolerance", a.Latches)
	means := make([]float64, 2*len(joints))
	for i := range a.Draws {
		if i%blockDraws == 0 {
			s.begin(i / blockDraws)
		}
		c, _ := b.draw(s.common)
		tr.draw(&c, s.own, apartShare, means)
		if tr.jam {
			peaks = append(peaks, math.Inf(1))
			continue
		}
		peaks = append(peaks, denseSum(tr.profiles, keeps))
	}
	c := b.worst()
	tr.each(&c, func(j *joint) own { return own{size: j.size + j.worst, outer: j.outer.wall, inner: j.inner.wall} })
	slices.Sort(peaks)
	return peaks, denseSum(tr.profiles, keeps)
}

// denseSum is the largest sum of profiles that looking everywhere finds, each latch standing
// anywhere within keeps of where it should: at a lift it counts with the most that it asks
// for from there to so much higher.
func denseSum(profiles []profile, keeps float64) float64 {
	const steps = 200
	var lifts []float64
	high := 0.0
	for i := range profiles {
		for _, p := range profiles[i].p[:profiles[i].n] {
			lifts = append(lifts, p.Hi, p.Lo, max(0, p.Lo-keeps))
			high = max(high, p.Hi)
		}
	}
	for k := range steps + 1 {
		lifts = append(lifts, high*float64(k)/steps)
	}
	slices.Sort(lifts)
	sums := make([]float64, len(lifts))
	force := make([]float64, len(lifts))
	for i := range profiles {
		q := &profiles[i]
		for k, lift := range lifts {
			force[k] = 0
			for _, p := range q.p[:q.n] {
				if lift > p.Hi || lift < p.Lo {
					continue
				}
				v := p.F0 + (p.Hi-lift)*(p.F1+(p.Hi-lift)*p.F2)
				if p.lip {
					v = q.lip.force(lift)
				}
				force[k] = max(force[k], v)
			}
		}
		for k, lift := range lifts {
			most := 0.0
			for m := k; m < len(lifts) && lifts[m] <= lift+keeps*(1+1e-12); m++ {
				most = max(most, force[m])
			}
			sums[k] += most
		}
	}
	return slices.Max(sums)
}

// The force of the ordinary job is that of its rim and its hooks together, not that of the
// hooks' friction alone.
func TestDropsThatDifferByRounding(t *testing.T) {
	a := rimAndHooks()
	r, err := Analyse(a)
	if err != nil {
		t.Fatal(err)
	}
	rim := a
	rim.Latches = a.Latches[:1]
	alone, err := Analyse(rim)
	if err != nil {
		t.Fatal(err)
	}
	if r.P95 < alone.P95 || r.P50 < alone.P50 || r.Worst < alone.Worst || r.Worst < r.Peak {
		t.Errorf("rim and hooks: P50 %.1f, P95 %.1f, worst %.1f, nominal %.1f N; the rim alone asks for %.1f, %.1f, %.1f", r.P50, r.P95, r.Worst, r.Peak, alone.P50, alone.P95, alone.Worst)
	}
	peaks, worst := densePeaks(t, a)
	if want := quantile(peaks, 0.95); math.Abs(r.P95/want-1) > 1e-9 || math.Abs(r.Worst/worst-1) > 1e-9 {
		t.Errorf("P95 %.3f, worst %.3f N; looking everywhere finds %.3f and %.3f", r.P95, r.Worst, want, worst)
	}
}

// Two hundred jobs of a rim and hooks, with lifts that coincide, nearly coincide or do
// not: the percentiles are those that looking everywhere finds, draw by draw.
func TestRandomRimsAndHooks(t *testing.T) {
	rng := rand.New(rand.NewPCG(50, 2))
	for n := range 200 {
		a := rimAndHooks()
		a.Draws, a.Seed = 100, uint64(n)
		rim, hook := *a.Latches[0].Annular, *a.Latches[1].Cantilever
		rim.Undercut = math.Round(20*(0.2+0.5*rng.Float64())) / 20
		rim.MatingAngle = rad(math.Round(15 + 25*rng.Float64()))
		hook.Undercut = math.Round(20*(0.2+0.4*rng.Float64())) / 20
		hook.MatingAngle = rad(math.Round(15 + 25*rng.Float64()))
		hook.Length = math.Round(7 + 5*rng.Float64())
		if n%3 == 0 {
			rim.Land = 0.5
		}
		a.Latches[0].Annular, a.Latches[1].Cantilever = &rim, &hook
		if n%4 == 0 {
			a.Latches[1].Engage = ptr(math.Round(10*(1+rng.Float64())) / 10)
		}
		r, err := Analyse(a)
		if err != nil {
			t.Fatal(err)
		}
		peaks, worst := densePeaks(t, a)
		name := fmt.Sprintf("job %d: undercuts %g, %g mm", n, rim.Undercut, hook.Undercut)
		if want := quantile(peaks, 0.5); math.Abs(r.P50/want-1) > 1e-9 {
			t.Errorf("%s: P50 %.2f N, looking everywhere finds %.2f", name, r.P50, want)
		}
		if want := quantile(peaks, 0.95); !r.NoP95 && math.Abs(r.P95/want-1) > 1e-9 {
			t.Errorf("%s: P95 %.2f N, looking everywhere finds %.2f", name, r.P95, want)
		}
		if math.Abs(r.Worst/worst-1) > 1e-9 {
			t.Errorf("%s: worst %.2f N, looking everywhere finds %.2f", name, r.Worst, worst)
		}
		if r.Worst < r.Peak*(1-1e-12) {
			t.Errorf("%s: worst %.2f N below the nominal %.2f", name, r.Worst, r.Peak)
		}
	}
}

// The points of a curve hold its peak, and the curve its largest force.
func TestPointsHoldThePeak(t *testing.T) {
	for n := range 60 {
		a := randomAssembly(rand.New(rand.NewPCG(7, uint64(n))))
		a.Draws = 100
		r, err := Analyse(a)
		if err != nil || r.Locks {
			continue
		}
		peak, lift := r.Curve.Peak()
		if got := r.Curve.At(lift); math.Abs(got/peak-1) > 1e-12 {
			t.Errorf("assembly %d: %.6f N at the lift of the peak of %.6f N", n, got, peak)
		}
		for _, m := range []int{2, 50, 200} {
			most := 0.0
			points := r.Curve.Points(m)
			for i, p := range points {
				most = max(most, p[1])
				if i > 0 && p[0] > points[i-1][0] {
					t.Errorf("assembly %d: the lift rises from %g to %g mm", n, points[i-1][0], p[0])
				}
			}
			if math.Abs(most/peak-1) > 1e-12 {
				t.Errorf("assembly %d: %d points hold %.6f N of a peak of %.6f N", n, m, most, peak)
			}
		}
	}
}
