package deliver_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"html"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"ramnest/cmd/internal/batch"
	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/drawings"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/export/preview"
	"ramnest/export/quote"
)

var update = flag.Bool("update", false, "write the golden files anew")

// pairs are the ways to state a job: lengths, forces.
var pairs = [][2]string{{"mm", "N"}, {"mm", "lbf"}, {"in", "N"}, {"in", "lbf"}}

// inUnits is a solution as it would be if its job were written in other units.
func inUnits(s *solve.Solution, pair [2]string) *solve.Solution {
	j, out := *s.Job, *s
	j.Length, j.Force = pair[0], pair[1]
	out.Job = &j
	return &out
}

// measured finds a figure with the unit of a length, a force, or of what has one of them in
// it. An inch stands before a sign or an end, since "in" is a word too.
var measured = regexp.MustCompile(`\d[ \x{a0}]?(?:mm[23]?|cm|MPa|N(?:/mm| mm)?|mJ|J|kg|g|lbf(?:/in)?|in-lbf|psi|lb|(?:square|cubic) (?:mm|cm|in)|in)(?:[^\w/-]|$)|, (?:mm|in|N|lbf|kg|lb)$`)

// Every output of a job, in each pair of units, line by line where a figure stands with its
// unit. What is read here is what a person reads.
func TestUnitsOfEveryOutput(t *testing.T) {
	t.Parallel()
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext is not here, and pages are read by it")
	}
	for job, latch := range map[string]string{"rim-cap": "rim", "snap-case": ""} {
		t.Run(job, func(t *testing.T) {
			t.Parallel()
			s, _ := solvetest.Example(t, job)
			for _, pair := range pairs {
				said := everyOutput(t, inUnits(s, pair), latch)
				var b strings.Builder
				for _, name := range slices.Sorted(maps.Keys(said)) {
					fmt.Fprintf(&b, "== %s\n", name)
					var lines []string
					for line := range strings.Lines(said[name]) {
						line = strings.Join(strings.Fields(strings.NewReplacer("\u00a0", " ", s.Fingerprint, "FINGR").Replace(line)), " ")
						if measured.MatchString(line) && !slices.Contains(lines, line) {
							lines = append(lines, line)
							lawOfUnits(t, name, line, pair)
						}
					}
					b.WriteString(strings.Join(lines, "\n") + "\n")
				}
				golden(t, filepath.Join("testdata", "units", job+"-"+pair[0]+"-"+pair[1]+".txt"), b.String())
			}
		})
	}
}

// What an output of a job must not print: a length of the other system, a force of it, and
// what has both in it if the job is all in inch and pound, or all not.
func lawOfUnits(t *testing.T, name, line string, pair [2]string) {
	t.Helper()
	for _, found := range measured.FindAllString(line, -1) {
		of := strings.Trim(found, "0123456789 ,.;:)(%]\u00a0")
		wrong := false
		switch of {
		case "mm", "cm", "square mm", "cubic mm", "cubic cm", "mm2", "mm3":
			wrong = pair[0] == "in"
		case "in", "square in", "cubic in":
			wrong = pair[0] == "mm"
		case "N", "kg", "g":
			wrong = pair[1] == "lbf"
		case "lbf", "lb":
			wrong = pair[1] == "N"
		case "MPa", "N/mm", "N mm", "mJ", "J":
			wrong = pair == pairs[3]
		case "psi", "lbf/in", "in-lbf":
			wrong = pair != pairs[3]
		}
		if wrong && !meant(line) {
			t.Errorf("%s/%s, %s: %q in %q", pair[0], pair[1], name, found, line)
		}
	}
}

// meant says whether a line states a figure of the other system on purpose.
func meant(line string) bool {
	return false
}

