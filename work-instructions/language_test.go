package workinstructions

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ramnest/force/method"
	"ramnest/force/unit"
	"ramnest/work-instructions/catalogue"
)

// literals gives every string literal of the Go files of a folder that stands as the
// first argument in a call of one of the functions, and all others apart.
func literals(t *testing.T, pattern string, functions ...string) (first, all []string) {
	t.Helper()
	names, err := filepath.Glob(pattern)
	if err != nil || len(names) == 0 {
		t.Fatalf("%s: %v", pattern, err)
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BasicLit:
				if n.Kind == token.STRING {
					s, _ := strconv.Unquote(n.Value)
					all = append(all, s)
				}
			case *ast.CallExpr:
				called := ""
				switch f := n.Fun.(type) {
				case *ast.Ident:
					called = f.Name
				case *ast.SelectorExpr:
					called = f.Sel.Name
				}
				if len(n.Args) > 0 && slices.Contains(functions, called) {
					if lit, ok := n.Args[0].(*ast.BasicLit); ok && lit.Kind == token.STRING {
						s, _ := strconv.Unquote(lit.Value)
						first = append(first, s)
					}
				}
			}
			return true
		})
	}
	return first, all
}

// Every key that the code names is in the catalogue, and the catalogue has no text
// that nobody can ask for.
func TestEveryKeyIsInTheCatalogue(t *testing.T) {
	keys, all := literals(t, "*.go", "say", "soFar")
	if len(keys) < 150 {
		t.Fatalf("only %d keys found", len(keys))
	}
	for _, key := range keys {
		if _, ok := catalogue.English.Find(key); !ok {
			t.Errorf("no text for %q", key)
		}
	}
	used := map[string]bool{}
	for _, s := range all {
		used[s], used[s+".so far"] = true, true
	}
	families := []string{"c.", "count.", "warn.", "limit.", "hand.", "bench.", "hold.", "kind.", "verdict.", "method.", "signal.", "unit."}
	for _, key := range catalogue.Keys() {
		if !used[key] && key != "decimal" && key != "step.press on" && key != "none" && !slices.ContainsFunc(families, func(f string) bool { return strings.HasPrefix(key, f) }) {
			t.Errorf("nobody asks for %q", key)
		}
	}
}

// Names that another room gives, and for which the sheet has its own words: limits,
// hand actions, generic presses, mallets and vises.
func TestNamesOfTheMethodRoomHaveWords(t *testing.T) {
	limits, _ := literals(t, "../force/method/*.go", "newLimit", "limitIfKnown", "refusal", "exertion")
	if len(limits) < 25 {
		t.Fatalf("only %d limits found", len(limits))
	}
	have := func(family, name string) {
		if _, ok := catalogue.English.Find(family + "." + name); !ok {
			t.Errorf("no words for the %s %q", family, name)
		}
	}
	for _, name := range limits {
		have("limit", name)
	}
	for _, p := range method.GenericPresses() {
		have("bench", p.Name)
	}
	for _, m := range method.GenericMallets() {
		have("bench", m.Name)
	}
	have("bench", method.GenericVise().Name)
	for force := 1.0; force < 250; force += 10 {
		for _, o := range method.Choose(method.Demand{DesignForce: force, RatePerHour: 1, HoursPerDay: 1, ActionSeconds: 1, Brittle: true, ShockSensitive: true, Electronics: true, AcrossLayers: true}, method.Bench{}, nil).Options {
			if o.Method == method.ByHand {
				have("hand", o.Action.String())
				have("hold", o.Action.String())
			}
			for _, l := range o.Limits {
				if !strings.HasPrefix(l.Name, "largest ") && !strings.HasPrefix(l.Name, "no published limit") {
					have("limit", l.Name)
				}
			}
		}
	}
}

// Every caution, in every language, is in other words than the English ones and has
// every part.
func TestCautionsInEveryLanguage(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 300 {
		f := anyFacts(r)
		f.Jammed = 0.01 * r.Float64()
		f.Opening, f.Overstrained, f.Snaps, f.AnvilCloses = 30*r.Float64(), 0.1*r.Float64(), r.IntN(2) == 0, r.IntN(2) == 0
		english := Cautions(f)
		for _, l := range catalogue.Languages()[1:] {
			for i, c := range cautions(f, l) {
				e := english[i]
				if c.ID != e.ID || c.Hazard == e.Hazard || c.Consequence == e.Consequence || c.Avoid[0] == e.Avoid[0] || len(c.Avoid) != len(e.Avoid) {
					t.Fatalf("%s: %q is not translated: %+v", l, e.ID, c)
				}
				for _, text := range append([]string{c.Hazard, c.Consequence}, c.Avoid...) {
					if strings.Contains(text, "%") || !strings.HasSuffix(text, ".") {
						t.Fatalf("%s: %q: %q", l, c.ID, text)
					}
				}
			}
		}
	}
}

