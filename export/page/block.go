package page

// A Block is something of known height that can be drawn at a place. Its width
// is fixed when it is made.
type Block struct {
	Height float64
	Draw   func(p *Page, x, y float64) // x, y: upper left corner; nil draws nothing
}

func (b Block) draw(p *Page, x, y float64) {
	if b.Draw != nil {
		b.Draw(p, x, y)
	}
}

// Paragraph sets a text in lines.
func (b *Book) Paragraph(f Font, width float64, s string) Block {
	return SetLines(f, b.Wrap(f, width, s))
}

// ParagraphAfter sets a text whose first line begins after an indent [mm].
func (b *Book) ParagraphAfter(f Font, width, indent float64, s string) Block {
	lines := b.WrapAfter(f, width, indent, s)
	block := SetLines(f, lines[1:])
	return Block{block.Height + f.Leading(), func(p *Page, x, y float64) {
		p.Text(x+indent, y+f.Ascent(), f, lines[0])
		block.Draw(p, x, y+f.Leading())
	}}
}

// SetLines sets lines one below the other.
func SetLines(f Font, lines []string) Block {
	return Block{float64(len(lines)) * f.Leading(), func(p *Page, x, y float64) {
		for i, l := range lines {
			p.Text(x, y+float64(float64(i)*f.Leading())+f.Ascent(), f, l)
		}
	}}
}

// Stack puts blocks one below the other, gap apart.
func Stack(gap float64, blocks ...Block) Block {
	h := 0.0
	for i, b := range blocks {
		if i > 0 {
			h += gap
		}
		h += b.Height
	}
	return Block{h, func(p *Page, x, y float64) {
		for _, b := range blocks {
			b.draw(p, x, y)
			y += b.Height + gap
		}
	}}
}

// Beside puts two blocks next to each other, tops level, the second dx further
// to the right.
func Beside(left, right Block, dx float64) Block {
	return Block{max(left.Height, right.Height), func(p *Page, x, y float64) {
		left.draw(p, x, y)
		right.draw(p, x+dx, y)
	}}
}

// Inset puts free room round a block.
func Inset(b Block, left, top, bottom float64) Block {
	return Block{top + b.Height + bottom, func(p *Page, x, y float64) { b.draw(p, x+left, y+top) }}
}

// Framed draws a rectangle of the given width round a block.
func Framed(b Block, width, line float64) Block {
	return Block{b.Height, func(p *Page, x, y float64) {
		b.draw(p, x, y)
		p.Box(x, y, width, b.Height, line)
	}}
}
