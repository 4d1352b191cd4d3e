package method

import (
	"ramnest/force/unit"
	"strings"
	"testing"
)

// TestShareThatJamsDecidesEveryMethod: a demand that each method passes, with more and
// more that jam.
func TestShareThatJamsDecidesEveryMethod(t *testing.T) {
	d := Demand{DesignForce: 40, Worst: 60, P50: 30, PeakForce: 30, Work: 20, Stroke: 1.5, RatePerHour: 10, HoursPerDay: 1, NestSize: [3]float64{80, 60, 50}, AnvilHeight: 20, AnvilMass: 0.1, UpperMass: 0.02}
	for _, c := range []struct {
		share float64
		want  Verdict
	}{{0, Pass}, {0.0005, Pass}, {0.001, Pass}, {0.0011, Conditional}, {0.005, Conditional}, {0.01, Conditional}, {0.0101, Fail}, {0.05, Fail}} {
		d.Jammed = c.share
		out := Choose(d, Bench{}, nil)
		for _, a := range out.Options {
			if a.Verdict != c.want {
				t.Errorf("%g jam: %s is a %s, want %s: %s", c.share, a.Method, a.Verdict, c.want, a.Reason)
			}
			if c.want != Pass && !strings.HasSuffix(a.Governing, "assemblies that jam") {
				t.Errorf("%g jam: %s is decided by %s", c.share, a.Method, a.Governing)
			}
		}
		if (out.Chosen == None) != (c.want == Fail) {
			t.Errorf("%g jam: %s", c.share, out.Chosen)
		}
		if c.want == Fail && Carries(ByPress, d, Bench{}) != 0 {
			t.Errorf("%g jam: the press is said to carry a force", c.share)
		}
	}
	// An override lifts the limit, as any figure, as long as there is a design force.
	d.Jammed = 0.03
	if out := Choose(d, Bench{}, &Forced{Method: ByPress, Override: "trial"}); out.Chosen != ByPress || !out.Overridden {
		t.Errorf("override at 3 %%: %s, %s", out.Chosen, out.Reason)
	}
	d.Jammed, d.NoP95, d.DesignForce, d.Worst, d.P50 = 0.4, true, 0, 0, 0
	for _, forced := range []*Forced{nil, {Method: ByPress, Override: "trial"}, {Method: ByHand}} {
		out := Choose(d, Bench{}, forced)
		if out.Chosen != None || len(out.Options) != 3 || out.Overridden || !strings.Contains(out.Reason.String(), "40 %") {
			t.Errorf("without a P95: %+v", out)
		}
		for _, a := range out.Options {
			if a.Verdict != Fail || a.Utilisation != 40 {
				t.Errorf("without a P95: %+v", a)
			}
		}
	}
	d.NoP95 = false
	if len(d.Validate()) == 0 {
		t.Error("a demand without force and without a reason for it is valid")
	}
}

// TestAdviceByWhatJams: what jams less is advised though it may need more force, what
// jams more is not though it needs less.
func TestAdviceByWhatJams(t *testing.T) {
	now := Demand{DesignForce: 200, Worst: 300, P50: 150, PeakForce: 150, Work: 100, Stroke: 2, RatePerHour: 10, HoursPerDay: 1, Jammed: 0.03}
	less, more, locked := now, now, now
	less.DesignForce, less.Jammed = 220, 0
	more.DesignForce, more.Jammed = 150, 0.04
	locked.DesignForce, locked.Jammed, locked.NoP95 = 0, 0.6, true
	out := Choose(now, Bench{}, nil).Advised(now, 0, Bench{}, []Alternative{{Change: FewerLatches, Demand: locked}, {Change: LessInterference, Demand: more}, {Change: LeadAngle, Demand: less}})
	text := unit.Join(out.Advice, "\n").String()
	if !strings.Contains(text, "lead angle: 220 N instead of 200 N (+10 %), 0 % of assemblies jam instead of 3 %, ") {
		t.Errorf("what does not jam is not advised: %s", text)
	}
	if strings.Contains(text, "less interference") || strings.Contains(text, "fewer latches") {
		t.Errorf("what jams more is advised: %s", text)
	}
	if strings.Contains(text, "powered press") || !strings.Contains(text, "the joint must change") {
		t.Errorf("a stronger machine is advised: %s", text)
	}
	if last := out.Alternatives[len(out.Alternatives)-1]; last.Change != FewerLatches {
		t.Errorf("what has no design force is not put last: %s", last.Text)
	}
	now.NoP95, now.DesignForce, now.Jammed = true, 0, 0.4
	out = Choose(now, Bench{}, nil).Advised(now, 0, Bench{}, []Alternative{{Change: LeadAngle, Demand: less}})
	if len(out.Advice) != 1 || !strings.HasPrefix(out.Advice[0].String(), "lead angle: 220 N, 0 % of assemblies jam instead of 40 %, ") {
		t.Errorf("advice where there is no P95: %q", out.Advice)
	}
}
