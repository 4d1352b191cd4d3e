package preview

import (
	"fmt"
	"math"

	"ramnest/fixture/mesh"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

// A Document is what one file shows. Texts are in the units of the job already.
type Document struct {
	Job, Title, Revision, Fingerprint, Tool string

	Sheet    string      // file name of the work instruction, to which the file refers
	Override string      // why a failing method is used all the same; empty: it is not
	Facts    []Fact      // of the whole job
	Units    unit.System // how lengths and forces are shown
	Bodies   []Body
	Steps    []Step
}

// A Fact is a line of a table.
type Fact struct{ Name, Value string }

// A Body is a mesh that steps place.
type Body struct {
	Name      string
	mesh.Mesh // [mm]
}

// A Step is one press step.
type Step struct {
	Name    string
	Facts   []Fact
	Curve   [][2]float64 // lift [mm] and nominal force [N], in order of falling lift; two or more
	Band    [][4]float64 // lift [mm] and P5, P50, P95 [N], in order of falling lift; may be empty
	Design  float64      // design force [N]
	Thrust  [2]float64   // where the force goes in; the cut runs through it along x [mm]
	Reason  string       // of the choice of method
	Options []Option
	Scene   []Placed
}

// An Option is one method that was weighed.
type Option struct {
	Method, Verdict, Used, Nearest, How string
	Chosen                              bool
}

// Tone is the grey or colour of a body.
type Tone string

// The tones, as in the pictures of the sheet.
const (
	Light  Tone = "light"
	Medium Tone = "medium"
	Dark   Tone = "dark"
	Accent Tone = "accent"
)

// A Placed body stands in the view of a step.
type Placed struct {
	Body   int // index in Bodies
	Name   string
	Tone   Tone
	Offset [3]float64 // added to every vertex, parts seated [mm]
	Moves  bool       // goes up and down with the lift
	Apart  float64    // how much higher it stands taken apart [mm]
}

// Stroke is the lift at first contact [mm].
func (s Step) Stroke() float64 {
	most := 0.0
	for _, p := range s.Curve {
		most = max(most, p[0])
	}
	for _, b := range s.Band {
		most = max(most, b[0])
	}
	return most
}

// check refuses what cannot be shown.
func (d Document) check() error {
	for i, b := range d.Bodies {
		field := fmt.Sprintf("bodies[%d]", i)
		if len(b.Triangles) == 0 {
			return fault.Fault{Field: field, Given: b.Name, Problem: "has no triangles"}
		}
		for _, v := range b.Vertices {
			if !finite(v[:]...) {
				return fault.Fault{Field: field, Given: b.Name, Problem: "has a vertex that is no place"}
			}
		}
		for _, t := range b.Triangles {
			for _, v := range t {
				if v < 0 || int(v) >= len(b.Vertices) {
					return fault.Fault{Field: field, Given: b.Name, Problem: "has a triangle without a vertex"}
				}
			}
		}
	}
	if len(d.Steps) == 0 {
		return fault.Fault{Field: "steps", Problem: "there is no press step"}
	}
	for i, s := range d.Steps {
		field := fmt.Sprintf("steps[%d]", i)
		if len(s.Curve) < 2 || !(s.Stroke() > 0) {
			return fault.Fault{Field: field, Given: s.Name, Problem: "has no curve of the force"}
		}
		good := finite(s.Design, s.Thrust[0], s.Thrust[1])
		for _, p := range s.Curve {
			good = good && finite(p[:]...)
		}
		for _, p := range s.Band {
			good = good && finite(p[:]...)
		}
		for _, p := range s.Scene {
			if p.Body < 0 || p.Body >= len(d.Bodies) {
				return fault.Fault{Field: field, Given: p.Name, Problem: "is no body of the document"}
			}
			good = good && finite(p.Offset[:]...) && finite(p.Apart)
		}
		if !good {
			return fault.Fault{Field: field, Given: s.Name, Problem: "has a figure that is no number"}
		}
	}
	return nil
}

func finite(v ...float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
