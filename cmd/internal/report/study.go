package report

import (
	"fmt"
	"math"

	"ramnest/cmd/internal/solve"
	"ramnest/force/method"
)

// A SweepRow is one value of a sweep.
type SweepRow struct {
	Value   string      `json:"value"`
	Steps   []SweepStep `json:"steps,omitzero"`
	Refused string      `json:"refused,omitzero"`

	Calibration string `json:"calibration,omitzero"` // that it was worked out with
}

// A SweepStep is what a value makes of a press step.
type SweepStep struct {
	Name    string  `json:"name"`
	Peak    float64 `json:"nominal_peak_n,omitzero"` // none if a latch locks
	P95     float64 `json:"p95_n,omitzero"`          // none if too many jam
	Over    float64 `json:"share_overstrained"`
	Loose   float64 `json:"share_loose"`
	Jammed  float64 `json:"share_jammed"`
	Method  string  `json:"method"`
	Verdict string  `json:"verdict"`
	units   units
}

// SweepSteps takes what a sweep shows from a solution.
func SweepSteps(s *solve.Solution) []SweepStep {
	var out []SweepStep
	for i := range s.Steps {
		st := &s.Steps[i]
		out = append(out, SweepStep{st.Name, st.Result.Peak, st.Result.P95, st.Result.Overstrained, st.Result.Loose, st.Result.Jammed,
			string(st.Decision.Chosen), string(st.Chosen().Verdict), unitsOf(s.Job)})
	}
	return out
}

// Sweep is the table of a sweep.
func Sweep(path string, rows []SweepRow) string {
	p := &page{}
	p.head("SWEEP  of %s, method without the sizes of tooling", path)
	var u units
	for _, r := range rows {
		for _, s := range r.Steps {
			u = s.units
		}
	}
	table := [][]string{{"value", "peak " + u.Name("N"), "P95 " + u.Name("N"), "overstrained", "loose", "jam", "method"}}
	for _, r := range rows {
		if r.Refused != "" {
			table = append(table, []string{r.Value, "", "", "", "", "", "refused: " + r.Refused})
			continue
		}
		for k, s := range r.Steps {
			value := r.Value
			if k > 0 {
				value = ""
			}
			how := s.Method
			if s.Verdict == string(method.Conditional) {
				how += ", on a condition"
			}
			if len(r.Steps) > 1 {
				how += " (" + s.Name + ")"
			}
			table = append(table, []string{value, unless(s.Peak == 0 && s.Jammed > 0, u.bare(s.Peak, "N"), "locks"),
				unless(s.P95 == 0 && s.Jammed > 0, u.bare(s.P95, "N"), "none"), share(s.Over), share(s.Loose), share(s.Jammed), how})
		}
	}
	p.table("lrrrrrl", table)
	for _, r := range rows {
		if r.Calibration != "" {
			p.line("")
			p.wrap("  CALIBRATION ", "    ", r.Calibration+"; each value is that of the drawing, printed as the calibration says")
			break
		}
	}
	return p.b.String()
}

// share says a share in percent, never a risk as none.
func share(x float64) string {
	switch {
	case x == 0:
		return "0 %"
	case x < 0.001:
		return "< 0.1 %"
	case x < 0.01:
		return fmt.Sprintf("%.2g %%", 100*x) // near the limits of what may jam
	}
	return fmt.Sprintf("%.1f %%", 100*x)
}

// A MethodLine is one method of one step on the line.
type MethodLine struct {
	Step        string  `json:"step"`
	Method      string  `json:"method"`
	Verdict     string  `json:"verdict"`
	Utilisation float64 `json:"utilisation"`
	Governing   string  `json:"governing"`
	Reason      string  `json:"reason"`
	Cycle       float64 `json:"cycle_s,omitzero"`
	Source      string  `json:"cycle_source,omitzero"`
	People      int     `json:"people,omitzero"`
	Cost        float64 `json:"labour_an_assembly,omitzero"`
	Chosen      bool    `json:"chosen,omitzero"`
	Calibration string  `json:"calibration,omitzero"` // that it was worked out with
}

// Methods is the comparison of the methods of every step.
func Methods(s *solve.Solution) []MethodLine {
	var out []MethodLine
	labour := s.Job.Card().LabourHour
	for i := range s.Steps {
		st := &s.Steps[i]
		for k, a := range st.Decision.Options {
			l := MethodLine{Step: st.Name, Method: string(a.Method), Verdict: string(a.Verdict), Utilisation: a.Utilisation, Governing: a.Governing,
				Reason: a.Reason.In(s.Job.Shown()), Chosen: a.Method == st.Decision.Chosen, Calibration: CalibrationWords(s)}
			if a.Verdict != method.Fail {
				c := solve.CycleOf(st, k)
				l.Cycle, l.Source, l.Cost = c.Seconds, c.Source, c.Seconds/3600*labour
				if crew, ok := a.Crew(s.Job.RatePerHour, c.Seconds); ok {
					l.People = crew.People
				}
			}
			out = append(out, l)
		}
	}
	return out
}

