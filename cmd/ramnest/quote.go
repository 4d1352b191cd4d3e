package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/export/quote"
	"ramnest/force"
	"ramnest/force/method"
)

// shopCommands are the commercial and the measuring side of a job.
type shopCommands struct {
	Quote     quoteCommand     `cmd:"" help:"Price nest, anvil and coupons by the shop's rate card."`
	Ladder    ladderCommand    `cmd:"" help:"Make test coupons of a latch in steps of its interference."`
	Calibrate calibrateCommand `cmd:"" help:"Learn from measured coupons what the shop prints, and which step to take."`
}

// A priced command has a rate card.
type priced struct {
	Card string `placeholder:"FILE" help:"The shop's rate card. Left out: invented round numbers, and every output says so."`
}

// read reads and validates the card.
func (p priced) card() (quote.RateCard, error) {
	if p.Card == "" {
		return quote.InventedRateCard(), nil
	}
	data, err := readLimited(p.Card)
	if err != nil {
		return quote.RateCard{}, badUse{fmt.Sprintf("%s: cannot be read: %s", p.Card, innermost(err))}
	}
	var card quote.RateCard
	doc, problems := jobfile.Decode(p.Card, data, &card, jobfile.Options{})
	return card, problems.And(doc.Problems(card.Validate())).Err()
}

// refused says what the card cannot price. Other errors stay as they are.
func (p priced) refused(err error) error {
	if err == nil {
		return nil
	}
	if _, ours := errors.AsType[force.Fault](err); !ours {
		return err
	}
	name := p.Card
	if name == "" {
		name = "the invented card"
	}
	return badUse{name + ": " + strings.ReplaceAll(err.Error(), "\n", "\nramnest: "+name+": ")}
}

type quoteCommand struct {
	source
	priced
	Ladder []string `placeholder:"LATCH" help:"Add five pairs of coupons of the latch of this id. May be repeated."`
	ByHand float64  `placeholder:"SECONDS" help:"Time of one assembly as it is done now, for the break-even. Left out: that of a published handling table, where a hand may push at all."`
	Out    string   `short:"o" placeholder:"FOLDER" help:"Write the offer as CSV into this folder; made if it is missing."`
	JSON   bool     `name:"json" help:"Print the offer as JSON."`
}

// Help says what is priced.
func (quoteCommand) Help() string {
	return `Designs the tooling and prices it: machine, material and finishing of each piece
by process, handling, margin, minimum, quantity breaks, and after how many
assemblies it has paid for itself. A card is explained in
testdata/jobs/shop/rates.yaml. A job without tooling ends with code 3.

    ramnest quote jobs/rim-cap.yaml --card shop/rates.yaml -o out
    ramnest quote jobs/rim-cap.yaml --card shop/rates.yaml --ladder rim`
}

// Run quotes.
func (q *quoteCommand) Run(c *console) error {
	card, err := q.card()
	if err != nil {
		return err
	}
	if !(q.ByHand >= 0 && q.ByHand <= 1e5) {
		return badUse{fmt.Sprintf("--by-hand: %g s; is out of range (above 0, 100000 s at most)", q.ByHand)}
	}
	s, doc, err := q.solve(c)
	if err != nil {
		return err
	}
	if !s.Tooled() {
		return c.finish(s, report.Check(s, nil))
	}
	items := s.ToolingItems()
	for _, id := range q.Ladder {
		if _, _, ok := solve.StepOfLatch(s.Job, id); !ok {
			return unknownLatch("--ladder", id, s.Job)
		}
		set, err := solve.Ladder(s.Job, solve.Rung{Latch: id, Card: card})
		if err != nil {
			return refusedAt(doc, err)
		}
		pairs, _ := solve.CouponItems(set)
		for _, p := range pairs {
			items = append(items, p...)
		}
	}
	o := report.Offered{Schema: "ramnest quote", Tool: tool, Number: s.Job.Number, Title: s.Job.Title}
	if o.Offer, err = card.Offer(items); err != nil {
		return q.refused(err)
	}
	if o.Back, o.Open, err = q.payback(s, card, o.Offer); err != nil {
		return err
	}
	var names []string
	if q.Out != "" {
		names = []string{job.Stem(s.Job.Number) + "-offer.csv"}
		err := export.WriteFiles(q.Out, []export.File{{Name: names[0], Write: func(w io.Writer) error { return quote.WriteOffer(w, o.Offer, o.Back) }}})
		if err != nil {
			return badUse{fmt.Sprintf("cannot write to %s: %s; nothing was written", q.Out, writeFault(q.Out, err))}
		}
	}
	if q.JSON {
		return export.WriteJSON(c.out, o)
	}
	return c.print(report.OfferText(s, o, q.Out, names))
}

// payback weighs the offer against assembly by hand. Where the times are not known it
// says why.
func (q *quoteCommand) payback(s *solve.Solution, card quote.RateCard, o quote.Offer) (p *quote.Payback, open string, err error) {
	now, then := q.ByHand, 0.0
	for i := range s.Steps {
		st := &s.Steps[i]
		if st.Cycle.Seconds == 0 {
			return nil, "no time is known for " + st.Name, nil
		}
		then += st.Cycle.Seconds
		if q.ByHand > 0 {
			continue
		}
		for _, a := range st.Decision.Options {
			if a.Method == method.ByHand && a.Verdict == method.Fail {
				return nil, fmt.Sprintf("%s is too hard for a hand (%s), so the table's time does not hold; --by-hand states the time that it takes now", st.Name, a.Governing), nil
			}
		}
		now += quote.HandSnap
	}
	back, err := card.Payback(o, now, then, 0, s.Job.Quantity)
	if err != nil {
		return nil, "", err
	}
	return &back, "", nil
}

// unknownLatch says that the job has no latch of that id.
func unknownLatch(where, id string, j *job.File) error {
	return badUse{fmt.Sprintf("%s %s: no latch of that id; the job has %s", where, id, strings.Join(solve.LatchIDs(j), ", "))}
}
