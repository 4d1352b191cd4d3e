package report

import (
	"slices"

	"ramnest/cmd/internal/solve"
	"ramnest/force/method"
	"ramnest/force/unit"
	"ramnest/force/warning"
)

// A Warning is a caution, with what it is about.
type Warning struct {
	Step   string `json:"step,omitzero"`
	Latch  string `json:"latch,omitzero"`
	Number int    `json:"number"` // the same for the same matter, see ramnest explain W12
	Text   string `json:"text"`

	Figures []unit.Figure `json:"-"` // of the text, in order
}

// The numbers of warnings about a job as a whole, see package force.
const (
	warnOverride    = 31
	warnConditional = 32
	warnCalibrated  = 33
	warnSeat        = 34
)

// said is the warning behind its number.
func (w Warning) said() string { return warning.Numbered(w.Number, w.Text) }

// Warnings gives every caution of a solution, the gravest first, each once.
func Warnings(s *solve.Solution) []Warning { return warnings(s) }

// warnings gathers every caution, the gravest first, each once.
func warnings(s *solve.Solution) []Warning {
	var out []Warning
	add := func(w Warning) {
		same := func(o Warning) bool {
			return o.Step == w.Step && o.Latch == w.Latch && o.Number == w.Number && o.Text == w.Text
		}
		if !slices.ContainsFunc(out, same) {
			out = append(out, w)
		}
	}
	u, several := s.Job.Shown(), len(s.Steps) > 1
	for i := range s.Steps {
		st := &s.Steps[i]
		if st.Decision.Overridden {
			add(Warning{Step: st.Name, Number: warnOverride,
				Text: "OVERRIDE: the method fails and is taken at the word of the job: " + s.Job.Method.Override})
		} else if st.Chosen().Verdict == method.Conditional {
			add(Warning{Step: st.Name, Number: warnConditional,
				Text: "the method is conditional: a competent person must agree before anybody presses"})
		}
	}
	if s.Job.Calibration != nil {
		add(Warning{Number: warnCalibrated, Text: "figures of the job are replaced by the calibration " + CalibrationOf(s).Words() +
			"; the report lists each"})
		for i := range s.Steps {
			for _, t := range s.Steps[i].Seats {
				if !t.Held {
					add(Warning{Step: s.Steps[i].Name, Latch: t.Latch, Number: warnSeat,
						Text: t.Latch + ", as the shop prints it, may not be home at the dead stop: " + t.Text.In(u)})
				}
			}
		}
	}
	for i := range s.Steps {
		st := &s.Steps[i]
		for _, w := range st.Result.Warnings {
			text := w.Text.In(u)
			if several {
				text = st.Name + ": " + text
			}
			add(Warning{Step: st.Name, Number: w.Number, Text: text, Figures: w.Text.Figures()})
		}
		for _, l := range st.Result.Latches {
			for _, w := range l.Warnings {
				add(Warning{Step: st.Name, Latch: l.ID, Number: w.Number, Text: w.Text.In(u), Figures: w.Text.Figures()})
			}
		}
	}
	for i := range s.Steps {
		for _, r := range s.Steps[i].Remarks {
			add(Warning{Step: s.Steps[i].Name, Number: r.Number, Text: r.Text.In(u), Figures: r.Text.Figures()})
		}
	}
	if s.Tooled() {
		for _, n := range s.Tooling.Notes {
			add(Warning{Number: n.Number, Text: n.Text.In(u), Figures: n.Text.Figures()})
		}
	}
	for i := range s.Steps {
		st := &s.Steps[i]
		if st.LowerEnvelope == nil { // forces only
			continue
		}
		for _, n := range st.LowerEnvelope.Notes {
			add(Warning{Number: n.Number, Text: st.Lower.Name + ": " + n.Text.In(u), Figures: n.Text.Figures()})
		}
		for _, n := range st.UpperEnvelope.Notes {
			add(Warning{Number: n.Number, Text: st.Upper.Name + ": " + n.Text.In(u), Figures: n.Text.Figures()})
		}
	}
	return out
}
