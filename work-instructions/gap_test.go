package workinstructions

import (
	"strings"
	"testing"

	"ramnest/force/unit"
	"ramnest/work-instructions/catalogue"
)

// Every kind of gap says what, where, with what and how much, in every language.
func TestEveryKindOfGap(t *testing.T) {
	at := Gap{Low: 1.234, High: 1.456, Between: [2]string{"the base", "hood"}, Alone: [2]float64{40, 3.25}}
	for kind, want := range map[GapKind][3]string{
		BetweenParts: {"Gap between the base and the hood, at four places", "feeler gauge", "1.24 to 1.45 mm"},
		OverAll:      {"Height over all, from the underside of the base to the top of the hood, at four places", "caliper", "1.24 to 1.45 mm"},
		BelowRim:     {"Depth from the top of the base down to the top of the hood, at four places", "depth gauge", "at least 1.24 mm"},
		OnPair: {"Height over all, less what both parts measured alone, of the same pair: the base from its underside to its seat (about 40.0 mm), and the hood from its seat to its top (about 3.2 mm)",
			"caliper", "at most 1.45 mm"},
		UnderAnvil: {"Gap under the anvil at every dead stop, nothing pressing on it, before it is taken off, with the shims of the first piece", "feeler gauge", "at most 1.45 mm"},
	} {
		g := at
		g.Kind = kind
		switch kind {
		case BelowRim:
			g.High = 0
		case OnPair, UnderAnvil:
			g.Low = 0
		}
		f := figures{words: catalogue.English}
		if got := plain(f.what(g) + " " + f.where(g)); got != want[0] {
			t.Errorf("%q: %s; want %s", kind, got, want[0])
		}
		if got := [2]string{f.gauge(g), plain(f.gap(g))}; got != [2]string{want[1], want[2]} {
			t.Errorf("%q: %v; want %v", kind, got, want[1:])
		}
		for _, l := range catalogue.Languages() {
			f := figures{words: l}
			if said := f.what(g) + f.where(g) + f.gauge(g) + f.gap(g); strings.Contains(said, "%") || kind != UnderAnvil && !strings.Contains(said, "hood") {
				t.Errorf("%q in %s: %s", kind, l, said)
			}
		}
	}
}

// What is measured under the anvil is measured while it is there, and what needs the parts
// alone before they are together.
func TestMeasuredInTime(t *testing.T) {
	s := demoSheet(t)
	st := s.Steps[0]
	st.Seat = Gap{Kind: UnderAnvil, High: 0.05}
	last := func(want string) int {
		at := -1
		for i, a := range actions(figures{}, st, s.facts()[0]) {
			if strings.Contains(plain(strings.Join(a.detail, " ")), want) {
				at = i
			}
		}
		return at
	}
	all := actions(figures{}, st, s.facts()[0])
	if at := last("at most 0.05 mm"); at < 0 || !strings.Contains(all[at].title, "Take the anvil") {
		t.Errorf("the gap under the anvil is measured at action %d of %d", at, len(all))
	}
	st.Seat = Gap{Kind: OnPair, High: 0.2, Between: [2]string{"base", "hood"}, First: 5, Each: 10}
	if before, after := last("first measure the base"), last("at most 0.20 mm"); before != 0 || after != len(all)-1 {
		t.Errorf("the parts alone are measured at action %d, the pair at %d of %d", before, after, len(all))
	}
	if k := st.Criteria(unit.System{})[0]; k.Often != "the first 5 pieces, then one in 10" || k.High != 0.2 || k.Unit != "mm" || k.ID != "seat" {
		t.Errorf("%+v", k)
	}
	for _, k := range st.Criteria(unit.System{}) {
		if k.What == "" || k.Limit == "" || k.With == "" || k.Often == "" || strings.Contains(k.Limit+k.What, nbsp) {
			t.Errorf("%+v says not all", k)
		}
	}
	// Parts that are hard on each other are home only where the stop does not lie past them.
	st.Seat = Gap{Kind: UnderAnvil, High: 0.05}
	if got := st.Criteria(unit.System{})[0].Limit; got != "at most 0.05 mm, or parts hard on each other before" {
		t.Error(got)
	}
	st.Facts.Past = 0.1
	if got := st.Criteria(unit.System{})[0].Limit; got != "at most 0.05 mm" {
		t.Error(got)
	}
}
