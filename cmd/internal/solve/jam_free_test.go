package solve

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"regexp"
	"strings"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/force/method"
)

// hookJob is a lid with two hooks, as a person would write it.
func hookJob(material string, angle, undercut, length, thickness float64, extra string) string {
	return fmt.Sprintf(`job: HOOK
title: Lid with two hooks
revision: A
date: 2026-11-25
rate_per_hour: 30
hours_per_shift: 1
lower: {name: tray, material: %[1]s, build: across, envelope: {layers: [{from: 0, to: 3, rectangle: {size: [60, 40]}}, {from: 3, to: 20, rectangle: {size: [60, 40]}, openings: [{rectangle: {size: [54, 34]}}]}]}}
upper: {name: lid, material: %[1]s, build: across, envelope: {layers: [{from: 6, to: 20, rectangle: {at: [25.5, 0], size: [2, 8]}}, {from: 6, to: 20, rectangle: {at: [-25.5, 0], size: [2, 8]}}, {from: 20, to: 23, rectangle: {size: [60, 40]}}]}}
latches:
  - id: arm
    at: [[25.5, 0], [-25.5, 0]]
    z: 7
    use: releasable
    cantilever: {flexes: upper, bends: inward, undercut: %[3]g, mating_angle: %[2]g, return_angle: 40, length: %[4]g, thickness: %[5]g, width: 8, root_radius: 1}
%[6]s`, material, angle, undercut, length, thickness, extra)
}

func worked(t *testing.T, text string, set ...string) Step {
	t.Helper()
	var j job.File
	doc, problems := jobfile.Decode("hook.yaml", []byte(text), &j, jobfile.Options{Set: set})
	if problems = problems.And(doc.Problems(j.Validate())); len(problems) > 0 {
		t.Fatal(problems)
	}
	s, err := Run(&j, Means{Context: context.Background()})
	if err != nil {
		t.Fatal(err)
	}
	return s.Steps[0]
}

var (
	adviseAngle    = regexp.MustCompile(`^lead-in against jams, arm (cantilever\.mating_angle) (\d+) deg: `)
	adviseFriction = regexp.MustCompile(`^friction against jams, friction ([\d.]+) on both parts`)
)

// TestAdviceAgainstJamsHolds: the job with the angle, or with the friction, that the
// advice names has no more jams than any method may have, and the next degree and the
// next hundredth have.
func TestAdviceAgainstJamsHolds(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(13, 1))
	materials := []string{"PA12", "ABS", "PC"}
	advised := 0
	hooks := 5
	if os.Getenv("RAMNEST_LONG") != "" {
		hooks = 12
	}
	for i := range hooks {
		text := hookJob(materials[i%3], 45+15*rng.Float64(), 0.4+0.4*rng.Float64(), 11+3*rng.Float64(), 1.6+0.5*rng.Float64(), "")
		if i < 3 {
			text = hookJob(materials[i], 45, 0.6, 12, 2, "") // the commonest hook there is
		}
		st := worked(t, text)
		if st.Result.Jammed <= 0.001 {
			continue
		}
		var angle, slip []string
		for _, a := range st.Decision.Advice {
			if m := adviseAngle.FindStringSubmatch(a.String()); m != nil {
				angle = m
			}
			if m := adviseFriction.FindStringSubmatch(a.String()); m != nil {
				slip = m
			}
		}
		if angle == nil || slip == nil {
			t.Errorf("%.1f %% jam, advice %q\n%s", 100*st.Result.Jammed, st.Decision.Advice, text)
			continue
		}
		advised++
		var deg int
		var mu float64
		fmt.Sscan(angle[2], &deg)
		fmt.Sscan(slip[1], &mu)
		at := func(deg int) Step { return worked(t, text, fmt.Sprintf("latches.arm.%s=%d", angle[1], deg)) }
		rubbed := func(mu float64) Step {
			return worked(t, text, fmt.Sprintf("lower.friction=%.2f", mu), fmt.Sprintf("upper.friction=%.2f", mu))
		}
		for what, in := range map[string]Step{"angle " + angle[2]: at(deg), "friction " + slip[1]: rubbed(mu)} {
			if in.Result.Jammed > 0.001 || in.Result.NoP95 || overJams(in) != 0 {
				t.Errorf("%s: %.3g %% jam, %d methods over a limit of it\n%s", what, 100*in.Result.Jammed, overJams(in), text)
			}
			if i < 3 && in.Chosen().Verdict != method.Pass {
				t.Errorf("%s: %s\n%s", what, in.Decision.Reason, text)
			}
		}
		for what, out := range map[string]Step{"angle": at(deg + 1), "friction": rubbed(mu + 0.01)} {
			if out.Result.Jammed <= 0.001 {
				t.Errorf("one step beyond the advised %s %.3g %% jam: the advice gives away too much\n%s", what, 100*out.Result.Jammed, text)
			}
		}
	}
	if advised < hooks*2/3 {
		t.Errorf("%d of 12 jobs jam: too few", advised)
	}
}

// overJams counts the methods that go over a limit of what may jam.
func overJams(st Step) (n int) {
	for _, a := range st.Decision.Options {
		for _, l := range a.Limits {
			if strings.HasSuffix(l.Name, "assemblies that jam") && !l.OK {
				n++
				break
			}
		}
	}
	return n
}

// TestNoMethodPassesWhatJams: over mating angles, so that every share comes up: a
// method passes with no more than one in a thousand, is taken on a condition with no
// more than one in a hundred, and not even an override takes what has no P95.
func TestNoMethodPassesWhatJams(t *testing.T) {
	t.Parallel()
	seen := map[string]int{}
	last := -1.0
	step := 1.0
	if os.Getenv("RAMNEST_LONG") != "" {
		step = 0.5
	}
	for angle := 31.0; angle < 45; angle += step {
		st := worked(t, hookJob("PA12", angle, 0.6, 12, 2, "draws: 20000\n"))
		share := st.Result.Jammed
		if share < last {
			t.Errorf("%g deg: share that jams falls from %g to %g", angle, last, share)
		}
		last = share
		want := "free"
		switch {
		case share > 0.05:
			want = "none"
		case share > 0.01: // the limits, as figures
			want = "fail"
		case share > 0.001:
			want = "condition"
		}
		seen[want]++
		for _, a := range st.Decision.Options {
			if a.Verdict == method.Pass && share > 0.001 || a.Verdict == method.Conditional && share > 0.01 {
				t.Errorf("%g deg, %g %% jam: %s is a %s", angle, 100*share, a.Method, a.Verdict)
			}
		}
		if (want == "none") != st.Result.NoP95 || st.Result.NoP95 != (st.Result.Design == 0) || (want == "free" || want == "condition") != (st.Decision.Chosen != method.None) {
			t.Errorf("%g deg, %g %% jam: no P95 %t, design %g N, %s", angle, 100*share, st.Result.NoP95, st.Result.Design, st.Decision.Chosen)
		}
	}
	for _, want := range []string{"free", "condition", "fail", "none"} {
		if seen[want] == 0 {
			t.Errorf("no job of the kind %s: %v", want, seen)
		}
	}
	st := worked(t, hookJob("PA12", 45, 0.6, 12, 2, "method: {force: press, override: we know better}\n"))
	if st.Decision.Chosen != method.None || st.Decision.Overridden || !strings.Contains(st.Decision.Reason.String(), "no reason lifts that") {
		t.Errorf("override of what has no P95: %s, %s", st.Decision.Chosen, st.Decision.Reason)
	}
}
