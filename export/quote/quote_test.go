package quote

import (
	"math"
	"strings"
	"testing"
)

func TestPublished(t *testing.T) {
	f := func(x float64, err error) float64 {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	n := func(x int, err error) float64 { t.Helper(); return f(float64(x), err) }
	build := [3]float64{200, 200, 300}
	even, ok, err := BreakEven(120, 18, 11, 36, 0)
	if err != nil || !ok {
		t.Fatal(ok, err)
	}
	const grs = "Gibson, Rosen, Stucker, Additive Manufacturing Technologies, eq. 16.7 and 16.8; layer and recoat seconds own"
	for _, c := range []struct {
		id, source, mark, check string
		want, got, relTol       float64
	}{
		{"recoat-time layers", grs, "read", "self", 600, n(Layers(60, 0.1)), 0},
		{"recoat-time hours", grs, "read", "self", 1.6667, f(RecoatTime(60, 0.1, 10)) / 3600, 5e-4},
		{"packing-boxes pieces", "boxes with spacing", "own", "cross_checked", 54, n(Packing(build, [3]float64{60, 60, 40}, 5)), 0},
		{"break-even", "tooling over saving, rounded up", "own", "cross_checked", 1715, float64(even), 0},
		{"tmu", "MTM-1", "memory", "cross_checked", 0.5832, 16.2 * SecondsPerTMU, 5e-4},
		{"press-cycle-mtm", "MTM-1 elements, sequence own", "memory", "self", 5.8, PressCycle(), 2e-3},
	} {
		t.Run(c.id, func(t *testing.T) {
			t.Logf("%s; %s; %s; want %g, got %g", c.source, c.mark, c.check, c.want, c.got)
			if !(math.Abs(c.got-c.want) <= c.relTol*math.Abs(c.want)) {
				t.Errorf("got %g, want %g within %g", c.got, c.want, c.relTol)
			}
		})
	}
}

func TestNeverPays(t *testing.T) {
	if _, ok, err := BreakEven(100, 10, 12, 40, 0); ok || err != nil {
		t.Errorf("slower tooling pays: %v %v", ok, err)
	}
}

func TestFaults(t *testing.T) {
	nan := math.NaN()
	second := func(_ any, err error) error { return err }
	_, _, even := BreakEven(nan, 1, 1, 1, 1)
	for _, c := range []struct {
		want string
		err  error
	}{
		{"build[1]", second(Packing([3]float64{1, 0, 1}, [3]float64{1, 1, 1}, 1))},
		{"box[2]", second(Packing([3]float64{1, 1, 1}, [3]float64{1, 1, nan}, 1))},
		{"spacing", second(Packing([3]float64{1, 1, 1}, [3]float64{1, 1, 1}, -1))},
		{"layer", second(Layers(10, 0))},
		{"recoat", second(RecoatTime(10, 1, nan))},
		{"cost", even},
		{"blows", second(MalletCycle(0))},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("want a fault at %s, got %v", c.want, c.err)
		}
	}
}
