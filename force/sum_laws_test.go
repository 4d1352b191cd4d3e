package force

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ramnest/force/planar"
)

// randomSound draws an assembly that is valid and does not lock.
func randomSound(rng *rand.Rand) (Assembly, Result) {
	for {
		a := randomAssembly(rng)
		if r, err := Analyse(a); err == nil && !r.Locks {
			return a, r
		}
	}
}

// figuresOf are the forces that a user acts on; P95 only where there is one.
func figuresOf(r Result) map[string]float64 {
	out := map[string]float64{"nominal": r.Peak, "P5": r.P5, "P50": r.P50, "worst": r.Worst}
	if !r.NoP95 {
		out["P95"], out["design"] = r.P95, r.Design
	}
	return out
}

// same holds two results to each other.
func same(t *testing.T, what string, n int, got, want Result, tolerance float64) {
	t.Helper()
	other := figuresOf(want)
	for name, f := range figuresOf(got) {
		if w := other[name]; !(math.Abs(f-w) <= tolerance*max(math.Abs(w), 1)) {
			t.Errorf("assembly %d, %s: %s %.9g N, was %.9g", n, what, name, f, w)
		}
	}
}

// A latch more never asks for less, in any figure: with the same draws, assembly by
// assembly.
func TestALatchAddedNeverLowersTheForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 1))
	for n := range 150 {
		a, r := randomSound(rng)
		if len(a.Latches) < 2 {
			continue
		}
		for k := range a.Latches {
			less := a
			less.Latches = slices.Delete(slices.Clone(a.Latches), k, k+1)
			fewer, err := Analyse(less)
			if err != nil {
				t.Fatal(err)
			}
			all := figuresOf(r)
			for name, f := range figuresOf(fewer) {
				if w, known := all[name]; known && f > w*(1+1e-12) {
					t.Errorf("assembly %d: with %s too the %s falls from %.6f to %.6f N", n, a.Latches[k].ID, name, f, w)
				}
			}
			if fewer.Jammed > r.Jammed {
				t.Errorf("assembly %d: with %s too fewer jam, %g instead of %g", n, a.Latches[k].ID, r.Jammed, fewer.Jammed)
			}
		}
	}
}

// The order of the latches, where the origin of the plan lies and which way its axes run
// change no force.
func TestOrderMirrorAndShiftChangeNothing(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 2))
	for n := range 80 {
		a, r := randomSound(rng)
		turned := a
		turned.Latches = slices.Clone(a.Latches)
		slices.Reverse(turned.Latches)
		back, err := Analyse(turned)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "in another order", n, back, r, 1e-9)
		moved := a
		moved.Latches = slices.Clone(a.Latches)
		for i, l := range moved.Latches {
			l.At = slices.Clone(l.At)
			for k, p := range l.At {
				l.At[k] = planar.Point{X: 13 - p.X, Y: p.Y + 7}
			}
			moved.Latches[i] = l
		}
		mirrored, err := Analyse(moved)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "mirrored and shifted", n, mirrored, r, 1e-12)
		if want := (planar.Point{X: 13 - r.Thrust.X, Y: r.Thrust.Y + 7}); math.Hypot(mirrored.Thrust.X-want.X, mirrored.Thrust.Y-want.Y) > 1e-9 {
			t.Errorf("assembly %d: thrust at %v, want %v", n, mirrored.Thrust, want)
		}
	}
}

// Depths that change by a millionth of a micrometre change no force.
func TestDepthsMovedByRoundingChangeNothing(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 3))
	for n := range 80 {
		a, r := randomSound(rng)
		near := a
		near.Latches = slices.Clone(a.Latches)
		for i, l := range near.Latches {
			if l.Engage != nil {
				near.Latches[i].Engage = ptr(*l.Engage + 1e-12*(2*rng.Float64()-1))
			}
		}
		moved, err := Analyse(near)
		if err != nil {
			t.Fatal(err)
		}
		same(t, "moved by 1e-12 mm", n, moved, r, 1e-9)
	}
}

