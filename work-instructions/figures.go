package workinstructions

import (
	"math"
	"strconv"
	"strings"

	"ramnest/force/method"
	"ramnest/force/unit"
	"ramnest/work-instructions/catalogue"
)

// figures prints values with the units of the job, and words, in a language.
type figures struct {
	units unit.System
	words catalogue.Language
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

// minus gives a number a minus sign of the width of a plus, and the language's point.
func (f figures) minus(number string) string {
	return f.words.Number(strings.Replace(number, "-", "−", 1))
}

// text prints a figure with its unit.
func (f figures) text(v unit.Figure) string {
	return strings.ReplaceAll(v.Text(f.units, f.minus), " ", nbsp)
}

// force prints a force to the nearest figure.
func (f figures) force(n float64) string { return f.text(unit.Force.Of(n)) }

// length prints a length to the nearest 0.1 mm or 0.001 in.
func (f figures) length(mm float64) string { return f.text(unit.Length.Of(mm).To(unit.Shop)) }

// offset prints a coordinate with its sign.
func (f figures) offset(mm float64) string {
	s := f.length(mm)
	if number, _, _ := strings.Cut(s, nbsp); !strings.HasPrefix(s, "−") && strings.Trim(number, "0.,") != "" {
		s = "+" + s
	}
	return s
}

// size prints length by width by height.
func (f figures) size(mm [3]float64) string {
	one := func(v float64) string { return unit.Length.Of(v).To(unit.Shop).Number(f.units, f.minus) }
	return one(mm[0]) + nbsp + "×" + nbsp + one(mm[1]) + nbsp + "×" + nbsp + f.length(mm[2])
}

func (f figures) mass(kg float64) string { return f.text(unit.Mass.Of(kg)) }

func (f figures) work(mJ float64) string { return f.text(unit.Energy.Of(mJ)) }

// limit prints a demand and a capacity in the unit of a limit.
func (f figures) limit(l method.Limit) string {
	demand, capacity := l.Unit.Of(l.Demand), l.Unit.Of(l.Capacity)
	if l.Unit == unit.Length {
		demand, capacity = demand.To(unit.Shop), capacity.To(unit.Shop)
	}
	switch l.Unit {
	case unit.Force, unit.Length, unit.Energy:
		return f.say("force.of", f.text(demand), f.text(capacity))
	}
	s := f.say("force.of", demand.Number(f.units, f.minus), capacity.Number(f.units, f.minus))
	if name := f.units.Name(l.Unit); name != "" {
		s += nbsp + f.named("unit", name)
	}
	return s
}

// number prints a number as the language writes it.
func (f figures) number(v float64, decimals int) string {
	return f.minus(strconv.FormatFloat(v, 'f', decimals, 64))
}

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
