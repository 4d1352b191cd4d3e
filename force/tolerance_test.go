package force

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"ramnest/force/planar"
)

// TestPeakOfDrawsIsThePeakOfTheSum draws mixed jobs and scans the sum densely.
// The nodes may miss the true peak by half a per cent where balls and ramps add.
func TestPeakOfDrawsIsThePeakOfTheSum(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	kinds := []func() Assembly{capJob, ballJob, armJob, pinJob, collarJob, ribJob}
	worst := 0.0
	for round := range 120 {
		a := Assembly{Lower: MaterialSpec{Material: "PA12", Build: "along"}, Upper: MaterialSpec{Material: "PA12"}}
		for i := range 1 + rng.IntN(4) {
			l := kinds[rng.IntN(len(kinds))]().Latches[0]
			l.ID = fmt.Sprint("l", i)
			l.At = make([]planar.Point, 1+rng.IntN(5))
			l.Engage = ptr(1.5 + 3*rng.Float64())
			a.Latches = append(a.Latches, l)
		}
		if faults := a.Validate(); len(faults) > 0 {
			t.Fatal(faults)
		}
		lower, _ := Resolve(a.Lower)
		upper, _ := Resolve(a.Upper)
		mu := pairFriction(lower, upper).Value
		joints, counts := make([]joint, len(a.Latches)), make([]int, len(a.Latches))
		for i, l := range a.Latches {
			joints[i], counts[i] = readyJoint(l, lower, upper), len(l.At)
			joints[i].findNodes(mu)
		}
		tr := newTrial(joints, counts)
		means := make([]float64, 2*len(joints))
		for range 4 {
			c := causes{mu: mu * (0.75 + 0.5*rng.Float64()), lower: 0.9, upper: 1.1, model: 0.4 * rng.NormFloat64(), processLower: 0.3 * rng.NormFloat64(), processUpper: 0.3 * rng.NormFloat64()}
			tr.draw(&c, slices.Repeat([]*rand.Rand{rng}, len(joints)), 0.35, means)
			var dense float64
			for i := range 8001 {
				dense = max(dense, tr.sum(6*float64(i)/8000))
			}
			got := tr.peak()
			worst = max(worst, 1-got/dense)
			if got < 0.995*dense || got > 1.002*dense+1e-9 {
				t.Errorf("round %d: peak %g, scan %g", round, got, dense)
			}
		}
	}
	t.Logf("largest shortfall %.3g %%", 100*worst)
}

func TestDrawsAllocateNothing(t *testing.T) {
	count := func(draws int) float64 {
		a := mixed24()
		a.Draws = draws
		return testing.AllocsPerRun(3, func() { mustAnalyse(t, a) })
	}
	// A block of draws has tables of its own, and the runtime itself allocates now and then;
	// a draw that did would show as 3800 more.
	if few, many := count(200), count(4000); math.Abs(many-few) > 400 {
		t.Errorf("%g allocations with 200 draws, %g with 4000", few, many)
	}
}

func TestNoToleranceLeavesOnlyTheNominal(t *testing.T) {
	a := pinJob()
	zero := ptr(0.0)
	a.Lower.Figures = Figures{FrictionSpread: zero, ModulusSpread: zero, Tolerance: zero, ToleranceShare: zero}
	a.Upper.Figures = a.Lower.Figures
	a.Latches[0].PressFit.InterferenceTol = zero
	lower, _ := Resolve(a.Lower)
	upper, _ := Resolve(a.Upper)
	joints := []joint{readyJoint(a.Latches[0], lower, upper)}
	joints[0].modelUp, joints[0].modelDown = 0, 0
	joints[0].findNodes(0.4)
	r := Result{Latches: make([]LatchResult, 1)}
	a.Draws = 100
	r.tolerance(t.Context(), a, joints, []int{2}, band{mu: pairFriction(lower, upper)})
	want := mustAnalyse(t, a).Peak
	for _, got := range []float64{r.P5, r.P50, r.P95, r.Worst} {
		near(t, "without any tolerance", got, want, 1e-12)
	}
	if len(r.Spread) != 0 {
		t.Errorf("spread of nothing: %v", r.Spread)
	}
}

