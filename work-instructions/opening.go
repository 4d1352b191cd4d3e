package workinstructions

import (
	"image"
	"strconv"
	"strings"

	"ramnest/export/page"
	"ramnest/force/method"
	"ramnest/force/unit"
)

// opening is the head of the first page: what this is, how it is done, and the
// order to read it before use.
func (c *composer) opening() []page.Item {
	s, w, say := c.sheet, c.frame.Width, c.fig.say
	title := page.Item{Block: c.book.Paragraph(page.Font{Face: page.Bold, Size: sizeTitle}, w, s.Title), Keep: true, Title: s.Title}
	items := []page.Item{title}
	amount := ""
	if s.Quantity > 0 {
		amount = c.fig.count(s.Quantity, "assembly")
	}
	if s.RatePerHour > 0 {
		if amount != "" {
			amount += ", "
		}
		amount += c.fig.say("an hour", c.fig.number(s.RatePerHour, rateDecimals(s.RatePerHour)))
	}
	if amount != "" {
		items = append(items, page.Item{Block: c.book.Paragraph(page.Font{Size: sizeBody}, w, amount), Gap: 1, Keep: true})
	}
	var rows [][]string
	for i, t := range c.steps {
		rows = append(rows, []string{strconv.Itoa(i + 1), t.Name, c.fig.how(t.Step), c.fig.force(t.Force.Design)})
	}
	table := page.Table{Font: page.Font{Size: sizeBody}, Pad: 1.2, Columns: []page.Column{
		{Title: say("open.step"), Width: 15}, {Title: say("open.press step")}, {Title: say("open.method")}, {Title: say("open.force"), Width: 32,
			Right: true}}}.Widths(w)
	rest := table.Items(c.book, rows)
	rest[0].Gap = 4
	items = append(items, rest...)
	for i, t := range c.steps {
		items = append(items, c.agreed(i, t)...)
	}
	return append(items, page.Item{Block: c.readFirst(), Gap: 4})
}

// agreed is the condition on which a step may be done, in a frame with a line to sign,
// where the choice of its method asks for one.
func (c *composer) agreed(i int, t stepText) []page.Item {
	if !t.facts.Conditional && !t.facts.Overridden {
		return nil
	}
	const pad, line = 2.5, "__________________"
	text := c.condition(t)
	if len(c.steps) > 1 {
		text = c.fig.say("open.condition", strconv.Itoa(i+1)) + " " + text
	}
	f := page.Font{Size: sizeBody}
	w := c.frame.Width
	b := page.Inset(page.Stack(3.5, c.book.Paragraph(f, w-2*pad, text),
		c.book.Paragraph(f, w-2*pad, c.fig.say("open.agreed", line, line, "__________"))), pad, pad, pad)
	return []page.Item{{Block: page.Framed(b, w, 0.45), Gap: 3}}
}

func rateDecimals(v float64) int {
	if v == float64(int64(v)) {
		return 0
	}
	return 1
}

// how is the method of a step with its machine or action.
func (f figures) how(s Step) string {
	if a := s.chosen(); a != nil {
		return f.doing(*a)
	}
	return f.say("method." + string(s.Decision.Chosen))
}

// doing is a method with its machine or action.
func (f figures) doing(a method.Assessment) string {
	m := f.say("method." + string(a.Method))
	switch action := f.action(a); {
	case action == "":
		return m
	default:
		return f.say("method.how", m, action)
	}
}

// mallet names a mallet with the mass of its head, vise a vise with the width of its jaws.
func (f figures) mallet(m method.Mallet) string {
	return f.named("bench", m.Name) + " " + f.mass(m.Mass)
}

func (f figures) vise(v method.Vise) string {
	name := f.named("bench", v.Name)
	if v.JawWidth > 0 {
		name += " " + f.text(unit.Length.Of(v.JawWidth))
	}
	return name
}

// screw is what goes through a foot: its hole takes either.
func (f figures) screw() string {
	if f.units.Inch {
		return "1/4" + nbsp + "in (M6)"
	}
	return "M6"
}

// action is how a method is done: a hand action, a mallet and its speed, a press.
func (f figures) action(a method.Assessment) string {
	switch {
	case a.Mallet != nil && a.Vise != nil && a.Mallet.Speed > 0:
		v := a.Mallet.Speed
		return f.say("mallet.action", f.mallet(*a.Mallet), f.number(v, speedDecimals(v)), f.vise(*a.Vise))
	case a.Press != nil:
		return f.named("bench", a.Press.Name)
	}
	return f.named("hand", a.Hand)
}

// speedDecimals is what a speed of the hand is told apart by.
func speedDecimals(v float64) int {
	if v == float64(int64(v)) {
		return 0
	}
	return 1
}

