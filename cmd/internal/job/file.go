package job

import (
	"ramnest/cmd/internal/jobfile"
	"ramnest/export/quote"
	"ramnest/fixture"
	"ramnest/force"
	"ramnest/force/calibrate"
	"ramnest/force/method"
)

// A File is one job: an assembly of two parts, or of several in press steps.
type File struct {
	Number   string `yaml:"job" required:"true"` // engraved on the tooling and part of every file name
	Title    string `yaml:"title" required:"true"`
	Revision string `yaml:"revision"`
	Date     string `yaml:"date" format:"date" required:"true"` // of the revision; the tool reads no clock
	Author   string `yaml:"author"`

	jobfile.Units `yaml:",inline"`
	Paper         string `yaml:"paper" oneof:"A4 Letter"`                          // of the work instruction; left out: A4
	Language      string `yaml:"language" oneof:"en de es fr pl" json:",omitzero"` // of the work instruction; left out: en

	Quantity      int     `yaml:"quantity"`                    // assemblies; 0: not stated
	RatePerHour   float64 `yaml:"rate_per_hour" unit:"none"`   // assemblies an hour; 0: a default, listed
	HoursPerShift float64 `yaml:"hours_per_shift" unit:"none"` // of this and similar work a day [h]; 0: a default, listed
	ActionSeconds float64 `yaml:"action_seconds" unit:"s"`     // time force is given in one assembly [s]; 0: a default, listed
	ShockLimit    float64 `yaml:"shock_limit" unit:"N"`        // largest force a blow may put through the parts [N]; 0: not stated

	// A single press step is written flat; several are listed, and then upper and
	// latches stand in the steps.
	Lower      *Part         `yaml:"lower"` // of the flat step, and of every step that has none of its own
	Upper      *Part         `yaml:"upper"`
	Latches    []force.Latch `yaml:"latches"`
	PressSteps []PressStep   `yaml:"steps"`

	Method    *Wanted         `yaml:"method"`
	Bench     method.Bench    `yaml:"bench"`
	Fixture   fixture.Wishes  `yaml:"fixture"`
	Rates     *quote.RateCard `yaml:"rates"`                    // left out: invented round numbers, and the quote says so
	Service   *force.Service  `yaml:"service" json:",omitzero"` // what the joints go through; left out: no hold at the end of life
	Materials force.Shop      `yaml:"materials"`                // the shop's own table

	Seed  uint64 `yaml:"seed"`  // of the tolerance draws
	Draws int    `yaml:"draws"` // 0: 10000

	// Calibration is what the shop measured, a file of its own; nil: none.
	Calibration *calibrate.Sheet `yaml:"-" json:",omitzero"`

	// MostPlaces of the latches of a step are taken; 0: as many as by default. See Bound.
	MostPlaces int `yaml:"-" json:"-"`
}

// A PressStep is one entry of the list of steps.
type PressStep struct {
	Name    string        `yaml:"name" required:"true"`
	Lower   *Part         `yaml:"lower"` // left out: the job's
	Upper   *Part         `yaml:"upper" required:"true"`
	Latches []force.Latch `yaml:"latches" required:"true"`
}

// A Wanted is a method that the job insists on.
type Wanted struct {
	Force    string `yaml:"force" oneof:"hand mallet press" required:"true"`
	Override string `yaml:"override"` // reason to take it although it fails; printed with every result
}

// Mark is what is engraved on the tooling.
func (f *File) Mark() string {
	if f.Revision == "" {
		return f.Number
	}
	return f.Number + " " + f.Revision
}

// Sheet is the paper of the work instruction.
func (f *File) Sheet() string {
	if f.Paper == "" {
		return "A4"
	}
	return f.Paper
}

// Card gives the rates of the quote.
func (f *File) Card() quote.RateCard {
	if f.Rates == nil {
		return quote.InventedRateCard()
	}
	return *f.Rates
}

// Forced gives the method that the job insists on, nil if it does not.
func (f *File) Forced() *method.Forced {
	if f.Method == nil {
		return nil
	}
	return &method.Forced{Method: method.Method(f.Method.Force), Override: f.Method.Override}
}
