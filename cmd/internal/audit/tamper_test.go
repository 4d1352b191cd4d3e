package audit

import (
	"context"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/drawings"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/force"
	"ramnest/force/method"
)

// worked is an example worked out, with its papers.
func worked(t *testing.T) (*solve.Solution, deliver.Set) {
	t.Helper()
	s, doc := solvetest.Example(t, "rim-cap")
	set, err := deliver.Files(context.Background(), s, "ramnest", doc.Inputs(s.Job))
	if err != nil {
		t.Fatal(err)
	}
	return s, set
}

// copied is a solution that may be tampered with.
func copied(s *solve.Solution) *solve.Solution {
	c := *s
	c.Steps = slices.Clone(s.Steps)
	for i := range c.Steps {
		st := &c.Steps[i]
		st.Result.Latches, st.Result.Warnings = slices.Clone(st.Result.Latches), slices.Clone(st.Result.Warnings)
		st.Decision.Options = slices.Clone(st.Decision.Options)
		for k := range st.Decision.Options {
			st.Decision.Options[k].Limits = slices.Clone(st.Decision.Options[k].Limits)
		}
	}
	tooling := *s.Tooling
	tooling.Nests, tooling.Anvils = slices.Clone(tooling.Nests), slices.Clone(tooling.Anvils)
	c.Tooling = &tooling
	return &c
}

// says fails unless the error names a law.
func says(t *testing.T, err error, law string) {
	t.Helper()
	if err == nil || !strings.Contains(err.Error(), law) {
		t.Errorf("the audit says %v; want %q", err, law)
	}
}

// TestTamperedSolution: each law speaks when a finished solution is tampered with.
func TestTamperedSolution(t *testing.T) {
	whole, _ := worked(t)
	ctx := context.Background()
	if err := Solution(ctx, whole); err != nil {
		t.Fatal(err)
	}
	first := func(s *solve.Solution) *force.Result { return &s.Steps[0].Result }
	press := func(s *solve.Solution) *method.Assessment { return &s.Steps[0].Decision.Options[2] }
	for _, c := range []struct {
		law    string
		tamper func(s *solve.Solution)
	}{
		{"a figure is a number", func(s *solve.Solution) { first(s).Worst = -1 }},
		{"a share is 1 at most", func(s *solve.Solution) { first(s).Loose = 1.2 }},
		{"percentiles in order", func(s *solve.Solution) { first(s).P5 = 1.1 * first(s).P50 }},
		{"percentiles in order", func(s *solve.Solution) { first(s).P50 = 0 }},
		{"the design force is P95", func(s *solve.Solution) { first(s).Design *= 0.9 }},
		{"no P95 beyond the share that may jam", func(s *solve.Solution) { first(s).Jammed = 0.07 }},
		{"the worst case is not below the nominal peak", func(s *solve.Solution) { first(s).Worst = 0.9 * first(s).Peak }},
		{"a worst case below P95 is explained", func(s *solve.Solution) { first(s).Worst = 0.99 * first(s).P95 }},
		{"a design force below the nominal peak is explained", func(s *solve.Solution) {
			r := first(s)
			r.P95, r.Design, r.P50, r.P5 = 0.99*r.Peak, 0.99*r.Peak, 0.8*r.Peak, 0.5*r.Peak
		}},
		{"the standard error is below the figure", func(s *solve.Solution) { first(s).P95StdErr = 2 * first(s).P95 }},
		{"the sum lies between its largest latch", func(s *solve.Solution) { first(s).Peak *= 0.9 }},
		{"the sum lies between its largest latch", func(s *solve.Solution) { first(s).PeakStack *= 1.2 }},
		{"so many times the force", func(s *solve.Solution) { first(s).Latches[0].PeakAll *= 2 }},
		{"the work is that of all latches", func(s *solve.Solution) { first(s).Latches[0].Work *= 1.1 }},
		{"the force at the seat is that of all latches", func(s *solve.Solution) { first(s).SeatForce = 50 }},
		{"a result for each latch", func(s *solve.Solution) { first(s).Latches[0].ID = "other" }},
		{"a result for each latch", func(s *solve.Solution) { first(s).Latches = nil }},
		{"the whole locks if a latch does", func(s *solve.Solution) { first(s).Latches[0].Locks = true }},
		{"as many assemblies jam as the worst latch", func(s *solve.Solution) { first(s).Latches[0].Jammed = 0.02 }},
		{"curve and peak agree", func(s *solve.Solution) { first(s).PeakLift /= 2 }},
		{"the curve begins with the stroke", func(s *solve.Solution) { first(s).Stroke *= 1.1 }},
		{"the work is the area under the curve", func(s *solve.Solution) { first(s).Work *= 1.1 }},
		{"the worst case is the sum of its places", func(s *solve.Solution) { first(s).Worst *= 1.1 }},
		{"the band holds for other draws", func(s *solve.Solution) { first(s).P95, first(s).Design = 1.12*first(s).P95, 1.12*first(s).P95 }},
		{"the band holds for other draws", func(s *solve.Solution) { first(s).P50, s.Steps[0].Demand.P50 = 1.15*first(s).P50, 1.15*first(s).P50 }},
		{"the band holds for other draws", func(s *solve.Solution) { first(s).P5 *= 0.6 }},
		{"are loose", func(s *solve.Solution) { first(s).Loose = 0.04 }},
		{"are overstrained", func(s *solve.Solution) { first(s).Overstrained = 0.04 }},
		{"the demand on the method is that of the forces", func(s *solve.Solution) { s.Steps[0].Demand.DesignForce = first(s).P50 }},
		{"the demand on the method is that of the forces", func(s *solve.Solution) { s.Steps[0].Demand.Stroke = 0 }},
		{"a limit asks for what the forces are", func(s *solve.Solution) {
			l := &press(s).Limits[0]
			l.Demand, l.Utilisation = l.Demand/2, l.Utilisation/2
		}},
		{"a verdict agrees with demand and capacity", func(s *solve.Solution) { s.Steps[0].Decision.Options[0].Verdict = method.Pass }},
		{"a verdict agrees with demand and capacity", func(s *solve.Solution) { press(s).Limits[0].OK = false }},
		{"a verdict agrees with demand and capacity", func(s *solve.Solution) { press(s).Limits[0].Utilisation = 0.1 }},
		{"no tool gives more work than goes in", func(s *solve.Solution) {
			l := *press(s).Lever
			l.Pull /= 2
			press(s).Lever = &l
		}},
		{"the method taken is the least that is good enough", func(s *solve.Solution) { s.Steps[0].Decision.Chosen = method.ByHand }},
		{"there is tooling where every step has a method", func(s *solve.Solution) { s.Tooling = nil }},
		{"a pair that is accepted has every latch home", func(s *solve.Solution) { s.Steps[0].Seated.Travel = first(s).Latches[0].PeakLift }},
		{"a pair that is accepted has every latch home", func(s *solve.Solution) { first(s).Latches[0].HomeLeast = first(s).Latches[0].PeakLift }},
		{"an anvil for each step", func(s *solve.Solution) { s.Tooling.Anvils = nil }},
		{"job, revision and fingerprint are engraved", func(s *solve.Solution) { s.Tooling.Nests[0].Mark = "FWL-1042 A CTQCN" }},
		{"a piece is as large as its mesh", func(s *solve.Solution) { s.Tooling.Anvils[0].Size[2]++ }},
	} {
		t.Run(c.law, func(t *testing.T) {
			s := copied(whole)
			c.tamper(s)
			says(t, Solution(ctx, s), c.law)
		})
	}
}

