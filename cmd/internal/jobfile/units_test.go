package jobfile

import (
	"math"
	"testing"
)

// Factors are checked against figures printed in public tables, not against
// the definitions from which the program computes. All from memory of NIST
// SP 811, appendix B.8, which gives seven digits.
func TestNumberUnits(t *testing.T) {
	for _, c := range []struct {
		text, tag string
		want, tol float64 // tol relative
	}{
		{"1 in", "mm", 25.4, 0},
		{"0.5 in", "mm", 12.7, 0},
		{"12 thou", "mm", 0.3048, 0},
		{"-.5in", "mm", -12.7, 0},
		{"1.5e1 mm", "mm", 15, 0},
		{"3 cm", "mm", 30, 0},
		{"0.1 m", "mm", 100, 0},
		{"20 um", "mm", 0.02, 0},
		{"20 µm", "mm", 0.02, 0},
		{"1 lbf", "N", 4.448222, 1e-7},
		{"25 lbf", "N", 111.20555, 1e-7},
		{"1 kN", "N", 1000, 0},
		{"1 kgf", "N", 9.80665, 0},
		{"1 psi", "MPa", 6.894757e-3, 1e-7},
		{"450000 psi", "MPa", 3102.64065, 1e-7},
		{"1 ksi", "MPa", 6.894757, 1e-7},
		{"315 ksi", "MPa", 2171.848455, 1e-7},
		{"2.1 GPa", "MPa", 2100, 0},
		{"5 N/mm²", "MPa", 5, 0},
		{"1 lb", "kg", 0.45359237, 0},
		{"1 oz", "kg", 2.834952e-2, 1e-6},
		{"4 oz", "kg", 0.113398, 1e-5},
		{"120 mJ", "J", 0.12, 0},
		{"1 ft lbf", "J", 1.355818, 1e-6},
		{"1 in  lbf", "J", 0.1129848, 1e-6},
		{"2 N m", "J", 2, 0},
		{"2 min", "s", 120, 0},
		{"1 h", "s", 3600, 0},
		{"30 deg", "deg", math.Pi / 6, 1e-15},
		{"30°", "deg", math.Pi / 6, 1e-15},
		{"0.5 rad", "deg", 0.5, 0},
		{"180", "deg", math.Pi, 0},
		{"2 %", "pct", 0.02, 0},
		{"2", "pct", 0.02, 0},
		{"0.35", "none", 0.35, 0},
		{"-0", "mm", 0, 0},
		{"0e999999999", "mm", 0, 0},
	} {
		var metric system
		got, fault := metric.number(c.text, c.tag, false)
		if fault != nil || math.Abs(got-c.want) > c.tol*math.Abs(c.want) || math.Signbit(got) != math.Signbit(c.want) {
			t.Errorf("%q as %s: got %v, %v; want %v", c.text, c.tag, got, fault, c.want)
		}
	}
}

// Every unit of every dimension reads back what one of it is, and no name
// stands for two sizes.
func TestUnitTableIsSound(t *testing.T) {
	for _, tag := range []string{"mm", "N", "deg", "MPa", "kg", "J", "s", "pct"} {
		dim, _ := dimensionOf(tag)
		seen := map[string]bool{}
		for _, u := range dim.units {
			v, fault := (&system{}).number("3 "+u.name, tag, false)
			if fault != nil || !(v > 0) || seen[u.name] {
				t.Errorf("%s: 3 %s is %v, %v; named before: %v", tag, u.name, v, fault, seen[u.name])
			}
			seen[u.name] = true
		}
	}
}
