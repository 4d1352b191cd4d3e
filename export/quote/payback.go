package quote

import (
	"fmt"
	"math"

	"ramnest/force/fault"
)

// Work is what is known of the assembly that the tooling is for.
type Work struct {
	Now, Then     float64 // time of one assembly by hand, and with the tooling [s]
	Scrap         float64 // saved on each assembly in spoilt parts
	Quantity      int     // assemblies of the job; 0: not stated
	PerHour       float64 // assemblies an hour; 0: not stated
	HoursPerShift float64 // of this work a day [h]; 0: not stated
}

// A Payback is the break-even of an offer against assembly by hand, in assemblies and
// in time.
type Payback struct {
	Cost       float64 `json:"cost"`        // of tooling, with its set-up
	Now        float64 `json:"now_s"`       // of one assembly without it [s]
	Then       float64 `json:"then_s"`      // with it [s]
	Rate       float64 `json:"labour_hour"` // labour an hour
	Scrap      float64 `json:"scrap_saved"` // an assembly
	Assemblies int     `json:"assemblies"`  // after which it has paid for itself; 0 if it never does
	Hours      float64 `json:"hours"`       // of work at the job's rate until then [h]; 0: the rate is not stated
	Shifts     float64 `json:"shifts"`      // of the job's hours a day until then; 0: not stated
	Pays       bool    `json:"pays"`
	Text       string  `json:"text"`
}

// Payback says after how many assemblies, and how much work at the job's rate, the
// offer has paid for itself. Labour is that of the card.
//
//	hours = assemblies / rate, shifts = hours / hours per shift, rounded up
func (c RateCard) Payback(o Offer, w Work) (Payback, error) {
	p := Payback{Cost: o.Total, Now: w.Now, Then: w.Then, Rate: c.LabourHour, Scrap: w.Scrap}
	for _, a := range []struct {
		field string
		x     float64
	}{{"rate_per_hour", w.PerHour}, {"hours_per_shift", w.HoursPerShift}} {
		if !(a.x >= 0 && a.x <= limit) {
			return Payback{}, fault.Fault{Field: a.field, Given: fmt.Sprint(a.x), Problem: "is out of range", Want: "0 or more"}
		}
	}
	var err error
	if p.Assemblies, p.Pays, err = BreakEven(o.Total, w.Now, w.Then, c.LabourHour, w.Scrap); err != nil {
		return Payback{}, err
	}
	if p.Pays && w.PerHour > 0 {
		p.Hours = float64(p.Assemblies) / w.PerHour
		if w.HoursPerShift > 0 {
			p.Shifts = math.Ceil(p.Hours/w.HoursPerShift - 1e-9)
		}
	}
	p.Text = p.words(o, w)
	return p, nil
}

func (p Payback) words(o Offer, w Work) string {
	text := fmt.Sprintf("against assembly by hand it saves nothing: %.3g s now, %.3g s with it", p.Now, p.Then)
	if p.Pays {
		text = fmt.Sprintf("paid for after %d assemblies", p.Assemblies)
		switch {
		case p.Shifts > 0:
			text += fmt.Sprintf(", %.3g h of work at %.4g an hour, in %.0f shifts of %.3g h", p.Hours, w.PerHour, p.Shifts, w.HoursPerShift)
		case p.Hours > 0:
			text += fmt.Sprintf(", %.3g h of work at %.4g an hour", p.Hours, w.PerHour)
		}
		text += fmt.Sprintf(": %.3g s by hand, %.3g s with it, at %.4g %s an hour", p.Now, p.Then, p.Rate, o.Currency)
		if p.Scrap > 0 {
			text += fmt.Sprintf(" and %.4g saved on each", p.Scrap)
		}
		switch {
		case w.Quantity > 0 && w.Quantity < p.Assemblies:
			text += fmt.Sprintf("; the job's %d do not pay for it", w.Quantity)
		case w.Quantity > 0:
			text += fmt.Sprintf("; the job has %d", w.Quantity)
		}
	}
	if o.Invented {
		text += " (INVENTED rates)"
	}
	return text
}
