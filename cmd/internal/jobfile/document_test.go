package jobfile

import (
	"slices"
	"testing"

	"ramnest/force/fault"
)

const placed = `job: x

parts:
  - id: cap

    ring:
      undercut: 1

  -
    id: tray
    process:
      PBF
outline:
  [[0, 0],
   [1, 2]]
names:
  v1.2: a
  v1: b
`

func TestPlace(t *testing.T) {
	t.Parallel()
	_, d, p := decoded(placed, "parts.tray.ring.undercut=2", "wall=3")
	if len(p) > 0 {
		t.Fatal(p)
	}
	for _, c := range []struct {
		field string
		line  int
		ok    bool
	}{
		{"job", 1, true},
		{"parts", 3, true},
		{"parts[0]", 4, true},
		{"parts[0].id", 4, true},
		{"parts[0].ring", 6, true},
		{"parts[0].ring.undercut", 7, true},
		{"parts[0].ring.land", 6, true}, // absent: its section
		{"parts[0].no.such.thing", 4, true},
		{"parts[1]", 10, true},
		{"parts[1].process", 11, true}, // the key, not the value below it
		{"parts[2].id", 3, true},
		{"parts[x]", 3, true},
		{"parts[-1]", 3, true},
		{"outline[1]", 15, true},
		{"outline[1][0]", 15, true},
		{"names.v1.2", 17, true}, // keys may hold dots
		{"names.v1", 18, true},
		{"names.v9", 16, true},
		{"nowhere", 1, true},
		{"", 1, true},
		{"wall", 0, false}, // from an override
		{"parts[1].ring.undercut", 0, false},
	} {
		if line, ok := d.Place(c.field); line != c.line || ok != c.ok {
			t.Errorf("Place(%q): got %d, %v, want %d, %v", c.field, line, ok, c.line, c.ok)
		}
	}
}

func TestPlaceInAFileThatCannotBeRead(t *testing.T) {
	t.Parallel()
	for _, text := range []string{"", "a: [", "- x"} {
		_, d, _ := decoded(text)
		if line, ok := d.Place("job"); line != 0 || ok || d.Units != metric {
			t.Errorf("%q: got line %d, %v, units %v, want 0, false, metric", text, line, ok, d.Units)
		}
	}
}

func TestDocumentProblemsGivePlaces(t *testing.T) {
	t.Parallel()
	_, d, _ := decoded(placed, "wall=3")
	got := d.Problems([]fault.Fault{
		{Field: "wall", Given: "3 mm", Problem: "must be 5 mm or more"},
		{Field: "parts[1].process", Given: "PBF", Problem: "is not at hand"},
		{Field: "parts[0].ring.land", Problem: "is missing"},
	}).Error()
	want := "job.yaml:6: parts[0].ring.land: is missing\n" +
		"job.yaml:11: parts[1].process: PBF; is not at hand\n" +
		"set wall=3: wall: 3 mm; must be 5 mm or more"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// What was not understood is not complained about twice.
func TestDocumentProblemsLeaveOutWhatWasNotUnderstood(t *testing.T) {
	t.Parallel()
	_, d, p := decoded("job: x\nparts:\n  - id: a\n    ring: 3\n    hight: 2\n  - id: b\n    height: tall\n")
	if len(p) != 3 {
		t.Fatalf("got %v, want 3 problems", p)
	}
	faults := []fault.Fault{
		{Field: "parts[0].ring"}, {Field: "parts[0].ring.undercut"}, {Field: "parts[1].height"},
		{Field: "parts[0].ringed", Problem: "stays"}, {Field: "parts[1]", Problem: "stays"}, {Field: "job", Problem: "stays"},
	}
	got := d.Problems(faults)
	if len(got) != 3 || slices.ContainsFunc(got, func(p Problem) bool { return p.Problem != "stays" }) {
		t.Errorf("got %v, want the three that stay", got)
	}
	_, d, _ = decoded("job: [")
	if got := d.Problems(faults); len(got) != 0 {
		t.Errorf("unreadable file: got %v, want none", got)
	}
}

func TestProblemsJoinInFileOrder(t *testing.T) {
	t.Parallel()
	a := Problems{{File: "f", Line: 3, Fault: fault.Fault{Problem: "c"}}, {File: "set x=1", Fault: fault.Fault{Problem: "d"}}}
	b := Problems{{File: "f", Line: 1, Fault: fault.Fault{Problem: "a"}}, {File: "f", Line: 3, Fault: fault.Fault{Problem: "b"}}}
	got := a.And(b).Error()
	if want := "f:1: a\nf:3: c\nf:3: b\nset x=1: d"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if err := (Problems{}).Err(); err != nil {
		t.Errorf("no problems: got error %v, want nil", err)
	}
	if err := a.Err(); err == nil {
		t.Error("two problems: got no error")
	}
}

func TestProblemStringIsOneHarmlessLine(t *testing.T) {
	t.Parallel()
	p := Problem{File: "a\x1b[2J.yaml", Line: 2, Fault: fault.Fault{Field: "x\ny", Given: "\u202e3 mm", Problem: "is wrong"}, Near: "z\r"}
	if got, want := p.String(), "a\ufffd[2J.yaml:2: x\ufffdy: \ufffd3 mm; is wrong (nearest: z\ufffd)"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
