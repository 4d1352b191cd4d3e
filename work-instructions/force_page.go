package workinstructions

import (
	"strconv"
	"strings"

	"ramnest/export/page"
	"ramnest/force/method"
	"ramnest/work-instructions/catalogue"
)

// forceItems is force over the stroke, why this method, and the latches.
func (c *composer) forceItems(t stepText) []page.Item {
	w := c.frame.Width
	items := []page.Item{c.heading(c.fig.say("force"), 1)}
	figs := c.forceFigures(t)
	if len(t.Force.Curve) > 1 {
		const graphWidth, graphHeight = 104.0, 66.0
		g := page.Stack(1, c.graph(t, graphWidth, graphHeight),
			c.book.Paragraph(page.Font{Size: sizeSmall}, graphWidth, c.fig.say("force.graph")))
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
	add(f.Design, fig.say("force.design"), fig.force(f.Design))
	add(f.Peak, fig.say("force.peak"), fig.force(f.Peak))
	add(f.P50, fig.say("force.p50"), fig.force(f.P50))
	add(f.P5, fig.say("force.p5"), fig.force(f.P5))
	add(f.P95, fig.say("force.p95"), fig.force(f.P95))
	if f.WorstJams {
		out = append(out, [2]string{fig.say("force.worst"), fig.say("force.jams")})
	} else {
		add(f.Worst, fig.say("force.worst"), fig.force(f.Worst))
	}
	add(f.Jammed, fig.say("force.jammed"), fig.rare(f.Jammed))
	add(f.Seat, fig.say("force.seat"), fig.force(f.Seat))
	add(f.Stroke, fig.say("force.stroke"), fig.length(f.Stroke))
	add(f.Work, fig.say("force.work"), fig.work(f.Work))
	if t.facts.Method == method.ByPress {
		add(t.facts.RatedForce, fig.say("force.rated"), fig.force(t.facts.RatedForce))
		add(t.Lever, fig.say("force.lever"), fig.force(t.Lever))
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
	say := c.fig.say
	table := page.Table{Font: page.Font{Size: sizeTable}, Pad: 1.2, Columns: []page.Column{
		{Title: say("method"), Width: 62}, {Title: say("method.verdict"), Width: 26}, {Title: say("method.nearest")}, {Title: say("method.used"),
			Width: 22, Right: true}}}.Widths(c.frame.Width)
	var rows [][]string
	for _, o := range t.Decision.Options {
		name := c.fig.doing(o)
		if o.Method == t.Decision.Chosen {
			name = strong(say("method.chosen", name))
		}
		rows = append(rows, []string{name, say("verdict." + string(o.Verdict)), c.nearest(o), c.fig.used(o)})
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
	s := c.fig.limitName(o.Governing)
	for _, l := range o.Limits {
		if l.Name == o.Governing && !l.Open && l.Capacity > 0 {
			s += ", " + c.fig.limit(l)
			break
		}
	}
	for _, l := range o.Limits {
		if l.Open {
			s += "; " + c.fig.say("method.not known", c.fig.limitName(l.Name))
		}
	}
	return s
}

// limitName is the name of a limit in the language.
func (f figures) limitName(name string) string {
	if rest, ok := strings.CutPrefix(name, "largest "); ok {
		return f.say("limit.largest", f.limitName(rest))
	}
	if strings.HasPrefix(name, "no published limit") && f.words.Code() != string(catalogue.English) {
		name = "no published limit"
	}
	return f.named("limit", name)
}

// closeTo is the use of a limit from which the sheet says that little is left [1] (own).
const closeTo = 0.95

// used is how much of the limit is used; a plain refusal has no share.
func (f figures) used(o method.Assessment) string {
	if o.Utilisation >= method.Beyond {
		return "–"
	}
	return f.percent(o.Utilisation)
}

// condition says what has to be agreed or why a failing method is taken.
func (c *composer) condition(t stepText) string {
	a := t.chosen()
	switch {
	case a == nil:
		return ""
	case t.facts.Overridden:
		return c.fig.say("condition.override", c.nearest(*a), c.sheet.Override)
	case a.Verdict == method.Conditional:
		return c.fig.say("condition", c.nearest(*a))
	case byHand(t.facts) && a.Utilisation > closeTo:
		return c.fig.say("condition.close", c.nearest(*a))
	}
	return ""
}

// latchItems is the table of latches.
func (c *composer) latchItems(t stepText) []page.Item {
	if len(t.Latches) == 0 {
		return nil
	}
	say := c.fig.say
	table := page.Table{Font: page.Font{Size: sizeTable}, Pad: 1.2, Columns: []page.Column{
		{Title: say("latch")}, {Title: say("latch.kind"), Width: 27}, {Title: say("latch.count"), Width: 16, Right: true},
		{Title: say("latch.peak"), Width: 24, Right: true},
		{Title: say("latch.strain"), Width: 34, Right: true}, {Title: say("latch.holds"), Width: 44}}}.Widths(c.frame.Width)
	var rows [][]string
	for _, l := range t.Latches {
		strain := c.fig.percent(l.Strain)
		if l.Permitted > 0 {
			strain = say("force.of", strain, c.fig.percent(l.Permitted))
		}
		rows = append(rows, []string{l.ID, c.fig.named("kind", l.Kind), strconv.Itoa(l.Count), c.fig.force(l.PeakEach), strain, c.holds(l)})
	}
	items := append([]page.Item{c.heading(say("latches"), 1)}, table.Items(c.book, rows)...)
	if text := c.kept(t.Hold); text != "" {
		items[len(items)-1].Keep = true
		items = append(items, page.Item{Block: c.book.Paragraph(page.Font{Size: sizeBody}, c.frame.Width, text), Gap: 2})
	}
	return items
}

// kept says whether the joint holds what is wanted of it.
func (c *composer) kept(h Hold) string {
	f := c.fig
	switch {
	case h.Wanted == 0:
		return ""
	case !h.Known:
		return f.say("kept.unknown", f.force(h.Wanted))
	case h.Life < h.Wanted:
		return f.say("kept.short", f.force(h.Life), f.force(h.Wanted), f.force(h.Now))
	}
	return f.say("kept", f.force(h.Life), f.force(h.Wanted), f.force(h.Now))
}

func (c *composer) holds(l Latch) string {
	s := c.fig.say("latch.releasable")
	if l.Permanent {
		s = c.fig.say("latch.permanent")
	}
	switch {
	case l.SelfLocking:
		s = c.fig.say("latch.locks", s)
	case l.Separation > 0:
		s = c.fig.say("latch.apart", s, c.fig.force(l.Separation))
	}
	return s
}
