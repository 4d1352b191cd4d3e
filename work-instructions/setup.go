package workinstructions

import (
	"math"
	"slices"
	"strconv"

	"ramnest/force/method"
)

// setUp gives what has to be made ready before the first part of a step, one
// line a check.
func setUp(f figures, sheet Sheet, s Step, facts Facts) []string {
	out := []string{f.mark(sheet, s), f.say("setup.look")}
	switch facts.Method {
	case method.ByPress:
		out = append(out, f.bolted(s)+" "+f.say("setup.clean"), f.say("setup.press", f.nest(s), f.screw()))
	case method.ByMallet:
		out = append(out, f.say("setup.vise"), f.say("setup.mallet", f.nest(s)))
	default:
		out = append(out, f.say("setup.hand", f.nest(s)))
	}
	out = append(out, f.pinned(s.Pin)...)
	out = append(out, f.over(s, facts.Method))
	if a := s.chosen(); a != nil && a.Placement != nil && facts.Method == method.ByPress {
		out = append(out, f.placed(*a.Placement))
	}
	if s.Facts.AnvilHeld {
		out = append(out, f.say("setup.held", f.anvil(s)))
	}
	if s.Anvil != "" {
		out = append(out, f.say("setup.stop", f.anvil(s), f.nest(s)))
	}
	if facts.Method == method.ByPress {
		out = append(out, f.say("setup.stroke"))
	}
	if s.Anvil != "" {
		out = append(out, f.say("setup.trim"))
	}
	return append(out, f.say("setup.first"))
}

// pinned says where the pin of a step stands.
func (f figures) pinned(p Pin) []string {
	if p.Hole == 0 {
		return nil
	}
	return []string{f.say("setup.pin", strconv.Itoa(p.Hole))}
}

// bolted says how the press stands.
func (f figures) bolted(s Step) string {
	if a := s.chosen(); a != nil && a.Press != nil && a.Press.NotBolted {
		return f.say("setup.not bolted")
	}
	return f.say("setup.bolted")
}

// placed says where the nest goes on the table of the press.
func (f figures) placed(p method.Placement) string {
	var by []string
	add := func(x float64, plus, minus string) {
		switch {
		case x >= 0.05:
			by = append(by, f.say(plus, f.length(x)))
		case x <= -0.05:
			by = append(by, f.say(minus, f.length(-x)))
		}
	}
	add(p.Back, "setup.back", "setup.front")
	add(p.Right, "setup.right", "setup.left")
	switch len(by) {
	case 0:
		return f.say("setup.column.under", p.Column)
	case 1:
		return f.say("setup.column", p.Column, by[0])
	}
	return f.say("setup.column", p.Column, f.say("setup.and", by...))
}

// mark says how to know that this is the right tooling.
func (f figures) mark(sheet Sheet, s Step) string {
	tools := ""
	for _, t := range sheet.Tooling {
		if t.Mark == "" || !slices.Contains([]string{s.Nest, s.Anvil}, t.Name) {
			continue
		}
		if tools != "" {
			tools += "; "
		}
		tools += f.say("method.how", f.tool(t.Name), strong(t.Mark))
	}
	if tools == "" {
		return f.say("setup.tooling of", strong(sheet.Job), strong(sheet.Revision))
	}
	return f.say("setup.engraving", capital(tools))
}

// over says where the force goes in.
func (f figures) over(s Step, m method.Method) string {
	what := f.say("setup.over.push")
	switch m {
	case method.ByPress:
		what = f.say("setup.over.ram")
	case method.ByMallet:
		what = f.say("setup.over.blow")
	}
	if math.Hypot(s.Thrust.X, s.Thrust.Y) < 0.05 {
		return f.say("setup.over.middle", what)
	}
	key := "setup.over"
	if s.Pictures.Plan.Image != nil {
		key = "setup.over.plan"
	}
	return f.say(key, what, strong(f.offset(s.Thrust.X)), strong(f.offset(s.Thrust.Y)))
}