// TestLooseShareAgainstTheNormal: the size of a fit is normal, so the share of
// loose ones is known.
func TestLooseShareAgainstTheNormal(t *testing.T) {
	a := pinJob()
	a.Draws = 40000
	p := a.Latches[0].PressFit
	a.Latches[0].At = []planar.Point{{X: 0, Y: 0}}
	p.Interference, p.InterferenceTol = 0.03, ptr(0.04)
	r := mustAnalyse(t, a)
	// Two standard deviations are 0.04: loose below 1.5 of them.
	want := 0.5 * math.Erfc(1.5/math.Sqrt2)
	if math.Abs(r.Loose-want) > 0.006 {
		t.Errorf("loose share %g, want %g", r.Loose, want)
	}
}

func TestStandardErrorCoversTheScatterOfP95(t *testing.T) {
	var sum, square, stated float64
	const n = 40
	for i := range n {
		a := armJob()
		a.Seed, a.Draws = uint64(100+i), 2000
		r := mustAnalyse(t, a)
		sum, square, stated = sum+r.P95, square+r.P95*r.P95, stated+r.P95StdErr
	}
	scatter := math.Sqrt(square/n - sum*sum/(n*n))
	if ratio := stated / n / scatter; ratio < 0.6 || ratio > 1.6 {
		t.Errorf("stated standard error is %.2f of the scatter between seeds", ratio)
	}
}

// TestSharesAgainstAKnownSum: one pin whose only spread is friction and size.
// The peak is close to their product, so the shares follow from the variances.
func TestSharesAgainstAKnownSum(t *testing.T) {
	a := pinJob()
	zero := ptr(0.0)
	a.Latches[0].At = []planar.Point{{X: 0, Y: 0}}
	a.Draws = 60000
	a.Lower.Figures = Figures{Modulus: ptr(2000.0), SecantZero: ptr(noBound), ModulusSpread: zero, FrictionSpread: ptr(0.4), Friction: ptr(0.4)}
	a.Upper.Figures = Figures{ModulusSpread: zero}
	p := a.Latches[0].PressFit
	p.InterferenceTol = ptr(0.02)
	r := mustAnalyse(t, a)
	vf := math.Pow(math.Log(1.4)/2, 2)        // log-normal, 1.4 times at two deviations
	vs := math.Pow(0.02/2/0.05, 2)            // normal, two deviations 0.02 of 0.05
	vm := math.Pow(math.Log(pressModel)/2, 2) // model
	whole := vf + vs + vm + vf*vs
	got := map[string]float64{}
	for _, s := range r.Spread {
		got[s.Input] = s.Share
	}
	for name, want := range map[string]float64{"friction": vf / whole, "sizes of pin": vs / 2 / whole, "surfaces of lower": vs / 4 / whole, "surfaces of upper": vs / 4 / whole} {
		if math.Abs(got[name]-want) > 0.02 {
			t.Errorf("share of %s: %.3f, want %.3f; all %v", name, got[name], want, r.Spread)
		}
	}
	for i, s := range r.Spread {
		if i > 0 && s.Share > r.Spread[i-1].Share {
			t.Errorf("shares out of order: %v", r.Spread)
		}
	}
}

// TestWorstHoldsAlmostEveryDraw: the plain worst case stands above P95 for every
// kind.
func TestWorstStandsAboveP95(t *testing.T) {
	for _, a := range variants() {
		r := mustAnalyse(t, a)
		if !(r.P5 <= r.P50 && r.P50 <= r.P95 && r.P95 < r.Worst && r.Design == r.P95) {
			t.Errorf("%s: %g %g %g worst %g", a.Latches[0].ID, r.P5, r.P50, r.P95, r.Worst)
		}
		if r.WorkP95 < r.Work*0.9 {
			t.Errorf("%s: work P95 %g below the nominal %g", a.Latches[0].ID, r.WorkP95, r.Work)
		}
	}
}

func TestPercentilesOfKnownValues(t *testing.T) {
	v := make([]float64, 2001)
	for i := range v {
		v[i] = float64(i) / 2000
	}
	p5, p50, p95 := percentiles(v)
	near(t, "P5", p5, 0.05, 1e-12)
	near(t, "P50", p50, 0.50, 1e-12)
	near(t, "P95", p95, 0.95, 1e-12)
	// Even values: the error of the rank is that of the value.
	near(t, "standard error of P95", p95Error(v), math.Sqrt(0.95*0.05/2001), 1e-9)
}

