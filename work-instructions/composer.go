package workinstructions

import (
	"slices"

	"ramnest/export/page"
	"strconv"
)

// Type sizes [pt]: actions are read standing at the bench, tables and remarks
// sitting down.
const (
	sizeTitle    = 20
	sizeHead     = 14
	sizeSub      = 11.5
	sizeStep     = 11.5
	sizeDetail   = 11
	sizeEmbedded = 11 // cautions beside actions
	sizeBody     = 10
	sizeTable    = 9.5
	sizeSmall    = 8.5
)

// Margins of the paper [mm]; the left one leaves room for holes.
const (
	marginLeft   = 18
	marginRight  = 13
	marginTop    = 10
	marginBottom = 12
)

// A composer turns a sheet into blocks.
type composer struct {
	book     *page.Book
	what     string    // at the head of every page, "Work instruction, job"
	mark     [2]string // label and text of the cell that ties the sheet to its things
	sheet    Sheet
	fig      figures
	frame    page.Frame
	replaced bool       // a character could not be printed
	head     page.Block // title block without the page number
	steps    []stepText
}

// A stepText is what a press step comes to.
type stepText struct {
	Step
	facts       Facts
	actions     []action
	full, short []Caution // at the set-up
	setUp       []string
}

func newComposer(book *page.Book, s Sheet, replaced bool) *composer {
	c := emptyComposer(book, s, s.Language.Say("head.job"), [2]string{s.Language.Say("head.fingerprint"), s.Fingerprint})
	c.replaced = replaced
	c.takePictures()
	facts := s.facts()
	all := collect(facts, s.Language)
	told := map[int]bool{}
	for i, st := range s.Steps {
		t := stepText{Step: st, facts: facts[i], actions: actions(c.fig, st, facts[i])}
		prefix := ""
		if len(s.Steps) > 1 {
			prefix = strconv.Itoa(i+1) + "."
		}
		t.full, t.short = numbered(t.actions, all.of(i), prefix)
		// What holds for the bench is told in full once.
		t.full = slices.DeleteFunc(t.full, func(m Caution) bool {
			if told[m.Number] {
				t.short = append(t.short, m)
				return true
			}
			told[m.Number] = true
			return false
		})
		t.setUp = setUp(c.fig, s, st, facts[i])
		c.steps = append(c.steps, t)
	}
	return c
}

// emptyComposer makes the frame and the head of every page.
func emptyComposer(book *page.Book, s Sheet, what string, mark [2]string) *composer {
	c := &composer{book: book, what: what, mark: mark, sheet: s, fig: figures{s.Units, s.Language}}
	c.frame = page.Frame{X: marginLeft, Width: book.Size.Width - marginLeft - marginRight}
	c.head = c.titleBlock()
	c.frame.Y = marginTop + c.head.Height + 6
	c.frame.Height = book.Size.Height - marginBottom - 5 - c.frame.Y
	return c
}

// takePictures takes all pictures into the book first: their files are made
// while the text is set.
func (c *composer) takePictures() {
	for _, t := range c.sheet.Steps {
		p := t.Pictures
		for _, pic := range []Picture{p.Load, p.Place, p.Anvil, p.Press, p.Section, p.Plan, p.Exploded} {
			c.book.Picture(pic.Image)
		}
	}
	for _, p := range c.sheet.Parts {
		c.book.Picture(p.Picture)
	}
	for _, t := range c.sheet.Tooling {
		c.book.Picture(t.Picture)
	}
}

// items is the whole sheet in order.
func (c *composer) items() []page.Item {
	items := slices.Concat(c.opening(), c.hurt(), c.needs(), c.cautionPage())
	for i := range c.steps {
		items = append(items, c.stepItems(i)...)
	}
	return slices.Concat(items, c.records(), c.remarks(), c.signOff())
}

// heading begins a section.
func (c *composer) heading(text string, level int) page.Item {
	f := page.Font{Face: page.Bold, Size: sizeHead}
	gap := 8.0
	if level > 0 {
		f.Size, gap = sizeSub, 5.5
	}
	text0 := c.book.Paragraph(f, c.frame.Width, text)
	b := page.Inset(text0, 0, 0, 2)
	if level == 0 {
		w := c.frame.Width
		b = page.Block{Height: text0.Height + 3, Draw: func(p *page.Page, x, y float64) {
			text0.Draw(p, x, y)
			p.Line(x, y+text0.Height+0.6, x+w, y+text0.Height+0.6, 0.5)
		}}
	}
	it := page.Item{Block: b, Gap: gap, Keep: true}
	if level == 0 {
		it.Title = text
	}
	return it
}

// text sets a paragraph over the whole width.
func (c *composer) text(size float64, s string) []page.Item {
	return c.book.TextItems(page.Font{Size: size}, c.frame.Width, 1.5, s)
}

// checkList sets lines with a box to tick before each.
func (c *composer) checkList(lines []string, width, size float64) page.Block {
	var blocks []page.Block
	for _, l := range lines {
		blocks = append(blocks, c.tick(l, width, size))
	}
	return page.Stack(1.6, blocks...)
}

func (c *composer) tick(text string, width, size float64) page.Block {
	f := page.Font{Size: size}
	b := page.Inset(c.book.Paragraph(f, width-6.5, text), 6.5, 0, 0)
	return page.Block{Height: b.Height, Draw: func(p *page.Page, x, y float64) {
		p.Box(x+0.2, y+0.5, 3.6, 3.6, 0.3)
		b.Draw(p, x, y)
	}}
}

// shown sets a picture with its caption in a frame of a width and height.
func (c *composer) shown(pic Picture, width, height float64) page.Block {
	img := c.book.Picture(pic.Image)
	if img.None() {
		return page.Block{}
	}
	b := page.Block{Height: height, Draw: func(p *page.Page, x, y float64) {
		p.Show(img, x+0.5, y+0.5, width-1, height-1)
		p.Box(x, y, width, height, page.Hairline)
	}}
	if pic.Caption == "" {
		return b
	}
	return page.Stack(1, b, c.book.Paragraph(page.Font{Size: sizeSmall}, width, pic.Caption))
}
