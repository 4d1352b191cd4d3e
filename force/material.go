package force

import (
	"fmt"
	"slices"
	"strings"
)

// A MaterialSpec is what the job says of the material of one part. It is made
// to be inlined in the part.
type MaterialSpec struct {
	Material string `yaml:"material" required:"true"` // key of the built-in table, "PA12", "steel"
	// Process is the process category; left out, the first that the table knows
	// for the material.
	Process string `yaml:"process" oneof:"PBF MEX VPP moulded machined"`
	// Build is the build direction to the press axis: along it (the layers lie
	// across the axis, rings are strong, standing arms weak) or across it. Left
	// out, the weaker direction is taken for every latch.
	Build string `yaml:"build" oneof:"along across"`

	Modulus        *float64 `yaml:"modulus" unit:"MPa"`         // [MPa]
	Poisson        *float64 `yaml:"poisson" unit:"none"`        // [1]
	Friction       *float64 `yaml:"friction" unit:"none"`       // coefficient against the mating part [1]
	StrainOnce     *float64 `yaml:"strain_once" unit:"pct"`     // permitted for one joining [1]
	StrainRepeated *float64 `yaml:"strain_repeated" unit:"pct"` // permitted for frequent joining [1]
	Density        *float64 `yaml:"density" unit:"none"`        // [g/cm3]
	Strength       *float64 `yaml:"strength" unit:"MPa"`        // [MPa]
}

// A Figure is a value with the mark of its source.
type Figure struct {
	Value float64
	Mark  Mark
}

// A Material is a MaterialSpec with every figure filled in.
type Material struct {
	Name, Process, Build string

	Modulus          Figure // at small strain [MPa]
	Poisson          Figure // [1]
	Friction         Figure // on itself [1]
	FrictionSteel    Figure // on steel [1]
	StrainOnce       Figure // in the layers [1]
	StrainRepeated   Figure // in the layers [1]
	StrainOnceZ      Figure // across the layers [1]
	StrainRepeatedZ  Figure // across the layers [1]
	Density          Figure // [g/cm3]
	Strength         Figure // in the layers [MPa]
	StrengthZ        Figure // across the layers [MPa]
	SecantZeroStrain Figure // strain at which the secant line reaches 0; Value 0: no secant data [1]
}

// Metal says whether the material is stiff enough to count as metal.
func (m Material) Metal() bool { return m.Modulus.Value >= metalModulus }

// ToleranceOn is the plus or minus tolerance [mm] that the process keeps on a
// dimension [mm]. Common practice, no source; see the table of processes.
func (m Material) ToleranceOn(dimension float64) float64 {
	for _, p := range processTolerances {
		if p.process == m.Process {
			return max(p.floor, p.share*dimension)
		}
	}
	return 0
}

