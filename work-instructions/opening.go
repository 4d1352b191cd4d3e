package workinstructions

import (
	"fmt"
	"image"
	"strconv"
	"strings"

	"ramnest/export/page"
	"ramnest/force/method"
)

// opening is the head of the first page: what this is, how it is done, and the
// order to read it before use.
func (c *composer) opening() []page.Item {
	s, w := c.sheet, c.frame.Width
	title := page.Item{Block: c.book.Paragraph(page.Font{Face: page.Bold, Size: sizeTitle}, w, s.Title), Keep: true, Title: s.Title}
	items := []page.Item{title}
	amount := ""
	if s.Quantity > 0 {
		amount = count(s.Quantity, "assembly", "assemblies")
	}
	if s.RatePerHour > 0 {
		if amount != "" {
			amount += ", "
		}
		amount += fixedTo(s.RatePerHour, rateDecimals(s.RatePerHour)) + nbsp + "an hour"
	}
	if amount != "" {
		items = append(items, page.Item{Block: c.book.Paragraph(page.Font{Size: sizeBody}, w, amount), Gap: 1, Keep: true})
	}
	var rows [][]string
	for i, t := range c.steps {
		rows = append(rows, []string{strconv.Itoa(i + 1), t.Name, how(t.Step), c.fig.force(t.Force.Design)})
	}
	table := page.Table{Font: page.Font{Size: sizeBody}, Pad: 1.2, Columns: []page.Column{
		{Title: "Step", Width: 13}, {Title: "Press step"}, {Title: "Method"}, {Title: "Design force", Width: 28, Right: true}}}.Widths(w)
	rest := table.Items(c.book, rows)
	rest[0].Gap = 4
	items = append(items, rest...)
	return append(items, page.Item{Block: c.readFirst(), Gap: 4})
}

func rateDecimals(v float64) int {
	if v == float64(int64(v)) {
		return 0
	}
	return 1
}

// how is the method of a step with its machine or action.
func how(s Step) string {
	a := s.chosen()
	m := s.Decision.Chosen.Title()
	if a == nil || a.Action == "" || a.Action == m {
		return m
	}
	return m + ": " + a.Action
}

// readFirst is the order to read the sheet, and the equipment.
func (c *composer) readFirst() page.Block {
	const side, pad = 13.0, 2.5
	w := c.frame.Width
	left := pad + side + 4
	f := page.Font{Size: sizeBody}
	lines := []page.Block{
		c.book.Paragraph(f, w-left-pad, strong("Read the whole sheet before the first part.")+" Cautions with the words WARNING and CAUTION protect you, those with NOTICE the parts."),
		c.book.Paragraph(f, w-left-pad, "It is good for this job, revision and fingerprint only, and for no other parts, tooling or press."),
	}
	if n := len(c.sheet.Warnings); n > 0 {
		lines = append(lines, c.book.Paragraph(f, w-left-pad, fmt.Sprintf("Among the remarks at the end: %s of the computation.", strong(count(n, "warning", "warnings")))))
	}
	b := page.Inset(page.Stack(1, lines...), left, pad, pad)
	b.Height = max(b.Height, side+2*pad)
	return page.Framed(page.Block{Height: b.Height, Draw: func(p *page.Page, x, y float64) {
		symbol(p, ReadManual, x+pad, y+pad, side)
		b.Draw(p, x, y)
	}}, w, page.Hairline)
}

// needs lists equipment, parts, tooling and bench.
func (c *composer) needs() []page.Item {
	const gap = 8.0
	half := (c.frame.Width - gap) / 2
	items := []page.Item{c.heading("What you need", 0)}
	left, lines := c.equipment(half), c.bench()
	if right := c.listed("At the bench", half, c.checkList(lines, half, sizeBody)); right.Height < c.frame.Height/3 {
		items = append(items, page.Item{Block: page.Beside(left, right, half+gap), Gap: 1})
	} else {
		items = append(items, page.Item{Block: left, Gap: 1}, c.heading("At the bench", 1))
		for _, l := range lines {
			items = append(items, page.Item{Block: c.tick(l, c.frame.Width, sizeBody), Gap: 1.2})
		}
	}
	items = append(items, c.partList()...)
	return append(items, c.toolList()...)
}

// listed puts a small heading over blocks.
func (c *composer) listed(title string, width float64, blocks ...page.Block) page.Block {
	head := c.book.Paragraph(page.Font{Face: page.Bold, Size: sizeSub}, width, title)
	return page.Stack(1.6, append([]page.Block{head}, blocks...)...)
}

func (c *composer) equipment(width float64) page.Block {
	const side = 9.0
	var facts []Facts
	for _, t := range c.steps {
		facts = append(facts, t.facts)
	}
	var blocks []page.Block
	for _, g := range Equipment(facts...) {
		if g.Symbol == "" {
			blocks = append(blocks, c.book.Paragraph(page.Font{Size: sizeBody}, width, g.Text))
			continue
		}
		text := c.book.Paragraph(page.Font{Size: sizeBody}, width-side-3, g.Text)
		row := page.Inset(text, side+3, max(0, (side-text.Height)/2), 0)
		blocks = append(blocks, page.Block{Height: max(side, row.Height), Draw: func(p *page.Page, x, y float64) {
			symbol(p, g.Symbol, x, y, side)
			row.Draw(p, x, y)
		}})
	}
	return c.listed("Protective equipment", width, blocks...)
}

