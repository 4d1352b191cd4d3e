package page

import (
	"math"
	"testing"
)

// area is that of the pieces of a path, by chords, with its sign.
func area(p *Path) (sum float64) {
	for _, l := range p.chords() {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			sum += (a[0]*b[1] - b[0]*a[1]) / 2
		}
	}
	return sum
}

// Every point of an ellipse keeps its equation, and it goes round all four quarters.
func TestEllipseKeepsItsEquation(t *testing.T) {
	const x, y, rx, ry = 30.0, 70, 20, 8
	p := new(Path).Ellipse(x, y, rx, ry)
	for _, q := range p.chords()[0] {
		if r := math.Hypot((q[0]-x)/rx, (q[1]-y)/ry); math.Abs(r-1) > 3e-4 {
			t.Errorf("%.3f, %.3f is %.5f of the way out", q[0], q[1], r)
		}
	}
	if got, want := math.Abs(area(p)), math.Pi*rx*ry; math.Abs(got/want-1) > 0.003 {
		t.Errorf("%.2f mm², want %.2f", got, want)
	}
	if b := p.box(); math.Abs(b.x0-10)+math.Abs(b.x1-50)+math.Abs(b.y0-62)+math.Abs(b.y1-78) > 1e-12 {
		t.Errorf("the box is %v", b)
	}
}

// A rectangle with round corners lies within its sides, touches each, and its corners are
// quarters of a circle; too large a radius makes the short side round.
func TestRoundCornersAreQuarterCircles(t *testing.T) {
	const x, y, w, h = 5.0, 40, 60, 24
	for _, r := range []float64{2, 7, 12, 50} {
		p := new(Path).Round(x, y, w, h, r)
		b, least := p.box(), min(r, h/2)
		if b != (box{x, y, x + w, y + h}) {
			t.Errorf("radius %g: the box is %v", r, b)
		}
		if got, want := math.Abs(area(p)), w*h-(4-math.Pi)*least*least; math.Abs(got-want) > 0.006*least*least {
			t.Errorf("radius %g: %.4f mm², want %.4f", r, got, want)
		}
		for _, q := range p.chords()[0] {
			dx := max(x+least-q[0], q[0]-(x+w-least), 0)
			dy := max(y+least-q[1], q[1]-(y+h-least), 0)
			if d := math.Hypot(dx, dy); math.Abs(d-least) > 4e-4*least {
				t.Errorf("radius %g: %.3f, %.3f is %.5f from the middle of its corner", r, q[0], q[1], d)
			}
		}
	}
}

// A path scaled and moved has its box scaled and moved, and is another path.
func TestPlacedMovesEveryPoint(t *testing.T) {
	p := new(Path).Ellipse(3, 4, 2, 1).Polygon(1, 1, 9, 1, 9, 7)
	was, q := p.box(), p.Placed(10, 20, 2.5)
	if got, want := q.box(), (box{10 + 2.5*was.x0, 20 + 2.5*was.y0, 10 + 2.5*was.x1, 20 + 2.5*was.y1}); got != want {
		t.Errorf("%v, want %v", got, want)
	}
	if got, want := area(q), 2.5*2.5*area(p); math.Abs(got/want-1) > 1e-12 {
		t.Errorf("%.3f mm², want %.3f", got, want)
	}
	if p.box() != was {
		t.Error("the path itself was moved")
	}
}

// What a mark takes on the paper: a line half its width on each side, text its height
// above the baseline and a quarter below it, upward text turned a quarter to the left.
func TestExtentOfMarks(t *testing.T) {
	p := newBook().newPage()
	p.Line(10, 20, 40, 20, 3)
	f := Font{Size: 10}
	p.Text(50, 60, f, "width")
	p.TextUp(80, 90, f, "width")
	w, h := p.fonts.width(Regular, 10, "width"), 10*25.4/72
	for i, want := range []box{{8.5, 18.5, 41.5, 21.5}, {50, 60 - h, 50 + w, 60 + h/4}, {80 - h, 90 - w, 80 + h/4, 90}} {
		got := p.marks[i].extent()
		if d := math.Abs(got.x0-want.x0) + math.Abs(got.y0-want.y0) + math.Abs(got.x1-want.x1) + math.Abs(got.y1-want.y1); d > 1e-9 {
			t.Errorf("mark %d takes %v, want %v", i, got, want)
		}
	}
}

// A picture is as large as the room allows, keeps its proportions and stands in the middle.
func TestPictureFillsItsRoom(t *testing.T) {
	p := newBook().newPage()
	for _, room := range [][2]float64{{60, 20}, {20, 60}} {
		p.marks = nil
		p.Show(Picture{1, 300, 200}, 11, 13, room[0], room[1])
		m := p.marks[0]
		if math.Abs(m.w/m.h-1.5) > 1e-12 || math.Abs(max(m.w/room[0], m.h/room[1])-1) > 1e-12 {
			t.Errorf("room %v: %g by %g", room, m.w, m.h)
		}
		if math.Abs(m.x+m.w/2-11-room[0]/2) > 1e-12 || math.Abs(m.y+m.h/2-13-room[1]/2) > 1e-12 {
			t.Errorf("room %v: the middle is %g, %g", room, m.x+m.w/2, m.y+m.h/2)
		}
	}
	if a4 := A4; math.Abs(a4.Height/a4.Width-math.Sqrt2) > 0.002 || math.Abs(a4.Height*a4.Width-1e6/16) > 150 {
		t.Errorf("A4 is %v: not a sixteenth of a square metre of the sides 1 to root two", a4)
	}
	if l := Letter.Doubled(); l != (Size{11 * 25.4, 17 * 25.4}) {
		t.Errorf("Tabloid is %v", l)
	}
}
