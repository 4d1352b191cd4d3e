package fault

import "strings"

// A Fault is one thing wrong with what a person wrote, as a value: the text is
// made once, at the edge, where file and line are known.
type Fault struct {
	Field   string // path of the field below the struct that reports, "annular.undercut"
	Given   string // the value as it was understood, with its unit; may be empty
	Problem string // what is wrong, "must be above 0"
	Want    string // what would be right, "0.2 to 1.6 mm"; may be empty
}

// Error gives the fault without its place in the file.
func (f Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.Field)
	b.WriteString(": ")
	if f.Given != "" {
		b.WriteString(f.Given)
		b.WriteString("; ")
	}
	b.WriteString(f.Problem)
	if f.Want != "" {
		b.WriteString(" (")
		b.WriteString(f.Want)
		b.WriteString(")")
	}
	return b.String()
}

// Under returns the faults with prefix put before each field path.
func Under(prefix string, faults []Fault) []Fault {
	out := make([]Fault, len(faults))
	for i, f := range faults {
		switch {
		case f.Field == "":
			f.Field = prefix
		case strings.HasPrefix(f.Field, "["):
			f.Field = prefix + f.Field
		default:
			f.Field = prefix + "." + f.Field
		}
		out[i] = f
	}
	return out
}
