package job_test

import (
	"slices"
	"strings"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
)

// flat is a job in one step, without faults.
const flat = `job: T-1
title: Cap
date: 2026-11-25
lower:
  name: housing
  material: PA12
  envelope: {layers: [{from: 0, to: 40, circle: {diameter: 64}}]}
upper:
  name: cap
  material: PA12
  envelope: {layers: [{from: 30, to: 43, circle: {diameter: 67}}]}
latches:
  - id: rim
    at: [[0, 0]]
    z: 33
    annular: {outside: upper, joint_diameter: 64, undercut: 0.5, mating_angle: 30, return_angle: 45, outer_diameter: 67, end_distance: 3}
`

// steps is a job in two steps on one lower part.
const steps = `job: T-2
title: Pair
date: 2026-11-25
lower:
  name: base
  material: PA12
  envelope: {layers: [{from: 0, to: 20, circle: {diameter: 60}}]}
steps:
  - name: first
    upper: {name: pin, material: steel, envelope: {layers: [{from: 10, to: 30, circle: {diameter: 5}}]}}
    latches: [{id: pin, at: [[0, 0]], z: 15, press_fit: {outside: lower, joint_diameter: 5, interference: 0.03, outer_diameter: 9, engagement_length: 6, lead_in_angle: 15}}]
  - name: second
    upper: {name: ring, material: PA12, envelope: {layers: [{from: 18, to: 25, circle: {diameter: 60}}]}}
    latches: [{id: peg, at: [[20, 0]], z: 19, press_fit: {outside: upper, joint_diameter: 5, interference: 0.03, outer_diameter: 9, engagement_length: 3, lead_in_angle: 15}}]
`

// faultsOf decodes a job and gives the faults that Validate finds.
func faultsOf(t *testing.T, text string) []string {
	t.Helper()
	var f job.File
	if _, problems := jobfile.Decode("x.yaml", []byte(text), &f, jobfile.Options{}); len(problems) > 0 {
		t.Fatal(problems)
	}
	var out []string
	for _, p := range f.Validate() {
		out = append(out, p.Error())
	}
	return out
}

func TestGoodJobsHaveNoFaults(t *testing.T) {
	t.Parallel()
	for _, text := range []string{flat, steps} {
		if got := faultsOf(t, text); len(got) > 0 {
			t.Errorf("faults: %q", got)
		}
	}
}

func TestFaultsOfAJob(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name, base, old, new string
		want                 []string // beginnings
	}{
		{"no lower part", flat, "lower:\n  name: housing\n  material: PA12\n  envelope: {layers: [{from: 0, to: 40, circle: {diameter: 64}}]}\n", "",
			[]string{"lower: is missing"}},
		{"no latches", flat, flat[strings.Index(flat, "latches:"):], "",
			[]string{"latches: is missing"}},
		{"upper beside steps", steps, "steps:", "upper: {name: x, material: PA12, envelope: {layers: [{from: 0, to: 1, circle: {diameter: 1}}]}}\nsteps:",
			[]string{"upper: stands beside a list of steps"}},
		{"latches beside steps", steps, "steps:", "latches: [{id: a, at: [[0, 0]], z: 0}]\nsteps:",
			[]string{"latches: stands beside a list of steps"}},
		{"no lower part for any step", steps, steps[strings.Index(steps, "lower:\n"):strings.Index(steps, "steps:")], "",
			[]string{"steps[0].lower: is missing", "steps[1].lower: is missing"}},
		{"two steps of one name", steps, "name: second", "name: first",
			[]string{"steps[1].name: first; is the name of an earlier step"}},
		{"two latches of one id in two steps", steps, "id: peg", "id: pin",
			[]string{"steps[1].latches[0].id: pin; is taken by a latch of an earlier step"}},
		{"a fault of the shared part, told once", steps, "material: PA12\n  envelope: {layers: [{from: 0,", "material: PA13\n  envelope: {layers: [{from: 0,",
			[]string{"lower.material: PA13; is not in the table"}},
		{"a fault of a step's part", steps, "name: ring, material: PA12", "name: ring, material: PA13",
			[]string{"steps[1].upper.material: PA13; is not in the table"}},
		{"a fault of a step's latch", steps, "interference: 0.03, outer_diameter: 9, engagement_length: 3", "interference: 9, outer_diameter: 9, engagement_length: 3",
			[]string{"steps[1].latches[0].press_fit.interference: 9 mm"}},
		{"an envelope", flat, "circle: {diameter: 64}", "circle: {diameter: -64}",
			[]string{"lower.envelope.layers[0].circle.diameter: -64 mm"}},
		{"a keep-out", flat, "  name: cap", "  name: cap\n  keep_outs: [{reason: fragile}]",
			[]string{"upper.keep_outs[0]: the outline has no shape"}},
		{"a negative rate", flat, "title: Cap", "title: Cap\nrate_per_hour: -1",
			[]string{"rate_per_hour: -1; is out of range"}},
		{"a day of 25 hours", flat, "title: Cap", "title: Cap\nhours_per_shift: 25",
			[]string{"hours_per_shift: 25 h; is out of range"}},
		{"a long number", flat, "job: T-1", "job: " + strings.Repeat("7", 41),
			[]string{"job: 41 characters; is too long to engrave"}},
		{"a title of two lines", flat, "title: Cap", "title: \"Cap\\nand more\"",
			[]string{"title: goes over a line end"}},
		{"few draws", flat, "title: Cap", "title: Cap\ndraws: 5",
			[]string{"draws: 5; are too few"}},
		{"a bench", flat, "title: Cap", "title: Cap\nbench: {press_margin: 200}",
			[]string{"bench.press_margin"}},
		{"wishes", flat, "title: Cap", "title: Cap\nfixture: {safety_factor: 0.5}",
			[]string{"fixture.safety_factor: 0.5; out of range"}},
		{"rates", flat, "title: Cap", "title: Cap\nrates: {name: ours, currency: EUR, reject: 95}",
			[]string{"rates.reject", "rates.pbf"}},
		{"the shop's table", flat, "title: Cap", "title: Cap\nmaterials: {ours: {like: PA99}}",
			[]string{"materials.ours.like"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			if !strings.Contains(c.base, c.old) {
				t.Fatalf("the base has no %q", c.old)
			}
			got := faultsOf(t, strings.Replace(c.base, c.old, c.new, 1))
			same := slices.EqualFunc(got, c.want, strings.HasPrefix)
			if !same {
				t.Errorf("faults:\n got %q\nwant %q", got, c.want)
			}
		})
	}
}

func TestStepsKnowTheirPlaceInTheFile(t *testing.T) {
	t.Parallel()
	var f job.File
	jobfile.Decode("x.yaml", []byte(steps), &f, jobfile.Options{})
	got := f.Steps()
	if len(got) != 2 || got[0].Lower != f.Lower || got[1].Lower != f.Lower {
		t.Fatal("the steps do not share the lower part of the job")
	}
	for i, want := range []string{"lower steps[0].upper steps[0].latches", "lower steps[1].upper steps[1].latches"} {
		if s := got[i].LowerPath + " " + got[i].UpperPath + " " + got[i].LatchesPath; s != want {
			t.Errorf("step %d stands at %s, want %s", i, s, want)
		}
	}
}
