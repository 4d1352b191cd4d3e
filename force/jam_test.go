package force

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"ramnest/force/planar"
	"ramnest/force/warning"
)

// hookJob is the commonest hook there is: 45 deg, of powder bed PA12 on itself.
func hookJob() Assembly {
	pa12 := MaterialSpec{Material: "PA12", Process: "PBF", Build: "across"}
	return Assembly{Lower: pa12, Upper: pa12, Seed: 7, Draws: 1000, Latches: []Latch{{
		ID: "hook", At: []planar.Point{{X: 25, Y: 0}, {X: -25, Y: 0}}, Z: 9,
		Cantilever: &Cantilever{Flexes: "upper", Bends: "inward", Undercut: 0.6, MatingAngle: rad(45), ReturnAngle: rad(40), Length: 12, Thickness: 2, Width: 8, RootRadius: ptr(1)},
	}}}
}

// steepen sets the lead-in of the first latch; ok is false for a kind that has none
// to set.
func steepen(a Assembly, deg float64) (Assembly, bool) {
	l := a.Latches[0]
	switch {
	case l.Annular != nil:
		v := *l.Annular
		v.MatingAngle, l.Annular = rad(deg), &v
	case l.Cantilever != nil:
		v := *l.Cantilever
		v.MatingAngle, l.Cantilever = rad(deg), &v
	case l.Torsional != nil:
		v := *l.Torsional
		v.MatingAngle, l.Torsional = rad(deg), &v
	case l.PressFit != nil:
		v := *l.PressFit
		v.LeadInAngle, l.PressFit = ptr(rad(deg)), &v
	case l.CrushRib != nil:
		v := *l.CrushRib
		v.LeadInAngle, l.CrushRib = ptr(rad(deg)), &v
	default:
		return a, false
	}
	a.Latches = []Latch{l}
	return a, true
}

func rubbing(a Assembly, mu float64) Assembly {
	a.Lower.Friction, a.Upper.Friction = &mu, &mu
	return a
}

// TestJamsRiseWithFrictionAndAngle: of every variant, over friction from 0.1 to 2 and
// lead-in from 10 to 60 deg.
func TestJamsRiseWithFrictionAndAngle(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	some := 0
	for i, a := range append(variants(), hookJob()) {
		a.Draws, a.Seed = 200, rng.Uint64()
		last := 0.0
		for mu := 0.1; mu < 2; mu += 0.2 {
			b := rubbing(a, mu)
			if len(b.Validate()) > 0 {
				continue
			}
			r := mustAnalyse(t, b)
			if r.Jammed < last-0.02 { // a hundred that jam end the count, to a tenth
				t.Errorf("variant %d (%s): at a friction of %.2g %.3g jam, at less %.3g", i, a.Latches[0].ID, mu, r.Jammed, last)
			}
			last = r.Jammed
		}
		if last > 0.5 {
			some++
		}
		last = 0
		for deg := 10.0; deg <= 60; deg += 5 {
			b, ok := steepen(rubbing(a, 0.6), deg)
			if !ok || len(b.Validate()) > 0 {
				continue
			}
			r := mustAnalyse(t, b)
			if r.Jammed < last-0.02 {
				t.Errorf("variant %d (%s): at %g deg %.3g jam, at less %.3g", i, a.Latches[0].ID, deg, r.Jammed, last)
			}
			last = r.Jammed
		}
	}
	if some < 15 {
		t.Errorf("only %d variants jam at high friction", some)
	}
}

