package solve

import (
	"fmt"

	"ramnest/force"
	"ramnest/force/unit"
)

// listDefaults gathers what was taken because the file does not state it, and fills
// in the cycle times.
func (s *Solution) listDefaults() {
	said := map[string]bool{}
	put := func(about string, text unit.Text) {
		if key := about + ": " + text.String(); !said[key] {
			said[key] = true
			s.Defaults = append(s.Defaults, Default{about, text})
		}
	}
	add := func(about, text string) { put(about, unit.Say(text)) }
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
				put(p.path, text)
			}
		}
		for k, l := range st.Latches {
			if l.Use == "" {
				add(fmt.Sprintf("%s[%d].use", st.LatchesPath, k), l.ID+" is permanent")
			}
			if key, text := l.Joint().Assumed(); key != "" {
				put(fmt.Sprintf("%s[%d].%s.%s", st.LatchesPath, k, l.Kind(), key), unit.Say(l.ID+": ").Plus(text))
			}
		}
		for _, text := range st.Decision.Defaults {
			put("bench and line", text)
		}
		st.Cycle = cycleOf(st.Chosen())
	}
	if s.Tooled() {
		for _, text := range s.Tooling.Defaults {
			put("fixture", text)
		}
	}
}

// materialDefaults says which figures of a part come from the built-in table.
func materialDefaults(spec force.MaterialSpec, m force.Material) []unit.Text {
	var out []unit.Text
	if spec.Process == "" {
		out = append(out, unit.Say(m.Name+", "+m.Process))
	}
	if spec.Build == "" && m.Layered() {
		out = append(out, unit.Say(m.Name+" built in the weaker direction for every latch"))
	}
	if spec.Finish == "" && m.Layered() {
		out = append(out, unit.Say(m.Name+" as printed, neither blasted nor smoothed"))
	}
	var figures []unit.Text
	for _, f := range []struct {
		name string
		kind unit.Kind
		force.Figure
	}{
		{"modulus", unit.Stress, m.Modulus}, {"friction", unit.Plain, m.Friction.Figure()},
		{"friction on steel", unit.Plain, m.FrictionSteel.Figure()},
		{"strain once", unit.Share, m.StrainOnce}, {"strain once across the layers", unit.Share, m.StrainOnceZ},
		{"tolerance at least", unit.Length, m.LeastTolerance()}, {"change of a small hole", unit.Length, m.HoleBias},
		{"density", "g/cm3", m.Density},
	} {
		if f.Mark != force.MarkJob && f.Mark != force.MarkShop && f.Value != 0 {
			figures = append(figures, unit.Textf("%s %v (%s)", f.name, f.kind.Of(f.Value), f.Mark))
		}
	}
	if len(figures) > 0 {
		out = append(out, unit.Textf("%s, %s, from the built-in table: %v", m.Name, m.Process, unit.Join(figures, ", ")))
	}
	return out
}
