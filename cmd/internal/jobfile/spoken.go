package jobfile

import (
	"ramnest/force/unit"
	"regexp"
	"strconv"
)

// Figures of a length or a force in a sentence of another package, with those before it
// that share its unit: "0.2 to 1.6 mm", "80, 0 mm".
var (
	inHouse = regexp.MustCompile(`((?:` + plainFigure + `(?: of | to | x |, ))*` + plainFigure + `) (mm|N)([^/\w]|$)`)
	figures = regexp.MustCompile(plainFigure)
)

const plainFigure = `-?\d+(?:\.\d+)?(?:e[+-]\d+)?`

// Spoken gives the sentence of a fault in mm and N in the units of the job, to four digits.
func (u Units) Spoken(s string) string {
	to := u.Shown()
	if to == (unit.System{}) {
		return s
	}
	return inHouse.ReplaceAllStringFunc(s, func(found string) string {
		m := inHouse.FindStringSubmatch(found)
		kind := unit.Kind(m[2])
		if to.Name(kind) == m[2] {
			return found
		}
		return figures.ReplaceAllStringFunc(m[1], func(one string) string {
			v, err := strconv.ParseFloat(one, 64)
			if err != nil {
				return one
			}
			return kind.Of(v).To(4).Number(to, nil)
		}) + " " + to.Name(kind) + m[3]
	})
}
