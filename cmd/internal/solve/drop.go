package solve

import (
	"fmt"
	"math"

	"ramnest/fixture/envelope"
	"ramnest/fixture/plan"
	"ramnest/force"
)

// drop lets the upper part of the last of some steps fall until it rests on the lower
// one, or on what earlier steps put there. Latches let it through.
func drop(steps []Step) *force.Fault {
	s := &steps[len(steps)-1]
	below := []*envelope.Envelope{s.LowerEnvelope}
	for _, earlier := range steps[:len(steps)-1] {
		if earlier.LowerEnvelope == s.LowerEnvelope {
			below = append(below, earlier.UpperEnvelope)
		}
	}
	field := s.UpperPath + ".envelope.mesh.drop"
	giving, err := yielding(s.Latches)
	if err != nil {
		return &force.Fault{Field: field, Problem: err.Error()}
	}
	fall, at, ok := envelope.Rest(s.UpperEnvelope, below, giving)
	if !ok {
		return &force.Fault{Field: field, Given: "yes", Problem: "nothing but its latches would stop the part: where it comes to rest is not known", Want: "the seated height in mesh.move"}
	}
	fall = math.Floor(fall*1000) / 1000 // never into what it rests on
	s.UpperEnvelope.Fall(fall)
	way := fmt.Sprintf("%.3f mm lower than", fall)
	if fall < 0 {
		way = fmt.Sprintf("%.3f mm higher than", -fall)
	}
	s.Remarks = append(s.Remarks, force.Warning{Number: warnDropped, Text: fmt.Sprintf("%s was dropped until it rests at x %.2f, y %.2f mm: it stands %s mesh.move has it, from z %.3f to %.3f mm; look whether that is its seat", s.Upper.Name, at.X, at.Y, way, s.UpperEnvelope.Min[2], s.UpperEnvelope.Max[2])})
	return nil
}

// yielding is where latches give way while they come together: bands along rings,
// the whole of pins, ribs, balls and arms.
func yielding(latches []force.Latch) (plan.Region, error) {
	const beside = 0.5 // [mm]
	var out []plan.Region
	for _, l := range latches {
		for _, p := range l.At {
			disc := func(r float64) plan.Region { return plan.Region{plan.Circle(p.X, p.Y, r, 0.05, plan.Outside)} }
			switch {
			case l.Annular != nil:
				y := l.Annular.Undercut
				if y == 0 {
					y = l.Annular.BeadDiameter - l.Annular.LipDiameter
				}
				r := l.Annular.JointDiameter / 2
				band, err := plan.Difference(disc(r+y/2+beside), disc(max(0.01, r-y/2-beside)))
				if err != nil {
					return nil, err
				}
				out = append(out, band)
			case l.Ball != nil:
				out = append(out, disc(l.Ball.OuterDiameter/2+beside))
			case l.PressFit != nil:
				out = append(out, disc(l.PressFit.OuterDiameter/2+beside))
			case l.CrushRib != nil:
				out = append(out, disc(l.CrushRib.JointDiameter/2+l.CrushRib.Height+beside))
			case l.Cantilever != nil:
				out = append(out, disc(0.75*max(l.Cantilever.Width, l.Cantilever.Thickness)+l.Cantilever.Undercut+beside))
			}
		}
	}
	if len(out) == 0 {
		return nil, nil
	}
	return plan.Union(out...)
}
