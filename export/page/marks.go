package page

import "math"

// A Page is a list of marks on paper, in the order in which they are put there.
type Page struct {
	marks []mark
	fonts *metrics
	size  Size
}

// A mark is text, a path or a picture; the fields of the others are empty.
type mark struct {
	text    string
	font    Font
	path    *Path
	style   Style
	picture Picture
	up      bool // text that runs upward
	anchor  Anchor
	x, y    float64
	w, h    float64
}

// A Style is how a path is drawn.
type Style struct {
	Filled bool
	Fill   Shade
	Stroke float64 // width of the line [mm]; 0: no line
	Line   Shade
	Dash   []float64 // lengths on and off [mm]; none: solid
}

// Hairline is the width of the finest line [mm].
const Hairline = 0.2

// Text puts one line, its baseline at y; bold parts between Strong marks.
func (p *Page) Text(x, y float64, f Font, s string) {
	for _, r := range runs(s, f.Face) {
		f.Face = r.face
		p.marks = append(p.marks, mark{text: r.text, font: f, x: x, y: y, w: p.fonts.width(r.face, f.Size, r.text), h: f.Size * point})
		x += p.fonts.width(r.face, f.Size, r.text)
	}
}

// An Anchor is the point of a line of text that stands at its place.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// TextAt puts one line in one face, held at its start, middle or end: there it stays if
// another program sets it in another typeface.
func (p *Page) TextAt(x, y float64, f Font, at Anchor, s string) {
	w := p.fonts.width(f.Face, f.Size, s)
	x -= float64(w * [...]float64{Start: 0, Middle: 0.5, End: 1}[at])
	p.marks = append(p.marks, mark{text: s, font: f, anchor: at, x: x, y: y, w: w, h: f.Size * point})
}

// TextUp puts one line that runs upward, to be read from the right; it begins at x, y,
// its baseline on x.
func (p *Page) TextUp(x, y float64, f Font, s string) {
	p.marks = append(p.marks, mark{text: s, font: f, up: true, x: x, y: y, w: p.fonts.width(f.Face, f.Size, s), h: f.Size * point})
}

// Line draws a straight line.
func (p *Page) Line(x1, y1, x2, y2, width float64) {
	p.Draw(new(Path).Move(x1, y1).Line(x2, y2), Style{Stroke: width})
}

// Box draws the outline of a rectangle.
func (p *Page) Box(x, y, w, h, width float64) {
	p.Draw(new(Path).Polygon(x, y, x+w, y, x+w, y+h, x, y+h), Style{Stroke: width})
}

// Ground fills a rectangle.
func (p *Page) Ground(x, y, w, h float64, s Shade) {
	p.Draw(new(Path).Polygon(x, y, x+w, y, x+w, y+h, x, y+h), Style{Filled: true, Fill: s})
}

// Draw draws a path.
func (p *Page) Draw(path *Path, s Style) {
	p.marks = append(p.marks, mark{path: path, style: s})
}

// Show puts a picture, as large as the room allows, in the middle of it.
func (p *Page) Show(pic Picture, x, y, w, h float64) {
	dw, dh := pic.fit(w, h)
	if dw > 0 {
		p.marks = append(p.marks, mark{picture: pic, x: x + (w-dw)/2, y: y + (h-dh)/2, w: dw, h: dh})
	}
}

type box struct{ x0, y0, x1, y1 float64 }

func emptyBox() box {
	return box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
}

func (b box) with(x, y float64) box {
	return box{min(b.x0, x), min(b.y0, y), max(b.x1, x), max(b.y1, y)}
}

// extent is the place that a mark takes on the paper.
func (m mark) extent() box {
	switch {
	case m.path != nil:
		b, s := m.path.box(), m.style.Stroke/2
		return box{b.x0 - s, b.y0 - s, b.x1 + s, b.y1 + s}
	case m.up:
		return box{m.x - m.h, m.y - m.w, m.x + 0.25*m.h, m.y}
	case m.text != "":
		return box{m.x, m.y - m.h, m.x + m.w, m.y + 0.25*m.h}
	}
	return box{m.x, m.y, m.x + m.w, m.y + m.h}
}
