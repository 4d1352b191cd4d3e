package drawing

import (
	"io"

	"ramnest/export/page"
	"ramnest/force/fault"
)

// Formats are those that [Set.Write] knows.
var Formats = []string{"pdf", "svg", "dxf"}

// Write writes the drawings in a format: PDF with a sheet a page, SVG with the sheets one
// below the other, DXF (R12) with the sheets side by side and bodies in their own size.
// What cannot be drawn is a force.Fault, and nothing is written.
func (s Set) Write(w io.Writer, format string) error {
	sheets, err := s.sheets()
	if err != nil {
		return err
	}
	switch format {
	case "pdf":
		return s.writePDF(w, sheets)
	case "svg":
		return writeSVG(w, s, sheets)
	case "dxf":
		return s.writeDXF(w, sheets)
	}
	return fault.Fault{Field: "format", Given: format, Problem: "is no format of a drawing", Want: "pdf, svg or dxf"}
}

// writePDF writes a page a sheet.
func (s Set) writePDF(w io.Writer, sheets []sheet) error {
	book := page.New(s.Paper, nil)
	defer book.Wait()
	for _, sh := range sheets {
		p := book.Sheet(sh.size, sh.name)
		for _, k := range sh.strokes {
			path := new(page.Path)
			for i, q := range k.points {
				if i == 0 {
					path.Move(q[0], q[1])
				} else {
					path.Line(q[0], q[1])
				}
			}
			if k.closed {
				path.Close()
			}
			p.Draw(path, page.Style{Stroke: widths[k.kind], Dash: dashes[k.kind]})
		}
		for _, a := range sh.arrows {
			c := a.corners()
			p.Draw(new(page.Path).Polygon(c[0][0], c[0][1], c[1][0], c[1][1], c[2][0], c[2][1]), page.Style{Filled: true, Fill: page.Black})
		}
		for _, t := range sh.labels {
			f := page.Font{Size: t.size}
			if t.bold {
				f.Face = page.Bold
			}
			text, _ := page.Clean(t.text)
			width := book.Width(f, text)
			tall := 0.74 * t.size * 25.4 / 72
			if t.up {
				y := t.at[1] + t.align*width
				if t.blank {
					p.Ground(t.at[0]-tall-0.2, y-width-0.3, tall+0.5, width+0.6, page.White)
				}
				p.TextUp(t.at[0], y, f, text)
				continue
			}
			x := t.at[0] - t.align*width
			if t.blank {
				p.Ground(x-0.3, t.at[1]-tall-0.2, width+0.6, tall+0.5, page.White)
			}
			p.Text(x, t.at[1], f, text)
		}
	}
	return book.Write(w, page.Info{
		Title: "Drawings of job " + s.Job + ": " + s.Title, Author: s.Author, Subject: "Nest and anvil, plan and sections",
		Keywords: s.Fingerprint, Creator: s.Tool, Language: "en", Date: s.Date,
	})
}
