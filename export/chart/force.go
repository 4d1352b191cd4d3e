package chart

import (
	"fmt"
	"image/color"
	"io"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"ramnest/force"
)

// A Force is what one picture shows. Points are in order of falling lift.
type Force struct {
	Title  string
	Curve  [][2]float64 // lift [mm] and nominal force [N]
	Band   [][4]float64 // lift [mm] and P5, P50, P95 [N]; may be empty
	Design float64      // [N]; 0: not drawn
	Inches bool         // lengths in inch and forces in lbf
}

// Size of the picture [mm].
const width, height = 160, 100

const (
	inch       = 25.4
	poundForce = 4.4482216152605
)

// Write draws in a format, "svg" or "png". The same Force gives the same bytes with
// one version of the library. What cannot be drawn is a force.Fault.
func Write(w io.Writer, f Force, format string) error {
	if format != "svg" && format != "png" {
		return force.Fault{Field: "format", Given: format, Problem: "is no format of a chart", Want: "svg or png"}
	}
	p, err := f.plot()
	if err != nil {
		return err
	}
	out, err := p.WriterTo(width*vg.Millimeter, height*vg.Millimeter, format)
	if err != nil {
		return fmt.Errorf("draw the force: %w", err)
	}
	_, err = out.WriteTo(w)
	return err
}

func (f Force) plot() (*plot.Plot, error) {
	length, push, lengthUnit, forceUnit := 1.0, 1.0, "mm", "N"
	if f.Inches {
		length, push, lengthUnit, forceUnit = 1/inch, 1/poundForce, "in", "lbf"
	}
	if len(f.Curve) < 2 {
		return nil, force.Fault{Field: "curve", Problem: "has no points to draw"}
	}
	start := f.Curve[0][0]
	for _, b := range f.Band {
		start = math.Max(start, b[0])
	}
	// Travel from first contact runs to the right, as the ram goes down.
	at := func(lift float64) float64 { return (start - lift) * length }
	p := plot.New()
	p.Title.Text = f.Title
	p.X.Label.Text = "travel from first contact, " + lengthUnit
	p.Y.Label.Text = "force, " + forceUnit
	p.Y.Min = 0
	p.Add(plotter.NewGrid())
	if len(f.Band) > 1 {
		var ring plotter.XYs
		for _, b := range f.Band {
			ring = append(ring, plotter.XY{X: at(b[0]), Y: b[1] * push})
		}
		for i := len(f.Band) - 1; i >= 0; i-- {
			ring = append(ring, plotter.XY{X: at(f.Band[i][0]), Y: f.Band[i][3] * push})
		}
		area, err := plotter.NewPolygon(ring)
		if err != nil {
			return nil, force.Fault{Field: "band", Problem: "cannot be drawn: " + err.Error()}
		}
		area.Color, area.LineStyle.Width = color.Gray{220}, 0
		p.Add(area)
		p.Legend.Add("90 of 100 assemblies", area)
	}
	var line plotter.XYs
	for _, c := range f.Curve {
		line = append(line, plotter.XY{X: at(c[0]), Y: c[1] * push})
	}
	nominal, err := plotter.NewLine(line)
	if err != nil {
		return nil, force.Fault{Field: "curve", Problem: "cannot be drawn: " + err.Error()}
	}
	nominal.Width = vg.Points(1.6)
	p.Add(nominal)
	p.Legend.Add("nominal", nominal)
	if f.Design > 0 {
		design, err := plotter.NewLine(plotter.XYs{{X: at(start), Y: f.Design * push}, {X: at(f.Curve[len(f.Curve)-1][0]), Y: f.Design * push}})
		if err != nil {
			return nil, force.Fault{Field: "design", Problem: "cannot be drawn: " + err.Error()}
		}
		design.Dashes = []vg.Length{vg.Points(4), vg.Points(2)}
		p.Add(design)
		p.Legend.Add("design force", design)
	}
	top := f.Design * push
	for _, c := range f.Curve {
		top = math.Max(top, c[1]*push)
	}
	for _, b := range f.Band {
		top = math.Max(top, b[3]*push)
	}
	p.Y.Max = 1.3 * top // room for the legend
	p.Legend.Top, p.Legend.Left = true, true
	return p, nil
}
