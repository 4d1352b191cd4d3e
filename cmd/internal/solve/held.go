package solve

import (
	"ramnest/fixture/envelope"
	"ramnest/fixture/witness"
	"ramnest/force/fault"
	"ramnest/force/warning"
)

// held holds the latches that a step states against its parts: places in thin air are
// faults; where both parts are closed meshes, what differs from the latches that these
// show is said. earlier: what was pressed on the lower part before.
func (s *Step) held(earlier []*envelope.Envelope) ([]fault.Fault, []warning.Warning) {
	lower, upper := s.LowerEnvelope, s.UpperEnvelope
	if len(earlier) > 0 {
		all := &envelope.Envelope{Source: lower.Source, Min: lower.Min, Max: lower.Max}
		for _, e := range append([]*envelope.Envelope{lower}, earlier...) {
			first := int32(len(all.Vertices))
			all.Vertices = append(all.Vertices, e.Vertices...)
			for _, t := range e.Triangles {
				all.Triangles = append(all.Triangles, [3]int32{t[0] + first, t[1] + first, t[2] + first})
			}
			if e.Source == outlines {
				all.Source = outlines
			}
		}
		box := all.Bounds()
		all.Min, all.Max = box.Min, box.Max
		lower = all
	}
	faults := witness.Air(s.Latches, s.LatchesPath, witness.Side{Name: s.Lower.Name, Envelope: lower},
		witness.Side{Name: s.Upper.Name, Envelope: upper})
	if len(faults) > 0 || lower.Source == outlines || upper.Source == outlines || !closed(lower) || !closed(upper) {
		return faults, nil
	}
	return nil, witness.Latches(lower, upper).Compare(s.Latches, s.LowerMaterial, s.UpperMaterial)
}

// outlines is the source of an envelope that was not read from a mesh.
const outlines = "outlines"

func closed(e *envelope.Envelope) bool { return e.Mesh.Closed() }
