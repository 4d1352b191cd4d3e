package report

import (
	"strings"
	"testing"
)

func TestLinesFitTheTerminal(t *testing.T) {
	t.Parallel()
	for _, text := range []string{
		"", "short", strings.Repeat("word ", 60), strings.Repeat("x", 300), "a " + strings.Repeat("y", 79) + " b", strings.Repeat("long-word-here ", 20) + strings.Repeat("z", 200),
	} {
		p := &page{}
		p.wrap("  - ", "    ", text)
		got := p.b.String()
		for line := range strings.Lines(got) {
			if n := len(strings.TrimRight(line, "\n")); n > width {
				t.Errorf("%.20q: a line of %d characters: %s", text, n, line)
			}
		}
		keep := func(s string) string {
			return strings.Map(func(r rune) rune {
				if r == ' ' || r == '\n' {
					return -1
				}
				return r
			}, s)
		}
		if want := keep(text); want != "" && keep(got) != "-"+want {
			t.Errorf("%.20q: words got lost: %s", text, got)
		}
	}
}

func TestPlainCharacters(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ in, want string }{
		{"12 mm² ± 0,5 µm × 3°", "12 mm2 +- 0,5 um x 3 deg"},
		{"Fjällräven Øst – “Straße”", `Fjallraven Ost - "Strasse"`},
		{"ab\x1b[31mc\t", "ab?[31mc?"},
		{"日本 ok", "?? ok"},
	} {
		if got := ascii(c.in); got != c.want {
			t.Errorf("ascii(%q) = %q, want %q", c.in, got, c.want)
		}
	}
}

func TestTableLinesUp(t *testing.T) {
	t.Parallel()
	p := &page{}
	p.table("lrl", [][]string{{"piece", "kg", "what"}, {"nest", "0.1", strings.Repeat("word ", 20)}, {"an anvil", "10.25", ""}})
	want := "  piece        kg  what\n" +
		"  nest        0.1  word word word word word word word word word word word word\n" +
		"                   word word word word word word word word\n" +
		"  an anvil  10.25\n"
	if got := p.b.String(); got != want {
		t.Errorf("\n%s\nwant\n%s", got, want)
	}
}
