package audit

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"ramnest/cmd/internal/batch"
	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export/drawing"
	"ramnest/export/preview"
	"ramnest/fixture"
	"ramnest/force/method"
	"ramnest/force/warning"
	workinstructions "ramnest/work-instructions"
)

// digits is how exactly a report is written: nine digits.
const digits = 1e-8

// said is what the report's bytes say, by its keys.
type said struct {
	Outcome string `json:"outcome"`
	Job     struct {
		Number      string  `json:"number"`
		Revision    string  `json:"revision"`
		Mark        string  `json:"mark"`
		Fingerprint string  `json:"fingerprint"`
		Rate        float64 `json:"rate_per_hour"`
	} `json:"job"`
	Steps []struct {
		Name       string    `json:"name"`
		Force      saidForce `json:"force"`
		Acceptance struct {
			Nominal float64 `json:"seat_nominal_mm"`
			Travel  float64 `json:"lift_accepted_mm"`
		} `json:"acceptance"`
		Method struct {
			Chosen     string `json:"chosen"`
			Overridden bool   `json:"overridden"`
			Options    []struct {
				Method  string `json:"method"`
				Verdict string `json:"verdict"`
				Limits  []struct {
					Name     string  `json:"name"`
					Demand   float64 `json:"demand"`
					Capacity float64 `json:"capacity"`
					OK       bool    `json:"ok"`
				} `json:"limits"`
			} `json:"options"`
		} `json:"method"`
	} `json:"steps"`
	Tooling *struct {
		Nests, Anvils []struct {
			Name string     `json:"name"`
			Mark string     `json:"mark"`
			Size [3]float64 `json:"size_mm"`
		}
	} `json:"tooling"`
	Warnings []struct {
		Number int `json:"number"`
	} `json:"warnings"`
	Files []string `json:"files"`
}

// saidForce is what a report says of the forces of a step.
type saidForce struct {
	Peak      float64      `json:"nominal_peak_n"`
	PeakLift  float64      `json:"peak_lift_mm"`
	PeakStack float64      `json:"peak_if_all_at_one_lift_n"`
	Design    float64      `json:"design_n"`
	P5        float64      `json:"p5_n"`
	P50       float64      `json:"p50_n"`
	P95       float64      `json:"p95_n"`
	Worst     float64      `json:"worst_n"`
	Work      float64      `json:"work_mj"`
	Seat      float64      `json:"at_seat_n"`
	Stroke    float64      `json:"stroke_mm"`
	Humps     int          `json:"humps"`
	Jammed    float64      `json:"share_jammed"`
	Loose     float64      `json:"share_loose"`
	Over      float64      `json:"share_overstrained"`
	NoP95     bool         `json:"no_p95"`
	Curve     [][2]float64 `json:"curve_lift_mm_force_n"`
}

// Papers holds all that make writes against the solution that it was drawn from: report,
// sheet, and the pieces named in both.
func Papers(s *solve.Solution, set deliver.Set) error {
	r := &finding{about: "report"}
	var paper said
	if err := json.Unmarshal(set.Report, &paper); err != nil {
		return fmt.Errorf("read the report again: %w", err)
	}
	r.report(s, paper)
	if !slices.Equal(paper.Files, set.Names) {
		r.say("the report names what is written", "%q there, %q written", paper.Files, set.Names)
	}
	w := &finding{about: "work instruction"}
	switch {
	case set.Sheet != nil:
		w.sheet(s, *set.Sheet)
	case s.Tooled():
		w.say("tooling comes with a work instruction", "there is none")
	}
	return fault(r.all, w.all)
}

