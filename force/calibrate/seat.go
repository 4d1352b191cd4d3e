package calibrate

import (
	"fmt"
	"math"

	"ramnest/force"
)

// A Seat compares where a latch is home with where the dead stop of the tooling ends
// the stroke, after what the fit says of its size. Lifts are in the frame of the job,
// 0 where the parts are drawn seated; below 0 the upper part must go further.
type Seat struct {
	Latch     string
	Drawn     float64 // lift at which the latch is home as drawn [mm]
	Printed   float64 // as printed, median [mm]
	Low, High float64 // 95 % [mm]
	Stop      float64 // lift at the dead stop [mm], minus the overtravel
	Slack     float64 // lift at which it is home in the worst of the 95 %, less that of the stop [mm]; below 0 the stop comes first
	Held      bool    // the stop lets the latch home, in the worst of the 95 %
	Gap       float64 // by which the upper part may rise again from its seat, median [mm]
	Text      string
}

// Seats tells for every latch of the fit whether the dead stop, so much beyond the
// seat [mm], lets it home, and how far the parts stay apart where it is home early.
// A latch that holds by friction alone is home wherever it stops, and is left out.
//
// The crest of a bead or a hook stays where it is drawn; with more interference its
// holding flank ends deeper by half the difference (of a hook by all of it) over the
// tangent of the return angle, and a ball comes free deeper by the difference of its
// stroke. Source: own, geometry.
func (f *Fit) Seats(overtravel float64) ([]Seat, error) {
	if !(overtravel >= 0 && overtravel <= 10) {
		return nil, force.Fault{Field: "overtravel", Given: mm(overtravel), Problem: "is out of range", Want: "0 to 10 mm"}
	}
	m := f.model
	var out []Seat
	for i, e := range f.Offsets {
		s := &m.latches[i]
		if s.latch.PressFit != nil || s.latch.CrushRib != nil {
			continue
		}
		r, err := force.Analyse(m.assembly(s, inJob, m.friction, 1, s.size.Value))
		if err != nil {
			return nil, err
		}
		drawn := 0.0 // of the latch's own stroke, home is at the seat
		if s.latch.Engage != nil {
			drawn = *s.latch.Engage - r.Latches[0].Stroke
		}
		if s.latch.Annular != nil {
			drawn += s.latch.Annular.GrooveFloat
		}
		home := func(offset float64) float64 { return drawn - s.deeper(offset) }
		t := Seat{Latch: e.Name, Drawn: drawn, Printed: home(e.Value), Low: home(e.High), High: home(e.Low), Stop: -overtravel}
		t.Slack = t.Low - t.Stop
		t.Held, t.Gap = t.Slack >= 0, max(0, t.Printed)
		switch {
		case t.Held:
			t.Text = fmt.Sprintf("home %.2f mm before the dead stop or more", t.Slack)
		case t.Printed >= t.Stop:
			t.Text = fmt.Sprintf("home as a rule, but up to %.2f mm short at the dead stop: face the stop, or open the groove", -t.Slack)
		default:
			t.Text = fmt.Sprintf("not home at the dead stop: %.2f mm short; face the stop, open the groove or draw less interference", t.Stop-t.Printed)
		}
		out = append(out, t)
	}
	return out, nil
}

// deeper is how much further than drawn the latch must go with an offset [mm].
func (s *subject) deeper(offset float64) float64 {
	slope := func(angle float64) float64 {
		if angle > math.Pi/2-1e-6 {
			return 0
		}
		return 1 / math.Tan(angle)
	}
	switch {
	case s.latch.Annular != nil:
		return offset / 2 * slope(s.latch.Annular.ReturnAngle)
	case s.latch.Cantilever != nil:
		return offset * slope(s.latch.Cantilever.ReturnAngle)
	}
	free := func(l force.Latch) float64 {
		if l.Ball.MouthDiameter >= l.Ball.BallDiameter {
			return 0
		}
		return force.BallStroke(l.Ball.MouthDiameter, l.Ball.BallDiameter)
	}
	return free(Resize(s.latch, s.size.Value+offset, s.member)) - free(s.latch)
}
