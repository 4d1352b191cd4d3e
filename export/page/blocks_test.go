package page

import (
	"math"
	"strings"
	"testing"
)

// drawn gives the marks of a block put at a place.
func drawn(b *Book, k Block, x, y float64) []mark {
	p := b.newPage()
	k.draw(p, x, y)
	return p.marks
}

// extentOf is the box round marks.
func extentOf(marks []mark) box {
	b := emptyBox()
	for _, m := range marks {
		e := m.extent()
		b = b.with(e.x0, e.y0).with(e.x1, e.y1)
	}
	return b
}

// Lines stand a leading apart, the first an ascent below the top; the block is as high as
// its lines are many, and what it draws lies within it.
func TestLinesFillTheirBlock(t *testing.T) {
	b, f := newBook(), Font{Size: 10}
	for n := range 6 {
		k := SetLines(f, strings.Fields(strings.Repeat("word ", n)))
		if want := float64(n) * 1.3 * 10 * 25.4 / 72; math.Abs(k.Height-want) > 1e-9 {
			t.Errorf("%d lines are %g mm high, want %g", n, k.Height, want)
		}
		marks := drawn(b, k, 20, 30)
		if len(marks) != n {
			t.Fatalf("%d marks of %d lines", len(marks), n)
		}
		for i, m := range marks {
			if want := 30 + f.Ascent() + float64(i)*f.Leading(); math.Abs(m.y-want) > 1e-9 || m.x != 20 {
				t.Errorf("line %d at %g, %g; want 20, %g", i, m.x, m.y, want)
			}
		}
		if e := extentOf(marks); n > 0 && (e.y0 < 30 || e.y1 > 30+k.Height) {
			t.Errorf("%d lines from %g to %g, of a block from 30 to %g", n, e.y0, e.y1, 30+k.Height)
		}
	}
}

// A text after an indent is the same text: its first line stands to the right.
func TestParagraphAfterAnIndent(t *testing.T) {
	b, f := newBook(), Font{Size: 10}
	text := strings.Repeat("some words ", 12)
	plain, after := b.Paragraph(f, 50, text), b.ParagraphAfter(f, 50, 0, text)
	if plain.Height != after.Height {
		t.Errorf("no indent: %g mm high, want %g", after.Height, plain.Height)
	}
	marks := drawn(b, b.ParagraphAfter(f, 50, 12, text), 20, 30)
	for i, m := range marks {
		want := 20.0
		if i == 0 {
			want = 32
		}
		if m.x != want || math.Abs(m.y-(30+f.Ascent()+float64(i)*f.Leading())) > 1e-9 || m.x+m.w > 70+1e-9 {
			t.Errorf("line %d at %g, %g, %g wide", i, m.x, m.y, m.w)
		}
	}
}

// ground is a block that is one black rectangle.
func ground(w, h float64) Block {
	return Block{h, func(p *Page, x, y float64) { p.Ground(x, y, w, h, Black) }}
}

// Blocks put together: heights add up, nothing overlaps, each stands where it should.
func TestBlocksPutTogether(t *testing.T) {
	b := newBook()
	a, c := ground(10, 5), ground(20, 8)
	for name, k := range map[string]struct {
		block  Block
		height float64
		boxes  []box
	}{
		"stack":    {Stack(3, a, c, a), 24, []box{{50, 60, 60, 65}, {50, 68, 70, 76}, {50, 79, 60, 84}}},
		"beside":   {Beside(a, c, 15), 8, []box{{50, 60, 60, 65}, {65, 60, 85, 68}}},
		"higher":   {Beside(c, a, 25), 8, []box{{50, 60, 70, 68}, {75, 60, 85, 65}}},
		"inset":    {Inset(a, 2, 3, 4), 12, []box{{52, 63, 62, 68}}},
		"framed":   {Framed(a, 30, 1), 5, []box{{50, 60, 60, 65}, {49.5, 59.5, 80.5, 65.5}}},
		"nothing":  {Stack(3), 0, nil},
		"unfilled": {Stack(1, Block{Height: 7}, a), 13, []box{{50, 68, 60, 73}}},
	} {
		marks := drawn(b, k.block, 50, 60)
		if math.Abs(k.block.Height-k.height) > 1e-12 || len(marks) != len(k.boxes) {
			t.Fatalf("%s: %g mm high, %d marks; want %g and %d", name, k.block.Height, len(marks), k.height, len(k.boxes))
		}
		for i, m := range marks {
			if m.extent() != k.boxes[i] {
				t.Errorf("%s: mark %d at %v, want %v", name, i, m.extent(), k.boxes[i])
			}
		}
	}
}