// everyOutput is the text of all that a person is given of a job.
func everyOutput(t *testing.T, s *solve.Solution, latch string) map[string]string {
	t.Helper()
	out := map[string]string{}
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	set, err := deliver.Files(t.Context(), s, "tool 1", nil)
	must(err)
	for name, b := range content(t, set) {
		switch filepath.Ext(name) {
		case ".pdf":
			out["sheet"] = pageText(t, b)
		case ".csv":
			out["quote.csv"] = string(b)
		case ".json":
			out["report.json"] = sentences(t, b)
		}
	}
	offered := report.Offered{Offer: *s.Quote, Back: s.Payback, Open: s.NoPayback}
	out["terminal"] = report.Summary(s, "out", nil) + report.Forces(s) + report.Check(s, nil) + report.MethodTable(s) + report.OfferText(s, offered, "out", nil)
	out["terminal, sweep"] = report.Sweep("undercut", []report.SweepRow{{Value: "1", Steps: report.SweepSteps(s)}})
	pages, err := deliver.Offer(t.Context(), s, offered, "tool 1")
	must(err)
	for name, b := range content(t, pages) {
		if filepath.Ext(name) == ".pdf" {
			out["offer"] = pageText(t, b)
		}
	}
	var b bytes.Buffer
	must(preview.Write(&b, report.PreviewOf(s, "tool 1")))
	page := regexp.MustCompile(`(?s)<(?:script|style)[^>]*>.*?</(?:script|style)>`).ReplaceAllString(b.String(), "")
	out["preview"] = html.UnescapeString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, "\n"))
	b.Reset()
	drawn, err := drawings.SetOf(s, "tool 1")
	must(err)
	must(drawn.Write(&b, "svg"))
	for _, m := range regexp.MustCompile(`<text[^>]*>([^<]*)</text>`).FindAllStringSubmatch(b.String(), -1) {
		out["drawing"] += html.UnescapeString(m[1]) + "\n"
	}
	b.Reset()
	must(report.WriteBatch(&b, report.BatchOf([]batch.Row{report.BatchRow(s)}, "tool 1")))
	out["batch.csv"] = b.String()
	if latch == "" { // an arm too short for a coupon
		return out
	}
	card := quote.InventedRateCard()
	rungs, err := solve.Ladder(s.Job, solve.Rung{Latch: latch, Steps: 3, Card: card})
	must(err)
	cost, err := card.LadderCost(solve.CouponItems(rungs))
	must(err)
	out["terminal, ladder"] = report.LadderText(s.Job, rungs, cost, "out", nil)
	coupons, err := deliver.Ladder(t.Context(), s.Job, rungs, "tool 1")
	must(err)
	for name, b := range content(t, coupons) {
		if filepath.Ext(name) == ".pdf" {
			out["test sheet"] = pageText(t, b)
		}
	}
	return out
}

// pageText is what the pages of a PDF say.
func pageText(t *testing.T, pdf []byte) string {
	t.Helper()
	read := exec.CommandContext(t.Context(), "pdftotext", "-raw", "-", "-")
	read.Stdin = bytes.NewReader(pdf)
	text, err := read.Output()
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// sentences are the texts of a report. Sources are quoted as they stand, its figures are keyed by their unit, and formulas
// with their numbers are in mm and N, as the report says.
func sentences(t *testing.T, b []byte) string {
	t.Helper()
	var all any
	if err := json.Unmarshal(b, &all); err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	var walk func(any)
	walk = func(v any) {
		switch v := v.(type) {
		case string:
			out.WriteString(v + "\n")
		case []any:
			for _, x := range v {
				walk(x)
			}
		case map[string]any:
			for _, k := range slices.Sorted(maps.Keys(v)) {
				if k != "explained" && k != "units" && k != "inputs" && k != "source" {
					walk(v[k])
				}
			}
		}
	}
	walk(all)
	return out.String()
}

// golden holds a text against its file.
func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	a, b := strings.Split(string(want), "\n"), strings.Split(got, "\n")
	for i := range max(len(a), len(b)) {
		if i >= len(a) || i >= len(b) || a[i] != b[i] {
			t.Fatalf("%s, line %d: %q; was %q. If that is meant, run with -update and look at the difference", file, i+1, at(b, i), at(a, i))
		}
	}
}

func at(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return "nothing"
}
