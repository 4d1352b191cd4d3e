package workinstructions

import (
	"strconv"

	"ramnest/export/page"
)

// A cell of the title block: a small label over a value.
type cell struct {
	label, value string
	width, size  float64
	lines        int
}

const labelSize = 6.5

func (c *composer) cell(k cell) page.Block {
	const pad = 1.2
	label := c.book.Paragraph(page.Font{Size: labelSize}, k.width-2*pad, k.label)
	f := page.Font{Face: page.Bold, Size: k.size}
	return page.Inset(page.Stack(0.2, label, page.SetLines(f, c.book.Fit(f, k.width-2*pad, k.lines, k.value))), pad, 0.9, 1)
}

// titleRow sets cells side by side between lines.
func titleRow(width float64, cells []page.Block, widths []float64) page.Block {
	h := 0.0
	for _, b := range cells {
		h = max(h, b.Height)
	}
	return page.Block{Height: h, Draw: func(p *page.Page, x, y float64) {
		p.Line(x, y+h, x+width, y+h, page.Hairline)
		for i, b := range cells {
			if i > 0 {
				p.Line(x, y, x, y+h, page.Hairline)
			}
			b.Draw(p, x, y)
			x += widths[i]
		}
	}}
}

// pageCell is the width of the cell for the page number [mm].
const pageCell = 24

// titleBlock is what stands at the head of every page; the page number is added
// when the number of pages is known.
func (c *composer) titleBlock() page.Block {
	s, w, say := c.sheet, c.frame.Width, c.fig.say
	row := func(cells ...cell) page.Block {
		free := w
		for _, k := range cells {
			free -= k.width
		}
		var blocks []page.Block
		var widths []float64
		for _, k := range cells {
			if k.width == 0 {
				k.width = free
			}
			blocks = append(blocks, c.cell(k))
			widths = append(widths, k.width)
		}
		return titleRow(w, blocks, widths)
	}
	author := s.Author
	if author == "" {
		author = " "
	}
	block := page.Stack(0,
		row(cell{c.what, s.Job, 50, 12, 3}, cell{say("head.title"), s.Title, 0, 10, 2}, cell{say("head.revision"), s.Revision, 24, 12, 2},
			cell{say("head.page"), " ", pageCell, 12, 1}),
		row(cell{say("head.date"), s.Date.Format("2006-01-02"), 28, 9, 1}, cell{say("head.author"), author, 0, 9, 1},
			cell{c.mark[0], c.mark[1], 50, 9, 1}, cell{say("head.tool"), s.Tool, 34, 9, 1}))
	framed := page.Framed(block, w, 0.4)
	if s.Override == "" {
		return framed
	}
	return page.Stack(1.5, framed, c.overrideBand())
}

// overrideBand says on every page why a failing method is used.
func (c *composer) overrideBand() page.Block {
	w := c.frame.Width
	f := page.Font{Size: 9}
	word := c.fig.say("override.word")
	left := 8 + c.book.Width(page.Font{Face: page.Bold, Size: 10}, word) + 3
	text := c.book.Paragraph(f, w-left-2, c.fig.say("override.band", strong(c.sheet.Override)))
	b := page.Inset(text, left, 1.4, 1.6)
	b.Height = max(b.Height, 7)
	return page.Framed(page.Block{Height: b.Height, Draw: func(p *page.Page, x, y float64) {
		p.Ground(x, y, left-1.5, b.Height, page.Black)
		alert(p, x+1.5, y+b.Height/2-2.6, 5.2, true)
		p.Text(x+8, y+b.Height/2+1.25, page.Font{Face: page.Bold, Size: 10, Shade: page.White}, word)
		b.Draw(p, x, y)
	}}, w, 0.8)
}

// frameOf puts title block and foot on a page.
func (c *composer) frameOf(p *page.Page, n, of int) {
	c.head.Draw(p, marginLeft, marginTop)
	f := page.Font{Face: page.Bold, Size: 12}
	text := c.fig.say("head.n of m", strconv.Itoa(n), strconv.Itoa(of))
	base := marginTop + 0.9 + page.Font{Size: labelSize}.Leading() + 0.2 + f.Ascent()
	f.Size = min(f.Size, f.Size*(pageCell-2.4)/c.book.Width(f, text))
	p.Text(marginLeft+c.frame.Width-pageCell+1.2, base, f, text)
	y := c.book.Size.Height - marginBottom
	p.Line(marginLeft, y-3.6, marginLeft+c.frame.Width, y-3.6, page.Hairline)
	p.Text(marginLeft, y, page.Font{Size: 8}, c.fig.say("foot"))
}
