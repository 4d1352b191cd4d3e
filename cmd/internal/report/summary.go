package report

import (
	"fmt"
	"math"
	"strings"

	"ramnest/cmd/internal/solve"
	"ramnest/force"
	"ramnest/force/method"
	"ramnest/force/unit"
)

// Summary gives the text for the terminal: forces, method, tooling, cautions, files.
func Summary(s *solve.Solution, folder string, files []string) string {
	p := &page{}
	u := unitsOf(s.Job)
	p.title(s)
	p.calibration(u, s)
	for i := range s.Steps {
		p.forces(u, &s.Steps[i])
		p.method(u, &s.Steps[i], s.Job.Method != nil)
	}
	p.tooling(u, s)
	p.cautions(u, s)
	if len(files) > 0 {
		p.head("FILES in %s", folder)
		for _, f := range files {
			p.line("  %s", f)
		}
	}
	return p.b.String()
}

// Forces gives the forces alone.
func Forces(s *solve.Solution) string {
	p := &page{}
	u := unitsOf(s.Job)
	p.title(s)
	p.calibration(u, s)
	for i := range s.Steps {
		p.forces(u, &s.Steps[i])
		p.curve(u, &s.Steps[i])
		p.spread(&s.Steps[i])
	}
	p.cautions(u, s)
	return p.b.String()
}

// Check gives what a valid job would come to: the defaults taken, the cautions, the
// outcome.
func Check(s *solve.Solution, files []string) string {
	p := &page{}
	u := unitsOf(s.Job)
	p.title(s)
	p.calibration(u, s)
	p.head("DEFAULTS taken, because the file does not state them")
	for _, d := range s.Defaults {
		p.wrap("  - ", "    ", d.About+": "+d.Text.In(u.System))
	}
	if len(s.Defaults) == 0 {
		p.line("  none")
	}
	p.cautions(u, s)
	p.head("OUTCOME")
	for i := range s.Steps {
		st := &s.Steps[i]
		p.wrap("  ", "    ", st.Name+": "+st.Decision.Reason.In(u.System))
	}
	if len(files) > 0 {
		p.head("MAKE would write")
		for _, f := range files {
			p.line("  %s", f)
		}
	}
	return p.b.String()
}

func (p *page) title(s *solve.Solution) {
	j := s.Job
	p.wrap("", "  ", strings.Join(strings.Fields(fmt.Sprintf("%s: %s", j.Mark(), j.Title)), " "))
	about := []string{j.Date}
	if j.Author != "" {
		about = append(about, j.Author)
	}
	if j.Quantity > 0 {
		about = append(about, fmt.Sprintf("%d assemblies", j.Quantity))
	}
	if j.RatePerHour > 0 {
		about = append(about, number(j.RatePerHour)+" an hour")
	}
	if j.HoursPerShift > 0 {
		about = append(about, number(j.HoursPerShift)+" h a day")
	}
	p.wrap("", "  ", strings.Join(about, ", "))
}

