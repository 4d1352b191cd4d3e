package quote

import "fmt"

// A LadderCost compares one pair of coupons with a whole ladder.
type LadderCost struct {
	Pairs int     `json:"pairs"`
	One   float64 `json:"one"`   // total of the first pair alone
	All   float64 `json:"all"`   // total of the ladder, in one order
	Extra float64 `json:"extra"` // of each pair beyond the first
	Apart float64 `json:"apart"` // of the same pairs ordered one after another
	Offer Offer   `json:"offer"` // of the ladder
	Text  string  `json:"text"`
}

// LadderCost prices a ladder: pairs holds the bodies of each pair. What one pair costs
// is that of the nominal one, by its index.
func (c RateCard) LadderCost(pairs [][]Item, nominal int) (LadderCost, error) {
	var all []Item
	for _, p := range pairs {
		all = append(all, p...)
	}
	if nominal < 0 || nominal >= len(pairs) {
		nominal = 0
	}
	var one []Item
	if len(pairs) > 0 {
		one = pairs[nominal]
	}
	whole, err := c.Offer(all)
	if err != nil {
		return LadderCost{}, err
	}
	single, err := c.Offer(one)
	if err != nil {
		return LadderCost{}, err
	}
	l := LadderCost{Pairs: len(pairs), One: single.Total, All: whole.Total, Apart: cents(single.Total * float64(len(pairs))), Offer: whole}
	if l.Pairs > 1 {
		l.Extra = cents((l.All - l.One) / float64(l.Pairs-1))
	}
	l.Text = fmt.Sprintf("one pair %.2f, all %d %.2f %s: %.2f for each more", l.One, l.Pairs, l.All, c.Currency, l.Extra)
	if l.One > 0 && l.Pairs > 1 {
		l.Text += fmt.Sprintf(", against %.2f one after another", l.Apart)
	}
	if c.Invented {
		l.Text += " (INVENTED rates)"
	}
	return l, nil
}
