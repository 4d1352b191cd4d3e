package workinstructions

import (
	"strconv"

	"ramnest/export/page"
	"ramnest/force/unit"
)

// records is the first-piece check and the table that the operator fills in.
func (c *composer) records() []page.Item {
	head := c.heading(c.fig.say("record"), 0)
	items := []page.Item{head}
	items = append(items, c.firstPiece()...)
	items = append(items, c.recordTable()...)
	return append(items, c.care()...)
}

// stepName is the number of a step for a table, empty where there is one only.
func (c *composer) stepName(i int) string {
	if len(c.steps) == 1 {
		return ""
	}
	return strconv.Itoa(i+1) + "  "
}

func (c *composer) firstPiece() []page.Item {
	say := c.fig.say
	items := []page.Item{c.heading(say("first"), 1)}
	text := c.text(sizeBody, say("first.when"))
	for i := range text {
		text[i].Keep = true
	}
	text[0].Gap = 0
	items = append(items, text...)
	table := page.Table{Font: page.Font{Size: sizeTable}, Pad: 1.4, Least: 8.5, Columns: []page.Column{
		{Title: say("first.what")}, {Title: say("acc.limit"), Width: 42}, {Title: say("first.found"), Width: 26}, {Title: say("first.by"),
			Width: 18}, {Title: say("first.second"), Width: 18}}}.Widths(c.frame.Width)
	var rows [][]string
	for i, t := range c.steps {
		for _, k := range criteria(c.fig, t.Step) {
			rows = append(rows, []string{c.stepName(i) + k.measured(), strong(k.Limit), "", "", ""})
		}
	}
	rest := c.lined(table, table.Items(c.book, rows))
	rest[0].Gap = 2
	return append(items, rest...)
}

// lined draws the lines between the columns of a table that is filled in by
// hand.
func (c *composer) lined(t page.Table, items []page.Item) []page.Item {
	for i := range items {
		b := items[i].Block
		items[i].Block = page.Block{Height: b.Height, Draw: func(p *page.Page, x, y float64) {
			b.Draw(p, x, y)
			for k, col := range t.Columns {
				if k > 0 {
					p.Line(x, y, x, y+b.Height, page.Hairline)
				}
				x += col.Width
			}
		}}
	}
	return items
}

// recordRows is how many pieces fit one printed table; more go on a copy.
const recordRows = 10

func (c *composer) recordTable() []page.Item {
	say := c.fig.say
	items := []page.Item{c.heading(say("table"), 1)}
	text := c.text(sizeBody, say("table.why"))
	text[0].Gap = 0
	for i := range text {
		text[i].Keep = true
	}
	items = append(items, text...)
	cols := []page.Column{{Title: say("table.piece"), Width: 18}, {Title: say("head.date"), Width: 24}}
	if len(c.steps) > 1 {
		cols = append(cols, page.Column{Title: say("open.step"), Width: 16})
	}
	cols = append(cols, page.Column{Title: say("table.gap", c.fig.units.Name(unit.Length)), Width: 22},
		page.Column{Title: say("table.force", c.fig.units.Name(unit.Force)), Width: 22},
		page.Column{Title: say("table.seen")}, page.Column{Title: say("table.good"), Width: 30}, page.Column{Title: say("first.by"), Width: 18})
	table := page.Table{Font: page.Font{Size: sizeTable}, Pad: 1.4, Least: 8.5, Columns: cols}.Widths(c.frame.Width)
	rows := make([][]string, recordRows)
	rest := c.lined(table, table.Items(c.book, rows))
	rest[0].Gap = 2
	for i := range rest {
		rest[i].Keep = i < len(rest)-1
	}
	return append(items, rest...)
}

// care is what keeps the tooling fit for use.
func (c *composer) care() []page.Item {
	items := []page.Item{c.heading(c.fig.say("care"), 1)}
	first := c.text(sizeBody, c.fig.say("care.shift"))
	first[0].Gap = 0
	return append(items, first...)
}
