package drawing

import (
	"fmt"
	"time"

	"ramnest/export/page"
)

// A cell of the title block; a width of 0 takes what is left.
type cell struct {
	name, value string
	width       float64
	size        float64 // of the value [pt]
}

// strip draws frame and title block.
func (l *layout) strip(k *ink) {
	w, h := l.size.Width-marginLeft-margin, l.size.Height-2*margin
	k.box(Border, marginLeft, margin, w, h)
	y := margin + h - stripHigh
	k.line(Border, point{marginLeft, y}, point{marginLeft + w, y})
	s, b := l.set, l.body
	author := s.Author
	rows := [][]cell{
		{{"Workshop drawing", b.Name + ": " + s.Title, 0, 11}, {"Job", s.Job, 46, 11}, {"Revision", s.Revision, 18, 11},
			{"Sheet", fmt.Sprintf("%d of %d", l.number, len(s.Bodies)), 20, 11}},
		{{"Material and process", b.Material + " by " + b.Process, 44, 9}, {"Build direction", b.Build, 56, 9},
			{"General tolerance", b.Tolerance, 0, 9}, {"Engraved", b.Mark, 44, 9}, {"Mass", b.Mass, 20, 9}},
		{{"Date", s.Date.Format(time.DateOnly), 22, 9}, {"Author", author, 0, 9}, {"Fingerprint", s.Fingerprint, 22, 9},
			{"Scale", l.scale.String(), 14, 9}, {"Dimensions in", s.unit(), 22, 9}, {l.projection(), "", 46, 9}, {"Made with", s.Tool, 30, 9}},
	}
	high := stripHigh / float64(len(rows))
	for n, row := range rows {
		top := y + high*float64(n)
		if n > 0 {
			k.line(Thin, point{marginLeft, top}, point{marginLeft + w, top})
		}
		free := w
		for _, c := range row {
			free -= c.width
		}
		x := marginLeft
		for i, c := range row {
			if c.width == 0 {
				c.width = free
			}
			if i > 0 {
				k.line(Thin, point{x, top}, point{x, top + high})
			}
			k.text(x+1.5, top+3.2, 0, 6.5, c.name)
			l.value(k, c, x+1.5, top+high-2.2)
			if c.value == "" && c.name == l.projection() {
				l.symbol(k, x+c.width-21, top+high/2)
			}
			x += c.width
		}
	}
}

// value writes what a cell says, in smaller type where it is long, and cut short with an
// ellipsis at last.
func (l *layout) value(k *ink, c cell, x, y float64) {
	text, _ := page.Clean(c.value)
	f := page.Font{Face: page.Bold, Size: c.size}
	for f.Size > 6.5 && l.book.Width(f, text) > c.width-3 {
		f.Size -= 0.5
	}
	lines := l.book.Fit(f, c.width-3, 1, text)
	k.labels = append(k.labels, label{at: point{x, y}, size: f.Size, bold: true, text: lines[0]})
}

func (l *layout) projection() string {
	if l.thirdAngle() {
		return "Third-angle projection"
	}
	return "First-angle projection"
}

// symbol draws that of the projection: a cut-off cone and its view from the small end.
func (l *layout) symbol(k *ink, x, y float64) {
	const big, small, long = 2.6, 1.3, 6.0
	cone, rings := x, x+13
	if l.thirdAngle() {
		cone, rings = x+8, x+1
	}
	k.loop(Visible, point{cone, y - small}, point{cone + long, y - big}, point{cone + long, y + big}, point{cone, y + small})
	c := point{rings + big, y}
	k.loop(Visible, circle(c, big)...)
	k.loop(Visible, circle(c, small)...)
	k.line(Centre, point{cone - 1.2, y}, point{cone + long + 1.2, y})
	k.line(Centre, point{c[0] - big - 1.2, y}, point{c[0] + big + 1.2, y})
	k.line(Centre, point{c[0], y - big - 1.2}, point{c[0], y + big + 1.2})
}
