package page

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"
)

// placed is where an item of a test came to stand.
type placed struct {
	page, item int
	y, height  float64
	head       bool
}

// flowed lays out items that write down where they stand.
func flowed(t *testing.T, frame Frame, items []Item) []placed {
	t.Helper()
	b := &Book{} // no text in it, so no fonts
	var out []placed
	for i := range items {
		h := items[i].Height
		items[i].Draw = func(p *Page, _, y float64) { out = append(out, placed{len(b.Pages), i, y, h, false}) }
		if items[i].Head != nil {
			hh := items[i].Head.Height
			items[i].Head = &Block{hh, func(p *Page, _, y float64) { out = append(out, placed{len(b.Pages), i, y, hh, true}) }}
		}
	}
	if err := b.Flow(frame, items); err != nil {
		t.Fatal(err)
	}
	return out
}

// On random flows: every item once and in order, inside the frame, none on
// another; a heading never last on its page while what it heads would fit with
// it on one; a break obeyed; a table's head again on each further page.
func TestFlowLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	frame := Frame{X: 10, Y: 20, Width: 100, Height: 200}
	for range 3000 {
		var items []Item
		for range 1 + r.IntN(40) {
			it := Item{Block: Block{Height: 1 + 70*r.Float64()}, Gap: 10 * r.Float64(), Keep: r.IntN(3) == 0, Break: r.IntN(12) == 0}
			if r.IntN(4) == 0 {
				it.Head = &Block{Height: 8}
			}
			items = append(items, it)
		}
		items[len(items)-1].Keep = false
		out := flowed(t, frame, items)
		next, bottom, page := 0, frame.Y, 1
		for k, p := range out {
			if p.page != page {
				page, bottom = p.page, frame.Y
				if items[p.item].Head != nil && !p.head && (k == 0 || !out[k-1].head) {
					t.Fatalf("item %d begins a page without its head", p.item)
				}
			} else if k > 0 && items[p.item].Break && !p.head && out[k-1].item != p.item {
				t.Fatalf("item %d should begin a page", p.item)
			}
			if p.y < bottom-1e-9 || p.y+p.height > frame.Y+frame.Height+0.02 {
				t.Fatalf("item %d stands from %.1f to %.1f, after %.1f", p.item, p.y, p.y+p.height, bottom)
			}
			bottom = p.y + p.height
			if p.head {
				continue
			}
			if p.item != next {
				t.Fatalf("item %d comes where %d should", p.item, next)
			}
			next++
			if items[p.item].Keep && k+1 < len(out) && out[k+1].page != p.page && !items[p.item+1].Break {
				first := p.item
				for first > 0 && items[first-1].Keep && !items[first].Break {
					first--
				}
				last := p.item + 1
				for last < len(items)-1 && items[last].Keep && !items[last+1].Break {
					last++
				}
				if height(items[first:last+1], true) <= frame.Height {
					t.Fatalf("items %d to %d would fit one page and are parted after %d", first, last, p.item)
				}
			}
		}
		if next != len(items) {
			t.Fatalf("%d of %d items", next, len(items))
		}
	}
}

func TestBlockHigherThanThePageIsAnError(t *testing.T) {
	if err := newBook().Flow(Frame{Height: 50}, []Item{{Block: Block{Height: 51}}}); !errors.Is(err, ErrTooHigh) {
		t.Errorf("%v; want ErrTooHigh", err)
	}
}

func TestNothingIsPrintedBeyondThePaper(t *testing.T) {
	for name, draw := range map[string]func(*Page){
		"text":                             func(p *Page) { p.Text(200, 50, Font{Size: 12}, "too far to the right") },
		"line":                             func(p *Page) { p.Line(0, 10, 10, 10, 1) },
		"too high":                         func(p *Page) { p.Text(10, 1, Font{Size: 12}, "x") },
		"upward":                           func(p *Page) { p.TextUp(10, 20, Font{Size: 12}, "runs off the upper edge") },
		"to the left of the sheet, upward": func(p *Page) { p.TextUp(2, 200, Font{Size: 12}, "x") },
	} {
		b := newBook()
		draw(b.newPage())
		if err := b.Write(io.Discard, Info{Date: time.Unix(0, 0)}); !errors.Is(err, ErrOutside) {
			t.Errorf("%s: %v; want ErrOutside", name, err)
		}
	}
}

// A sheet of a size of its own takes what would not go on the others.
func TestSheetsOfTheirOwnSize(t *testing.T) {
	a3 := A4.Doubled().Lying()
	if a3 != (Size{420, 297}) {
		t.Fatalf("A3 on its side is %v", a3)
	}
	b := newBook()
	b.newPage().Text(10, 20, Font{Size: 12}, "x")
	p := b.Sheet(a3, "drawing")
	p.Text(390, 20, Font{Size: 12}, "x")
	p.TextUp(400, 290, Font{Size: 12}, "runs upward")
	var out bytes.Buffer
	if err := b.Write(&out, Info{Date: time.Unix(0, 0)}); err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(out.Bytes(), []byte("/MediaBox [0 0 1190.55 841.89]")) {
		t.Error("no page of 420 x 297 mm")
	}
}

