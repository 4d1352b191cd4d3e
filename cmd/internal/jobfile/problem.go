package jobfile

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"ramnest/force/fault"
)

// A Problem is a fault together with its place.
type Problem struct {
	File string // as it was named to [Decode], or "set path=value" for an override
	Line int    // counted from 1; 0 if no line is to blame
	fault.Fault
	Near string // the known key or word nearest to what was written; may be empty
}

// String gives the problem on one line, without anything that could disturb a
// terminal:
//
//	rim-cap.yaml:41: latches[0].annular.undercut: -0.2 mm; must be above 0 (0.2 to 1.6 mm)
func (p Problem) String() string {
	var b strings.Builder
	b.WriteString(p.File)
	if p.Line > 0 {
		b.WriteString(":" + strconv.Itoa(p.Line))
	}
	b.WriteString(": ")
	f := p.Fault
	if p.Near != "" {
		if f.Want != "" {
			f.Want += "; "
		}
		f.Want += "nearest: " + p.Near
	}
	b.WriteString(strings.TrimPrefix(f.Error(), ": "))
	return harmless(b.String())
}

// Error is the same as String.
func (p Problem) Error() string { return p.String() }

// Problems are all that is wrong with a file, in file order; faults of overrides
// and of the file as a whole come last.
type Problems []Problem

// Err gives the problems as an error, nil if there are none.
func (p Problems) Err() error {
	if len(p) == 0 {
		return nil
	}
	return p
}

// Error gives the problems one a line.
func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, q := range p {
		lines[i] = q.String()
	}
	return strings.Join(lines, "\n")
}

// And joins two lists into one in file order.
func (p Problems) And(q Problems) Problems { return slices.Concat(p, q).sorted() }

// sorted puts the problems in file order. Two of one line keep their order.
func (p Problems) sorted() Problems {
	slices.SortStableFunc(p, func(a, b Problem) int {
		if (a.Line == 0) != (b.Line == 0) {
			return cmp.Compare(b.Line, a.Line)
		}
		return cmp.Compare(a.Line, b.Line)
	})
	return p
}

// maxListed is the most faults listed of one file. A file with more is not a job
// with mistakes in it but something else.
const maxListed = 200

// longest is how much of what a person wrote a fault repeats [characters].
const longest = 60

// shown makes what a person wrote fit into a fault: short, and in quotes if it
// could be misread.
func shown(s string) string {
	if runes := []rune(s[:min(len(s), 4*longest+4)]); len(runes) > longest {
		s = string(runes[:longest]) + "..."
	}
	if s == "" || s != strings.TrimSpace(s) || strings.ContainsFunc(s, unseen) || strings.ContainsAny(s, "\n\t") {
		return strconv.Quote(s)
	}
	return s
}

// harmless replaces whatever could move the cursor or turn the text round.
func harmless(s string) string {
	return strings.Map(func(r rune) rune {
		if unseen(r) || r == '\n' || r == '\t' {
			return unicode.ReplacementChar
		}
		return r
	}, s)
}

// unseen says whether a character acts on the text round it instead of being
// seen: control characters except tab and line feed, line and paragraph
// separators, direction marks and overrides, a byte order mark inside the text.
func unseen(r rune) bool {
	switch {
	case r == '\n' || r == '\t':
		return false
	case unicode.IsControl(r), r == '\u2028', r == '\u2029', r == '\ufeff':
		return true
	}
	return unicode.Is(unicode.Bidi_Control, r)
}

// count says a number of things.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprint(n, " ", many)
}