// forces says what a step takes.
func (p *page) forces(u units, st *solve.Step) {
	r := st.Result
	p.head("FORCE  %s", st.Name)
	pair := func(name, value, other, second string) { p.line("  %-18s%-20s%-20s%s", name, value, other, second) }
	b := u.bandOf(r)
	nominal := func(v float64, k unit.Kind) string { return unless(r.Locks, u.say(v, k), "none: it locks") }
	pair("nominal peak", nominal(r.Peak, "N"), "at a lift of", unless(r.Locks, u.say(r.PeakLift, "mm"), "-"))
	pair("P5, P50", b.p5+", "+b.p50, "P95, for design", b.p95+b.error)
	pair("worst case", b.worst, "all at one lift", unless(r.Locks, u.say(r.PeakStack, "N"), "-"))
	pair("work to the seat", nominal(r.Work, "mJ"), "stroke", u.say(r.Stroke, "mm"))
	pair("at the seat", nominal(r.SeatForce, "N"), "humps to be felt", unless(r.Locks, fmt.Sprint(r.Humps), "-"))
	wander := ""
	if r.ThrustWander >= 0.005 {
		wander = fmt.Sprintf(", wanders %s along the stroke", u.say(r.ThrustWander, "mm"))
	}
	if r.Locks {
		wander = ", the mean place of the latches"
	}
	p.line("  %-18sx %s, y %s%s", "thrust line", u.bare(r.Thrust.X, "mm"), u.say(r.Thrust.Y, "mm"), wander)
	tilt := r.TiltMoment
	if math.Abs(tilt) < 1e-6*r.Peak { // of a thrust line in the middle
		tilt = 0
	}
	pair("tilt moment", unless(r.Locks, u.say(tilt, "N mm"), "-"), "loose", share(r.Loose)+" of assemblies")
	pair("strained too far", share(r.Overstrained), "jammed", share(r.Jammed))
	p.contact(u, st)
	if r.Tilted > 0 {
		p.wrap("  ", "  ", fmt.Sprintf("tilted in by hand, one edge first and without the anvil: about %s of both hands, up to %s at the far edge. Own model, no published figure; beside the design force, never in its place", u.say(r.Tilted, "N"), u.say(r.TiltedFar, "N")))
	}
	f := u.Name("N")
	rows := [][]string{{"latch", "kind", "places", "each " + f, "all " + f, "strain of limit", "holds " + f}}
	for _, q := range r.Latches {
		rows = append(rows, []string{q.ID, strings.ReplaceAll(q.Kind, "_", " "), fmt.Sprint(q.Count),
			unless(q.Locks, u.bare(q.PeakEach, "N"), "locks"), unless(q.Locks, u.bare(q.PeakAll, "N"), "locks"),
			fmt.Sprintf("%s of %s %%", number(100*q.Strain), number(100*q.Permitted)), u.holds(q)})
	}
	p.line("")
	p.latches(rows)
	p.hold(u, r)
}

// holds is the force that pulls one joint apart, from the end that holds least to the
// one that holds most. A joint that locks at one of them says so there.
func (u units) holds(q force.LatchResult) string {
	if q.Locks {
		return "-" // it never goes in
	}
	least, most := u.bare(q.SeparationLow, "N"), u.bare(q.SeparationHigh, "N")
	if q.SeparationHigh == 0 {
		most = "locks"
		if q.SelfLocking {
			return most
		}
	}
	if least == most {
		return least
	}
	if len(least) > 4 {
		least = unit.Force.Of(q.SeparationLow).To(2).Number(u.System, nil) // the column is narrow
	}
	return least + "-" + most
}

// latches adds the table of latches; an id too long for it stands on a line of its
// own.
func (p *page) latches(rows [][]string) {
	const longest = 14
	for i, r := range rows {
		if i > 0 && len(ascii(r[0])) > longest {
			p.wrap("  ", "  ", r[0])
			r[0] = ""
		}
		p.line("  %-*s %-10s %6s %9s %9s %15s %9s", longest, r[0], r[1], r[2], r[3], r[4], r[5], r[6])
	}
}

// spread says what drives the spread of a step.
func (p *page) spread(st *solve.Step) {
	if len(st.Result.Spread) == 0 {
		return
	}
	p.line("")
	var say []string
	for _, s := range st.Result.Spread[:min(len(st.Result.Spread), 5)] {
		if s.Share >= 0.005 {
			say = append(say, fmt.Sprintf("%s %.0f %%", s.Input, 100*s.Share))
		}
	}
	if len(say) > 0 {
		p.wrap("  the spread comes from ", "  ", strings.Join(say, ", "))
	}
}

