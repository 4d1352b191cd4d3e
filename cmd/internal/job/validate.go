package job

import (
	"fmt"
	"slices"
	"strings"

	"ramnest/force/fault"
)

// longestNumber is the longest job number that still fits on the tooling and into
// a file name [characters].
const longestNumber = 40

// What the work instruction has room for [characters].
const (
	longestName   = 200
	longestHead   = 60
	longestReason = 500
)

// Validate returns everything wrong with the file that shows without reading the
// parts, field paths as in the file.
func (f *File) Validate() []fault.Fault {
	out := f.headFaults()
	out = append(out, fault.Under("materials", f.Materials.Validate())...)
	out = append(out, f.stepFaults()...)
	out = append(out, fault.Under("bench", f.Bench.Validate())...)
	out = append(out, fault.Under("fixture", f.Fixture.Validate(f.Materials))...)
	if p := f.Fixture.PrintedIn; p != nil {
		out = append(out, fault.Under("fixture.printed_in", f.Materials.Implausible(*p))...)
	}
	if f.Rates != nil {
		out = append(out, fault.Under("rates", f.Rates.Validate())...)
	}
	return once(out)
}

// headFaults judges what the file says of the job as a whole.
func (f *File) headFaults() []fault.Fault {
	var out []fault.Fault
	if n := len([]rune(f.Number)); n > longestNumber {
		out = append(out, fault.Fault{Field: "job", Given: fmt.Sprintf("%d characters", n), Problem: "is too long to engrave",
			Want: fmt.Sprintf("%d characters at most", longestNumber)})
	}
	if n := len([]rune(f.Revision)); n > longestNumber {
		out = append(out, fault.Fault{Field: "revision", Given: fmt.Sprintf("%d characters", n), Problem: "is too long to engrave",
			Want: fmt.Sprintf("%d characters at most", longestNumber)})
	}
	long := func(field, text string, most int) {
		if n := len([]rune(text)); n > most {
			out = append(out, fault.Fault{Field: field, Given: fmt.Sprintf("%d characters", n), Problem: "is too long for the work instruction",
				Want: fmt.Sprintf("%d characters at most", most)})
		}
	}
	long("title", f.Title, longestName)
	long("author", f.Author, longestHead)
	if f.Method != nil {
		long("method.override", f.Method.Override, longestReason)
	}
	for i, p := range f.Bench.Presses {
		long(fmt.Sprintf("bench.presses[%d].name", i), p.Name, longestName)
	}
	for i, m := range f.Bench.Mallets {
		long(fmt.Sprintf("bench.mallets[%d].name", i), m.Name, longestName)
	}
	for i, v := range f.Bench.Vises {
		long(fmt.Sprintf("bench.vises[%d].name", i), v.Name, longestName)
	}
	for _, t := range []struct{ field, text string }{{"job", f.Number}, {"revision", f.Revision}, {"title", f.Title}, {"author", f.Author}} {
		if strings.ContainsAny(t.text, "\n\t") {
			out = append(out, fault.Fault{Field: t.field, Problem: "goes over a line end or holds a tab", Want: "one line"})
		}
	}
	for _, a := range []struct {
		field, unit string
		x, hi       float64
	}{
		{"quantity", "", float64(f.Quantity), 1e8},
		{"rate_per_hour", "", f.RatePerHour, 20000},
		{"hours_per_shift", " h", f.HoursPerShift, 24},
		{"action_seconds", " s", f.ActionSeconds, 600},
		{"shock_limit", " N", f.ShockLimit, 1e7},
	} {
		if !(a.x >= 0 && a.x <= a.hi) {
			out = append(out, fault.Fault{Field: a.field, Given: fmt.Sprintf("%.6g%s", a.x, a.unit), Problem: "is out of range",
				Want: fmt.Sprintf("above 0, %.6g%s at most", a.hi, a.unit)})
		}
	}
	return out
}