// TestShareThatJamsAgainstTheFrictionAlone: a ring jams by friction alone, from a
// friction on that has a closed form, so the share is that of the frictions beyond it.
func TestShareThatJamsAgainstTheFrictionAlone(t *testing.T) {
	for _, deg := range []float64{46, 48, 50, 52, 54} {
		a, _ := steepen(capJob(), deg)
		a.Draws = 10000
		r := mustAnalyse(t, a)
		bead := math.Max(0.8, 0.4+0.2*(1/math.Tan(rad(deg))+1/math.Tan(rad(40)))) // of the bead
		ko, lo := wallUnder(43.2, 40, 3, bead, 0, 2000, 0.4, Long, true)
		ki, li := wallUnder(40, 36.8, 2, bead, 0, 2000, 0.4, Long, false)
		lever := (lo/ko + li/ki) / (1/ko + 1/ki)
		tan85 := math.Tan(rad(85))
		// f/(1 - f kappa) = tan 85 deg.
		from := math.Tan(math.Atan(tan85/(1+lever*tan85)) - rad(deg))
		near(t, "friction from which it locks", r.Latches[0].LocksFrom, from, 1e-4)
		lower, _ := Resolve(a.Lower)
		b := band{mu: pairFriction(lower, lower)}
		rng := rand.New(rand.NewPCG(99, 1))
		beyond, n := 0, 200000
		for range n {
			c, _ := b.draw(rng)
			beyond += one(c.mu >= from)
		}
		want := float64(beyond) / float64(n)
		if got := r.Jammed; math.Abs(got-want) > 0.016 {
			t.Errorf("%g deg: %.4f jam, %.4f of the frictions lie beyond %.4f", deg, got, want, from)
		}
		if r.Locks != (b.mu.Value >= from) {
			t.Errorf("%g deg: locks %t, friction %g, from %g on", deg, r.Locks, b.mu.Value, from)
		}
	}
}

// TestJammedStandAboveEveryForce: percentiles with those that jam counted as without
// bound, drawn once more and sorted; P95 as long as it exists, and no longer.
func TestJammedStandAboveEveryForce(t *testing.T) {
	with, without := 0, 0
	for deg := 36.0; deg <= 44; deg += 0.5 {
		a, _ := steepen(hookJob(), deg)
		a.Draws = 20000
		r := mustAnalyse(t, a)
		lower, _ := Resolve(a.Lower)
		j := readyJoint(a.Latches[0], lower, lower)
		mu := pairFriction(lower, lower).Value
		j.findNodes(mu)
		b := band{mu: pairFriction(lower, lower), lower: lower.ModulusSpread.Value, upper: lower.ModulusSpread.Value}
		rng := rand.New(rand.NewPCG(5, 5)) // other draws
		tr := newTrial([]joint{j}, []int{2})
		var all, together []float64
		for range 20000 {
			c, _ := b.draw(rng)
			tr.draw(&c, []*rand.Rand{rng}, apartShare, make([]float64, 2))
			f := tr.peak()
			if !tr.jam {
				together = append(together, f)
			} else {
				f = 1e9
			}
			all = append(all, f)
		}
		slices.Sort(all)
		slices.Sort(together)
		jam := 1 - float64(len(together))/float64(len(all))
		if math.Abs(jam-r.Jammed) > 0.025 {
			t.Errorf("%g deg: %.4f jam, drawn again %.4f", deg, r.Jammed, jam)
		}
		if r.NoP95 != (r.Jammed > JamsForP95) || r.NoP95 != (r.P95 == 0) || r.P95 != r.Design {
			t.Errorf("%g deg: %.4f jam, no P95 %t, P95 %g N, design %g N", deg, r.Jammed, r.NoP95, r.P95, r.Design)
		}
		if r.P50 > 0 {
			near(t, fmt.Sprintf("P50 at %g deg", deg), r.P50, quantile(all, 0.5), 0.06)
		} else if r.Jammed < 0.45 {
			t.Errorf("%g deg: no P50 with %.3f that jam", deg, r.Jammed)
		}
		if r.NoP95 {
			without++
			continue
		}
		with++
		if far := causesAtWorst(j, b); r.WorstJams != far {
			t.Errorf("%g deg: worst case jams %t, it does %t", deg, r.WorstJams, far)
		}
		if r.Latches[0].Jammed != r.Jammed {
			t.Errorf("%g deg: the only design jams in %g, the assembly in %g", deg, r.Latches[0].Jammed, r.Jammed)
		}
		near(t, fmt.Sprintf("P95 at %g deg", deg), r.P95, quantile(all, 0.95), 0.08)
		if flat := quantile(together, 0.95); jam > 0.01 && r.P95 < flat {
			t.Errorf("%g deg: P95 %g N is that of those that go together, %g N", deg, r.P95, flat)
		}
		if last := together[len(together)-1]; r.Worst < last*(1-1e-9) {
			t.Errorf("%g deg: worst case %g N below %g N, which goes together", deg, r.Worst, last)
		}
	}
	if with < 3 || without < 3 {
		t.Errorf("%d with a P95, %d without", with, without)
	}
}

