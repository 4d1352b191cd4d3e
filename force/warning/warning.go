// Package warning is what every room says of a thing that a person should know and that
// stops nothing: a number that stays, with a page in the guide, and a text.
package warning

import "fmt"

// A Warning is a caution with a number that stays the same for the same matter.
type Warning struct {
	Number int
	Text   string
}

// String gives the warning behind its number: "W12 the wall is thick".
func (w Warning) String() string { return fmt.Sprintf("W%d %s", w.Number, w.Text) }

// Texts gives the texts of warnings alone.
func Texts(all []Warning) []string {
	var out []string
	for _, w := range all {
		out = append(out, w.Text)
	}
	return out
}
