package deliver

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"strings"
	"sync"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/export/quote"
	"ramnest/fixture"
	"ramnest/fixture/mesh"
	workinstructions "ramnest/work-instructions"
)

// A Set is all files of a job, rendered.
type Set struct {
	Files  []export.File
	Names  []string // of the files, in order; the report is the last
	Report []byte   // the JSON report, which is also one of the files

	Sheet *workinstructions.Sheet // what the work instruction was laid out from; nil: there is none
}

// Files renders every file of a solution, several at a time. tool names the program
// and its version. Without tooling the report is the only one: nothing that suggests
// otherwise is left lying about. When the context ends, so does the rendering, with the
// error of the context.
func Files(ctx context.Context, s *solve.Solution, tool string, inputs []jobfile.Input) (Set, error) {
	l := list{stem: job.Stem(s.Job.Number)}
	var drawn *workinstructions.Sheet
	for _, p := range s.Pieces() {
		part := strings.ReplaceAll(p.Name, " ", "-")
		l.add(part+".stl", func(out io.Writer) error {
			return export.WriteSTL(out, s.Job.Mark()+" "+p.Name, p.Drawn())
		})
		l.add(part+".3mf", func(out io.Writer) error { return export.Write3MF(out, threeMF(s, p, tool)) })
	}
	if s.Tooled() {
		l.add("work-instruction.pdf", func(out io.Writer) error {
			sheet, err := sheet(ctx, s, tool)
			if err != nil {
				return err
			}
			drawn = &sheet
			return workinstructions.Write(out, sheet)
		})
		if s.Quote != nil {
			l.add("quote.csv", func(out io.Writer) error { return quote.WriteOffer(out, *s.Quote, s.Payback, s.NoPayback) })
		}
	}
	l.add("report.json", func(out io.Writer) error {
		facts := report.Facts{Tool: tool, Inputs: inputs, Files: l.names}
		for i := range s.Steps {
			if s.Tooled() {
				facts.Criteria = append(facts.Criteria, stepOf(s, i).Criteria(s.Job.Shown()))
			}
		}
		return export.WriteJSON(out, report.Of(s, facts))
	})
	set, err := l.render(ctx)
	if err == nil {
		set.Sheet = drawn
	}
	return set, err
}

// A list is what is to be rendered.
type list struct {
	stem  string
	names []string
	write []func(io.Writer) error
}

// add appends a file. write is called later, beside others.
func (l *list) add(part string, write func(io.Writer) error) {
	l.names = append(l.names, l.stem+"-"+part)
	l.write = append(l.write, write)
}

// render makes the bytes of every file. Of several faults it gives the first in the
// order of the list. The report is the last. It does not wait for a page that is being
// laid out when the context ends: nobody sees what comes of it.
func (l *list) render(ctx context.Context) (Set, error) {
	set := Set{Names: l.names, Files: make([]export.File, len(l.names))}
	content := make([]bytes.Buffer, len(l.names))
	errs := make([]error, len(l.names))
	var group sync.WaitGroup
	for i, write := range l.write {
		group.Go(func() { errs[i] = write(export.Stoppable(ctx, &content[i])) })
	}
	all := make(chan struct{})
	go func() {
		group.Wait()
		close(all)
	}()
	select {
	case <-all:
	case <-ctx.Done():
		return Set{}, ctx.Err()
	}
	for i, name := range l.names {
		if errs[i] != nil {
			return Set{}, fmt.Errorf("render %s: %w", name, errs[i])
		}
		b := content[i].Bytes()
		set.Files[i] = export.File{Name: name, Write: func(out io.Writer) error {
			_, err := out.Write(b)
			return err
		}}
		set.Report = b
	}
	return set, nil
}

// threeMF packs a piece, standing in the positive corner of the build.
func threeMF(s *solve.Solution, p fixture.Piece, tool string) export.Package {
	j := s.Job
	drawn := p.Drawn()
	about := []export.Entry{{Name: "Title", Value: j.Title + ": " + p.Name}}
	if j.Author != "" {
		about = append(about, export.Entry{Name: "Designer", Value: j.Author})
	}
	about = append(about,
		export.Entry{Name: "Description", Value: fmt.Sprintf("Job %s: %s of the assembly tooling", j.Mark(), p.Name)},
		export.Entry{Name: "CreationDate", Value: j.Date},
		export.Entry{Name: "Application", Value: tool},
		export.Entry{Name: "number", Value: j.Number},
		export.Entry{Name: "revision", Value: j.Revision},
		export.Entry{Name: "fingerprint", Value: s.Fingerprint},
		export.Entry{Name: "piece", Value: p.Name},
		export.Entry{Name: "engraved", Value: p.Mark},
		export.Entry{Name: "material", Value: s.Material.Name},
		export.Entry{Name: "process", Value: s.Material.Process},
		export.Entry{Name: "shift-to-assembly-mm", Value: fmt.Sprintf("%.3f %.3f %.3f", p.Shift[0], p.Shift[1], p.Shift[2])},
	)
	if p.Scale != [3]float64{1, 1, 1} {
		about = append(about, export.Entry{Name: "scale-for-shrink", Value: fmt.Sprintf("%.5f %.5f %.5f", p.Scale[0], p.Scale[1], p.Scale[2])})
	}
	return export.Package{
		Metadata: about,
		Objects: []export.Object{{
			Name: p.Name, PartNumber: j.Mark(), Mesh: *drawn,
			Place: mesh.Scale(drawn.Bounds().Min, -1),
		}},
	}
}
