package report

import (
	"fmt"

	"ramnest/force"
)

// band is the forces of the draws as they are printed.
type band struct{ p5, p50, p95, error, worst string }

// bandOf writes the forces of the draws. One that does not exist, because so many
// assemblies jam, is said to jam and never shown as a figure.
func (u units) bandOf(r force.Result) band {
	some := func(v float64) string { return unless(v == 0 && r.Jammed > 0, u.say(v, "N"), "jams") }
	b := band{p5: some(r.P5), p50: some(r.P50), p95: u.say(r.P95, "N"), worst: unless(r.WorstJams, u.say(r.Worst, "N"), "jams")}
	switch {
	case r.NoP95:
		b.p95 = "none: too many jam"
	case r.P95StdErr > 0 || r.Jammed == 0:
		e, _ := u.In(r.P95StdErr, "N")
		b.error = fmt.Sprintf(", +- %.2g", e)
	}
	return b
}

// design writes the design force, or that there is none.
func (u units) design(r force.Result) string {
	return unless(r.NoP95, u.say(r.Design, "N"), "none: too many jam")
}

// unless gives a text, or another one in its place.
func unless(is bool, text, other string) string {
	if is {
		return other
	}
	return text
}
