package quote

import (
	"errors"
	"fmt"
	"math"

	"ramnest/force"
)

// A Piece is a printed body of the tooling.
type Piece struct {
	Name   string
	Volume float64 // of material [mm3]
	Height float64 // in the build [mm]
	Share  float64 // of that height it pays [1]; 0: 1, alone in the build
	Count  int     // 1 or more
}

// A Line is one line of a quote.
type Line struct {
	Text   string
	Count  int
	Each   float64 // cost of one
	Amount float64 // Count times Each
}

// A Quote is what the tooling costs.
type Quote struct {
	Currency string
	Lines    []Line
	Total    float64 // sum of the lines
	Note     string  // printed with the total; says so when the card is invented
}

// Tooling prices the pieces: material and its share of the build height over what is
// not thrown away, piece work, set-up, margin, and the minimum if the sum falls below.
// It returns the faults joined if there are any.
func Tooling(pieces []Piece, c Card) (Quote, error) {
	var errs []error
	for _, f := range force.Under("card", c.Validate()) {
		errs = append(errs, f)
	}
	if len(pieces) == 0 {
		errs = append(errs, force.Fault{Field: "pieces", Problem: "is empty", Want: "one piece or more"})
	}
	for i, p := range pieces {
		for _, f := range force.Under(fmt.Sprintf("pieces[%d]", i), p.faults()) {
			errs = append(errs, f)
		}
	}
	if len(errs) > 0 {
		return Quote{}, errors.Join(errs...)
	}
	q := Quote{Currency: c.Currency, Note: "rates: " + c.Name}
	if c.Invented {
		q.Note = "INVENTED rates, round numbers: not a price until the shop's own card stands here"
	}
	for _, p := range pieces {
		share := p.Share
		if share == 0 {
			share = 1
		}
		each := (p.Volume/1000*c.MaterialCM3+p.Height*share*c.HeightMM)/(1-c.Reject) + c.PieceWork
		q.add(p.Name, p.Count, each)
	}
	q.add("set-up", 1, c.SetUp)
	q.add("margin", 1, c.Margin*q.Total)
	if q.Total < c.Minimum {
		q.add("up to the minimum", 1, c.Minimum-q.Total)
	}
	return q, nil
}

// add appends a line in hundredths, so that the lines add up as printed.
func (q *Quote) add(text string, count int, each float64) {
	each = math.Round(each*100) / 100
	amount := math.Round(each*float64(count)*100) / 100
	q.Lines = append(q.Lines, Line{text, count, each, amount})
	q.Total = math.Round((q.Total+amount)*100) / 100
}

func (p Piece) faults() []force.Fault {
	var out []force.Fault
	for _, a := range []struct {
		field, unit string
		x, lo, hi   float64
	}{{"volume", "mm3", p.Volume, 1e-6, 1e9}, {"height", "mm", p.Height, 1e-3, 5000}, {"share", "", p.Share, 0, 1}, {"count", "", float64(p.Count), 1, 1e6}} {
		if !(a.x >= a.lo && a.x <= a.hi) {
			out = append(out, force.Fault{Field: a.field, Given: fmt.Sprint(a.x, " ", a.unit), Problem: "is out of range", Want: fmt.Sprintf("%g to %g", a.lo, a.hi)})
		}
	}
	if p.Name == "" {
		out = append(out, force.Fault{Field: "name", Problem: "is empty", Want: "what is quoted"})
	}
	return out
}
