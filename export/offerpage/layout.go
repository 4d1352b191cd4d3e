package offerpage

import (
	"fmt"
	"strings"

	"ramnest/export/page"
	"ramnest/force/unit"
)

// A layout turns a page into blocks of one type size.
type layout struct {
	Page
	book  *page.Book
	body  page.Font
	width float64
}

func (l *layout) items() []page.Item {
	var out []page.Item
	add := func(gap float64, blocks ...page.Block) {
		for i, b := range blocks {
			it := page.Item{Block: b}
			if i == 0 {
				it.Gap = gap
			}
			out = append(out, it)
		}
	}
	add(0, l.text(page.Font{Face: page.Bold, Size: 20}, "Offer"))
	title := l.Job
	if l.Revision != "" {
		title += " " + l.Revision
	}
	add(1, l.text(page.Font{Face: page.Bold, Size: l.body.Size + 3}, title+": "+l.Title))
	by := "Date of the job " + l.Date
	if l.Author != "" {
		by += ", prepared by " + l.Author
	}
	add(1, l.text(l.body, by))
	if l.Offer.Invented {
		add(4, l.band(l.Offer.Note))
	}
	add(4, l.blanks("For", "Valid until"))
	for _, f := range l.Facts {
		add(1.5, l.text(l.body, f))
	}
	add(4, l.head("Assembly tooling and coupons"))
	out = append(out, l.table()...)
	add(2.5, l.total())
	add(5, l.head("Price by quantity of the whole order"))
	out = append(out, l.breaks()...)
	add(5, l.head("Break-even against assembly by hand"))
	reason, _, _ := strings.Cut(l.Open, "; ") // behind it stands what the shop can do
	text := "Not known: " + reason + "."
	if l.Payback != nil {
		text = strings.ToUpper(l.Payback.Text[:1]) + l.Payback.Text[1:] + "."
	}
	add(1, l.text(l.body, text))
	add(5, l.blanks("Place, date", "Signature"))
	return out
}

func (l *layout) text(f page.Font, s string) page.Block {
	return l.book.Paragraph(f, l.width, clean(s))
}

func (l *layout) head(s string) page.Block {
	b := l.text(page.Font{Face: page.Bold, Size: l.body.Size + 1.5}, s)
	return page.Block{Height: b.Height + 1.5, Draw: func(p *page.Page, x, y float64) {
		b.Draw(p, x, y)
		p.Line(x, y+b.Height+0.4, x+l.width, y+b.Height+0.4, 0.4)
	}}
}

// band says across the page what must not be missed.
func (l *layout) band(s string) page.Block {
	f := page.Font{Face: page.Bold, Size: 12, Shade: page.White}
	b := page.Inset(l.book.Paragraph(f, l.width-6, clean(s)), 3, 2, 2.4)
	return page.Block{Height: b.Height, Draw: func(p *page.Page, x, y float64) {
		p.Ground(x, y, l.width, b.Height, page.Black)
		b.Draw(p, x, y)
	}}
}

// blanks are two lines to fill in.
func (l *layout) blanks(left, right string) page.Block {
	const high = 7
	f := page.Font{Size: 9}
	return page.Block{Height: high, Draw: func(p *page.Page, x, y float64) {
		half := l.width/2 - 4
		for _, c := range []struct {
			x    float64
			text string
		}{{x, left}, {x + l.width/2 + 4, right}} {
			p.Text(c.x, y+high-1, f, c.text)
			from := c.x + l.book.Width(f, c.text) + 2
			p.Line(from, y+high-0.5, c.x+half, y+high-0.5, page.Hairline)
		}
	}}
}

func (l *layout) table() []page.Item {
	t := page.Table{Font: l.body, Pad: l.body.Size / 8, Columns: []page.Column{
		{Title: "Item"}, {Title: "Pieces", Width: 14, Right: true}, {Title: "Material", Width: 26}, {Title: "Stands in the build", Width: 25},
		{Title: "Size up to, " + l.Units.Name(unit.Length), Width: 33},
		{Title: l.Units.Name(unit.Mass), Width: 14, Right: true}, {Title: l.short(l.Offer.Currency), Width: 22, Right: true}}}.Widths(l.width)
	var rows [][]string
	for _, p := range l.Offer.Prices() {
		rows = append(rows, []string{clean(p.Name), fmt.Sprint(p.Pieces), clean(p.Material + " " + p.Process), clean(p.Orientation),
			l.size(p.Box), unit.Mass.Of(p.Mass/1000).Number(l.Units, nil), fmt.Sprintf("%.2f", p.Amount)})
	}
	return t.Items(l.book, rows)
}

// short keeps a currency to the width of its column.
func (l *layout) short(s string) string {
	return strings.Join(l.book.Fit(page.Font{Face: page.Bold, Size: l.body.Size - 0.5}, 20, 1, clean(s)), "")
}

func (l *layout) size(box [3]float64) string {
	one := func(v float64) string { return unit.Length.Of(v).To(unit.Shop).Number(l.Units, nil) }
	return one(box[0]) + " x " + one(box[1]) + " x " + one(box[2])
}

func (l *layout) total() page.Block {
	f := page.Font{Face: page.Bold, Size: l.body.Size + 2}
	sum := fmt.Sprintf("%.2f %s", l.Offer.Total, clean(l.Offer.Currency))
	return page.Stack(1, page.Block{Height: f.Leading(), Draw: func(p *page.Page, x, y float64) {
		p.Text(x, y+f.Ascent(), f, "Total, handling and finishing included")
		p.Text(x+l.width-l.book.Width(f, sum)-1, y+f.Ascent(), f, sum)
	}}, l.text(l.body, l.Offer.Note+". No tax is in it."))
}

func (l *layout) breaks() []page.Item {
	t := page.Table{Font: l.body, Pad: l.body.Size / 8, Columns: []page.Column{
		{Title: "Orders of this kind at once", Width: 50, Right: true}, {Title: "Each, " + l.short(l.Offer.Currency), Width: 36,
			Right: true}, {Title: "Total, " + l.short(l.Offer.Currency), Width: 40, Right: true}, {Title: ""}}}.Widths(l.width)
	var rows [][]string
	for _, b := range l.Offer.Breaks {
		rows = append(rows, []string{fmt.Sprint(b.Quantity), fmt.Sprintf("%.2f", b.Each), fmt.Sprintf("%.2f", b.Total), ""})
	}
	return t.Items(l.book, rows)
}

// foot says what the page is not.
func (l *layout) foot(p *page.Page, size page.Size) {
	y := size.Height - 9
	p.Line(marginSide, y-7.5, size.Width-marginSide, y-7.5, page.Hairline)
	f := page.Font{Size: 7.5}
	p.Text(marginSide, y-4, f, "Tooling and instruction do not replace local codes, the site's own assessment and a competent person who releases them.")
	foot := "Made with " + clean(l.Tool)
	if l.Offer.Invented {
		foot = "INVENTED rates: not a price. " + foot
	}
	p.Text(marginSide, y, f, foot)
}
