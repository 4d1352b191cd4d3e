package workinstructions

import (
	"fmt"
	"math"
	"strings"

	"ramnest/force/method"
)

// setUp gives what has to be made ready before the first part of a step, one
// line a check.
func setUp(f figures, sheet Sheet, s Step, facts Facts) []string {
	out := []string{mark(sheet, s)}
	out = append(out, "Look over the tooling: no crack, no worn or bent pad, post or stop. Damaged tooling goes out of use.")
	switch facts.Method {
	case method.ByPress:
		out = append(out,
			bolted(s)+" Its ram is clean, and its lever stays up or is secured. Nothing lengthens the lever.",
			fmt.Sprintf("Set %s flat on the press table; it bridges any slot of the table, and does not rock. Fasten it with a screw M6 through each foot.", the(s.Nest)))
	case method.ByMallet:
		out = append(out,
			"The vise is bolted through the bench, over a leg.",
			fmt.Sprintf("Set %s into the vise: the flange rests on both jaws, the tongue is between them. Tighten by hand only.", the(s.Nest)))
	default:
		out = append(out, fmt.Sprintf("Set %s on a firm table, at a height at which you push with straight wrists. It does not slide or rock.", the(s.Nest)))
	}
	out = append(out, over(f, s, facts.Method))
	if a := s.chosen(); a != nil && facts.Method == method.ByPress {
		if text := a.Placement.Text(); text != "" {
			out = append(out, sentence(text))
		}
	}
	if s.Facts.AnvilHeld {
		out = append(out, fmt.Sprintf("Fix %s on the ram, and tug at it: it does not come off.", the(s.Anvil)))
	}
	if s.Anvil != "" {
		out = append(out, fmt.Sprintf("Dead stop: without parts, bring %s down on %s by hand. It stands on every stop; a feeler gauge passes under none.", the(s.Anvil), the(s.Nest)))
	}
	if facts.Method == method.ByPress {
		out = append(out, "First stroke without parts: the ram runs freely, meets the anvil square, and stops dead at the stop.")
	}
	if s.Anvil != "" {
		out = append(out, "First piece: if the anvil stands on its dead stops while the parts are still apart, the stops are faced, all alike, until the parts meet. If the parts are hard on each other before, shims go under the anvil at each stop. Only the person in charge does that.")
	}
	return append(out, "First piece: do the check on the record page before you go on.")
}

// bolted says how the press stands.
func bolted(s Step) string {
	if a := s.chosen(); a != nil && a.Press != nil && a.Press.NotBolted {
		return "The press is not bolted down, as the job says: it stands on a bench that cannot tip, and does not walk."
	}
	return "The press is bolted to a bench that cannot tip."
}

// sentence begins with a capital and ends with a full stop.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	s = strings.ToUpper(s[:1]) + s[1:]
	if !strings.HasSuffix(s, ".") {
		s += "."
	}
	return s
}

// mark says how to know that this is the right tooling.
func mark(sheet Sheet, s Step) string {
	tools := ""
	for _, t := range sheet.Tooling {
		if t.Mark == "" || t.Name != s.Nest && t.Name != s.Anvil {
			continue
		}
		if tools != "" {
			tools += "; "
		}
		tools += fmt.Sprintf("%s: %s", t.Name, strong(t.Mark))
	}
	if tools == "" {
		return fmt.Sprintf("The tooling is that of job %s, revision %s.", strong(sheet.Job), strong(sheet.Revision))
	}
	return fmt.Sprintf("Compare the engraving. %s. If it differs, stop: it is the tooling of another job or revision.", tools)
}

// over says where the force goes in.
func over(f figures, s Step, m method.Method) string {
	what := map[method.Method]string{method.ByPress: "Ram", method.ByMallet: "Blow", method.ByHand: "Push"}[m]
	if math.Hypot(s.Thrust.X, s.Thrust.Y) < 0.05 {
		return what + " over the middle between the dead stops: that is the thrust mark."
	}
	where := ""
	if s.Pictures.Plan.Image != nil {
		where = ", on the plan x to the right and y up"
	}
	return fmt.Sprintf("%s over the thrust mark: x %s, y %s from the middle between the dead stops%s.", what, strong(f.offset(s.Thrust.X)), strong(f.offset(s.Thrust.Y)), where)
}
