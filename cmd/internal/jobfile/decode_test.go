package jobfile

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"ramnest/force/planar"
)

const full = `units: mm
force_units: N
job: FJ-0042
date: 2026-11-25
quantity: 250
small: -128
count: 65535
brittle: true
share: 0.35
parts:
  - id: cap
    process: PBF
    height: 12.5
    ring:
      undercut: 0.3 mm
  - id: tray
    height: 0.5 in
shops:
  main hall:
    per_hour: 60
  v1.2:
    per_hour: 5e1
names: {a: 1.10, b: "true", c: 0042}
corner: [1, -2.5]
outline: [[0, 0], [1 in, 0], [10 thou, 3]]
sizes:
  - 1
  - 2 cm
box: [1, 2, 3]
wall: .5
push: 25 lbf
lead: 30 deg
modulus: 315 ksi
mass: 4 oz
energy: 10 in-lbf
time: 2 min
strain: 4
methods: [hand, press]
`

func TestDecodeFillsEveryKind(t *testing.T) {
	t.Parallel()
	lead, strain := 30.0/180*math.Pi, 0.04
	want := sample{
		Units: Units{"mm", "N"}, Job: "FJ-0042", Date: "2026-11-25", Quantity: 250, Small: -128, Count: 65535, Brittle: true, Share: 0.35,
		Parts: []samplePart{
			{ID: "cap", Process: "PBF", Extent: Extent{Height: 12.5}, Ring: &ring{Undercut: 0.3}},
			{ID: "tray", Extent: Extent{Height: 12.7}},
		},
		Shops:  map[string]rate{"main hall": {60}, "v1.2": {50}},
		Names:  map[string]string{"a": "1.10", "b": "true", "c": "0042"},
		Corner: &planar.Point{X: 1, Y: -2.5}, Outline: []planar.Point{{X: 0, Y: 0}, {X: 25.4, Y: 0}, {X: 0.254, Y: 3}},
		Sizes: []float64{1, 20}, Box: [3]float64{1, 2, 3}, Wall: 0.5, Push: 111.2055403815125, Lead: &lead, Modulus: 2171.8485473480337,
		Mass: 0.1133980925, Energy: 1.1298482902761670, Time: 120, Strain: &strain, Methods: []string{"hand", "press"},
	}
	got, _, problems := decoded(full)
	if len(problems) > 0 || !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v\nwant %+v\nproblems %v", got, want, problems)
	}
}

// How a file is saved does not change what it says, nor on which line.
func TestDecodeIgnoresHowTheFileIsSaved(t *testing.T) {
	t.Parallel()
	broken := full + "wal: 3\n"
	for _, c := range []struct{ name, text string }{
		{"Windows line ends", strings.ReplaceAll(broken, "\n", "\r\n")},
		{"byte order mark", "\ufeff" + broken},
		{"no line end at the end", strings.TrimSuffix(broken, "\n")},
		{"both", "\ufeff" + strings.ReplaceAll(broken, "\n", "\r\n")},
	} {
		want, _, wantProblems := decoded(broken)
		got, _, problems := decoded(c.text)
		if !reflect.DeepEqual(got, want) || !reflect.DeepEqual(problems, wantProblems) {
			t.Errorf("%s: got %v, want %v", c.name, problems, wantProblems)
		}
	}
}

func TestDecodeKeepsWhatTheFileLeavesOut(t *testing.T) {
	t.Parallel()
	s := sample{Wall: 7, Box: [3]float64{1, 2, 3}}
	if _, p := Decode("job.yaml", []byte("job: x\n"), &s, Options{}); len(p) > 0 || s.Wall != 7 || s.Box != [3]float64{1, 2, 3} || s.Lead != nil {
		t.Errorf("got %+v, problems %v, want wall 7 and box 1 2 3 kept", s, p)
	}
}

func TestDecodeReadsAliases(t *testing.T) {
	t.Parallel()
	s, d, p := decoded("job: x\nparts:\n  - id: a\n    ring: &ring\n      undercut: 0.3\n  - id: b\n    ring: *ring\n")
	line, ok := d.Place("parts[1].ring.undercut")
	if len(p) > 0 || len(s.Parts) != 2 || *s.Parts[1].Ring != (ring{Undercut: 0.3}) || s.Parts[0].Ring == s.Parts[1].Ring || line != 5 || !ok {
		t.Errorf("got %+v, line %d, problems %v, want ring 0.3 in both, line 5", s.Parts, line, p)
	}
}

