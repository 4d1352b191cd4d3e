package deliver

import (
	"fmt"
	"math"
	"reflect"
	"sync"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/pictures"
	"ramnest/cmd/internal/solve"
	"ramnest/fixture"
	"ramnest/fixture/envelope"
	"ramnest/force"
	"ramnest/force/method"
	"ramnest/force/planar"
	"ramnest/force/unit"
	workinstructions "ramnest/work-instructions"
)

// made is a solution of two steps on one part in which every figure and fact is another,
// so that one in the wrong place shows.
func made() *solve.Solution {
	base, first, second := &job.Part{Name: "base"}, &job.Part{Name: "first"}, &job.Part{Name: "second", KeepOuts: []envelope.KeepOut{{}}}
	s := &solve.Solution{
		Job:     &job.File{Title: "t"},
		Tooling: &fixture.Tooling{},
	}
	s.Job.PressSteps = make([]job.PressStep, 2)
	nest := fixture.Nest{Piece: fixture.Piece{Name: "the nest"}, Steps: []int{0, 1}, Past: 0.25, Ejection: true, Between: planar.Point{X: 3, Y: 5}, OneWay: true, AnyWay: true, Pins: []planar.Point{{}}}
	s.Tooling.Nests = []fixture.Nest{{Piece: fixture.Piece{Name: "another"}}, nest}
	s.Tooling.Anvils = []fixture.Anvil{
		{Piece: fixture.Piece{Name: "anvil 1", Mass: 0.1}, Nest: 1, Gap: 11},
		{Piece: fixture.Piece{Name: "anvil 2", Mass: 0.7}, Nest: 1, Gap: 12, Thrust: planar.Point{X: 10, Y: 20}},
	}
	s.Steps = []solve.Step{
		{Step: job.Step{Name: "one", Lower: base, Upper: first}, Result: force.Result{HoldLatch: -1, HoldLifeLatch: -1}, Seated: fixture.Seated{Proof: fixture.ProofAtSeam, Low: -0.2, High: 0.45}},
		{
			Step: job.Step{Name: "two", Lower: base, Upper: second, Latches: []force.Latch{
				{ID: "rim", Use: "releasable", Annular: &force.Annular{}}, {ID: "pin", PressFit: &force.PressFit{}},
			}},
			Result: force.Result{
				Design: 101, Peak: 102, P5: 20, P50: 104, P95: 105, Worst: 106, WorstJams: true, Jammed: 0.07, SeatForce: 0, Stroke: 2.5, Work: 108, Humps: 3, Overstrained: 0.11,
				Curve: curve(),
				Latches: []force.LatchResult{
					{ID: "rim", Kind: "annular", Count: 2, PeakEach: 31, Strain: 0.032, Permitted: 0.033, Separation: 34, Hold: force.Hold{P5: 35, Life: 36}},
					{ID: "pin", Kind: "press_fit", Count: 4, PeakEach: 41, Strain: 0.042, Permitted: 0.043, SelfLocking: true, Hold: force.Hold{P5: 45, Life: 46}},
				},
				HoldLatch: 0, HoldLifeLatch: 1, HoldWanted: 44,
			},
			Demand: method.Demand{Brittle: true, ShockSensitive: true, Electronics: true, Permanent: true, AcrossLayers: true},
			Decision: method.Decision{Chosen: method.ByPress, Reason: unit.Say("r"), Options: []method.Assessment{
				{Method: method.ByHand, Limits: []method.Limit{{ID: method.LimitLever, Name: "lever effort", Demand: 1}, {ID: method.LimitRated, Name: "rated force with margin", Capacity: 2}}},
				{Method: method.ByPress, Limits: []method.Limit{{ID: method.LimitLever, Name: "lever effort", Demand: 61, Capacity: 62}, {ID: method.LimitRated, Name: "rated force with margin", Demand: 63, Capacity: 64}, {Name: "daylight", Demand: 65, Capacity: 66}}},
			}},
			Seated: fixture.Seated{Proof: fixture.ProofOnPair, Low: 0, High: 0.75, LowerAlone: 17, UpperAlone: 18},
		},
	}
	return s
}

