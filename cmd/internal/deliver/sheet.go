package deliver

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/pictures"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/fixture"
	"ramnest/force"
	workinstructions "ramnest/work-instructions"
	"ramnest/work-instructions/catalogue"
)

// sheet fills the work instruction.
func sheet(ctx context.Context, s *solve.Solution, tool string) (workinstructions.Sheet, error) {
	j := s.Job
	date, err := time.Parse(time.DateOnly, j.Date)
	if err != nil {
		return workinstructions.Sheet{}, fmt.Errorf("date of the job: %w", err)
	}
	out := workinstructions.Sheet{
		Paper: workinstructions.Paper(j.Sheet()), Job: j.Number, Title: j.Title, Revision: orNone(j.Revision, catalogue.Language(j.Language)), Author: j.Author,
		Date: date, Fingerprint: s.Fingerprint, Tool: tool, Inches: j.Inch(),
		Quantity: j.Quantity, RatePerHour: j.RatePerHour,
		Language: catalogue.Language(j.Language), Assumed: len(s.Defaults),
	}
	for _, w := range report.Warnings(s) {
		about := w.Latch
		if about == "" && len(s.Steps) > 1 {
			about = w.Step
		}
		out.Warnings = append(out.Warnings, workinstructions.Remark{Number: w.Number, About: about, Text: w.Text})
	}
	order := s.Order()
	for i := range s.Steps {
		set, err := pictures.OfStep(ctx, order.Steps[i], s.NestOf(i), s.Tooling.Anvils[i])
		if err != nil {
			return out, fmt.Errorf("pictures of %q: %w", s.Steps[i].Name, err)
		}
		if err := addStep(&out, s, i, order.Steps[i], set); err != nil {
			return out, err
		}
	}
	return out, nil
}

func orNone(s string, in catalogue.Language) string {
	if s == "" {
		return in.Say("none")
	}
	return s
}

// stepName is the name of a press step: that of the job, or for a flat job what is
// pressed on, in the language of the sheet.
func stepName(j *job.File, st *solve.Step, in catalogue.Language) string {
	if len(j.PressSteps) == 0 {
		return in.Say("step.press on", st.Upper.Name)
	}
	return st.Name
}

// addStep adds a step with its parts and tooling.
func addStep(out *workinstructions.Sheet, s *solve.Solution, i int, of fixture.Step, set pictures.Set) error {
	st := &s.Steps[i]
	n, a := s.NestOf(i), s.Tooling.Anvils[i]
	number := i + 1
	first := true
	for k := range s.Steps[:i] {
		if s.Steps[k].Lower == st.Lower {
			first = false
		}
	}
	lower, soFar := st.Lower.Name, false
	if first {
		out.Parts = append(out.Parts, workinstructions.Part{Name: lower, Material: st.LowerMaterial.Name, Process: st.LowerMaterial.Process, Role: workinstructions.Lower, Step: number, Count: 1, Picture: set.Lower})
	} else {
		soFar = true
	}
	out.Parts = append(out.Parts, workinstructions.Part{Name: st.Upper.Name, Material: st.UpperMaterial.Name, Process: st.UpperMaterial.Process, Role: workinstructions.Upper, Step: number, Count: 1, Picture: set.Upper})
	if n.Steps[0] == i {
		var steps []int
		for _, k := range n.Steps {
			steps = append(steps, k+1)
		}
		out.Tooling = append(out.Tooling, workinstructions.Tool{Name: n.Name, Mark: n.Mark, Size: n.Size, Mass: n.Mass, Material: s.Material.Name, Process: s.Material.Process, Steps: steps, Picture: set.Nest})
	}
	out.Tooling = append(out.Tooling, workinstructions.Tool{Name: a.Name, Mark: a.Mark, Size: a.Size, Mass: a.Mass, Material: s.Material.Name, Process: s.Material.Process, Steps: []int{number}, Picture: set.Under})
	if st.Decision.Overridden {
		out.Override = s.Job.Method.Override
	}
	seat, err := seatGap(of, st.Result)
	if err != nil {
		return err
	}
	r := st.Result
	step := workinstructions.Step{
		Name: stepName(s.Job, st, catalogue.Language(out.Language)), Lower: lower, SoFar: soFar, Upper: st.Upper.Name, Nest: n.Name, Anvil: a.Name,
		OneWay: n.OneWay, AnyWay: n.AnyWay, Guided: len(n.Pins) > 0, Decision: st.Decision,
		Force: workinstructions.Force{
			Design: r.Design, Peak: r.Peak, P5: r.P5, P50: r.P50, P95: r.P95, Worst: r.Worst, WorstJams: r.WorstJams, Jammed: r.Jammed,
			Seat: r.SeatForce, Stroke: r.Stroke, Work: r.Work, Humps: felt(r), Curve: r.Curve.Points(200),
		},
		Thrust: force.Point{X: a.Thrust.X - n.Between.X, Y: a.Thrust.Y - n.Between.Y},
		Seat:   seat,
		Facts: workinstructions.Facts{
			Brittle: st.Demand.Brittle, ShockSensitive: st.Demand.ShockSensitive, Electronics: st.Demand.Electronics,
			KeepOuts:     len(st.Lower.KeepOuts)+len(st.Upper.KeepOuts) > 0,
			Snaps:        snaps(st.Latches),
			Overstrained: r.Overstrained, Opening: a.Gap, Ejection: n.Ejection, Past: n.Past,
			AnvilCloses: a.Mass*9.81 > 0.3*r.P5,
			Permanent:   st.Demand.Permanent, AcrossLayers: st.Demand.AcrossLayers,
		},
		Pictures: workinstructions.Pictures{
			Load:    workinstructions.Picture{Image: set.Load},
			Place:   workinstructions.Picture{Image: set.Place},
			Anvil:   workinstructions.Picture{Image: set.Anvil},
			Press:   workinstructions.Picture{Image: set.Press},
			Section: workinstructions.Picture{Image: set.Section},
			Plan:    workinstructions.Picture{Image: set.Plan},

			Exploded: workinstructions.Picture{Image: set.Exploded},
			Layers:   layers(set.Layers),
		},
	}
	for _, l := range st.Chosen().Limits {
		switch l.Name {
		case "lever effort":
			step.Lever = l.Demand
		case "rated force with margin":
			step.Usable = l.Capacity
		}
	}
	for k, l := range r.Latches {
		step.Latches = append(step.Latches, workinstructions.Latch{
			ID: l.ID, Kind: strings.ReplaceAll(l.Kind, "_", " "), Count: l.Count, PeakEach: l.PeakEach, Strain: l.Strain, Permitted: l.Permitted,
			Permanent: st.Latches[k].Use != "releasable", Separation: l.Separation, SelfLocking: l.SelfLocking,
		})
	}
	out.Steps = append(out.Steps, step)
	return nil
}

