package workinstructions

import (
	"image"
	"slices"
	"time"

	"ramnest/force/unit"
	"ramnest/work-instructions/catalogue"
)

// Paper is the format of the sheet.
type Paper string

// The formats.
const (
	A4     Paper = "A4"
	Letter Paper = "Letter"
)

// A Sheet is everything that one work instruction says.
type Sheet struct {
	Paper       Paper              // "" is A4
	Language    catalogue.Language // "" is English
	Job         string             // job number, in the title block of every page
	Title       string             // what is assembled
	Revision    string             // of the job
	Author      string             // who prepared it; empty: a line to fill in
	Date        time.Time          // of the job; of the document too
	Fingerprint string             // of the job's inputs, as engraved on the tooling
	Tool        string             // what made it, "ramnest 0.1.0"
	Units       unit.System        // that figures are printed in

	Quantity    int     // assemblies; 0: not stated
	RatePerHour float64 // assemblies an hour; 0: not stated

	Parts   []Part
	Tooling []Tool
	Bench   []string // gauges and consumables; press, vise and mallet follow from the steps

	Steps []Step // one press step each, in their order

	Override string // reason why a failing method is used all the same; on every page

	Warnings []Remark // what the reader must know
	Notes    []string // remarks that may help
	Assumed  int      // how many figures were assumed because the job does not state them
}

// A Remark is a warning of the computation.
type Remark struct {
	Number int    // of the matter, as the report has it: other languages have words for it; 0: none
	About  string // latch or press step; empty: the whole
	Text   string // in English, with About in it

	Figures []unit.Figure // of the text, in order: other languages print them behind their words
}

// Role is where a part is while pressing.
type Role string

// The roles.
const (
	Lower Role = "lower" // lies in the nest
	Upper Role = "upper" // is pushed
)

// A Part is one of the parts to assemble.
type Part struct {
	Name     string
	Material string
	Process  string // "PBF", "MEX", "VPP", "moulded", "machined"
	Role     Role
	Step     int // press step in which it is joined, from 1; 0: not stated
	Count    int // for one assembly
	Picture  image.Image
}

// A Tool is a nest or an anvil.
type Tool struct {
	Name     string
	Mark     string     // engraved on it
	Size     [3]float64 // [mm]
	Mass     float64    // [kg]
	Material string
	Process  string // how it is printed; empty: not stated beside the material
	Steps    []int  // press steps that use it, from 1; none: taken for all
	Picture  image.Image
}

// Cautions gives the cautions of all steps, each once, with the numbers under
// which the sheet prints them.
func (s Sheet) Cautions() []Caution { return collect(s.facts(), s.Language).list }

// facts gives the facts of each step.
func (s Sheet) facts() []Facts {
	out := make([]Facts, len(s.Steps))
	for i, st := range s.Steps {
		st.Facts.Units = s.Units
		var tools []Tool
		for _, t := range s.Tooling {
			if len(t.Steps) == 0 || slices.Contains(t.Steps, i+1) || t.Name == st.Nest || t.Name == st.Anvil {
				tools = append(tools, t)
			}
		}
		out[i] = st.facts(tools)
	}
	return out
}
