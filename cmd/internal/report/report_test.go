package report_test

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/export"
	"ramnest/force"
)

func TestTextOfEveryExampleFitsTheTerminal(t *testing.T) {
	t.Parallel()
	for _, name := range solvetest.Jobs() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s, _ := solvetest.Example(t, name)
			texts := []string{report.Summary(s, "out", []string{"a.stl"}), report.Check(s, []string{"a.stl"}), report.Forces(s)}
			for i := range s.Steps {
				for _, l := range s.Steps[i].Latches {
					texts = append(texts, report.Explain(l.ID, force.Explain(s.Steps[i].Assembly, l.ID)))
				}
			}
			for _, text := range texts {
				for line := range strings.Lines(text) {
					line = strings.TrimSuffix(line, "\n")
					odd := strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' })
					if len(line) > 80 || odd || strings.HasSuffix(line, " ") {
						t.Errorf("%d characters: %q", len(line), line)
					}
				}
			}
			if name == "rim-cap-inch" && strings.Contains(texts[0], " mm") {
				t.Errorf("millimetres in a job of inches:\n%s", texts[0])
			}
		})
	}
}

// readBack writes a report and reads it as a stranger would.
func readBack(t *testing.T, r report.Report) map[string]any {
	t.Helper()
	var b bytes.Buffer
	if err := export.WriteJSON(&b, r); err != nil {
		t.Fatal(err)
	}
	var out map[string]any
	if err := json.Unmarshal(b.Bytes(), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// at follows keys and indices into a report.
func at(t *testing.T, v any, path ...any) any {
	t.Helper()
	for _, p := range path {
		switch p := p.(type) {
		case string:
			m, ok := v.(map[string]any)
			if !ok || m[p] == nil {
				t.Fatalf("the report has no %v", path)
			}
			v = m[p]
		case int:
			l, ok := v.([]any)
			if !ok || len(l) <= p {
				t.Fatalf("the report has no %v", path)
			}
			v = l[p]
		}
	}
	return v
}

func TestReportHoldsWhatWasComputed(t *testing.T) {
	t.Parallel()
	s, doc := solvetest.Example(t, "shell-pair", "rate_per_hour=25")
	r := readBack(t, report.Of(s, report.Facts{Tool: "tool 1", Inputs: doc.Inputs(s.Job), Files: []string{"a", "b"}}))
	for _, c := range []struct {
		path []any
		want any
	}{
		{[]any{"schema"}, "ramnest report"},
		{[]any{"schema_version"}, 2.0},
		{[]any{"tool"}, "tool 1"},
		{[]any{"outcome"}, "tooling"},
		{[]any{"job", "mark"}, "FWL-1045 A"},
		{[]any{"job", "paper"}, "A4"},
		{[]any{"files", 1}, "b"},
		{[]any{"steps", 1, "name"}, "snap on the upper shell"},
		{[]any{"steps", 0, "force", "p95_n"}, s.Steps[0].Result.P95},
		{[]any{"steps", 1, "force", "work_mj"}, s.Steps[1].Result.Work},
		{[]any{"steps", 1, "force", "latches", 1, "id"}, "stud"},
		{[]any{"steps", 1, "force", "latches", 0, "strain"}, s.Steps[1].Result.Latches[0].Strain},
		{[]any{"steps", 0, "method", "chosen"}, string(s.Steps[0].Decision.Chosen)},
		{[]any{"steps", 0, "method", "options", 2, "method"}, "press"},
		{[]any{"steps", 0, "method", "options", 2, "utilisation"}, s.Steps[0].Decision.Options[2].Utilisation},
		{[]any{"steps", 0, "lower", "source"}, "outlines"},
		{[]any{"tooling", "nests", 0, "volume_mm3"}, s.Tooling.Nests[0].Volume},
		{[]any{"tooling", "nests", 0, "steps", 1}, 1.0},
		{[]any{"tooling", "anvils", 1, "mass_kg"}, s.Tooling.Anvils[1].Mass},
		{[]any{"tooling", "margins", 0, "factor"}, s.Tooling.Margins[0].Factor()},
		{[]any{"quote", "total"}, s.Quote.Total},
	} {
		got := at(t, r, c.path...)
		if a, ok := got.(float64); ok { // nine digits are written
			if b, ok := c.want.(float64); ok && math.Abs(a-b) <= 1e-8*math.Abs(b) {
				got = b
			}
		}
		if got != c.want {
			t.Errorf("%v = %v, want %v", c.path, got, c.want)
		}
	}
	inputs := at(t, r, "inputs").([]any)
	if len(inputs) != len(doc.Inputs(s.Job)) || len(inputs) < 100 {
		t.Errorf("%d inputs", len(inputs))
	}
	i := slices.IndexFunc(inputs, func(v any) bool {
		return at(t, v, "key") == "steps[1].latches[0].cantilever.mating_angle"
	})
	if i < 0 || math.Abs(at(t, inputs[i], "value").(float64)-math.Pi/6) > 1e-8 || at(t, inputs[i], "unit") != "rad" || at(t, inputs[i], "written") != "30" {
		t.Errorf("the mating angle is not among the inputs as it was decoded")
	}
	i = slices.IndexFunc(inputs, func(v any) bool { return at(t, v, "key") == "rate_per_hour" })
	if i < 0 || at(t, inputs[i], "value") != 25.0 || at(t, inputs[i], "set_on_command_line") != true {
		t.Errorf("the override is not among the inputs")
	}
	// Each formula of a latch stands among the lines that explain it.
	for _, l := range at(t, r, "steps", 1, "force", "latches").([]any) {
		var ids []any
		for _, line := range at(t, l, "explained").([]any) {
			ids = append(ids, line.(map[string]any)["id"])
		}
		for _, id := range at(t, l, "formula_ids").([]any) {
			if !slices.Contains(ids, id) {
				t.Errorf("%v: formula %v is not explained", at(t, l, "id"), id)
			}
		}
	}
}

func TestReportWithoutTooling(t *testing.T) {
	t.Parallel()
	s, doc := solvetest.Example(t, "rim-cap", "latches.rim.annular.undercut=2.5")
	r := readBack(t, report.Of(s, report.Facts{Inputs: doc.Inputs(s.Job)}))
	if at(t, r, "outcome") != "no tooling" || r["tooling"] != nil || r["quote"] != nil {
		t.Error("the report suggests tooling")
	}
	if len(at(t, r, "steps", 0, "method", "advice").([]any)) == 0 {
		t.Error("the report gives no advice")
	}
	text := report.Summary(s, "out", nil)
	if strings.Contains(text, "TOOLING") || !strings.Contains(text, "METHOD none") {
		t.Errorf("the summary:\n%s", text)
	}
}

func TestWarningsStandOnceAndTheGravestFirst(t *testing.T) {
	t.Parallel()
	s, _ := solvetest.Example(t, "rim-cap", "method={force: hand, override: trial}")
	w := report.Of(s, report.Facts{}).Warnings
	if len(w) < 3 || !strings.HasPrefix(w[0].Text, "OVERRIDE") {
		t.Errorf("warnings: %v", w)
	}
	for i := range w {
		if slices.ContainsFunc(w[:i], func(o report.Warning) bool {
			return o.Number == w[i].Number && o.Step == w[i].Step && o.Latch == w[i].Latch && o.Text == w[i].Text
		}) {
			t.Errorf("told twice: %v", w[i])
		}
	}
}

func TestCheckListsEveryDefault(t *testing.T) {
	t.Parallel()
	s, _ := solvetest.Example(t, "battery-tray")
	text := strings.Join(strings.Fields(report.Check(s, nil)), " ")
	if len(s.Defaults) < 20 {
		t.Errorf("only %d defaults", len(s.Defaults))
	}
	for _, d := range s.Defaults {
		if !strings.Contains(text, d.Text.String()) {
			t.Errorf("not told: %s", d.Text)
		}
	}
}
