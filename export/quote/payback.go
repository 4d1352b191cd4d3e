package quote

import "fmt"

// A Payback is the break-even of an offer against assembly by hand.
type Payback struct {
	Cost       float64 `json:"cost"`        // of tooling, with its set-up
	Now        float64 `json:"now_s"`       // of one assembly without it [s]
	Then       float64 `json:"then_s"`      // with it [s]
	Rate       float64 `json:"labour_hour"` // labour an hour
	Scrap      float64 `json:"scrap_saved"` // an assembly
	Assemblies int     `json:"assemblies"`  // after which it has paid for itself; 0 if it never does
	Pays       bool    `json:"pays"`
	Text       string  `json:"text"`
}

// Payback says after how many assemblies the offer has paid for itself: now and then
// are the times of one assembly by hand and with the tooling [s], scrap what is saved
// on each in spoilt parts. quantity is the number of assemblies of the job; 0: not
// stated. Labour is that of the card.
func (c RateCard) Payback(o Offer, now, then, scrap float64, quantity int) (Payback, error) {
	p := Payback{Cost: o.Total, Now: now, Then: then, Rate: c.LabourHour, Scrap: scrap}
	var err error
	if p.Assemblies, p.Pays, err = BreakEven(o.Total, now, then, c.LabourHour, scrap); err != nil {
		return Payback{}, err
	}
	switch {
	case !p.Pays:
		p.Text = fmt.Sprintf("against assembly by hand it saves nothing: %.3g s now, %.3g s with it", now, then)
	default:
		p.Text = fmt.Sprintf("paid for after %d assemblies: %.3g s by hand, %.3g s with it, at %.4g %s an hour", p.Assemblies, now, then, c.LabourHour, o.Currency)
		if scrap > 0 {
			p.Text += fmt.Sprintf(" and %.4g saved on each", scrap)
		}
		switch {
		case quantity > 0 && quantity < p.Assemblies:
			p.Text += fmt.Sprintf("; the job's %d do not pay for it", quantity)
		case quantity > 0:
			p.Text += fmt.Sprintf("; the job has %d", quantity)
		}
	}
	if o.Invented {
		p.Text += " (INVENTED rates)"
	}
	return p, nil
}
