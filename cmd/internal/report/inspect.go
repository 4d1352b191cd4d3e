package report

import (
	"fmt"

	"ramnest/fixture/envelope"
	"ramnest/fixture/envelope/meshfile"
)

// An Inspection is what was found of a mesh file.
type Inspection struct {
	File    string            `json:"file"`
	Format  string            `json:"format"`
	Unit    string            `json:"read_as"`
	Objects []string          `json:"objects,omitzero"`
	Mesh    Defects           `json:"mesh"`
	Bodies  []Body            `json:"bodies"`      // that do not touch
	Least   [3]float64        `json:"file_low_mm"` // bounds in the axes of the file
	Most    [3]float64        `json:"file_high_mm"`
	Turn    string            `json:"turn"`    // that brings the axis up
	Size    [3]float64        `json:"size_mm"` // in the axes of the file
	Volume  float64           `json:"volume_mm3,omitzero"`
	Aspects []envelope.Aspect `json:"aspects"` // best first
	Up      string            `json:"up"`      // for the round features
	Low     [3]float64        `json:"low_mm"`  // bounds with that axis up
	High    [3]float64        `json:"high_mm"`
	Rounds  []envelope.Round  `json:"rounds,omitzero"`
	Notes   []string          `json:"notes,omitzero"` // with their numbers
}

// A Body is what of a mesh hangs together, in the axes of the file.
type Body struct {
	Number    int        `json:"number"`
	Low       [3]float64 `json:"low_mm"`
	High      [3]float64 `json:"high_mm"`
	Volume    float64    `json:"volume_mm3,omitzero"` // not known of an open one
	Triangles int        `json:"triangles"`
}

// Defects are what is wrong with a mesh.
type Defects struct {
	Triangles  int  `json:"triangles"`
	Shells     int  `json:"shells"`
	Closed     bool `json:"closed"`
	Open       int  `json:"open_edges"`
	Flipped    int  `json:"flipped_edges"`
	Shared     int  `json:"edges_of_more_than_two"`
	Degenerate int  `json:"degenerate_triangles"`
	Duplicates int  `json:"duplicate_triangles"`
	Turned     int  `json:"turned_triangles,omitzero"`   // so that all agree about the outside
	ClosedThen bool `json:"closed_when_turned,omitzero"` // and doubled ones left out
}

// Fill takes the findings on the mesh and on the placed part.
func (n *Inspection) Fill(m *meshfile.Mesh, part *envelope.Envelope) {
	d := meshfile.Defects(m)
	n.Mesh = Defects{d.Triangles, d.Shells, d.Closed, d.OpenEdges, d.FlippedEdges, d.SharedEdges, d.Degenerate, d.Duplicates, 0, false}
	n.Low, n.High = part.Min, part.Max
	for _, w := range part.Notes {
		if w.Number == envelope.NotClosed { // stands in Mesh
			continue
		}
		n.Notes = append(n.Notes, w.String())
	}
	scale := 0.0
	for k := range 3 {
		scale = max(scale, d.High[k]-d.Low[k])
	}
	longest := 0.0
	for k := range 3 {
		longest = max(longest, part.Max[k]-part.Min[k])
	}
	if scale > 0 {
		scale = longest / scale
	}
	for k := range 3 {
		n.Size[k] = (d.High[k] - d.Low[k]) * scale
		n.Least[k], n.Most[k] = d.Low[k]*scale, d.High[k]*scale
	}
	n.Turn = envelope.TurnOf(n.Up)
	for i, b := range meshfile.Bodies(m) {
		one := Body{Number: i + 1, Volume: b.Volume * scale * scale * scale, Triangles: b.Triangles}
		for k := range 3 {
			one.Low[k], one.High[k] = b.Min[k]*scale, b.Max[k]*scale
		}
		n.Bodies = append(n.Bodies, one)
	}
	if to, turned := meshfile.Oriented(m); turned > 0 || len(to.Triangles) < len(m.Triangles) {
		n.Mesh.Turned = turned
		d = meshfile.Defects(to)
		n.Mesh.ClosedThen = d.Closed
	}
	n.Volume = d.Volume * scale * scale * scale
}

