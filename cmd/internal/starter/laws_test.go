package starter_test

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"ramnest/cmd/internal/guide"
	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/cmd/internal/starter"
	"ramnest/fixture/coupon"
	"ramnest/force"
)

// first is the first job of a kind, with its one press step.
func first(t *testing.T, kind, units string) solve.Step {
	t.Helper()
	text, err := starter.Write(starter.Answers{Number: "L-1", Title: "Laws", Date: "2026-11-25", Units: units, Kind: kind, Material: "PA12", Process: "PBF", Rate: "30"})
	if err != nil {
		t.Fatalf("no first job of the kind: %v", err)
	}
	j, _ := solvetest.Read(t, kind+".yaml", string(text))
	steps, err := solve.Forces(context.Background(), j)
	if err != nil {
		t.Fatal(err)
	}
	if got := steps[0].Latches[0].Kind(); len(steps) != 1 || got != kind {
		t.Fatalf("%d steps, the first latch is %q", len(steps), got)
	}
	return steps[0]
}

func close(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		t.Errorf("%s: %.9g, want %.9g", what, got, want)
	}
}

// peaked analyses an assembly with another latch.
func peaked(t *testing.T, a force.Assembly, l force.Latch) force.Result {
	t.Helper()
	a.Latches, a.Draws = []force.Latch{l}, 300
	r, err := force.Analyse(a)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestLawsOfEveryKind runs over the registry: whatever kind stands there has a first job,
// and its latch obeys what any latch must.
func TestLawsOfEveryKind(t *testing.T) {
	for _, kind := range force.Kinds() {
		t.Run(kind, func(t *testing.T) {
			t.Parallel()
			s := first(t, kind, "mm")
			a, l := s.Assembly, s.Latches[0]
			lower, upper := s.LowerMaterial, s.UpperMaterial
			size := l.Size(lower, upper)
			exact := l.Toleranced(size.Value / 10)

			// Inches of the same job: the same force, but for the fourth decimal, on both
			// diameters if the size is written so.
			const grain = 25.4 * 0.5e-4
			close(t, "peak in inches", first(t, kind, "in").Result.Peak, s.Result.Peak, 0.01+2*grain/size.Value)

			// Resize reaches its target by either member, and leaves the latch itself alone.
			for _, m := range []force.Member{force.Outer, force.Inner} {
				close(t, "size", l.Resized(1.1*size.Value, m).Size(lower, upper).Value, 1.1*size.Value, 1e-9)
			}
			close(t, "size of what was resized", l.Size(lower, upper).Value, size.Value, 0)
			close(t, "tolerance", exact.Size(lower, upper).Tolerance(), size.Value/10, 1e-9)

			// Force rises with the size and with friction; without size there is none.
			last := 0.0
			for _, share := range []float64{0.3, 0.6, 0.8, 1} {
				r := peaked(t, a, exact.Resized(share*size.Value, force.Outer))
				if !(r.Peak > last) || !(r.P5 <= r.P50 && r.P50 <= r.P95) {
					t.Errorf("%.1f of the size: %g N after %g; %g, %g, %g", share, r.Peak, last, r.P5, r.P50, r.P95)
				}
				last = r.Peak
			}
			whole := last
			if r := peaked(t, a, l.Toleranced(1e-5).Resized(max(1e-4, 1e-3*size.Value), force.Outer)); !(r.Peak < 0.02*whole) {
				t.Errorf("next to no size takes %g N of %g", r.Peak, whole)
			}
			last = -1
			for _, mu := range []float64{0, 0.1, 0.25, 0.4} {
				b := a
				b.Lower.Friction, b.Upper.Friction = &mu, &mu
				r := peaked(t, b, exact)
				if !(r.Peak > last) {
					t.Errorf("friction %g: %g N after %g", mu, r.Peak, last)
				}
				last = r.Peak
			}

			// The explanation states the peak; hold and home are there, in their order.
			one := peaked(t, a, exact)
			at := one.Latches[0]
			stated := false
			for _, line := range force.Explain(force.Assembly{Lower: a.Lower, Upper: a.Upper, Shop: a.Shop, Latches: []force.Latch{exact}}, l.ID) {
				stated = stated || line.ID != "" && line.Unit == "N" && math.Abs(line.Value-at.PeakEach) < 1e-6*at.PeakEach
			}
			if !stated {
				t.Errorf("no line of the explanation gives the %g N", at.PeakEach)
			}
			if !(at.HomeLeast <= at.Home) || !at.SelfLocking && !(at.Separation > 0 && at.SeparationLow <= at.Separation) {
				t.Errorf("home %g, at least %g; separation %g from %g", at.Home, at.HomeLeast, at.Separation, at.SeparationLow)
			}
			if k := l.Joint(); k.Snaps() != (at.SeatForce == 0) {
				t.Errorf("snaps %v, and %g N at the seat", k.Snaps(), at.SeatForce)
			}

			// What eases it does.
			if k, what := exact.Joint().Looser(0.8); k != nil {
				if r := peaked(t, a, exact.With(k)); !(r.Peak < one.Peak) || what.String() == "" {
					t.Errorf("%s: %g N of %g", what, r.Peak, one.Peak)
				}
			}
			if k, key, tried := exact.Joint().Gentler(20 * math.Pi / 180); tried {
				if r := peaked(t, a, exact.With(k)); !(r.Peak < one.Peak) || key == "" {
					t.Errorf("%s of 20 deg: %g N of %g", key, r.Peak, one.Peak)
				}
			}

			// Each pair of its ladder is a job of its own with the figures that it expects.
			set, err := coupon.Make(coupon.Ladder{Latch: l, Lower: a.Lower, Upper: a.Upper, Shop: a.Shop, Steps: 3, Seed: a.Seed, Draws: 300})
			if err != nil {
				t.Fatal(err)
			}
			for _, step := range set.Steps {
				if step.Expected.Loose {
					continue
				}
				b := a
				b.Service = nil
				r := peaked(t, b, step.Latch)
				close(t, "peak of a pair", r.Peak, step.Expected.Peak, 1e-12)
				close(t, "P95 of a pair", r.P95, step.Expected.P95, 1e-12)
				close(t, "size of a pair", step.Latch.Size(lower, upper).Value, step.Size, 1e-9)
			}
			for _, body := range set.Bodies {
				if shape, err := body.Mesh.Check(); err != nil || shape.Shells != 1 {
					t.Errorf("%s: %d shells, %v", body.Name, shape.Shells, err)
				}
			}

			// A point forgotten is noticed, and every warning has its page.
			slip := force.Assembly{Lower: a.Lower, Upper: a.Upper, Shop: a.Shop, Latches: []force.Latch{l.Resized(size.Value/100, force.Outer)}}
			if len(slip.Implausible()) == 0 && size.Value > 0.05 {
				t.Errorf("a hundredth of the %s is believed", size.Name)
			}
			for _, w := range append(at.Warnings, one.Warnings...) {
				if _, ok := guide.WarningOf(w.Number); !ok {
					t.Errorf("W%d has no page", w.Number)
				}
			}
			named(t, kind)
		})
	}
}

// named says where the words of a kind are missing: the topic of latches, the languages
// of the sheet.
func named(t *testing.T, kind string) {
	t.Helper()
	if topic, _ := guide.TopicOf("latches"); !regexp.MustCompile(`(?m)^ +` + kind + ` `).MatchString(topic.String()) {
		t.Errorf("the topic latches does not say what %s is", kind)
	}
	files, err := filepath.Glob("../../../work-instructions/catalogue/*.txt")
	if err != nil || len(files) == 0 {
		t.Fatal(err, files)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(text), "\nkind."+strings.ReplaceAll(kind, "_", " ")+" = ") {
			t.Errorf("%s has no word for %s", filepath.Base(name), strconv.Quote(kind))
		}
	}
}
