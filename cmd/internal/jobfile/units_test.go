package jobfile

import (
	"math"
	"math/big"
	"strconv"
	"testing"
)

func TestUnitFactors(t *testing.T) {
	t.Parallel()
	// Printed factors, seven figures, of NIST SP 811 (2008), appendix B.8: memory.
	// The exact ones are definitions and hold to the last figure.
	for _, c := range []struct {
		dimension, unit string
		want            string // times the stored unit
		tol             float64
		source          string
	}{
		{"mm", "in", "25.4", 0, "definition, 1959"},
		{"mm", "thou", "0.0254", 0, "definition"},
		{"mm", "um", "0.001", 0, "SI"},
		{"mm", "m", "1000", 0, "SI"},
		{"mm", "cm", "10", 0, "SI"},
		{"N", "lbf", "4.4482216152605", 0, "NIST SP 811, B.8, exact: memory"},
		{"N", "kN", "1000", 0, "SI"},
		{"N", "ozf", "0.2780139", 3e-7, "NIST SP 811, B.8: memory"},
		{"N", "kgf", "9.80665", 0, "definition, 1901"},
		{"MPa", "psi", "6.894757e-3", 1e-7, "NIST SP 811, B.8: memory"},
		{"MPa", "ksi", "6.894757", 1e-7, "NIST SP 811, B.8: memory"},
		{"MPa", "GPa", "1000", 0, "SI"},
		{"MPa", "kPa", "0.001", 0, "SI"},
		{"kg", "g", "0.001", 0, "SI"},
		{"kg", "lb", "0.45359237", 0, "definition, 1959"},
		{"kg", "oz", "2.834952e-2", 2e-7, "NIST SP 811, B.8: memory"},
		{"J", "mJ", "0.001", 0, "SI"},
		{"J", "in-lbf", "0.1129848", 4e-7, "NIST SP 811, B.8: memory"},
		{"J", "ft-lbf", "1.355818", 2e-7, "NIST SP 811, B.8: memory"},
		{"s", "ms", "0.001", 0, "SI"},
		{"s", "min", "60", 0, "SI"},
		{"s", "h", "3600", 0, "SI"},
		{"pct", "%", "0.01", 0, "definition"},
	} {
		d, _ := dimensionOf(c.dimension)
		u, ok := d.unit(c.unit)
		want, _ := new(big.Rat).SetString(c.want)
		off := new(big.Rat).Quo(new(big.Rat).Sub(u.ratio(), want), want)
		rel, _ := off.Float64()
		if !ok || math.Abs(rel) > c.tol {
			t.Errorf("%s in %s: got %s, want %s within %g (%s)", c.unit, c.dimension, u.ratio().FloatString(16), c.want, c.tol, c.source)
		}
	}
}

func TestEveryUnitIsReadInEverySpelling(t *testing.T) {
	t.Parallel()
	for _, d := range dimensions {
		for _, u := range d.units {
			for _, name := range append([]string{u.name}, u.also...) {
				for _, text := range []string{"3 " + name, "3" + name, "  3  " + name + " "} {
					v, fault, _ := quantity(text, true, d, metric)
					want, _, _ := quantity("3 "+u.name, true, d, metric)
					if fault != nil || v != want || v <= 0 {
						t.Errorf("%q as %s: got %v, fault %v, want %v", text, d.noun, v, fault, want)
					}
				}
			}
		}
	}
}

func TestUnitNamesAreUnique(t *testing.T) {
	t.Parallel()
	seen := map[string]string{}
	for _, d := range dimensions {
		for _, name := range d.spellings() {
			if at, double := seen[name]; double {
				t.Errorf("%q is a unit of %s and of %s", name, at, d.noun)
			}
			seen[name] = d.noun
		}
	}
}

func TestConversionIsRoundedOnce(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		tag, text string
		want      float64 // the float64 nearest to the decimal that a calculation by hand gives
	}{
		{"mm", "0.1 in", 2.54},
		{"mm", "0.3 in", 7.62},
		{"mm", "1.1 in", 27.94},
		{"mm", "12 thou", 0.3048},
		{"mm", "7 thou", 0.1778},
		{"mm", "350 um", 0.35},
		{"mm", "-0.7 in", -17.78},
		{"N", "25 lbf", 111.2055403815125},
		{"N", "0.1 lbf", 0.44482216152605},
		{"kg", "4 oz", 0.11339809250},
		{"kg", "3 lb", 1.36077711},
		{"MPa", "1.7 GPa", 1700},
		{"MPa", "315 ksi", 2171.8485473480337},
		{"pct", "2 %", 0.02},
		{"pct", "0.7 %", 0.007},
		{"pct", "7 %", 0.07},
		{"J", "3 mJ", 0.003},
		{"s", "1.1 min", 66},
		{"deg", "90 deg", math.Pi / 2},
		{"deg", "180 deg", math.Pi},
		{"deg", "45 deg", math.Pi / 4},
		{"deg", "-0 deg", 0},
		{"deg", "0.5 rad", 0.5},
	} {
		d, _ := dimensionOf(c.tag)
		got, fault, _ := quantity(c.text, false, d, metric)
		if fault != nil || got != c.want {
			t.Errorf("%s: got %v, fault %v, want %v", c.text, got, fault, c.want)
		}
	}
}

// A job in inches is its metric twin to the last bit: every length that a
// thousandth of an inch can say, against its decimal in mm.
func TestInchJobEqualsItsMetricTwin(t *testing.T) {
	t.Parallel()
	d, _ := dimensionOf("mm")
	for thou := range int64(20000) {
		written := big.NewRat(thou, 1000).FloatString(3)
		twin, _ := strconv.ParseFloat(big.NewRat(thou*254, 10000).FloatString(4), 64)
		got, fault, _ := quantity(written, false, d, Units{Length: "in", Force: "lbf"})
		if fault != nil || got != twin {
			t.Fatalf("%s in: got %v mm, fault %v, want %v mm", written, got, fault, twin)
		}
	}
}

func TestPlainNumberIsInTheJobsUnit(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		units      string
		wall, push float64
		resolved   Units
	}{
		{"", 2, 3, Units{"mm", "N"}},
		{"units: mm\n", 2, 3, Units{"mm", "N"}},
		{"units: in\n", 50.8, 13.3446648457815, Units{"in", "lbf"}},
		{"units: in\nforce_units: N\n", 50.8, 3, Units{"in", "N"}},
		{"force_units: lbf\n", 2, 13.3446648457815, Units{"mm", "lbf"}},
		{"force_units: lbf\nunits: mm\n", 2, 13.3446648457815, Units{"mm", "lbf"}},
	} {
		s, d, p := decoded("job: x\nwall: 2\npush: 3\n" + c.units) // units stand below what they govern
		if len(p) > 0 || s.Wall != c.wall || s.Push != c.push || d.Units != c.resolved {
			t.Errorf("%q: got wall %v, push %v, %v, problems %v; want %v, %v, %v", c.units, s.Wall, s.Push, d.Units, p, c.wall, c.push, c.resolved)
		}
	}
}
