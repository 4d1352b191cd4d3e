package deliver

import (
	"io"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export/quote"
)

// Offer renders the files of an offer: the table, the same as beside the tooling, and
// the page for the customer.
func Offer(s *solve.Solution, o report.Offered, tool string) (Set, error) {
	l := list{stem: job.Stem(s.Job.Number)}
	l.add("quote.csv", func(out io.Writer) error { return quote.WriteOffer(out, o.Offer, o.Back, o.Open) })
	return l.render()
}
