package page

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"time"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansregular"
	"github.com/jung-kurt/gofpdf"
)

// A Book is a document while it is laid out.
type Book struct {
	Size  Size
	Pages []*Page

	fonts   *metrics
	pdf     func() *gofpdf.Fpdf // begun when first asked for
	outline []entry

	images   []*held
	widths   map[int]bool // of the pictures [px], in use
	paletted Encoder
	encoding sync.WaitGroup
	slots    chan struct{} // one for each picture that may be worked on at once
}

// An entry of the outline. There is one level: the writer counts the entries
// below an entry as none, which the standard forbids where there are some.
type entry struct {
	title string
	page  int // from 1
	y     float64
}

// Info says what a document is.
type Info struct {
	Title, Author, Subject, Keywords, Creator string
	Language                                  string // "en"
	Date                                      time.Time
}

const family = "sans"

// New begins a book. Indexed pictures become files by paletted. Whoever begins
// a book calls Wait before he is done with it.
func New(size Size, paletted Encoder) *Book {
	pdf := sync.OnceValue(func() *gofpdf.Fpdf { return begin(size) })
	return &Book{Size: size, pdf: pdf, fonts: newMetrics(pdf), widths: map[int]bool{}, paletted: paletted,
		slots: make(chan struct{}, runtime.GOMAXPROCS(0))}
}

// begin reads the fonts, which takes longer than setting a few pages.
func begin(size Size) *gofpdf.Fpdf {
	pdf := gofpdf.NewCustom(&gofpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: gofpdf.SizeType{Wd: size.Width, Ht: size.Height}})
	pdf.SetCatalogSort(true)
	pdf.SetMargins(0, 0, 0)
	pdf.SetAutoPageBreak(false, 0)
	pdf.AddUTF8FontFromBytes(family, "", liberationsansregular.TTF)
	pdf.AddUTF8FontFromBytes(family, "B", liberationsansbold.TTF)
	return pdf
}

func (b *Book) newPage() *Page { return b.Sheet(b.Size, "") }

// Sheet begins a page of a size of its own, such as a drawing; title is its entry in the
// document's outline, empty for none.
func (b *Book) Sheet(size Size, title string) *Page {
	p := &Page{fonts: b.fonts, size: size}
	b.Pages = append(b.Pages, p)
	if title != "" {
		b.outline = append(b.outline, entry{title, len(b.Pages), 0})
	}
	return p
}

// metrics are the widths of characters, in thousandths of the type size.
type metrics struct {
	pdf func() *gofpdf.Fpdf
	mem [2]map[rune]float64
}

func newMetrics(pdf func() *gofpdf.Fpdf) *metrics {
	return &metrics{pdf, [2]map[rune]float64{{}, {}}}
}

func (m *metrics) rune(f Face, size float64, r rune) float64 {
	w, ok := m.mem[f][r]
	if !ok {
		pdf := m.pdf()
		pdf.SetFont(family, style(f), 1000)
		w = float64(pdf.GetStringSymbolWidth(string(r)))
		m.mem[f][r] = w
	}
	return w * size * point / 1000
}

func (m *metrics) width(f Face, size float64, s string) float64 {
	w := 0.0
	for _, r := range s {
		w += m.rune(f, size, r)
	}
	return w
}

func style(f Face) string {
	if f == Bold {
		return "B"
	}
	return ""
}

// ErrOutside is returned when something would be printed beyond the paper.
var ErrOutside = errors.New("something would be printed beyond the edge of the paper")

// Write writes the document.
func (b *Book) Write(w io.Writer, info Info) error {
	for n, p := range b.Pages {
		for _, m := range p.marks {
			if e := m.extent(); !(e.x0 >= 0 && e.y0 >= 0 && e.x1 <= p.size.Width && e.y1 <= p.size.Height) {
				return fmt.Errorf("page %d: %w: %q", n+1, ErrOutside, m.text)
			}
		}
	}
	b.Wait()
	pdf := b.pdf()
	pdf.SetTitle(info.Title, true)
	pdf.SetAuthor(info.Author, true)
	pdf.SetSubject(info.Subject, true)
	pdf.SetKeywords(info.Keywords, true)
	pdf.SetCreator(info.Creator, true)
	pdf.SetProducer("gofpdf", true)
	pdf.SetCreationDate(info.Date)
	pdf.SetModificationDate(info.Date)
	pdf.SetDisplayMode("fullpage", "continuous")
	for _, h := range b.images {
		if h.err != nil {
			return h.err
		}
		pdf.RegisterImageOptionsReader(strconv.Itoa(h.id), gofpdf.ImageOptions{ImageType: "png"}, bytes.NewReader(h.file))
	}
	outline := b.outline
	for n, p := range b.Pages {
		pdf.AddPageFormat("P", gofpdf.SizeType{Wd: p.size.Width, Ht: p.size.Height})
		for len(outline) > 0 && outline[0].page == n+1 {
			pdf.Bookmark(outline[0].title, 0, outline[0].y)
			outline = outline[1:]
		}
		put(pdf, p)
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		return fmt.Errorf("make the PDF: %w", err)
	}
	file, err := withLanguage(out.Bytes(), info.Language)
	if err != nil {
		return err
	}
	_, err = w.Write(file)
	return err
}

