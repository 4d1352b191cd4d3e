package audit

import (
	"regexp"
	"strconv"
	"strings"

	"ramnest/cmd/internal/solve"
	"ramnest/force/unit"
)

// figure finds a figure with its unit behind a name, as the terminal shows it: in columns,
// which no sentence and no name of a step has.
func figure(name string) *regexp.Regexp {
	return regexp.MustCompile(`(?m)` + regexp.QuoteMeta(name) + `  +(-?[0-9.]+(?:e[-+]?[0-9]+)?) (N|lbf|mm|in)\b`)
}

var (
	printedPeak   = figure("nominal peak")
	printedLift   = figure("at a lift of")
	printedP95    = figure("P95, for design")
	printedWorst  = figure("worst case")
	printedStack  = figure("all at one lift")
	printedStroke = figure("stroke")
	printedMethod = regexp.MustCompile(`(?m)^METHOD +(none|[a-z ]+):`)
)

// Size of a unit in the units of the house.
var units = map[string]float64{"N": 1, "lbf": unit.PoundForce, "mm": 1, "in": unit.Inch}

// Terminal holds a text that is about to be printed against the solution: job, mark, and
// of each step force, travel and method.
func Terminal(s *solve.Solution, text string) error {
	f := &finding{about: "terminal"}
	const law = "the terminal says what was worked out"
	// Lines are wrapped, and words of other letters written with those of the terminal.
	bare := squeezed(text)
	if mark := squeezed(s.Job.Number + s.Job.Revision); plain(mark) && !strings.HasPrefix(bare, mark+":") {
		f.say(law, "it does not begin with %q", strings.TrimSpace(s.Job.Number+" "+s.Job.Revision))
	}
	if at := strings.Index(bare, ",engraved\""); at >= 0 && s.Tooled() {
		mark := squeezed(s.Engraved())
		if !plain(mark) {
			mark = s.Fingerprint
		}
		end := strings.Index(bare[at:], mark+"\"")
		if end < 0 || end > len(",engraved\"")+2*len(squeezed(s.Engraved())) {
			f.say(law, "the tooling carries %q, and it is not what is printed", s.Engraved())
		}
	}
	_, text, _ = strings.Cut(text, "\n") // a job may be called FORCE or METHOD
	forces := blocks(text, "FORCE ")
	if len(forces) > 0 && len(forces) != len(s.Steps) {
		f.say(law, "forces of %d steps there, %d worked out", len(forces), len(s.Steps))
		return fault(f.all)
	}
	for i, block := range forces {
		r := s.Steps[i].Result
		of := func(what string, at *regexp.Regexp, here float64, known bool) {
			f.printed(law, what+" of "+s.Steps[i].Name, at, block, here, known)
		}
		of("nominal peak", printedPeak, r.Peak, !r.Locks)
		of("the lift of the peak", printedLift, r.PeakLift, !r.Locks)
		of("P95", printedP95, r.P95, !r.NoP95)
		of("worst case", printedWorst, r.Worst, !r.WorstJams)
		of("all at one lift", printedStack, r.PeakStack, !r.Locks)
		of("stroke", printedStroke, r.Stroke, true)
	}
	for i, found := range printedMethod.FindAllStringSubmatch(text, -1) {
		if i >= len(s.Steps) {
			f.say(law, "more methods there than steps")
			break
		}
		want := s.Steps[i].Decision.Chosen.Title()
		if s.Steps[i].Chosen().Method == "none" {
			want = "none"
		}
		equal(f, law, "method of "+s.Steps[i].Name, found[1], want)
	}
	return fault(f.all)
}

// printed holds one figure of a block against the one worked out: three digits of it.
func (f *finding) printed(law, what string, at *regexp.Regexp, block string, here float64, known bool) {
	found := at.FindStringSubmatch(block)
	switch {
	case !known && found != nil:
		f.say(law, "%s is printed as %s %s, and there is none", what, found[1], found[2])
	case known && found == nil:
		f.say(law, "%s is not printed, and it is %.6g", what, here)
	case known:
		v, err := strconv.ParseFloat(found[1], 64)
		if err != nil || !close(v*units[found[2]], here, 0.0052) {
			f.say(law, "%s is printed as %s %s, and it is %.6g %s", what, found[1], found[2], here/units[found[2]], found[2])
		}
	}
}

// blocks cuts a text before each line that begins with a word.
func blocks(text, word string) []string {
	var out []string
	for _, line := range strings.SplitAfter(text, "\n") {
		switch {
		case strings.HasPrefix(line, word):
			out = append(out, line)
		case len(out) > 0:
			out[len(out)-1] += line
		}
	}
	return out
}

// squeezed is a text without spaces and breaks.
func squeezed(text string) string { return strings.Join(strings.Fields(text), "") }

// plain says whether a text is printed as it is.
func plain(text string) bool {
	for _, c := range text {
		if c <= ' ' || c > '~' || c == '"' || c == '\\' {
			return false
		}
	}
	return true
}
