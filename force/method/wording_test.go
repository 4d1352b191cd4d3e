package method

import (
	"math/rand/v2"
	"ramnest/force/unit"
	"strings"
	"testing"
)

// What a person reads: short sentences, each with one colon at most beside that of a
// refusal, nothing that is no number, no rows of pipes.
func TestSentencesCanBeRead(t *testing.T) {
	rng := rand.New(rand.NewPCG(51, 52))
	check := func(text string) {
		t.Helper()
		if text == "" || strings.ContainsAny(text, "|\n") || strings.Contains(text, "  ") || strings.Contains(text, "NaN") || strings.Contains(text, "Inf") || strings.Contains(text, "..") {
			t.Fatalf("%q", text)
		}
		if strings.HasSuffix(text, ".") || strings.HasSuffix(text, " ") || strings.HasSuffix(text, ":") {
			t.Fatalf("ends badly: %q", text)
		}
		for _, s := range strings.Split(text, ". ") {
			if len(s) > 260 || strings.Count(s, ": ") > 2 {
				t.Fatalf("%d characters: %q", len(s), s)
			}
		}
	}
	none := 0
	for range 100 {
		d := anyDemand(rng)
		got := Choose(d, Bench{}, nil)
		for _, text := range append([]unit.Text{got.Reason, got.Next, got.Tipping, unit.Say(got.RateMatters)}, got.Advice...) {
			check(text.String())
		}
		for _, a := range got.Options {
			check(a.Reason.String())
			if strings.Count(a.Reason.String(), ". ") > 2 {
				t.Fatalf("more than three sentences: %q", a.Reason)
			}
			if a.Placement != nil {
				check(a.Placement.Text().String())
				check(a.Placement.Hang.String())
			}
		}
		if got.Chosen == None {
			none++
			if n := strings.Count(got.Reason.String(), ". "); n != 3 {
				t.Fatalf("%d sentences about three methods: %q", n, got.Reason)
			}
		}
	}
	if none < 10 {
		t.Fatalf("only %d times none: the draw is no test", none)
	}
}

// Every limit says how far it can be trusted, and what is the package's own is
// marked so, in its source and in the reason where it decides.
func TestEveryLimitIsMarked(t *testing.T) {
	rng := rand.New(rand.NewPCG(53, 54))
	seen := map[string]string{}
	b, _ := Bench{}.filled()
	for range 300 {
		for _, a := range assess(anyDemand(rng), b) {
			for _, l := range a.Limits {
				seen[l.Name] = string(l.Mark)
				if l.Mark == "" || !strings.HasSuffix(l.Source, "("+string(l.Mark)+")") {
					t.Fatalf("%s: mark %q, source %q", l.Name, l.Mark, l.Source)
				}
				if l.Soft == (l.Who == "") {
					t.Fatalf("%s: soft %v, asks %q", l.Name, l.Soft, l.Who)
				}
				if l.Name == a.Governing && !l.Open && l.Mark == "own" && l.Capacity > 0 && l.Utilisation == a.Utilisation &&
					!strings.Contains(a.Reason.String(), "our own") {
					t.Fatalf("%s decides by its own figure and does not say so: %s", l.Name, a.Reason)
				}
			}
		}
	}
	for _, name := range []string{"repetition", "largest repetition", "vise jaws", "tip-out across the jaws", "tip-out along the jaws", "ram face", "thrust line off the ram axis", "time under force in an hour"} {
		if seen[name] != "own" {
			t.Errorf("%s is marked %q, want own", name, seen[name])
		}
	}
	for name, mark := range map[string]string{"blows": "common practice", "force a blow must reach": "memory", "shock": "job", "rated force with margin": "common practice", "lever effort": "memory"} {
		if seen[name] != mark {
			t.Errorf("%s is marked %q, want %s", name, seen[name], mark)
		}
	}
}
