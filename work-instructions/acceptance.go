package workinstructions

import (
	"fmt"
	"strconv"
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
	out := []criterion{{f.what(s.Seat) + " " + f.where(s.Seat), f.gap(s.Seat), f.gauge(s.Seat)}}
	if s.Anvil != "" {
		limit := f.say("acc.stop.or")
		if s.Facts.Past > 0 {
			limit = f.say("acc.stop.past")
		}
		out = append(out, criterion{f.say("acc.stop"), limit, f.say("acc.stop.how")})
	}
	if n := s.Force.Humps; n > 0 && s.Decision.Chosen != method.ByMallet {
		out = append(out, criterion{f.say("acc.humps"), f.count(n, "hump"), f.say("acc.humps.how")})
	}
	if f95 := s.Force.P95; f95 > 0 && s.Decision.Chosen == method.ByPress {
		out = append(out, criterion{f.say("acc.force"), f.say("gap.most", f.force(f95)), f.say("acc.force.how")})
	}
	var ids []string
	total := 0
	for _, l := range s.Latches {
		ids = append(ids, fmt.Sprintf("%s%s×%s%d", l.ID, nbsp, nbsp, l.Count))
		total += l.Count
	}
	if total > 0 {
		out = append(out, criterion{f.say("acc.latches", strings.Join(ids, ", ")), f.say("acc.latches.all", strconv.Itoa(total)), f.say("acc.latches.how")})
	}
	if s.Pull > 0 {
		out = append(out, criterion{f.say("acc.pull"), f.say("acc.pull.held", f.force(s.Pull)), f.say("acc.pull.how")})
	}
	return out
}

// reject says what to do with what is not good.
func reject(f figures, facts Facts) []string {
	out := []string{f.say("reject.mark"), f.say("reject.no more")}
	if facts.Permanent {
		out = append(out, f.say("reject.permanent"))
	}
	return append(out, f.say("reject.tell"))
}
