package workinstructions

import (
	"fmt"
	"strings"

	"ramnest/force/method"
)

// A criterion is one thing that a good assembly fulfils.
type criterion struct {
	what  string // "Gap between rim and housing"
	limit string // "0.05 mm to 0.25 mm"
	how   string // with what, or how to look
}

// acceptance gives what a good assembly fulfils, with numeric limits where
// there is a number.
func acceptance(f figures, s Step) []criterion {
	gauge := s.Seat.Gauge
	if gauge == "" {
		gauge = "feeler gauge"
	}
	out := []criterion{{s.Seat.what() + " " + s.Seat.Where, f.gap(s.Seat), gauge}}
	if s.Anvil != "" {
		if s.Facts.Past > 0 {
			out = append(out, criterion{"Dead stop", "anvil on every stop", "look, before it is taken off"})
		} else {
			out = append(out, criterion{"Dead stop", "anvil on every stop, or parts hard on each other before", "look, before it is taken off"})
		}
	}
	if n := s.Force.Humps; n > 0 && s.Decision.Chosen != method.ByMallet {
		out = append(out, criterion{"Humps felt", count(n, "hump", "humps"), "feel and listen"})
	}
	if f95 := s.Force.P95; f95 > 0 && s.Decision.Chosen == method.ByPress {
		out = append(out, criterion{"Highest force, if the press has a gauge", "at most " + f.force(f95), "read the gauge; above, stop and tell the person in charge: that alone is no reject"})
	}
	var ids []string
	total := 0
	for _, l := range s.Latches {
		ids = append(ids, fmt.Sprintf("%s%s×%s%d", l.ID, nbsp, nbsp, l.Count))
		total += l.Count
	}
	if total > 0 {
		out = append(out, criterion{"Latches: " + strings.Join(ids, ", "), fmt.Sprintf("all %d home", total), "look at each: no white line, no crack, no burr"})
	}
	if s.Pull > 0 {
		out = append(out, criterion{"Pull straight by hand", f.force(s.Pull) + " held", "spring balance; nothing moves or opens"})
	}
	return out
}

// reject says what to do with what is not good.
func reject(s Step, facts Facts) []string {
	out := []string{
		"Outside one limit, it is a reject. Mark it, and set it aside where nobody takes it for a good one.",
		"Do not press it again, do not hammer on it, and do not help with a tool.",
	}
	if facts.Permanent {
		out = append(out, "This joint is permanent: do not open it.")
	}
	return append(out, "Write it into the record, and tell the person in charge. Two rejects running: stop the work.")
}
