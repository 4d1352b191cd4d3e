package workinstructions

import (
	"flag"
	"image"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ramnest/export/page"
	"ramnest/force/method"
)

var update = flag.Bool("update", false, "rewrite what the tests compare with")

// find gives the caution of an id, if it is in force.
func find(f Facts, id string) (Caution, bool) {
	list := Cautions(f)
	i := slices.IndexFunc(list, func(c Caution) bool { return c.ID == id })
	if i < 0 {
		return Caution{}, false
	}
	return list[i], true
}

// Where a figure decides whether a caution is in force, it does so at the figure that the
// rule states, and not a little before or after.
func TestWhereACautionBegins(t *testing.T) {
	press := Facts{Method: method.ByPress, Anvil: true, RatedForce: 1000, WorstForce: 500}
	opening := func(v float64) Facts { f := press; f.Opening = v; return f }
	strained := func(v float64) Facts { f := press; f.Overstrained = v; return f }
	jammed := func(v float64) Facts { f := press; f.Jammed = v; return f }
	mass := func(v float64) Facts { f := press; f.ToolMassKg = v; return f }
	worst := func(v float64) Facts { f := press; f.WorstForce = v; return f }
	for _, c := range []struct {
		id    string
		facts func(float64) Facts
		at    float64
		in    bool
	}{
		{"narrow opening", opening, 6, false}, {"narrow opening", opening, 6.001, true}, {"narrow opening", opening, 24.999, true}, {"narrow opening", opening, 25, false},
		{"overstrained latch", strained, 0.01, false}, {"overstrained latch", strained, 0.01001, true},
		{"jam", jammed, 0, false}, {"jam", jammed, 1e-6, true},
		{"heavy tooling", mass, 2.999, false}, {"heavy tooling", mass, 3, true},
		{"above rated", worst, 1000, false}, {"above rated", worst, 1000.001, true},
	} {
		if _, in := find(c.facts(c.at), c.id); in != c.in {
			t.Errorf("%s at %g: in force %t, want %t", c.id, c.at, in, c.in)
		}
	}
	no := opening(10)
	no.Anvil = false
	if _, in := find(no, "narrow opening"); in {
		t.Error("an opening without an anvil")
	}
	hand := worst(2000)
	hand.Method = method.ByHand
	if _, in := find(hand, "above rated"); in {
		t.Error("a rated force by hand")
	}
	// The figure in the words is never more reassuring than the one that was computed.
	for _, c := range []struct {
		id    string
		facts Facts
		want  string
	}{
		{"narrow opening", opening(9.99), " 9.9 mm"}, {"overstrained latch", strained(0.3001), "31"}, {"overstrained latch", strained(0.5), "50"},
		{"jam", jammed(0.001), " 1 "}, {"jam", jammed(0.00101), " 2 "}, {"jam", jammed(1e-6), " 1 "},
	} {
		m, _ := find(c.facts, c.id)
		if text := strings.ReplaceAll(m.Hazard+" "+m.Consequence+" "+strings.Join(m.Avoid, " "), "\u00a0", " "); !strings.Contains(" "+text+" ", c.want) {
			t.Errorf("%s: %q does not say %q", c.id, text, c.want)
		}
	}
}

