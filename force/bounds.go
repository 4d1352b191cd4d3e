package force

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

const (
	degree    = 180 / math.Pi // [deg/rad]
	smallest  = 1e-4          // [mm] a tenth of a micrometre: below any part dimension
	maxLength = 1e4           // [mm] ten metres: above any part pressed by hand
	maxPlaces = 2000          // places of one latch, and of all latches of a job
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
	deg := v * degree
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

// countFault refuses a number of things outside lo to hi.
func countFault(field string, n, lo, hi int) []Fault {
	if n >= lo && n <= hi {
		return nil
	}
	return []Fault{{Field: field, Given: fmt.Sprint(n), Problem: "is outside what can be built", Want: fmt.Sprintf("%d to %d", lo, hi)}}
}

// choiceFault refuses a word that is not one of those known.
func choiceFault(field, v string, known ...string) []Fault {
	if slices.Contains(known, v) {
		return nil
	}
	if v == "" {
		return []Fault{{Field: field, Problem: "is missing", Want: strings.Join(known, " or ")}}
	}
	return []Fault{{Field: field, Given: v, Problem: "is not known", Want: strings.Join(known, " or ")}}
}
