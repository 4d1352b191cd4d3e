package force

import (
	"fmt"
	"slices"
	"strings"

	"ramnest/force/fault"
)

// A MaterialSpec is what the job says of the material of one part. It is made
// to be inlined in the part.
type MaterialSpec struct {
	Material string `yaml:"material" required:"true"` // key of the shop's or the built-in table, "PA12", "steel"
	// Process is the process category; left out, the first that the table knows
	// for the material.
	Process string `yaml:"process" oneof:"PBF MEX VPP moulded machined"`
	// Build is the build direction to the press axis: along it (the layers lie
	// across the axis, rings are strong, standing arms weak) or across it. Left
	// out, the weaker direction is taken for every latch.
	Build string `yaml:"build" oneof:"along across"`
	// Finish is what was done to the surfaces of a printed part: nothing
	// (as_printed; left out), blasted or tumbled, or smoothed by vapour or another
	// chemical.
	Finish string `yaml:"finish" oneof:"as_printed blasted tumbled smoothed"`
	// Lubrication is what is on the latches of this part when it is pressed: nothing
	// (dry; left out), or a film of silicone or PTFE, which counts for the pair. A stated
	// friction is taken as it stands.
	Lubrication string `yaml:"lubrication" oneof:"dry film"`

	Figures `yaml:",inline"`
}

// Figures are the figures of a material that somebody states instead of the
// table's; nil is not stated.
type Figures struct {
	Modulus         *float64 `yaml:"modulus" unit:"MPa"`           // at small strain [MPa]
	Poisson         *float64 `yaml:"poisson" unit:"none"`          // [1]
	Friction        *float64 `yaml:"friction" unit:"none"`         // coefficient against the mating part [1]
	StrainOnce      *float64 `yaml:"strain_once" unit:"pct"`       // permitted for one joining, in the layers [1]
	StrainRepeated  *float64 `yaml:"strain_repeated" unit:"pct"`   // permitted for frequent joining, in the layers [1]; left out: 0.6 times strain_once
	StrainOnceZ     *float64 `yaml:"strain_once_z" unit:"pct"`     // across the layers [1]; left out: with strain_once given, by the table's ratio
	StrainRepeatedZ *float64 `yaml:"strain_repeated_z" unit:"pct"` // across the layers [1]
	Density         *float64 `yaml:"density" unit:"none"`          // [g/cm3]
	Strength        *float64 `yaml:"strength" unit:"MPa"`          // in the layers [MPa]
	StrengthZ       *float64 `yaml:"strength_z" unit:"MPa"`        // across the layers [MPa]; left out: with strength given, by the table's ratio
	SecantZero      *float64 `yaml:"secant_zero" unit:"pct"`       // strain at which the secant line meets zero [1]; left out: by modulus and strength; a large one: no bound
	Tolerance       *float64 `yaml:"tolerance" unit:"mm"`          // plus or minus on a dimension, at least [mm]
	ToleranceShare  *float64 `yaml:"tolerance_share" unit:"pct"`   // plus or minus on a dimension, share of it [1]
	HoleBias        *float64 `yaml:"hole_bias" unit:"mm"`          // by which holes come out wider than drawn, on the diameter; below 0 tighter [mm]; left out: by process, for holes without a tolerance of their own
	Rz              *float64 `yaml:"rz" unit:"mm"`                 // mean roughness depth of what is pressed, 0.06 mm or 60 um [mm]; left out: by process and finish
	FrictionSpread  *float64 `yaml:"friction_spread" unit:"pct"`   // on the friction, upward, and as a ratio downward [1]
	ModulusSpread   *float64 `yaml:"modulus_spread" unit:"pct"`    // plus or minus on the modulus [1]
}

// A Figure is a value with the mark of its source.
type Figure struct {
	Value float64
	Mark  Mark
}

// A Material is a MaterialSpec with every figure filled in.
type Material struct {
	Name, Process, Build string
	Finish               string // as_printed, blasted, tumbled or smoothed; empty for what is not printed
	Lubrication          string // dry or film

	Modulus         Figure   // at small strain, middle [MPa]
	Poisson         Figure   // [1]
	Friction        Friction // on itself [1]
	FrictionSteel   Friction // on steel [1]
	StrainOnce      Figure   // in the layers [1]
	StrainRepeated  Figure   // in the layers [1]
	StrainOnceZ     Figure   // across the layers [1]
	StrainRepeatedZ Figure   // across the layers [1]
	Density         Figure   // [g/cm3]
	Strength        Figure   // in the layers [MPa]
	StrengthZ       Figure   // across the layers [MPa]
	SecantZero      Figure   // strain at which the secant line meets 0, see [SecantModulus]; Value 0: no bound, a metal [1]
	SecantZeroLow   Figure   // the same for what holds: by the strength itself, without headroom [1]
	Straight        Figure   // strain up to which stress is in proportion [1]
	Tolerance       Figure   // plus or minus on a dimension, at least [mm]
	ToleranceShare  Figure   // plus or minus on a dimension, share of it [1]
	HoleBias        Figure   // mean change of a hole's diameter, below 0 tighter [mm], see [Material.TighterHole]
	Rz              Figure   // mean roughness depth as stated [mm]; without a mark by process and finish, see [Material.Roughness]
	FrictionSpread  Figure   // high end over the middle, less 1 [1]
	ModulusSpread   Figure   // plus or minus, share of it [1]
	Source          string   // of the shop's table, if it comes from there

	chart bool // its law of stress over strain was read off a chart
}