// The words that the sheets would show if a text had been written into the code
// instead of the catalogue; names of the job are no text.
var englishWords = []string{" the ", " and ", " with ", "Step", " of ", "Title", "Gap"}

func TestSheetsInEveryLanguage(t *testing.T) {
	signals := map[catalogue.Language][3]string{
		catalogue.English: {"WARNING", "CAUTION", "NOTICE"}, catalogue.German: {"WARNUNG", "VORSICHT", "HINWEIS"}, catalogue.Spanish: {"ADVERTENCIA", "ATENCIÓN", "AVISO"},
		catalogue.French: {"AVERTISSEMENT", "ATTENTION", "AVIS"}, catalogue.Polish: {"OSTRZEŻENIE", "PRZESTROGA", "INFORMACJA"},
	}
	var paths []string
	for _, l := range catalogue.Languages() {
		for name, s := range map[string]Sheet{"press": demoSheet(t), "hand": byHandSheet(t), "mallet": malletSheet(t), "two": twoStepSheet(t), "override": overrideSheet(t), "full": fullSheet(t)} {
			s.Language, s.Title, s.Override = l, "FWL", strings.ReplaceAll(s.Override, " ", "")
			s.Bench, s.Notes, s.Warnings = nil, nil, s.Warnings[:1]
			for i := range s.Steps {
				st := &s.Steps[i]
				st.Name, st.Seat = "N", Gap{Low: 0.05, High: 0.25, Between: [2]string{"A", "B"}}
				st.Facts.Electronics, st.Facts.Snaps = true, true
				p := &st.Pictures
				for _, pic := range []*Picture{&p.Load, &p.Place, &p.Anvil, &p.Press, &p.Section, &p.Plan} {
					pic.Caption = ""
				}
			}
			w := write(t, name+"-"+l.Code(), s)
			paths = append(paths, w.path)
			text := flat(strings.Join(w.pages, "\n"))
			if !strings.Contains(string(w.file), "/Lang ("+l.Code()+")") {
				t.Errorf("%s, %s: the document does not say its language", name, l)
			}
			for i, word := range signals[l] {
				if i > 0 && !strings.Contains(text, word+" ") {
					t.Errorf("%s, %s: no %q", name, l, word)
				}
			}
			if l == catalogue.English {
				continue
			}
			for _, word := range englishWords {
				if at := strings.Index(text, word); at >= 0 {
					t.Errorf("%s, %s: English: …%s…", name, l, text[max(0, at-40):min(len(text), at+40)])
				}
			}
			if name == "press" && !strings.Contains(text, "4,2 mm") {
				t.Errorf("%s, %s: no decimal comma", name, l)
			}
		}
	}
	validated(t, paths...)
}

// Figures of a warning stand in the words of every language, or behind them, and words that
// wait for figures that are not there end before.
func TestWarningsCarryTheirFigures(t *testing.T) {
	for _, l := range catalogue.Languages()[1:] {
		f := figures{words: l}
		share := unit.Share.Of(0.007)
		for _, c := range []struct {
			number string
			all    []unit.Figure
			want   []string
			not    string
		}{
			{"warn.10", []unit.Figure{share}, []string{l.Number("0.7") + nbsp + "%"}, "!"},
			{"warn.10", nil, nil, "%"},
			{"warn.51", []unit.Figure{unit.Length.Of(7.3), unit.Length.Of(25)}, []string{l.Number("7.3") + nbsp + "mm", "25" + nbsp + "mm"}, "!"},
			{"warn.51", []unit.Figure{unit.Length.Of(7.3)}, nil, "%"},
			{"warn.17", []unit.Figure{unit.Length.Of(0.13)}, []string{"(" + l.Number("0.13") + nbsp + "mm)"}, "!"},
		} {
			text, _ := l.Find(c.number)
			got := f.with(text, c.all)
			if strings.Contains(got, c.not) || strings.HasSuffix(got, "(") {
				t.Errorf("%s: %q", l, got)
			}
			for _, w := range c.want {
				if !strings.Contains(got, w) {
					t.Errorf("%s: %q lacks %q", l, got, w)
				}
			}
		}
	}
}
