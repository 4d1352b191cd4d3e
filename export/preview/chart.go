package preview

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Of the drawing of the force [units of its view box].
const (
	chartWidth, chartHeight = 720.0, 320.0
	chartLeft, chartRight   = 70.0, 16.0
	chartTop, chartBottom   = 34.0, 52.0
)

// A chart is the force over the travel, ready to be drawn.
type chart struct {
	Title, Text      string
	XLabel, YLabel   string
	XTicks, YTicks   []tick
	Band, Curve      string // path data
	DesignY          string
	DesignText       string
	Left, Top        float64
	Right, Bottom    float64
	Middle           float64
	Rows             []row
	LengthU, ForceU  string
	HasBand          bool
	Under, BesideTop float64 // where the labels of the axes stand
}

// A tick is a mark on an axis.
type tick struct{ At, Text string }

// A row is a line of the table that stands for the drawing.
type row struct{ Travel, Lift, Low, Nominal, High string }

// tableRows is how many lines that table has.
const tableRows = 11

// chartOf lays the drawing out.
func chartOf(s Step, u units) chart {
	stroke := s.Stroke()
	top := s.Design
	for _, p := range s.Curve {
		top = max(top, p[1])
	}
	for _, b := range s.Band {
		top = max(top, b[3])
	}
	xs, ys := niceStep(stroke/u.Length/6), niceStep(max(top/u.Force, 1e-9)/5)
	most := math.Ceil(top/u.Force/ys*(1-1e-9)) * ys
	if most <= 0 {
		most = ys
	}
	w, h := chartWidth-chartLeft-chartRight, chartHeight-chartTop-chartBottom
	x := func(lift float64) string { return place(chartLeft + w*(stroke-lift)/stroke) }
	y := func(f float64) string { return place(chartTop + h*(1-f/u.Force/most)) }
	c := chart{
		Title: "Force over travel: " + s.Name, XLabel: "travel from first contact, " + u.LengthName, YLabel: "force, " + u.ForceName,
		DesignY: y(s.Design), DesignText: "design force " + number(s.Design/u.Force) + " " + u.ForceName,
		Left: chartLeft, Right: chartWidth - chartRight, Top: chartTop, Bottom: chartHeight - chartBottom, Middle: chartLeft + w/2,
		LengthU: u.LengthName, ForceU: u.ForceName, HasBand: len(s.Band) > 1, Under: chartHeight - 8, BesideTop: 16,
	}
	for v := 0.0; v <= stroke/u.Length*(1+1e-9); v += xs {
		c.XTicks = append(c.XTicks, tick{x(stroke - v*u.Length), decimal(v, xs)})
	}
	for v := 0.0; v <= most*(1+1e-9); v += ys {
		c.YTicks = append(c.YTicks, tick{y(v * u.Force), decimal(v, ys)})
	}
	var d strings.Builder
	pen := func(lift, f float64) {
		letter := " L"
		if d.Len() == 0 {
			letter = "M"
		}
		d.WriteString(letter + x(lift) + " " + y(f))
	}
	if c.HasBand {
		for _, b := range s.Band {
			pen(b[0], b[1])
		}
		for i := len(s.Band) - 1; i >= 0; i-- {
			pen(s.Band[i][0], s.Band[i][3])
		}
		c.Band = d.String() + " Z"
		d.Reset()
	}
	peak, at := 0.0, 0.0
	for _, p := range s.Curve {
		pen(p[0], p[1])
		if p[1] > peak {
			peak, at = p[1], p[0]
		}
	}
	c.Curve = d.String()
	c.Text = fmt.Sprintf("Nominal force rises to %s %s at a travel of %s %s of %s %s; %s. The figures stand in the table below.",
		number(peak/u.Force), u.ForceName, number((stroke-at)/u.Length), u.LengthName, number(stroke/u.Length), u.LengthName, c.DesignText)
	for i := range tableRows {
		lift := stroke * (1 - float64(i)/(tableRows-1))
		r := row{Travel: number((stroke - lift) / u.Length), Lift: number(lift / u.Length), Nominal: number(curveAt(s.Curve, lift) / u.Force)}
		if low, high, ok := bandAt(s.Band, lift); ok {
			r.Low, r.High = number(low/u.Force), number(high/u.Force)
		}
		c.Rows = append(c.Rows, r)
	}
	return c
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

// place writes a place in the drawing.
func place(v float64) string { return strconv.FormatFloat(math.Round(v*100)/100+0, 'f', -1, 64) }

// decimal writes a figure on an axis with the digits that its step needs.
func decimal(v, step float64) string {
	return strconv.FormatFloat(v+0, 'f', max(0, int(math.Ceil(-math.Log10(step)-1e-9))), 64)
}

// niceStep is the least of 1, 2, 5 times a power of ten that is not below v.
func niceStep(v float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(v)))
	for _, k := range []float64{1, 2, 5} {
		if k*p >= v*0.9999 {
			return k * p
		}
	}
	return 10 * p
}
