package report

import (
	"cmp"
	"fmt"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/solve"
	"ramnest/export/quote"
	"ramnest/force/calibrate"
	"ramnest/force/unit"
)

// A Calibration is what the shop's calibration file made of a job.
type Calibration struct {
	Source   string    `json:"source"`
	Date     string    `json:"date,omitzero"` // when it was measured
	Measured int       `json:"pairs_measured"`
	Outliers int       `json:"outliers"`
	Changes  []Changed `json:"changes"`
	Seats    []Seat    `json:"seats"` // dead stop against the latches as printed; none without tooling
}

// A Seat compares the dead stop with one latch as printed, 95 of 100 pairs. Lifts above
// the seat as drawn; below 0 the upper part must go further.
type Seat struct {
	Latch   string     `json:"latch"`
	Stop    float64    `json:"dead_stop_mm"`
	Drawn   float64    `json:"home_as_drawn_mm"`
	Printed [2]float64 `json:"home_as_printed_mm"`
	Slack   float64    `json:"slack_mm"` // worst of them; below 0 the stop comes first
	Held    bool       `json:"held"`
	Rises   float64    `json:"rises_mm"` // the upper part may rise so far once the ram is up
	Text    string     `json:"text"`
}

func seatsOf(u units, seats []calibrate.Seat) []Seat {
	out := []Seat{}
	for _, t := range seats {
		out = append(out, Seat{t.Latch, t.Stop, t.Drawn, [2]float64{t.Low, t.High}, t.Slack, t.Held, t.Gap, t.Text.In(u.System)})
	}
	return out
}

// A Changed is a figure of the file that was replaced.
type Changed struct {
	Step  string `json:"step"`
	Field string `json:"field"`
	Was   string `json:"was"`
	Now   string `json:"now"`
}

// CalibrationOf says which calibration a job was worked out with; nil: none.
func CalibrationOf(s *solve.Solution) *Calibration {
	c := s.Job.Calibration
	if c == nil {
		return nil
	}
	out := &Calibration{Source: c.Source, Date: c.Date, Measured: c.Measured, Outliers: c.Outliers, Changes: []Changed{}, Seats: []Seat{}}
	for i := range s.Steps {
		out.Changes = append(out.Changes, changesOf(units{s.Job.Shown()}, &s.Steps[i])...)
		out.Seats = append(out.Seats, seatsOf(units{s.Job.Shown()}, s.Steps[i].Seats)...)
	}
	return out
}

// Words says which calibration it is, from when if it says so, and of how many pairs.
func (c *Calibration) Words() string {
	text := c.Source
	if c.Date != "" {
		text += " of " + c.Date
	}
	return fmt.Sprintf("%s, %d pairs measured, %d of them outliers", text, c.Measured, c.Outliers)
}

// CalibrationWords says in one line which calibration a job was worked out with; empty:
// none.
func CalibrationWords(s *solve.Solution) string {
	if c := CalibrationOf(s); c != nil {
		return c.Words()
	}
	return ""
}

// CalibrationText is the calibration with all that it replaced, for a terminal; empty:
// none.
func CalibrationText(s *solve.Solution) string {
	p := &page{}
	p.calibration(unitsOf(s.Job), s)
	if p.b.Len() == 0 {
		return ""
	}
	return "\n" + p.b.String()
}

func changesOf(u units, st *solve.Step) []Changed {
	var out []Changed
	for _, x := range st.Changes {
		out = append(out, Changed{st.Name, st.InFile(x.Field), x.Was.In(u.System), x.Now.In(u.System)})
	}
	return out
}

// calibration lists every figure that the shop's calibration replaced.
func (p *page) calibration(u units, s *solve.Solution) {
	c := CalibrationOf(s)
	if c == nil {
		return
	}
	p.head("CALIBRATION  %s", c.Words())
	for _, x := range c.Changes {
		p.wrap("  - ", "    ", x.Field+": "+x.Was+" -> "+x.Now)
	}
	if len(c.Seats) > 0 {
		p.line("")
		p.line("  Dead stop against the latches as printed, lift above the seat as drawn:")
		p.seats(u, c.Seats)
	}
}

// seats is the table that compares the dead stop of the tooling with the latches as
// printed, both ways: whether the stop lets a latch home, and how far the parts can
// come apart again from where the stop brought them.
func (p *page) seats(u units, seats []Seat) {
	l := u.Name("mm")
	rows := [][]string{{"latch", "stop " + l, "home drawn", "home printed", "slack", "rises by", ""}}
	for _, t := range seats {
		say := func(v float64) string { return unit.Length.Of(v).To(unit.Fine).Number(u.System, nil) }
		word := "agree"
		if !t.Held {
			word = "NOT ENSURED: " + t.Text
		}
		rows = append(rows, []string{t.Latch, say(t.Stop), say(t.Drawn), say(t.Printed[0]) + ".." + say(t.Printed[1]), say(t.Slack), say(t.Rises),
			word})
	}
	p.table("lrrrrrl", rows)
}