// TestTamperedPapers: each paper is held against the solution.
func TestTamperedPapers(t *testing.T) {
	s, set := worked(t)
	if err := Papers(s, set); err != nil {
		t.Fatal(err)
	}
	const law = "says what was worked out"
	for _, c := range []struct{ key, other string }{
		{`"design_n": `, `"design_n": 1`}, {`"nominal_peak_n": `, `"nominal_peak_n": 1`}, {`"stroke_mm": `, `"stroke_mm": 1`}, {`"worst_n": `, `"worst_n": 1`},
		{`"fingerprint": "`, `"fingerprint": "X`}, {`"chosen": "press"`, `"chosen": "hand"`}, {`"revision": "B"`, `"revision": "C"`}, {`"mark": "FWL-1042 B `, `"mark": "FWL-1042 A `},
		{`"verdict": "fail"`, `"verdict": "pass"`}, {`"lift_accepted_mm": `, `"lift_accepted_mm": 1`}, {`"outcome": "tooling"`, `"outcome": "no tooling"`},
	} {
		other := set
		if c.key[len(c.key)-1] != '"' && !strings.Contains(string(set.Report), c.key) {
			t.Errorf("the report has no %s", c.key)
		}
		other.Report = []byte(strings.ReplaceAll(string(set.Report), c.key, c.other))
		says(t, Papers(s, other), law)
	}
	for i, tamper := range []func(p *deliver.Set){
		func(p *deliver.Set) { p.Sheet.Steps[0].Force.Design = s.Steps[0].Result.P50 },
		func(p *deliver.Set) { p.Sheet.Steps[0].Force.Peak *= 1.01 },
		func(p *deliver.Set) { p.Sheet.Steps[0].Force.P95 -= 1 },
		func(p *deliver.Set) { p.Sheet.Steps[0].Force.Stroke = 0 },
		func(p *deliver.Set) { p.Sheet.Steps[0].Decision.Chosen = method.ByMallet },
		func(p *deliver.Set) { p.Sheet.Steps[0].Lever /= 2 },
		func(p *deliver.Set) { p.Sheet.Fingerprint = "AAAAA" },
		func(p *deliver.Set) { p.Sheet.Job = "other" },
		func(p *deliver.Set) { p.Sheet.Revision = "C" },
		func(p *deliver.Set) { p.Sheet.RatePerHour++ },
		func(p *deliver.Set) { p.Sheet.Tooling[0].Mark = "other" },
		func(p *deliver.Set) { p.Sheet.Steps[0].Seat.High += 0.1 },
		func(p *deliver.Set) { p.Sheet.Steps = nil },
	} {
		other, sheet := set, *set.Sheet
		sheet.Steps, sheet.Tooling = slices.Clone(sheet.Steps), slices.Clone(sheet.Tooling)
		other.Sheet = &sheet
		tamper(&other)
		t.Log(i)
		says(t, Papers(s, other), law)
	}
	other, sheet := set, *set.Sheet
	other.Sheet, sheet.Warnings = &sheet, nil
	says(t, Papers(s, other), "every warning of the forces is printed")
	other.Sheet = nil
	says(t, Papers(s, other), "tooling comes with a work instruction")
	other = set
	other.Names = set.Names[1:]
	says(t, Papers(s, other), "the report names what is written")
	points := slices.Clone(set.Sheet.Steps[0].Force.Curve)
	for i := range points {
		points[i][1] *= 0.97
	}
	sheet = *set.Sheet
	sheet.Steps = slices.Clone(sheet.Steps)
	sheet.Steps[0].Force.Curve = points
	other = set
	other.Sheet = &sheet
	says(t, Papers(s, other), "a curve holds its own peak")
}