// Size of a picture in a list [mm].
const thumbWidth, thumbHeight = 21, 15.75

func (c *composer) thumb(pic page.Picture) page.Block {
	if pic.None() {
		return page.Block{}
	}
	return page.Block{Height: thumbHeight, Draw: func(p *page.Page, x, y float64) { p.Show(pic, x, y, thumbWidth, thumbHeight) }}
}

func (c *composer) partList() []page.Item {
	if len(c.sheet.Parts) == 0 {
		return nil
	}
	var pics []image.Image
	for _, p := range c.sheet.Parts {
		pics = append(pics, p.Picture)
	}
	table := page.Table{Font: page.Font{Size: sizeBody}, Pad: 1.2, Columns: []page.Column{
		{Width: pictureColumn(pics)}, {Title: "Part"}, {Title: "Material, process", Width: 46}, {Title: "Place", Width: 30}, {Title: "Count", Width: 16, Right: true}}}.Widths(c.frame.Width)
	var rows [][]page.Block
	for _, p := range c.sheet.Parts {
		place := string(p.Role)
		if p.Step > 0 && len(c.steps) > 1 {
			place += ", step" + nbsp + strconv.Itoa(p.Step)
		}
		made := strings.Trim(p.Material+", "+p.Process, ", ")
		rows = append(rows, c.row(table, c.book.Picture(p.Picture), strong(p.Name), made, place, strconv.Itoa(p.Count)))
	}
	return append([]page.Item{c.heading("Parts", 1)}, table.BlockItems(c.book, rows)...)
}

// row is a table row that begins with a picture.
func (c *composer) row(t page.Table, pic page.Picture, texts ...string) []page.Block {
	return append([]page.Block{c.thumb(pic)}, t.Cells(c.book, 1, texts)...)
}

// pictureColumn is the width of the column of pictures, next to none if no row
// has one [mm].
func pictureColumn(pics []image.Image) float64 {
	for _, p := range pics {
		if !page.Blank(p) {
			return thumbWidth + 2.4
		}
	}
	return 0.1
}

func (c *composer) toolList() []page.Item {
	if len(c.sheet.Tooling) == 0 {
		return nil
	}
	var pics []image.Image
	for _, t := range c.sheet.Tooling {
		pics = append(pics, t.Picture)
	}
	table := page.Table{Font: page.Font{Size: sizeBody}, Pad: 1.2, Columns: []page.Column{
		{Width: pictureColumn(pics)}, {Title: "Tool"}, {Title: "Engraved", Width: 34}, {Title: "Size, mass", Width: 44}, {Title: "Material", Width: 30}}}.Widths(c.frame.Width)
	var rows [][]page.Block
	for _, t := range c.sheet.Tooling {
		name := strong(t.Name)
		if len(c.steps) > 1 && len(t.Steps) > 0 {
			var n []string
			for _, k := range t.Steps {
				n = append(n, strconv.Itoa(k))
			}
			name += ", for step" + nbsp + strings.Join(n, ", ")
		}
		size := c.fig.size(t.Size)
		if t.Mass > 0 {
			size += ", " + c.fig.mass(t.Mass)
		}
		rows = append(rows, c.row(table, c.book.Picture(t.Picture), name, t.Mark, size, t.Material))
	}
	return append([]page.Item{c.heading("Tooling", 1)}, table.BlockItems(c.book, rows)...)
}

// bench is what stands on the bench: what the methods need, and what the
// sheet adds.
func (c *composer) bench() []string {
	var lines []string
	add := func(s string) {
		for _, l := range lines {
			if l == s {
				return
			}
		}
		lines = append(lines, s)
	}
	for _, t := range c.steps {
		a := t.chosen()
		switch {
		case a == nil:
		case a.Press != nil:
			s := fmt.Sprintf("Arbor press, %s, rated %s.", strong(a.Press.Name), c.fig.force(a.Press.Rated))
			if a.Press.Generic {
				s += " This is a class, not the press at hand: read its plate, and measure it, before you trust it."
			}
			add(s)
			if t.Anvil != "" {
				add("Two screws M6 with washers for the feet of " + the(t.Nest) + ", as long as the table asks for.")
			}
		case a.Method == method.ByMallet && a.Mallet != nil:
			add(fmt.Sprintf("Mallet: %s, head %s.", strong(a.Mallet.Name), c.fig.mass(a.Mallet.Mass)))
			if a.Vise != nil {
				add(fmt.Sprintf("Vise: %s, bolted through the bench over a leg.", strong(a.Vise.Name)))
			}
		}
	}
	for _, b := range c.sheet.Bench {
		add(b)
	}
	for _, t := range c.steps {
		if t.Seat.Gauge != "" {
			add("Gauge: " + t.Seat.Gauge + ".")
		} else {
			add("Feeler gauge.")
		}
	}
	return lines
}
