package force

import "testing"

// published are the ranges that the built-in table says it takes its ends from,
// written down a second time: modulus, strength and its ratio across the layers,
// Poisson ratio and density from typical public data sheets of printing materials
// (common practice, no single source; PA12 modulus rounded and density read at a
// materials data page), permitted strains common practice, 0.6 for repeats; friction
// on steel and its multiplier on itself from Snap-Fit Joints for Plastics - A Design
// Guide, table 3 (from memory), upper ends. The table enters the end of a range that
// makes the force higher: modulus and friction the upper, strength the lower.
var publishedRanges = []struct {
	name, process          string
	modulus                [2]float64 // [MPa]
	poisson                float64
	steel, multiplier      float64 // friction: upper end on steel; times that on itself
	strain, across         float64 // [%]
	density                [2]float64
	strength               [2]float64
	ratioLow, secantZeroPc float64
}{
	{"PA12", "PBF", [2]float64{1650, 2000}, 0.40, 0.40, 1.5, 3.5, 2, [2]float64{0.88, 1.01}, [2]float64{44, 54}, 0.85, 0},
	{"PA11", "PBF", [2]float64{1500, 1800}, 0.40, 0.40, 1.5, 5, 3, [2]float64{1.02, 1.05}, [2]float64{45, 52}, 0.85, 0},
	{"PA12-GB", "PBF", [2]float64{2800, 3300}, 0.38, 0.40, 1.5, 1.5, 1, [2]float64{1.2, 1.36}, [2]float64{28, 40}, 0.8, 0},
	{"PLA", "MEX", [2]float64{2300, 3500}, 0.36, 0.5, 1, 1, 0.5, [2]float64{1.24, 1.24}, [2]float64{45, 60}, 0.5, 0},
	{"PETG", "MEX", [2]float64{1700, 2100}, 0.38, 0.45, 1, 1.5, 0.75, [2]float64{1.27, 1.27}, [2]float64{40, 50}, 0.5, 0},
	{"ABS", "MEX", [2]float64{1800, 2300}, 0.37, 0.65, 1.2, 1.2, 0.6, [2]float64{1.04, 1.04}, [2]float64{30, 40}, 0.4, 0},
	{"ASA", "MEX", [2]float64{1900, 2300}, 0.37, 0.65, 1.2, 1.2, 0.6, [2]float64{1.07, 1.07}, [2]float64{35, 45}, 0.4, 0},
	{"PC", "MEX", [2]float64{2000, 2400}, 0.37, 0.55, 1.2, 2, 1, [2]float64{1.20, 1.20}, [2]float64{55, 65}, 0.5, 9.33},
	{"PA", "MEX", [2]float64{1500, 2500}, 0.40, 0.40, 1.5, 2.5, 1.25, [2]float64{1.14, 1.14}, [2]float64{45, 65}, 0.5, 0},
	{"RESIN", "VPP", [2]float64{2500, 3000}, 0.38, 0.6, 1, 1, 1, [2]float64{1.15, 1.2}, [2]float64{55, 65}, 0.95, 0},
	{"RESIN-TOUGH", "VPP", [2]float64{1500, 2200}, 0.40, 0.6, 1, 2.5, 2.5, [2]float64{1.15, 1.2}, [2]float64{40, 48}, 0.95, 0},
	{"RESIN-DURABLE", "VPP", [2]float64{900, 1300}, 0.43, 0.6, 1, 4, 4, [2]float64{1.1, 1.15}, [2]float64{28, 33}, 0.95, 0},
	{"PP", "moulded", [2]float64{1100, 1500}, 0.42, 0.30, 1.5, 6, 6, [2]float64{0.9, 0.92}, [2]float64{30, 40}, 1, 0},
	{"POM", "moulded", [2]float64{2500, 2800}, 0.37, 0.35, 1.5, 6, 6, [2]float64{1.4, 1.42}, [2]float64{60, 70}, 1, 0},
	{"PA", "moulded", [2]float64{1500, 2800}, 0.39, 0.40, 1.5, 4, 4, [2]float64{1.12, 1.15}, [2]float64{60, 85}, 1, 0},
	{"PC", "moulded", [2]float64{2310, 2310}, 0.37, 0.55, 1.2, 4, 4, [2]float64{1.19, 1.21}, [2]float64{60, 70}, 1, 9.33},
	{"ABS", "moulded", [2]float64{2000, 2400}, 0.37, 0.65, 1.2, 2.5, 2.5, [2]float64{1.03, 1.07}, [2]float64{40, 50}, 1, 0},
	{"PBT", "moulded", [2]float64{2300, 2600}, 0.38, 0.40, 1.5, 5, 5, [2]float64{1.3, 1.32}, [2]float64{50, 60}, 1, 0},
	{"steel", "machined", [2]float64{205000, 210000}, 0.30, 0.2, 1, 0.1, 0.1, [2]float64{7.8, 7.9}, [2]float64{235, 700}, 1, 0},
	{"brass", "machined", [2]float64{90000, 100000}, 0.35, 0.2, 1, 0.1, 0.1, [2]float64{8.4, 8.7}, [2]float64{200, 400}, 1, 0},
	{"aluminium", "machined", [2]float64{69000, 70000}, 0.33, 0.3, 1, 0.15, 0.15, [2]float64{2.68, 2.72}, [2]float64{120, 300}, 1, 0},
}

func TestTableStandsAtTheSafeEndOfItsRanges(t *testing.T) {
	if len(publishedRanges) != len(table) {
		t.Errorf("%d materials in the table, %d ranges", len(table), len(publishedRanges))
	}
	for _, c := range publishedRanges {
		m, faults := Resolve(MaterialSpec{Material: c.name, Process: c.process})
		if len(faults) > 0 {
			t.Errorf("%s %s: %v", c.name, c.process, faults)
			continue
		}
		at := c.name + " " + c.process + " "
		near(t, at+"modulus", m.Modulus.Value, c.modulus[1], 1e-12)
		near(t, at+"strength", m.Strength.Value, c.strength[0], 1e-12)
		near(t, at+"strength across", m.StrengthZ.Value, c.strength[0]*c.ratioLow, 1e-12)
		near(t, at+"Poisson ratio", m.Poisson.Value, c.poisson, 1e-12)
		near(t, at+"friction on steel", m.FrictionSteel.Value, c.steel, 1e-12)
		near(t, at+"friction on itself", m.Friction.Value, c.steel*c.multiplier, 0.011)
		near(t, at+"strain", m.StrainOnce.Value, c.strain/100, 1e-12)
		near(t, at+"strain across", m.StrainOnceZ.Value, c.across/100, 1e-12)
		near(t, at+"repeated", m.StrainRepeated.Value, 0.6*c.strain/100, 1e-12)
		near(t, at+"repeated across", m.StrainRepeatedZ.Value, 0.6*c.across/100, 1e-12)
		if z := c.secantZeroPc / 100; z != m.SecantZero.Value {
			t.Errorf("%ssecant line ends at %g, want %g", at, m.SecantZero.Value, z)
		}
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
		near(t, "spread of the friction", m.FrictionSpread.Value, 0.25, 1e-12)
		near(t, "spread of the modulus", m.ModulusSpread.Value, 0.15, 1e-12)
	}
}
