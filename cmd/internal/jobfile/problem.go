package jobfile

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"ramnest/force"
)

// A Problem is one fault with its place in the file.
type Problem struct {
	File        string // as the caller named it
	Line        int    // counted from 1; 0 where no line is known
	force.Fault        // what is wrong, with the field path from the root of the file
	Near        string // nearest known key, for an unknown one; may be empty
}

// String gives the problem in one line: file, line, field, value, what is
// wrong and what would be right.
func (p Problem) String() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		b.WriteString(":" + strconv.Itoa(p.Line))
	}
	b.WriteString(": ")
	if p.Field == "" {
		b.WriteString(strings.TrimPrefix(p.Fault.Error(), ": "))
	} else {
		b.WriteString(p.Fault.Error())
	}
	if p.Near != "" {
		b.WriteString("; nearest known key: " + p.Near)
	}
	return b.String()
}

// Error is [Problem.String]; it hides the text of the fault without place.
func (p Problem) Error() string { return p.String() }

// Problems are the faults of one file in the order of the file.
type Problems []Problem

// Error gives one line a problem.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.String()
	}
	return strings.Join(lines, "\n")
}

// Err gives the problems as an error, nil if there are none.
func (ps Problems) Err() error {
	if len(ps) == 0 {
		return nil
	}
	return ps
}

// Join gives both lists as one, in the order of the file.
func (ps Problems) Join(more Problems) Problems {
	all := slices.Concat(ps, more)
	all.sort()
	return all
}

// sort puts the problems in the order of their lines; problems of one line keep
// their order.
func (ps Problems) sort() {
	slices.SortStableFunc(ps, func(a, b Problem) int { return cmp.Compare(a.Line, b.Line) })
}
