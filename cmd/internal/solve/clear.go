package solve

import (
	"fmt"
	"slices"

	"ramnest/fixture"
	"ramnest/fixture/envelope"
	"ramnest/fixture/plan"
	"ramnest/force"
)

// clear refuses tooling of a later step that would strike what an earlier one
// pressed on: the anvil is designed for the parts of its own step.
func (s *Solution) clear() error {
	for i := range s.Steps {
		for k := range s.Steps[:i] {
			if !sameNest(s.Steps[k].LowerEnvelope, s.Steps[i].LowerEnvelope) || s.Steps[k].Upper == s.Steps[i].Upper {
				continue
			}
			hit, err := strikes(s.Tooling.Anvils[i].Piece, s.Steps[k].UpperEnvelope)
			if err != nil {
				return err
			}
			if hit {
				return &Refused{[]force.Fault{{
					Field: s.Steps[i].UpperPath, Given: s.Steps[i].Upper.Name,
					Problem: fmt.Sprintf("its anvil would strike %s, which step %d pressed on before", s.Steps[k].Upper.Name, k+1),
					Want:    "the other order of steps, or a keep-out over that part",
				}}}
			}
		}
	}
	return nil
}

// strikes says whether a seated part reaches into a piece of tooling above it: at
// some height there is tooling below and part above.
func strikes(p fixture.Piece, part *envelope.Envelope) (bool, error) {
	tool := &envelope.Envelope{Triangles: p.Mesh.Triangles}
	for _, v := range p.Mesh.Vertices {
		tool.Vertices = append(tool.Vertices, [3]float64{v[0] + p.Shift[0], v[1] + p.Shift[1], v[2] + p.Shift[2]})
	}
	tool.Min, tool.Max = p.Shift, p.Shift
	for k, v := range tool.Vertices {
		for c := range 3 {
			if k == 0 {
				tool.Min[c], tool.Max[c] = v[c], v[c]
			}
			tool.Min[c], tool.Max[c] = min(tool.Min[c], v[c]), max(tool.Max[c], v[c])
		}
	}
	// Between two heights at which neither has a corner the answer is one.
	const levels, smallest = 200, 0.01 // heights looked at; mm2 that are no touch
	low, high := tool.Min[2], part.Max[2]
	heights := append(part.Levels(low, high, levels), tool.Levels(low, high, levels)...)
	heights = append(heights, low, high)
	slices.Sort(heights)
	for k, z := range heights[1:] {
		if z-heights[k] < 0.002 {
			continue
		}
		z = (z + heights[k]) / 2
		below, err := tool.Below(z)
		if err != nil {
			return false, err
		}
		above, err := part.Above(z)
		if err != nil {
			return false, err
		}
		both, err := plan.Intersection(below, above)
		if err != nil {
			return false, err
		}
		if both.Area() > smallest {
			return true, nil
		}
	}
	return false, nil
}
