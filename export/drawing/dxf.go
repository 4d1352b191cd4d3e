package drawing

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"ramnest/export/page"
	"ramnest/force/unit"
)

// A dxf writer puts group codes and values, one a line, CR LF between them.
type dxf struct {
	bytes.Buffer
	page.Size
	k    float64 // units of the file for one mm of the sheet
	dx   float64 // where the sheet begins [mm of the sheet]
	book *page.Book
}

// writeDXF writes Release 12 in ASCII: the sheets side by side, each so large that bodies
// are in their own size, in the unit of the set. Layers are the kinds of line. The
// groups are those of the reference of that release (from memory).
func (s Set) writeDXF(w io.Writer, sheets []sheet) error {
	d := &dxf{book: page.New(s.Paper, nil)}
	defer d.book.Wait()
	one := 1 / s.Units.One(unit.Length)
	wide, high := 0.0, 0.0
	for _, sh := range sheets {
		k := one * sh.scale.body / sh.scale.sheet
		wide, high = wide+k*(sh.size.Width+20), max(high, k*sh.size.Height)
	}
	d.put(0, "SECTION", 2, "HEADER", 9, "$ACADVER", 1, "AC1009", 9, "$EXTMIN", 10, 0.0, 20, 0.0, 9, "$EXTMAX", 10, wide, 20, high, 9,
		"$LTSCALE", 40, 1.0, 0, "ENDSEC")
	d.tables(one * sheets[0].scale.body / sheets[0].scale.sheet)
	d.put(0, "SECTION", 2, "BLOCKS", 0, "ENDSEC", 0, "SECTION", 2, "ENTITIES")
	at := 0.0 // in units of the file
	for _, sh := range sheets {
		d.k, d.Size = one*sh.scale.body/sh.scale.sheet, sh.size
		d.dx = at / d.k
		d.sheet(sh)
		at += d.k * (sh.size.Width + 20)
	}
	d.put(0, "ENDSEC", 0, "EOF")
	_, err := d.WriteTo(w)
	return err
}

// put writes pairs of a group code and a value.
func (d *dxf) put(pairs ...any) {
	for i := 0; i < len(pairs); i += 2 {
		fmt.Fprintf(d, "%3d\r\n", pairs[i])
		switch v := pairs[i+1].(type) {
		case float64:
			d.WriteString(strconv.FormatFloat(math.Round(v*1e5)/1e5+0, 'f', -1, 64))
		case int:
			d.WriteString(strconv.Itoa(v))
		case string:
			d.WriteString(v)
		}
		d.WriteString("\r\n")
	}
}

// tables lists kinds of line, layers and the style of type.
func (d *dxf) tables(k float64) {
	d.put(0, "SECTION", 2, "TABLES", 0, "TABLE", 2, "LTYPE", 70, 3)
	for _, t := range []struct {
		name, text string
		dash       []float64
	}{{"CONTINUOUS", "Solid line", nil}, {"HIDDEN", "Hidden __ __", dashes[Hidden]}, {"CENTER", "Center ____ _ ____", dashes[Centre]}} {
		long := 0.0
		for _, v := range t.dash {
			long += v
		}
		d.put(0, "LTYPE", 2, t.name, 70, 0, 3, t.text, 72, 65, 73, len(t.dash), 40, k*long)
		for i, v := range t.dash {
			if i%2 == 1 {
				v = -v
			}
			d.put(49, k*v)
		}
	}
	d.put(0, "ENDTAB", 0, "TABLE", 2, "LAYER", 70, int(kinds)+1)
	d.put(0, "LAYER", 2, "0", 70, 0, 62, 7, 6, "CONTINUOUS")
	for kind, name := range names {
		d.put(0, "LAYER", 2, name, 70, 0, 62, [kinds]int{7, 3, 1, 5, 5, 4, 8, 7}[kind], 6, lineType(Kind(kind)))
	}
	d.put(0, "ENDTAB", 0, "TABLE", 2, "STYLE", 70, 1)
	d.put(0, "STYLE", 2, "STANDARD", 70, 0, 40, 0.0, 41, 1.0, 50, 0.0, 71, 0, 42, 2.5, 3, "txt", 4, "")
	d.put(0, "ENDTAB", 0, "ENDSEC")
}

func lineType(k Kind) string {
	switch k {
	case Hidden:
		return "HIDDEN"
	case Centre, Cutting:
		return "CENTER"
	}
	return "CONTINUOUS"
}

// on gives a point of the sheet in the file, y up.
func (d *dxf) on(p point) (x, y float64) { return d.k * (d.dx + p[0]), d.k * (d.Height - p[1]) }

func (d *dxf) sheet(sh sheet) {
	for _, s := range sh.strokes {
		if len(s.points) == 2 && !s.closed {
			x0, y0 := d.on(s.points[0])
			x1, y1 := d.on(s.points[1])
			d.put(0, "LINE", 8, names[s.kind], 10, x0, 20, y0, 11, x1, 21, y1)
			continue
		}
		closed := 0
		if s.closed {
			closed = 1
		}
		d.put(0, "POLYLINE", 8, names[s.kind], 66, 1, 10, 0.0, 20, 0.0, 30, 0.0, 70, closed)
		for _, p := range s.points {
			x, y := d.on(p)
			d.put(0, "VERTEX", 8, names[s.kind], 10, x, 20, y)
		}
		d.put(0, "SEQEND", 8, names[s.kind])
	}
	for _, a := range sh.arrows {
		c := a.corners()
		x0, y0 := d.on(c[0])
		x1, y1 := d.on(c[1])
		x2, y2 := d.on(c[2])
		d.put(0, "SOLID", 8, names[Thin], 10, x0, 20, y0, 11, x1, 21, y1, 12, x2, 22, y2, 13, x2, 23, y2)
	}
	for _, t := range sh.labels {
		x, y := d.on(t.at)
		turn, how := 0.0, map[float64]int{0: 0, 0.5: 1, 1: 2}[t.align]
		if t.up {
			turn = 90
		}
		d.put(0, "TEXT", 8, names[Thin], 10, x, 20, y, 40, d.k*0.72*t.size*25.4/72, 1, plain(t.text), 41, 0.85)
		if turn != 0 {
			d.put(50, turn)
		}
		if how != 0 {
			d.put(72, how, 11, x, 21, y)
		}
	}
}

// plain writes a text in the letters of the format: signs as its codes, other letters by
// their number.
func plain(s string) string {
	s, _ = page.Clean(s)
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == 'Ø':
			b.WriteString("%%c")
		case r == '±':
			b.WriteString("%%p")
		case r == '°':
			b.WriteString("%%d")
		case r == '×':
			b.WriteString("x")
		case r == '–' || r == '—':
			b.WriteString("-")
		case r == '%':
			b.WriteString("%%%")
		case r >= 0x20 && r < 0x7f:
			b.WriteRune(r)
		default:
			fmt.Fprintf(&b, `\U+%04X`, r)
		}
	}
	return b.String()
}