// report holds a report against the solution.
func (f *finding) report(s *solve.Solution, p said) {
	const law = "the report says what was worked out"
	equal(f, law, "job", p.Job.Number, s.Job.Number)
	equal(f, law, "revision", p.Job.Revision, s.Job.Revision)
	equal(f, law, "fingerprint", p.Job.Fingerprint, s.Fingerprint)
	f.same(law, "rate", p.Job.Rate, s.Job.RatePerHour, digits)
	equal(f, law, "tooling", p.Outcome == "tooling", s.Tooled())
	if len(p.Steps) != len(s.Steps) {
		f.say(law, "%d steps there, %d worked out", len(p.Steps), len(s.Steps))
		return
	}
	for i, q := range p.Steps {
		st := &s.Steps[i]
		equal(f, law, "the name of a step", q.Name, st.Name)
		f.forceSaid(law, st, q.Force)
		if s.Tooled() {
			f.same(law, "lift accepted of "+st.Name, q.Acceptance.Travel, st.Seated.Travel, digits)
			f.same(law, "measure of a seated pair of "+st.Name, q.Acceptance.Nominal, st.Seated.Nominal, digits)
		}
		equal(f, law, "method of "+st.Name, q.Method.Chosen, string(st.Decision.Chosen))
		equal(f, law, "override of "+st.Name, q.Method.Overridden, st.Decision.Overridden)
		if len(q.Method.Options) != len(st.Decision.Options) {
			f.say(law, "%d methods weighed there, %d worked out", len(q.Method.Options), len(st.Decision.Options))
			continue
		}
		for k, o := range q.Method.Options {
			a := st.Decision.Options[k]
			equal(f, law, "method weighed for "+st.Name, o.Method, string(a.Method))
			equal(f, law, "verdict on "+a.Method.Title(), o.Verdict, string(a.Verdict))
			if len(o.Limits) != len(a.Limits) {
				f.say(law, "%s: %d limits there, %d worked out", a.Method.Title(), len(o.Limits), len(a.Limits))
				continue
			}
			for n, l := range o.Limits {
				f.same(law, a.Method.Title()+", "+l.Name+", demand", l.Demand, a.Limits[n].Demand, digits)
				f.same(law, a.Method.Title()+", "+l.Name+", capacity", l.Capacity, a.Limits[n].Capacity, digits)
				equal(f, law, a.Method.Title()+", "+l.Name+", kept", l.OK, a.Limits[n].OK)
			}
		}
	}
	if p.Tooling != nil && s.Tooled() {
		var marks, made []string
		for _, t := range append(p.Tooling.Nests, p.Tooling.Anvils...) {
			marks = append(marks, t.Name+" "+t.Mark)
		}
		for _, q := range s.Pieces() {
			made = append(made, q.Name+" "+q.Mark)
		}
		if !slices.Equal(marks, made) {
			f.say(law, "pieces and marks %q there, %q made", marks, made)
		}
	}
	var numbers []int
	for _, w := range p.Warnings {
		numbers = append(numbers, w.Number)
	}
	f.warned(s, numbers)
}

// forceSaid holds the forces that a paper states against those of a step.
func (f *finding) forceSaid(law string, st *solve.Step, p saidForce) {
	r := st.Result
	of := func(what string, there, here float64) { f.same(law, what+" of "+st.Name, there, here, digits) }
	of("design force", p.Design, r.Design)
	of("nominal peak", p.Peak, r.Peak)
	of("all at one lift", p.PeakStack, r.PeakStack)
	of("P5", p.P5, r.P5)
	of("P50", p.P50, r.P50)
	of("P95", p.P95, r.P95)
	if !r.WorstJams { // else it is a bound, and no figure to print
		of("worst case", p.Worst, r.Worst)
	}
	of("work", p.Work, r.Work)
	of("force at the seat", p.Seat, r.SeatForce)
	of("stroke", p.Stroke, r.Stroke)
	of("share that jams", p.Jammed, r.Jammed)
	of("share that is loose", p.Loose, r.Loose)
	of("share that is overstrained", p.Over, r.Overstrained)
	equal(f, law, "humps of "+st.Name, p.Humps, r.Humps)
	equal(f, law, "no P95 of "+st.Name, p.NoP95, r.NoP95)
	f.drawn(st, p.Curve, 0.01)
}

// drawn holds a curve that is drawn or listed against the peak and the stroke: the peak
// stands at a break, which all lists of points have, or between points of a ball.
func (f *finding) drawn(st *solve.Step, curve [][2]float64, by float64) {
	r := st.Result
	if r.Locks || len(curve) == 0 {
		return
	}
	most := 0.0
	for _, p := range curve {
		most = max(most, p[1])
	}
	if !close(most, r.Peak, by) {
		f.say("a curve holds its own peak", "%s: %.6g N drawn, nominal peak %.6g N", st.Name, most, r.Peak)
	}
	if !close(curve[0][0], r.Stroke, digits) {
		f.say("a curve begins with the stroke", "%s: %.6g mm drawn, stroke %.6g mm", st.Name, curve[0][0], r.Stroke)
	}
}