// A Fitted is what a calibration found.
type Fitted struct {
	Schema, Tool, Number string
	Fit                  *calibrate.Fit
	Sheet                calibrate.Sheet
	Advice               []calibrate.Advice
	Seats                []calibrate.Seat
	Past                 float64 // of the dead stop past the seat [mm]
	NoStop               string  // why there is no dead stop to compare with
	Card                 quote.RateCard
	Scale                float64 // unit of force of the table [N]
}

// FitText is a calibration for a terminal.
func FitText(j *job.File, f Fitted, file string) string {
	p := headOf(j)
	u := unitsOf(j)
	p.head("CALIBRATION  %s, %d pairs", f.Sheet.Source, f.Fit.Measured)
	rows := [][]string{{"", "table", "95 % before", "fit", "95 % now"}}
	add := func(name string, e calibrate.Estimate) {
		v := func(x float64) string { return u.bare(x, e.Unit) }
		row := []string{"", v(e.Prior), v(e.PriorLow) + ".." + v(e.PriorHigh), v(e.Value), v(e.Low) + ".." + v(e.High)}
		if e.Unit != unit.Plain {
			name += ", " + u.Name(e.Unit)
		}
		row[0] = name
		rows = append(rows, row)
	}
	add("friction", f.Fit.Friction)
	add("factor on stiffness", f.Fit.Stiffness)
	add("factor on scatter", f.Fit.Scatter)
	for _, e := range f.Fit.Offsets {
		add("more size on "+e.Name, e)
	}
	p.table("lrrrr", rows)
	n := u.Name("N")
	l := u.Name("mm")
	p.head("MEASURED against the fit")
	rows = [][]string{{"line", "latch", "coupon", "size " + l, n, "fit", "95 % of pairs", "off by", ""}}
	for _, r := range f.Fit.Residuals {
		say := func(v float64) string { return u.bare(v, "N") }
		note := ""
		switch {
		case r.Outlier:
			note = "OUTLIER"
		case r.NoGo:
			note = "no-go"
		}
		rows = append(rows, []string{fmt.Sprint(r.Line), r.Latch, r.Coupon, u.coupon(r.Size), say(r.Force), say(r.Predicted),
			say(r.Low) + ".." + say(r.High), fmt.Sprintf("%+.1f sd", r.Deviation), note})
	}
	p.table("rllrrrrrl", rows)
	for _, r := range f.Fit.Remarks {
		p.wrap("  - ", "    ", r.In(u.System))
	}
	for _, a := range f.Advice {
		p.advice(u, a, f.Card)
	}
	p.head("DEAD STOP")
	if f.NoStop != "" {
		p.wrap("  ", "  ", "not compared: "+f.NoStop)
	} else {
		p.wrap("  ", "  ", fmt.Sprintf("The anvil lands %s past the seat as drawn.", u.say(f.Past, "mm")))
		if len(f.Seats) == 0 {
			p.line("  The latches hold by friction wherever they stop.")
		}
	}
	if len(f.Seats) > 0 {
		p.line("  Lifts above the seat as drawn; printed: 95 %% interval of the mean pair.")
		p.seats(u, seatsOf(u, f.Seats))
	}
	for _, s := range f.Seats {
		word := "OK"
		if !s.Held {
			word = "NOT ENSURED"
		}
		p.wrap("  - ", "    ", fmt.Sprintf("%s: %s: %s", s.Latch, word, s.Text.In(u.System)))
	}
	if file != "" {
		p.head("WRITTEN  %s", file)
		p.wrap("  ", "  ", "force, make, check, sweep, method, explain, quote, preview and batch take it by --calibration.")
	}
	return p.b.String()
}

// advice says which step to take.
func (p *page) advice(u units, a calibrate.Advice, card quote.RateCard) {
	p.head("STEP TO TAKE  for %s, peak of one joint from %s to %s", a.Goal.Latch, u.say(a.Goal.Least, "N"), u.say(a.Goal.Most, "N"))
	n := u.Name("N")
	l := u.Name("mm")
	rows := [][]string{{"coupon", "size " + l, "P5..P95 " + n, "too light", "too heavy", "overstrained", "fail", ""}}
	for i, o := range a.Options {
		say := func(v float64) string { return u.bare(v, "N") }
		mark := ""
		if i == a.Take {
			mark = "take"
		}
		rows = append(rows, []string{o.Coupon, u.coupon(o.Size), say(o.Band.P5) + ".." + say(o.Band.P95), share(o.Light), share(o.Heavy),
			share(o.Over), share(o.Failing), mark})
	}
	p.table("lrrrrrrl", rows)
	p.line("")
	p.wrap("  ", "  ", a.Text.In(u.System))
	if a.Goal.Round > 0 {
		text := fmt.Sprintf("Another round: %.2f %s.", a.Goal.Round, card.Currency)
		if card.Invented {
			text += " INVENTED rates: not a price."
		}
		p.wrap("  ", "  ", text)
	}
}