// A table: columns share out the width, cells keep their pad from both sides, numbers end
// at one line, rows are as high as their highest cell and no lower than asked.
func TestTableLaws(t *testing.T) {
	b := newBook()
	const width, pad = 100.0, 1.5
	table := Table{Columns: []Column{{Title: "item"}, {Title: "count", Width: 24, Right: true}, {Title: "note"}}, Font: Font{Size: 9}, Pad: pad, Least: 9}.Widths(width)
	if c := table.Columns; c[0].Width != 38 || c[1].Width != 24 || c[2].Width != 38 {
		t.Fatalf("widths %v", c)
	}
	rows := [][]string{{"one", "7", "short"}, {"two", "1234", strings.Repeat("a longer note ", 8)}, {"three", "12", ""}, {"four", "9"}}
	items := table.Items(b, rows)
	if len(items) != 1+len(rows) {
		t.Fatalf("%d items", len(items))
	}
	for i, keep := range []bool{true, true, false, true, false} { // no head alone, no row alone at either end
		if items[i].Keep != keep || (items[i].Head == nil) != (i == 0) {
			t.Errorf("item %d: keep %t, want %t", i, items[i].Keep, keep)
		}
	}
	leading := table.Font.Leading()
	for i, want := range []float64{1.3*8.5*25.4/72 + 2*pad, 9, 0, 9, 9} {
		if i == 2 {
			want = float64(len(b.Wrap(table.Font, 38-2*pad, rows[1][2])))*leading + 2*pad
		}
		if math.Abs(items[i].Height-want) > 1e-9 {
			t.Errorf("item %d is %g mm high, want %g", i, items[i].Height, want)
		}
	}
	for i, it := range items {
		marks := drawn(b, it.Block, 10, 50)
		last := marks[len(marks)-1].extent()
		if want := (box{10 - Hairline/2, 50 + it.Height - Hairline/2, 110 + Hairline/2, 50 + it.Height + Hairline/2}); math.Abs(last.x0-want.x0)+math.Abs(last.y0-want.y0)+math.Abs(last.x1-want.x1)+math.Abs(last.y1-want.y1) > 1e-9 {
			t.Errorf("item %d: the line below it is %v, want %v", i, last, want)
		}
		if i == 0 {
			if g := marks[0].extent(); g != (box{10, 50, 110, 50 + it.Height}) || marks[0].style.Fill != Grey {
				t.Errorf("the head's ground is %v", g)
			}
		}
		for _, m := range marks {
			if m.text == "" {
				continue
			}
			column := 0
			for x := 10.0; m.x >= x+table.Columns[column].Width-1e-9; column++ {
				x += table.Columns[column].Width
			}
			from := []float64{10, 48, 72}[column]
			to := from + table.Columns[column].Width
			switch {
			case column == 1 && math.Abs(m.x+m.w-(to-2*pad)) > 1e-9:
				t.Errorf("item %d: %q ends at %g, want %g", i, m.text, m.x+m.w, to-2*pad)
			case column != 1 && math.Abs(m.x-from-pad) > 1e-9:
				t.Errorf("item %d: %q begins at %g, want %g", i, m.text, m.x, from+pad)
			case m.x+m.w > to-pad+1e-9:
				t.Errorf("item %d: %q runs to %g of %g", i, m.text, m.x+m.w, to)
			}
		}
		if first := marks[len(marks)-1]; i > 0 && first.text == "" {
			for _, m := range marks {
				if m.text == rows[i-1][0] && math.Abs(m.y-(50+pad+table.Font.Ascent())) > 1e-9 {
					t.Errorf("item %d: %q on %g", i, m.text, m.y)
				}
			}
		}
	}
	if single := table.Items(b, rows[:1]); single[1].Keep {
		t.Error("the only row is kept with one that is not there")
	}
	if c := table.Cells(b, 1, []string{"5", "x"}); len(c) != 2 || math.Abs(extentOf(drawn(b, c[0], 0, 50)).x1-(24-3*pad)) > 1e-9 {
		t.Errorf("cells from the second column on: %v", c)
	}
}
