package solve

import (
	"fmt"
	"strconv"
	"strings"

	"ramnest/export/quote"
	"ramnest/force/method"
)

// ToolingItems gives the tooling of a solution as items to be quoted, without what their
// marks take away: the same design under another number costs the same.
func (s *Solution) ToolingItems() []quote.Item {
	var out []quote.Item
	for _, p := range s.Pieces() {
		box, way := asPrinted(p.Size, s.Material.Build)
		out = append(out, quote.Item{Name: p.Name, Process: s.Material.Process, Material: s.Material.Name, Volume: p.Volume + p.Marked, Box: box,
			Orientation: way, Count: 1})
	}
	return out
}

// asPrinted gives the box of a piece as it stands in the build [mm], and in words which
// axis of its file is up. Built across the press axis, which is z of the file, it lies on
// the side that makes the build lower.
func asPrinted(size [3]float64, build string) (box [3]float64, way string) {
	switch {
	case build != "across":
		return size, "z of the file up"
	case size[0] < size[1]:
		return [3]float64{size[2], size[1], size[0]}, "x of the file up"
	}
	return [3]float64{size[0], size[2], size[1]}, "y of the file up"
}

// price quotes the tooling by the job's card. That the card cannot price it spoils no
// tooling: the solution says why.
func (s *Solution) price() error {
	if !s.Tooled() {
		return nil
	}
	card := s.Job.Card()
	items := s.ToolingItems()
	o, err := card.Offer(items)
	if err != nil {
		s.Unpriced = s.Job.Spoken(unpriced(err, items))
		if s.Unpriced == "" {
			return fmt.Errorf("price the tooling: %w", err)
		}
		return nil
	}
	s.Quote = &o
	s.Payback, s.NoPayback, err = s.PaybackOf(card, o, 0)
	return err
}

// unpriced says in words why a card does not price items; empty if the error is none
// of the card's.
func unpriced(err error, items []quote.Item) string {
	faults, ok := faultsIn(err)
	if !ok {
		return ""
	}
	var out []string
	for _, f := range faults {
		rest, ours := strings.CutPrefix(f.Field, "items[")
		number, field, cut := strings.Cut(rest, "].")
		if i, err := strconv.Atoi(number); ours && cut && err == nil && i < len(items) {
			f.Field = items[i].Name + ": " + field
		}
		out = append(out, f.Error())
	}
	return strings.Join(out, "; ")
}

// PaybackOf weighs an offer against assembly by hand. byHand is the time of one
// assembly as it is done now [s]; 0: that of a published handling table, where a hand
// may push at all. Where the times are not known it says why.
func (s *Solution) PaybackOf(card quote.RateCard, o quote.Offer, byHand float64) (p *quote.Payback, open string, err error) {
	now, then := byHand, 0.0
	for i := range s.Steps {
		st := &s.Steps[i]
		if st.Cycle.Seconds == 0 {
			return nil, "no time is known for " + st.Name, nil
		}
		then += st.Cycle.Seconds
		if byHand > 0 {
			continue
		}
		for _, a := range st.Decision.Options {
			if a.Method == method.ByHand && a.Verdict == method.Fail {
				return nil, fmt.Sprintf("%s is too hard for a hand (%s), so the table's time does not hold; ramnest quote --by-hand states the time that it takes now", st.Name, a.Governing), nil
			}
		}
		now += quote.HandSnap
	}
	back, err := card.Payback(o, quote.Work{Now: now, Then: then, Quantity: s.Job.Quantity, PerHour: s.Job.RatePerHour,
		HoursPerShift: s.Job.HoursPerShift})
	if err != nil {
		return nil, "", err
	}
	return &back, "", nil
}