// stepFaults judges parts and latches, in the flat form or in steps.
func (f *File) stepFaults() []fault.Fault {
	if len(f.PressSteps) == 0 {
		if out := f.flatFaults(); len(out) > 0 {
			return out
		}
	} else if out := f.listFaults(); len(out) > 0 {
		return out
	}
	var out []fault.Fault
	owner := map[string]int{}
	for i, s := range f.Steps() {
		out = append(out, fault.Under(s.LowerPath, s.Lower.Validate())...)
		out = append(out, fault.Under(s.UpperPath, s.Upper.Validate())...)
		faults := f.Assembly(s).Validate()
		if len(faults) == 0 {
			faults = f.Assembly(s).Implausible()
		}
		for _, fault := range faults {
			fault.Field = s.InFile(fault.Field)
			out = append(out, fault)
		}
		for _, t := range []struct{ field, text string }{{s.LowerPath + ".name", s.Lower.Name}, {s.UpperPath + ".name", s.Upper.Name}} {
			if n := len([]rune(t.text)); n > longestName {
				out = append(out, fault.Fault{Field: t.field, Given: fmt.Sprintf("%d characters", n), Problem: "is too long for the work instruction",
					Want: fmt.Sprintf("%d characters at most", longestName)})
			}
		}
		for k, l := range s.Latches {
			at := fmt.Sprintf("%s[%d]", s.LatchesPath, k)
			if n := len([]rune(l.ID)); n > longestHead {
				out = append(out, fault.Fault{Field: at + ".id", Given: fmt.Sprintf("%d characters", n), Problem: "is too long",
					Want: fmt.Sprintf("%d characters at most", longestHead)})
			}
			for i, p := range l.At {
				if j := slices.Index(l.At[:i], p); j >= 0 {
					out = append(out, fault.Fault{Field: fmt.Sprintf("%s.at[%d]", at, i), Given: fmt.Sprintf("[%g, %g]", p.X, p.Y),
						Problem: fmt.Sprintf("is the same place as number %d", j), Want: "each latch at a place of its own"})
					break
				}
			}
			if first, taken := owner[l.ID]; taken && first != i {
				out = append(out, fault.Fault{Field: fmt.Sprintf("%s[%d].id", s.LatchesPath, k), Given: l.ID,
					Problem: "is taken by a latch of an earlier step", Want: "a name of its own"})
			} else if l.ID != "" {
				owner[l.ID] = i
			}
		}
	}
	return out
}

// flatFaults says what a flat job lacks.
func (f *File) flatFaults() []fault.Fault {
	var out []fault.Fault
	for _, p := range []struct {
		field string
		part  *Part
	}{{"lower", f.Lower}, {"upper", f.Upper}} {
		if p.part == nil {
			out = append(out, fault.Fault{Field: p.field, Problem: "is missing",
				Want: "the " + p.field + " part with its material and envelope, or a list of steps"})
		}
	}
	if len(f.Latches) == 0 {
		out = append(out, fault.Fault{Field: "latches", Problem: "is missing", Want: "one latch or more, or a list of steps"})
	}
	return out
}

// listFaults says what a job in steps has twice or lacks.
func (f *File) listFaults() []fault.Fault {
	var out []fault.Fault
	const want = "upper and latches in the steps, or no steps"
	if f.Upper != nil {
		out = append(out, fault.Fault{Field: "upper", Problem: "stands beside a list of steps", Want: want})
	}
	if len(f.Latches) > 0 {
		out = append(out, fault.Fault{Field: "latches", Problem: "stands beside a list of steps", Want: want})
	}
	const most = 20
	if n := len(f.PressSteps); n > most {
		out = append(out, fault.Fault{Field: "steps", Given: fmt.Sprintf("%d steps", n), Problem: "are too many",
			Want: fmt.Sprintf("%d at most", most)})
	}
	for i, s := range f.PressSteps {
		at := fmt.Sprintf("steps[%d]", i)
		if s.Lower == nil && f.Lower == nil {
			out = append(out, fault.Fault{Field: at + ".lower", Problem: "is missing", Want: "a lower part in the step, or one for the job"})
		}
		if s.Upper == nil {
			out = append(out, fault.Fault{Field: at + ".upper", Problem: "is missing", Want: "the part that this step presses on"})
		}
		if strings.ContainsAny(s.Name, "\n\t") {
			out = append(out, fault.Fault{Field: at + ".name", Problem: "goes over a line end or holds a tab", Want: "one line"})
		}
		if j := slices.IndexFunc(f.PressSteps[:i], func(o PressStep) bool { return o.Name == s.Name }); j >= 0 {
			out = append(out, fault.Fault{Field: at + ".name", Given: s.Name, Problem: "is the name of an earlier step", Want: "a name of its own"})
		}
	}
	return out
}

// InFile gives a field of the step's assembly its path in the file.
func (s Step) InFile(field string) string {
	for _, p := range []struct{ name, path string }{{"lower", s.LowerPath}, {"upper", s.UpperPath}, {"latches", s.LatchesPath}} {
		if rest, ok := strings.CutPrefix(field, p.name); ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return p.path + rest
		}
	}
	return field
}

// once leaves out faults that are there already: those of a part that several
// steps share.
func once(faults []fault.Fault) []fault.Fault {
	var out []fault.Fault
	for _, f := range faults {
		if !slices.Contains(out, f) {
			out = append(out, f)
		}
	}
	return out
}
