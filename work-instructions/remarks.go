package workinstructions

import (
	"fmt"

	"ramnest/export/page"
)

// remarks are warnings, notes and defaults that the reader must know.
func (c *composer) remarks() []page.Item {
	s := c.sheet
	if len(s.Warnings)+len(s.Notes)+len(s.Defaults) == 0 {
		return nil
	}
	items := []page.Item{c.heading("Remarks", 0)}
	for _, l := range []struct {
		title string
		lines []string
	}{{"Warnings of the computation", s.Warnings}, {"Notes", s.Notes}, {"Assumed, because the job does not say it", s.Defaults}} {
		if len(l.lines) == 0 {
			continue
		}
		items = append(items, c.heading(l.title, 1))
		for k, line := range l.lines {
			part := c.bullet(line)
			if k == 0 {
				part[0].Gap = 0
			}
			items = append(items, part...)
		}
	}
	return items
}

// bullet sets a line of a list that may run over a page.
func (c *composer) bullet(s string) []page.Item {
	const left = 4.0
	items := c.book.TextItems(page.Font{Size: sizeTable}, c.frame.Width-left, 1.2, s)
	for i := range items {
		b := items[i].Block
		items[i].Block = page.Block{Height: b.Height, Draw: func(p *page.Page, x, y float64) {
			if i == 0 {
				p.Text(x, y+page.Font{Size: sizeTable}.Ascent(), page.Font{Size: sizeTable}, "–")
			}
			b.Draw(p, x+left, y)
		}}
	}
	return items
}

// signOff is who prepared, checked and released the sheet, and who has read it.
func (c *composer) signOff() []page.Item {
	table := page.Table{Font: page.Font{Size: sizeBody}, Pad: 1.4, Least: 10, Columns: []page.Column{
		{Title: "", Width: 54}, {Title: "Name"}, {Title: "Date", Width: 30}, {Title: "Signature", Width: 50}}}.Widths(c.frame.Width)
	rows := [][]string{
		{"Prepared", c.sheet.Author, "", ""},
		{"Checked", "", "", ""},
		{"Released (competent person)", "", "", ""},
		{"Read and understood", "", "", ""},
		{"Read and understood", "", "", ""},
		{"Read and understood", "", "", ""},
	}
	items := []page.Item{c.heading("Sign-off", 0)}
	text := c.text(sizeBody, fmt.Sprintf("Job %s, revision %s, fingerprint %s. A change of any of them, of press, method or material makes this sheet void.", strong(c.sheet.Job), strong(c.sheet.Revision), strong(c.sheet.Fingerprint)))
	for i := range text {
		text[i].Keep = true
	}
	text[0].Gap = 0
	items = append(items, text...)
	rest := c.lined(table, table.Items(c.book, rows))
	rest[0].Gap = 2
	for i := range rest {
		rest[i].Keep = i < len(rest)-1
	}
	return append(items, rest...)
}