// layers are the places of the bodies in the exploded view.
func layers(at [4]pictures.Layer) [4][2]float64 {
	var out [4][2]float64
	for i, l := range at {
		out[i] = [2]float64{l.X, l.Y}
	}
	return out
}

// felt is how often the force rises and drops: a rise that lasts to the seat is no
// click.
func felt(r force.Result) int {
	if r.SeatForce > 0 {
		return max(0, r.Humps-1)
	}
	return r.Humps
}

// snaps tells whether a latch springs in.
func snaps(latches []force.Latch) bool {
	return slices.ContainsFunc(latches, func(l force.Latch) bool { return l.Annular != nil || l.Ball != nil || l.Cantilever != nil })
}

// The bounds of the acceptance of a seated gap [mm] (own): a feeler gauge tells
// tenths, and beyond the most nobody would call a part seated.
const (
	leastSeat = 0.1
	mostSeat  = 0.5
)

// seatGap says what is measured to accept a seated part. A snap is home once its
// force is over: the gap may be what is left of the stroke then. A gap that no gauge
// reaches is measured as the height over all; where there is none, under the anvil.
func seatGap(st fixture.Step, r force.Result) (workinstructions.Gap, error) {
	g, ok, open, err := fixture.SeatGap(st.Lower, st.Upper)
	if err != nil {
		return workinstructions.Gap{}, err
	}
	tolerance := math.Max(leastSeat, math.Min(mostSeat, home(r)))
	parts := [2]string{st.Lower.Name, st.Upper.Name}
	switch {
	case ok && open:
		return workinstructions.Gap{Nominal: g, Tolerance: tolerance, Between: parts}, nil
	case st.Upper.Envelope.Max[2] >= st.Lower.Envelope.Max[2]:
		low, high := st.Lower.Envelope.Min[2], st.Upper.Envelope.Max[2]
		process := st.Lower.Material.ToleranceOn(st.Lower.Envelope.Max[2]-low) + st.Upper.Material.ToleranceOn(high-st.Upper.Envelope.Min[2])
		return workinstructions.Gap{Kind: workinstructions.OverAll, Nominal: high - low, Tolerance: tolerance + process, Between: parts}, nil
	}
	return workinstructions.Gap{Kind: workinstructions.UnderAnvil, Tolerance: 0.05}, nil
}

// home is the lift at which the last latch is over its hump [mm]; 0 if it takes force
// to the seat.
func home(r force.Result) float64 {
	least := math.Inf(1)
	for _, l := range r.Latches {
		at := 0.0
		for _, p := range l.Curve.Points(400) { // lift falling
			if p[1] > 0.01*l.PeakEach {
				at = p[0]
			}
		}
		least = math.Min(least, at)
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}