func TestDecodePanicsOnAWrongStruct(t *testing.T) {
	t.Parallel()
	type loop struct {
		Next []struct {
			A []planar.Point `yaml:"a" unit:"mm"`
		} `yaml:"next"`
	}
	for _, c := range []struct {
		name string
		into any
		want string
	}{
		{"no pointer", sample{}, "not a pointer to a struct"},
		{"nothing", nil, "not a pointer to a struct"},
		{"nil pointer", (*sample)(nil), "nil pointer"},
		{"no unit", &struct {
			A float64 `yaml:"a"`
		}{}, "has no unit tag"},
		{"point without unit", &struct {
			A planar.Point `yaml:"a"`
		}{}, "has no unit tag"},
		{"unknown unit", &struct {
			A float64 `yaml:"a" unit:"furlong"`
		}{}, "unknown unit tag furlong"},
		{"unit on a text", &struct {
			A string `yaml:"a" unit:"mm"`
		}{}, "is not a number"},
		{"unit on a count", &struct {
			A int `yaml:"a" unit:"mm"`
		}{}, "whole number has no unit"},
		{"point in N", &struct {
			A planar.Point `yaml:"a" unit:"N"`
		}{}, "a point is in mm"},
		{"no key", &struct{ A string }{}, "has no yaml tag"},
		{"two of a name", &struct {
			A string `yaml:"a"`
			B string `yaml:"a"`
		}{}, "two fields are called a"},
		{"channel", &struct {
			A chan int `yaml:"a"`
		}{}, "cannot be read from a file"},
		{"any", &struct {
			A any `yaml:"a"`
		}{}, "cannot be read from a file"},
		{"oneof on a number", &struct {
			A float64 `yaml:"a" unit:"mm" oneof:"1 2"`
		}{}, "oneof or format tag"},
		{"format", &struct {
			A string `yaml:"a" format:"time"`
		}{}, "unknown format tag time"},
		{"required", &struct {
			A string `yaml:"a" required:"yes"`
		}{}, "unknown required tag yes"},
		{"itself", &selfish{}, "contains itself"},
	} {
		func() {
			defer func() {
				if r, _ := recover().(string); !strings.Contains(r, c.want) {
					t.Errorf("%s: got panic %q, want one with %q", c.name, r, c.want)
				}
			}()
			Decode("job.yaml", nil, c.into, Options{})
		}()
	}
	if got := Keys(&loop{}, nil); len(got) != 2 {
		t.Errorf("list of sections: got keys %v, want 2", got)
	}
}

type selfish struct {
	Below []selfish `yaml:"below"`
}

// The plus sign of a word that has it may be left out, in the schema as well; a minus
// sign may not, and no other word gets one.
func TestPlusSignMayBeLeftOut(t *testing.T) {
	t.Parallel()
	type turned struct {
		Up   string `yaml:"up" oneof:"+x -x +y -y +z -z"`
		Kind string `yaml:"kind" oneof:"hand press"`
	}
	for written, want := range map[string]string{"+x": "+x", "x": "+x", "y": "+y", "z": "+z", "'z'": "+z", "-z": "-z", "++z": "", "+ z": "", "Z": "", "+": "", "w": ""} {
		var v turned
		_, p := Decode("job.yaml", []byte("up: "+written+"\n"), &v, Options{})
		if (len(p) == 0) != (want != "") || v.Up != want {
			t.Errorf("up: %s gives %q, %v", written, v.Up, p)
		}
		var set turned
		if _, p := Decode("job.yaml", []byte("up: -x\n"), &set, Options{Set: []string{"up=" + written}}); (len(p) == 0) != (want != "") || want != "" && set.Up != want {
			t.Errorf("set up=%s gives %q, %v", written, set.Up, p)
		}
		bare := strings.Trim(written, "'")
		if in := strings.Contains(string(Schema(new(turned), nil)), `"`+bare+`"`); in != (want != "") {
			t.Errorf("the schema knows %s: %v", bare, in)
		}
	}
	var v turned
	if _, p := Decode("job.yaml", []byte("kind: +hand\n"), &v, Options{}); len(p) != 1 {
		t.Errorf("+hand gives %q", v.Kind)
	}
}
