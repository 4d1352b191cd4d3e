package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"time"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/export/quote"
	"ramnest/force"
	"ramnest/force/calibrate"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

type calibrateCommand struct {
	source
	priced
	Measured    string  `arg:"" name:"measured.csv" help:"Measured forces: the test table of ramnest ladder, filled in."`
	LadderSteps int     `placeholder:"N" help:"Number of pairs that the ladder was made with. Left out: 5."`
	Step        string  `placeholder:"LENGTH" help:"Step that the ladder was made with, such as 0.05 mm or 0.002 in; without a unit in the job's. Left out: as the ladder proposes."`
	Failure     float64 `placeholder:"MONEY" help:"What it costs if the fit of the series turns out wrong, in the card's currency: then another round can be weighed."`
	Date        string  `placeholder:"DATE" help:"When it was measured, such as 2026-11-25. Left out: the date of the job."`
	Out         string  `short:"o" placeholder:"FILE" help:"Write the shop's calibration file, such as shop.yaml."`
	JSON        bool    `name:"json" help:"Print the fit as JSON."`
}

// Help says what is learned.
func (calibrateCommand) Help() string {
	return `Reads the peak forces of coupons, or of first pieces (coupon "piece"), in the unit
of the column, force_n or force_lbf (force alone: the job's), and fits friction, stiffness and how much larger each latch
comes out than drawn, with the material table as the first guess. Prints every
estimate with its interval, measurements that do not fit, the step to take,
whether another round pays, and whether the dead stop still lets the latch home.
make, check and force take the file by --calibration.

    ramnest calibrate jobs/rim-cap.yaml shop/measured.csv -o shop.yaml
    ramnest make jobs/rim-cap.yaml --calibration shop.yaml -o out`
}

// Run calibrates.
func (k *calibrateCommand) Run(c *console) error {
	j, doc, err := k.read(c)
	if err != nil {
		return err
	}
	card, err := k.of(c, j)
	if err != nil {
		return err
	}
	rung, err := ladderArguments(k.LadderSteps, k.Step, doc.Units)
	if err != nil {
		return err
	}
	if !(k.Failure >= 0 && k.Failure <= 1e9) {
		return badUse{fmt.Sprintf("--failure: %g; is out of range (0 or more)", k.Failure)}
	}
	if _, err := time.Parse(time.DateOnly, k.Date); k.Date != "" && err != nil {
		return badUse{fmt.Sprintf("--date: %s; is no date (year-month-day, such as 2026-11-25)", k.Date)}
	}
	rows, step, err := k.measurements(c, j)
	if err != nil {
		return err
	}
	done := c.stage("fitting the measurements")
	defer func() { done() }()
	var rounds map[string]float64
	in, err := until(c.ctx, func() (in calibrate.Input, err error) {
		in, rounds, err = k.input(c, j, step, rung, rows, card)
		return in, err
	})
	if err != nil {
		return refusedAt(doc, err)
	}
	model, err := calibrate.NewModelContext(c.ctx, in)
	if err != nil {
		return k.wrong(err)
	}
	fit, err := model.FitContext(c.ctx, rows)
	if err != nil {
		return k.wrong(err)
	}
	sheet := fit.Sheet(filepath.Base(k.Measured) + " for " + j.Mark())
	sheet.Date = j.Date
	if k.Date != "" {
		sheet.Date = k.Date
	}
	out := report.Fitted{Schema: "ramnest calibrate", Tool: tool, Number: j.Number, Fit: fit, Sheet: sheet, Card: card,
		Scale: j.Shown().One(unit.Force)}
	for _, e := range fit.Offsets {
		a, err := fit.AdviseContext(c.ctx, calibrate.Goal{Latch: e.Name, Failure: k.Failure, Round: rounds[e.Name]})
		if err != nil {
			return k.wrong(err)
		}
		out.Advice = append(out.Advice, a)
	}
	done()
	if err := k.seats(c, &out, fit, j, step); err != nil {
		return err
	}
	if k.Out != "" {
		if err := c.writeFile(k.Out, func(w io.Writer) error { return calibrate.WriteSheet(w, out.Sheet) }); err != nil {
			return err
		}
	}
	if k.JSON {
		return export.WriteJSON(c.out, report.FitJSON(j, out))
	}
	return c.print(report.FitText(j, out, k.Out))
}

// measurements reads the table. All latches must be of one press step.
func (k *calibrateCommand) measurements(c *console, j *job.File) ([]calibrate.Measurement, job.Step, error) {
	var step job.Step
	data, err := c.readUpTo(k.Measured, c.shopBytes)
	if err != nil {
		return nil, step, badUse{fmt.Sprintf("%s: cannot be read: %s", k.Measured, innermost(err))}
	}
	rows, err := calibrate.ReadMeasurementsWithin(bytes.NewReader(data), j.Shown().One(unit.Force),
		calibrate.Limits{Bytes: c.shopBytes, Rows: c.rows})
	if err != nil {
		return nil, step, k.wrong(err)
	}
	var problems jobfile.Problems
	var said []string
	for _, r := range rows {
		s, _, ok := solve.StepOfLatch(j, r.Latch)
		wrong := fault.Fault{Field: "latch", Given: r.Latch}
		switch {
		case slices.Contains(said, r.Latch):
			continue
		case !ok:
			wrong.Problem, wrong.Want = "is no latch of the job", fmt.Sprint(solve.LatchIDs(j))
		case step.Upper == nil:
			step = s
			continue
		case s.LatchesPath != step.LatchesPath:
			wrong.Problem, wrong.Want = fmt.Sprintf("is of the press step %q, others are of %q", s.Name, step.Name), "one table for each step"
		default:
			continue
		}
		said = append(said, r.Latch)
		problems = append(problems, jobfile.Problem{File: k.Measured, Line: r.Line, Fault: wrong})
	}
	if len(rows) == 0 {
		problems = append(problems, jobfile.Problem{File: k.Measured,
			Fault: fault.Fault{Field: "force", Problem: "is filled in on no line", Want: "one measured pair or more"}})
	}
	return rows, step, problems.Err()
}

