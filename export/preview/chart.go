package preview

import (
	"fmt"
	"html/template"
	"strconv"

	"ramnest/export/chart"
	"ramnest/export/page"
	"ramnest/force/unit"
)

// A figure is the force over the travel, drawn, and the table that stands for it.
type figure struct {
	SVG             template.HTML
	Rows            []row
	LengthU, ForceU string
	HasBand         bool
	plot            chart.Plot
}

// A row is a line of the table that stands for the drawing.
type row struct{ Travel, Lift, Low, Nominal, High string }

// tableRows is how many lines that table has.
const tableRows = 11

// figureOf draws the force of the step of that number.
func figureOf(i int, s Step, u unit.System) (figure, error) {
	stroke := s.Stroke()
	length := func(mm float64) string { return unit.Length.Of(mm).Text(u, nil) }
	push := func(n float64) string { return unit.Force.Of(n).Text(u, nil) }
	bare := func(v float64, k unit.Kind) string { return k.Of(v).Number(u, nil) }
	out := figure{LengthU: u.Name(unit.Length), ForceU: u.Name(unit.Force), HasBand: len(s.Band) > 1}
	design := "design force " + push(s.Design)
	f := chart.Force{
		Curve: s.Curve, Band: s.Band, Length: u.One(unit.Length), Push: u.One(unit.Force),
		Words: chart.Words{Push: "force, " + out.ForceU, Travel: "travel from first contact, " + out.LengthU, Stop: "seat",
			Band: "90 of 100 assemblies"},
		Number: func(v float64, decimals int) string { return strconv.FormatFloat(v+0, 'f', decimals, 64) },
	}
	if s.Design > 0 {
		f.Levels = []chart.Level{{Name: "design force", Force: s.Design, Strong: true}}
	}
	p, plot, err := chart.Page("", f)
	if err != nil {
		return out, err
	}
	peak, at := 0.0, 0.0
	for _, c := range s.Curve {
		if c[1] > peak {
			peak, at = c[1], c[0]
		}
	}
	out.plot = plot
	out.SVG = template.HTML(p.SVG(page.SVG{
		ID: "chart-" + strconv.Itoa(i), Title: "Force over travel: " + s.Name,
		Text: fmt.Sprintf("Nominal force rises to %s at a travel of %s of %s; %s. The figures stand in the table below.",
			push(peak), length(stroke-at), length(stroke), design),
		More: fmt.Sprintf("<path class=\"marker\" id=\"marker-%d\" d=\"M%g %gV%g\"/>\n", i, plot.Left, plot.Top, plot.Bottom),
	}))
	for i := range tableRows {
		lift := stroke * (1 - float64(i)/(tableRows-1))
		r := row{Travel: bare(stroke-lift, unit.Length), Lift: bare(lift, unit.Length), Nominal: bare(curveAt(s.Curve, lift), unit.Force)}
		if low, high, ok := bandAt(s.Band, lift); ok {
			r.Low, r.High = bare(low, unit.Force), bare(high, unit.Force)
		}
		out.Rows = append(out.Rows, r)
	}
	return out, nil
}

// curveAt is the force at a lift [N]; 0 outside the curve. At a drop it is the larger.
func curveAt(curve [][2]float64, lift float64) float64 {
	most := 0.0
	for i := 1; i < len(curve); i++ {
		a, b := curve[i-1], curve[i]
		if lift > a[0]+1e-9 || lift < b[0]-1e-9 {
			continue
		}
		f := max(a[1], b[1])
		if a[0] > b[0] {
			f = a[1] + (b[1]-a[1])*min(1, max(0, (a[0]-lift)/(a[0]-b[0])))
		}
		most = max(most, f)
	}
	return most
}

// bandAt is what 90 of 100 assemblies lie between at a lift [N].
func bandAt(band [][4]float64, lift float64) (low, high float64, ok bool) {
	for i := 1; i < len(band); i++ {
		a, b := band[i-1], band[i]
		if lift > a[0]+1e-9 || lift < b[0]-1e-9 || a[0] <= b[0] {
			continue
		}
		t := min(1, max(0, (a[0]-lift)/(a[0]-b[0])))
		return a[1] + t*(b[1]-a[1]), a[3] + t*(b[3]-a[3]), true
	}
	return 0, 0, false
}
