package workinstructions

import (
	"strings"
	"testing"

	"ramnest/force/method"
	"ramnest/force/unit"
)

// said is everything that the actions of a step say.
func said(f figures, s Step) string {
	var out []string
	for _, a := range actions(f, s, s.facts(nil)) {
		out = append(out, a.title)
		out = append(out, a.detail...)
	}
	return plain(strings.NewReplacer("\x02", "").Replace(strings.Join(out, "\n")))
}

func TestActionsByMethod(t *testing.T) {
	held := demoSheet(t)
	held.Steps[0].Facts.AnvilHeld = true
	unknown := byHandSheet(t)
	unknown.Steps[0].Force = Force{Design: 38}
	pressed := demoSheet(t)
	pressed.Steps[0].Force.Humps = 0
	many := malletSheet(t)
	for i := range many.Steps[0].Decision.Options {
		many.Steps[0].Decision.Options[i].Blows = 48
	}
	inches := demoSheet(t)
	for _, row := range []struct {
		name       string
		step       Step
		fig        figures
		want, deny []string
	}{
		{"press", demoSheet(t).Steps[0], figures{},
			[]string{"Lay the Housing into the nest.", "It goes in one way only.", "Put the anvil on the Rim cap.", "Lower the ram until it touches the anvil.", "Pull the lever", "Expect about 870 N; nine of ten lie between 610 N and 1180 N.",
				"up to 69.4 N at the lever", "1 hump", "The ram goes down 4.2 mm under force.", "at the seat it still takes 60 N", "Stop when the anvil stands on its dead stop", "more than 1180 N: what then, stands under reject", "0.05 to 0.25 mm"},
			[]string{"mallet", "hands on", "lbf"}},
		{"anvil on the ram", held.Steps[0], figures{}, []string{"Lower the ram until the anvil touches the Rim cap."}, []string{"Put the anvil", "Take the anvil off"}},
		{"mallet", malletSheet(t).Steps[0], figures{}, []string{"Take the mallet", "about 1 blow", "Never more than 5 blows"}, []string{"lever", "ram", "hump"}},
		{"more blows than are good", many.Steps[0], figures{}, []string{"at most 5 blows"}, []string{"48"}},
		{"hand", byHandSheet(t).Steps[0], figures{}, []string{"Put your hands on the anvil.", "Push down steadily", "Expect about 30 N"}, []string{"lever", "mallet", "ram "}},
		{"force not known", unknown.Steps[0], figures{}, []string{"clearly more than 38 N"}, []string{"Expect", "hump", "without a click", "goes down", "at the seat"}},
		{"press fit", pressed.Steps[0], figures{}, []string{"rises to the end, without a click"}, []string{"hump"}},
		{"inches", inches.Steps[0], figures{units: unit.System{Inch: true, Pound: true}}, []string{"196 lbf", "0.165 in under force", "0.002 to 0.009 in"}, []string{" N ", "mm"}},
	} {
		got := said(row.fig, row.step)
		for _, w := range row.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: does not say %q\n%s", row.name, w, got)
			}
		}
		for _, w := range row.deny {
			if strings.Contains(got, w) {
				t.Errorf("%s: says %q\n%s", row.name, w, got)
			}
		}
	}
}

// No caution gets lost between the places and the actions, whatever actions a
// step has, and each is told in full once.
func TestEveryCautionHasItsPlace(t *testing.T) {
	for name, s := range variants(t) {
		for i, st := range s.Steps {
			f := s.facts()[i]
			acts := actions(figures{}, st, f)
			full, short := numbered(acts, Cautions(f), "")
			n := map[string]int{}
			for _, c := range full {
				n[c.ID]++
			}
			reminded := len(short)
			for _, a := range acts {
				for _, c := range a.cautions {
					n[c.ID]++
				}
				reminded += len(a.reminded)
			}
			places := 0
			for _, c := range Cautions(f) {
				places += len(c.Places)
				if n[c.ID] != 1 {
					t.Errorf("%s, step %d: %q in full %d times", name, i+1, c.ID, n[c.ID])
				}
			}
			if got := len(n) + reminded; got != places {
				t.Errorf("%s, step %d: cautions stand at %d places; want %d", name, i+1, got, places)
			}
		}
	}
}

func TestSetUpByMethod(t *testing.T) {
	for _, row := range []struct {
		sheet      Sheet
		want, deny []string
	}{
		{demoSheet(t), []string{"bolted to a bench", "press table", "Ram over the thrust mark: x +3.2 mm, y −1.0 mm", "FWL-1042 B 7f3a-91c2", "Dead stop", "First stroke without parts"}, []string{"vise"}},
		{malletSheet(t), []string{"flange rests on both jaws", "Blow over the middle between the dead stops", "Dead stop"}, []string{"ram", "press table"}},
		{byHandSheet(t), []string{"firm table", "Push over the middle"}, []string{"vise", "ram ", "lever"}},
		{variants(t)["bare"], []string{"job FWL-1042, revision B"}, []string{"Dead stop", "engraving"}},
	} {
		st := row.sheet.Steps[0]
		got := plain(strings.ReplaceAll(strings.Join(setUp(figures{}, row.sheet, st, row.sheet.facts()[0]), "\n"), "\x02", ""))
		for _, w := range row.want {
			if !strings.Contains(got, w) {
				t.Errorf("%s: does not say %q\n%s", st.Decision.Chosen, w, got)
			}
		}
		for _, w := range row.deny {
			if strings.Contains(got, w) {
				t.Errorf("%s: says %q\n%s", st.Decision.Chosen, w, got)
			}
		}
	}
}

func TestAcceptanceHasLimits(t *testing.T) {
	var got []string
	for _, k := range criteria(figures{}, demoSheet(t).Steps[0]) {
		got = append(got, plain(k.measured()+": "+k.Limit))
	}
	want := []string{"Gap between rim and housing, at four places: 0.05 to 0.25 mm", "Dead stop: anvil on every stop, or parts hard on each other before", "Humps felt: 1 hump",
		"Highest force, if the press has a gauge: at most 1180 N", "Latches: rim × 1: 1 fully seated", "Pull straight by hand: 150 N held"}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	if r := strings.Join(reject(figures{}, demoSheet(t).Steps[0], Facts{Method: method.ByPress, Permanent: true}), " "); !strings.Contains(r, "Do not press it again") || !strings.Contains(r, "do not open it") {
		t.Errorf("a reject: %s", r)
	}
}

// Which way round: said as it is, and never a way that is not checked.
func TestWhichWayRound(t *testing.T) {
	s := demoSheet(t)
	text := func(one, any bool) string {
		st := s.Steps[0]
		st.OneWay, st.AnyWay = one, any
		var all []string
		for _, a := range actions(figures{}, st, st.facts(nil)) {
			all = append(all, a.detail...)
		}
		return strings.Join(all, " ")
	}
	for _, c := range []struct {
		one, any bool
		want     string
		not      string
	}{
		{true, false, "one way only", "looks the same"},
		{false, true, "looks the same", "right way round"},
		{false, false, "also goes in the wrong way", "looks the same"},
	} {
		if got := text(c.one, c.any); !strings.Contains(got, c.want) || strings.Contains(got, c.not) {
			t.Errorf("one way %v, any way %v: %s", c.one, c.any, got)
		}
	}
}
