package export_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"ramnest/export"
)

type peak struct {
	Force  float64 `json:"force_N"`
	Travel float64
	hidden float64
}

type common struct {
	Author string `json:"author"`
	Factor float64
}

type report struct {
	common
	Peaks  []peak             `json:"peaks"`
	Margin map[string]float64 `json:"margin"`
	Best   *peak              `json:"best,omitempty"`
	Any    any                `json:"any"`
	Off    float64            `json:"-"`
}

func TestWriteJSONIsTheSameEveryTime(t *testing.T) {
	t.Parallel()
	v := report{
		common: common{Author: "A & <B>"},
		Peaks:  []peak{{Force: 120.5, Travel: 1e-7, hidden: math.NaN()}},
		Margin: map[string]float64{"wall": 2, "floor": 1.5, "tongue": 3},
		Off:    math.NaN(),
	}
	const want = `{
  "author": "A & <B>",
  "Factor": 0,
  "peaks": [
    {
      "force_N": 120.5,
      "Travel": 1e-7
    }
  ],
  "margin": {
    "floor": 1.5,
    "tongue": 3,
    "wall": 2
  },
  "any": null
}
`
	for range 20 {
		var b strings.Builder
		if err := export.WriteJSON(&b, v); err != nil {
			t.Fatal(err)
		}
		if b.String() != want {
			t.Fatalf("got %s, want %s", b.String(), want)
		}
	}
}

func TestWriteJSONRefusesWhatIsNoNumber(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		value any
		want  string
	}{
		{"plain", math.Inf(-1), ": -Inf; is not finite"},
		{"slice", report{Peaks: []peak{{}, {Force: math.NaN()}}}, "peaks[1].force_N: NaN; is not a number"},
		{"map", report{Margin: map[string]float64{"wall": math.Inf(1)}}, "margin.wall: +Inf; is not finite"},
		{"pointer", &report{Best: &peak{Travel: math.NaN()}}, "best.Travel: NaN"},
		{"interface", report{Any: []any{1, map[string]any{"x": float32(math.Inf(1))}}}, "any[1].x: +Inf"},
		{"embedded", report{common: common{Factor: math.NaN()}}, "Factor: NaN"},
		{
			"two", report{common: common{Factor: math.NaN()}, Peaks: []peak{{Travel: math.NaN()}}},
			"Factor: NaN; is not a number\npeaks[0].Travel: NaN; is not a number",
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			var b strings.Builder
			err := export.WriteJSON(&b, c.value)
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("got error %v, want %q in it", err, c.want)
			}
			if b.Len() != 0 {
				t.Errorf("wrote %q all the same", b.String())
			}
		})
	}
}

func TestWriteJSONStopsAtALoop(t *testing.T) {
	t.Parallel()
	type ring struct{ Next *ring }
	r := &ring{}
	r.Next = r
	if err := export.WriteJSON(&strings.Builder{}, r); err == nil {
		t.Error("a value that holds itself was written")
	}
}

func TestWriteJSONDropsDigitsOfTheProcessor(t *testing.T) {
	t.Parallel()
	var b bytes.Buffer
	v := map[string]any{"a \"1.23456789012\"": 635.379673370311, "b": 635.3796733703111, "c": -1e-15, "d": uint64(18446744073709551615), "e": 1.5e300, "f": 2e-8, "g": []float64{0.1, -0.30000000000000004, 1234567890.5}}
	if err := export.WriteJSON(&b, v); err != nil {
		t.Fatal(err)
	}
	want := `{
  "a \"1.23456789012\"": 635.379673,
  "b": 635.379673,
  "c": 0,
  "d": 18446744073709551615,
  "e": 1.5e+300,
  "f": 2e-8,
  "g": [
    0.1,
    -0.3,
    1234567890
  ]
}
`
	if got := b.String(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
