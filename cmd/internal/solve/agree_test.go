package solve_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"ramnest/fixture/mesh"

	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/fixture"
	"ramnest/force/fault"
	"ramnest/force/method"
)

// pressed is a job for a press; the shop has a low one and a tall one.
const pressed = `job: T-1
title: Cap
date: 2026-11-25
rate_per_hour: 20
hours_per_shift: 1
lower:
  name: housing
  material: PA12
  build: along
  envelope: {layers: [{from: 0, to: 30, circle: {diameter: 40}}]}
upper:
  name: pin
  material: steel
  envelope: {layers: [{from: 20, to: 40, circle: {diameter: 8}}]}
latches:
  - {id: pin, at: [[0, 0]], z: 25, press_fit: {outside: lower, pin_diameter: 8, pin_tol: 0.005, bore_diameter: 7.96, bore_tol: 0.01, outer_diameter: 16, engagement_length: 8, lead_in_angle: 15}}
bench:
  without: [mallet]
  presses:
    - {name: low, rated_force: 8000, ratio: 30, ram_square: 25, daylight_max: 110, throat: 80}
    - {name: tall, rated_force: 16000, ratio: 30, ram_square: 25, daylight_max: 300, throat: 80}
`

// tooling is what a fixture of some height comes to.
func tooling(o fixture.Order, anvil float64) fixture.Tooling {
	mesh := &mesh.Mesh{Vertices: [][3]float64{{0, 0, 0}}}
	t := fixture.Tooling{Nests: []fixture.Nest{{Piece: fixture.Piece{Name: "nest", Size: [3]float64{60, 60, 40}, Volume: 5e4, Mesh: mesh}, Top: 20, Body: 28, Steps: []int{0}}}}
	for i := range o.Steps {
		t.Anvils = append(t.Anvils, fixture.Anvil{
			Piece: fixture.Piece{Name: "anvil", Size: [3]float64{60, 60, anvil}, Volume: 5e4, Mass: 0.1, Mesh: mesh},
			Step:  i, Above: 40 + anvil,
		})
	}
	return t
}

func TestMethodAndToolingComeToAgree(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name    string
		heights []float64 // of the anvil, design by design
		rounds  int
		press   string // chosen in the end; empty: none
		refused string
	}{
		{"at once", []float64{15}, 1, "low", ""},
		{"a tall anvil needs the tall press", []float64{60, 60}, 2, "tall", ""},
		{"shorter again after a longer look", []float64{60, 15, 15}, 3, "low", ""},
		{"too tall for both", []float64{400}, 1, "", ""},
		{"never", []float64{60, 15, 60}, 0, "", "method: tooling and method do not come to agree: designed for arbor press (low), then it needs arbor press (tall) (method.force set to one of them, or bench and fixture changed)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			j, _ := solvetest.Read(t, "x.yaml", pressed)
			round := 0
			s, err := solve.Run(j, solve.Means{Design: func(o fixture.Order) (fixture.Tooling, error) {
				round++
				return tooling(o, c.heights[round-1]), nil
			}})
			text := ""
			if err != nil {
				text = err.Error()
			}
			if text != c.refused {
				t.Fatalf("refused with %q, want %q", text, c.refused)
			}
			if c.refused != "" {
				return
			}
			press := ""
			if p := s.Steps[0].Chosen().Press; p != nil {
				press = p.Name
			}
			if s.Rounds != c.rounds || press != c.press || s.Tooled() != (c.press != "") {
				t.Errorf("%d rounds, press %q, tooled %v; want %d, %q", s.Rounds, press, s.Tooled(), c.rounds, c.press)
			}
		})
	}
}

func TestTheDemandHasTheSizesOfTheTooling(t *testing.T) {
	t.Parallel()
	j, _ := solvetest.Read(t, "x.yaml", pressed)
	s, err := solve.Run(j, solve.Means{Design: func(o fixture.Order) (fixture.Tooling, error) { return tooling(o, 15), nil }})
	if err != nil {
		t.Fatal(err)
	}
	d := s.Steps[0].Demand
	// The ram stands 55 above the seat of z = 0, the nest reaches 20, its body is 28.
	if got := d.NestSize[2] + d.PartStackHeight + d.AnvilHeight; got != 28+35 {
		t.Errorf("from the table to the ram %g mm, want 63", got)
	}
	if d.AnvilMass != 0.1 || d.PartStackHeight != 20 {
		t.Errorf("anvil %g kg, parts %g mm above the nest; want 0.1 and 20", d.AnvilMass, d.PartStackHeight)
	}
	// A steel pin of 8 x 20: 7.85 g/cm3, its outline drawn outside the circle by up to 0.02 mm.
	if pin := 7.85e-6 * 3.14159265 * 16 * 20; d.UpperMass < pin || d.UpperMass > 1.01*pin {
		t.Errorf("the pin weighs %g kg, want a little above %g", d.UpperMass, pin)
	}
}

