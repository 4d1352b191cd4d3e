package deliver

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/export"
	"ramnest/fixture/coupon"
)

// Ladder renders the files of a ladder of coupons: each body as STL, each build as
// 3MF with its bodies in their places, and the test table.
func Ladder(j *job.File, set coupon.Set, tool string) (Set, error) {
	l := list{stem: job.Stem(j.Number) + "-ladder-" + job.Stem(set.Latch)}
	for _, b := range set.Bodies {
		l.add(fmt.Sprintf("%d-%s.stl", b.Number, b.Part), func(out io.Writer) error {
			return export.WriteSTL(out, j.Mark()+" "+b.Name, b.Mesh.Vertices, b.Mesh.Triangles)
		})
	}
	for k, b := range set.Builds {
		l.add(fmt.Sprintf("build-%d.3mf", k+1), func(out io.Writer) error { return export.Write3MF(out, buildPackage(j, set, b, tool)) })
	}
	l.add("test.csv", func(out io.Writer) error { return testTable(out, set) })
	return l.render()
}

// buildPackage packs what is printed together.
func buildPackage(j *job.File, set coupon.Set, b coupon.Build, tool string) export.Package {
	p := export.Package{Metadata: []export.Entry{
		{Name: "Title", Value: j.Title + ": coupons of latch " + set.Latch},
		{Name: "Description", Value: fmt.Sprintf("Job %s: ladder of %d pairs, %s in steps of %g mm", j.Mark(), len(set.Steps), strings.ReplaceAll(set.SizeName, "_", " "), set.StepSize)},
		{Name: "CreationDate", Value: j.Date},
		{Name: "Application", Value: tool},
		{Name: "number", Value: j.Number},
		{Name: "latch", Value: set.Latch},
		{Name: "material", Value: b.Material},
		{Name: "process", Value: b.Process},
	}}
	for _, i := range b.Bodies {
		body := set.Bodies[i]
		p.Objects = append(p.Objects, export.Object{Name: body.Name, PartNumber: j.Mark(), Vertices: body.Mesh.Vertices, Triangles: body.Mesh.Triangles, Place: body.Offset})
	}
	return p
}

// testTable is the table that is filled in and read by calibrate.
func testTable(out io.Writer, set coupon.Set) error {
	w := csv.NewWriter(out)
	rows := [][]string{{"latch", "coupon", "size", "force", "note"}}
	for _, s := range set.Steps {
		rows = append(rows, []string{set.Latch, fmt.Sprint(s.Number), strconv.FormatFloat(s.Size, 'f', 3, 64), "", ""})
	}
	return w.WriteAll(rows)
}