// MethodTable compares the methods for a person.
func MethodTable(s *solve.Solution) string {
	p := &page{}
	u := unitsOf(s.Job)
	p.title(s)
	all := Methods(s)
	p.calibration(u, s)
	for i := range s.Steps {
		st := &s.Steps[i]
		p.method(u, st, s.Job.Method != nil)
		p.head("LINE  %s", st.Name)
		rows := [][]string{{"method", "seconds", "people", "labour each", "time from"}}
		for _, l := range all {
			if l.Step != st.Name || l.Verdict == string(method.Fail) {
				continue
			}
			seconds, people, cost := "-", "-", "-"
			if l.Cycle > 0 {
				seconds, cost = number(l.Cycle), fmt.Sprintf("%.3f", l.Cost)
			}
			if l.People > 0 {
				people = fmt.Sprint(l.People)
			}
			rows = append(rows, []string{l.Method, seconds, people, cost, l.Source})
		}
		if len(rows) == 1 {
			p.line("  no method passes")
		} else {
			p.table("lrrrl", rows)
		}
		p.wrap("  ", "  ", payback(s, st, all))
	}
	if s.Job.Card().Invented {
		p.line("")
		p.wrap("  ", "  ", "The labour rate is INVENTED, a round number: no cost until the shop's own card stands in the job.")
	}
	return p.b.String()
}

// payback weighs the tooling against the next simpler method that passes.
func payback(s *solve.Solution, st *solve.Step, all []MethodLine) string {
	if !s.Tooled() {
		return "There is no tooling, so nothing to pay back."
	}
	var chosen, simpler *MethodLine
	for i := range all {
		l := &all[i]
		if l.Step != st.Name {
			continue
		}
		if l.Chosen {
			chosen = l
			break
		}
		if l.Verdict != string(method.Fail) {
			simpler = l
		}
	}
	switch {
	case chosen == nil || simpler == nil:
		return "No simpler method passes: without the tooling there is no assembly."
	case s.Quote == nil:
		return "The tooling is not priced: " + s.Unpriced
	case chosen.Cost == 0 || simpler.Cost == 0:
		return "The time of one of the two methods is not known: no break-even."
	case simpler.Cost <= chosen.Cost:
		return fmt.Sprintf("Against %s the tooling saves no time: it pays by force that a person can give, not by seconds.", simpler.Method)
	}
	return fmt.Sprintf("Against %s the tooling has paid for itself after %.0f assemblies.", simpler.Method,
		math.Ceil(s.Quote.Total/(simpler.Cost-chosen.Cost)))
}

// A BenchList is a bench, with the generic ones where it names none.
type BenchList struct {
	Presses []method.Press  `json:"presses"`
	Mallets []method.Mallet `json:"mallets"`
	Vises   []method.Vise   `json:"vises"`
	Generic []string        `json:"generic"` // which of the lists are generic
}

// BenchOf fills a bench with the generic classes.
func BenchOf(b method.Bench) BenchList {
	out := BenchList{Presses: b.Presses, Mallets: b.Mallets, Vises: b.Vises, Generic: []string{}}
	if len(out.Presses) == 0 {
		out.Presses, out.Generic = method.GenericPresses(), append(out.Generic, "presses")
	}
	if len(out.Mallets) == 0 {
		out.Mallets, out.Generic = method.GenericMallets(), append(out.Generic, "mallets")
	}
	if len(out.Vises) == 0 {
		out.Vises, out.Generic = []method.Vise{method.GenericVise()}, append(out.Generic, "vises")
	}
	return out
}

// Bench lists a bench for a person.
func Bench(b method.Bench) string {
	p := &page{}
	l := BenchOf(b)
	known := func(v float64, format string) string {
		if v == 0 {
			return "-"
		}
		return fmt.Sprintf(format, v)
	}
	p.head("PRESSES")
	rows := [][]string{{"name", "rated N", "ratio", "daylight mm", "throat mm", "ram mm", "most N"}}
	for _, q := range l.Presses {
		rows = append(rows, []string{q.Name, known(q.Rated, "%.0f"), known(q.Ratio, "%.3g"), known(q.DaylightMax, "%.0f"),
			known(q.Throat, "%.0f"), known(q.RamSquare, "%.3g"), known(method.LeverMost(q), "%.0f")})
	}
	p.table("lrrrrrr", rows)
	p.wrap("  ", "  ", "Most: what one person who leans on the lever can give, whatever the plate says.")
	p.head("MALLETS")
	rows = [][]string{{"name", "head kg", "speed m/s"}}
	for _, m := range l.Mallets {
		rows = append(rows, []string{m.Name, known(m.Mass, "%.2f"), known(m.Speed, "%.1f")})
	}
	p.table("lrr", rows)
	p.head("VISES")
	rows = [][]string{{"name", "jaws mm", "opening mm", "depth mm"}}
	for _, v := range l.Vises {
		rows = append(rows, []string{v.Name, known(v.JawWidth, "%.0f"), known(v.Opening, "%.0f"), known(v.Depth, "%.0f")})
	}
	p.table("lrrr", rows)
	if len(l.Generic) > 0 {
		p.line("")
		p.wrap("  ", "  ", fmt.Sprintf("Generic (common practice, mostly no source): %s. Measure your own, and write them into the job or a bench file.", joined(l.Generic)))
	}
	return p.b.String()
}

func joined(names []string) string {
	out := ""
	for i, n := range names {
		if i > 0 {
			out += ", "
		}
		out += n
	}
	return out
}