// PermittedHoop is the strain permitted round a ring whose axis is the press
// axis [1]. Built along the axis, the layers carry it in their plane; built
// across, they are pulled apart by it in two places; unknown counts as across.
func (m Material) PermittedHoop(use string) Figure {
	inPlane := m.Build == "along" || m.Process == "moulded" || m.Process == "machined"
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

// Resolve fills in the figures of a spec from the built-in table.
func Resolve(s MaterialSpec) (Material, []Fault) {
	var out []Fault
	if s.Build != "" && s.Build != "along" && s.Build != "across" {
		out = append(out, Fault{Field: "build", Given: s.Build, Problem: "is not known", Want: "along or across the press axis"})
	}
	r, faults := findRow(s)
	out = append(out, faults...)
	if len(out) > 0 {
		return Material{}, out
	}
	practice := func(v float64) Figure { return Figure{v, MarkPractice} }
	m := Material{
		Name: r.name, Process: r.process, Build: s.Build,
		Modulus: Figure{r.modulus, r.modulusMark}, Poisson: practice(r.poisson),
		Friction: Figure{r.frictionSelf, MarkMemory}, FrictionSteel: Figure{r.frictionSteel, MarkMemory},
		StrainOnce: practice(r.strainIn), StrainOnceZ: practice(r.strainOut),
		StrainRepeated: practice(r.strainIn * repeatFactor), StrainRepeatedZ: practice(r.strainOut * repeatFactor),
		Density: practice(r.density), Strength: practice(r.strength), StrengthZ: practice(r.strength * r.strengthOut),
		SecantZeroStrain: Figure{r.secantZeroStrain, MarkMemory},
	}
	set := func(field, unit string, v *float64, lo, hi float64, to ...*Figure) {
		if v == nil {
			return
		}
		if !within(*v, lo, hi) {
			shown, low, high := *v, lo, hi
			if unit == " %" {
				shown, low, high = 100*shown, 100*low, 100*high
			}
			out = append(out, Fault{Field: field, Given: fmt.Sprintf("%g%s", shown, unit), Problem: "is outside what a material can have", Want: fmt.Sprintf("%g to %g%s", low, high, unit)})
			return
		}
		for _, f := range to {
			*f = Figure{*v, MarkJob}
		}
	}
	set("modulus", " MPa", s.Modulus, softestModulus, longestModulus, &m.Modulus)
	set("poisson", "", s.Poisson, 0, maxPoisson, &m.Poisson)
	set("friction", "", s.Friction, 0, maxFriction, &m.Friction, &m.FrictionSteel)
	set("strain_once", " %", s.StrainOnce, 1e-5, maxStrain, &m.StrainOnce, &m.StrainOnceZ)
	if s.StrainOnce != nil {
		repeated := Figure{*s.StrainOnce * repeatFactor, MarkMemory}
		m.StrainRepeated, m.StrainRepeatedZ = repeated, repeated
	}
	set("strain_repeated", " %", s.StrainRepeated, 1e-5, maxStrain, &m.StrainRepeated, &m.StrainRepeatedZ)
	set("density", " g/cm3", s.Density, 0.01, 25, &m.Density)
	set("strength", " MPa", s.Strength, 0.1, 5000, &m.Strength, &m.StrengthZ)
	return m, out
}

// findRow looks the material up, by process where that is stated.
func findRow(s MaterialSpec) (row, []Fault) {
	var known, processes []string
	for _, r := range table {
		if !slices.Contains(known, r.name) {
			known = append(known, r.name)
		}
		if !strings.EqualFold(r.name, s.Material) {
			continue
		}
		if s.Process == "" || r.process == s.Process {
			return r, nil
		}
		processes = append(processes, r.process)
	}
	if len(processes) > 0 {
		return row{}, []Fault{{Field: "process", Given: s.Process, Problem: "is not in the table for " + s.Material, Want: strings.Join(processes, " or ")}}
	}
	if s.Material == "" {
		return row{}, []Fault{{Field: "material", Problem: "is missing", Want: strings.Join(known, ", ")}}
	}
	return row{}, []Fault{{Field: "material", Given: s.Material, Problem: "is not in the table", Want: strings.Join(known, ", ")}}
}

// pairFriction is the coefficient of friction of two materials [1]: a figure
// from the job first; a plastic on metal by the plastic's value on steel; two
// plastics by the higher of their values on themselves.
func pairFriction(a, b Material) Figure {
	switch {
	case a.Friction.Mark == MarkJob && b.Friction.Mark == MarkJob:
		return Figure{max(a.Friction.Value, b.Friction.Value), MarkJob}
	case a.Friction.Mark == MarkJob:
		return a.Friction
	case b.Friction.Mark == MarkJob:
		return b.Friction
	case a.Metal() && !b.Metal():
		return b.FrictionSteel
	case b.Metal() && !a.Metal():
		return a.FrictionSteel
	case a.Friction.Value >= b.Friction.Value:
		return a.Friction
	}
	return b.Friction
}
