package job

import (
	"fmt"
	"math"

	"ramnest/fixture/envelope"
	"ramnest/force"
)

// Placing [mm] (own): how far a joint may lie beyond the box of a part because
// outlines are drawn roughly, and how large an opening between seated parts may be.
const (
	rough = 0.5
	apart = 1.0
)

// Placed returns what is wrong with where things stand: parts that do not meet,
// latches and keep-outs beside their parts. The envelopes are those of the step's
// parts in the seated pose.
func (s Step) Placed(lower, upper *envelope.Envelope) []force.Fault {
	if out := s.meet(lower, upper); len(out) > 0 {
		return out // every latch would lie outside one of them
	}
	var out []force.Fault
	for i, l := range s.Latches {
		at := fmt.Sprintf("%s[%d]", s.LatchesPath, i)
		low, high := min(lower.Min[2], upper.Min[2]), max(lower.Max[2], upper.Max[2])
		if l.Z < low-rough || l.Z > high+rough {
			out = append(out, force.Fault{Field: at + ".z", Given: micron(l.Z) + " mm", Problem: "the latch lies outside the parts, above or below both", Want: micron(low) + " to " + micron(high) + " mm"})
		}
		for k, q := range l.At {
			if f, outside := inPlan(l, q, "lower", s.Lower, lower); outside {
				out = append(out, force.Under(fmt.Sprintf("%s.at[%d]", at, k), []force.Fault{f})...)
			} else if f, outside := inPlan(l, q, "upper", s.Upper, upper); outside {
				out = append(out, force.Under(fmt.Sprintf("%s.at[%d]", at, k), []force.Fault{f})...)
			}
		}
	}
	out = append(out, beside(s.LowerPath, s.Lower, lower)...)
	return append(out, beside(s.UpperPath, s.Upper, upper)...)
}

// meet says that parts do not touch in the pose that the file gives.
func (s Step) meet(lower, upper *envelope.Envelope) []force.Fault {
	for k, axis := range []string{"x", "y"} {
		if upper.Min[k] > lower.Max[k] || upper.Max[k] < lower.Min[k] {
			return []force.Fault{{Field: s.UpperPath + ".envelope", Given: axis + " " + along(upper, k), Problem: "the seated upper part lies beside the lower one", Want: "a place over it, " + axis + " " + along(lower, k)}}
		}
	}
	const seated = "both parts in the seated pose, the upper one above"
	switch {
	case upper.Min[2] > lower.Max[2]+apart:
		return []force.Fault{{Field: s.UpperPath + ".envelope", Given: "z " + along(upper, 2), Problem: "the upper part floats above the lower one, which ends at " + micron(lower.Max[2]) + " mm", Want: seated}}
	case upper.Max[2] <= lower.Min[2]:
		return []force.Fault{{Field: s.UpperPath + ".envelope", Given: "z " + along(upper, 2), Problem: "the upper part lies below the lower one, which begins at " + micron(lower.Min[2]) + " mm", Want: seated}}
	}
	return nil
}

// inPlan says whether a place of a latch lies outside a part, seen along the press
// axis: the whole ring of a round joint has to lie inside.
func inPlan(l force.Latch, q force.Point, side string, p *Part, e *envelope.Envelope) (f force.Fault, outside bool) {
	radius, slack := reach(l)
	over := 0.0
	for k, v := range []float64{q.X, q.Y} {
		over = max(over, e.Min[k]-(v-radius), v+radius-e.Max[k])
	}
	f = force.Fault{
		Given:   fmt.Sprintf("%s, %s mm", micron(q.X), micron(q.Y)),
		Problem: fmt.Sprintf("the latch lies outside the %s part, %s", side, p.Name),
		Want:    fmt.Sprintf("within x %s, y %s", along(e, 0), along(e, 1)),
	}
	if radius > 0 {
		f.Problem = fmt.Sprintf("a joint of %s mm diameter there lies outside the %s part, %s", micron(2*radius), side, p.Name)
	}
	return f, over > slack
}

// along gives the extent of a part along an axis.
func along(e *envelope.Envelope, axis int) string {
	return micron(e.Min[axis]) + " to " + micron(e.Max[axis]) + " mm"
}

// micron writes a length to the micron.
func micron(v float64) string { return fmt.Sprintf("%.7g", math.Round(v*1000)/1000+0) }

// reach gives the radius of a round joint, 0 for an arm, and how far it may lie
// outside a part that is drawn roughly [mm].
func reach(l force.Latch) (radius, slack float64) {
	switch {
	case l.Annular != nil:
		return l.Annular.JointDiameter / 2, rough + math.Abs(l.Annular.Undercut)
	case l.Ball != nil:
		return l.Ball.MouthDiameter / 2, rough
	case l.PressFit != nil:
		return fitDiameter(*l.PressFit) / 2, rough
	case l.CrushRib != nil:
		return l.CrushRib.JointDiameter / 2, rough
	case l.Cantilever != nil:
		return 0, rough + l.Cantilever.Undercut + l.Cantilever.Thickness
	}
	return 0, rough
}

// fitDiameter is the joint diameter of a press fit by whichever way it is written
// [mm].
func fitDiameter(f force.PressFit) float64 {
	if iso, err := force.ParseISOFit(f.Fit); f.Fit != "" && err == nil {
		return iso.Nominal
	}
	for _, d := range []float64{f.JointDiameter, f.BoreDiameter, f.PinDiameter} {
		if d > 0 {
			return d
		}
	}
	return 0
}

// beside says which keep-outs miss their part, so that they would protect nothing.
func beside(path string, p *Part, e *envelope.Envelope) []force.Fault {
	var out []force.Fault
	for i, k := range p.KeepOuts {
		b, ok := k.Region().Box()
		if !ok {
			continue
		}
		x0, y0 := b.Min.MM()
		x1, y1 := b.Max.MM()
		if x1 < e.Min[0] || x0 > e.Max[0] || y1 < e.Min[1] || y0 > e.Max[1] {
			out = append(out, force.Fault{
				Field: fmt.Sprintf("%s.keep_outs[%d]", path, i), Given: fmt.Sprintf("x %s to %s, y %s to %s mm", micron(x0), micron(x1), micron(y0), micron(y1)),
				Problem: "lies beside the part", Want: fmt.Sprintf("within x %s, y %s", along(e, 0), along(e, 1)),
			})
		}
	}
	return out
}
