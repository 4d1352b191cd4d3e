package force

import (
	"maps"
	"slices"
	"strings"

	"ramnest/force/fault"
)

// A Shop is a workshop's own material table by name; its figures go before the
// built-in ones. A nil Shop is no table.
type Shop map[string]ShopMaterial

// A ShopMaterial is one material of a shop's own table. What it leaves out comes
// from the built-in material it is Like.
type ShopMaterial struct {
	Like    string `yaml:"like" required:"true"`                         // name in the built-in table
	Process string `yaml:"process" oneof:"PBF MEX VPP moulded machined"` // which of its lines; left out: the job's, or the first
	Source  string `yaml:"source"`                                       // where the figures come from, "coupons of week 12"

	Figures `yaml:",inline"`
}

// Validate returns what is wrong with the table, in order of its names.
func (s Shop) Validate() []fault.Fault {
	var out []fault.Fault
	for _, name := range slices.Sorted(maps.Keys(s)) {
		if strings.TrimSpace(name) == "" {
			out = append(out, fault.Fault{Problem: "has a material without a name", Want: "a name"})
			continue
		}
		_, faults := s.resolveShop(name, MaterialSpec{})
		out = append(out, fault.Under(name, faults)...)
	}
	return out
}

// Resolve fills in the figures of a spec: those of the spec itself, then of the
// shop's table, then of the built-in one.
func (s Shop) Resolve(spec MaterialSpec) (Material, []fault.Fault) {
	var m Material
	var out []fault.Fault
	if spec.Build != "" && spec.Build != "along" && spec.Build != "across" {
		out = append(out, fault.Fault{Field: "build", Given: spec.Build, Problem: "is not known", Want: "along or across the press axis"})
	}
	out = append(out, finishFaults(spec.Finish)...)
	if spec.Lubrication != "" {
		out = append(out, choiceFault("lubrication", spec.Lubrication, "dry", "film")...)
	}
	if name, ok := s.find(spec.Material); ok {
		var faults []fault.Fault
		m, faults = s.resolveShop(name, spec)
		if len(faults) > 0 {
			out = append(out, fault.Fault{Field: "material", Given: spec.Material, Problem: "has faults in the shop's table: " + faults[0].Error(),
				Want: "a sound line there"})
		}
	} else {
		var faults []fault.Fault
		m, faults = s.builtIn("material", spec.Material, spec.Process)
		out = append(out, faults...)
	}
	if len(out) > 0 {
		return Material{}, out
	}
	m.Build = spec.Build
	if spec.Finish != "" && !m.Layered() {
		return Material{}, []fault.Fault{{Field: "finish", Given: spec.Finish, Problem: "is for printed parts, and the part is " + m.Process,
			Want: "left out"}}
	}
	if m.Finish = spec.Finish; m.Finish == "" && m.Layered() {
		m.Finish = finishes[0]
	}
	if m.Lubrication = spec.Lubrication; m.Lubrication == "" {
		m.Lubrication = "dry"
	}
	return m, m.override(spec.Figures, MarkJob)
}

// find looks a name up, exactly or else without regard to case.
func (s Shop) find(name string) (string, bool) {
	if _, ok := s[name]; ok {
		return name, true
	}
	for _, k := range slices.Sorted(maps.Keys(s)) {
		if strings.EqualFold(k, name) {
			return k, true
		}
	}
	return "", false
}

// resolveShop fills in one line of the shop's table, for the process that the
// job states, if any.
func (s Shop) resolveShop(name string, spec MaterialSpec) (Material, []fault.Fault) {
	line := s[name]
	process := line.Process
	if process != "" && spec.Process != "" && process != spec.Process {
		return Material{}, []fault.Fault{{Field: "process", Given: spec.Process,
			Problem: "is not the process of " + name + " in the shop's table", Want: process}}
	}
	if process == "" {
		process = spec.Process
	}
	m, faults := s.builtIn("like", line.Like, process)
	if len(faults) > 0 {
		return Material{}, faults
	}
	m.Name, m.Source = name, line.Source
	return m, m.override(line.Figures, MarkShop)
}

func (s Shop) builtIn(field, name, process string) (Material, []fault.Fault) {
	r, ok, processes := findRow(name, process)
	switch {
	case ok:
		return r.material(), nil
	case len(processes) > 0:
		return Material{}, []fault.Fault{{Field: "process", Given: process, Problem: "is not in the table for " + name,
			Want: strings.Join(processes, " or ")}}
	}
	known := Materials()
	if field == "material" {
		known = append(slices.Sorted(maps.Keys(s)), known...)
	}
	want := strings.Join(known, ", ")
	if name == "" {
		return Material{}, []fault.Fault{{Field: field, Problem: "is missing", Want: want}}
	}
	problem := "is not in the table"
	if term := MaterialTerm(name, process); term != "" {
		problem = CalledHere(term)
	}
	return Material{}, []fault.Fault{{Field: field, Given: name, Problem: problem, Want: want}}
}
