package report

import (
	"fmt"
	"strings"
)

// width is the width of a terminal that everything fits [characters].
const width = 80

// folded gives characters that not every terminal shows in ones that all do.
var folded = strings.NewReplacer(
	"²", "2", "³", "3", "µ", "u", "μ", "u", "±", "+-", "×", "x", "·", "*", "–", "-", "—", "-", "−", "-",
	"≤", "<=", "≥", ">=", "°", " deg", "…", "...", "‘", "'", "’", "'", "“", `"`, "”", `"`, "\u00a0", " ",
	"À", "A", "Á", "A", "Â", "A", "Ã", "A", "Ä", "A", "Å", "A", "Æ", "AE", "Ç", "C", "È", "E", "É", "E", "Ê", "E", "Ë", "E",
	"Ì", "I", "Í", "I", "Î", "I", "Ï", "I", "Ð", "D", "Ñ", "N", "Ò", "O", "Ó", "O", "Ô", "O", "Õ", "O", "Ö", "O", "Ø", "O",
	"Ù", "U", "Ú", "U", "Û", "U", "Ü", "U", "Ý", "Y", "Þ", "Th", "ß", "ss",
	"à", "a", "á", "a", "â", "a", "ã", "a", "ä", "a", "å", "a", "æ", "ae", "ç", "c", "è", "e", "é", "e", "ê", "e", "ë", "e",
	"ì", "i", "í", "i", "î", "i", "ï", "i", "ð", "d", "ñ", "n", "ò", "o", "ó", "o", "ô", "o", "õ", "o", "ö", "o", "ø", "o",
	"ù", "u", "ú", "u", "û", "u", "ü", "u", "ý", "y", "þ", "th", "ÿ", "y", "Œ", "OE", "œ", "oe",
	"α", "alpha", "β", "beta", "δ", "delta", "ε", "eps", "ν", "nu", "ρ", "rho", "σ", "sigma", "φ", "phi", "π", "pi",
)

// ascii gives a text in characters that every terminal shows; one that has no
// spelling in them becomes a question mark.
func ascii(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return '?'
		}
		return r
	}, folded.Replace(s))
}

// A page collects lines of text for a terminal.
type page struct{ b strings.Builder }

// line adds a line as it is, in plain characters.
func (p *page) line(format string, args ...any) {
	p.b.WriteString(strings.TrimRight(ascii(fmt.Sprintf(format, args...)), " "))
	p.b.WriteByte('\n')
}

// head begins a section.
func (p *page) head(format string, args ...any) {
	if p.b.Len() > 0 {
		p.b.WriteByte('\n')
	}
	p.wrap("", "  ", fmt.Sprintf(format, args...))
}

// wrap adds a text in lines of at most the width: first before the first line, rest
// before the others. A word longer than a line is broken.
func (p *page) wrap(first, rest, text string) {
	line, begun := first, false
	flush := func() {
		p.line("%s", line)
		line, begun = rest, false
	}
	for _, word := range strings.Fields(ascii(text)) {
		if begun && len(line)+1+len(word) > width {
			flush()
		}
		for len(line)+len(word) > width {
			if begun {
				flush()
				continue
			}
			cut := width - len(line)
			line += word[:cut]
			word = word[cut:]
			flush()
		}
		if begun {
			line += " "
		}
		line, begun = line+word, true
	}
	if begun {
		flush()
	}
}

// table adds rows in columns, the first row the heads. Columns named in right are
// lined up on their right side; the last column is cut into lines.
func (p *page) table(right string, rows [][]string) {
	last := len(right) - 1
	wide := make([]int, last)
	for _, r := range rows {
		for c := range last {
			wide[c] = max(wide[c], len(ascii(r[c])))
		}
	}
	for _, r := range rows {
		line := " "
		for c := range last {
			if right[c] == 'r' {
				line += fmt.Sprintf(" %*s ", wide[c], ascii(r[c]))
			} else {
				line += fmt.Sprintf(" %-*s ", wide[c], ascii(r[c]))
			}
		}
		line += " "
		if right[last] == 'r' || r[last] == "" {
			p.line("%s%s", line, r[last])
			continue
		}
		p.wrap(line, strings.Repeat(" ", min(len(line), width/2)), r[last])
	}
}
