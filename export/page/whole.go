package page

import (
	"regexp"
	"strings"
)

// A number and its unit stay on one line, wherever the text comes from: an operator who
// reads "25" at the end of a line has read no length. Units are those of our rooms and the
// inch ones; "in" is a word too, and then holds to its number to no harm.
var unitBehind = regexp.MustCompile(`([0-9]) (mm²|mm2|mm|µm|m/s|m|kg|g|kN|N|lbf|lb|psi|in|J|mJ|MPa|kPa|ms|s|min|h|°C|°|%|×)([^\pL]|$)`)

// whole puts spaces that do not break between numbers and units: "5 N mm" is one.
func whole(s string) string {
	if !strings.ContainsAny(s, "0123456789") {
		return s
	}
	s = unitBehind.ReplaceAllString(s, "$1\u00a0$2$3")
	return strings.NewReplacer("\u00a0N mm", "\u00a0N\u00a0mm", "\u00a0lbf in", "\u00a0lbf\u00a0in", "\u00a0\u00d7 ",
		"\u00a0\u00d7\u00a0").Replace(s)
}
