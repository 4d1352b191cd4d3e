package deliver

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/export/quote"
	"ramnest/fixture"
)

// A Set is all files of a job, rendered.
type Set struct {
	Files  []export.File
	Names  []string // of the files, in order; the report is the last
	Report []byte   // the JSON report, which is also one of the files
}

// Files renders every file of a solution. tool names the program and its version.
// Without tooling the report is the only one: nothing that suggests otherwise is
// left lying about.
func Files(s *solve.Solution, tool string, inputs []jobfile.Input) (Set, error) {
	w := &writer{stem: job.Stem(s.Job.Number)}
	for _, p := range s.Pieces() {
		part := strings.ReplaceAll(p.Name, " ", "-")
		w.render(part+".stl", func(out io.Writer) error {
			return export.WriteSTL(out, s.Job.Mark()+" "+p.Name, p.Mesh.Vertices, p.Mesh.Triangles)
		})
		w.render(part+".3mf", func(out io.Writer) error { return export.Write3MF(out, threeMF(s, p, tool)) })
	}
	// Pictures and the work instruction are rendered here: the solution has the parts
	// in the seated pose, the tooling with its shifts, forces, decision and quote.
	if s.Tooled() {
		w.render("quote.csv", func(out io.Writer) error { return quote.WriteCSV(out, s.Quote) })
	}
	names := append(w.set.Names, w.name("report.json"))
	facts := report.Facts{Tool: tool, Inputs: inputs, Files: names}
	w.set.Report = w.render("report.json", func(out io.Writer) error { return export.WriteJSON(out, report.Of(s, facts)) })
	return w.set, w.err
}

// A writer collects rendered files until the first fault.
type writer struct {
	stem string
	set  Set
	err  error
}

func (w *writer) name(part string) string { return w.stem + "-" + part }

// render adds a file and gives its bytes.
func (w *writer) render(part string, write func(io.Writer) error) []byte {
	if w.err != nil {
		return nil
	}
	var b bytes.Buffer
	name := w.name(part)
	if err := write(&b); err != nil {
		w.err = fmt.Errorf("render %s: %w", name, err)
		return nil
	}
	content := b.Bytes()
	w.set.Names = append(w.set.Names, name)
	w.set.Files = append(w.set.Files, export.File{Name: name, Write: func(out io.Writer) error {
		_, err := out.Write(content)
		return err
	}})
	return content
}

// threeMF packs a piece, standing in the positive corner of the build.
func threeMF(s *solve.Solution, p fixture.Piece, tool string) export.Package {
	j := s.Job
	least := p.Mesh.Vertices[0]
	for _, v := range p.Mesh.Vertices {
		for k := range 3 {
			least[k] = min(least[k], v[k])
		}
	}
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
		export.Entry{Name: "piece", Value: p.Name},
		export.Entry{Name: "engraved", Value: p.Mark},
		export.Entry{Name: "material", Value: s.Material.Name},
		export.Entry{Name: "process", Value: s.Material.Process},
		export.Entry{Name: "shift-to-assembly-mm", Value: fmt.Sprintf("%.3f %.3f %.3f", p.Shift[0], p.Shift[1], p.Shift[2])},
	)
	return export.Package{
		Metadata: about,
		Objects: []export.Object{{
			Name: p.Name, PartNumber: j.Mark(), Vertices: p.Mesh.Vertices, Triangles: p.Mesh.Triangles,
			Place: [3]float64{-least[0], -least[1], -least[2]},
		}},
	}
}
