package workinstructions

import (
	"strconv"
	"strings"

	"ramnest/export/page"
)

// panelBase is from the top of a panel to the baseline of its word [mm].
const panelBase = 3.65

// panel draws the signal word with its number: white on black for a warning,
// black on grey for a caution, in a plain frame for a notice, which has no
// alert sign. The words carry the message, so it works in any copy.
func (c *composer) panel(s Signal, number int) (page.Block, float64) {
	f := page.Font{Face: page.Bold, Size: 9.5}
	text := c.fig.say("signal."+string(s)) + " " + strconv.Itoa(number)
	left := 1.6
	if s != Notice {
		left = 6.2
	}
	const high = 5.0
	width := left + c.book.Width(f, text) + 1.6
	return page.Block{Height: high, Draw: func(p *page.Page, x, y float64) {
		switch s {
		case Warning:
			p.Ground(x, y, width, high, page.Black)
			f.Shade = page.White
		case Careful:
			p.Ground(x, y, width, high, page.Grey)
		default:
			p.Box(x, y, width, high, page.Hairline)
		}
		if s != Notice {
			alert(p, x+1.2, y+0.5, 4.2, s == Warning)
		}
		p.Text(x+left, y+panelBase, f, text)
	}}, width
}

// message sets a caution in full: panel, symbol, hazard, what follows, how to
// avoid it, and where it bites.
func (c *composer) message(m Caution, width, least float64, where string) page.Block {
	return c.boxed(m, width, sizeTable, least, strong(m.Hazard)+" "+m.Consequence, where)
}

// embedded sets a caution beside an action: the same without what follows, which
// stands with the others up front.
func (c *composer) embedded(m Caution, width, least float64) page.Block {
	return c.boxed(m, width, sizeEmbedded, least, strong(m.Hazard), "")
}

func (c *composer) boxed(m Caution, width, size, least float64, hazard, where string) page.Block {
	const pad, side = 1.6, 10.5
	f := page.Font{Size: size}
	left := pad
	if m.Symbol != "" {
		left += side + 2
	}
	room := width - left - pad
	panel, pw := c.panel(m.Signal, m.Number)
	lead := c.book.ParagraphAfter(f, room, pw+2, hazard)
	parts := []page.Block{
		{Height: lead.Height, Draw: func(p *page.Page, x, y float64) {
			panel.Draw(p, x, y+f.Ascent()-panelBase)
			lead.Draw(p, x, y)
		}},
		c.book.Paragraph(f, room, strings.TrimSpace(strong("→ ")+strings.Join(m.Avoid, " ")+" "+where)),
	}
	text := page.Inset(page.Stack(0.7, parts...), left, pad+0.4, pad)
	line := page.Hairline
	if m.Signal == Warning {
		line = 0.45
	}
	return page.Framed(page.Block{Height: max(text.Height, side+2*pad, least), Draw: func(p *page.Page, x, y float64) {
		if m.Symbol != "" {
			symbol(p, m.Symbol, x+pad, y+pad, side)
		}
		text.Draw(p, x, y)
	}}, width, line)
}

// inPairs sets boxes in two columns, those of a row equally high.
func (c *composer) inPairs(n int, box func(i int, width, least float64) page.Block) []page.Block {
	const gap = 4.0
	half := (c.frame.Width - gap) / 2
	var rows []page.Block
	for i := 0; i < n; i += 2 {
		if i+1 == n {
			rows = append(rows, box(i, half, 0))
			break
		}
		least := max(box(i, half, 0).Height, box(i+1, half, 0).Height)
		rows = append(rows, page.Beside(box(i, half, least), box(i+1, half, least), half+gap))
	}
	return rows
}

// messages sets cautions beside actions: one over the whole width, more in two
// columns.
func (c *composer) messages(list []Caution) []page.Block {
	if len(list) == 1 {
		return []page.Block{c.embedded(list[0], c.frame.Width, 0)}
	}
	return c.inPairs(len(list), func(i int, width, least float64) page.Block { return c.embedded(list[i], width, least) })
}

// reminder sets a caution in short, where it has been printed in full before.
func (c *composer) reminder(m Caution, width float64) page.Block {
	panel, w := c.panel(m.Signal, m.Number)
	f := page.Font{Size: sizeEmbedded}
	text := c.book.ParagraphAfter(f, width, w+2, m.Hazard)
	return page.Block{Height: text.Height + 0.6, Draw: func(p *page.Page, x, y float64) {
		text.Draw(p, x, y+0.6)
		panel.Draw(p, x, y+0.6+f.Ascent()-panelBase)
	}}
}