// The words of a caution are those of the method and of what is known of the parts.
func TestWordsFollowTheFacts(t *testing.T) {
	press, mallet, hand := Facts{Method: method.ByPress, Anvil: true}, Facts{Method: method.ByMallet, Anvil: true}, Facts{Method: method.ByHand, Anvil: true}
	with := func(f Facts, change func(*Facts)) Facts { change(&f); return f }
	said := map[string]string{}
	for _, c := range []struct {
		id    string
		facts []Facts // each with words of its own
	}{
		{"fragments", []Facts{press, with(press, func(f *Facts) { f.Brittle = true }), mallet, with(mallet, func(f *Facts) { f.Brittle = true })}},
		{"kick-back", []Facts{press, with(press, func(f *Facts) { f.Snaps = true })}},
		{"falling ram", []Facts{press, with(press, func(f *Facts) { f.AnvilHeld = true })}},
		{"dead stop", []Facts{press, hand}},
		{"off centre", []Facts{with(press, func(f *Facts) { f.EccentricThrust = true }), with(mallet, func(f *Facts) { f.EccentricThrust = true }), with(hand, func(f *Facts) { f.EccentricThrust = true })}},
		{"sharp or uncured", []Facts{with(press, func(f *Facts) { f.SharpOrUncured = true }), with(hand, func(f *Facts) { f.SharpOrUncured = true })}},
		{"brittle", []Facts{with(press, func(f *Facts) { f.Brittle = true }), with(mallet, func(f *Facts) { f.Brittle = true })}},
		{"shock", []Facts{with(press, func(f *Facts) { f.ShockSensitive = true }), with(mallet, func(f *Facts) { f.ShockSensitive = true })}},
	} {
		for i, f := range c.facts {
			m, in := find(f, c.id)
			text := m.Hazard + m.Consequence + strings.Join(m.Avoid, "")
			if other, twice := said[text]; !in || twice {
				t.Errorf("%s, %d: in force %t, the words of %q: %q", c.id, i, in, other, text)
			}
			said[text] = c.id
		}
	}
	same := func(id string, a, b Facts) {
		x, _ := find(a, id)
		y, _ := find(b, id)
		if x.Hazard == "" || x.Hazard+strings.Join(x.Avoid, "") != y.Hazard+strings.Join(y.Avoid, "") {
			t.Errorf("%s: %q and %q", id, x.Hazard, y.Hazard)
		}
	}
	brittle := func(f *Facts) { f.Brittle = true }
	sharp := func(f *Facts) { f.SharpOrUncured = true }
	same("fragments", with(press, brittle), with(hand, brittle))
	same("brittle", with(press, brittle), with(hand, brittle))
	same("sharp or uncured", with(mallet, sharp), with(hand, sharp))
	if m, _ := find(with(hand, brittle), "fragments"); m.Signal != Careful {
		t.Errorf("by hand fragments are a %s", m.Signal)
	}
}

// How the boxes of cautions are drawn, mark by mark: a drawing to look at after a change
// that is meant (-update).
func TestBoxesAsDrawn(t *testing.T) {
	book := page.New(page.A4, func(io.Writer, *image.Paletted) error { return nil })
	defer book.Wait()
	c := newComposer(book, demoSheet(t), false)
	p := book.Sheet(page.Size{Width: 210, Height: 200}, "")
	warning := Caution{ID: "crush", Number: 1, Signal: Warning, Symbol: HandCrush, Hazard: "A hazard that takes more than one line in a box that is as narrow as half a page.", Consequence: "What follows.", Avoid: []string{"Do this.", "And that."}}
	careful := warning
	careful.Number, careful.Signal, careful.Symbol = 12, Careful, General
	notice := warning
	notice.Number, notice.Signal, notice.Symbol = 3, Notice, ""
	short := notice
	short.Hazard, short.Avoid = "Short.", []string{"So."}
	y := 5.0
	for _, m := range []Caution{warning, careful, notice, short} {
		b := c.message(m, 90, 0, "At step 1.")
		b.Draw(p, 5, y)
		r := c.reminder(m, 90)
		r.Draw(p, 105, y)
		e := c.embedded(m, 90, 15)
		e.Draw(p, 105, y+r.Height+2)
		y += max(b.Height, r.Height+2+e.Height) + 3
	}
	for _, n := range []int{1, 2, 3} {
		for _, b := range c.messages([]Caution{warning, short, careful}[:n]) {
			b.Draw(p, 5, y)
			y += b.Height + 1
		}
	}
	got := p.SVG(page.SVG{Title: "boxes of cautions", Text: "as drawn"})
	file := filepath.Join("testdata", "cautions.svg")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		a, b := strings.Split(got, "\n"), strings.Split(string(want), "\n")
		for i := range min(len(a), len(b)) {
			if a[i] != b[i] {
				t.Fatalf("line %d: %s,\nwant %s", i+1, a[i], b[i])
			}
		}
		t.Fatalf("%d lines, want %d", len(a), len(b))
	}
}