// put draws the marks of one page.
func put(pdf *gofpdf.Fpdf, p *Page) {
	for _, m := range p.marks {
		switch {
		case m.path != nil:
			putPath(pdf, m.path, m.style)
		case m.text != "":
			v := level(m.font.Shade)
			pdf.SetTextColor(v, v, v)
			pdf.SetFont(family, style(m.font.Face), m.font.Size)
			text := strings.ReplaceAll(m.text, "\u00a0", " ")
			if !m.up {
				pdf.Text(m.x, m.y, text)
				break
			}
			pdf.TransformBegin()
			pdf.TransformRotate(90, m.x, m.y)
			pdf.Text(m.x, m.y, text)
			pdf.TransformEnd()
		case !m.picture.None():
			pdf.ImageOptions(strconv.Itoa(m.picture.id), m.x, m.y, m.w, m.h, false, gofpdf.ImageOptions{ImageType: "png"}, 0, "")
		}
	}
}

func putPath(pdf *gofpdf.Fpdf, p *Path, s Style) {
	how := ""
	if s.Filled {
		v := level(s.Fill)
		pdf.SetFillColor(v, v, v)
		how = "F"
	}
	if s.Stroke > 0 {
		v := level(s.Line)
		pdf.SetDrawColor(v, v, v)
		pdf.SetLineWidth(s.Stroke)
		pdf.SetDashPattern(s.Dash, 0)
		pdf.SetLineJoinStyle("round")
		how += "D"
	}
	if how == "" {
		return
	}
	for _, t := range p.steps {
		switch t.kind {
		case 'm':
			pdf.MoveTo(t.p[0], t.p[1])
		case 'l':
			pdf.LineTo(t.p[0], t.p[1])
		case 'c':
			pdf.CurveBezierCubicTo(t.p[0], t.p[1], t.p[2], t.p[3], t.p[4], t.p[5])
		case 'z':
			pdf.ClosePath()
		}
	}
	pdf.DrawPath(how)
}

func level(s Shade) int {
	switch s {
	case Grey:
		return 219
	case White:
		return 255
	}
	return 0
}

// withLanguage puts the language into the catalogue, which the writer cannot
// do. The catalogue is the last object, so only the place of the table of
// references moves.
func withLanguage(file []byte, language string) ([]byte, error) {
	const key, ref = "/Type /Catalog\n", "startxref\n"
	at, tail := bytes.LastIndex(file, []byte(key)), bytes.LastIndex(file, []byte(ref))
	if at < 0 || tail < at {
		return nil, errors.New("make the PDF: no catalogue where it is expected")
	}
	end := tail + len(ref)
	digits := end
	for digits < len(file) && file[digits] >= '0' && file[digits] <= '9' {
		digits++
	}
	where, err := strconv.Atoi(string(file[end:digits]))
	if err != nil || where < at || where > tail || !bytes.HasPrefix(file[where:], []byte("xref")) {
		return nil, errors.New("make the PDF: the table of references is not where it is expected")
	}
	extra := fmt.Sprintf("/Lang (%s)\n/ViewerPreferences <</DisplayDocTitle true>>\n", language)
	at += len(key)
	const old, since = "%PDF-1.3", "%PDF-1.4" // the first version that has both entries
	if !bytes.HasPrefix(file, []byte(old)) {
		return nil, errors.New("make the PDF: it is of another version than expected")
	}
	out := append(make([]byte, 0, len(file)+len(extra)+1), since...)
	out = append(out, file[len(old):at]...)
	out = append(out, extra...)
	out = append(out, file[at:end]...)
	out = strconv.AppendInt(out, int64(where+len(extra)), 10)
	return append(out, file[digits:]...), nil
}
