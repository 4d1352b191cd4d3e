package report

import (
	"math"
	"strconv"
	"strings"

	"ramnest/cmd/internal/solve"
	"ramnest/export/chart"
	"ramnest/force/unit"
)

// ChartOf is the picture of the force of a step, and its title.
func ChartOf(s *solve.Solution, i int) (title string, f chart.Force) {
	st, u := &s.Steps[i], unitsOf(s.Job)
	title = s.Job.Mark() + ": " + st.Name
	if s.Job.Calibration != nil {
		title += ", by " + CalibrationWords(s)
	}
	f = chart.Force{
		Curve: st.Result.Curve.Points(300), Length: u.One(unit.Length), Push: u.One(unit.Force),
		Words: chart.Words{
			Push: "force, " + u.Name(unit.Force), Travel: "travel from first contact, " + u.Name(unit.Length), Stop: "seat",
			Band: "90 of 100 assemblies",
		},
		Number: func(v float64, decimals int) string { return strconv.FormatFloat(v+0, 'f', decimals, 64) },
	}
	if !st.Result.NoP95 {
		f.Levels = []chart.Level{{Name: "design force", Force: st.Result.Design, Strong: true}}
	}
	for _, b := range st.Result.Band {
		f.Band = append(f.Band, [4]float64{b.Lift, b.P5, b.P50, b.P95})
	}
	return title, f
}

// ForceSteps is what force prints as JSON.
func ForceSteps(s *solve.Solution) []Force {
	var out []Force
	for i := range s.Steps {
		f := forceOf(&s.Steps[i])
		f.Replaced, f.Calibration = changesOf(unitsOf(s.Job), &s.Steps[i]), CalibrationWords(s)
		out = append(out, f)
	}
	return out
}

// Size of the curve in the terminal [characters].
const (
	curveColumns = 60
	curveRows    = 10
)

// curve draws the force over the stroke: # the nominal force, dots the band of 90 of
// 100 assemblies, a line of dashes the design force.
func (p *page) curve(u units, st *solve.Step) {
	r := st.Result
	if r.Locks {
		p.line("")
		p.wrap("  ", "  ", "No curve: a latch locks at its nominal friction.")
	}
	if !(r.Stroke > 0) || !(r.Peak > 0) {
		return
	}
	top := math.Max(r.Design, r.Peak)
	for _, b := range r.Band {
		top = math.Max(top, b.P95)
	}
	row := func(f float64) int { return min(curveRows-1, max(0, int(f/top*float64(curveRows)))) }
	var grid [curveRows][curveColumns]byte
	for y := range grid {
		for x := range grid[y] {
			grid[y][x] = ' '
		}
	}
	for x := range curveColumns {
		lift := r.Stroke * (1 - (float64(x)+0.5)/curveColumns)
		for k := 1; k < len(r.Band); k++ {
			a, b := r.Band[k-1], r.Band[k]
			if lift > a.Lift || lift < b.Lift || a.Lift == b.Lift {
				continue
			}
			s := (a.Lift - lift) / (a.Lift - b.Lift)
			lo, hi := a.P5+s*(b.P5-a.P5), a.P95+s*(b.P95-a.P95)
			if hi > 0 {
				for y := row(lo); y <= row(hi); y++ {
					grid[y][x] = '.'
				}
			}
			break
		}
		if !r.NoP95 {
			grid[row(r.Design)][x] = '-'
		}
		if f := r.Curve.At(lift); f > 0 {
			grid[row(f)][x] = '#'
		}
	}
	p.line("")
	for y := curveRows - 1; y >= 0; y-- {
		label := ""
		if y == curveRows-1 || y == curveRows/2 {
			label = u.say(top*float64(y+1)/curveRows, "N")
		}
		p.line("  %12s |%s", label, string(grid[y][:]))
	}
	p.line("  %12s +%s", "", strings.Repeat("-", curveColumns))
	end := u.say(r.Stroke, "mm")
	p.line("  %12s  0%*s", "travel", curveColumns-1, end)
	p.line("  %12s  # nominal   . 90 of 100 assemblies%s", "", unless(r.NoP95, "   - design force", ""))
}
