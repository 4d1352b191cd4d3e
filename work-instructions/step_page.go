package workinstructions

import (
	"slices"
	"strconv"

	"ramnest/export/page"
)

// Sizes of pictures beside the text of an action [mm], four by three.
const (
	actionPicture = 74
	pictureGap    = 6
	holdSketch    = 46 // how the hands are held
)

// stepItems is one press step: set-up, actions, acceptance, force and method.
func (c *composer) stepItems(i int) []page.Item {
	t := c.steps[i]
	title := c.fig.say("step", t.Name)
	if len(c.steps) > 1 {
		title = c.fig.say("step.of", strconv.Itoa(i+1), strconv.Itoa(len(c.steps)), t.Name)
	}
	items := []page.Item{c.heading(title, 0)}
	items = append(items, c.setUpItems(t)...)
	items = append(items, c.actionItems(t)...)
	items = append(items, c.acceptanceItems(t)...)
	return append(items, c.forceItems(t)...)
}

// boxes puts cautions one row below the other.
func (c *composer) boxes(list []Caution) []page.Item {
	var items []page.Item
	for _, b := range c.messages(list) {
		items = append(items, page.Item{Block: b, Gap: 2, Keep: true})
	}
	return items
}

func (c *composer) setUpItems(t stepText) []page.Item {
	head := c.heading(c.fig.say("setup"), 1)
	items := append([]page.Item{head}, c.boxes(t.full)...)
	for _, m := range t.short {
		items = append(items, page.Item{Block: c.reminder(m, c.frame.Width), Gap: 1.5, Keep: true})
	}
	if len(items) > 1 {
		items[1].Gap = 0
	}
	for i := range items[1:] {
		items[i+1].Keep = i == len(items)-2 // the last with the list; the others may stand on the page before
	}
	w := c.frame.Width
	plan := c.shown(c.fig.captioned(t.Step, t.Pictures.Plan, "cap.plan"), actionPicture, actionPicture*3/4)
	if plan.Height == 0 {
		for k, l := range t.setUp {
			items = append(items, page.Item{Block: c.tick(l, w, sizeDetail), Gap: 2, Keep: k == 0})
		}
		return items
	}
	// Beside the plan stands as much of the list as is as high as the plan; the
	// rest goes below, over the whole width.
	narrow := w - actionPicture - pictureGap
	var beside []page.Block
	high, n := 0.0, 0
	for n < len(t.setUp) && high < plan.Height-8 {
		b := c.tick(t.setUp[n], narrow, sizeDetail)
		beside = append(beside, b)
		high += b.Height + 2
		n++
	}
	items = append(items, page.Item{Block: page.Beside(page.Stack(2, beside...), plan, narrow+pictureGap), Gap: 3})
	for _, l := range t.setUp[n:] {
		items = append(items, page.Item{Block: c.tick(l, w, sizeDetail), Gap: 2})
	}
	return items
}

func (c *composer) actionItems(t stepText) []page.Item {
	items := []page.Item{c.heading(c.fig.say("act"), 1)}
	for i, a := range t.actions {
		rows, block := c.action(a)
		many := len(rows) > looseRows
		var part []page.Item
		if many {
			lead := c.book.Paragraph(page.Font{Face: page.Bold, Size: sizeDetail}, c.frame.Width, c.fig.say("act.before", a.number))
			part = append(part, page.Item{Block: lead, Keep: true})
		}
		for k, r := range rows {
			// The last row stays with the action; of many the others may stand on the page
			// before.
			part = append(part, page.Item{Block: r, Gap: 2.5, Keep: !many || k == len(rows)-1})
		}
		part = append(part, page.Item{Block: block, Gap: 2.5})
		part[0].Gap = 0
		if i > 0 {
			part[0].Gap, part[0].Rule = 5, c.frame.Width
		}
		items = append(items, part...)
	}
	return items
}

// looseRows is how many rows of cautions stay on one page with their action.
const looseRows = 1

// action sets one action: rows of cautions, then number, words and picture.
func (c *composer) action(a action) (rows []page.Block, block page.Block) {
	w := c.frame.Width
	room := w
	pic := c.shown(a.picture, actionPicture, actionPicture*3/4)
	if sketch := holding(a.hold, holdSketch); sketch.Height > 0 {
		pic = page.Block{Height: sketch.Height, Draw: func(p *page.Page, x, y float64) { sketch.Draw(p, x+actionPicture-holdSketch, y) }}
	}
	if pic.Height > 0 {
		room = w - actionPicture - pictureGap
	}
	left := max(13, c.ring(a.number)+3)
	head := c.book.Paragraph(page.Font{Face: page.Bold, Size: sizeStep}, room-left, a.title)
	words := []page.Block{c.numbered(a.number, head, left)}
	if len(a.cautions) == 1 && pic.Height > 0 {
		words = slices.Insert(words, 0, page.Inset(c.embedded(a.cautions[0], room, 0), 0, 0, 1.5))
	} else {
		rows = append(rows, c.messages(a.cautions)...)
	}
	for _, m := range a.reminded {
		words = append(words, page.Inset(c.reminder(m, room-left), left, 0, 0))
	}
	for _, d := range a.detail {
		words = append(words, page.Inset(c.book.Paragraph(page.Font{Size: sizeDetail}, room-left, d), left, 0, 0))
	}
	text := page.Stack(1.4, words...)
	if pic.Height > 0 {
		text = page.Beside(text, pic, room+pictureGap)
	}
	return rows, text
}

// numberFont is that of the numbers of actions.
var numberFont = page.Font{Face: page.Bold, Size: 13}

// ring is the width of the ring round the number of an action [mm].
func (c *composer) ring(number string) float64 {
	return max(8.4, c.book.Width(numberFont, number)+3.4)
}

// numbered puts the number of an action in a ring before its first line.
func (c *composer) numbered(number string, head page.Block, left float64) page.Block {
	b := page.Inset(head, left, 1.2, 0)
	b.Height = max(b.Height, 8.6)
	return page.Block{Height: b.Height, Draw: func(p *page.Page, x, y float64) {
		ring := c.ring(number)
		p.Draw(new(page.Path).Round(x, y, ring, 8.4, 4.2), page.Style{Stroke: 0.5})
		p.Text(x+(ring-c.book.Width(numberFont, number))/2, y+5.9, numberFont, number)
		b.Draw(p, x, y)
	}}
}

func (c *composer) acceptanceItems(t stepText) []page.Item {
	say := c.fig.say
	table := page.Table{Font: page.Font{Size: sizeDetail}, Pad: 1.3, Columns: []page.Column{
		{Title: say("acc.good if")}, {Title: say("acc.limit"), Width: 42}, {Title: say("acc.how"), Width: 50}, {Title: say("acc.often"),
			Width: 26}}}.Widths(c.frame.Width)
	var rows [][]string
	for _, k := range criteria(c.fig, t.Step) {
		rows = append(rows, []string{k.measured(), strong(k.Limit), k.With, k.Often})
	}
	items := append([]page.Item{c.heading(say("acc"), 1)}, table.Items(c.book, rows)...)
	head := c.heading(say("reject"), 1)
	items = append(items, head)
	lines := reject(c.fig, t.Step, t.facts)
	for k, l := range lines {
		items = append(items, page.Item{Block: c.book.Paragraph(page.Font{Size: sizeDetail}, c.frame.Width, l), Gap: 1.4, Keep: k < len(lines)-1})
	}
	return items
}
