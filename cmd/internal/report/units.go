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

// inText finds figures of a house unit in a sentence of another package, with a
// second figure joined by a word that shares the unit.
var inText = regexp.MustCompile(`(?:(-?\d+(?:\.\d+)?(?:e[+-]\d+)?)( of | to | x | by |, ))?(-?\d+(?:\.\d+)?(?:e[+-]\d+)?) (mm|N/mm|N|mJ|MPa|kg)\b(?:[^/\w]|$)`)

// text gives a sentence of another package, written in the house's units, in those
// of the job.
func (u units) text(s string) string {
	if !u.inch && !u.pound {
		return s
	}
	return inText.ReplaceAllStringFunc(s, func(found string) string {
		m := inText.FindStringSubmatch(found)
		tail := ""
		if last := found[len(found)-1]; !strings.HasSuffix(found, m[4]) {
			tail = string(last)
		}
		v, err := strconv.ParseFloat(m[3], 64)
		if err != nil {
			return found
		}
		shown, unit := u.as(v, m[4])
		if unit == m[4] {
			return found
		}
		out := number(shown) + " " + unit + tail
		if m[1] == "" {
			return out
		}
		first, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			return found
		}
		first, _ = u.as(first, m[4])
		return number(first) + m[2] + out
	})
}
