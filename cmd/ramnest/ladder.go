package main

import (
	"fmt"
	"strings"

	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/fixture/coupon"
)

type ladderCommand struct {
	source
	priced
	Latch string `placeholder:"ID" help:"Id of the latch. Left out: the only one of the job."`
	Steps int    `placeholder:"N" help:"Number of pairs, 2 to 15. Left out: 5."`
	Step  string `placeholder:"LENGTH" help:"From pair to pair, such as 0.05 mm or 0.002 in; without a unit in the job's. Left out: so that the ladder spans the tolerance."`
	Out   string `short:"o" required:"" placeholder:"FOLDER" help:"Folder for the files; made if it is missing."`
	JSON  bool   `name:"json" help:"Print the ladder as JSON."`
}

// Help says what is made.
func (ladderCommand) Help() string {
	return `Makes pairs of coupons that carry the latch alone, each pair with a little more
interference than the one before and its number cut in; the middle one is as
drawn. Writes each body as STL, each build as 3MF with the bodies in their places,
a test sheet as PDF (cautions, how to press, a grid to fill in), and the test table
as CSV in the job's units: fill in the column force_n or force_lbf and give it to
ramnest calibrate. Mesh files are not read.

    ramnest ladder jobs/rim-cap.yaml -o coupons
    ramnest ladder jobs/shell-pair.yaml --latch rib --steps 7 --step "0.05 mm" -o coupons`
}

// Run makes the ladder.
func (l *ladderCommand) Run(c *console) error {
	j, doc, err := l.read(c)
	if err != nil {
		return err
	}
	card, err := l.of(c, j)
	if err != nil {
		return err
	}
	if ids := solve.LatchIDs(j); l.Latch == "" && len(ids) == 1 {
		l.Latch = ids[0]
	} else if l.Latch == "" {
		return badUse{fmt.Sprintf("--latch: is missing; the job has several (%s)", strings.Join(ids, ", "))}
	}
	if _, _, ok := solve.StepOfLatch(j, l.Latch); !ok {
		return unknownLatch("--latch", l.Latch, j)
	}
	step, err := ladderArguments(l.Steps, l.Step, doc.Units)
	if err != nil {
		return err
	}
	done := c.stage("making the coupons")
	set, err := until(c.ctx, func() (coupon.Set, error) {
		return solve.Ladder(j, solve.Rung{Latch: l.Latch, Steps: l.Steps, Step: step, Card: card})
	})
	done()
	if err != nil {
		return refusedAt(doc, err)
	}
	cost, err := card.LadderCost(solve.CouponItems(set))
	if err != nil {
		return l.refused(err)
	}
	files, err := deliver.Ladder(c.ctx, j, set, tool)
	if err != nil {
		return err
	}
	if err := c.write(l.Out, files.Files); err != nil {
		return badUse{fmt.Sprintf("cannot write to %s: %s; nothing was written", l.Out, writeFault(l.Out, err))}
	}
	if l.JSON {
		return export.WriteJSON(c.out, report.LadderOf(j, set, cost, tool, files.Names))
	}
	return c.print(report.LadderText(j, set, cost, l.Out, files.Names))
}

// ladderArguments judges what the command line says of a ladder, and gives the step [mm];
// 0 stands for the usual.
func ladderArguments(steps int, step string, units jobfile.Units) (float64, error) {
	if steps != 0 && (steps < 2 || steps > 15) {
		return 0, badUse{fmt.Sprintf("--steps: %d; is no ladder (2 to 15)", steps)}
	}
	if step == "" {
		return 0, nil
	}
	mm, err := jobfile.Length("--step", step, units)
	if err != nil {
		return 0, badUse{err.Error()}
	}
	if !(mm >= 0.002 && mm <= 10) {
		return 0, badUse{fmt.Sprintf("--step: %s; is out of range (0.002 to 10 mm)", step)}
	}
	return mm, nil
}
