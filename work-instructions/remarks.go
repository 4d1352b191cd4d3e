package workinstructions

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"ramnest/export/page"
	"ramnest/force/unit"
	"ramnest/force/warning"
	"ramnest/work-instructions/catalogue"
)

// remarks are warnings, notes and what was assumed that the reader must know.
func (c *composer) remarks() []page.Item {
	say := c.fig.say
	warnings, english := c.warnings()
	var items []page.Item
	list := func(head page.Item, lines []string) {
		if len(lines) == 0 {
			return
		}
		items = append(items, head)
		for k, line := range lines {
			part := c.bullet(line)
			if k == 0 {
				part[0].Gap = 0
			}
			items = append(items, part...)
		}
	}
	list(c.heading(say("remark.warnings"), 1), warnings)
	plain := page.Item{Block: c.book.Paragraph(page.Font{Size: sizeBody}, c.frame.Width, say("remark.english")), Gap: 2.5, Keep: true}
	list(plain, english)
	list(c.heading(say("remark.notes"), 1), c.sheet.Notes)
	if n := c.sheet.Assumed; n > 0 {
		list(c.heading(say("remark.assumed"), 1), []string{say("remark.assumed.count", strconv.Itoa(n))})
	}
	if len(items) == 0 {
		return nil
	}
	return append([]page.Item{c.heading(say("remark"), 0)}, items...)
}

// warnings are those in the language of the sheet, and those for which it has no
// words: they stand in English, as in the report. Several of one latch with the same
// words are one.
func (c *composer) warnings() (said, english []string) {
	if c.replaced {
		said = append(said, c.fig.say("remark.missing", string(page.Missing)))
	}
	for _, r := range c.sheet.Warnings {
		text, known := c.fig.words.Find("warn." + strconv.Itoa(r.Number))
		text = c.fig.with(text, r.Figures)
		switch {
		case c.fig.words.Code() == string(catalogue.English):
			text = r.Text
			if r.Number > 0 {
				text = warning.Numbered(r.Number, text)
			}
		case !known:
			english = append(english, r.Text)
			continue
		case r.About != "":
			text = warning.Numbered(r.Number, c.fig.say("method.how", r.About, text))
		default:
			text = warning.Numbered(r.Number, text)
		}
		if !slices.Contains(said, text) {
			said = append(said, text)
		}
	}
	return said, english
}

// with puts the figures of a warning into the words of another language: where the words
// have places for them, else behind. Words with more places than there are figures have
// lost them, and end before the bracket round the first place.
func (f figures) with(words string, all []unit.Figure) string {
	places := strings.Count(words, "%s")
	var in []any
	var behind []string
	for i, v := range all {
		if s := f.text(v); i < places {
			in = append(in, s)
		} else if places == 0 && !slices.Contains(behind, s) {
			behind = append(behind, s)
		}
	}
	switch {
	case places > len(all):
		words, _, _ = strings.Cut(words, "%s")
		return strings.TrimSpace(words[:max(0, strings.LastIndex(words, "("))])
	case places > 0:
		return fmt.Sprintf(words, in...)
	case behind != nil:
		return words + " (" + strings.Join(behind, "; ") + ")"
	}
	return words
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
	say := c.fig.say
	table := page.Table{Font: page.Font{Size: sizeBody}, Pad: 1.4, Least: 10, Columns: []page.Column{
		{Title: "", Width: 54}, {Title: say("sign.name")}, {Title: say("head.date"), Width: 30}, {Title: say("sign.signature"),
			Width: 50}}}.Widths(c.frame.Width)
	rows := [][]string{
		{say("sign.prepared"), c.sheet.Author, "", ""},
		{say("sign.checked"), "", "", ""},
		{say("sign.released"), "", "", ""},
		{say("sign.read"), "", "", ""},
		{say("sign.read"), "", "", ""},
		{say("sign.read"), "", "", ""},
	}
	items := []page.Item{c.heading(say("sign"), 0)}
	text := c.text(sizeBody, say("sign.void", strong(c.sheet.Job), strong(c.sheet.Revision), strong(c.sheet.Fingerprint)))
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
