package page

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// An SVG says what a page is when it is written as a drawing of its own.
type SVG struct {
	Title, Text string // what it is; what it shows, for whoever cannot see it
	ID          string // first part of the ids in it; none where it stands alone in its file
	More        string // elements on top of the page, in mm
}

// SVG gives the page as an SVG element that scales, in mm. Pictures of grey dots are left
// out. A stranger's text stays text.
func (p *Page) SVG(s SVG) string {
	var b strings.Builder
	n := func(v float64) string { return strconv.FormatFloat(math.Round(v*1000)/1000+0, 'f', -1, 64) }
	id := func(of string) string {
		if s.ID == "" {
			return ""
		}
		return ` id="` + escaped(s.ID+of) + `"`
	}
	about, space := "", ` xmlns="http://www.w3.org/2000/svg"`
	if s.ID != "" {
		space = ""
		about = ` aria-labelledby="` + escaped(s.ID+"-title "+s.ID+"-text") + `"`
	}
	fmt.Fprintf(&b, "<svg%s%s viewBox=\"0 0 %s %s\" role=\"img\"%s font-family=\"Liberation Sans, Arial, Helvetica, sans-serif\">\n",
		space, id(""), n(p.size.Width), n(p.size.Height), about)
	fmt.Fprintf(&b, "<title%s>%s</title>\n<desc%s>%s</desc>\n", id("-title"), escaped(s.Title), id("-text"), escaped(s.Text))
	for _, m := range p.marks {
		switch {
		case m.path != nil:
			m.path.svg(&b, m.style, n)
		case m.text != "":
			m.svg(&b, n)
		}
	}
	b.WriteString(s.More + "</svg>\n")
	return b.String()
}

func (p *Path) svg(b *strings.Builder, s Style, n func(float64) string) {
	b.WriteString("<path d=\"")
	for _, t := range p.steps {
		switch t.kind {
		case 'm', 'l':
			b.WriteString(strings.ToUpper(string(t.kind)) + n(t.p[0]) + " " + n(t.p[1]))
		case 'c':
			b.WriteString("C")
			for k, v := range t.p {
				if k > 0 {
					b.WriteString(" ")
				}
				b.WriteString(n(v))
			}
		case 'z':
			b.WriteString("Z")
		}
	}
	fill := "none"
	if s.Filled {
		fill = tone(s.Fill)
	}
	fmt.Fprintf(b, "\" fill=\"%s\"", fill)
	if s.Stroke > 0 {
		fmt.Fprintf(b, " stroke=\"%s\" stroke-width=\"%s\" stroke-linejoin=\"round\"", tone(s.Line), n(s.Stroke))
		for i, d := range s.Dash {
			if i == 0 {
				b.WriteString(" stroke-dasharray=\"" + n(d))
			} else {
				b.WriteString(" " + n(d))
			}
		}
		if len(s.Dash) > 0 {
			b.WriteString("\"")
		}
	}
	b.WriteString("/>\n")
}

func (m mark) svg(b *strings.Builder, n func(float64) string) {
	x := m.x + float64(m.w*[...]float64{Start: 0, Middle: 0.5, End: 1}[m.anchor])
	fmt.Fprintf(b, "<text x=\"%s\" y=\"%s\" font-size=\"%s\" fill=\"%s\"", n(x), n(m.y), n(m.font.Size*point), tone(m.font.Shade))
	if m.anchor != Start {
		b.WriteString(` text-anchor="` + [...]string{Middle: "middle", End: "end"}[m.anchor] + `"`)
	}
	if m.font.Face == Bold {
		b.WriteString(` font-weight="bold"`)
	}
	if m.up {
		fmt.Fprintf(b, ` transform="rotate(-90 %s %s)"`, n(m.x), n(m.y))
	}
	fmt.Fprintf(b, ">%s</text>\n", escaped(m.text))
}

// tone is a shade as a colour.
func tone(s Shade) string { return fmt.Sprintf("#%02[1]x%02[1]x%02[1]x", level(s)) }

func escaped(s string) string {
	var b bytes.Buffer
	xml.EscapeText(&b, []byte(s)) // a buffer takes everything
	return b.String()
}