// Pictures keep their pixels: what is added to tell widths apart is white, and
// stands to the right.
func TestPicturesKeepTheirPixels(t *testing.T) {
	src := image.NewPaletted(image.Rect(2, 3, 34, 27), color.Palette{color.Black, color.RGBA{200, 10, 10, 255}})
	for i := range src.Pix {
		src.Pix[i] = uint8(i % 2)
	}
	file, err := encode(src, 35, func(w io.Writer, img *image.Paletted) error { return png.Encode(w, img) })
	if err != nil {
		t.Fatal(err)
	}
	got, err := png.Decode(bytes.NewReader(file))
	if err != nil {
		t.Fatal(err)
	}
	if got.Bounds() != image.Rect(0, 0, 35, 24) {
		t.Fatalf("%v; want 35 by 24", got.Bounds())
	}
	for y := range 24 {
		for x := range 35 {
			want := color.Color(color.White)
			if x < 32 {
				want = src.At(x+2, y+3)
			}
			r, g, b, a := got.At(x, y).RGBA()
			wr, wg, wb, wa := want.RGBA()
			if r != wr || g != wg || b != wb || a != wa {
				t.Fatalf("pixel %d, %d is %v; want %v", x, y, got.At(x, y), want)
			}
		}
	}
}

// No two pictures of a book are equally wide, and the same pointer is one.
func TestPicturesDifferInWidth(t *testing.T) {
	b := newBook()
	defer b.Wait()
	first := image.NewGray(image.Rect(0, 0, 30, 30))
	p := b.Picture(first)
	if q := b.Picture(first); q != p {
		t.Errorf("the same picture twice: %v and %v", p, q)
	}
	seen := map[int]bool{p.w: true}
	for range 20 {
		q := b.Picture(image.NewGray(image.Rect(0, 0, 30, 20)))
		if seen[q.w] {
			t.Errorf("two pictures are %d pixels wide", q.w)
		}
		seen[q.w] = true
	}
}

// Items stand a gap apart, the first of a page at its top; a rule lies in the middle of the
// gap; what just fits goes on the page.
func TestFlowByHand(t *testing.T) {
	b := &Book{}
	var at []float64
	block := func(h float64) Block {
		return Block{h, func(p *Page, x, y float64) { at = append(at, float64(len(b.Pages)), x, y) }}
	}
	frame := Frame{X: 7, Y: 20, Width: 90, Height: 100}
	items := []Item{{Block: block(30), Gap: 9}, {Block: block(40), Gap: 10, Rule: 30}, {Block: block(20)}, {Block: block(30), Gap: 4, Rule: 30}}
	if err := b.Flow(frame, items); err != nil {
		t.Fatal(err)
	}
	if want := []float64{1, 7, 20, 1, 7, 60, 1, 7, 100, 2, 7, 20}; !slices.Equal(at, want) {
		t.Errorf("%v, want %v", at, want)
	}
	if len(b.Pages) != 2 || len(b.Pages[0].marks) != 1 || len(b.Pages[1].marks) != 0 {
		t.Fatalf("%d pages", len(b.Pages))
	}
	if e := b.Pages[0].marks[0].extent(); math.Abs(e.y0+e.y1-110)+math.Abs(e.x0-6.9)+math.Abs(e.x1-37.1)+math.Abs(e.y1-e.y0-0.2) > 1e-9 {
		t.Errorf("the rule takes %v", e)
	}
}

// The language stands in the catalogue, where a reader looks for it.
func TestLanguageStandsInTheCatalogue(t *testing.T) {
	b := newBook()
	b.newPage().Text(10, 20, Font{Size: 12}, "x")
	var out bytes.Buffer
	if err := b.Write(&out, Info{Date: time.Unix(0, 0), Language: "pl"}); err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(out.Bytes(), []byte("/Type /Catalog\n/Lang (pl)\n/ViewerPreferences <</DisplayDocTitle true>>\n")) || !bytes.HasPrefix(out.Bytes(), []byte("%PDF-1.4")) {
		t.Error("no language in the catalogue")
	}
	at := bytes.LastIndex(out.Bytes(), []byte("startxref\n"))
	var where int
	if _, err := fmt.Sscan(string(out.Bytes()[at+10:]), &where); err != nil || !bytes.HasPrefix(out.Bytes()[where:], []byte("xref")) {
		t.Errorf("the table of references is not at %d (%v)", where, err)
	}
}
