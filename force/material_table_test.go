package force

import (
	"math"
	"testing"
)

// publishedRanges are what the built-in table says it is the middle or the end of,
// written down a second time: modulus and strength from typical public data sheets of
// printing materials (common practice, no single source), widened by what was measured
// on prints where that is known: PA12 1482 to 2000, PLA 2680 to 2911, PETG 1630 to 1667,
// durable resin 820 to 1260, PC from 2250 of the guide's chart. Friction on steel and
// its multiplier on itself from Snap-Fit Joints for Plastics - A Design Guide, table 3
// (read), upper ends; printed PA6 up to 1.10, PLA to 0.76 (excerpt). Strength across the
// layers over that in them: medians of 30 filaments (read), 5 of 100 below.
var publishedRanges = []struct {
	name, process     string
	modulus           [2]float64 // [MPa]
	poisson           float64
	steel, multiplier float64 // friction: upper end on steel; times that on itself
	strain, across    float64 // [%]
	density           [2]float64
	strength          [2]float64
	ratio             float64
}{
	{"PA12", "PBF", [2]float64{1482, 1900}, 0.40, 0.40, 1.5, 3.5, 2, [2]float64{0.88, 1.01}, [2]float64{43, 54}, 0.85},
	{"PA11", "PBF", [2]float64{1500, 1800}, 0.40, 0.40, 1.5, 5, 3, [2]float64{1.02, 1.05}, [2]float64{45, 52}, 0.85},
	{"PA12-GB", "PBF", [2]float64{2500, 3300}, 0.38, 0.40, 1.5, 1.5, 1, [2]float64{1.2, 1.36}, [2]float64{28, 40}, 0.8},
	{"PLA", "MEX", [2]float64{2407, 3221}, 0.36, 0.76, 1, 1, 0.5, [2]float64{1.24, 1.24}, [2]float64{45, 60}, 0.40 * 0.8026},
	{"PETG", "MEX", [2]float64{1391, 1906}, 0.38, 0.45, 1, 1.5, 0.75, [2]float64{1.27, 1.27}, [2]float64{40, 50}, 0.40 * 0.8026},
	{"ABS", "MEX", [2]float64{1800, 2300}, 0.37, 0.65, 1.2, 1.2, 0.6, [2]float64{1.04, 1.04}, [2]float64{30, 40}, 0.40 * 0.8026},
	{"ASA", "MEX", [2]float64{1900, 2300}, 0.37, 0.65, 1.2, 1.2, 0.6, [2]float64{1.07, 1.07}, [2]float64{35, 45}, 0.40 * 0.8026},
	{"PC", "MEX", [2]float64{2000, 2400}, 0.37, 0.55, 1.2, 2, 1, [2]float64{1.20, 1.20}, [2]float64{55, 65}, 0.40 * 0.8026},
	{"PA", "MEX", [2]float64{1500, 2500}, 0.40, 1.10, 1, 2.5, 0.9, [2]float64{1.14, 1.14}, [2]float64{45, 65}, 0.40 * 0.8026},
	{"PA-GF", "MEX", [2]float64{2800, 5200}, 0.38, 1.10, 1, 1.2, 0.35, [2]float64{1.25, 1.35}, [2]float64{66, 111}, 0.25 * 0.8026},
	{"PA-CF", "MEX", [2]float64{3000, 7000}, 0.38, 1.10, 1, 1, 0.18, [2]float64{1.1, 1.2}, [2]float64{62, 70}, 0.15 * 0.8026},
	{"RESIN", "VPP", [2]float64{2500, 3000}, 0.38, 0.6, 1, 1, 1, [2]float64{1.15, 1.2}, [2]float64{55, 65}, 0.95},
	{"RESIN-TOUGH", "VPP", [2]float64{1500, 2200}, 0.40, 0.6, 1, 2.5, 2.5, [2]float64{1.15, 1.2}, [2]float64{40, 48}, 0.95},
	{"RESIN-DURABLE", "VPP", [2]float64{820, 1260}, 0.43, 0.6, 1, 4, 4, [2]float64{1.1, 1.15}, [2]float64{28, 33}, 0.95},
	{"PP", "moulded", [2]float64{1100, 1500}, 0.42, 0.30, 1.5, 6, 6, [2]float64{0.9, 0.92}, [2]float64{30, 40}, 1},
	{"POM", "moulded", [2]float64{2500, 2800}, 0.37, 0.35, 1.5, 6, 6, [2]float64{1.4, 1.42}, [2]float64{60, 70}, 1},
	{"PA", "moulded", [2]float64{1500, 2800}, 0.39, 0.40, 1.5, 4, 4, [2]float64{1.12, 1.15}, [2]float64{60, 85}, 1},
	{"PC", "moulded", [2]float64{2250, 2310}, 0.37, 0.55, 1.2, 4, 4, [2]float64{1.19, 1.21}, [2]float64{60, 70}, 1},
	{"ABS", "moulded", [2]float64{2000, 2400}, 0.37, 0.65, 1.2, 2.5, 2.5, [2]float64{1.03, 1.07}, [2]float64{40, 50}, 1},
	{"PBT", "moulded", [2]float64{2300, 2600}, 0.38, 0.40, 1.5, 5, 5, [2]float64{1.3, 1.32}, [2]float64{50, 60}, 1},
	{"steel", "machined", [2]float64{205000, 210000}, 0.30, 0.2, 1, 0.1, 0.1, [2]float64{7.8, 7.9}, [2]float64{235, 700}, 1},
	{"brass", "machined", [2]float64{90000, 100000}, 0.35, 0.2, 1, 0.1, 0.1, [2]float64{8.4, 8.7}, [2]float64{200, 400}, 1},
	{"aluminium", "machined", [2]float64{69000, 70000}, 0.33, 0.3, 1, 0.15, 0.15, [2]float64{2.68, 2.72}, [2]float64{120, 300}, 1},
}

