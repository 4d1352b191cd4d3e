package workinstructions

import (
	"strconv"

	"ramnest/export/page"
)

// together shows each step apart along the press axis, with names: two steps side by
// side.
func (c *composer) together() []page.Item {
	const gap = 6.0
	width := (c.frame.Width - gap) / 2
	var views []page.Block
	for i, t := range c.steps {
		if b := c.apart(i, t, width); b.Height > 0 {
			views = append(views, b)
		}
	}
	if len(views) == 0 {
		return nil
	}
	items := []page.Item{c.heading(c.fig.say("need.together"), 1)}
	caption := page.Item{Block: c.book.Paragraph(page.Font{Size: sizeSmall}, c.frame.Width, c.fig.say("cap.exploded")), Gap: 1}
	for i := 0; i < len(views); i += 2 {
		row := views[i]
		if i+1 < len(views) {
			row = page.Beside(row, views[i+1], width+gap)
		}
		items = append(items, page.Item{Block: row, Gap: 2, Keep: i+2 >= len(views)})
	}
	return append(items, caption)
}

// apart is the exploded view of a step, the names of its bodies beside it.
func (c *composer) apart(i int, t stepText, width float64) page.Block {
	img := c.book.Picture(t.Pictures.Exploded.Image)
	if img.None() {
		return page.Block{}
	}
	const wide, high, room = 46.0, 59.4, 4.0
	lower := part(t.Lower)
	if t.SoFar {
		lower = c.fig.say("so far")
	}
	names := [4]string{c.fig.tool(t.Anvil), part(t.Upper), lower, c.fig.tool(t.Nest)}
	f := page.Font{Size: sizeBody}
	top := 0.0
	if len(c.steps) > 1 {
		top = f.Leading()
	}
	return page.Block{Height: high + top, Draw: func(p *page.Page, x, y float64) {
		if top > 0 {
			b := page.Font{Face: page.Bold, Size: sizeBody}
			p.Text(x, y+b.Ascent(), b, c.fig.say("open.step")+nbsp+strconv.Itoa(i+1))
			y += top
		}
		p.Show(img, x, y, wide, high)
		for k, at := range t.Pictures.Layers {
			if names[k] == "" || at == [2]float64{} {
				continue
			}
			ly := y + at[1]*high
			p.Line(x+at[0]*wide+1, ly, x+wide+room, ly, page.Hairline)
			lines := c.book.Fit(f, width-wide-room-2, 2, names[k])
			for n, line := range lines {
				p.Text(x+wide+room+1.2, ly+1.3+float64(n)*f.Leading(), f, line)
			}
		}
	}}
}
