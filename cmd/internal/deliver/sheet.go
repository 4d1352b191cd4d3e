package deliver

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"time"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/pictures"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/fixture"
	"ramnest/force"
	"ramnest/force/method"
	"ramnest/force/planar"
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
		Paper: workinstructions.Paper(j.Sheet()), Job: j.Number, Title: j.Title, Revision: orNone(j.Revision, catalogue.Language(j.Language)),
		Author: j.Author,
		Date:   date, Fingerprint: s.Fingerprint, Tool: tool, Units: j.Shown(),
		Quantity: j.Quantity, RatePerHour: j.RatePerHour,
		Language: catalogue.Language(j.Language), Assumed: len(s.Defaults),
	}
	for _, w := range report.Warnings(s) {
		about := w.Latch
		if about == "" && len(s.Steps) > 1 {
			about = w.Step
		}
		out.Warnings = append(out.Warnings, workinstructions.Remark{Number: w.Number, About: about, Text: w.Text, Figures: w.Figures})
	}
	order := s.Order()
	for i := range s.Steps {
		set, err := pictures.OfStep(ctx, order.Steps[i], s.NestOf(i), s.Tooling.Anvils[i])
		if err != nil {
			return out, fmt.Errorf("pictures of %q: %w", s.Steps[i].Name, err)
		}
		addStep(&out, s, i, set)
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
func addStep(out *workinstructions.Sheet, s *solve.Solution, i int, set pictures.Set) {
	st := &s.Steps[i]
	n, a := s.NestOf(i), s.Tooling.Anvils[i]
	number := i + 1
	if firstOn(s, i) {
		out.Parts = append(out.Parts, workinstructions.Part{Name: st.Lower.Name, Material: st.LowerMaterial.Name,
			Process: st.LowerMaterial.Process, Role: workinstructions.Lower, Step: number, Count: 1, Picture: set.Lower})
	}
	out.Parts = append(out.Parts, workinstructions.Part{Name: st.Upper.Name, Material: st.UpperMaterial.Name,
		Process: st.UpperMaterial.Process, Role: workinstructions.Upper, Step: number, Count: 1, Picture: set.Upper})
	if n.Steps[0] == i {
		var steps []int
		for _, k := range n.Steps {
			steps = append(steps, k+1)
		}
		out.Tooling = append(out.Tooling, workinstructions.Tool{Name: n.Name, Mark: n.Mark, Size: n.Size, Mass: n.Mass, Material: s.Material.Name,
			Process: s.Material.Process, Steps: steps, Picture: set.Nest})
	}
	out.Tooling = append(out.Tooling, workinstructions.Tool{Name: a.Name, Mark: a.Mark, Size: a.Size, Mass: a.Mass, Material: s.Material.Name,
		Process: s.Material.Process, Steps: []int{number}, Picture: set.Under})
	if st.Decision.Overridden {
		out.Override = s.Job.Method.Override
	}
	step := stepOf(s, i)
	step.Pictures = workinstructions.Pictures{
		Load:    workinstructions.Picture{Image: set.Load},
		Place:   workinstructions.Picture{Image: set.Place},
		Anvil:   workinstructions.Picture{Image: set.Anvil},
		Press:   workinstructions.Picture{Image: set.Press},
		Section: workinstructions.Picture{Image: set.Section},
		Plan:    workinstructions.Picture{Image: set.Plan},
		Cut:     set.Cut,

		Exploded: workinstructions.Picture{Image: set.Exploded},
		Layers:   layers(set.Layers),
	}
	out.Steps = append(out.Steps, step)
}

// stepOf is a press step of the sheet, without its pictures.
func stepOf(s *solve.Solution, i int) workinstructions.Step {
	st := &s.Steps[i]
	n, a := s.NestOf(i), s.Tooling.Anvils[i]
	r := st.Result
	step := workinstructions.Step{
		Name: stepName(s.Job, st, catalogue.Language(s.Job.Language)), Lower: st.Lower.Name, SoFar: !firstOn(s, i), Upper: st.Upper.Name,
		Nest: n.Name, Anvil: a.Name,
		OneWay: n.OneWay, AnyWay: n.AnyWay, Guided: len(n.Pins) > 0, Decision: st.Decision,
		Force: workinstructions.Force{
			Design: r.Design, Peak: r.Peak, P5: r.P5, P50: r.P50, P95: r.P95, Worst: r.Worst, WorstJams: r.WorstJams, Jammed: r.Jammed,
			Seat: r.SeatForce, Stroke: r.Stroke, Work: r.Work, Humps: felt(r), Curve: r.Curve.Points(200),
		},
		Thrust: planar.Point{X: a.Thrust.X - n.Between.X, Y: a.Thrust.Y - n.Between.Y},
		Seat:   seat(st),
		Facts: workinstructions.Facts{
			Brittle: st.Demand.Brittle, ShockSensitive: st.Demand.ShockSensitive, Electronics: st.Demand.Electronics,
			KeepOuts:     len(st.Lower.KeepOuts)+len(st.Upper.KeepOuts) > 0,
			Snaps:        snaps(st.Latches),
			Overstrained: r.Overstrained, Opening: a.Gap, Ejection: n.Ejection, Past: n.Past,
			AnvilCloses: a.Closes(r.P5),
			Permanent:   st.Demand.Permanent, AcrossLayers: st.Demand.AcrossLayers,
		},
	}
	for _, p := range n.StepPins {
		if p.Step == i {
			step.Pin = workinstructions.Pin{Hole: i + 1, Wide: p.Wide, Long: p.Long}
		}
	}
	step.Hold = workinstructions.Hold{Wanted: r.HoldWanted}
	if i := r.HoldLatch; i >= 0 {
		step.Hold.Now = r.Latches[i].Hold.P5
	}
	if i := r.HoldLifeLatch; i >= 0 {
		step.Hold.Life, step.Hold.Known = r.Latches[i].Hold.Life, true
	}
	for _, l := range st.Chosen().Limits {
		switch l.ID {
		case method.LimitLever:
			step.Lever = l.Demand
		case method.LimitRated:
			step.Usable = l.Capacity
		}
	}
	for k, l := range r.Latches {
		step.Latches = append(step.Latches, workinstructions.Latch{
			ID: l.ID, Kind: strings.ReplaceAll(l.Kind, "_", " "), Count: l.Count, PeakEach: l.PeakEach, Strain: l.Strain, Permitted: l.Permitted,
			Permanent: st.Latches[k].Use != "releasable", Separation: l.Separation, SelfLocking: l.SelfLocking,
		})
	}
	return step
}

// firstOn tells whether nothing was pressed on the lower part of a step before.
func firstOn(s *solve.Solution, i int) bool {
	return !slices.ContainsFunc(s.Steps[:i], func(st solve.Step) bool { return st.Lower == s.Steps[i].Lower })
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
	return slices.ContainsFunc(latches, func(l force.Latch) bool { return l.Joint().Snaps() })
}

// seat is what is measured to accept a seated pair. One reading is taken of every piece;
// three of the first five and of one in ten: so few are kept up, and a change of material
// or printer still shows (own).
func seat(st *solve.Step) workinstructions.Gap {
	kinds := map[fixture.SeatProof]workinstructions.GapKind{
		fixture.ProofAtSeam: workinstructions.BetweenParts, fixture.ProofOverAll: workinstructions.OverAll,
		fixture.ProofDepth:  workinstructions.BelowRim,
		fixture.ProofOnPair: workinstructions.OnPair, fixture.ProofAtStops: workinstructions.UnderAnvil,
	}
	p := st.Seated
	g := workinstructions.Gap{Kind: kinds[p.Proof], Low: max(0, p.Low), High: p.High, Between: [2]string{st.Lower.Name, st.Upper.Name}}
	if p.Proof == fixture.ProofOnPair {
		g.Alone, g.First, g.Each = [2]float64{p.LowerAlone, p.UpperAlone}, 5, 10
	}
	return g
}
