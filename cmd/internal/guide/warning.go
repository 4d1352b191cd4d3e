package guide

import (
	_ "embed" // the pages
	"fmt"
	"strconv"
	"strings"
)

//go:embed warnings.txt
var pages string

// A Warning is the page on the warnings of one number.
type Warning struct {
	Number int
	Title  string
	Means  string // what was found, and what may come of it
	Do     string // what the person can do
}

// Warnings gives every page in the order of the numbers.
func Warnings() []Warning {
	var out []Warning
	for block := range strings.SplitSeq(strings.TrimSpace(pages), "\n\n") {
		lines := strings.Split(block, "\n")
		head, title, _ := strings.Cut(lines[0], " ")
		n, err := strconv.Atoi(strings.TrimPrefix(head, "W"))
		if err != nil || len(lines) != 3 {
			panic("guide: not a page of a warning: " + block) // the file is part of the program
		}
		out = append(out, Warning{n, title, strings.TrimPrefix(lines[1], "means: "), strings.TrimPrefix(lines[2], "do: ")})
	}
	return out
}

// WarningOf gives the page of a number.
func WarningOf(n int) (Warning, bool) {
	for _, w := range Warnings() {
		if w.Number == n {
			return w, true
		}
	}
	return Warning{}, false
}

// WarningNumber reads "W12" as 12; ok is false for what is no such word.
func WarningNumber(word string) (n int, ok bool) {
	digits := strings.TrimPrefix(strings.ToUpper(word), "W")
	if len(digits) == len(word) || len(digits) > 3 {
		return 0, false
	}
	n, err := strconv.Atoi(digits)
	return n, err == nil && n > 0
}

// String gives the page as text.
func (w Warning) String() string {
	return fmt.Sprintf("W%d  %s\n\nWhat it means\n\n%s\nWhat to do\n\n%s", w.Number, w.Title, filled("    ", w.Means), filled("    ", w.Do))
}

// width is the width of a terminal that everything fits [characters].
const width = 80

// filled sets a text in lines of at most the width, each indented.
func filled(indent, text string) string {
	var b strings.Builder
	line := indent
	for _, word := range strings.Fields(text) {
		if len(line)+1+len(word) > width && line != indent {
			b.WriteString(line + "\n")
			line = indent
		}
		if line != indent {
			line += " "
		}
		line += word
	}
	return b.String() + line + "\n"
}
