package deliver

import (
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"
	"time"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/fixture/coupon"
	"ramnest/force/calibrate"
	"ramnest/force/unit"
	workinstructions "ramnest/work-instructions"
)

// Ladder renders the files of a ladder of coupons: each body as STL, each build as
// 3MF with its bodies in their places, the test table, and the sheet for the bench.
func Ladder(ctx context.Context, j *job.File, set coupon.Set, tool string) (Set, error) {
	l := list{stem: job.Stem(j.Number) + "-ladder-" + job.Stem(set.Latch)}
	for _, b := range set.Bodies {
		l.add(fmt.Sprintf("%d-%s.stl", b.Number, b.Part), func(out io.Writer) error {
			return export.WriteSTL(out, j.Mark()+" "+b.Name, b.Mesh)
		})
	}
	for k, b := range set.Builds {
		l.add(fmt.Sprintf("build-%d.3mf", k+1), func(out io.Writer) error { return export.Write3MF(out, buildPackage(j, set, b, tool)) })
	}
	l.add("test.csv", func(out io.Writer) error { return testTable(out, set, j.Shown()) })
	sheet, err := testSheet(j, set, tool, l.names[len(l.names)-1])
	if err != nil {
		return Set{}, err
	}
	l.add("test.pdf", func(out io.Writer) error { return workinstructions.WriteTest(out, sheet) })
	return l.render(ctx)
}

// buildPackage packs what is printed together.
func buildPackage(j *job.File, set coupon.Set, b coupon.Build, tool string) export.Package {
	p := export.Package{Metadata: []export.Entry{
		{Name: "Title", Value: j.Title + ": coupons of latch " + set.Latch},
		{Name: "Description", Value: fmt.Sprintf("Job %s: ladder of %d pairs, %s in steps of %s", j.Mark(), len(set.Steps),
			strings.ReplaceAll(set.SizeName, "_", " "), unit.Length.Of(set.StepSize).Text(j.Shown(), nil))},
		{Name: "CreationDate", Value: j.Date},
		{Name: "Application", Value: tool},
		{Name: "number", Value: j.Number},
		{Name: "latch", Value: set.Latch},
		{Name: "material", Value: b.Material},
		{Name: "process", Value: b.Process},
	}}
	for _, i := range b.Bodies {
		body := set.Bodies[i]
		p.Objects = append(p.Objects, export.Object{Name: body.Name, PartNumber: j.Mark(), Mesh: *body.Mesh, Place: body.Offset})
	}
	return p
}

// testTable is the table that is filled in and read by calibrate.
func testTable(out io.Writer, set coupon.Set, shown unit.System) error {
	w := csv.NewWriter(out)
	size, force := calibrate.Heads(shown)
	places := 3
	if shown.Inch { // to a hundredth of a thou: the reader tells sizes 0.6 µm apart
		places = 5
	}
	rows := [][]string{{"latch", "coupon", size, force, "note"}}
	for _, s := range set.Steps {
		v, _ := shown.In(s.Size, unit.Length)
		rows = append(rows, []string{set.Latch, fmt.Sprint(s.Number), strconv.FormatFloat(v, 'f', places, 64), "", ""})
	}
	return w.WriteAll(rows)
}

// testSheet fills the sheet for whoever presses the coupons.
func testSheet(j *job.File, set coupon.Set, tool, table string) (workinstructions.TestSheet, error) {
	date, err := time.Parse(time.DateOnly, j.Date)
	if err != nil {
		return workinstructions.TestSheet{}, fmt.Errorf("date of the job: %w", err)
	}
	s := workinstructions.TestSheet{Paper: workinstructions.Paper(j.Sheet()), Job: j.Number, Title: j.Title, Revision: orNone(j.Revision, ""),
		Author: j.Author, Date: date, Tool: tool,
		Units: j.Shown(), Latch: set.Latch, Kind: strings.ReplaceAll(set.Kind, "_", " "), SizeName: strings.ReplaceAll(set.SizeName, "_", " "),
		StepSize: set.StepSize,
		Stepped:  set.Stepped, Places: set.Places, Table: table, Bought: set.Bought, Snaps: set.Snaps}
	for _, r := range set.Remarks {
		s.Remarks = append(s.Remarks, r.In(j.Shown()))
	}
	s.Warnings = report.LadderWarnings(j, set)
	if step, k, ok := solve.StepOfLatch(j, set.Latch); ok {
		lower, _ := j.Materials.Resolve(step.Lower.MaterialSpec)
		upper, _ := j.Materials.Resolve(step.Upper.MaterialSpec)
		s.Lower, s.Upper = lower.Name+" "+lower.Process, upper.Name+" "+upper.Process
		s.Brittle = step.Lower.Brittle || step.Upper.Brittle
		s.Permanent = step.Latches[k].Use != "releasable"
	}
	for _, st := range set.Steps {
		e := st.Expected
		p := workinstructions.TestPair{Number: st.Number, Size: st.Size, Nominal: st.Nominal, P5: e.P5, P95: e.P95,
			Overstrain: e.Strain > e.Permitted && e.Permitted > 0}
		switch {
		case e.Loose:
			p.P5, p.P95, p.Word = 0, 0, "loose"
		case e.Locks:
			p.P5, p.P95, p.Word = 0, 0, "locks"
		}
		s.Pairs = append(s.Pairs, p)
	}
	return s, nil
}
