package workinstructions

import (
	"ramnest/export/chart"
	"ramnest/export/page"
	"ramnest/force/unit"
)

// graph draws the force over the way from first contact to the stop, the band between P5
// and P95 of the peak as a grey ground, and levels with labels. The curve has been judged
// by Validate.
func (c *composer) graph(t stepText, width, height float64) page.Block {
	f := t.Force
	out := chart.Force{Curve: f.Curve, Length: c.fig.units.One(unit.Length), Push: c.fig.units.One(unit.Force), Number: c.fig.number}
	out.Words = chart.Words{Push: c.fig.say("force.axis", c.fig.units.Name(unit.Force)),
		Travel: c.fig.say("force.travel axis", c.fig.units.Name(unit.Length)), Stop: c.fig.say("force.mark.stop")}
	if f.P5 > 0 && f.P95 > f.P5 {
		first, last := f.Curve[0][0], f.Curve[len(f.Curve)-1][0]
		out.Band = [][4]float64{{first, f.P5, f.P50, f.P95}, {last, f.P5, f.P50, f.P95}}
	}
	out.Levels = []chart.Level{{Name: c.fig.say("force.mark.design"), Strong: true, Force: f.Design}}
	for _, l := range []chart.Level{{Name: "P95", Force: f.P95}, {Name: "P50", Force: f.P50}, {Name: "P5", Force: f.P5}} {
		if l.Force > 0 {
			out.Levels = append(out.Levels, l)
		}
	}
	return page.Block{Height: height, Draw: func(p *page.Page, x, y float64) {
		if _, err := out.Draw(p, x, y, width, height); err != nil {
			panic(err) // Validate has passed what cannot be drawn
		}
	}}
}