// Twice the places of a design are twice its force, as it is drawn and in each figure
// that all places share.
func TestDoublingTheForce(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 4))
	for n := range 60 {
		a, r := randomSound(rng)
		twice := a
		twice.Latches = slices.Clone(a.Latches)
		for i, l := range twice.Latches {
			twice.Latches[i].At = append(slices.Clone(l.At), l.At...)
		}
		double, err := Analyse(twice)
		if err != nil {
			t.Fatal(err)
		}
		for name, pair := range map[string][2]float64{
			"nominal": {double.Peak, r.Peak}, "worst": {double.Worst, r.Worst}, "work": {double.Work, r.Work}, "at the seat": {double.SeatForce, r.SeatForce},
		} {
			if !(math.Abs(pair[0]-2*pair[1]) <= 1e-9*max(1, pair[0])) {
				t.Errorf("assembly %d: %s %.9g, twice the places %.9g", n, name, pair[1], pair[0])
			}
		}
		if double.PeakLift != r.PeakLift {
			t.Errorf("assembly %d: peak at a lift of %g, twice the places %g mm", n, r.PeakLift, double.PeakLift)
		}
	}
}

// A ball whose mouth bends down has its summit further from that of the nominal one: the sum
// may be 2 % too high for it, never too low by more than 1 %.
//
// In every draw the sum lies between the largest force of a single latch and the sum of
// all their largest forces, and is what looking everywhere finds: exactly, but for balls,
// whose summit moves.
func TestSumOfEveryDraw(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 5))
	for n := range 120 {
		a, _ := randomSound(rng)
		lower, _ := Resolve(a.Lower)
		upper, _ := Resolve(a.Upper)
		mu := pairFriction(lower, upper).Value
		var joints []joint
		var counts []int
		balls := false
		for _, l := range a.Latches {
			j := readyJoint(l, lower, upper)
			j.findNodes(mu)
			joints, counts, balls = append(joints, j), append(counts, len(l.At)), balls || j.path == ball
		}
		keeps := keepsApart(lower, upper)
		standing := drifting(joints, keeps, mu)
		if len(joints) == 1 {
			keeps = 0
		}
		one, plain := newTrial(standing, counts), newTrial(joints, counts)
		b, s, means := bandOf(lower, upper), newStreams(a.Seed, "tolerance", a.Latches), make([]float64, 2*len(joints))
		for k := range 6 {
			s.begin(k)
			c, _ := b.draw(s.common)
			one.draw(&c, s.own, apartShare, means)
			s.begin(k)
			c, _ = b.draw(s.common)
			plain.draw(&c, s.own, apartShare, means)
			if one.jam {
				continue
			}
			got, most, all := one.peak(), 0.0, 0.0
			for i := range plain.profiles {
				f := denseSum(plain.profiles[i:i+1], 0)
				most, all = max(most, f), all+f
			}
			tolerance := 1e-9
			if balls {
				tolerance = 0.01
			}
			if got < most*(1-tolerance) || got > all*(1+tolerance) {
				t.Errorf("assembly %d, draw %d: sum %.4f N, the largest of one %.4f, of all together %.4f", n, k, got, most, all)
			}
			if dense := denseSum(plain.profiles, keeps); got < dense*(1-tolerance) || got > dense*(1+max(2*tolerance, 0.01)) {
				t.Errorf("assembly %d, draw %d: sum %.4f N, looking everywhere finds %.4f", n, k, got, dense)
			}
		}
	}
}

// What is drawn does not depend on the number of cores.
func TestDrawsDoNotDependOnTheCores(t *testing.T) {
	a := mixed24()
	a.Draws = 1500
	first := mustAnalyse(t, a)
	for range 3 {
		same(t, "again", 0, mustAnalyse(t, a), first, 0)
	}
}
