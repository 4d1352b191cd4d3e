package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"

	"ramnest/export/page"
)

// names of the kinds of line, as layers and classes.
var names = [kinds]string{"VISIBLE", "HIDDEN", "CENTRE", "CUTTING", "CUT_ENDS", "DIMENSIONS", "HATCHING", "BORDER"}

// writeSVG writes the sheets one below the other, in mm.
func writeSVG(w io.Writer, s Set, sheets []sheet) error {
	var b bytes.Buffer
	wide, high := 0.0, 0.0
	for _, sh := range sheets {
		wide, high = max(wide, sh.size.Width), high+sh.size.Height
	}
	n := func(v float64) string { return strconv.FormatFloat(roundTo(v), 'f', -1, 64) }
	esc := func(t string) string {
		var e bytes.Buffer
		xml.EscapeText(&e, []byte(t)) // a buffer takes everything
		return e.String()
	}
	fmt.Fprintf(&b, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" viewBox=\"0 0 %s %s\">\n", n(wide), n(high), n(wide), n(high))
	fmt.Fprintf(&b, "<title>%s</title>\n<rect width=\"%s\" height=\"%s\" fill=\"#fff\"/>\n", esc("Drawings of job "+s.Job+": "+s.Title),
		n(wide), n(high))
	top := 0.0
	book := page.New(s.Paper, nil)
	defer book.Wait()
	for _, sh := range sheets {
		fmt.Fprintf(&b, "<g transform=\"translate(0 %s)\" font-family=\"Liberation Sans, Arial, Helvetica, sans-serif\">\n<title>%s</title>\n",
			n(top), esc(sh.name))
		for kind := range kinds {
			dash := ""
			for i, d := range dashes[kind] {
				if i > 0 {
					dash += " "
				}
				dash += n(d)
			}
			if dash != "" {
				dash = " stroke-dasharray=\"" + dash + "\""
			}
			fmt.Fprintf(&b, "<path class=\"%s\" fill=\"none\" stroke=\"#000\" stroke-width=\"%s\" stroke-linejoin=\"round\"%s d=\"", names[kind],
				n(widths[kind]), dash)
			for _, k := range sh.strokes {
				if k.kind != kind {
					continue
				}
				for i, p := range k.points {
					letter := " L"
					if i == 0 {
						letter = "M"
					}
					b.WriteString(letter + n(p[0]) + " " + n(p[1]))
				}
				if k.closed {
					b.WriteString(" Z")
				}
			}
			b.WriteString("\"/>\n")
		}
		b.WriteString("<path class=\"ARROWS\" d=\"")
		for _, a := range sh.arrows {
			c := a.corners()
			fmt.Fprintf(&b, "M%s %s L%s %s L%s %s Z", n(c[0][0]), n(c[0][1]), n(c[1][0]), n(c[1][1]), n(c[2][0]), n(c[2][1]))
		}
		b.WriteString("\"/>\n")
		for _, t := range sh.labels {
			text, _ := page.Clean(t.text)
			f := page.Font{Size: t.size}
			more := ""
			if t.bold {
				f.Face, more = page.Bold, " font-weight=\"bold\""
			}
			size := t.size * 25.4 / 72
			if t.up {
				more += " transform=\"rotate(-90 " + n(t.at[0]) + " " + n(t.at[1]) + ")\""
			}
			if t.blank {
				width := book.Width(f, text)
				turn := ""
				if t.up {
					turn = " transform=\"rotate(-90 " + n(t.at[0]) + " " + n(t.at[1]) + ")\""
				}
				fmt.Fprintf(&b, "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"#fff\"%s/>\n", n(t.at[0]-t.align*width-0.3),
					n(t.at[1]-0.74*size-0.2), n(width+0.6), n(0.74*size+0.5), turn)
			}
			anchor := map[float64]string{0: "start", 0.5: "middle", 1: "end"}[t.align]
			fmt.Fprintf(&b, "<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\"%s>%s</text>\n", n(t.at[0]), n(t.at[1]), n(size), anchor,
				more, esc(text))
		}
		b.WriteString("</g>\n")
		top += sh.size.Height
	}
	b.WriteString("</svg>\n")
	_, err := b.WriteTo(w)
	return err
}
