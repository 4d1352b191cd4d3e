package workinstructions

import (
	"math"
	"slices"

	"ramnest/export/page"
)

// A level is a force that stands in the graph as a line across it.
type level struct {
	name   string
	strong bool
	force  float64 // [N]
	dash   []float64
	width  float64
	label  float64 // place of its label [mm], spread out later
}

// graph draws the force over the way from first contact to the stop, the band
// between P5 and P95 of the peak as a grey ground, and levels with labels.
func (c *composer) graph(t stepText, width, height float64) page.Block {
	const left, right, top, bottom = 15.0, 27.0, 6.0, 10.5
	f := t.Force
	w, h := width-left-right, height-top-bottom
	begin := f.Curve[0][0]
	for _, p := range f.Curve {
		begin = max(begin, p[0])
	}
	end := min(0, f.Curve[len(f.Curve)-1][0])
	highest := max(f.Design, f.P95)
	for _, p := range f.Curve {
		highest = max(highest, p[1])
	}
	levels := []level{{name: c.fig.say("force.mark.design"), strong: true, force: f.Design, dash: []float64{3, 1.2}, width: 0.45}}
	for _, l := range []level{{name: "P95", force: f.P95}, {name: "P50", force: f.P50}, {name: "P5", force: f.P5}} {
		if l.force > 0 {
			l.width = page.Hairline
			levels = append(levels, l)
		}
	}
	fy, unit := c.fig.newtons(highest)
	dy := niceStep(fy / 4)
	topValue := math.Ceil(fy*1.02/dy) * dy
	fx, lengthUnit := c.fig.millimetres(begin - end)
	fx = max(fx, 1e-9)
	dx := niceStep(fx / 5)
	perX, perY := w/fx, h/topValue
	px := func(lift float64) float64 { v, _ := c.fig.millimetres(begin - lift); return left + v*perX }
	py := func(force float64) float64 { v, _ := c.fig.newtons(force); return top + h - v*perY }
	for i := range levels {
		levels[i].label = py(levels[i].force)
	}
	levels = merged(levels)
	spread(levels, 4, top, top+h+1)
	small := page.Font{Size: sizeSmall}
	return page.Block{Height: height, Draw: func(p *page.Page, x, y float64) {
		if f.P5 > 0 && f.P95 > f.P5 {
			p.Ground(x+left, y+py(f.P95), w, py(f.P5)-py(f.P95), page.Grey)
		}
		for v := 0.0; v <= topValue*1.0001; v += dy {
			yy := y + top + h - v*perY
			p.Line(x+left-1.2, yy, x+left, yy, page.Hairline)
			s := c.fig.number(v, stepDecimals(dy))
			p.Text(x+left-2-c.book.Width(small, s), yy+1, small, s)
		}
		for v := 0.0; v <= fx*1.0001; v += dx {
			xx := x + left + v*perX
			p.Line(xx, y+top+h, xx, y+top+h+1.2, page.Hairline)
			s := c.fig.number(v, stepDecimals(dx))
			p.Text(xx-c.book.Width(small, s)/2, y+top+h+4.6, small, s)
		}
		p.Text(x, y+3, small, c.fig.say("force.axis", unit))
		axis := c.fig.say("force.travel axis", lengthUnit)
		p.Text(x+left+w-c.book.Width(small, axis), y+height-1.2, small, axis)
		for _, l := range levels {
			yy := y + py(l.force)
			line := new(page.Path).Move(x+left, yy).Line(x+left+w, yy)
			p.Draw(line, page.Style{Stroke: l.width, Dash: l.dash})
			p.Draw(new(page.Path).Move(x+left+w, yy).Line(x+left+w+3, y+l.label), page.Style{Stroke: page.Hairline})
			face := small
			if l.strong {
				face.Face = page.Bold
			}
			p.Text(x+left+w+3.6, y+l.label+1.05, face, l.name)
		}
		curve := new(page.Path)
		for i, pt := range f.Curve {
			if i == 0 {
				curve.Move(x+px(begin), y+py(0)).Line(x+px(pt[0]), y+py(pt[1]))
			} else {
				curve.Line(x+px(pt[0]), y+py(pt[1]))
			}
		}
		p.Draw(curve, page.Style{Stroke: 0.6})
		p.Draw(new(page.Path).Move(x+left, y+top).Line(x+left, y+top+h).Line(x+left+w, y+top+h), page.Style{Stroke: 0.35})
		stop := x + px(0)
		p.Draw(new(page.Path).Move(stop, y+top).Line(stop, y+top+h), page.Style{Stroke: 0.35})
		end := c.fig.say("force.mark.stop")
		p.Text(stop-c.book.Width(small, end)-0.8, y+top-1, small, end)
	}}
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

func stepDecimals(step float64) int {
	return max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
}

// merged puts the names of equal levels on one label.
func merged(levels []level) []level {
	var out []level
	for _, l := range levels {
		if k := slices.IndexFunc(out, func(o level) bool { return o.force == l.force }); k >= 0 {
			out[k].name += ", " + l.name
			continue
		}
		out = append(out, l)
	}
	return out
}

// spread moves labels apart so that none stands on another.
func spread(levels []level, gap, lo, hi float64) {
	slices.SortStableFunc(levels, func(a, b level) int {
		switch {
		case a.label < b.label:
			return -1
		case a.label > b.label:
			return 1
		}
		return 0
	})
	at := lo
	for i := range levels {
		levels[i].label = max(levels[i].label, at)
		at = levels[i].label + gap
	}
	at = hi
	for i := len(levels) - 1; i >= 0; i-- {
		levels[i].label = min(levels[i].label, at)
		at = levels[i].label - gap
	}
}
