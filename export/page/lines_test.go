package page

import (
	"image"
	"io"
	"strings"
	"testing"
	"unicode/utf8"
)

func newBook() *Book {
	return New(A4, func(io.Writer, *image.Paletted) error { return nil })
}

// Widths of Liberation Sans in thousandths of the type size: the same as those
// of the metric standard it follows, printed in the core font metrics of the PDF
// literature (from memory): space 278, a 556, W 944, i 222, 0 556; bold a 556,
// i 278.
func TestWidths(t *testing.T) {
	b := newBook()
	for _, row := range []struct {
		text string
		face Face
		want float64
	}{{" ", Regular, 278}, {"a", Regular, 556}, {"W", Regular, 944}, {"i", Regular, 222}, {"0", Regular, 556}, {"a", Bold, 556}, {"i", Bold, 278}, {"a0", Regular, 1112}} {
		got := b.Width(Font{Face: row.face, Size: 1000}, row.text) / point
		if got < row.want-1 || got > row.want+1 {
			t.Errorf("%q face %d: %.1f; want %.0f", row.text, row.face, got, row.want)
		}
	}
}

// Lines are no wider than told, and hold the words in their order, nothing lost
// and nothing added.
func checkWrap(t *testing.T, b *Book, f Font, width, indent float64, s string) {
	t.Helper()
	lines := b.WrapAfter(f, width, indent, s)
	if len(lines) == 0 {
		t.Fatalf("%q: no line", s)
	}
	squeeze := func(s string) string {
		return strings.Join(strings.Fields(strings.ReplaceAll(s, string(Strong), "")), "")
	}
	if got, want := squeeze(strings.Join(lines, " ")), squeeze(s); got != want {
		t.Fatalf("width %.1f: %q becomes %q", width, want, got)
	}
	for i, l := range lines {
		w := b.Width(f, l)
		if i == 0 {
			w += indent
		}
		if text := strings.ReplaceAll(l, string(Strong), ""); w > width+1e-9 && utf8.RuneCountInString(text) > 1 {
			t.Fatalf("line %d %q is %.2f mm wide; want at most %.2f", i, l, w, width)
		}
		if strings.Count(l, string(Strong))%2 != 0 {
			t.Fatalf("line %d %q leaves bold open", i, l)
		}
	}
}

func TestWrapKeepsWords(t *testing.T) {
	b := newBook()
	for _, s := range []string{"", " ", "one", "one two three four five six", strings.Repeat("unbroken", 40), "a  b   c", "plain " + Emphasised("bold and on over lines") + " plain", Emphasised(strings.Repeat("x", 90)), "a\nb\n\nc"} {
		for _, width := range []float64{5, 17.3, 40, 200} {
			for _, indent := range []float64{0, 4, 30} {
				checkWrap(t, b, Font{Size: 11}, width, min(indent, width), s)
			}
		}
	}
}

func FuzzWrap(f *testing.F) {
	f.Add("one two \x02three\x02 four", 30.0, 3.0)
	f.Add("ÄÖ ≤ 5 \u00a0mm", 10.0, 0.0)
	b := newBook()
	f.Fuzz(func(t *testing.T, s string, width, indent float64) {
		if len(s) > 2000 || !(width > 8 && width < 400) || !(indent >= 0 && indent < width) {
			return
		}
		clean, _ := Clean(s)
		for _, r := range clean {
			if !Printable(r) {
				t.Fatalf("%q becomes %q with %U", s, clean, r)
			}
		}
		if again, replaced := Clean(clean); again != clean || replaced {
			t.Fatalf("%q is not clean after cleaning: %q", s, again)
		}
		checkWrap(t, b, Font{Size: 11}, width, indent, strings.ReplaceAll(clean, "\u00a0", "_"))
	})
}

func TestFitMarksWhatIsLeftOut(t *testing.T) {
	b := newBook()
	f := Font{Size: 10}
	lines := b.Fit(f, 40, 2, "one two three four five six seven eight nine ten eleven twelve")
	if len(lines) != 2 || !strings.HasSuffix(lines[1], "…") || b.Width(f, lines[1]) > 40 {
		t.Errorf("%q; want two lines, the last with an ellipsis", lines)
	}
	if lines := b.Fit(f, 40, 2, "short"); len(lines) != 1 || lines[0] != "short" {
		t.Errorf("%q; want it whole", lines)
	}
}
