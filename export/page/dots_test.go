package page

import (
	"encoding/xml"
	"image"
	"math"
	"strconv"
	"strings"
	"testing"
)

const dots = 12.0 // to the mm

// ink weighs the dark of an image: how much of it [mm²] and where its middle lies [mm].
func ink(img *image.Gray) (sum, x, y float64) {
	for j := range img.Rect.Dy() {
		for i := range img.Rect.Dx() {
			d := float64(255-img.GrayAt(i, j).Y) / 255 / dots / dots
			sum += d
			x += d * (float64(i) + 0.5) / dots
			y += d * (float64(j) + 0.5) / dots
		}
	}
	return sum, x / sum, y / sum
}

func imageOf(t *testing.T, draw func(p *Page)) *image.Gray {
	t.Helper()
	p := newBook().Sheet(Size{80, 60}, "")
	draw(p)
	img, err := p.Image(dots)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// The ink of a figure is its area, and its middle that of the figure.
func TestInkIsArea(t *testing.T) {
	solid := Style{Filled: true}
	const grey = 36.0 / 255
	for _, c := range []struct {
		name       string
		draw       func(p *Page)
		area, x, y float64
	}{
		{"triangle", func(p *Page) { p.Draw(new(Path).Polygon(10, 10, 40, 10, 10, 40), solid) }, 450, 20, 20},
		{"ellipse", func(p *Page) { p.Draw(new(Path).Ellipse(30, 25, 20, 10), solid) }, math.Pi * 200, 30, 25},
		{"round", func(p *Page) { p.Draw(new(Path).Round(10, 12, 40, 20, 6), solid) }, 800 - (4-math.Pi)*36, 30, 22},
		{"grey ground", func(p *Page) { p.Ground(20, 5, 30, 20, Grey) }, 600 * grey, 35, 15},
		{"level line", func(p *Page) { p.Line(10, 30, 50, 30, 2) }, 42 * 2, 30, 30},
		{"sloping line", func(p *Page) { p.Line(10, 10, 40, 50, 2) }, 52 * 2, 25, 30},
		{"line back", func(p *Page) { p.Line(70, 40, 30, 10, 1.5) }, 51.5 * 1.5, 50, 25},
		{"box", func(p *Page) { p.Box(10, 10, 40, 30, 1) }, 4 + 2*39 + 2*29 - 0, 30, 25},
		{"dashes", func(p *Page) {
			p.Draw(new(Path).Move(10, 20).Line(50, 20), Style{Stroke: 2, Dash: []float64{6, 2}})
		}, 60, 29, 20},
		{"dashes of a sloping line", func(p *Page) {
			p.Draw(new(Path).Move(10, 10).Line(40, 50), Style{Stroke: 1, Dash: []float64{3, 2}})
		}, 30, 10 + 0.6*24, 10 + 0.8*24},
		{"dashes round a corner", func(p *Page) {
			p.Draw(new(Path).Move(10, 10).Line(15, 10).Line(15, 31), Style{Stroke: 1, Dash: []float64{8, 10}})
		}, 15.75, (5*12.5 + 11*15 - 0.25*14.75) / 15.75, (5*10 + 3*11.5 + 8*27 - 0.25*10.25) / 15.75}, // at the corner the two lie on each other,
		{"half outside the paper", func(p *Page) { p.Ground(60, 40, 40, 40, Black) }, 400, 70, 50},
	} {
		got, x, y := ink(imageOf(t, c.draw))
		if math.Abs(got/c.area-1) > 0.01 || math.Abs(x-c.x) > 0.06 || math.Abs(y-c.y) > 0.06 {
			t.Errorf("%s: %.2f mm² about %.2f, %.2f; want %.2f about %.2f, %.2f", c.name, got, x, y, c.area, c.x, c.y)
		}
	}
}

// A line of text has its ink where it says: between its ends, above its baseline, held by
// its start, middle or end; twice the size takes four times the ink.
func TestTextStandsAtItsPlace(t *testing.T) {
	f := Font{Size: 20}
	text := func(a Anchor, f Font) (sum, x, y float64) {
		return ink(imageOf(t, func(p *Page) { p.TextAt(40, 30, f, a, "HHHH") }))
	}
	w := newBook().Width(f, "HHHH")
	sum, x, y := text(Middle, f)
	cap := 0.729 * 20 * point // height of a capital of the typeface (read, its OS/2 table: 1409 of 2048)
	if math.Abs(x-40) > 0.1 || math.Abs(y-(30-cap/2)) > 0.3 {
		t.Errorf("held in the middle: about %.2f, %.2f; want 40, %.2f", x, y, 30-cap/2)
	}
	for a, want := range map[Anchor]float64{Start: 40 + w/2, End: 40 - w/2} {
		if _, x, _ := text(a, f); math.Abs(x-want) > 0.1 {
			t.Errorf("anchor %d: about %.2f, want %.2f", a, x, want)
		}
	}
	if double, _, _ := text(Middle, Font{Size: 40}); math.Abs(double/sum-4) > 0.1 {
		t.Errorf("twice the size: %.2f times the ink", double/sum)
	}
	if bold, _, _ := text(Middle, Font{Face: Bold, Size: 20}); bold < 1.2*sum {
		t.Errorf("bold has %.2f times the ink", bold/sum)
	}
	if white, _, _ := text(Middle, Font{Size: 20, Shade: White}); white != 0 {
		t.Errorf("white ink: %.2f mm²", white)
	}
}

func TestDotsOutOfRange(t *testing.T) {
	p := newBook().newPage()
	for scale, good := range map[float64]bool{0.99: false, 1: true, 40.1: false, math.NaN(): false} {
		if _, err := p.Image(scale); (err == nil) != good {
			t.Errorf("%g dots to the mm: %v", scale, err)
		}
	}
}

// SVG and dots are two writers of one page: what the SVG says, drawn again from its text,
// has the same ink. Texts stand at the point that holds them.
func TestSVGSaysWhatTheDotsShow(t *testing.T) {
	draw := func(p *Page) {
		p.Draw(new(Path).Ellipse(20, 20, 12, 8), Style{Filled: true, Fill: Grey, Stroke: 1})
		p.Draw(new(Path).Round(30, 25, 40, 20, 5), Style{Stroke: 0.5, Dash: []float64{4, 2, 1, 2}})
		p.TextAt(40, 50, Font{Size: 10}, Middle, "a < b")
		p.TextAt(70, 55, Font{Size: 10, Face: Bold}, End, "end")
		p.Text(5, 57, Font{Size: 8}, "start")
		p.TextUp(75, 30, Font{Size: 8}, "up")
	}
	p := newBook().Sheet(Size{80, 60}, "")
	draw(p)
	var doc struct {
		ViewBox string `xml:"viewBox,attr"`
		Paths   []struct {
			D      string `xml:"d,attr"`
			Fill   string `xml:"fill,attr"`
			Stroke string `xml:"stroke-width,attr"`
			Dash   string `xml:"stroke-dasharray,attr"`
		} `xml:"path"`
		Texts []struct {
			X, Y, Size string
			Anchor     string     `xml:"text-anchor,attr"`
			Weight     string     `xml:"font-weight,attr"`
			Turned     string     `xml:"transform,attr"`
			Text       string     `xml:",chardata"`
			Attrs      []xml.Attr `xml:",any,attr"`
		} `xml:"text"`
	}
	if err := xml.Unmarshal([]byte(p.SVG(SVG{Title: "t", Text: "d"})), &doc); err != nil {
		t.Fatal(err)
	}
	if doc.ViewBox != "0 0 80 60" || len(doc.Paths) != 2 || len(doc.Texts) != 4 {
		t.Fatalf("%+v", doc)
	}
	number := func(s string) float64 {
		v, err := strconv.ParseFloat(s, 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for i, el := range doc.Paths {
		var again Path
		for _, piece := range strings.FieldsFunc(strings.NewReplacer("M", "|M", "L", "|L", "C", "|C", "Z", "|Z").Replace(el.D), func(r rune) bool { return r == '|' }) {
			var v []float64
			for _, w := range strings.Fields(piece[1:]) {
				v = append(v, number(w))
			}
			again.add(piece[0]-'A'+'a', v...)
		}
		if len(again.steps) != len(p.marks[i].path.steps) {
			t.Fatalf("path %d: %d steps, want %d", i, len(again.steps), len(p.marks[i].path.steps))
		}
		for k, s := range again.steps {
			for j := range s.p {
				if w := p.marks[i].path.steps[k]; s.kind != w.kind || math.Abs(s.p[j]-w.p[j]) > 0.00051 {
					t.Errorf("path %d, step %d: %c %v, want %c %v", i, k, s.kind, s.p, w.kind, w.p)
				}
			}
		}
	}
	if a, b := doc.Paths[0], doc.Paths[1]; a.Fill != "#dbdbdb" || a.Stroke != "1" || a.Dash != "" || b.Fill != "none" || b.Stroke != "0.5" || b.Dash != "4 2 1 2" {
		t.Errorf("%+v", doc.Paths)
	}
	for i, want := range []struct{ text, at, y, anchor, weight, turned string }{
		{"a < b", "40", "50", "middle", "", ""}, {"end", "70", "55", "end", "bold", ""}, {"start", "5", "57", "", "", ""}, {"up", "75", "30", "", "", "rotate(-90 75 30)"},
	} {
		got := doc.Texts[i]
		attrs := map[string]string{}
		for _, a := range got.Attrs {
			attrs[a.Name.Local] = a.Value
		}
		if got.Text != want.text || attrs["x"] != want.at || attrs["y"] != want.y || got.Anchor != want.anchor || got.Weight != want.weight || got.Turned != want.turned {
			t.Errorf("text %d: %+v %v, want %+v", i, got, attrs, want)
		}
		if size := number(attrs["font-size"]); math.Abs(size-p.marks[2+i].font.Size*25.4/72) > 0.00051 {
			t.Errorf("text %d: %g mm high", i, size)
		}
	}
}

// An SVG that stands in a page has ids and says by them what it is; one that stands alone
// says what it is made of.
func TestSVGAloneAndInAPage(t *testing.T) {
	p := newBook().Sheet(Size{10, 10}, "")
	alone := p.SVG(SVG{Title: "a & b", Text: "c"})
	within := p.SVG(SVG{Title: "a & b", Text: "c", ID: "x", More: "<g/>"})
	for _, c := range []struct {
		svg, piece string
		in         bool
	}{
		{alone, `xmlns="http://www.w3.org/2000/svg"`, true}, {alone, "id=", false}, {alone, "aria-labelledby", false}, {alone, "<title>a &amp; b</title>", true}, {alone, "<desc>c</desc>", true},
		{within, "xmlns", false}, {within, `<svg id="x"`, true}, {within, `aria-labelledby="x-title x-text"`, true}, {within, `<title id="x-title">`, true}, {within, `<desc id="x-text">`, true}, {within, "<g/></svg>\n", true},
	} {
		if strings.Contains(c.svg, c.piece) != c.in {
			t.Errorf("%q: %t in %s", c.piece, !c.in, c.svg)
		}
	}
}