func TestWhatDesignRefuses(t *testing.T) {
	t.Parallel()
	broken := errors.New("mesh is not closed")
	for _, c := range []struct {
		name string
		err  error
		want []string // fields of the faults; nil: no fault of the job
	}{
		{"one fault", fault.Fault{Field: "fixture.grip", Problem: "x"}, []string{"fixture.grip"}},
		{"a material", fault.Fault{Field: "fixture.printed_in", Problem: "x"}, []string{"fixture.printed_in"}},
		{"two", errors.Join(fault.Fault{Field: "upper", Problem: "x"}, fault.Fault{Field: "fixture", Problem: "y"}), []string{"upper", "fixture"}},
		{"the program's own", broken, nil},
		{"both", errors.Join(fault.Fault{Field: "upper"}, broken), nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			j, _ := solvetest.Read(t, "x.yaml", pressed)
			_, err := solve.Run(j, solve.Means{Design: func(fixture.Order) (fixture.Tooling, error) { return fixture.Tooling{}, c.err }})
			var got []string
			if r, ok := errors.AsType[*solve.Refused](err); ok {
				for _, f := range r.Faults {
					got = append(got, f.Field)
				}
			}
			if err == nil || !slices.Equal(got, c.want) {
				t.Errorf("%v: fields %q, want %q", err, got, c.want)
			}
		})
	}
}

// twoSteps presses a pin in and knocks a second one in, on one lower part.
const twoSteps = `job: T-2
title: Two pins
date: 2026-11-25
rate_per_hour: 20
hours_per_shift: 1
lower:
  name: base
  material: PA12
  build: along
  envelope: {layers: [{from: 0, to: 30, rectangle: {size: [60, 30]}}]}
steps:
  - name: first
    upper: {name: pin A, material: steel, envelope: {layers: [{from: 20, to: 36, circle: {at: [-20, 0], diameter: 8}}]}}
    latches: [{id: a, at: [[-20, 0]], z: 25, use: releasable, press_fit: {outside: lower, pin_diameter: 8, pin_tol: 0.005, bore_diameter: 7.97, bore_tol: 0.005, outer_diameter: 16, engagement_length: 4, lead_in_angle: 15}}]
  - name: second
    upper: {name: pin B, material: steel, envelope: {layers: [{from: 20, to: 36, circle: {at: [20, 0], diameter: 8}}]}}
    latches: [{id: b, at: [[20, 0]], z: 25, use: releasable, press_fit: {outside: lower, pin_diameter: 8, pin_tol: 0.005, bore_diameter: 7.94, bore_tol: 0.005, outer_diameter: 16, engagement_length: 8, lead_in_angle: 15}}]
`

func TestStepsThatShareANestShareItsBase(t *testing.T) {
	t.Parallel()
	j, _ := solvetest.Read(t, "x.yaml", twoSteps)
	var asked []method.Method
	s, err := solve.Run(j, solve.Means{Design: func(o fixture.Order) (fixture.Tooling, error) {
		for _, st := range o.Steps {
			asked = append(asked, st.Method.Method)
		}
		return tooling(o, 15), nil
	}})
	if err != nil {
		t.Fatal(err)
	}
	// Alone, the first step would be for the mallet.
	if first := s.Steps[0].Decision.RunnerUp; first != method.ByMallet {
		t.Fatalf("the first step alone would be %s; this test needs the mallet there", first)
	}
	if !slices.Equal(asked, []method.Method{method.ByPress, method.ByPress}) {
		t.Errorf("designed for %v, want the press twice", asked)
	}
	if why := s.Steps[0].Decision.Reason; !strings.Contains(why.String(), `the nest is shared with "second"`) {
		t.Errorf("reason: %s", why)
	}

	// On a nest of its own the first step keeps its mallet.
	own, _ := solvetest.Read(t, "x.yaml", twoSteps, "steps.1.lower={name: other, material: PA12, build: along, envelope: {layers: [{from: 0, to: 30, rectangle: {size: [62, 30]}}]}}")
	s, err = solve.Run(own, solve.Means{Design: func(o fixture.Order) (fixture.Tooling, error) { return tooling(o, 15), nil }})
	if err != nil {
		t.Fatal(err)
	}
	if got := s.Steps[0].Decision.Chosen; got != method.ByMallet {
		t.Errorf("on a nest of its own the first step is %s, want the mallet", got)
	}
}
