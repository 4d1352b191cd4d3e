package drawings

import (
	"fmt"
	"strconv"
	"time"

	"ramnest/cmd/internal/solve"
	"ramnest/export/drawing"
	"ramnest/export/page"
	"ramnest/fixture"
	"ramnest/force"
	"ramnest/force/unit"
)

// SetOf is the drawings of a solution with tooling, nests first.
func SetOf(s *solve.Solution, tool string) (drawing.Set, error) {
	j := s.Job
	date, err := time.Parse(time.DateOnly, j.Date)
	if err != nil {
		return drawing.Set{}, fmt.Errorf("date of the job: %w", err)
	}
	paper := page.A4
	if j.Sheet() == "Letter" {
		paper = page.Letter
	}
	set := drawing.Set{
		Job: j.Number, Title: j.Title, Revision: j.Revision, Author: j.Author, Fingerprint: s.Fingerprint, Tool: tool,
		Date: date, Paper: paper, Units: j.Shown(),
	}
	d := drafter{units: j.Shown(), material: s.Material}
	for _, n := range s.Tooling.Nests {
		set.Bodies = append(set.Bodies, d.nest(n))
	}
	for _, a := range s.Tooling.Anvils {
		set.Bodies = append(set.Bodies, d.anvil(a))
	}
	return set, nil
}

// A drafter knows what all drawings of a job share.
type drafter struct {
	units    unit.System
	material force.Material
}

// body begins the drawing of a piece.
func (d drafter) body(p fixture.Piece, cut [2]float64) drawing.Body {
	b := drawing.Body{
		Name: p.Name, Mesh: *p.Mesh, Cut: cut,
		Material: d.material.Name, Process: d.material.Process, Build: build(d.material), Tolerance: d.tolerance(), Mass: d.mass(p.Mass),
		Mark: p.Mark,
	}
	if b.Mark == "" {
		b.Mark = "nothing"
	}
	return b
}

// build says how the body is built, by the press axis.
func build(m force.Material) string {
	switch {
	case !m.Layered():
		return "none"
	case m.Build == "along":
		return "along Z, the press axis"
	case m.Build == "across":
		return "across Z, the press axis"
	}
	return "not stated"
}

// tolerance says what the process keeps.
func (d drafter) tolerance() string {
	floor, share := d.material.Tolerance.Value, d.material.ToleranceShare.Value
	if !(floor > 0) && !(share > 0) {
		return "not known of the process"
	}
	text := "±" + d.length(floor)
	if share > 0 {
		text += ", beyond " + d.length(floor/share) + " ±" + strconv.FormatFloat(100*share, 'g', 3, 64) + " %"
	}
	return text + " (" + d.material.Process + ")"
}

// length writes a length with its unit.
func (d drafter) length(v float64) string { return unit.Length.Of(v).Text(d.units, nil) }

func (d drafter) mass(kg float64) string { return unit.Mass.Of(kg).Text(d.units, nil) }
