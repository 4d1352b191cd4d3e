package drawing

import (
	"fmt"
	"math"
	"time"

	"ramnest/export/page"
	"ramnest/fixture/mesh"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

// A Set is the drawings of a job.
type Set struct {
	Job, Title, Revision, Author, Fingerprint, Tool string

	Date   time.Time
	Paper  page.Size   // upright; larger bodies get the sheet of twice its area
	Units  unit.System // dimensions in inches, third-angle projection; else mm and first angle
	Bodies []Body
}

// A Body is what one sheet shows, in coordinates of its own, z up.
type Body struct {
	Name      string
	mesh.Mesh            // [mm], closed
	Cut       [2]float64 // the sections run through this place of the plan [mm]

	Material, Process, Build, Tolerance, Mass, Mark string // of the title block

	Dims     []Dim
	Features []Feature
	Notes    []string
}

// A Place is where on the sheet a dimension stands.
type Place int

// The places. Section A looks to the back, along y; section B along x.
const (
	PlanBelow  Place = iota // along x, under the plan
	PlanLeft                // along y, left of the plan
	SectionA                // along z, left of section A
	SectionAUp              // along x, over section A
	SectionB                // along z, right of section B
	SectionBUp              // along y, over section B
	places
)

// A Dim is a dimension between two points on the body.
type Dim struct {
	Place    Place
	From, To [3]float64 // [mm]
	What     string     // for whoever checks; it is not drawn
}

// axis is the coordinate that a dimension measures.
func (d Dim) axis() int {
	switch d.Place {
	case PlanBelow, SectionAUp:
		return 0
	case PlanLeft, SectionBUp:
		return 1
	}
	return 2
}

// Value is what is measured [mm].
func (d Dim) Value() float64 { return math.Abs(d.To[d.axis()] - d.From[d.axis()]) }

// A Feature is a line of the table, tagged in the plan. What has no place of its own is
// not tagged.
type Feature struct {
	Tag, Name string
	At        [2]float64 // its middle [mm]
	Diameter  float64    // [mm]; 0: not round
	Size      [2]float64 // along x and y, if it is not round [mm]; zeros: not stated
	Z         [2]float64 // from one height to another [mm]
	Hidden    bool       // not seen from above: no cross of centre lines
}

// check refuses what cannot be drawn.
func (s Set) check() error {
	if len(s.Bodies) == 0 {
		return fault.Fault{Field: "bodies", Problem: "there is nothing to draw"}
	}
	if !(s.Paper.Width >= 100 && s.Paper.Height >= 100 && s.Paper.Width <= 2000 && s.Paper.Height <= 2000) {
		return fault.Fault{Field: "paper", Given: fmt.Sprintf("%g x %g mm", s.Paper.Width, s.Paper.Height), Problem: "is no sheet to draw on",
			Want: "100 to 2000 mm a side"}
	}
	for i, b := range s.Bodies {
		field := fmt.Sprintf("bodies[%d]", i)
		good := len(b.Triangles) > 0 && finite(b.Cut[:]...)
		for _, v := range b.Vertices {
			good = good && finite(v[:]...)
		}
		for _, d := range b.Dims {
			good = good && finite(d.From[:]...) && finite(d.To[:]...) && d.Place >= 0 && d.Place < places
		}
		for _, f := range b.Features {
			good = good && finite(f.At[0], f.At[1], f.Diameter, f.Size[0], f.Size[1], f.Z[0], f.Z[1])
		}
		if !good {
			return fault.Fault{Field: field, Given: b.Name, Problem: "has no triangles, or a figure that is no number"}
		}
		for _, t := range b.Triangles {
			for _, v := range t {
				if v < 0 || int(v) >= len(b.Vertices) {
					return fault.Fault{Field: field, Given: b.Name, Problem: "has a triangle without a vertex"}
				}
			}
		}
	}
	return nil
}

// finite also keeps figures within what a sheet could ever show.
func finite(v ...float64) bool {
	for _, x := range v {
		if !(math.Abs(x) <= 1e5) {
			return false
		}
	}
	return true
}