// TestTamperedViews: terminal, preview, drawing, sweep and table likewise.
func TestTamperedViews(t *testing.T) {
	s, set := worked(t)
	text := report.Summary(s, "out", set.Names)
	if err := Terminal(s, text); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"nominal peak", "at a lift of", "P95, for design", "worst case", "all at one lift", "stroke"} {
		at := figure(name).FindStringSubmatchIndex(text)
		if at == nil {
			t.Fatalf("no %s in\n%s", name, text)
		}
		says(t, Terminal(s, text[:at[2]]+"9"+text[at[2]:]), "the terminal says what was worked out")
	}
	named := copied(s)
	job := *s.Job
	job.Number, named.Job = "FORCE 7", &job
	named.Steps[0].Name = "worst case 12 N"
	for i := range named.Tooling.Nests {
		named.Tooling.Nests[i].Mark = named.Engraved()
	}
	if err := Terminal(named, report.Summary(named, "out", set.Names)); err != nil {
		t.Error(err)
	}
	says(t, Terminal(s, strings.Replace(text, "METHOD arbor press", "METHOD by hand", 1)), "method of")
	says(t, Terminal(s, strings.Replace(text, "FWL-1042 B", "FWL-1042 A", 1)), "does not begin with")
	says(t, Terminal(s, strings.Replace(text, s.Fingerprint, "AAAAA", 1)), "the tooling carries")

	d := report.PreviewOf(s, "ramnest")
	if err := Preview(s, d); err != nil {
		t.Fatal(err)
	}
	d.Steps[0].Design *= 2
	says(t, Preview(s, d), "the preview says what was worked out")

	g, err := drawings.SetOf(s, "ramnest")
	if err != nil {
		t.Fatal(err)
	}
	if err := Drawings(s, g); err != nil {
		t.Fatal(err)
	}
	g.Bodies[0].Mark = "other"
	says(t, Drawings(s, g), "the drawing says what was worked out")

	rows := report.SweepSteps(s)
	if err := Sweep(s, rows); err != nil {
		t.Fatal(err)
	}
	rows[0].P95 = rows[0].Peak
	says(t, Sweep(s, rows), "the sweep says what was worked out")

	row := report.BatchRow(s)
	if err := Row(s, row); err != nil {
		t.Fatal(err)
	}
	row.Design = row.Peak
	says(t, Row(s, row), "the table says what was worked out")
}

// TestLatchThatIsLost: the result of an assembly that lacks a latch does not pass for
// that of the whole.
func TestLatchThatIsLost(t *testing.T) {
	d := drawn{newRand()}
	for i := range 40 {
		a := d.assembly()
		if len(a.Latches) < 2 {
			continue
		}
		less := a
		less.Latches = a.Latches[:len(a.Latches)-1]
		r, err := force.Analyse(less)
		if err != nil {
			t.Fatal(err)
		}
		if found, err := Force(t.Context(), "whole", a, r); err != nil || len(found) == 0 {
			t.Errorf("assembly %d without its last latch: %v, nothing said", i, err)
		}
	}
}

// TestOnlyTheCommandImportsTheAudit: it judges, and nothing that it judges knows it.
func TestOnlyTheCommandImportsTheAudit(t *testing.T) {
	seen := 0
	err := filepath.WalkDir("../../..", func(name string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() || !strings.HasSuffix(name, ".go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range file.Imports {
			if spec.Path.Value != `"ramnest/cmd/internal/audit"` {
				continue
			}
			if seen++; filepath.Base(filepath.Dir(name)) != "ramnest" {
				t.Errorf("%s imports the audit", name)
			}
		}
		return nil
	})
	if err != nil || seen == 0 {
		t.Errorf("%d imports found, %v", seen, err)
	}
}