// TestFewDrawsSeeOneInAThousand: the share that jams does not rest on the draws that
// the job asks for.
func TestFewDrawsSeeOneInAThousand(t *testing.T) {
	a, _ := steepen(hookJob(), 34)
	a.Draws = 100000
	want := mustAnalyse(t, a).Jammed
	if !(want > 0.0003 && want < 0.01) {
		t.Fatalf("%g jam: not the case to look at", want)
	}
	a.Draws = 100
	seen := 0
	for seed := range uint64(8) {
		a.Seed = seed
		got := mustAnalyse(t, a).Jammed
		seen += one(got > 0)
		if math.Abs(got-want) > 4*math.Sqrt(want/jamDraws) {
			t.Errorf("100 draws, seed %d: %g jam; of 100000 %g", seed, got, want)
		}
	}
	if seen < 7 {
		t.Errorf("%d of 8 seeds saw one", seen)
	}
}

// TestWhatLocksHasNoForce: of every kind, locked at its nominal friction and alone or
// beside a latch that does not lock: no figure of a force, and none without bound.
func TestWhatLocksHasNoForce(t *testing.T) {
	free := armJob().Latches[0]
	free.ID = "free"
	locked := 0
	for i, a := range append(variants(), hookJob()) {
		a = rubbing(a, 2)
		alone := len(a.Latches) == 1
		if more := a; alone {
			more.Latches = append(slices.Clone(a.Latches), free)
			checkLocked(t, fmt.Sprintf("variant %d beside another", i), more)
		}
		if checkLocked(t, fmt.Sprintf("variant %d", i), a) {
			locked++
		}
	}
	if locked < 12 {
		t.Errorf("%d variants lock: too few", locked)
	}
}

func checkLocked(t *testing.T, name string, a Assembly) bool {
	t.Helper()
	if len(a.Validate()) > 0 {
		return false
	}
	r := mustAnalyse(t, a)
	checkFigures(t, name, reflect.ValueOf(r))
	for _, l := range r.Latches {
		for _, line := range Explain(a, l.ID) {
			if !finite(line.Value) || strings.Contains(line.Numbers, "NaN") || strings.Contains(line.Numbers, "Inf") {
				t.Errorf("%s: %+v", name, line)
			}
			if l.Locks && (line.Unit == "N" && strings.HasPrefix(line.Symbol, "W")) {
				t.Errorf("%s explains a force: %+v", name, line)
			}
		}
		if l.Locks && l.Separation+l.PeakEach+l.PeakAll+l.Work+l.SeatForce != 0 {
			t.Errorf("%s: latch %s locks and has %+v", name, l.ID, l)
		}
		if l.Locks != (l.LocksFrom > 0 && l.LocksFrom <= 2) {
			t.Errorf("%s: locks %t, from %g on", name, l.Locks, l.LocksFrom)
		}
	}
	if r.Locks {
		if r.Peak+r.PeakStack+r.Work+r.SeatForce+r.Springback+r.P95+r.Design+r.WorkP95 != 0 || !r.NoP95 || !(r.Stroke > 0) {
			t.Errorf("%s locks: %+v", name, r)
		}
		for _, p := range r.Curve.Points(50) {
			for _, l := range r.Latches {
				if l.Locks && p[0] < l.Stroke-1e-5 && a.Latches[0].Engage == nil {
					t.Errorf("%s: the curve goes on to a lift of %g mm, past where %s locks", name, p[0], l.ID)
				}
			}
		}
		if !slices.ContainsFunc(r.Warnings, func(w warning.Warning) bool {
			return w.Number == warnJam && strings.Contains(w.Text.String(), "no push joins it")
		}) {
			t.Errorf("%s: not said: %v", name, r.Warnings)
		}
	}
	return r.Locks
}

