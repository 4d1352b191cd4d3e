package report

import (
	"fmt"
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/solve"
	"ramnest/export/quote"
	"ramnest/force/calibrate"
)

// A Calibration is what the shop's calibration file made of a job.
type Calibration struct {
	Source   string    `json:"source"`
	Date     string    `json:"date,omitzero"` // when it was measured
	Measured int       `json:"pairs_measured"`
	Outliers int       `json:"outliers"`
	Changes  []Changed `json:"changes"`
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
	out := &Calibration{Source: c.Source, Date: c.Date, Measured: c.Measured, Outliers: c.Outliers, Changes: []Changed{}}
	for i := range s.Steps {
		out.Changes = append(out.Changes, changesOf(&s.Steps[i])...)
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

func changesOf(st *solve.Step) []Changed {
	var out []Changed
	for _, x := range st.Changes {
		out = append(out, Changed{st.Name, st.InFile(x.Field), x.Was, x.Now})
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
		p.wrap("  - ", "    ", u.text(x.Field+": "+x.Was+" -> "+x.Now))
	}
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
		unit := e.Unit
		v := func(x float64) string { x, unit = u.as(x, e.Unit); return fmt.Sprintf("%.3g", x) }
		row := []string{"", v(e.Prior), v(e.PriorLow) + " to " + v(e.PriorHigh), v(e.Value), v(e.Low) + " to " + v(e.High)}
		if unit != "" && unit != "1" {
			name += ", " + unit
		}
		row[0] = name
		rows = append(rows, row)
	}
	add("friction", f.Fit.Friction)
	add("factor on stiffness", f.Fit.Stiffness)
	add("factor on scatter", f.Fit.Scatter)
	for _, e := range f.Fit.Offsets {
		e.Unit = "mm"
		add("more size on "+e.Name, e)
	}
	p.table("lrrrr", rows)
	_, n := u.as(0, "N")
	_, l := u.as(0, "mm")
	p.head("MEASURED against the fit")
	rows = [][]string{{"line", "latch", "coupon", "size " + l, n, "fit", "95 % of pairs", "off by", ""}}
	for _, r := range f.Fit.Residuals {
		size, _ := u.as(r.Size, "mm")
		say := func(v float64) string { v, _ = u.as(v, "N"); return number(v) }
		note := ""
		switch {
		case r.Outlier:
			note = "OUTLIER"
		case r.NoGo:
			note = "no-go"
		}
		rows = append(rows, []string{fmt.Sprint(r.Line), r.Latch, r.Coupon, fmt.Sprintf("%.4g", size), say(r.Force), say(r.Predicted), say(r.Low) + ".." + say(r.High), fmt.Sprintf("%+.1f sd", r.Deviation), note})
	}
	p.table("rllrrrrrl", rows)
	for _, r := range f.Fit.Remarks {
		p.wrap("  - ", "    ", u.text(r))
	}
	for _, a := range f.Advice {
		p.advice(u, a, f.Card)
	}
	p.head("DEAD STOP")
	if f.NoStop != "" {
		p.wrap("  ", "  ", "not compared: "+u.text(f.NoStop))
	} else {
		p.wrap("  ", "  ", fmt.Sprintf("The anvil lands %s past the seat as drawn.", u.say(f.Past, "mm")))
		if len(f.Seats) == 0 {
			p.line("  The latches hold by friction wherever they stop.")
		}
	}
	for _, s := range f.Seats {
		word := "OK"
		if !s.Held {
			word = "NOT ENSURED"
		}
		p.wrap("  - ", "    ", u.text(fmt.Sprintf("%s: %s: %s", s.Latch, word, s.Text)))
	}
	if file != "" {
		p.head("WRITTEN  %s", file)
		p.wrap("  ", "  ", "make, check and force take it by --calibration.")
	}
	return p.b.String()
}

// advice says which step to take.
func (p *page) advice(u units, a calibrate.Advice, card quote.RateCard) {
	p.head("STEP TO TAKE  for %s, peak of one joint from %s to %s", a.Goal.Latch, u.say(a.Goal.Least, "N"), u.say(a.Goal.Most, "N"))
	_, n := u.as(0, "N")
	_, l := u.as(0, "mm")
	rows := [][]string{{"coupon", "size " + l, "P5..P95 " + n, "too light", "too heavy", "overstrained", "fail", ""}}
	for i, o := range a.Options {
		size, _ := u.as(o.Size, "mm")
		say := func(v float64) string { v, _ = u.as(v, "N"); return number(v) }
		mark := ""
		if i == a.Take {
			mark = "take"
		}
		rows = append(rows, []string{o.Coupon, fmt.Sprintf("%.4g", size), say(o.Band.P5) + ".." + say(o.Band.P95), share(o.Light), share(o.Heavy), share(o.Over), share(o.Failing), mark})
	}
	p.table("lrrrrrrl", rows)
	p.line("")
	p.wrap("  ", "  ", u.text(a.Text))
	if a.Goal.Round > 0 {
		text := fmt.Sprintf("Another round: %.2f %s.", a.Goal.Round, card.Currency)
		if card.Invented {
			text += " INVENTED rates: not a price."
		}
		p.wrap("  ", "  ", text)
	}
}

// FitJSON gives a calibration as JSON: mm, N, shares as fractions.
func FitJSON(f Fitted) any {
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
	type seat struct {
		Latch string  `json:"latch"`
		Slack float64 `json:"slack_mm"`
		Held  bool    `json:"held"`
		Text  string  `json:"text"`
	}
	out := struct {
		Schema      string     `json:"schema"`
		Tool        string     `json:"tool"`
		Number      string     `json:"number"`
		Source      string     `json:"source"`
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
		Seats       []seat     `json:"seats"`
	}{Schema: f.Schema, Tool: f.Tool, Number: f.Number, Source: f.Sheet.Source, Measured: f.Fit.Measured, Correlation: f.Fit.Correlation, Residuals: []residual{},
		Remarks: append([]string{}, f.Fit.Remarks...), Advice: []advice{}, Currency: f.Card.Currency, Invented: f.Card.Invented, Past: f.Past, NoStop: f.NoStop, Seats: []seat{}}
	for _, e := range append([]calibrate.Estimate{f.Fit.Friction, f.Fit.Stiffness, f.Fit.Scatter}, f.Fit.Offsets...) {
		out.Estimates = append(out.Estimates, estimate{e.Name, strings.TrimSpace(e.Unit), e.Prior, [2]float64{e.PriorLow, e.PriorHigh}, e.Value, [2]float64{e.Low, e.High}})
	}
	for _, r := range f.Fit.Residuals {
		out.Residuals = append(out.Residuals, residual{r.Line, r.Latch, r.Coupon, r.Size, r.Force, r.NoGo, r.Predicted, [2]float64{r.Low, r.High}, r.Deviation, r.Outlier})
	}
	for _, a := range f.Advice {
		x := advice{Latch: a.Goal.Latch, Least: a.Goal.Least, Most: a.Goal.Most, Take: a.Options[a.Take].Coupon, Another: a.Another, Round: a.Goal.Round, Text: a.Text}
		for _, o := range a.Options {
			x.Options = append(x.Options, option{o.Coupon, o.Size, o.Band.P5, o.Band.P95, o.Failing})
		}
		out.Advice = append(out.Advice, x)
	}
	for _, s := range f.Seats {
		out.Seats = append(out.Seats, seat{s.Latch, s.Slack, s.Held, s.Text})
	}
	return out
}