// input rebuilds the coupons that were measured, and gives the price of another
// ladder by latch.
func (k *calibrateCommand) input(c *console, j *job.File, step job.Step, rung float64, rows []calibrate.Measurement,
	card quote.RateCard) (calibrate.Input, map[string]float64, error) {
	in := calibrate.Input{Assembly: j.Assembly(step), MostRows: c.rows, Stepped: map[string]force.Member{}}
	rounds := map[string]float64{}
	lower, _ := j.Materials.Resolve(step.Lower.MaterialSpec)
	upper, _ := j.Materials.Resolve(step.Upper.MaterialSpec)
	for _, l := range step.Latches {
		of := func(piece bool) bool {
			return slices.ContainsFunc(rows, func(r calibrate.Measurement) bool {
				return r.Latch == l.ID && (r.Coupon == calibrate.Piece) == piece
			})
		}
		if of(false) {
			set, err := solve.Ladder(j, solve.Rung{Latch: l.ID, Steps: k.LadderSteps, Step: rung, Card: card})
			if err != nil {
				return in, nil, err
			}
			if set.Stepped != l.Joint().Opening() {
				in.Stepped[l.ID] = force.Inner
			}
			for _, s := range set.Steps {
				in.Coupons = append(in.Coupons, calibrate.Coupon{Latch: l.ID, Name: fmt.Sprint(s.Number), Size: s.Size, Places: set.Places})
			}
			cost, err := card.LadderCost(solve.CouponItems(set))
			if err != nil {
				return in, nil, k.refused(err)
			}
			rounds[l.ID] = cost.All
		}
		if of(true) {
			in.Coupons = append(in.Coupons, calibrate.Coupon{Latch: l.ID, Name: calibrate.Piece, Size: l.Size(lower, upper).Value,
				Places: len(l.At)})
		}
	}
	return in, rounds, nil
}

// seats compares the dead stop of the tooling with the latches as printed. Where
// there is no tooling it says why.
func (k *calibrateCommand) seats(c *console, out *report.Fitted, fit *calibrate.Fit, j *job.File, step job.Step) error {
	s, _, err := k.solve(c)
	if problems, ours := errors.AsType[jobfile.Problems](err); ours {
		out.NoStop = "no tooling can be designed: " + j.Spoken(problems[0].Fault.Error())
		return nil
	} else if err != nil {
		return err
	}
	if !s.Tooled() {
		out.NoStop = "no manual method is good enough, so there is no tooling"
		return nil
	}
	for i := range s.Steps {
		if s.Steps[i].LatchesPath == step.LatchesPath {
			out.Past = s.NestOf(i).Past
		}
	}
	out.Seats, err = fit.Seats(out.Past)
	return err
}

// wrong gives faults of the table their file and line. Other errors stay as they are.
func (k *calibrateCommand) wrong(err error) error {
	var problems jobfile.Problems
	var walk func(error) bool
	walk = func(err error) bool {
		if l, ok := err.(calibrate.LineFault); ok {
			problems = append(problems, jobfile.Problem{File: k.Measured, Line: l.Line, Fault: l.Fault})
			return true
		}
		if f, ok := err.(fault.Fault); ok {
			problems = append(problems, jobfile.Problem{File: k.Measured, Fault: f})
			return true
		}
		many, ok := err.(interface{ Unwrap() []error })
		if !ok {
			one := errors.Unwrap(err)
			return one != nil && walk(one)
		}
		for _, e := range many.Unwrap() {
			if !walk(e) {
				return false
			}
		}
		return true
	}
	if !walk(err) {
		return err
	}
	return problems
}

// A calibrated command takes what the shop measured.
type calibrated struct {
	source
	Calibration string `placeholder:"FILE" help:"The shop's calibration file, from ramnest calibrate. Every figure that it replaces is printed."`
}

// read reads the job and the calibration file.
func (k calibrated) read(c *console) (*job.File, *jobfile.Document, error) {
	j, doc, err := k.source.read(c)
	if err != nil || k.Calibration == "" {
		return j, doc, err
	}
	sheet, _, err := readSheet(c, k.Calibration)
	if err != nil {
		return nil, nil, err
	}
	j.Calibration = sheet
	return j, doc, nil
}

// readSheet reads and validates a calibration file.
func readSheet(c *console, name string) (*calibrate.Sheet, []byte, error) {
	return readShopFile(c, name, func(s *calibrate.Sheet) []fault.Fault { return s.Validate() })
}
