package calibrate

import (
	"slices"

	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/unit"
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
	Text      unit.Text
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
	m := f.model
	var out []Seat
	for i, e := range f.Offsets {
		s := &m.latches[i]
		t, ok, err := seatOf(m.assembly(s, inJob, m.friction, 1, s.size.Value), s.size.Value, s.member, e, overtravel)
		if err != nil {
			return nil, err
		}
		if ok {
			out = append(out, t)
		}
	}
	return out, nil
}

// Seats tells the same from the sheet, for the latches of an assembly as drawn that it
// knows. Low and High are those of 95 of 100 pairs, not of their mean as those of
// [Fit.Seats].
func (s Sheet) Seats(a force.Assembly, overtravel float64) ([]Seat, error) {
	faults := append(fault.Under("calibration", s.Validate()), a.Validate()...)
	if len(faults) > 0 {
		return nil, joined(faults)
	}
	lower, _ := a.Shop.Resolve(a.Lower)
	upper, _ := a.Shop.Resolve(a.Upper)
	var out []Seat
	for _, l := range a.Latches {
		k := slices.IndexFunc(s.Latches, func(o Offset) bool { return o.Latch == l.ID && o.Kind == l.Kind() })
		if k < 0 {
			continue
		}
		one := a
		one.Latches = []force.Latch{l}
		o := s.Latches[k]
		tol := max(o.Tolerance, o.Alone)
		t, ok, err := seatOf(one, l.Size(lower, upper).Value, force.Outer,
			Estimate{Name: l.ID, Value: o.Offset, Low: o.Offset - tol, High: o.Offset + tol}, overtravel)
		if err != nil {
			return nil, err
		}
		if ok {
			out = append(out, t)
		}
	}
	return out, nil
}

// seatOf compares one latch, alone in its assembly, with the dead stop; ok is false for
// one that holds by friction alone. size: as drawn [mm]; e: how much more it comes out.
func seatOf(a force.Assembly, size float64, member force.Member, e Estimate, overtravel float64) (t Seat, ok bool, err error) {
	if !(overtravel >= 0 && overtravel <= 10) {
		return t, false, fault.Fault{Field: "overtravel", Given: mm(overtravel), Problem: "is out of range", Want: "0 to 10 mm"}
	}
	l := a.Latches[0]
	k := l.Joint()
	if !k.Snaps() {
		return t, false, nil
	}
	r, err := force.Analyse(a)
	if err != nil {
		return t, false, err
	}
	drawn := 0.0 // of the latch's own stroke, home is at the seat
	if l.Engage != nil {
		drawn = *l.Engage - r.Latches[0].Stroke
	}
	drawn += k.Play()
	home := func(offset float64) float64 { return drawn - k.Deeper(size, offset, member) }
	t = Seat{Latch: e.Name, Drawn: drawn, Printed: home(e.Value), Low: home(e.High), High: home(e.Low), Stop: -overtravel}
	t.Slack = t.Low - t.Stop
	t.Held, t.Gap = t.Slack >= 0, max(0, t.Printed)
	switch {
	case t.Held:
		t.Text = unit.Textf("home %v before the dead stop or more", unit.Length.Of(t.Slack).To(unit.Fine))
	case t.Printed >= t.Stop:
		t.Text = unit.Textf("home as a rule, but up to %v short at the dead stop: face the stop, or open the groove",
			unit.Length.Of(-t.Slack).To(unit.Fine))
	default:
		t.Text = unit.Textf("not home at the dead stop: %v short; face the stop, open the groove or draw less interference",
			unit.Length.Of(t.Stop-t.Printed).To(unit.Fine))
	}
	return t, true, nil
}