// TestDrawsAreEvenOrNormalAsStated: moduli even over their spread, and so what
// asperities lose; friction log-normal by its two ends, the rest normal, all cut at three.
func TestDrawsAreEvenOrNormalAsStated(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	b := band{mu: Friction{Value: 0.4, Low: 0.25, High: 0.5}, lower: 0.15, upper: 0.1, rough: true}
	const n = 40000
	var low, high, mean, square [6]float64
	var least, most, half float64
	for range n {
		c, x := b.draw(rng)
		least, most, half = math.Min(least, x[6]), math.Max(most, x[6]), half+c.flatten/n
		if math.Abs(c.flatten-(x[6]+3)/6) > 1e-12 {
			t.Fatal("asperities of another draw")
		}
		for i, v := range x[:6] {
			low[i], high[i], mean[i], square[i] = math.Min(low[i], v), math.Max(high[i], v), mean[i]+v/n, square[i]+v*v/n
		}
		mu := 0.4 * math.Pow(0.5/0.4, x[0]/2)
		if x[0] < 0 {
			mu = 0.4 * math.Pow(0.25/0.4, -x[0]/2)
		}
		for i, v := range [6][2]float64{{c.mu, mu}, {c.lower, 1 + 0.15*x[1]}, {c.upper, 1 + 0.1*x[2]}, {c.model, x[3] / 2}, {c.processLower, x[4] * 0.5 / math.Sqrt2}, {c.processUpper, x[5] * 0.5 / math.Sqrt2}} {
			if math.Abs(v[0]-v[1]) > 1e-12 {
				t.Fatalf("cause %d is %g, want %g", i, v[0], v[1])
			}
		}
	}
	if least < -3 || least > -2.99 || most > 3 || most < 2.99 || math.Abs(half-0.5) > 0.01 {
		t.Errorf("asperities from %g to %g, mean %g", least, most, half)
	}
	for i := range 6 {
		end, variance := 1.0, 1.0/3
		if i == 0 || i >= 3 {
			end, variance = 3, 0.9950 // of a normal draw, what lies beyond three put there: from its integral
		}
		if high[i] > end || high[i] < 0.995*end || low[i] < -end || low[i] > -0.995*end || math.Abs(mean[i]) > 0.02 || math.Abs(square[i]/variance-1) > 0.03 {
			t.Errorf("input %d: %g to %g, mean %g, mean square %g; want +-%g and %g", i, low[i], high[i], mean[i], square[i], end, variance)
		}
	}
}

// TestWorkOfDrawsIsTheWorkOfTheirCurves: balls by three points of Gauss, to two
// per cent.
func TestWorkOfDrawsIsTheWorkOfTheirCurves(t *testing.T) {
	for _, a := range everyJob() {
		lower, _ := Resolve(a.Lower)
		upper, _ := Resolve(a.Upper)
		mu := pairFriction(lower, upper).Value
		j := readyJoint(a.Latches[0], lower, upper)
		j.findNodes(mu)
		tr := newTrial([]joint{j}, []int{3})
		rng, means := rand.New(rand.NewPCG(3, 4)), make([]float64, 2)
		for range 20 {
			c := causes{mu: mu * (0.8 + 0.4*rng.Float64()), lower: 1, upper: 1}
			tr.draw(&c, []*rand.Rand{rng}, 0.2, means)
			near(t, a.Latches[0].ID, tr.work(), sumCurve(tr.profiles, []int{1, 1, 1}).Work(), 0.02)
		}
	}
}

// TestSharesOfAKnownSum: a peak of four times one input and three times another has
// 16 and 9 of 25 parts from them.
func TestSharesOfAKnownSum(t *testing.T) {
	v := newVariance([]Latch{{ID: "a"}})
	rng := rand.New(rand.NewPCG(5, 6))
	for range 60000 {
		for i := range v.x {
			v.x[i] = normal(rng)
			if i == 1 || i == 2 {
				v.x[i] = 2*rng.Float64() - 1
			}
		}
		v.add(100 + 4*v.x[1]*math.Sqrt(3) + 3*v.x[len(commonInputs)])
	}
	got := v.shares()
	if len(got) != 2 || got[0].Input != "modulus of lower" || got[1].Input != "sizes of a" || math.Abs(got[0].Share-0.64) > 0.015 || math.Abs(got[1].Share-0.36) > 0.015 {
		t.Errorf("got %v, want 0.64 of the modulus of lower, 0.36 of the sizes", got)
	}
}
