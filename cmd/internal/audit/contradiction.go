package audit

import (
	"fmt"
	"math"
	"strings"
)

// A Contradiction is two figures that cannot both be right.
type Contradiction struct {
	About string // press step, or paper
	Law   string // that is broken
	Text  string // the figures
}

// String is one line.
func (c Contradiction) String() string { return c.About + ": " + c.Law + ": " + c.Text }

// A Fault is what an audit found; never empty.
type Fault []Contradiction

// Error gives a line for each contradiction.
func (f Fault) Error() string {
	lines := make([]string, len(f))
	for i, c := range f {
		lines[i] = strings.Join(strings.Fields(c.String()), " ")
	}
	return strings.Join(lines, "\n")
}

// finding gathers contradictions about one thing.
type finding struct {
	about string
	all   []Contradiction
}

// say takes a contradiction down.
func (f *finding) say(law, format string, v ...any) {
	f.all = append(f.all, Contradiction{f.about, law, fmt.Sprintf(format, v...)})
}

// same holds two statements of one figure against each other. by is how far they may lie
// apart, as a share of the larger; what is no number is never the same.
func (f *finding) same(law, what string, here, there, by float64) {
	if !close(here, there, by) {
		f.say(law, "%s is %.9g here and %.9g there", what, here, there)
	}
}

// equal holds two statements of one fact against each other.
func equal[T comparable](f *finding, law, what string, here, there T) {
	if here != there {
		f.say(law, "%s is %q here and %q there", what, fmt.Sprint(here), fmt.Sprint(there))
	}
}

// close says whether two figures agree up to a share of the larger; where they may differ
// at all, up to a billionth of a unit as well, which is what papers leave off.
func close(a, b, by float64) bool {
	return a == b || by > 0 && math.Abs(a-b) <= by*max(math.Abs(a), math.Abs(b))+1e-9
}

// fault gives what was found as an error, nil for nothing.
func fault(all ...[]Contradiction) error {
	var out Fault
	for _, a := range all {
		out = append(out, a...)
	}
	if len(out) == 0 {
		return nil
	}
	return out
}
