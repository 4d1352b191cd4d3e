package jobfile

import (
	"math"
	"reflect"
	"testing"

	"ramnest/force/fault"
)

func TestInputsAreWhatTheFileStates(t *testing.T) {
	const file = `
units: in
job: 1.10
brittle: false
outline: [[0, 1], [2 mm, 3]]
box: [1, 2, 3]
lead: 90
strain: 4
shops: {b: {per_hour: 2}, a: {per_hour: 1}}
wall: 0
parts:
  - id: cap
    height: 0.5
    ring: {undercut: 0.01}
`
	var s sample
	doc, problems := Decode("x.yaml", []byte(file), &s, Options{Set: []string{"parts.cap.ring.undercut=0.02"}})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	want := []Input{
		{Path: "units", Value: "in", Written: "in"},
		{Path: "job", Value: "1.10", Written: "1.10"},
		{Path: "brittle", Value: false, Written: "false"},
		{Path: "parts[0].id", Value: "cap", Written: "cap"},
		{Path: "parts[0].height", Value: 12.7, Unit: "mm", Written: "0.5"},
		{Path: "parts[0].ring.undercut", Value: 0.508, Unit: "mm", Written: "0.02", Set: true},
		{Path: "shops.a.per_hour", Value: 1.0, Written: "1"},
		{Path: "shops.b.per_hour", Value: 2.0, Written: "2"},
		{Path: "outline[0]", Value: []float64{0, 25.4}, Unit: "mm", Written: "[0, 1]"},
		{Path: "outline[1]", Value: []float64{2, 76.2}, Unit: "mm", Written: "[2 mm, 3]"},
		{Path: "box[0]", Value: 25.4, Unit: "mm", Written: "1"},
		{Path: "box[1]", Value: 50.8, Unit: "mm", Written: "2"},
		{Path: "box[2]", Value: 76.2, Unit: "mm", Written: "3"},
		{Path: "wall", Value: 0.0, Unit: "mm", Written: "0"},
		{Path: "lead", Value: math.Pi / 2, Unit: "rad", Written: "90"},
		{Path: "strain", Value: 0.04, Unit: "1", Written: "4"},
	}
	got := doc.Inputs(&s)
	if !reflect.DeepEqual(got, want) {
		t.Errorf("inputs:\n got %v\nwant %v", got, want)
	}
}

func TestInputsOfWhatCouldNotBeRead(t *testing.T) {
	for _, file := range []string{"", "- 1", "job: [", "parts: 3", "outline: [1]", "shops: {a: 1}", "corner: [1]", "box: [1]"} {
		var s sample
		doc, problems := Decode("x.yaml", []byte(file), &s, Options{})
		if len(problems) == 0 {
			t.Fatalf("%q was taken", file)
		}
		doc.Inputs(&s) // must not panic
	}
}

func TestFaultsNameTheValueAsWritten(t *testing.T) {
	const file = "units: in\njob: x\nwall: -0.02\npush: -5 N\ncorner: [1, 2]\nlead: 200\nsizes: [-1 mm]\n"
	var s sample
	doc, problems := Decode("x.yaml", []byte(file), &s, Options{})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	const bad = "is bad"
	for _, c := range []struct{ field, given, want string }{
		{"wall", "-0.508 mm", "x.yaml:3: wall: -0.02 in; is bad"},
		{"push", "-5 N", "x.yaml:4: push: -5 N; is bad"},
		{"lead", "200 deg", "x.yaml:6: lead: 200 deg; is bad"},
		{"sizes[0]", "-1 mm", "x.yaml:7: sizes[0]: -1 mm; is bad"},
		{"corner", "25.4, 50.8 mm", "x.yaml:5: corner: 1, 2 in; is bad"},
		{"wall", "", "x.yaml:3: wall: is bad"},
		{"job", "-1 mm", "x.yaml:2: job: -1 mm; is bad"},
	} {
		got := doc.Problems([]fault.Fault{{Field: c.field, Given: c.given, Problem: bad}})
		if got.Error() != c.want {
			t.Errorf("%s %q:\n got %s\nwant %s", c.field, c.given, got.Error(), c.want)
		}
	}
}
