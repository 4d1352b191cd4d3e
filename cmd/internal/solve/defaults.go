package solve

import (
	"fmt"
	"slices"
	"strings"

	"ramnest/force"
)

// listDefaults gathers what was taken because the file does not state it, and fills
// in the cycle times.
func (s *Solution) listDefaults() {
	add := func(about, text string) {
		if d := (Default{about, text}); !slices.Contains(s.Defaults, d) {
			s.Defaults = append(s.Defaults, d)
		}
	}
	j := s.Job
	if j.Paper == "" {
		add("paper", "A4")
	}
	if j.Language == "" {
		add("language", "en")
	}
	if j.Draws == 0 {
		add("draws", "10000 tolerance draws")
	}
	if j.Revision == "" {
		add("revision", "none")
	}
	if j.Rates == nil {
		add("rates", "INVENTED round numbers: the quote is no price")
	}
	if v := j.Service; v != nil {
		if v.After == nil {
			add("service.after", fmt.Sprintf("hold after %.4g h", v.Time()))
		}
		if v.Openings == 0 {
			add("service.openings", "never opened")
		}
		if v.Temperature == nil {
			add("service.temperature", fmt.Sprintf("at %.3g deg C", v.Warmest()))
		}
		if v.Moisture == "" {
			add("service.moisture", "room air, 50 % relative humidity")
		}
	}
	for i := range s.Steps {
		st := &s.Steps[i]
		for _, p := range []struct {
			path string
			spec force.MaterialSpec
			m    force.Material
		}{{st.LowerPath, st.Assembly.Lower, st.LowerMaterial}, {st.UpperPath, st.Assembly.Upper, st.UpperMaterial}} {
			for _, text := range materialDefaults(p.spec, p.m) {
				add(p.path, text)
			}
		}
		for k, l := range st.Latches {
			if l.Use == "" {
				add(fmt.Sprintf("%s[%d].use", st.LatchesPath, k), l.ID+" is permanent")
			}
			if key, text := l.Joint().Assumed(); key != "" {
				add(fmt.Sprintf("%s[%d].%s.%s", st.LatchesPath, k, l.Kind(), key), l.ID+": "+text)
			}
		}
		for _, text := range st.Decision.Defaults {
			add("bench and line", text)
		}
		st.Cycle = cycleOf(st.Chosen())
	}
	if s.Tooled() {
		for _, text := range s.Tooling.Defaults {
			add("fixture", text)
		}
	}
}

// materialDefaults says which figures of a part come from the built-in table.
func materialDefaults(spec force.MaterialSpec, m force.Material) []string {
	var out []string
	if spec.Process == "" {
		out = append(out, m.Name+", "+m.Process)
	}
	if spec.Build == "" && m.Layered() {
		out = append(out, m.Name+" built in the weaker direction for every latch")
	}
	if spec.Finish == "" && m.Layered() {
		out = append(out, m.Name+" as printed, neither blasted nor smoothed")
	}
	var figures []string
	for _, f := range []struct {
		name, unit string
		scale      float64
		force.Figure
	}{
		{"modulus", " MPa", 1, m.Modulus}, {"friction", "", 1, m.Friction.Figure()}, {"friction on steel", "", 1, m.FrictionSteel.Figure()},
		{"strain once", " %", 100, m.StrainOnce}, {"strain once across the layers", " %", 100, m.StrainOnceZ},
		{"tolerance at least", " mm", 1, m.LeastTolerance()}, {"change of a small hole", " mm", 1, m.HoleBias}, {"density", " g/cm3", 1, m.Density},
	} {
		if f.Mark != force.MarkJob && f.Mark != force.MarkShop && f.Value != 0 {
			figures = append(figures, fmt.Sprintf("%s %.4g%s (%s)", f.name, f.scale*f.Value, f.unit, f.Mark))
		}
	}
	if len(figures) > 0 {
		out = append(out, m.Name+", "+m.Process+", from the built-in table: "+strings.Join(figures, ", "))
	}
	return out
}
