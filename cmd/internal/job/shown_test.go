package job_test

import (
	"slices"
	"strings"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/fixture/envelope"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

// Results are shown in the units of the job: forces go with lengths unless it says so.
func TestUnitsOfResults(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		length, force string
		want          unit.System
	}{
		{"", "", unit.System{}}, {"mm", "", unit.System{}}, {"mm", "N", unit.System{}}, {"mm", "lbf", unit.System{Pound: true}}, {"", "lbf", unit.System{Pound: true}},
		{"in", "", unit.System{Inch: true, Pound: true}}, {"in", "N", unit.System{Inch: true}}, {"in", "lbf", unit.System{Inch: true, Pound: true}},
	} {
		var f job.File
		f.Length, f.Force = c.length, c.force
		if got := f.Shown(); got != c.want {
			t.Errorf("lengths in %q, forces in %q: %+v, want %+v", c.length, c.force, got, c.want)
		}
	}
}

// Each mesh that a job names, once, in the order of the file; parts of layers name none.
func TestMeshesOfAJob(t *testing.T) {
	t.Parallel()
	part := func(file string) *job.Part {
		return &job.Part{Envelope: envelope.Spec{Mesh: &envelope.MeshSpec{File: file}}}
	}
	f := job.File{Lower: part("a.stl"), Upper: &job.Part{}, PressSteps: []job.PressStep{{Lower: part("b.stl"), Upper: part("a.stl")}, {Upper: part("")}, {Upper: part("c.3mf")}}}
	if got := f.Meshes(); !slices.Equal(got, []string{"a.stl", "b.stl", "c.3mf"}) {
		t.Errorf("%q", got)
	}
}

// What the job leaves out: the mark without a revision, A4, the invented rates.
func TestWhatIsLeftOut(t *testing.T) {
	t.Parallel()
	var f job.File
	f.Number = "X-1"
	if f.Mark() != "X-1" || f.Sheet() != "A4" || !f.Card().Invented {
		t.Errorf("%q %q %q", f.Mark(), f.Sheet(), f.Card().Name)
	}
	f.Revision, f.Paper = "B", "Letter"
	if f.Mark() != "X-1 B" || f.Sheet() != "Letter" {
		t.Errorf("%q %q", f.Mark(), f.Sheet())
	}
	card := f.Card()
	card.Invented, card.Name = false, "own"
	f.Rates = &card
	if f.Card().Name != "own" {
		t.Error("the shop's own card was not taken")
	}
}

// What the sheet has room for: just so long is taken, one more is not.
func TestLongestWords(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		field string
		set   func(f *job.File, s string)
		most  int
	}{
		{"job", func(f *job.File, s string) { f.Number = s }, 40},
		{"revision", func(f *job.File, s string) { f.Revision = s }, 40},
		{"title", func(f *job.File, s string) { f.Title = s }, 200},
		{"author", func(f *job.File, s string) { f.Author = s }, 60},
		{"method.override", func(f *job.File, s string) { f.Method = &job.Wanted{Force: "hand", Override: s} }, 500},
	} {
		long := func(n int) bool {
			var f job.File
			c.set(&f, strings.Repeat("é", n))
			return slices.ContainsFunc(f.Validate(), func(b fault.Fault) bool { return b.Field == c.field && strings.Contains(b.Problem, "long") })
		}
		if long(c.most) || !long(c.most+1) {
			t.Errorf("%s: %d characters are too long: %t, one more: %t", c.field, c.most, long(c.most), long(c.most+1))
		}
	}
}

// A bound goes to every part that there is.
func TestBoundGoesToEveryPart(t *testing.T) {
	t.Parallel()
	f := job.File{Lower: &job.Part{}, PressSteps: []job.PressStep{{Lower: &job.Part{}, Upper: &job.Part{}}, {Upper: &job.Part{}}}}
	f.Bound(7, 9)
	for i, p := range []*job.Part{f.Lower, f.PressSteps[0].Lower, f.PressSteps[0].Upper, f.PressSteps[1].Upper} {
		if p.Envelope.MostOutlines != 9 || f.MostPlaces != 7 {
			t.Errorf("part %d: %d outlines, %d places", i, p.Envelope.MostOutlines, f.MostPlaces)
		}
	}
}
