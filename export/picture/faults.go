package picture

import (
	"errors"
	"fmt"
	"math"

	"ramnest/fixture/mesh"
)

// A SceneError names the part of a scene that cannot be drawn.
type SceneError struct {
	Field   string // "Bodies[2].Triangles[17]"
	Problem string
}

// Error gives the fault on one line.
func (e *SceneError) Error() string { return "picture: " + e.Field + ": " + e.Problem }

const (
	smallestSide = 16
	largestSide  = 8192
)

// check finds everything in a scene that would not draw.
func (s *Scene) check() error {
	var faults []error
	fault := func(field, problem string, args ...any) {
		faults = append(faults, &SceneError{Field: field, Problem: fmt.Sprintf(problem, args...)})
	}
	for _, side := range []struct {
		field string
		size  int
	}{{"Width", s.Width}, {"Height", s.Height}} {
		if side.size < smallestSide || side.size > largestSide {
			fault(side.field, "%d px; must be %d to %d", side.size, smallestSide, largestSide)
		}
	}
	v := s.View
	if !finite(v.Azimuth) {
		fault("View.Azimuth", "is not a finite angle")
	}
	if !(math.Abs(v.Elevation) <= math.Pi/2) {
		fault("View.Elevation", "%g rad; must be -pi/2 to pi/2", v.Elevation)
	}
	if !(v.Margin >= 0 && v.Margin < 0.5) {
		fault("View.Margin", "%g; must be 0 to below 0.5", v.Margin)
	}
	for i, p := range v.Fit {
		if !finite(p[:]...) {
			fault(fmt.Sprintf("View.Fit[%d]", i), "is not a finite point")
		}
	}
	if cut := s.Section; cut != nil {
		if !finite(cut.Point[:]...) {
			fault("Section.Point", "is not a finite point")
		}
		if n := mesh.Length(cut.Normal); !(n > 0) || !finite(n) {
			fault("Section.Normal", "must have a finite length above 0")
		}
	}
	for i, a := range s.Arrows {
		if !finite(a.From[:]...) || !finite(a.To[:]...) {
			fault(fmt.Sprintf("Arrows[%d]", i), "does not run between finite points")
		}
		if a.Weight >= weights {
			fault(fmt.Sprintf("Arrows[%d].Weight", i), "is not a weight")
		}
	}
	for i, l := range s.Lines {
		if !finite(l.From[:]...) || !finite(l.To[:]...) {
			fault(fmt.Sprintf("Lines[%d]", i), "does not run between finite points")
		}
		if l.Weight >= weights || l.Dash >= dashes {
			fault(fmt.Sprintf("Lines[%d]", i), "has a weight or pattern that there is not")
		}
	}
	for i := range s.Bodies {
		if f := s.Bodies[i].check(fmt.Sprintf("Bodies[%d]", i)); f != nil {
			faults = append(faults, f)
		}
	}
	return errors.Join(faults...)
}

// check stops at the first fault of a body: one wrong index usually means
// thousands.
func (b *Body) check(field string) error {
	if b.Tone >= tones {
		return &SceneError{Field: field + ".Tone", Problem: "is not a tone"}
	}
	if b.Outline >= weights {
		return &SceneError{Field: field + ".Outline", Problem: "is not a weight"}
	}
	if !finite(b.Offset[:]...) {
		return &SceneError{Field: field + ".Offset", Problem: "is not a finite vector"}
	}
	for i := range b.Vertices {
		if !finite(b.Vertices[i][:]...) {
			return &SceneError{Field: fmt.Sprintf("%s.Vertices[%d]", field, i), Problem: "is not a finite point"}
		}
	}
	for i, t := range b.Triangles {
		for _, corner := range t {
			if corner < 0 || int(corner) >= len(b.Vertices) {
				return &SceneError{Field: fmt.Sprintf("%s.Triangles[%d]", field, i),
					Problem: fmt.Sprintf("points to vertex %d, but there are %d", corner, len(b.Vertices))}
			}
		}
	}
	return nil
}

// farthest is beyond any workshop [mm]; within it no product here overflows.
const farthest = 1e9

func finite(values ...float64) bool {
	for _, v := range values {
		if !(math.Abs(v) <= farthest) {
			return false
		}
	}
	return true
}
