package report

import (
	"ramnest/fixture"
	workinstructions "ramnest/work-instructions"
)

// An Acceptance is what the sheet says of a good assembly, and why the limit of the seat
// lies where it does.
type Acceptance struct {
	Criteria []Criterion `json:"criteria"`

	Proof   string  `json:"seat_seen_by"` // gap at the seam, height over all, ...
	Nominal float64 `json:"seat_nominal_mm"`
	Latch   string  `json:"latch_home_last"`
	Home    float64 `json:"home_below_lift_mm"` // whatever its size and friction
	Process float64 `json:"less_process_mm"`
	Gauge   float64 `json:"less_gauge_mm"`
	Travel  float64 `json:"lift_accepted_mm"`
}

// A Criterion is a line of the sheet's acceptance.
type Criterion struct {
	ID    string  `json:"id"`
	What  string  `json:"what"`
	Where string  `json:"where,omitzero"`
	Limit string  `json:"limit"`
	With  string  `json:"with"`
	Often string  `json:"how_often"`
	Low   float64 `json:"low,omitzero"`
	High  float64 `json:"high,omitzero"`
	Unit  string  `json:"unit,omitzero"`
}

// acceptanceOf joins the lines that the sheet prints with the reasons.
func acceptanceOf(p fixture.Seated, lines []workinstructions.Criterion) *Acceptance {
	out := &Acceptance{Proof: string(p.Proof), Nominal: p.Nominal, Latch: p.Latch, Home: p.Home, Process: p.Process, Gauge: p.Gauge,
		Travel: p.Travel}
	for _, k := range lines {
		out.Criteria = append(out.Criteria, Criterion(k))
	}
	return out
}