// FitJSON gives a calibration as JSON: mm, N, shares as fractions.
func FitJSON(j *job.File, f Fitted) any {
	u := unitsOf(j)
	type estimate struct {
		Name      string     `json:"name"`
		Unit      string     `json:"unit"`
		Table     float64    `json:"table"`
		Before    [2]float64 `json:"interval_before"`
		Value     float64    `json:"value"`
		Intervals [2]float64 `json:"interval"`
	}
	type residual struct {
		Line      int        `json:"line"`
		Latch     string     `json:"latch"`
		Coupon    string     `json:"coupon"`
		Size      float64    `json:"size_mm"`
		Force     float64    `json:"force_n"`
		NoGo      bool       `json:"no_go,omitzero"`
		Predicted float64    `json:"predicted_n"`
		Interval  [2]float64 `json:"interval_n"`
		Deviation float64    `json:"deviation_sd"`
		Outlier   bool       `json:"outlier,omitzero"`
	}
	type option struct {
		Coupon  string  `json:"coupon"`
		Size    float64 `json:"size_mm"`
		P5      float64 `json:"p5_n"`
		P95     float64 `json:"p95_n"`
		Failing float64 `json:"failing"`
	}
	type advice struct {
		Latch   string   `json:"latch"`
		Least   float64  `json:"least_n"`
		Most    float64  `json:"most_n"`
		Options []option `json:"options"`
		Take    string   `json:"take"`
		Another bool     `json:"another_round_pays"`
		Round   float64  `json:"round_cost"`
		Text    string   `json:"text"`
	}
	out := struct {
		Schema      string     `json:"schema"`
		Tool        string     `json:"tool"`
		Number      string     `json:"number"`
		Source      string     `json:"source"`
		Date        string     `json:"date,omitzero"`
		Measured    int        `json:"pairs_measured"`
		Correlation float64    `json:"correlation_friction_stiffness"`
		Estimates   []estimate `json:"estimates"`
		Residuals   []residual `json:"residuals"`
		Remarks     []string   `json:"remarks"`
		Advice      []advice   `json:"advice"`
		Currency    string     `json:"currency"`
		Invented    bool       `json:"rates_invented"`
		Past        float64    `json:"dead_stop_past_seat_mm"`
		NoStop      string     `json:"dead_stop_open,omitzero"`
		Seats       []Seat     `json:"seats"`
	}{Schema: f.Schema, Tool: f.Tool, Number: f.Number, Source: f.Sheet.Source, Date: f.Sheet.Date, Measured: f.Fit.Measured,
		Correlation: f.Fit.Correlation, Residuals: []residual{},
		Remarks: u.texts(f.Fit.Remarks), Advice: []advice{}, Currency: f.Card.Currency, Invented: f.Card.Invented, Past: f.Past, NoStop: f.NoStop, Seats: seatsOf(u, f.Seats)}
	for _, e := range append([]calibrate.Estimate{f.Fit.Friction, f.Fit.Stiffness, f.Fit.Scatter}, f.Fit.Offsets...) {
		out.Estimates = append(out.Estimates, estimate{e.Name, cmp.Or(string(e.Unit), "1"), e.Prior, [2]float64{e.PriorLow, e.PriorHigh}, e.Value,
			[2]float64{e.Low, e.High}})
	}
	for _, r := range f.Fit.Residuals {
		out.Residuals = append(out.Residuals, residual{r.Line, r.Latch, r.Coupon, r.Size, r.Force, r.NoGo, r.Predicted, [2]float64{r.Low, r.High},
			r.Deviation, r.Outlier})
	}
	for _, a := range f.Advice {
		x := advice{Latch: a.Goal.Latch, Least: a.Goal.Least, Most: a.Goal.Most, Take: a.Options[a.Take].Coupon, Another: a.Another,
			Round: a.Goal.Round, Text: a.Text.In(u.System)}
		for _, o := range a.Options {
			x.Options = append(x.Options, option{o.Coupon, o.Size, o.Band.P5, o.Band.P95, o.Failing})
		}
		out.Advice = append(out.Advice, x)
	}
	return out
}