// warned holds the numbers of the warnings on a paper against those of the results.
func (f *finding) warned(s *solve.Solution, numbers []int) {
	missing := func(all []warning.Warning, of string) {
		for _, w := range all {
			if !slices.Contains(numbers, w.Number) {
				f.say("every warning of the forces is printed", "W%d of %s is not there", w.Number, of)
			}
		}
	}
	for i := range s.Steps {
		missing(s.Steps[i].Result.Warnings, s.Steps[i].Name)
		for _, l := range s.Steps[i].Result.Latches {
			missing(l.Warnings, l.ID)
		}
	}
}

// sheet holds the work instruction against the solution.
func (f *finding) sheet(s *solve.Solution, w workinstructions.Sheet) {
	const law = "the work instruction says what was worked out"
	equal(f, law, "job", w.Job, s.Job.Number)
	if s.Job.Revision != "" {
		equal(f, law, "revision", w.Revision, s.Job.Revision)
	}
	equal(f, law, "fingerprint", w.Fingerprint, s.Fingerprint)
	f.same(law, "rate", w.RatePerHour, s.Job.RatePerHour, 0)
	equal(f, law, "units", w.Units, s.Job.Shown())
	if len(w.Steps) != len(s.Steps) {
		f.say(law, "%d steps there, %d worked out", len(w.Steps), len(s.Steps))
		return
	}
	for i, q := range w.Steps {
		st := &s.Steps[i]
		r := st.Result
		of := func(what string, there, here float64) { f.same(law, what+" of "+st.Name, there, here, 0) }
		of("design force", q.Force.Design, r.Design)
		of("nominal peak", q.Force.Peak, r.Peak)
		of("P5", q.Force.P5, r.P5)
		of("P50", q.Force.P50, r.P50)
		of("P95", q.Force.P95, r.P95)
		of("worst case", q.Force.Worst, r.Worst)
		of("force at the seat", q.Force.Seat, r.SeatForce)
		of("stroke", q.Force.Stroke, r.Stroke)
		of("work", q.Force.Work, r.Work)
		of("share that jams", q.Force.Jammed, r.Jammed)
		equal(f, law, "a worst case that jams, of "+st.Name, q.Force.WorstJams, r.WorstJams)
		f.drawn(st, q.Force.Curve, 0.005)
		equal(f, law, "method of "+st.Name, q.Decision.Chosen, st.Decision.Chosen)
		equal(f, law, "override of "+st.Name, q.Decision.Overridden, st.Decision.Overridden)
		if st.Decision.Overridden && w.Override == "" {
			f.say(law, "the reason of the override is missing")
		}
		of("most that is accepted", q.Seat.High, st.Seated.High)
		of("least that is accepted", q.Seat.Low, max(0, st.Seated.Low))
		f.press(law, st, q)
		if len(q.Latches) != len(r.Latches) {
			f.say(law, "%d latches there, %d worked out", len(q.Latches), len(r.Latches))
			continue
		}
		for k, l := range q.Latches {
			equal(f, law, "latch", l.ID, r.Latches[k].ID)
			equal(f, law, "places of "+l.ID, l.Count, r.Latches[k].Count)
			of("peak of "+l.ID, l.PeakEach, r.Latches[k].PeakEach)
			of("strain of "+l.ID, l.Strain, r.Latches[k].Strain)
		}
	}
	for _, t := range w.Tooling {
		at := slices.IndexFunc(s.Pieces(), func(p fixture.Piece) bool { return p.Name == t.Name })
		if at < 0 {
			f.say(law, "a piece %q is listed, and not made", t.Name)
			continue
		}
		p := s.Pieces()[at]
		equal(f, law, "the mark of the "+t.Name, t.Mark, p.Mark)
		for k := range t.Size {
			f.same(law, "size of the "+t.Name, t.Size[k], p.Size[k], 0)
		}
	}
	var numbers []int
	for _, r := range w.Warnings {
		numbers = append(numbers, r.Number)
	}
	f.warned(s, numbers)
}

