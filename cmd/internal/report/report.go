package report

import (
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/solve"
	workinstructions "ramnest/work-instructions"
)

// Version is that of the report's form. It rises when a key changes its meaning or
// goes; new keys may come without.
const Version = 2

// A Report is the JSON of a job. Keys name their unit where there is one.
type Report struct {
	Schema      string            `json:"schema"` // "ramnest report"
	Version     int               `json:"schema_version"`
	Tool        string            `json:"tool"`
	Units       map[string]string `json:"units"`
	Job         Job               `json:"job"`
	Outcome     string            `json:"outcome"` // "tooling", or "no tooling" where no method was found
	Calibration *Calibration      `json:"calibration,omitzero"`
	Inputs      []Input           `json:"inputs"`
	Defaults    []Default         `json:"defaults"`
	Steps       []Step            `json:"steps"`
	Tooling     *Tooling          `json:"tooling,omitzero"`
	Quote       *Quote            `json:"quote,omitzero"`
	Unpriced    string            `json:"unpriced,omitzero"` // why there is no quote
	Warnings    []Warning         `json:"warnings"`
	Files       []string          `json:"files"`
}

// A Job says who and what.
type Job struct {
	Number        string  `json:"number"`
	Title         string  `json:"title"`
	Revision      string  `json:"revision,omitzero"`
	Date          string  `json:"date"`
	Author        string  `json:"author,omitzero"`
	Mark          string  `json:"mark"`        // number and revision
	Fingerprint   string  `json:"fingerprint"` // engraved behind them; on the sheet too
	Quantity      int     `json:"quantity,omitzero"`
	RatePerHour   float64 `json:"rate_per_hour,omitzero"`
	HoursPerShift float64 `json:"hours_per_shift,omitzero"`
	Paper         string  `json:"paper"`
}

// An Input is one value that the file states, as it was understood.
type Input struct {
	Key     string `json:"key"`
	Value   any    `json:"value"`
	Unit    string `json:"unit,omitzero"`
	Written string `json:"written"` // in the file
	Set     bool   `json:"set_on_command_line,omitzero"`
}

// A Default is a figure that the file does not state.
type Default struct {
	About string `json:"about"`
	Text  string `json:"text"`
}

// Facts are what is known of a run beside the Solution.
type Facts struct {
	Tool   string // name and version
	Inputs []jobfile.Input
	Files  []string // written, or to be written

	Criteria [][]workinstructions.Criterion // of the sheet, step by step; none without tooling
}

// Of gives the report of a solution.
func Of(s *solve.Solution, facts Facts) Report {
	j := s.Job
	r := Report{
		Schema: "ramnest report", Version: Version, Tool: facts.Tool, Outcome: "tooling",
		Units: map[string]string{"length": "mm", "force": "N", "work": "mJ", "stress": "MPa", "mass": "kg", "angle": "rad", "strain": "1"},
		Job: Job{
			Number: j.Number, Title: j.Title, Revision: j.Revision, Date: j.Date, Author: j.Author, Mark: j.Mark(), Fingerprint: s.Fingerprint,
			Quantity: j.Quantity, RatePerHour: j.RatePerHour, HoursPerShift: j.HoursPerShift, Paper: j.Sheet(),
		},
		Inputs: []Input{}, Defaults: []Default{}, Warnings: append([]Warning{}, warnings(s)...), Files: append([]string{}, facts.Files...),
	}
	for _, in := range facts.Inputs {
		r.Inputs = append(r.Inputs, Input{in.Path, in.Value, in.Unit, in.Written, in.Set})
	}
	r.Calibration = CalibrationOf(s)
	u := unitsOf(j)
	for _, d := range s.Defaults {
		r.Defaults = append(r.Defaults, Default{d.About, d.Text.In(u.System)})
	}
	for i := range s.Steps {
		r.Steps = append(r.Steps, stepOf(u, &s.Steps[i]))
		if i < len(facts.Criteria) {
			r.Steps[i].Acceptance = acceptanceOf(s.Steps[i].Seated, facts.Criteria[i])
		}
	}
	if s.Tooled() {
		r.Tooling, r.Quote, r.Unpriced = toolingOf(s), quoteOf(s), s.Unpriced
	} else {
		r.Outcome = "no tooling"
	}
	return r
}
