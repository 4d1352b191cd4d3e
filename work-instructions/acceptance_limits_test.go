package workinstructions

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"ramnest/force/method"
	"ramnest/force/unit"
	"ramnest/work-instructions/catalogue"
)

// What a good assembly fulfils, from the step to the list: each criterion is there when
// what it speaks of is, with its limits as figures, and not otherwise.
func TestCriteriaFollowFromTheStep(t *testing.T) {
	full := func() Step {
		return Step{Anvil: "anvil", Seat: Gap{Low: 0.1, High: 0.4, Between: [2]string{"lower", "upper"}}, Decision: method.Decision{Chosen: method.ByPress},
			Force: Force{P95: 321, Humps: 2}, Latches: []Latch{{ID: "rim", Count: 1}, {ID: "hook", Count: 4}}, Pull: 45}
	}
	list := func(s Step) string {
		var out []string
		for _, k := range s.Criteria(unit.System{}) {
			out = append(out, fmt.Sprintf("%s %g %g %s", k.ID, k.Low, k.High, k.Unit))
		}
		return strings.Join(out, ", ")
	}
	const seat, stop, humps, most, latches, pull = "seat 0.1 0.4 mm, ", "stop 0 0 , ", "humps 2 2 1, ", "force 0 321 N, ", "latches 5 5 1, ", "pull 45 0 N"
	for _, c := range []struct {
		name   string
		change func(s *Step)
		want   string
	}{
		{"all", func(*Step) {}, seat + stop + humps + most + latches + pull},
		{"no anvil", func(s *Step) { s.Anvil = "" }, seat + humps + most + latches + pull},
		{"gap under the anvil", func(s *Step) { s.Seat.Kind = UnderAnvil }, seat + humps + most + latches + pull},
		{"no anvil, a height", func(s *Step) { s.Anvil, s.Seat.Kind = "", OverAll }, seat + humps + most + latches + pull},
		{"mallet", func(s *Step) { s.Decision.Chosen = method.ByMallet }, seat + stop + latches + pull},
		{"hand", func(s *Step) { s.Decision.Chosen = method.ByHand }, seat + stop + humps + latches + pull},
		{"no hump", func(s *Step) { s.Force.Humps = 0 }, seat + stop + most + latches + pull},
		{"no P95", func(s *Step) { s.Force.P95 = 0 }, seat + stop + humps + latches + pull},
		{"no latch", func(s *Step) { s.Latches = nil }, seat + stop + humps + most + pull},
		{"no pull", func(s *Step) { s.Pull = 0 }, seat + stop + humps + most + strings.TrimSuffix(latches, ", ")},
	} {
		s := full()
		c.change(&s)
		if got := list(s); got != c.want {
			t.Errorf("%s:\ngot  %s\nwant %s", c.name, got, c.want)
		}
	}
	find := func(s Step, id string) Criterion {
		for _, k := range s.Criteria(unit.System{}) {
			if k.ID == id {
				return k
			}
		}
		t.Fatalf("no %s", id)
		return Criterion{}
	}
	some, every := full(), full()
	some.Seat.First, some.Seat.Each = 7, 12
	if a, b := find(some, "seat").Often, find(every, "seat").Often; a == b || !strings.Contains(a, "7") || !strings.Contains(a, "12") {
		t.Errorf("%q and %q", a, b)
	}
	past := full()
	past.Facts.Past = 0.2
	if a, b := find(past, "stop").Limit, find(full(), "stop").Limit; a == b {
		t.Errorf("past the seat or not: %q", a)
	}
	under, landed := full(), full()
	under.Seat.Kind, landed.Seat.Kind, landed.Facts.Past = UnderAnvil, UnderAnvil, 0.2
	if a, b := find(under, "seat").Limit, find(landed, "seat").Limit; a == b || !strings.Contains(a, b) {
		t.Errorf("hard on each other counts where the stop lies not past the seat: %q, past it %q", a, b)
	}
	if k := find(full(), "latches"); !strings.Contains(k.What, "rim × 1, hook × 4") || !strings.Contains(k.Limit, "5") {
		t.Errorf("%+v", k)
	}
	if k := find(full(), "force"); !strings.Contains(k.Limit, "321 N") {
		t.Errorf("%+v", k)
	}
	if k := find(full(), "pull"); !strings.Contains(k.Limit, "45 N") {
		t.Errorf("%+v", k)
	}
}

// What is measured, where and with what: each kind in words of its own, or in the job's.
func TestGapInWords(t *testing.T) {
	f := figures{words: catalogue.English}
	seen := map[string]bool{}
	for _, kind := range []GapKind{BetweenParts, OverAll, BelowRim, OnPair, UnderAnvil} {
		g := Gap{Kind: kind, Between: [2]string{"tray", "lid"}, Alone: [2]float64{12.5, 7.25}}
		where := strings.ReplaceAll(f.where(g), nbsp, " ")
		if seen[where] || f.what(g) == "" || f.gauge(g) == "" {
			t.Errorf("%q: %q %q %q", kind, f.what(g), where, f.gauge(g))
		}
		seen[where] = true
		if lower, upper := strings.Index(where, "tray"), strings.Index(where, "lid"); (kind == UnderAnvil) != (lower < 0 && upper < 0) || kind != UnderAnvil && (lower < 0 || upper < 0) {
			t.Errorf("%q: %q", kind, where)
		}
		if a, b := strings.Index(where, "12.5"), strings.Index(where, "7.2"); (kind == OnPair) != (a >= 0 && b > a) {
			t.Errorf("%q: %q", kind, where)
		}
		g.What, g.Where, g.Gauge = "the what", "the where", "the gauge"
		if f.what(g) != "the what" || f.where(g) != "the where" || f.gauge(g) != "the gauge" {
			t.Errorf("the job's own words: %q %q %q", f.what(g), f.where(g), f.gauge(g))
		}
	}
}

// The limits printed never take in what those computed leave out, in either system.
func TestPrintedGapIsNeverWider(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 9))
	for range 2000 {
		lo := rng.Float64()
		hi := lo + rng.Float64()
		for _, sys := range []unit.System{{}, {Inch: true}} {
			f := figures{units: sys, words: catalogue.English}
			of := 1.0
			if sys.Inch {
				of = 25.4
			}
			var a, b float64
			text := strings.ReplaceAll(f.gap(Gap{Low: lo, High: hi}), nbsp, " ")
			if n, err := fmt.Sscanf(text, "%g to %g", &a, &b); n != 2 {
				t.Fatalf("%q: %v", text, err)
			}
			if a*of < lo-1e-9 || b*of > hi+1e-9 || a*of > lo+0.01*of || b*of < hi-0.01*of {
				t.Fatalf("%q of %g to %g mm", text, lo, hi)
			}
		}
	}
	f := figures{words: catalogue.English}
	most, least := f.gap(Gap{High: 0.25}), f.gap(Gap{Low: 0.25})
	if most == least || !strings.Contains(most, "0.25") || !strings.Contains(least, "0.25") || strings.Contains(most+least, " to ") {
		t.Errorf("%q and %q", most, least)
	}
	if text := f.gap(Gap{Low: -0.3, High: 0.3}); text != f.gap(Gap{High: 0.3}) {
		t.Errorf("%q", text)
	}
}
