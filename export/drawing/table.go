package drawing

import (
	"ramnest/export/page"
)

// A table lists the features of a body, with notes under it.
type table struct {
	wide, high float64 // on the sheet [mm]
	rows       [][]string
	widths     []float64
	notes      []string
}

const (
	rowHigh   = 4.6
	tableType = 8.0
	noteHigh  = 4.0
)

// tableOf fills the table. Places count from the front left corner of the box of the body,
// heights from its underside.
func (d drafter) tableOf() table {
	low := fromAbove.of(d.body)
	origin, _ := boxOf(low)
	t := table{rows: [][]string{{"", "feature", "size", "X", "Y", "Z from", "Z to"}}}
	s := d.set
	for _, f := range d.body.Features {
		size := ""
		switch {
		case f.Diameter > 0:
			size = "Ø" + s.length(f.Diameter)
		case f.Size[0] > 0:
			size = s.length(f.Size[0]) + " × " + s.length(f.Size[1])
		}
		t.rows = append(t.rows, []string{f.Tag, f.Name, size, s.length(f.At[0] - origin[0]), s.length(f.At[1] - origin[1]),
			s.length(min(f.Z[0], f.Z[1])), s.length(max(f.Z[0], f.Z[1]))})
	}
	f := page.Font{Size: tableType}
	t.widths = make([]float64, 7)
	for _, r := range t.rows {
		for i, c := range r {
			t.widths[i] = max(t.widths[i], d.book.Width(f, c)+3)
		}
	}
	for _, w := range t.widths {
		t.wide += w
	}
	for _, n := range append([]string{"X, Y from the corner marked 0, Z from the underside."}, d.body.Notes...) {
		t.notes = append(t.notes, d.book.Wrap(page.Font{Size: tableType}, t.wide, n)...)
	}
	t.high = rowHigh*float64(len(t.rows)) + 3 + noteHigh*float64(len(t.notes))
	return t
}

func (t table) draw(k *ink, x, y float64) {
	high := rowHigh * float64(len(t.rows))
	k.box(Thin, x, y, t.wide, high)
	cx := x
	for i, w := range t.widths {
		if i > 0 {
			k.line(Thin, point{cx, y}, point{cx, y + high})
		}
		for n, r := range t.rows {
			base := y + rowHigh*float64(n) + 3.3
			l := label{at: point{cx + 1.5, base}, size: tableType, text: r[i], bold: n == 0 || i == 0}
			if i > 2 { // numbers to the right
				l.at[0], l.align = cx+w-1.5, 1
			}
			if r[i] != "" {
				k.labels = append(k.labels, l)
			}
		}
		cx += w
	}
	for n := 1; n < len(t.rows); n++ {
		k.line(Thin, point{x, y + rowHigh*float64(n)}, point{x + t.wide, y + rowHigh*float64(n)})
	}
	for n, s := range t.notes {
		k.text(x, y+high+5+noteHigh*float64(n), 0, tableType, s)
	}
}
