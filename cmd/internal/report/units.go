package report

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"ramnest/cmd/internal/job"
)

// units shows figures in the job's own units.
type units struct{ inch, pound bool }

func unitsOf(j *job.File) units { return units{j.Inch(), j.Pounds()} }

// By definition: the inch and the pound-force, in mm and N.
const (
	inch  = 25.4
	pound = 4.4482216152605
)

// as gives a value of a house unit in the unit that is shown: the value and the
// unit's name. A unit that it does not know is left alone.
func (u units) as(v float64, unit string) (float64, string) {
	switch {
	case unit == "mm" && u.inch:
		return v / inch, "in"
	case unit == "mm2" && u.inch:
		return v / (inch * inch), "square in"
	case unit == "mm2":
		return v, "square mm"
	case unit == "cm3" && u.inch:
		return v * 1000 / (inch * inch * inch), "cubic in"
	case unit == "cm3":
		return v, "cubic cm"
	case unit == "N" && u.pound:
		return v / pound, "lbf"
	case unit == "MPa" && u.inch && u.pound:
		return v / pound * inch * inch, "psi"
	case unit == "N/mm" && u.inch && u.pound:
		return v / pound * inch, "lbf/in"
	case (unit == "mJ" || unit == "N mm") && u.inch && u.pound:
		return v / pound / inch, "in-lbf"
	case unit == "mJ" && math.Abs(v) >= 1000:
		return v / 1000, "J"
	case unit == "kg" && u.pound:
		return v / 0.45359237, "lb"
	}
	return v, unit
}

// say gives a value of a house unit with the unit that is shown.
func (u units) say(v float64, unit string) string {
	v, unit = u.as(v, unit)
	return strings.TrimSpace(number(v) + " " + unit)
}

// length gives a length with digits behind the point that the shop can measure.
func (u units) length(v float64) string {
	if u.inch {
		return fmt.Sprintf("%.3f", v/inch)
	}
	return fmt.Sprintf("%.1f", v)
}

// number writes a figure with three digits, or whole from a hundred on.
func number(v float64) string {
	if math.Abs(v) >= 99.95 {
		return strconv.FormatFloat(math.Round(v)+0, 'f', -1, 64)
	}
	s := strconv.FormatFloat(v, 'g', 3, 64)
	if x, err := strconv.ParseFloat(s, 64); err == nil {
		s = strconv.FormatFloat(x+0, 'f', -1, 64)
	}
	return s
}

// inText finds figures of a house unit in a sentence of another package, with the
// figures before it that share the unit: "12 of 40 N", "250 x 250 x 250 mm".
var (
	inText = regexp.MustCompile(`((?:` + figure + `(?: of | to | x |, ))*)(` + figure + `) (N/mm|mm|mJ|MPa|kg|N)([^/\w]|$)`)
	shared = regexp.MustCompile(figure)
)

const figure = `-?\d+(?:\.\d+)?(?:e[+-]\d+)?`

// text gives a sentence of another package, written in the house's units, in those
// of the job.
func (u units) text(s string) string {
	if !u.inch && !u.pound {
		return s
	}
	return inText.ReplaceAllStringFunc(s, func(found string) string {
		m := inText.FindStringSubmatch(found)
		before, last, unit, after := m[1], m[2], m[3], m[4]
		v, err := strconv.ParseFloat(last, 64)
		if err != nil {
			return found
		}
		v, shown := u.as(v, unit)
		if shown == unit {
			return found
		}
		before = shared.ReplaceAllStringFunc(before, func(one string) string {
			v, err := strconv.ParseFloat(one, 64)
			if err != nil {
				return one
			}
			v, _ = u.as(v, unit)
			return number(v)
		})
		return before + number(v) + " " + shown + after
	})
}
