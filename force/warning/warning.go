// Package warning is what every room says of a thing that a person should know and that
// stops nothing: a number that stays, with a page in the guide, and a text.
package warning

import (
	"fmt"

	"ramnest/force/unit"
)

// A Warning is a caution with a number that stays the same for the same matter. Its figures
// stay values until it is printed in the units of a job.
type Warning struct {
	Number int
	Text   unit.Text
}

// New makes a warning, with %v for figures, see [unit.Textf].
func New(number int, format string, args ...any) Warning {
	return Warning{number, unit.Textf(format, args...)}
}

// In gives the warning behind its number: "W12 the wall is thick", in the units of a job.
func (w Warning) In(s unit.System) string { return Numbered(w.Number, w.Text.In(s)) }

// String gives it in the units of the rooms.
func (w Warning) String() string { return w.In(unit.System{}) }

// Numbered puts a text behind the number of its warning.
func Numbered(number int, text string) string { return fmt.Sprintf("W%d %s", number, text) }

// Texts gives the texts of warnings alone, in the units of a job.
func Texts(all []Warning, s unit.System) []string {
	var out []string
	for _, w := range all {
		out = append(out, w.Text.In(s))
	}
	return out
}
