package workinstructions

import (
	"math"
	"strconv"
	"strings"

	"ramnest/work-instructions/catalogue"
)

// figures prints values with their units, metric or in inch and pound-force, and
// words, in a language.
type figures struct {
	inches bool
	words  catalogue.Language
}

// say gives words of the catalogue.
func (f figures) say(key string, fill ...string) string { return f.words.Say(key, fill...) }

// named gives the words for a name out of a fixed set, and the name itself if it is
// another one, such as a name that the job gives.
func (f figures) named(family, name string) string {
	if text, ok := f.words.Find(family + "." + name); ok {
		return text
	}
	return name
}

// Source: definitions, 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N,
// 1 lb = 0.45359237 kg.
const (
	inch       = 25.4
	poundForce = 4.4482216152605
	pound      = 0.45359237
)

// fixedTo prints a number with a fixed count of decimals, with a minus sign of
// the width of a plus, and no minus before a zero.
func fixedTo(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.HasPrefix(s, "-") {
		if strings.Trim(s, "-0.") == "" {
			return s[1:]
		}
		return "−" + s[1:]
	}
	return s
}

// decimals gives three significant figures or more: none from 100 up.
func decimals(v float64) int {
	switch a := math.Abs(v); {
	case a < 0.995:
		return 3
	case a < 9.995:
		return 2
	case a < 99.95:
		return 1
	}
	return 0
}

func (f figures) newtons(n float64) (value float64, unit string) {
	if f.inches {
		return n / poundForce, "lbf"
	}
	return n, "N"
}

// force prints a force to the nearest figure.
func (f figures) force(n float64) string {
	v, unit := f.newtons(n)
	return f.number(v, decimals(v)) + nbsp + unit
}

// floorTo rounds down to a count of decimals, but takes a number that differs
// from a round one by the last bits only for that one.
func floorTo(v float64, d int) float64 {
	p := math.Pow10(d)
	x := v * p
	if r := math.Round(x); math.Abs(x-r) < 1e-6 {
		return r / p
	}
	return math.Floor(x) / p
}

func (f figures) millimetres(mm float64) (value float64, unit string) {
	if f.inches {
		return mm / inch, "in"
	}
	return mm, "mm"
}

// length prints a length to the nearest 0.1 mm or 0.005 in.
func (f figures) length(mm float64) string {
	v, unit := f.millimetres(mm)
	return f.number(v, f.lengthDecimals()) + nbsp + unit
}

func (f figures) lengthDecimals() int {
	if f.inches {
		return 2
	}
	return 1
}

// offset prints a coordinate with its sign.
func (f figures) offset(mm float64) string {
	v, unit := f.millimetres(mm)
	s := f.number(v, f.lengthDecimals())
	if !strings.HasPrefix(s, "−") && strings.Trim(s, "0.,") != "" {
		s = "+" + s
	}
	return s + nbsp + unit
}

// size prints length by width by height.
func (f figures) size(mm [3]float64) string {
	var parts [3]string
	unit := ""
	for i, v := range mm {
		v, unit = f.millimetres(v)
		parts[i] = f.number(v, f.lengthDecimals())
	}
	return strings.Join(parts[:], nbsp+"×"+nbsp) + nbsp + unit
}

func (f figures) mass(kg float64) string {
	if f.inches {
		v := kg / pound
		return f.number(v, min(decimals(v), 2)) + nbsp + "lb"
	}
	return f.number(kg, min(decimals(kg), 2)) + nbsp + "kg"
}

func (f figures) work(mJ float64) string {
	if f.inches {
		v := mJ / poundForce / inch
		return f.number(v, decimals(v)) + nbsp + "in·lbf"
	}
	v := mJ / 1000
	return f.number(v, decimals(v)) + nbsp + "J"
}

// limit prints a demand and a capacity in the unit of a limit.
func (f figures) limit(demand, capacity float64, unit string) string {
	show := func(v float64) string { return f.inUnit(v, unit) }
	switch unit {
	case "N", "mm", "mJ":
		return f.say("force.of", show(demand), show(capacity))
	}
	s := f.say("force.of", show(demand), show(capacity))
	if unit != "" {
		s += nbsp + f.named("unit", unit)
	}
	return s
}

// inUnit prints a value of a limit; its unit too where it depends on the sheet.
func (f figures) inUnit(v float64, unit string) string {
	switch {
	case unit == "N":
		return f.force(v)
	case unit == "mm":
		return f.length(v)
	case unit == "mJ":
		return f.work(v)
	case v == math.Trunc(v):
		return f.number(v, 0)
	}
	return f.number(v, min(decimals(v), 2))
}

// number prints a number as the language writes it.
func (f figures) number(v float64, decimals int) string { return f.words.Number(fixedTo(v, decimals)) }

// percent prints a share.
func (f figures) percent(share float64) string {
	v := 100 * share
	d := 0
	if math.Abs(v) < 9.95 {
		d = 1
	}
	return f.number(v, d) + nbsp + "%"
}

// rare prints a share of which the small ones matter; one that was drawn is never
// rounded to none.
func (f figures) rare(share float64) string {
	v := 100 * share
	switch {
	case v >= 1:
		return f.number(v, 1) + nbsp + "%"
	case v < 0.01 && v > 0:
		v = 0.01
	}
	return f.number(v, 2) + nbsp + "%"
}

const nbsp = "\u00a0"

// count prints how many there are of a thing, "1 hump", "3 humps".
func (f figures) count(n int, key string) string {
	return f.words.Count("count."+key, n, strconv.Itoa(n))
}
