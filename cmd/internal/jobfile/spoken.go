package jobfile

import (
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

// spoken gives a sentence in mm and N in the units of the job, to four digits.
func (u Units) spoken(s string) string {
	if u.Length != "in" && u.Force != "lbf" {
		return s
	}
	return inHouse.ReplaceAllStringFunc(s, func(found string) string {
		m := inHouse.FindStringSubmatch(found)
		figure, unit := m[1], m[2]
		to, mm := u.Length, 25.4 // by definition, see units.go
		if unit == "N" {
			to, mm = u.Force, 4.4482216152605
		}
		if to == unit || to == "" {
			return found
		}
		return figures.ReplaceAllStringFunc(figure, func(one string) string {
			v, err := strconv.ParseFloat(one, 64)
			if err != nil {
				return one
			}
			short, _ := strconv.ParseFloat(strconv.FormatFloat(v/mm, 'g', 4, 64), 64) // of our own digits
			return strconv.FormatFloat(short, 'f', -1, 64)
		}) + " " + to + m[3]
	})
}
