package offerpage

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"time"

	"ramnest/export/page"
	"ramnest/export/picture"
	"ramnest/export/quote"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

// A Page is what stands on it. Every text is printed as it is.
type Page struct {
	Letter   bool // paper: US letter in the place of A4
	Units    unit.System
	Job      string
	Title    string
	Revision string // may be empty
	Date     string // of the job, year-month-day
	Author   string // may be empty
	Tool     string // that made it
	Offer    quote.Offer
	Payback  *quote.Payback
	Open     string   // why there is no break-even
	Facts    []string // what the tooling is for, a sentence each
}

// Type sizes that are tried until all stands on one page [pt].
var sizes = []float64{9.5, 8.5, 7.5, 6.5, 5.5, 4.5}

// Margins of the paper [mm].
const (
	marginSide = 18
	marginTop  = 14
	marginFoot = 20
)

// Write writes the page as a PDF: the same page, the same bytes.
func Write(w io.Writer, p Page) error {
	if strings.TrimSpace(p.Job) == "" || len(p.Offer.Items) == 0 {
		return fault.Fault{Field: "offer", Problem: "has no job or no items", Want: "both"}
	}
	date, err := time.Parse(time.DateOnly, p.Date)
	if err != nil {
		return fault.Fault{Field: "date", Given: p.Date, Problem: "is no date", Want: "year-month-day"}
	}
	size := page.A4
	if p.Letter {
		size = page.Letter
	}
	for _, pt := range sizes {
		book := page.New(size, picture.EncodePNG)
		l := layout{Page: p, book: book, body: page.Font{Size: pt}, width: size.Width - 2*marginSide}
		frame := page.Frame{X: marginSide, Y: marginTop, Width: l.width, Height: size.Height - marginTop - marginFoot}
		err := book.Flow(frame, l.items())
		if err == nil && len(book.Pages) == 1 {
			l.foot(book.Pages[0], size)
			err = book.Write(w, page.Info{Title: clean("Offer " + p.Job + ": " + p.Title), Author: clean(p.Author), Subject: "Assembly tooling",
				Creator: p.Tool, Language: "en", Date: date})
			if err != nil {
				return fmt.Errorf("write the offer: %w", err)
			}
			return nil
		}
		book.Wait()
		if err != nil && !errors.Is(err, page.ErrTooHigh) {
			return fmt.Errorf("lay out the offer: %w", err)
		}
	}
	return fault.Fault{Field: "offer", Given: fmt.Sprintf("%d lines", len(p.Offer.Prices())), Problem: "do not stand on one page",
		Want: "fewer coupons or steps in one offer"}
}

func clean(s string) string {
	s, _ = page.Clean(s)
	return s
}