// method says how a step is pushed, and why.
func (p *page) method(u units, st *solve.Step, wanted bool) {
	d := st.Decision
	c := st.Chosen()
	word := map[method.Verdict]string{method.Pass: "passes", method.Conditional: "ONLY IF A COMPETENT PERSON AGREES",
		method.Fail: "FAILS, TAKEN BY OVERRIDE"}[c.Verdict]
	switch {
	case d.Chosen == method.None && wanted:
		p.head("METHOD  none: the one that the job insists on is not good enough, so there is no tooling")
	case d.Chosen == method.None:
		p.head("METHOD  none: no manual method is good enough, so there is no tooling")
	default:
		p.head("METHOD  %s: %s", d.Chosen.Title(), word)
	}
	rows := [][]string{{"", "verdict", "demand", "capacity", "used", "nearest limit, and how"}}
	for _, a := range d.Options {
		demand, capacity := "", ""
		for _, l := range a.Limits {
			if l.Name == a.Governing && l.Utilisation == a.Utilisation {
				demand, capacity = u.say(l.Demand, l.Unit), u.say(l.Capacity, l.Unit)
				if l.Capacity == 0 && l.Unit == "" {
					demand, capacity = "yes", "no"
				}
				break
			}
		}
		used := number(100*a.Utilisation) + " %"
		if a.Utilisation >= method.Beyond {
			used = "beyond"
		}
		rows = append(rows, []string{string(a.Method), string(a.Verdict), demand, capacity, used, a.Governing + "; " + a.Action.In(u.System)})
	}
	p.table("llrrrl", rows)
	p.line("")
	if d.Chosen != method.None || wanted {
		p.wrap("  ", "  ", d.Reason.In(u.System))
	} // else the table says it
	if !d.Tipping.Empty() {
		p.wrap("  ", "  ", d.Tipping.In(u.System))
	}
	for _, text := range []string{d.Next.In(u.System), d.RateMatters} {
		if text != "" {
			p.wrap("  ", "  ", text)
		}
	}
	for _, a := range d.Advice {
		p.wrap("  - ", "    ", a.In(u.System))
	}
}

// tooling lists the pieces.
func (p *page) tooling(u units, s *solve.Solution) {
	if !s.Tooled() {
		return
	}
	p.head("TOOLING  in %s by %s, engraved %q", s.Material.Name, s.Material.Process, s.Engraved())
	l := u.Name("mm")
	kg := u.Name("kg")
	rows := [][]string{{"piece", "size " + l, kg, "margin", "least margin is that of"}}
	for _, q := range s.Pieces() {
		factor, name := leastMargin(s, q.Name)
		rows = append(rows, []string{q.Name, u.size(q.Size), u.bare(q.Mass, "kg"), factor, name})
	}
	p.table("llrrl", rows)
	p.line("  A margin is capacity over load, the safety factor already taken off.")
	p.line("")
	if s.Quote == nil {
		p.wrap("  quote: ", "    ", "NOT PRICED, and no quote is written: "+s.Unpriced)
		return
	}
	p.wrap("  quote: ", "    ", fmt.Sprintf("%.2f %s; %s", s.Quote.Total, s.Quote.Currency, s.Quote.Note))
}

// leastMargin gives the least margin of a piece, and what it is.
func leastMargin(s *solve.Solution, piece string) (factor, name string) {
	least := 0.0
	for _, m := range s.Tooling.Margins {
		if f := m.Factor(); m.Piece == piece && f > 0 && (least == 0 || f < least) {
			least, name = f, m.Name
		}
	}
	if least == 0 {
		return "-", "nothing loads it"
	}
	return fmt.Sprintf("%.2f", least), name
}

// cautions lists the warnings, each once.
func (p *page) cautions(u units, s *solve.Solution) {
	all := warnings(s)
	if len(all) == 0 {
		return
	}
	p.head("WARNINGS")
	for _, w := range all {
		p.wrap("  - ", "    ", w.said())
	}
	p.line("  What a number means, and what to do: ramnest explain W%d", all[0].Number)
}
