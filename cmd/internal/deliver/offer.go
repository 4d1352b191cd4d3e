package deliver

import (
	"context"
	"io"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export/offerpage"
	"ramnest/export/quote"
)

// Offer renders the files of an offer: the table, the same as beside the tooling, and
// the page for the customer.
func Offer(ctx context.Context, s *solve.Solution, o report.Offered, tool string) (Set, error) {
	l := list{stem: job.Stem(s.Job.Number)}
	l.add("quote.csv", func(out io.Writer) error { return quote.WriteOffer(out, o.Offer, o.Back, o.Open) })
	l.add("offer.pdf", func(out io.Writer) error { return offerpage.Write(out, offerPage(s, o, tool)) })
	return l.render(ctx)
}

// offerPage says what the customer is to know beside the prices.
func offerPage(s *solve.Solution, o report.Offered, tool string) offerpage.Page {
	j := s.Job
	p := offerpage.Page{Letter: j.Sheet() == "Letter", Units: j.Shown(), Job: j.Number, Title: j.Title, Revision: j.Revision, Date: j.Date,
		Author: j.Author, Tool: tool,
		Offer: o.Offer, Payback: o.Back, Open: o.Open}
	for i := range s.Steps {
		st := &s.Steps[i]
		p.Facts = append(p.Facts, report.OfferFact(j, st))
	}
	if c := report.CalibrationOf(s); c != nil {
		p.Facts = append(p.Facts, "Forces by the shop's calibration "+c.Words()+".")
	}
	return p
}
