package main

import (
	"errors"
	"fmt"
	"strings"

	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/export/quote"
	"ramnest/fixture/coupon"
	"ramnest/force/fault"
)

// shopCommands are the commercial and the measuring side of a job.
type shopCommands struct {
	Quote     quoteCommand     `cmd:"" help:"Price nest, anvil and coupons by the shop's rate card."`
	Ladder    ladderCommand    `cmd:"" help:"Make test coupons of a latch in steps of its interference."`
	Batch     batchCommand     `cmd:"" help:"Work out all jobs of a folder, on all cores; go on where a run was stopped."`
	Calibrate calibrateCommand `cmd:"" help:"Learn from measured coupons what the shop prints, and which step to take."`
}

// A priced command has a rate card.
type priced struct {
	Card string `placeholder:"FILE" help:"The shop's rate card, in the place of the job's section rates. Neither: invented round numbers, and every output says so."`
}

// of puts the card of the command line, if there is one, into the place of the job's
// rates, and gives the card that holds.
func (p priced) of(c *console, j *job.File) (quote.RateCard, error) {
	if p.Card == "" {
		return j.Card(), nil
	}
	card, _, err := readCard(c, p.Card)
	if err != nil {
		return quote.RateCard{}, err
	}
	j.Rates = card
	return *card, nil
}

// readCard reads and validates a rate card.
func readCard(c *console, name string) (*quote.RateCard, []byte, error) {
	return readShopFile(c, name, func(r *quote.RateCard) []fault.Fault { return r.Validate() })
}

// refused says what the card cannot price. Other errors stay as they are.
func (p priced) refused(err error) error {
	if err == nil {
		return nil
	}
	if _, ours := errors.AsType[fault.Fault](err); !ours {
		return err
	}
	name := p.Card
	if name == "" {
		name = "the job's rates, or the invented card"
	}
	return badUse{name + ": " + strings.ReplaceAll(err.Error(), "\n", "\nramnest: "+name+": ")}
}

type quoteCommand struct {
	calibrated
	priced
	Ladder []string `placeholder:"LATCH" help:"Add five pairs of coupons of the latch of this id. May be repeated."`
	ByHand float64  `placeholder:"SECONDS" help:"Time of one assembly as it is done now, for the break-even. Left out: that of a published handling table, where a hand may push at all."`
	Out    string   `short:"o" placeholder:"FOLDER" help:"Write the offer as CSV and as one PDF page into this folder; made if it is missing."`
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
	if !(q.ByHand >= 0 && q.ByHand <= 1e5) {
		return badUse{fmt.Sprintf("--by-hand: %g s; is out of range (above 0, 100000 s at most)", q.ByHand)}
	}
	j, doc, err := q.read(c)
	if err != nil {
		return err
	}
	card, err := q.of(c, j)
	if err != nil {
		return err
	}
	s, err := q.work(c, j, doc)
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
		set, err := until(c.ctx, func() (coupon.Set, error) { return solve.Ladder(s.Job, solve.Rung{Latch: id, Card: card}) })
		if err != nil {
			return refusedAt(doc, err)
		}
		pairs, _ := solve.CouponItems(set)
		for _, p := range pairs {
			items = append(items, p...)
		}
	}
	o := report.Offered{Schema: "ramnest quote", Tool: tool, Number: s.Job.Number, Title: s.Job.Title, Calibration: report.CalibrationOf(s)}
	if o.Offer, err = card.Offer(items); err != nil {
		return q.refused(err)
	}
	if o.Back, o.Open, err = s.PaybackOf(card, o.Offer, q.ByHand); err != nil {
		return err
	}
	var names []string
	if q.Out != "" {
		set, err := deliver.Offer(c.ctx, s, o, tool)
		if err != nil {
			return err
		}
		if err := c.write(q.Out, set.Files); err != nil {
			return badUse{fmt.Sprintf("cannot write to %s: %s; nothing was written", q.Out, writeFault(q.Out, err))}
		}
		names = set.Names
	}
	if q.JSON {
		return export.WriteJSON(c.out, o)
	}
	return c.print(report.OfferText(s, o, q.Out, names))
}

// unknownLatch says that the job has no latch of that id.
func unknownLatch(where, id string, j *job.File) error {
	return badUse{fmt.Sprintf("%s %s: no latch of that id; the job has %s", where, id, strings.Join(solve.LatchIDs(j), ", "))}
}