// TestTableHoldsWhatIsPublished: the modulus lies in the middle of its range and its
// spread reaches both ends, but not far beyond; the high end of the friction is not below
// what is published.
func TestTableHoldsWhatIsPublished(t *testing.T) {
	if n := len(publishedRanges); n != len(table) || len(table) != len(frictionTable) {
		t.Errorf("%d materials in the table, %d frictions, %d ranges", len(table), len(frictionTable), len(publishedRanges))
	}
	for _, c := range publishedRanges {
		m, faults := Resolve(MaterialSpec{Material: c.name, Process: c.process})
		if len(faults) > 0 {
			t.Errorf("%s %s: %v", c.name, c.process, faults)
			continue
		}
		at := c.name + " " + c.process + " "
		for name, v := range map[string][2]float64{"low": {m.ModulusLow(), c.modulus[0]}, "high": {m.ModulusHigh(), c.modulus[1]}} {
			if short := name == "low" && v[0] > v[1] || name == "high" && v[0] < v[1]; short || math.Abs(math.Log(v[0]/v[1])) > 0.17 {
				t.Errorf("%s%s end of the modulus %g, published %g", at, name, v[0], v[1])
			}
		}
		near(t, at+"strength", m.Strength.Value, c.strength[0], 0.03)
		near(t, at+"strength across", m.StrengthZ.Value, m.Strength.Value*c.ratio, 1e-4)
		near(t, at+"Poisson ratio", m.Poisson.Value, c.poisson, 1e-12)
		for name, v := range map[string][2]float64{"on steel": {m.FrictionSteel.High, c.steel}, "on itself": {m.Friction.High, c.steel * c.multiplier}} {
			if v[0] < v[1] || v[0] > 1.75*v[1] {
				t.Errorf("%sfriction %s up to %g, published up to %g", at, name, v[0], v[1])
			}
		}
		near(t, at+"strain", m.StrainOnce.Value, c.strain/100, 1e-12)
		near(t, at+"strain across", m.StrainOnceZ.Value, c.across/100, 1e-12)
		near(t, at+"repeated", m.StrainRepeated.Value, 0.6*c.strain/100, 1e-12)
		near(t, at+"repeated across", m.StrainRepeatedZ.Value, 0.6*c.across/100, 1e-12)
		if d := m.Density.Value; d < c.density[0]-1e-12 || d > c.density[1]+1e-12 {
			t.Errorf("%sdensity %g, want %v", at, d, c.density)
		}
	}
}

// TestProcessTolerances: the process tolerances of the table, common practice, a
// second time: plus or minus, the larger of a share and a floor.
func TestProcessTolerances(t *testing.T) {
	for _, c := range []struct {
		material, process string
		share, floor      float64
	}{{"PA12", "PBF", 0.003, 0.2}, {"PETG", "MEX", 0.005, 0.3}, {"PC", "moulded", 0.002, 0.05}, {"steel", "machined", 0.0005, 0.01}} {
		m, _ := Resolve(MaterialSpec{Material: c.material, Process: c.process})
		near(t, c.process+" floor", m.ToleranceOn(1), c.floor, 1e-12)
		near(t, c.process+" share", m.ToleranceOn(1000), 1000*c.share, 1e-12)
		near(t, c.process+" wall", m.WallTolerance(), c.floor/2, 1e-12)
	}
}
