package report

import (
	"ramnest/cmd/internal/solve"
	"ramnest/force/method"
)

// A Method is how a step is pushed, with all that was weighed.
type Method struct {
	Chosen      string       `json:"chosen"` // hand, mallet, press or none
	Reason      string       `json:"reason"`
	Overridden  bool         `json:"overridden,omitzero"`
	RunnerUp    string       `json:"runner_up"`
	Tipping     string       `json:"tipping,omitzero"`
	Next        string       `json:"next,omitzero"`         // what comes after the chosen one
	RateMatters string       `json:"rate_matters,omitzero"` // how the line rate changes the answer
	Sensitivity []AtForce    `json:"sensitivity"`
	Advice      []string     `json:"advice,omitzero"`
	Changes     []Change     `json:"single_changes,omitzero"`
	Options     []Assessment `json:"options"`
}

// A Change is one change to the joint, worked out.
type Change struct {
	Change  string  `json:"change"`
	What    string  `json:"what"`
	Design  float64 `json:"design_n,omitzero"`
	Holds   float64 `json:"holds_n,omitzero"`
	Method  string  `json:"method"`
	Verdict string  `json:"verdict"`
	Undone  string  `json:"not_worked_out,omitzero"`
	Text    string  `json:"text"`
}

// An AtForce is the free choice at another design force.
type AtForce struct {
	Name   string  `json:"name"`
	Force  float64 `json:"force_n"`
	Method string  `json:"method"`
}

// An Assessment is one method against its limits.
type Assessment struct {
	Method      string  `json:"method"`
	Verdict     string  `json:"verdict"` // pass, conditional or fail
	Action      string  `json:"action"`
	Governing   string  `json:"governing"`
	Utilisation float64 `json:"utilisation"`
	Reason      string  `json:"reason"`
	Press       string  `json:"press,omitzero"`
	Mallet      string  `json:"mallet,omitzero"`
	Vise        string  `json:"vise,omitzero"`
	Blows       int     `json:"blows,omitzero"`
	Limits      []Limit `json:"limits"`
}

// A Limit compares what is asked with what there is.
type Limit struct {
	Name        string  `json:"name"`
	Demand      float64 `json:"demand"`
	Capacity    float64 `json:"capacity"`
	Unit        string  `json:"unit,omitzero"`
	Utilisation float64 `json:"utilisation"`
	OK          bool    `json:"ok"`
	Soft        bool    `json:"soft,omitzero"`
	Open        bool    `json:"open,omitzero"` // not known: neither passed nor failed
	Source      string  `json:"source"`
}

func methodOf(u units, st *solve.Step) Method {
	d := st.Decision
	m := Method{Chosen: string(d.Chosen), Reason: d.Reason.In(u.System), Overridden: d.Overridden, RunnerUp: string(d.RunnerUp),
		Tipping: d.Tipping.In(u.System), Next: d.Next.In(u.System), RateMatters: d.RateMatters, Sensitivity: []AtForce{}, Advice: u.texts(d.Advice)}
	for _, s := range d.Sensitivity {
		m.Sensitivity = append(m.Sensitivity, AtForce{s.Name, s.Force, string(s.Method)})
	}
	for _, o := range d.Alternatives {
		m.Changes = append(m.Changes, Change{string(o.Change), o.What.In(u.System), o.Demand.DesignForce, o.Holds, string(o.Method),
			string(o.Verdict), o.Undone, o.Text.In(u.System)})
	}
	for _, a := range d.Options {
		m.Options = append(m.Options, assessmentOf(u, a))
	}
	return m
}

func assessmentOf(u units, a method.Assessment) Assessment {
	out := Assessment{
		Method: string(a.Method), Verdict: string(a.Verdict), Action: a.Action.In(u.System), Governing: a.Governing,
		Utilisation: a.Utilisation, Reason: a.Reason.In(u.System), Blows: a.Blows, Limits: []Limit{},
	}
	if a.Press != nil {
		out.Press = a.Press.Name
	}
	if a.Mallet != nil {
		out.Mallet = a.Mallet.Name
	}
	if a.Vise != nil {
		out.Vise = a.Vise.Name
	}
	for _, l := range a.Limits {
		out.Limits = append(out.Limits, Limit{l.Name, l.Demand, l.Capacity, string(l.Unit), l.Utilisation, l.OK, l.Soft, l.Open, l.Source})
	}
	return out
}
