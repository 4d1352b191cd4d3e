package deliver_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/solve/solvetest"
)

func TestFilesOfAJob(t *testing.T) {
	t.Parallel()
	s, doc := solvetest.Example(t, "shell-pair")
	set, err := deliver.Files(t.Context(), s, "tool", doc.Inputs(s.Job))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"FWL-1045-nest.stl", "FWL-1045-nest.3mf", "FWL-1045-anvil-1.stl", "FWL-1045-anvil-1.3mf",
		"FWL-1045-anvil-2.stl", "FWL-1045-anvil-2.3mf", "FWL-1045-work-instruction.pdf", "FWL-1045-quote.csv", "FWL-1045-report.json",
	}
	files := content(t, set)
	if !slices.Equal(set.Names, want) || len(files) != len(want) {
		t.Errorf("names %q, want %q", set.Names, want)
	}
	if !bytes.Equal(files["FWL-1045-report.json"], set.Report) {
		t.Error("the report is not the one among the files")
	}
	for _, name := range want {
		if !bytes.Contains(set.Report, []byte(`"`+name+`"`)) {
			t.Errorf("the report does not name %s", name)
		}
	}
	rows, err := csv.NewReader(bytes.NewReader(files["FWL-1045-quote.csv"])).ReadAll()
	if err != nil || len(rows) < 5 || rows[1][0] != "nest" || rows[len(rows)-1][0] != "break-even" || !slices.ContainsFunc(rows, func(r []string) bool { return r[0] == "total" && r[18] != "" }) {
		t.Errorf("quote: %v, %v", rows, err)
	}
	again, err := deliver.Files(t.Context(), s, "tool", doc.Inputs(s.Job))
	if err != nil {
		t.Fatal(err)
	}
	for name, b := range content(t, again) {
		if !bytes.Equal(b, files[name]) {
			t.Errorf("%s: other bytes the second time", name)
		}
	}
}

func TestWithoutToolingThereIsOnlyTheReport(t *testing.T) {
	t.Parallel()
	s, doc := solvetest.Example(t, "rim-cap", "latches.rim.annular.undercut=2.5")
	set, err := deliver.Files(t.Context(), s, "tool", doc.Inputs(s.Job))
	if err != nil || !slices.Equal(set.Names, []string{"FWL-1042-report.json"}) {
		t.Errorf("%q, %v", set.Names, err)
	}
}

func TestLeftovers(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	for _, name := range []string{"J.1-nest.stl", "J.1-nest-2.stl", "J.1-anvil.3mf", "J.1-report.json", "J.1-work-instruction.pdf", "J.1-notes.txt", "J.1-nest.step", "Jx1-nest.stl", "J.10-nest.stl", "J.1-anvil-b.stl"} {
		if err := os.WriteFile(filepath.Join(folder, name), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	set := deliver.Set{Names: []string{"J.1-nest.stl", "J.1-report.json"}}
	want := []string{"J.1-anvil.3mf", "J.1-nest-2.stl", "J.1-work-instruction.pdf"}
	if got := deliver.Leftovers(folder, "J.1", set); !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	if got := deliver.Leftovers(filepath.Join(folder, "none"), "J.1", set); got != nil {
		t.Errorf("in a folder that is not there: %q", got)
	}
}
