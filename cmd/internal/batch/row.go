package batch

// A Row is what the table says of one job. It holds no time and nothing of whether the
// job was done now or in an earlier run, so that the table of a run that was stopped
// and taken up again is the same, byte for byte.
type Row struct {
	File        string   `json:"file"`
	Folder      string   `json:"folder,omitzero"` // of what was written
	Job         string   `json:"job,omitzero"`
	Revision    string   `json:"revision,omitzero"`
	Title       string   `json:"title,omitzero"`
	Outcome     string   `json:"outcome"`
	Steps       int      `json:"steps,omitzero"`
	Method      string   `json:"method,omitzero"`         // of each step, those that repeat once
	Peak        float64  `json:"peak_n,omitzero"`         // the largest of the steps, nominal [N]
	P95         float64  `json:"p95_n,omitzero"`          // [N]
	Design      float64  `json:"design_force_n,omitzero"` // [N]
	Pieces      int      `json:"pieces,omitzero"`
	Total       *float64 `json:"total,omitzero"` // of the quote; nil: not priced
	Currency    string   `json:"currency,omitzero"`
	Invented    bool     `json:"invented_rates,omitzero"`
	Calibration string   `json:"calibration,omitzero"`
	Warnings    int      `json:"warnings,omitzero"`
	Fingerprint string   `json:"fingerprint,omitzero"` // engraved on the tooling
	Faults      []string `json:"faults,omitzero"`
	Stale       bool     `json:"stale_files,omitzero"` // files of an earlier version of the job lie in the folder
}

// Outcomes of a job.
const (
	Tooling   = "tooling"
	NoTooling = "no tooling" // worked out; no manual method is good enough
	Failed    = "failed"     // the job or a file of it is wrong
	Broken    = "broken"     // a fault of the program
)