// readFirst is the order to read the sheet, and the equipment.
func (c *composer) readFirst() page.Block {
	const side, pad = 13.0, 2.5
	w := c.frame.Width
	left := pad + side + 4
	f := page.Font{Size: sizeBody}
	lines := []page.Block{
		c.book.Paragraph(f, w-left-pad, c.fig.say("open.read")),
		c.book.Paragraph(f, w-left-pad, c.fig.say("open.good for")),
	}
	said, english := c.warnings()
	if n := len(said) + len(english); n > 0 {
		lines = append(lines, c.book.Paragraph(f, w-left-pad, c.fig.say("open.warnings", strong(c.fig.count(n, "warning")))))
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
	items := []page.Item{c.heading(c.fig.say("need"), 0)}
	left, lines := c.equipment(half), c.bench()
	if right := c.listed(c.fig.say("need.bench"), half, c.checkList(lines, half, sizeBody)); right.Height < c.frame.Height/3 {
		items = append(items, page.Item{Block: page.Beside(left, right, half+gap), Gap: 1})
	} else {
		items = append(items, page.Item{Block: left, Gap: 1}, c.heading(c.fig.say("need.bench"), 1))
		for _, l := range lines {
			items = append(items, page.Item{Block: c.tick(l, c.frame.Width, sizeBody), Gap: 1.2})
		}
	}
	items = append(items, c.partList()...)
	items = append(items, c.toolList()...)
	return append(items, c.together()...)
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
	for _, g := range c.fig.equipment(facts) {
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
	return c.listed(c.fig.say("need.gear"), width, blocks...)
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
	say := c.fig.say
	if len(c.sheet.Parts) == 0 {
		return nil
	}
	var pics []image.Image
	for _, p := range c.sheet.Parts {
		pics = append(pics, p.Picture)
	}
	table := page.Table{Font: page.Font{Size: sizeBody}, Pad: 1.2, Columns: []page.Column{
		{Width: pictureColumn(pics)}, {Title: say("part")}, {Title: say("part.made"), Width: 46}, {Title: say("part.place"),
			Width: 32}, {Title: say("part.count"), Width: 18, Right: true}}}.Widths(c.frame.Width)
	var rows [][]page.Block
	for _, p := range c.sheet.Parts {
		place := say(string(p.Role))
		if p.Step > 0 && len(c.steps) > 1 {
			place = say("part.step", place, strconv.Itoa(p.Step))
		}
		made := strings.Trim(c.fig.process(p.Material)+", "+c.fig.process(p.Process), ", ")
		rows = append(rows, c.row(table, c.book.Picture(p.Picture), strong(p.Name), made, place, strconv.Itoa(p.Count)))
	}
	return append([]page.Item{c.heading(say("need.parts"), 1)}, table.BlockItems(c.book, rows)...)
}

// process prints a material or a process: what has a name in the language, by that.
func (f figures) process(name string) string {
	switch name {
	case "moulded", "machined", "steel":
		return f.say(name)
	}
	return name
}

// toolMaterial is what a tool is made of and how.
func (f figures) toolMaterial(t Tool) string {
	if t.Process == "" {
		return t.Material
	}
	return f.say("tool.made", t.Material, f.process(t.Process))
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
	say := c.fig.say
	if len(c.sheet.Tooling) == 0 {
		return nil
	}
	var pics []image.Image
	for _, t := range c.sheet.Tooling {
		pics = append(pics, t.Picture)
	}
	table := page.Table{Font: page.Font{Size: sizeBody}, Pad: 1.2, Columns: []page.Column{
		{Width: pictureColumn(pics)}, {Title: say("tool")}, {Title: say("tool.mark"), Width: 34}, {Title: say("tool.size"),
			Width: 46}, {Title: say("tool.material"), Width: 30}}}.Widths(c.frame.Width)
	var rows [][]page.Block
	for _, t := range c.sheet.Tooling {
		name := strong(c.fig.tool(t.Name))
		if len(c.steps) > 1 && len(t.Steps) > 0 {
			var n []string
			for _, k := range t.Steps {
				n = append(n, strconv.Itoa(k))
			}
			name = say("tool.step", name, strings.Join(n, ", "))
		}
		size := c.fig.size(t.Size)
		if t.Mass > 0 {
			size += ", " + c.fig.mass(t.Mass)
		}
		rows = append(rows, c.row(table, c.book.Picture(t.Picture), name, t.Mark, size, c.fig.toolMaterial(t)))
	}
	return append([]page.Item{c.heading(say("need.tooling"), 1)}, table.BlockItems(c.book, rows)...)
}

// bench is what stands on the bench: what the methods need, and what the
// sheet adds.
func (c *composer) bench() []string {
	say := c.fig.say
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
			s := say("bench.press", strong(c.fig.named("bench", a.Press.Name)), c.fig.force(a.Press.Rated))
			if a.Press.Generic {
				s += " " + say("bench.generic")
			}
			add(s)
			if t.Anvil != "" {
				add(say("bench.screws", c.fig.screw(), c.fig.nest(t.Step)))
			}
		case a.Method == method.ByMallet && a.Mallet != nil:
			add(say("bench.mallet", strong(c.fig.named("bench", a.Mallet.Name)), c.fig.mass(a.Mallet.Mass)))
			if a.Vise != nil {
				add(say("bench.vise", strong(c.fig.vise(*a.Vise))))
			}
		}
	}
	for _, b := range c.sheet.Bench {
		add(b)
	}
	for _, t := range c.steps {
		if t.Pin.Hole > 0 {
			add(say("bench.pin", c.fig.length(t.Pin.Wide), c.fig.length(t.Pin.Long)))
		}
		if t.Anvil != "" { // the set-up tries and trims its dead stops
			add(say("bench.feeler"))
			add(say("bench.shims"))
		}
		switch by := t.Seat; {
		case by.Gauge == "" && gapWords[by.Kind][2] == "acc.feeler":
			add(say("bench.feeler"))
		default:
			add(say("bench.gauge", c.fig.gauge(by)))
		}
		if t.Pull > 0 {
			add(say("bench.balance", c.fig.force(t.Pull)))
		}
	}
	return lines
}
