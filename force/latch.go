package force

import (
	"fmt"
	"math"
)

// A Latch is one entry of the job's list of latches: one joint design, at one
// or several places.
type Latch struct {
	ID string  `yaml:"id" required:"true"`
	At []Point `yaml:"at" unit:"mm" required:"true"`
	// Z is the height of the joint line with the parts seated [mm]: the bead of
	// an annular joint, the middle of the engaged length of a press fit.
	Z float64 `yaml:"z" unit:"mm" required:"true"`
	// Engage is the lift at first contact [mm]; left out, the latch's own stroke.
	Engage *float64 `yaml:"engage" unit:"mm"`
	// Use is permanent (the default) or releasable.
	Use string `yaml:"use" oneof:"permanent releasable"`

	Annular  *Annular  `yaml:"annular"`
	PressFit *PressFit `yaml:"press_fit"`
}

// Kind is the trade name of the joint as the job file writes it.
func (l Latch) Kind() string {
	switch {
	case l.Annular != nil:
		return "annular"
	case l.PressFit != nil:
		return "press_fit"
	}
	return ""
}

// Validate returns what is wrong with the latch, field paths relative to it.
func (l Latch) Validate() []Fault {
	var out []Fault
	if l.ID == "" {
		out = append(out, Fault{Field: "id", Problem: "is missing", Want: "a short name, unique in the job"})
	}
	if len(l.At) == 0 {
		out = append(out, Fault{Field: "at", Problem: "is empty", Want: "one plan position or more"})
	}
	if len(l.At) > maxPlaces {
		out = append(out, Fault{Field: "at", Given: fmt.Sprint(len(l.At), " places"), Problem: "are too many", Want: fmt.Sprintf("%d at most", maxPlaces)})
	}
	for i, p := range l.At {
		if !within(p.X, -maxLength, maxLength) || !within(p.Y, -maxLength, maxLength) {
			out = append(out, Fault{Field: fmt.Sprintf("at[%d]", i), Given: fmt.Sprintf("%g, %g mm", p.X, p.Y), Problem: "is not a place on a hand-sized job", Want: "-10000 to 10000 mm"})
		}
	}
	out = append(out, lengthFault("z", l.Z, -maxLength, maxLength)...)
	if l.Engage != nil {
		out = append(out, lengthFault("engage", *l.Engage, smallest, maxLength)...)
	}
	if l.Use != "" && l.Use != "permanent" && l.Use != "releasable" {
		out = append(out, Fault{Field: "use", Given: l.Use, Problem: "is not known", Want: "permanent or releasable"})
	}
	switch {
	case l.Annular == nil && l.PressFit == nil:
		out = append(out, Fault{Problem: "says no kind of latch", Want: "one of annular, press_fit"})
	case l.Annular != nil && l.PressFit != nil:
		out = append(out, Fault{Problem: "says two kinds of latch", Want: "one of annular, press_fit"})
	case l.Annular != nil:
		out = append(out, Under("annular", l.Annular.Validate())...)
	default:
		out = append(out, Under("press_fit", l.PressFit.Validate())...)
	}
	return out
}

const (
	smallest  = 1e-4 // [mm] a tenth of a micrometre: below any part dimension
	maxLength = 1e4  // [mm] ten metres: above any part pressed by hand
	maxPlaces = 2000 // places of one latch, and of all latches of a job
)

// within says lo <= v <= hi, and no for NaN.
func within(v, lo, hi float64) bool { return v >= lo && v <= hi }

// lengthFault refuses a length outside lo to hi [mm], both ends included.
func lengthFault(field string, v, lo, hi float64) []Fault {
	if within(v, lo, hi) {
		return nil
	}
	problem := fmt.Sprintf("must be %g mm or more", lo)
	if v > hi {
		problem = fmt.Sprintf("must be %g mm or less", hi)
	}
	return []Fault{{Field: field, Given: fmt.Sprintf("%g mm", v), Problem: problem, Want: fmt.Sprintf("%g to %g mm", lo, hi)}}
}

// angleFault refuses an angle [rad] outside lo to hi [deg].
func angleFault(field string, v, lo, hi float64) []Fault {
	deg := v * 180 / math.Pi
	if within(deg, lo-1e-9, hi+1e-9) {
		return nil
	}
	return []Fault{{Field: field, Given: fmt.Sprintf("%.4g deg", deg), Problem: "is outside what the formula holds for", Want: fmt.Sprintf("%g to %g deg", lo, hi)}}
}

// sideFault refuses a side that is not lower or upper.
func sideFault(field, v string) []Fault {
	if v == "lower" || v == "upper" {
		return nil
	}
	if v == "" {
		return []Fault{{Field: field, Problem: "is missing", Want: "lower or upper"}}
	}
	return []Fault{{Field: field, Given: v, Problem: "is not a part of a step", Want: "lower or upper"}}
}
