package deliver

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
)

const jamHook = `job: HOOK
title: Lid with two hooks
revision: A
date: 2026-11-25
rate_per_hour: 30
hours_per_shift: 1
method: {force: press, override: trial by the engineer only}
lower: {name: tray, material: PA12, build: across, envelope: {layers: [{from: 0, to: 3, rectangle: {size: [60, 40]}}, {from: 3, to: 20, rectangle: {size: [60, 40]}, openings: [{rectangle: {size: [54, 34]}}]}]}}
upper: {name: lid, material: PA12, build: across, envelope: {layers: [{from: 8, to: 20, rectangle: {at: [25.5, 0], size: [2, 8]}}, {from: 8, to: 20, rectangle: {at: [-25.5, 0], size: [2, 8]}}, {from: 20, to: 23, rectangle: {size: [60, 40]}}]}}
latches: [{id: arm, at: [[25.5, 0], [-25.5, 0]], z: 9, use: releasable, cantilever: {flexes: upper, bends: inward, undercut: 0.6, mating_angle: %g, return_angle: 40, length: 12, thickness: 2, width: 8, root_radius: 1}}]
`

// TestTheSameShareEverywhere: over angles from where none jams to where so many do that
// there is no P95, the share that jams is one figure in terminal, report, limits and
// sheet, and P95 is in none of them once it does not exist.
func TestTheSameShareEverywhere(t *testing.T) {
	t.Parallel()
	sheets, jamming := 0, 0
	step := 1.0
	if os.Getenv("RAMNEST_LONG") != "" {
		step = 0.5
	}
	for angle := 36.0; angle <= 46; angle += step {
		j, _ := solvetest.Read(t, "hook.yaml", fmt.Sprintf(jamHook, angle))
		s, err := solve.Run(j, solve.Means{Open: solvetest.Open})
		if err != nil {
			t.Fatal(err)
		}
		st := s.Steps[0]
		r := st.Result
		var said struct {
			Steps []struct {
				Force map[string]any `json:"force"`
			} `json:"steps"`
		}
		set, err := Files(t.Context(), s, "tool", nil)
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(set.Report, &said); err != nil {
			t.Fatal(err)
		}
		f := said.Steps[0].Force
		if got := f["share_jammed"].(float64); math.Abs(got-r.Jammed) > 1e-12 {
			t.Errorf("%g deg: report %g, result %g", angle, got, r.Jammed)
		}
		_, p95 := f["p95_n"]
		_, design := f["design_n"]
		if p95 == r.NoP95 || design == r.NoP95 || r.NoP95 != (r.Jammed > 0.05) {
			t.Errorf("%g deg, %g jam: P95 in the report %t, design force %t, none %t", angle, r.Jammed, p95, design, r.NoP95)
		}
		for _, a := range st.Decision.Options {
			for _, l := range a.Limits {
				if strings.HasSuffix(l.Name, "assemblies that jam") && math.Abs(l.Demand-100*r.Jammed) > 1e-12 {
					t.Errorf("%g deg: %s holds %g %% against the limit, the result %g", angle, a.Method, l.Demand, r.Jammed)
				}
			}
		}
		text := report.Summary(s, "", nil)
		want := "jammed              " + strings.TrimSpace(shareOf(r.Jammed))
		if !strings.Contains(text, want) || strings.Contains(text, "P95, for design     none") != r.NoP95 {
			t.Errorf("%g deg: terminal has no %q, or a P95 that is none\n%s", angle, want, text)
		}
		if r.NoP95 != !s.Tooled() {
			t.Errorf("%g deg, %g jam: tooling %t under the override", angle, r.Jammed, s.Tooled())
		}
		if !s.Tooled() {
			continue
		}
		sheets++
		page, err := sheet(t.Context(), s, "tool")
		if err != nil {
			t.Fatal(err)
		}
		if got := page.Steps[0].Force; got.Jammed != r.Jammed || got.WorstJams != r.WorstJams || got.P95 != r.P95 {
			t.Errorf("%g deg: sheet %+v, result %g jam, worst %t", angle, got, r.Jammed, r.WorstJams)
		}
		if r.Jammed > 0 {
			jamming++
		}
	}
	if sheets < 3 || jamming < 2 {
		t.Errorf("%d sheets, %d of them of what jams", sheets, jamming)
	}
}

// shareOf writes a share as the terminal does, written a second time.
func shareOf(x float64) string {
	switch {
	case x == 0:
		return "0 %"
	case x < 0.001:
		return "< 0.1 %"
	case x < 0.01:
		return fmt.Sprintf("%.2g %%", 100*x)
	}
	return fmt.Sprintf("%.1f %%", 100*x)
}