// Metal says whether the material is stiff enough to count as metal.
func (m Material) Metal() bool { return m.Modulus.Value >= metalModulus }

// Layered says whether the build direction makes a difference to the part.
func (m Material) Layered() bool { return m.Process != "moulded" && m.Process != "machined" }

// ModulusLow is the modulus for what holds, the lower end of its spread [MPa].
func (m Material) ModulusLow() float64 { return m.Modulus.Value * (1 - m.ModulusSpread.Value) }

// ModulusHigh is the modulus for what presses, the upper end of its spread [MPa].
func (m Material) ModulusHigh() float64 { return m.Modulus.Value * (1 + m.ModulusSpread.Value) }

// ToleranceOn is the plus or minus that the process keeps on a dimension [mm]:
// the larger of a floor and a share of the dimension, both by the step of size where
// the process has steps.
func (m Material) ToleranceOn(dimension float64) float64 {
	if s, ok := m.step(dimension); ok {
		return max(s.floor, s.share*dimension)
	}
	return max(m.Tolerance.Value, m.ToleranceShare.Value*dimension)
}

// LeastTolerance is the plus or minus on the smallest dimension [mm].
func (m Material) LeastTolerance() Figure { return Figure{m.ToleranceOn(0), m.Tolerance.Mark} }

// step is the step of size in which a dimension lies; ok is false where the process
// has none, or the job or shop states a tolerance.
func (m Material) step(dimension float64) (toleranceStep, bool) {
	stated := func(f Figure) bool { return f.Mark == MarkJob || f.Mark == MarkShop }
	if m.Process != "VPP" || stated(m.Tolerance) || stated(m.ToleranceShare) {
		return toleranceStep{}, false
	}
	for _, s := range vatSteps {
		if dimension <= s.upTo {
			return s, true
		}
	}
	return toleranceStep{}, false
}

// WallTolerance is the plus or minus on a wall thickness [mm]: half the floor of
// the process, the coarsest where it has steps, its two faces lying close together:
// how far resin cures beyond the light goes by the light and not by the size. Common
// practice, no source.
func (m Material) WallTolerance() float64 { return m.Tolerance.Value / 2 }

// PermittedHoop is the strain permitted round a ring whose axis is the press
// axis [1]. Built along the axis, the layers carry it in their plane; built
// across, they are pulled apart by it in two places; unknown counts as across.
func (m Material) PermittedHoop(use string) Figure {
	return m.permitted(use, m.Build == "along" || !m.Layered())
}

// PermittedAxial is the strain permitted along the press axis [1], as at the root
// of a standing arm. Built across the axis, the arm lies in the layers; built
// along, or unknown, its bending pulls the layers apart.
func (m Material) PermittedAxial(use string) Figure {
	return m.permitted(use, m.Build == "across" || !m.Layered())
}

func (m Material) permitted(use string, inPlane bool) Figure {
	switch {
	case use == "releasable" && inPlane:
		return m.StrainRepeated
	case use == "releasable":
		return m.StrainRepeatedZ
	case inPlane:
		return m.StrainOnce
	}
	return m.StrainOnceZ
}

// HoopStrength is the strength round a ring [MPa], by the same rule as
// [Material.PermittedHoop].
func (m Material) HoopStrength() Figure {
	if m.Build == "along" || !m.Layered() {
		return m.Strength
	}
	return m.StrengthZ
}

// Resolve fills in the figures of a spec from the built-in table.
func Resolve(s MaterialSpec) (Material, []fault.Fault) { return Shop(nil).Resolve(s) }

// material is the table's line with its marks.
func (r row) material() Material {
	practice := func(v float64) Figure { return Figure{v, MarkPractice} }
	across := layering[r.filler].mark
	m := Material{
		Name: r.name, Process: r.process,
		Modulus: Figure{r.modulus, r.modulusMark}, Poisson: practice(r.poisson),
		StrainOnce: Figure{r.strainIn, r.strainMark}, StrainOnceZ: Figure{r.strainOut, r.strainMark},
		StrainRepeated: Figure{r.strainIn * repeatFactor, r.strainMark}, StrainRepeatedZ: Figure{r.strainOut * repeatFactor, r.strainMark},
		Density: practice(r.density), Strength: practice(r.strength), StrengthZ: Figure{r.strength * r.filler.across(), across},
		ModulusSpread: practice(r.modulusSpread), chart: r.name == "PC",
	}
	m.HoleBias, _ = holeBias(r.process)
	m.Friction, m.FrictionSteel = frictionOf(r.name, r.process)
	m.FrictionSpread = Figure{m.Friction.High/m.Friction.Value - 1, m.Friction.Mark}
	m.bound()
	for _, p := range processTolerances {
		if p.process == r.process {
			m.Tolerance, m.ToleranceShare = practice(p.floor), practice(p.share)
		}
	}
	return m
}

