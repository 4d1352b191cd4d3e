package jobfile

import (
	"math"
	"reflect"
	"testing"

	"ramnest/force"
)

const metric = `# a job
units: mm
job: 4711
date: 2026-03-31
quantity: 12
small: -128
seed: 18446744073709551615
brittle: true
ratio: 0.35
width: 12.7
push: 111.2055403815125
modulus: 1700
mass: 0.5
work: 0.12
pause: 1.5
strain: 2
angle: 30
box: [25.4, 50.8, 76.2]
size: [2.54, 5.08]
ram: [25.4, -25.4]
outline:
  - [0, 0]
  - [12.7, 0]
words: [hand, press]
walls: {floor: 5.08, rim: 2.54}
latches:
  - id: ring
    at: [[0, 0]]
    use: permanent
    annular:
      undercut: 0.3048
  - {id: pin, at: [[25.4, 25.4]]}
parts:
  lid: {material: PA12, modulus: 1700}
`

const inches = `units: in
job: "4711"
date: "2026-03-31"
quantity: 12
small: -128
seed: 18446744073709551615
brittle: true
ratio: 0.35
width: 0.5
push: 25
modulus: 1.7 GPa
mass: 500 g
work: 120 mJ
pause: 1500 ms
strain: 2 %
angle: 30 deg
box: [1, 2 in, 76.2 mm]
size: [0.1, 0.2]
ram: [1, -1]
outline: [[0, 0], [0.5, 0]]
words: [hand, press]
walls:
  floor: 0.2
  rim: 100 thou
latches:
  - id: ring
    at: [[0, 0]]
    use: permanent
    annular: {undercut: 12 thou}
  - id: pin
    at:
      - [1, 1]
parts: {lid: {material: PA12, modulus: 1700}}
`

func decodeSample(t *testing.T, text string) (sample, *Document, Problems) {
	t.Helper()
	var s sample
	doc, problems := Decode("job.yaml", []byte(text), &s)
	return s, doc, problems
}

func wanted() sample {
	degrees := 30.0 // a variable: constants would be multiplied without rounding
	ring := &sampleRing{Undercut: 0.3048}
	return sample{
		Job: "4711", Date: "2026-03-31", Quantity: 12, Small: -128, Seed: math.MaxUint64, Brittle: true,
		Ratio: 0.35, Width: 12.7, Push: 111.2055403815125, Modulus: 1700, Mass: 0.5, Work: 0.12, Pause: 1.5,
		Strain: new(0.02), Angle: new(degrees * math.Pi / 180),
		Box: [3]float64{25.4, 50.8, 76.2}, Size: &[2]float64{2.54, 5.08},
		Ram: force.Point{X: 25.4, Y: -25.4}, Outline: []force.Point{{}, {X: 12.7}},
		Words: []string{"hand", "press"}, Walls: map[string]length{"floor": 5.08, "rim": 2.54},
		Latches: []sampleLatch{
			{ID: "ring", At: []force.Point{{}}, Use: "permanent", Annular: ring},
			{ID: "pin", At: []force.Point{{X: 25.4, Y: 25.4}}},
		},
		Parts: map[string]part{"lid": {Material: "PA12", figures: figures{Modulus: new(1700.0)}}},
	}
}

// The inch file is the metric file in other units: the values must be the same
// to the last bit, or twins would not give the same bytes.
func TestDecodeTwins(t *testing.T) {
	for _, c := range []struct{ name, text, units string }{
		{"millimetres", metric, "mm"},
		{"inches", inches, "in"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, _, problems := decodeSample(t, c.text)
			if err := problems.Err(); err != nil {
				t.Fatal(err)
			}
			want := wanted()
			want.Units = c.units
			if !reflect.DeepEqual(got, want) {
				t.Errorf("got  %+v\nwant %+v", got, want)
			}
		})
	}
}

func TestDecodeUnitsOfPlainNumbers(t *testing.T) {
	const lbf = 4.4482216152605
	for _, c := range []struct {
		name, text  string
		width, push float64 // [mm], [N]
	}{
		{"nothing said", "width: 2\npush: 3\n", 2, 3},
		{"millimetres", "units: mm\nwidth: 2\npush: 3\n", 2, 3},
		{"inches", "units: in\nwidth: 2\npush: 3\n", 50.8, 3 * lbf},
		{"inches said last", "width: 2\npush: 3\nunits: in\n", 50.8, 3 * lbf},
		{"inches and newton", "units: in\nforce_units: N\nwidth: 2\npush: 3\n", 50.8, 3},
		{"millimetres and pounds", "force_units: lbf\nwidth: 2\npush: 3\n", 2, 3 * lbf},
		{"said with the value", "units: in\nwidth: 2 mm\npush: 3 N\n", 2, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, _, problems := decodeSample(t, c.text)
			if got.Width != c.width || math.Abs(got.Push-c.push) > 1e-14*c.push || len(problems) > 0 {
				t.Errorf("width %v, push %v, problems %v; want %v, %v", got.Width, got.Push, problems, c.width, c.push)
			}
		})
	}
}

func TestDecodeKeepsWhatTheFileDoesNotName(t *testing.T) {
	s := sample{Width: 7, Job: "kept"}
	_, problems := Decode("job.yaml", []byte("quantity: 3\n"), &s)
	if s.Width != 7 || s.Job != "kept" || s.Quantity != 3 || len(problems) > 0 {
		t.Errorf("got %+v, %v", s, problems)
	}
}

func TestDecodeTextAsWritten(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"job: 1.10\n", "1.10"},
		{"job: 007\n", "007"},
		{"job: 2026-01-02\n", "2026-01-02"},
		{"job: Fjell № 3 – lid\n", "Fjell № 3 – lid"},
		{"job: no\n", "no"},
	} {
		got, _, problems := decodeSample(t, c.text)
		if got.Job != c.want || len(problems) > 0 {
			t.Errorf("%q: got %q, %v; want %q", c.text, got.Job, problems, c.want)
		}
	}
}

func TestDecodeSlipInTheStructPanics(t *testing.T) {
	for name, into := range map[string]any{
		"unknown unit": &struct {
			A float64 `yaml:"a" unit:"furlong"`
		}{},
		"unknown type": &struct {
			A complex128 `yaml:"a"`
		}{},
		"no pointer": sample{},
	} {
		t.Run(name, func(t *testing.T) {
			defer func() {
				if recover() == nil {
					t.Error("no panic")
				}
			}()
			Decode("job.yaml", []byte("b: 1\n"), into)
		})
	}
}
