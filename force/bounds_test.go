package force

import (
	"slices"
	"strings"
	"testing"
)

func TestRiskIsNeverRoundedAway(t *testing.T) {
	for _, c := range []struct {
		share float64
		want  string
	}{{0, "0.0 %"}, {1e-4, "fewer than 0.1 %"}, {0.00099, "fewer than 0.1 %"}, {0.001, "0.1 %"}, {0.348, "34.8 %"}, {0.999, "99.9 %"}, {0.9996, "more than 99.9 %"}, {1, "100.0 %"}} {
		if got := portion(c.share); got != c.want {
			t.Errorf("%g: %q, want %q", c.share, got, c.want)
		}
	}
}

func TestUnlikeFiguresLookUnlike(t *testing.T) {
	for _, c := range []struct {
		a, b         float64
		first, other string
	}{{2.1, 3, "2.1", "3"}, {2.1004, 2.1001, "2.1004", "2.1001"}, {44.00000001, 44, "44.00000001", "44"}} {
		if a, b := distinct(3, c.a, c.b); a != c.first || b != c.other {
			t.Errorf("%g and %g read %s and %s", c.a, c.b, a, b)
		}
	}
}

// TestFaultsShowSensibleDigits: a bound of 0.2 times 63.5 mm is 12.7 mm, not
// 12.700000000000001 mm.
func TestFaultsShowSensibleDigits(t *testing.T) {
	a := capJob()
	v := a.Latches[0].Annular
	v.JointDiameter, v.OuterDiameter, v.InnerDiameter, v.Undercut, v.MatingAngle = 63.5, 67, 60, 12.8, rad(81.1)
	var all []string
	for _, f := range a.Validate() {
		all = append(all, f.Error())
	}
	for _, want := range []string{
		"latches[0].annular.undercut: 12.8 mm; must be 12.7 mm or less (0.0001 to 12.7 mm)",
		"latches[0].annular.mating_angle: 81.1 deg; is outside what the formula holds for (2 to 80 deg)",
	} {
		if !slices.Contains(all, want) {
			t.Errorf("want %q, got %q", want, all)
		}
	}
	v.Undercut, v.MatingAngle = 12.7+1e-9, rad(25)
	if got := a.Validate()[0].Error(); strings.Contains(got, "12.7 mm; must be 12.7 mm") {
		t.Errorf("contradicts itself: %q", got)
	}
}