// press holds what is printed of the press against its limits.
func (f *finding) press(law string, st *solve.Step, q workinstructions.Step) {
	for _, l := range st.Chosen().Limits {
		switch {
		case l.ID == method.LimitLever && st.Decision.Chosen == method.ByPress:
			f.same(law, "pull on the lever in "+st.Name, q.Lever, l.Demand, 0)
		case l.ID == method.LimitRated:
			f.same(law, "force of the press that is used in "+st.Name, q.Usable, l.Capacity, 0)
		}
	}
}

// Preview holds the document of the browser against the solution.
func Preview(s *solve.Solution, d preview.Document) error {
	f := &finding{about: "preview"}
	const law = "the preview says what was worked out"
	equal(f, law, "job", d.Job, s.Job.Number)
	equal(f, law, "revision", d.Revision, s.Job.Revision)
	equal(f, law, "fingerprint", d.Fingerprint, s.Fingerprint)
	if len(d.Steps) != len(s.Steps) {
		f.say(law, "%d steps there, %d worked out", len(d.Steps), len(s.Steps))
		return fault(f.all)
	}
	for i, q := range d.Steps {
		st := &s.Steps[i]
		f.same(law, "design force of "+st.Name, q.Design, st.Result.Design, 0)
		f.drawn(st, q.Curve, 0.005)
		for _, o := range q.Options {
			equal(f, law, "the method taken in "+st.Name, o.Chosen, o.Method == st.Decision.Chosen.Title())
		}
	}
	return fault(f.all)
}

// Drawings holds workshop drawings against the solution.
func Drawings(s *solve.Solution, d drawing.Set) error {
	f := &finding{about: "drawing"}
	const law = "the drawing says what was worked out"
	equal(f, law, "job", d.Job, s.Job.Number)
	equal(f, law, "revision", d.Revision, s.Job.Revision)
	equal(f, law, "fingerprint", d.Fingerprint, s.Fingerprint)
	pieces := s.Pieces()
	if len(d.Bodies) != len(pieces) {
		f.say(law, "%d bodies there, %d made", len(d.Bodies), len(pieces))
		return fault(f.all)
	}
	for i, b := range d.Bodies {
		equal(f, law, "body", b.Name, pieces[i].Name)
		if pieces[i].Mark != "" {
			equal(f, law, "the mark of the "+b.Name, b.Mark, pieces[i].Mark)
		}
	}
	return fault(f.all)
}

// Sweep holds the rows of a sweep against the solution of their value.
func Sweep(s *solve.Solution, rows []report.SweepStep) error {
	f := &finding{about: "sweep"}
	const law = "the sweep says what was worked out"
	if len(rows) != len(s.Steps) {
		f.say(law, "%d steps there, %d worked out", len(rows), len(s.Steps))
		return fault(f.all)
	}
	for i, q := range rows {
		st := &s.Steps[i]
		f.same(law, "nominal peak of "+st.Name, q.Peak, st.Result.Peak, 0)
		f.same(law, "P95 of "+st.Name, q.P95, st.Result.P95, 0)
		f.same(law, "share that jams of "+st.Name, q.Jammed, st.Result.Jammed, 0)
		equal(f, law, "method of "+st.Name, q.Method, string(st.Decision.Chosen))
		equal(f, law, "verdict of "+st.Name, q.Verdict, string(st.Chosen().Verdict))
	}
	return fault(f.all)
}

// Row holds the line of a batch's table against the solution.
func Row(s *solve.Solution, row batch.Row) error {
	f := &finding{about: "table"}
	const law = "the table says what was worked out"
	var peak, design float64
	for i := range s.Steps {
		r := s.Steps[i].Result
		if peak = max(peak, r.Peak); r.Locks {
			peak = math.Inf(1)
		}
		if design = max(design, r.Design); r.NoP95 {
			design = math.Inf(1)
		}
	}
	for _, v := range []struct {
		what        string
		there, here float64
	}{{"nominal peak", row.Peak, peak}, {"P95", row.P95, design}, {"design force", row.Design, design}} {
		if math.IsInf(v.here, 1) {
			v.here = 0
		}
		f.same(law, v.what, v.there, v.here, 0)
	}
	equal(f, law, "fingerprint", row.Fingerprint, s.Fingerprint)
	equal(f, law, "job", row.Job, s.Job.Number)
	equal(f, law, "revision", row.Revision, s.Job.Revision)
	equal(f, law, "tooling", row.Outcome == batch.Tooling, s.Tooled())
	return fault(f.all)
}