// override puts stated figures over those of the material.
func (m *Material) override(s Figures, mark Mark) []fault.Fault {
	var out []fault.Fault
	set := func(field, unit string, v *float64, lo, hi float64, to ...*Figure) {
		if v == nil {
			return
		}
		if !within(*v, lo, hi) {
			shown, low, high := *v, lo, hi
			if unit == " %" {
				shown, low, high = 100*shown, 100*low, 100*high
			}
			out = append(out, fault.Fault{Field: field, Given: fmt.Sprintf("%.6g%s", shown, unit), Problem: "is outside what a material can have",
				Want: fmt.Sprintf("%.6g to %.6g%s", low, high, unit)})
			return
		}
		for _, f := range to {
			*f = Figure{*v, mark}
		}
	}
	set("modulus", " MPa", s.Modulus, softestModulus, stiffestModulus, &m.Modulus)
	set("poisson", "", s.Poisson, 0, maxPoisson, &m.Poisson)
	var friction Figure
	set("friction", "", s.Friction, 0, maxFriction, &friction)
	// A figure in the layers brings its neighbours along by the old ratios.
	once, strength := m.StrainOnce.Value, m.Strength.Value
	ratioZ, ratioStrength := m.StrainOnceZ.Value/once, m.StrengthZ.Value/strength
	set("strain_once", " %", s.StrainOnce, 1e-5, maxStrain, &m.StrainOnce)
	if v := s.StrainOnce; v != nil && len(out) == 0 {
		m.StrainOnceZ = Figure{*v * ratioZ, mark}
		m.StrainRepeated, m.StrainRepeatedZ = Figure{RepeatedStrain(*v), mark}, Figure{RepeatedStrain(*v * ratioZ), mark}
	}
	set("strain_repeated", " %", s.StrainRepeated, 1e-5, maxStrain, &m.StrainRepeated)
	if v := s.StrainRepeated; v != nil && len(out) == 0 {
		m.StrainRepeatedZ = Figure{*v * ratioZ, mark}
	}
	set("strain_once_z", " %", s.StrainOnceZ, 1e-5, maxStrain, &m.StrainOnceZ)
	if v := s.StrainOnceZ; v != nil && len(out) == 0 {
		m.StrainRepeatedZ = Figure{RepeatedStrain(*v), mark}
	}
	set("strain_repeated_z", " %", s.StrainRepeatedZ, 1e-5, maxStrain, &m.StrainRepeatedZ)
	set("density", " g/cm3", s.Density, 0.01, 25, &m.Density)
	set("strength", " MPa", s.Strength, 0.1, 5000, &m.Strength)
	if v := s.Strength; v != nil && len(out) == 0 {
		m.StrengthZ = Figure{*v * ratioStrength, mark}
	}
	set("strength_z", " MPa", s.StrengthZ, 0.1, 5000, &m.StrengthZ)
	line := m.SecantZero
	set("secant_zero", " %", s.SecantZero, 1e-3, noBound, &line)
	switch {
	case s.SecantZero != nil && line.Value != m.SecantZero.Value: // the same is no other law
		m.SecantZero, m.SecantZeroLow, m.Straight = line, line, Figure{}
	case s.SecantZero == nil && (s.Modulus != nil || s.Strength != nil) && m.SecantZero.Mark != MarkShop:
		m.bound()
	}
	set("tolerance", " mm", s.Tolerance, 0, 5, &m.Tolerance)
	set("tolerance_share", " %", s.ToleranceShare, 0, 0.05, &m.ToleranceShare)
	set("hole_bias", " mm", s.HoleBias, -1, 1, &m.HoleBias)
	set("rz", " mm", s.Rz, 0, 0.5, &m.Rz)
	set("friction_spread", " %", s.FrictionSpread, 0, 0.9, &m.FrictionSpread)
	set("modulus_spread", " %", s.ModulusSpread, 0, 0.9, &m.ModulusSpread)
	m.restate(s, friction)
	return out
}

// findRow looks the material up in the built-in table, by process if stated.
func findRow(name, process string) (r row, ok bool, processes []string) {
	for _, r := range table {
		if strings.EqualFold(r.name, name) {
			if process == "" || r.process == process {
				return r, true, nil
			}
			processes = append(processes, r.process)
		}
	}
	return row{}, false, processes
}

// Materials lists the names of the built-in table, each once, in its order.
func Materials() []string {
	var known []string
	for _, r := range table {
		if !slices.Contains(known, r.name) {
			known = append(known, r.name)
		}
	}
	return known
}
