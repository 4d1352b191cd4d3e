package force

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"ramnest/force/fault"
	"ramnest/force/unit"
)

const (
	degree    = 180 / math.Pi // [deg/rad]
	smallest  = 1e-4          // [mm] a tenth of a micrometre: below any part dimension
	maxLength = 1e4           // [mm] ten metres: above any part pressed by hand
	maxPlaces = 2000          // places of one latch, and of all latches of a step, unless the assembly says otherwise
)

// within says lo <= v <= hi, and no for NaN.
func within(v, lo, hi float64) bool { return v >= lo && v <= hi }

// lengthFault refuses a length outside lo to hi [mm], both ends included as they
// are printed: a limit of 0.8 times 6 mm lets 4.8 mm through, whatever binary
// fractions make of it.
func lengthFault(field string, v, lo, hi float64) []fault.Fault {
	if within(v, lo-1e-12*math.Abs(lo), hi+1e-12*math.Abs(hi)) {
		return nil
	}
	given, low := distinct(6, v, lo)
	problem := "must be " + low + " mm or more"
	if v > hi {
		var high string
		given, high = distinct(6, v, hi)
		problem = "must be " + high + " mm or less"
	}
	want := figure(lo) + " to " + figure(hi) + " mm"
	if lo >= hi {
		want = "" // another figure leaves no room for it
	}
	return []fault.Fault{{Field: field, Given: given + " mm", Problem: problem, Want: want}}
}

// figure writes a value that a person may have written: six digits, so that what
// binary fractions leave behind is not shown.
func figure(v float64) string { return fmt.Sprintf("%.6g", v) }

// distinct writes two unlike values with as many digits as tell them apart, at
// least so many.
func distinct(digits int, a, b float64) (first, second string) {
	for ; digits < 17; digits++ {
		first, second = fmt.Sprintf("%.*g", digits, a), fmt.Sprintf("%.*g", digits, b)
		if first != second {
			break
		}
	}
	return first, second
}

// portion writes a share of assemblies. A risk that was drawn is never rounded to
// none, nor to all.
func portion(share float64) string {
	switch {
	case share > 0 && share < 0.001:
		return "fewer than 0.1 %"
	case share < 1 && share > 0.999:
		return "more than 99.9 %"
	case share > 0 && share < 0.01:
		return fmt.Sprintf("%.2g %%", 100*share)
	}
	return fmt.Sprintf("%.1f %%", 100*share)
}

// portionOf is the same as a text that keeps its figure.
func portionOf(share float64) unit.Text {
	switch {
	case share > 0 && share < 0.001:
		return unit.Textf("fewer than %v", unit.Share.Of(0.001))
	case share < 1 && share > 0.999:
		return unit.Textf("more than %v", unit.Share.Of(0.999))
	case share < 0.01:
		return unit.Textf("%v", unit.Share.Of(share).To(2))
	}
	return unit.Textf("%v", unit.Share.Of(share))
}

// angleFault refuses an angle [rad] outside lo to hi [deg].
func angleFault(field string, v, lo, hi float64) []fault.Fault {
	deg := v * degree
	if within(deg, lo-1e-9, hi+1e-9) {
		return nil
	}
	return []fault.Fault{{Field: field, Given: figure(deg) + " deg", Problem: "is outside what the formula holds for",
		Want: figure(lo) + " to " + figure(hi) + " deg"}}
}

// sideFault refuses a side that is not lower or upper.
func sideFault(field, v string) []fault.Fault {
	if v == "lower" || v == "upper" {
		return nil
	}
	if v == "" {
		return []fault.Fault{{Field: field, Problem: "is missing", Want: "lower or upper"}}
	}
	return []fault.Fault{{Field: field, Given: v, Problem: "is not a part of a step", Want: "lower or upper"}}
}

// countFault refuses a number of things outside lo to hi.
func countFault(field string, n, lo, hi int) []fault.Fault {
	if n >= lo && n <= hi {
		return nil
	}
	return []fault.Fault{{Field: field, Given: fmt.Sprint(n), Problem: "is outside what can be built", Want: fmt.Sprintf("%d to %d", lo, hi)}}
}

// choiceFault refuses a word that is not one of those known.
func choiceFault(field, v string, known ...string) []fault.Fault {
	if slices.Contains(known, v) {
		return nil
	}
	if v == "" {
		return []fault.Fault{{Field: field, Problem: "is missing", Want: strings.Join(known, " or ")}}
	}
	return []fault.Fault{{Field: field, Given: v, Problem: "is not known", Want: strings.Join(known, " or ")}}
}