// curve is one of a real latch.
var curve = sync.OnceValue(func() force.Curve {
	part := force.MaterialSpec{Material: "ABS", Process: "moulded"}
	r, err := force.Analyse(force.Assembly{Lower: part, Upper: part, Draws: 100, Latches: []force.Latch{{ID: "arm", At: []planar.Point{{}},
		Cantilever: &force.Cantilever{Flexes: "upper", Bends: "outward", Undercut: 0.5, MatingAngle: 0.5, ReturnAngle: 0.8, Land: 0.5, Length: 15, Thickness: 1.5, Width: 5}}}})
	if err != nil {
		panic(err)
	}
	return r.Curve
})

// Everything that the solution knows of a step stands on the sheet, each in its place.
func TestEveryFactIsHandedOver(t *testing.T) {
	s := made()
	got := stepOf(s, 1)
	want := workinstructions.Step{
		Name: "two", Lower: "base", SoFar: true, Upper: "second", Nest: "the nest", Anvil: "anvil 2", OneWay: true, AnyWay: true, Guided: true,
		Decision: s.Steps[1].Decision, Usable: 64, Lever: 61,
		Force: workinstructions.Force{Design: 101, Peak: 102, P5: 20, P50: 104, P95: 105, Worst: 106, WorstJams: true, Jammed: 0.07, Stroke: 2.5, Work: 108, Humps: 3, Curve: s.Steps[1].Result.Curve.Points(200)},
		Facts: workinstructions.Facts{Brittle: true, ShockSensitive: true, Electronics: true, KeepOuts: true, Snaps: true, Permanent: true, AcrossLayers: true, Overstrained: 0.11, Opening: 12, AnvilCloses: true, Ejection: true, Past: 0.25},
		Latches: []workinstructions.Latch{
			{ID: "rim", Kind: "annular", Count: 2, PeakEach: 31, Strain: 0.032, Permitted: 0.033, Separation: 34},
			{ID: "pin", Kind: "press fit", Count: 4, PeakEach: 41, Strain: 0.042, Permitted: 0.043, Permanent: true, SelfLocking: true},
		},
		Hold:   workinstructions.Hold{Wanted: 44, Now: 35, Life: 46, Known: true},
		Thrust: planar.Point{X: 7, Y: 15},
		Seat:   workinstructions.Gap{Kind: workinstructions.OnPair, High: 0.75, Between: [2]string{"base", "second"}, Alone: [2]float64{17, 18}, First: 5, Each: 10},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
	if n := len(got.Force.Curve); n < 150 || n > 300 {
		t.Errorf("a curve of %d points", n)
	}
}

// Each fact that is a yes or a no is the solution's own: turned there, it turns on the
// sheet, and nothing else does.
func TestEachFactAlone(t *testing.T) {
	for name, c := range map[string]struct {
		change func(s *solve.Solution, st *solve.Step)
		want   func(w *workinstructions.Step)
	}{
		"one way":       {func(s *solve.Solution, _ *solve.Step) { s.Tooling.Nests[1].OneWay = false }, func(w *workinstructions.Step) { w.OneWay = false }},
		"any way":       {func(s *solve.Solution, _ *solve.Step) { s.Tooling.Nests[1].AnyWay = false }, func(w *workinstructions.Step) { w.AnyWay = false }},
		"guide pins":    {func(s *solve.Solution, _ *solve.Step) { s.Tooling.Nests[1].Pins = nil }, func(w *workinstructions.Step) { w.Guided = false }},
		"ejection":      {func(s *solve.Solution, _ *solve.Step) { s.Tooling.Nests[1].Ejection = false }, func(w *workinstructions.Step) { w.Facts.Ejection = false }},
		"past":          {func(s *solve.Solution, _ *solve.Step) { s.Tooling.Nests[1].Past = 0 }, func(w *workinstructions.Step) { w.Facts.Past = 0 }},
		"opening":       {func(s *solve.Solution, _ *solve.Step) { s.Tooling.Anvils[1].Gap = 9 }, func(w *workinstructions.Step) { w.Facts.Opening = 9 }},
		"a light anvil": {func(s *solve.Solution, _ *solve.Step) { s.Tooling.Anvils[1].Mass = 0.6 }, func(w *workinstructions.Step) { w.Facts.AnvilCloses = false }},
		"a lower P5":    {func(_ *solve.Solution, st *solve.Step) { st.Result.P5 = 24 }, func(w *workinstructions.Step) { w.Force.P5, w.Facts.AnvilCloses = 24, false }},
		"brittle":       {func(_ *solve.Solution, st *solve.Step) { st.Demand.Brittle = false }, func(w *workinstructions.Step) { w.Facts.Brittle = false }},
		"shock":         {func(_ *solve.Solution, st *solve.Step) { st.Demand.ShockSensitive = false }, func(w *workinstructions.Step) { w.Facts.ShockSensitive = false }},
		"electronics":   {func(_ *solve.Solution, st *solve.Step) { st.Demand.Electronics = false }, func(w *workinstructions.Step) { w.Facts.Electronics = false }},
		"permanent":     {func(_ *solve.Solution, st *solve.Step) { st.Demand.Permanent = false }, func(w *workinstructions.Step) { w.Facts.Permanent = false }},
		"across layers": {func(_ *solve.Solution, st *solve.Step) { st.Demand.AcrossLayers = false }, func(w *workinstructions.Step) { w.Facts.AcrossLayers = false }},
		"no keep-out":   {func(_ *solve.Solution, st *solve.Step) { st.Upper.KeepOuts = nil }, func(w *workinstructions.Step) { w.Facts.KeepOuts = false }},
		"lower keep-out": {func(_ *solve.Solution, st *solve.Step) {
			st.Upper.KeepOuts, st.Lower.KeepOuts = nil, make([]envelope.KeepOut, 1)
		}, func(*workinstructions.Step) {}},
		"nothing snaps":   {func(_ *solve.Solution, st *solve.Step) { st.Latches[0] = st.Latches[1] }, func(w *workinstructions.Step) { w.Facts.Snaps, w.Latches[0].Permanent = false, true }},
		"releasable":      {func(_ *solve.Solution, st *solve.Step) { st.Latches[1].Use = "releasable" }, func(w *workinstructions.Step) { w.Latches[1].Permanent = false }},
		"no bound":        {func(_ *solve.Solution, st *solve.Step) { st.Result.WorstJams = false }, func(w *workinstructions.Step) { w.Force.WorstJams = false }},
		"lasts":           {func(_ *solve.Solution, st *solve.Step) { st.Result.SeatForce = 9 }, func(w *workinstructions.Step) { w.Force.Seat, w.Force.Humps = 9, 2 }},
		"lasts, no hump":  {func(_ *solve.Solution, st *solve.Step) { st.Result.SeatForce, st.Result.Humps = 9, 0 }, func(w *workinstructions.Step) { w.Force.Seat, w.Force.Humps = 9, 0 }},
		"life not known":  {func(_ *solve.Solution, st *solve.Step) { st.Result.HoldLifeLatch = -1 }, func(w *workinstructions.Step) { w.Hold.Life, w.Hold.Known = 0, false }},
		"life of another": {func(_ *solve.Solution, st *solve.Step) { st.Result.HoldLifeLatch = 0 }, func(w *workinstructions.Step) { w.Hold.Life = 36 }},
		"hold not known":  {func(_ *solve.Solution, st *solve.Step) { st.Result.HoldLatch = -1 }, func(w *workinstructions.Step) { w.Hold.Now = 0 }},
		"by hand":         {func(_ *solve.Solution, st *solve.Step) { st.Decision.Chosen = method.ByHand }, func(w *workinstructions.Step) { w.Decision.Chosen, w.Lever, w.Usable = method.ByHand, 1, 2 }},
		"another part":    {func(_ *solve.Solution, st *solve.Step) { st.Lower = &job.Part{Name: "base"} }, func(w *workinstructions.Step) { w.SoFar = false }},
		"a flat job":      {func(s *solve.Solution, _ *solve.Step) { s.Job.PressSteps = nil }, func(w *workinstructions.Step) { w.Name = "press on the second" }},
		"under the anvil": {func(_ *solve.Solution, st *solve.Step) { st.Seated.Proof = fixture.ProofAtStops }, func(w *workinstructions.Step) {
			w.Seat = workinstructions.Gap{Kind: workinstructions.UnderAnvil, High: 0.75, Between: [2]string{"base", "second"}}
		}},
		"over all": {func(_ *solve.Solution, st *solve.Step) {
			st.Seated = fixture.Seated{Proof: fixture.ProofOverAll, Low: 40, High: 41}
		}, func(w *workinstructions.Step) {
			w.Seat = workinstructions.Gap{Kind: workinstructions.OverAll, Low: 40, High: 41, Between: [2]string{"base", "second"}}
		}},
		"below the rim": {func(_ *solve.Solution, st *solve.Step) {
			st.Seated = fixture.Seated{Proof: fixture.ProofDepth, Low: 4, High: 5}
		}, func(w *workinstructions.Step) {
			w.Seat = workinstructions.Gap{Kind: workinstructions.BelowRim, Low: 4, High: 5, Between: [2]string{"base", "second"}}
		}},
		"at the seam": {func(_ *solve.Solution, st *solve.Step) {
			st.Seated = fixture.Seated{Proof: fixture.ProofAtSeam, Low: -0.1, High: 0.3}
		}, func(w *workinstructions.Step) {
			w.Seat = workinstructions.Gap{High: 0.3, Between: [2]string{"base", "second"}}
		}},
	} {
		t.Run(name, func(t *testing.T) {
			want := stepOf(made(), 1)
			c.want(&want)
			s := made()
			c.change(s, &s.Steps[1])
			got := stepOf(s, 1)
			if name == "by hand" {
				want.Decision.Options = got.Decision.Options
			}
			if !reflect.DeepEqual(got, want) {
				t.Errorf("got  %+v\nwant %+v", got, want)
			}
		})
	}
	if first := stepOf(made(), 0); first.SoFar || first.Anvil != "anvil 1" || first.Hold.Known || first.Seat.Low != 0 || first.Seat.High != 0.45 || first.Facts.KeepOuts {
		t.Errorf("the first step: %+v", first)
	}
}

// The head of the sheet is the job's.
func TestHeadOfTheSheet(t *testing.T) {
	s := made()
	for i := range s.Steps {
		s.Tooling.Anvils[i].Size, s.Tooling.Anvils[i].Mark = [3]float64{1, 2, float64(3 + i)}, "am"
	}
	s.Tooling.Nests[1].Size, s.Tooling.Nests[1].Mark, s.Tooling.Nests[1].Mass = [3]float64{4, 5, 6}, "nm", 0.5
	s.Material = force.Material{Name: "PA12", Process: "PBF"}
	s.Steps[1].LowerMaterial, s.Steps[1].UpperMaterial = force.Material{Name: "ABS", Process: "MEX"}, force.Material{Name: "PC", Process: "moulded"}
	s.Steps[1].Decision.Overridden = true
	s.Job.Method = &job.Wanted{Override: "we know"}
	s.Job.Revision = "B"
	var out workinstructions.Sheet
	addStep(&out, s, 0, picturesOf())
	addStep(&out, s, 1, picturesOf())
	parts := []workinstructions.Part{
		{Name: "base", Role: workinstructions.Lower, Step: 1, Count: 1}, {Name: "first", Role: workinstructions.Upper, Step: 1, Count: 1},
		{Name: "second", Material: "PC", Process: "moulded", Role: workinstructions.Upper, Step: 2, Count: 1},
	}
	tools := []workinstructions.Tool{
		{Name: "the nest", Mark: "nm", Size: [3]float64{4, 5, 6}, Mass: 0.5, Material: "PA12", Process: "PBF", Steps: []int{1, 2}},
		{Name: "anvil 1", Mark: "am", Size: [3]float64{1, 2, 3}, Mass: 0.1, Material: "PA12", Process: "PBF", Steps: []int{1}},
		{Name: "anvil 2", Mark: "am", Size: [3]float64{1, 2, 4}, Mass: 0.7, Material: "PA12", Process: "PBF", Steps: []int{2}},
	}
	if fmt.Sprint(out.Parts, out.Tooling) != fmt.Sprint(parts, tools) || out.Override != "we know" || len(out.Steps) != 2 {
		t.Errorf("parts %+v\ntools %+v\noverride %q, %d steps", out.Parts, out.Tooling, out.Override, len(out.Steps))
	}
	if got := out.Steps[1].Pictures.Layers[2]; math.Abs(got[0]-3)+math.Abs(got[1]-4) > 0 {
		t.Errorf("the third body of the exploded view at %v", got)
	}
	if orNone("B", "en") != "B" || orNone("", "de") == "" || orNone("", "de") == orNone("", "en") {
		t.Errorf("no revision: %q", orNone("", "de"))
	}
}

func picturesOf() (set pictures.Set) {
	set.Layers[2] = pictures.Layer{X: 3, Y: 4}
	return set
}
