package workinstructions

import (
	"fmt"
	"strconv"

	"ramnest/export/page"
	"ramnest/force/method"
)

// forceItems is force over the stroke, why this method, and the latches.
func (c *composer) forceItems(t stepText) []page.Item {
	w := c.frame.Width
	items := []page.Item{c.heading("Force and method", 1)}
	figs := c.forceFigures(t)
	if len(t.Force.Curve) > 1 {
		const graphWidth, graphHeight = 104.0, 66.0
		g := page.Stack(1, c.graph(t, graphWidth, graphHeight), c.book.Paragraph(page.Font{Size: sizeSmall}, graphWidth, "Thick line: nominal force. Of many assemblies, nine of ten have their highest force in the grey band."))
		items = append(items, page.Item{Block: page.Beside(g, c.figureList(figs, w-graphWidth-5), graphWidth+5), Keep: true})
	} else {
		items = append(items, page.Item{Block: c.figureList(figs, w), Keep: true})
	}
	items = append(items, c.methodItems(t)...)
	return append(items, c.latchItems(t)...)
}

// forceFigures lists what is known of the force, name and value.
func (c *composer) forceFigures(t stepText) [][2]string {
	f, fig := t.Force, c.fig
	var out [][2]string
	add := func(known float64, name, value string) {
		if known > 0 {
			out = append(out, [2]string{name, value})
		}
	}
	add(f.Design, "Design force", fig.force(f.Design))
	add(f.Peak, "Nominal peak", fig.force(f.Peak))
	add(f.P50, "P50: half below", fig.force(f.P50))
	add(f.P5, "P5: 5 of 100 below", fig.force(f.P5))
	add(f.P95, "P95: 95 of 100 below", fig.force(f.P95))
	add(f.Worst, "Worst tolerances", fig.force(f.Worst))
	add(f.Seat, "At the seat", fig.force(f.Seat))
	add(f.Stroke, "Travel under force", fig.length(f.Stroke))
	add(f.Work, "Work to the seat", fig.work(f.Work))
	if t.facts.Method == method.ByPress {
		add(t.facts.RatedForce, "Press rated", fig.force(t.facts.RatedForce))
		add(t.Lever, "At the lever", fig.force(t.Lever))
	}
	return out
}

// figureList sets names and values in two columns.
func (c *composer) figureList(rows [][2]string, width float64) page.Block {
	f := page.Font{Size: sizeTable}
	width = min(width, 90)
	var blocks []page.Block
	for _, r := range rows {
		name := c.book.Paragraph(f, width-32, r[0])
		blocks = append(blocks, page.Block{Height: name.Height + 1.2, Draw: func(p *page.Page, x, y float64) {
			name.Draw(p, x, y+0.5)
			b := page.Font{Face: page.Bold, Size: f.Size}
			p.Text(x+width-c.book.Width(b, r[1]), y+0.5+f.Ascent(), b, r[1])
			p.Line(x, y+name.Height+1.2, x+width, y+name.Height+1.2, page.Hairline)
		}})
	}
	return page.Stack(0, blocks...)
}

// methodItems is the table of the three methods and the reason for the choice.
func (c *composer) methodItems(t stepText) []page.Item {
	table := page.Table{Font: page.Font{Size: sizeTable}, Pad: 1.2, Columns: []page.Column{
		{Title: "Method", Width: 62}, {Title: "Verdict", Width: 24}, {Title: "Nearest limit"}, {Title: "Used", Width: 20, Right: true}}}.Widths(c.frame.Width)
	var rows [][]string
	for _, o := range t.Decision.Options {
		name := o.Method.Title()
		if o.Action != "" && o.Action != name {
			name += ": " + o.Action
		}
		if o.Method == t.Decision.Chosen {
			name = strong(name + " (chosen)")
		}
		verdict := map[method.Verdict]string{method.Pass: "passes", method.Conditional: "on condition", method.Fail: "fails"}[o.Verdict]
		rows = append(rows, []string{name, verdict, c.nearest(o), used(o)})
	}
	items := table.Items(c.book, rows)
	items[0].Gap = 4
	if why := c.condition(t); why != "" {
		items[len(items)-1].Keep = true
		items = append(items, page.Item{Block: c.book.Paragraph(page.Font{Size: sizeBody}, c.frame.Width, why), Gap: 2})
	}
	return items
}

// nearest names the limit that decides, with demand and capacity, and what is
// still open.
func (c *composer) nearest(o method.Assessment) string {
	s := o.Governing
	for _, l := range o.Limits {
		if l.Name == o.Governing && !l.Open && l.Capacity > 0 {
			s += ", " + c.fig.limit(l.Demand, l.Capacity, l.Unit)
			break
		}
	}
	for _, l := range o.Limits {
		if l.Open {
			s += "; not known: " + l.Name
		}
	}
	return s
}

// used is how much of the limit is used; a plain refusal has no share.
func used(o method.Assessment) string {
	if o.Utilisation >= method.Beyond {
		return "–"
	}
	return percent(o.Utilisation)
}

// condition says what has to be agreed or why a failing method is taken.
func (c *composer) condition(t stepText) string {
	a := t.chosen()
	switch {
	case a == nil:
		return ""
	case t.facts.Overridden:
		return strong("Override.") + " The chosen method fails: " + c.nearest(*a) + ". Reason given to use it: " + c.sheet.Override
	case a.Verdict == method.Conditional:
		return strong("Condition.") + " A competent person must agree, and sign: " + c.nearest(*a) + "."
	}
	return ""
}

// latchItems is the table of latches.
func (c *composer) latchItems(t stepText) []page.Item {
	if len(t.Latches) == 0 {
		return nil
	}
	table := page.Table{Font: page.Font{Size: sizeTable}, Pad: 1.2, Columns: []page.Column{
		{Title: "Latch"}, {Title: "Kind", Width: 28}, {Title: "Count", Width: 15, Right: true}, {Title: "Peak each", Width: 24, Right: true},
		{Title: "Strain, permitted", Width: 34, Right: true}, {Title: "Holds", Width: 48}}}.Widths(c.frame.Width)
	var rows [][]string
	for _, l := range t.Latches {
		strain := percent(l.Strain)
		if l.Permitted > 0 {
			strain += " of" + nbsp + percent(l.Permitted)
		}
		rows = append(rows, []string{l.ID, l.Kind, strconv.Itoa(l.Count), c.fig.force(l.PeakEach), strain, c.holds(l)})
	}
	return append([]page.Item{c.heading("Latches", 1)}, table.Items(c.book, rows)...)
}

func (c *composer) holds(l Latch) string {
	s := "releasable"
	if l.Permanent {
		s = "permanent"
	}
	switch {
	case l.SelfLocking:
		s += ", locks itself"
	case l.Separation > 0:
		s += fmt.Sprintf(", apart at %s", c.fig.force(l.Separation))
	}
	return s
}