// TestCurveEndsWhereALatchLocks: beside a latch that makes contact first the force is
// that of this one down to where the other locks.
func TestCurveEndsWhereALatchLocks(t *testing.T) {
	a := rubbing(armJob(), 0.3)
	hook := hookJob().Latches[0]
	c := *hook.Cantilever
	c.MatingAngle, c.Flexes = rad(75), "lower"
	hook.Cantilever, hook.Engage = &c, ptr(0.4)
	alone := mustAnalyse(t, a)
	a.Latches = append(a.Latches, hook)
	r := mustAnalyse(t, a)
	if !r.Locks || r.Latches[0].Locks || !r.Latches[1].Locks {
		t.Fatalf("locks %t, arm %t, hook %t", r.Locks, r.Latches[0].Locks, r.Latches[1].Locks)
	}
	points := r.Curve.Points(60)
	for k := range 40 {
		lift := 0.401 + (r.Stroke-0.401)*float64(k)/39
		near(t, fmt.Sprintf("force at %g mm", lift), r.Curve.At(lift), alone.Curve.At(lift), 1e-9)
	}
	if end := points[len(points)-1][0]; math.Abs(end-0.4) > 1e-5 {
		t.Errorf("the curve ends at a lift of %g mm, the hook locks at 0.4 mm", end)
	}
	near(t, "stroke", r.Stroke, alone.Stroke, 1e-12)
	if n := len(r.Band); n == 0 || n == bandLifts || r.Band[n-1].Lift < 0.4 {
		t.Errorf("band of %d points down to %v", n, r.Band[max(0, n-1)])
	}
	near(t, "force of the arms", r.Latches[0].PeakAll, alone.Peak, 1e-12)
}

// TestNoDrawIsBeyondTheHighestFriction: what says that none can jam looks at the
// highest friction that is drawn.
func TestNoDrawIsBeyondTheHighestFriction(t *testing.T) {
	lower, _ := Resolve(hookJob().Lower)
	b := band{mu: pairFriction(lower, lower)}
	rng, most := rand.New(rand.NewPCG(4, 4)), 0.0
	for range 100000 {
		c, _ := b.draw(rng)
		most = max(most, c.mu)
	}
	if h := b.highest(); most > h || most < 0.98*h {
		t.Errorf("drawn up to %g, highest %g", most, h)
	}
}

// causesAtWorst says whether a joint jams with everything at its bad end.
func causesAtWorst(j joint, b band) bool {
	c := b.worst()
	s := j.share(&c)
	var p profile
	var st state
	j.at(&s, own{size: j.size + j.worst, outer: j.outer.wall, inner: j.inner.wall}, &p, &st)
	return st.jam
}

// TestEachDesignHasItsShare: beside a latch that cannot jam the share is that of the
// one that does; with two that do, it is no less than either and no more than both.
func TestEachDesignHasItsShare(t *testing.T) {
	a, _ := steepen(hookJob(), 40)
	a.Draws = 2000
	free, _ := steepen(hookJob(), 10)
	free.Latches[0].ID = "free"
	a.Latches = append(a.Latches, free.Latches[0])
	r := mustAnalyse(t, a)
	if r.Latches[1].Jammed != 0 || r.Latches[0].Jammed != r.Jammed || r.Jammed == 0 {
		t.Errorf("%g and %g of %g jam", r.Latches[0].Jammed, r.Latches[1].Jammed, r.Jammed)
	}
	more, _ := steepen(hookJob(), 41)
	more.Latches[0].ID = "more"
	a.Latches[1] = more.Latches[0]
	r = mustAnalyse(t, a)
	one, two := r.Latches[0].Jammed, r.Latches[1].Jammed
	if !(one > 0 && two > one && r.Jammed >= two && r.Jammed <= one+two) {
		t.Errorf("%g and %g of %g jam", one, two, r.Jammed)
	}
}