// Inspected is an inspection for a person, 80 columns wide.
func Inspected(n Inspection, circles bool) string {
	pg := &page{}
	p := pg.line
	p("%s", n.File)
	if len(n.Format) > 12 { // how a STEP file was meshed
		p("  %s", n.Format)
		n.Format = "there"
	}
	p("  %s, %d triangles, %d shell%s, %.4g x %.4g x %.4g mm", n.Format, n.Mesh.Triangles, n.Mesh.Shells, plural(n.Mesh.Shells), n.Size[0],
		n.Size[1], n.Size[2])
	switch {
	case n.Mesh.Closed && n.Mesh.Turned > 0:
		p("  closed, inside out, %.5g mm3 when turned", n.Volume)
	case n.Mesh.Closed:
		p("  closed, %.5g mm3", n.Volume)
	case n.Mesh.ClosedThen:
		p("  closed when turned and without doubles, %.5g mm3; as stored %d flipped and", n.Volume, n.Mesh.Flipped)
		p("  %d many-sided edges", n.Mesh.Shared)
	default:
		p("  not closed: %d open, %d flipped, %d many-sided edges; its silhouettes count", n.Mesh.Open, n.Mesh.Flipped, n.Mesh.Shared)
	}
	if n.Mesh.Degenerate+n.Mesh.Duplicates > 0 {
		p("  %d triangles without area, %d doubled; both do no harm", n.Mesh.Degenerate, n.Mesh.Duplicates)
	}
	span := func(low, high [3]float64) string {
		return fmt.Sprintf("x %.3f to %.3f, y %.3f to %.3f, z %.3f to %.3f", zero(low[0]), zero(high[0]), zero(low[1]), zero(high[1]),
			zero(low[2]), zero(high[2]))
	}
	p("  in the file %s", span(n.Least, n.Most))
	p("  %s up       %s", n.Up, span(n.Low, n.High))
	p("              (%s)", n.Turn)
	if len(n.Bodies) > 1 {
		p("  %d bodies that do not touch; a job takes one by body: its number", len(n.Bodies))
		for _, b := range n.Bodies {
			volume := "open"
			if b.Volume != 0 {
				volume = fmt.Sprintf("%.5g mm3", b.Volume)
			}
			p("    %d: %s, %d triangles", b.Number, volume, b.Triangles)
			p("       %s", span(b.Low, b.High))
		}
	}
	for _, o := range n.Objects {
		p("  object %q", o)
	}
	for _, t := range n.Notes {
		pg.wrap("  note: ", "    ", t)
	}
	p("")
	p("  up   size mm                 ground mm2  shadow mm2   held   clean mm")
	for k, a := range n.Aspects {
		held, clean := "   -", "      -"
		if a.Undercut >= 0 {
			held, clean = fmt.Sprintf("%3.0f%%", 100*(1-a.Undercut)), fmt.Sprintf("%7.1f", a.Clean)
		}
		mark := ""
		if k == 0 {
			mark = "  suggested"
		}
		p("  %s   %-22s  %10.0f  %10.0f   %s  %s%s", a.Up, fmt.Sprintf("%.4g x %.4g x %.4g", a.Size[0], a.Size[1], a.Size[2]), a.Ground, a.Shadow,
			held, clean, mark)
	}
	if !circles {
		return pg.b.String()
	}
	p("")
	p("  round features, %s up", n.Up)
	if len(n.Rounds) == 0 {
		p("    none")
	}
	for _, r := range n.Rounds {
		p("    at: [[%.3f, %.3f]]  # %s, diameter %.3f, z %.3f to %.3f", zero(r.At.X), zero(r.At.Y), r.Kind, r.Diameter, zero(r.Low),
			zero(r.High))
	}
	return pg.b.String()
}

// zero leaves no minus before a nought.
func zero(v float64) float64 {
	if v > -0.0005 && v < 0 {
		return 0
	}
	return v
}

func plural(n int) string {
	if n == 1 {
		return ""
	}
	return "s"
}
