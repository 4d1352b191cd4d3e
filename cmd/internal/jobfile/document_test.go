package jobfile

import (
	"testing"

	"ramnest/force"
)

func TestDocumentPutsFaultsInTheirPlace(t *testing.T) {
	_, doc, problems := decodeSample(t, metric)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, c := range []struct {
		field string
		line  int
	}{
		{"width", 10},
		{"outline[1]", 23},
		{"outline[1][0]", 23},
		{"latches[0].annular.undercut", 31},
		{"latches[0].annular.land", 30}, // not in the file: its block
		{"latches[1].at[0]", 32},
		{"latches[7].id", 26},
		{"parts.lid.modulus", 34},
		{"steps[0].lower", 2}, // where the first key stands,
		{"", 2},
	} {
		got := doc.Problems([]force.Fault{{Field: c.field, Problem: "p"}})
		if len(got) != 1 || got[0].Line != c.line || got[0].File != "job.yaml" {
			t.Errorf("%s: got %v, want line %d", c.field, got, c.line)
		}
	}
}

func TestProblemText(t *testing.T) {
	_, doc, _ := decodeSample(t, metric)
	got := doc.Problems([]force.Fault{
		{Field: "latches[0].annular.undercut", Given: "-0.2 mm", Problem: "must be above 0", Want: "0.2 to 1.6 mm"},
		{Field: "width", Problem: "must be above 20 mm"},
	})
	const want = "job.yaml:10: width: must be above 20 mm\n" +
		"job.yaml:31: latches[0].annular.undercut: -0.2 mm; must be above 0 (0.2 to 1.6 mm)"
	if got.Error() != want {
		t.Errorf("got\n%s\nwant\n%s", got.Error(), want)
	}
	if Problems(nil).Err() != nil || got.Err() == nil {
		t.Error("Err must be nil without problems and only then")
	}
}

// What only follows from a value that could not be read is not reported again;
// what stands elsewhere is.
func TestDocumentLeavesOutEchoes(t *testing.T) {
	_, doc, problems := decodeSample(t, "latches:\n- id: a\n  at: [[0, 0]]\n  annular: {undercut: 1 N}\n- id: b\n  at: [[0, 0]]\n  annular: {undercut: -1}\n")
	got := problems.Join(doc.Problems([]force.Fault{
		{Field: "latches[1].annular.undercut", Problem: "must be above 0"},
		{Field: "latches[0].annular.undercut", Problem: "must be above 0"},
		{Field: "latches[0].annular.land", Problem: "must be below the undercut"},
		{Field: "latches[0].annular", Problem: "does not fit"},
	}))
	const want = "job.yaml:4: latches[0].annular.undercut: 1 N; N is not a unit of length (" + lengthUnits + ")\n" +
		"job.yaml:7: latches[1].annular.undercut: must be above 0"
	if got.Error() != want {
		t.Errorf("got\n%s\nwant\n%s", got.Error(), want)
	}
}

func TestDocumentOfUnreadableFileAddsNothing(t *testing.T) {
	for _, text := range []string{"a: b: c\n", "", "units: foot\nwidth: 3\n"} {
		_, doc, problems := decodeSample(t, text)
		if more := doc.Problems([]force.Fault{{Field: "latches[0].id", Problem: "p"}}); len(problems) != 1 || len(more) != 0 {
			t.Errorf("%q: %v, then %v", text, problems, more)
		}
	}
}
