package solve

import (
	"fmt"
	"math"
	"strings"

	"ramnest/fixture/envelope"
	"ramnest/fixture/pose"
	"ramnest/force/fault"
	"ramnest/force/warning"
)

// warnFound is the number of the warning that the pose was looked for, see package force.
const warnFound = 50

// seat looks for the pose of an upper part over the lower one and what earlier steps pressed
// on it, and takes the best if it leads.
func (s *Step) seat(m Means, earlier []Step) (warning.Warning, error) {
	done := m.Stage("looking for the seat")
	defer done()
	pair := s.Pair()
	pair.Earlier = pressedOn(earlier, s.LowerEnvelope)
	all, err := pose.Find(m.Context, pair.Base(), &s.UpperEnvelope.Mesh)
	if err != nil {
		return warning.Warning{}, err
	}
	if !pose.Leads(all) {
		f := fault.Fault{Field: s.UpperPath + ".envelope.mesh.seat", Given: "find", Problem: "no closed pose was found",
			Want: "up, turn and move of the seated pose; a mesh that is closed"}
		if len(all) > 0 {
			var list []string
			for _, g := range all {
				list = append(list, Posed(g))
			}
			f.Problem = fmt.Sprintf("%d poses close about as well, and none leads", len(all))
			f.Want = "one of " + strings.Join(list, "; ") + "; ramnest inspect --with draws them"
		}
		return warning.Warning{}, &Refused{[]fault.Fault{f}}
	}
	spec := s.Upper.Envelope
	posed := *spec.Mesh
	posed.Seat, posed.Up, posed.Turn, posed.Move = "", all[0].Up, all[0].Turn, all[0].Move
	spec.Mesh = &posed
	if s.UpperEnvelope, err = envelope.BuildWithin(spec, m.Open, m.Limits); err != nil {
		return warning.Warning{}, err
	}
	return warning.New(warnFound, "the seat of %s was looked for: %s leads, and was taken; look whether that is its seat", s.Upper.Name,
		Posed(all[0])), nil
}

// Posed writes a pose as a job does.
func Posed(g pose.Seating) string {
	turn := ""
	if g.Turn != 0 {
		turn = fmt.Sprintf(", turn: %.0f deg", g.Turn*180/math.Pi)
	}
	return fmt.Sprintf("{up: %s%s, move: [%.7g, %.7g, %.7g]}", g.Up, turn, g.Move[0], g.Move[1], g.Move[2])
}
