package page

// A Column of a table.
type Column struct {
	Title string
	Width float64 // [mm]
	Right bool    // numbers: set to the right
}

// A Table has a head that is repeated on every page it runs over.
type Table struct {
	Columns []Column
	Font    Font // of the cells
	Pad     float64
	Least   float64 // height of a row, at least [mm]
}

// Widths shares out a width: the fixed columns as they are, the rest among
// columns of width 0.
func (t Table) Widths(width float64) Table {
	free, n := width, 0
	for _, c := range t.Columns {
		free -= c.Width
		if c.Width == 0 {
			n++
		}
	}
	cols := make([]Column, len(t.Columns))
	copy(cols, t.Columns)
	for i := range cols {
		if cols[i].Width == 0 && n > 0 {
			cols[i].Width = free / float64(n)
		}
	}
	t.Columns = cols
	return t
}

// Items makes a table of rows of cells ready for a flow.
func (t Table) Items(b *Book, rows [][]string) []Item {
	blocks := make([][]Block, len(rows))
	for i, r := range rows {
		blocks[i] = t.cells(b, t.Font, r)
	}
	return t.BlockItems(b, blocks)
}

// BlockItems makes a table of rows of blocks ready for a flow.
func (t Table) BlockItems(b *Book, rows [][]Block) []Item {
	titles := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		titles[i] = c.Title
	}
	small := Font{Bold, t.Font.Size - 0.5, Black}
	head := t.row(t.cells(b, small, titles), true)
	items := []Item{{Block: head, Keep: true}}
	for i, cells := range rows {
		items = append(items, Item{Block: t.row(cells, false), Head: &head, Keep: i == 0 && len(rows) > 1 || i == len(rows)-2})
	}
	return items
}

// Cells sets the cells of a row from a column on.
func (t Table) Cells(b *Book, from int, texts []string) []Block {
	t.Columns = t.Columns[from:]
	return t.cells(b, t.Font, texts)
}

func (t Table) cells(b *Book, f Font, texts []string) []Block {
	out := make([]Block, len(t.Columns))
	for i, c := range t.Columns {
		if i >= len(texts) {
			continue
		}
		room := c.Width - 2*t.Pad
		if c.Right {
			room -= t.Pad // so that it stands clear of the next column
		}
		lines := b.Wrap(f, room, texts[i])
		out[i] = SetLines(f, lines)
		if c.Right {
			out[i].Draw = func(p *Page, x, y float64) {
				for k, l := range lines {
					p.Text(x+room-b.Width(f, l), y+float64(float64(k)*f.Leading())+f.Ascent(), f, l)
				}
			}
		}
	}
	return out
}

// row puts cells into a row with a line below it.
func (t Table) row(cells []Block, head bool) Block {
	h, width := t.Least, 0.0
	if head {
		h = 0
	}
	for i, c := range t.Columns {
		h = max(h, cells[i].Height+2*t.Pad)
		width += c.Width
	}
	return Block{h, func(p *Page, x, y float64) {
		if head {
			p.Ground(x, y, width, h, Grey)
			p.Line(x, y, x+width, y, Hairline)
		}
		cx := x
		for i, c := range t.Columns {
			cells[i].draw(p, cx+t.Pad, y+t.Pad)
			cx += c.Width
		}
		p.Line(x, y+h, x+width, y+h, Hairline)
	}}
}
