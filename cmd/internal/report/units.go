package report

import (
	"regexp"
	"strconv"

	"ramnest/cmd/internal/job"
	"ramnest/force/unit"
)

// units shows figures in the job's own units.
type units struct{ unit.System }

func unitsOf(j *job.File) units { return units{j.Shown()} }

// say gives a value of a house unit with the unit that is shown.
func (u units) say(v float64, k unit.Kind) string { return k.Of(v).Text(u.System, nil) }

// bare gives it without the unit.
func (u units) bare(v float64, k unit.Kind) string { return k.Of(v).Number(u.System, nil) }

// coupon gives the size of a coupon, of which small steps count.
func (u units) coupon(v float64) string { return unit.Length.Of(v).To(unit.Grid).Number(u.System, nil) }

// size gives lengths, one by another, that the shop can measure, without their unit.
func (u units) size(box [3]float64) string {
	one := func(v float64) string { return unit.Length.Of(v).To(unit.Shop).Number(u.System, nil) }
	return one(box[0]) + " x " + one(box[1]) + " x " + one(box[2])
}

// number writes a figure with three digits, or whole from a hundred on.
func number(v float64) string { return unit.Short(v) }

// inText finds figures of a house unit in a sentence of another package, with the
// figures before it that share the unit: "12 of 40 N", "250 x 250 x 250 mm".
var (
	inText = regexp.MustCompile(`((?:` + figure + `(?: of | to | x |, ))*)(` + figure + `) (N/mm|mm|mJ|MPa|kg|N)([^/\w]|$)`)
	shared = regexp.MustCompile(figure)
)

const figure = `-?\d+(?:\.\d+)?(?:e[+-]\d+)?`

// texts gives sentences of another package in the units of the job.
func (u units) texts(all []unit.Text) []string {
	out := make([]string, len(all))
	for i, s := range all {
		out[i] = s.In(u.System)
	}
	return out
}

// text gives a sentence of another package, written in the house's units, in those
// of the job.
func (u units) text(s string) string {
	if u.System == (unit.System{}) {
		return s
	}
	return inText.ReplaceAllStringFunc(s, func(found string) string {
		m := inText.FindStringSubmatch(found)
		before, last, name, after := m[1], m[2], m[3], m[4]
		v, err := strconv.ParseFloat(last, 64)
		if err != nil {
			return found
		}
		v, shown := u.In(v, unit.Kind(name))
		if shown == name {
			return found
		}
		before = shared.ReplaceAllStringFunc(before, func(one string) string {
			v, err := strconv.ParseFloat(one, 64)
			if err != nil {
				return one
			}
			v, _ = u.In(v, unit.Kind(name))
			return number(v)
		})
		return before + number(v) + " " + shown + after
	})
}
