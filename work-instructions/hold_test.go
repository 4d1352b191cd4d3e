package workinstructions

import (
	"testing"

	"ramnest/force/method"
)

// Every hand action that the method room knows has a sketch and words for it; hands
// touch the ground and stay in the frame.
func TestEveryHandActionHasASketch(t *testing.T) {
	seen := map[string]bool{}
	for force := 1.0; force < 400; force += 5 {
		for _, o := range method.Choose(method.Demand{DesignForce: force, RatePerHour: 1, HoursPerDay: 1, ActionSeconds: 1}, method.Bench{}, nil).Options {
			if o.Method == method.ByHand {
				seen[o.Action.String()] = true
			}
		}
	}
	if len(seen) < 2 {
		t.Fatalf("only %v", seen)
	}
	for action := range seen {
		if holding(action, 40).Height == 0 {
			t.Errorf("no sketch for %q", action)
		}
	}
	for action, parts := range limbs {
		if _, ok := (figures{}).words.Find("hold." + action); !ok {
			t.Errorf("no words for the sketch %q", action)
		}
		low := 0.0
		for _, l := range parts {
			low = max(low, l.y0+l.thick/2, l.y1+l.thick/2)
			if min(l.y0, l.y1)-l.thick/2 < 0 || min(l.x0, l.x1)-l.thick/2 < 0 || max(l.x0, l.x1)+l.thick/2 > holdWide {
				t.Errorf("%s: %+v leaves the frame", action, l)
			}
		}
		if low < holdGround-2 || low > holdGround+2 {
			t.Errorf("%s: the hand ends at %.1f, the ground is at %.1f", action, low, holdGround)
		}
	}
	if holding("a kick", 40).Height != 0 {
		t.Error("a sketch for what nobody knows")
	}
}
