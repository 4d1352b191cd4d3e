package page

import "strings"

// A run is text in one face.
type run struct {
	face Face
	text string
}

// runs divides a text at its Strong marks.
func runs(s string, face Face) []run {
	var out []run
	for i, part := range strings.Split(s, string(Strong)) {
		if part == "" {
			continue
		}
		r := run{face, part}
		if i%2 == 1 {
			r.face = Bold
		}
		out = append(out, r)
	}
	return out
}

// Wrap breaks a text into lines no wider than width [mm], at spaces, and inside
// a word only where the word alone is too wide. A line feed breaks too; a space
// that must not break is U+00A0.
func (b *Book) Wrap(f Font, width float64, s string) []string {
	return b.WrapAfter(f, width, 0, s)
}

// WrapAfter is Wrap where the first line begins after an indent [mm].
func (b *Book) WrapAfter(f Font, width, indent float64, s string) []string {
	var out []string
	for part := range strings.SplitSeq(whole(s), "\n") {
		out = append(out, b.wrap(f, width, indent, part)...)
		indent = 0
	}
	return out
}

func (b *Book) wrap(f Font, width, indent float64, s string) []string {
	var lines []string
	var line strings.Builder
	used, begun, strong := indent, false, false
	space := b.fonts.width(f.Face, f.Size, " ")
	end := func() {
		if strong {
			line.WriteRune(Strong)
		}
		lines = append(lines, line.String())
		line.Reset()
		used, begun = 0, false
		if strong {
			line.WriteRune(Strong)
		}
	}
	for word := range strings.SplitSeq(s, " ") {
		if word == "" {
			continue
		}
		need := b.wordWidth(f, word, strong)
		if begun {
			need += space
		}
		switch {
		case used > 0 && used+need > width:
			end()
		case begun:
			line.WriteByte(' ')
			used += space
		}
		for _, r := range word {
			if r == Strong {
				strong = !strong
				line.WriteRune(r)
				continue
			}
			w := b.fonts.rune(face(f, strong), f.Size, r)
			if used > 0 && used+w > width {
				end()
			}
			line.WriteRune(r)
			used += w
		}
		begun = true
	}
	if begun || len(lines) == 0 {
		end()
	}
	return lines
}

func (b *Book) wordWidth(f Font, word string, strong bool) float64 {
	w := 0.0
	for _, r := range word {
		if r == Strong {
			strong = !strong
			continue
		}
		w += b.fonts.rune(face(f, strong), f.Size, r)
	}
	return w
}

func face(f Font, strong bool) Face {
	if strong {
		return Bold
	}
	return f.Face
}

// Width is that of a text on one line [mm].
func (b *Book) Width(f Font, s string) float64 { return b.wordWidth(f, s, false) }

// Fit gives the text in at most n lines; what is left out is marked by an
// ellipsis.
func (b *Book) Fit(f Font, width float64, n int, s string) []string {
	lines := b.Wrap(f, width, s)
	if len(lines) <= n {
		return lines
	}
	lines = lines[:n]
	last := []rune(strings.ReplaceAll(lines[n-1], string(Strong), ""))
	for len(last) > 0 && b.Width(f, string(last)+"…") > width {
		last = last[:len(last)-1]
	}
	lines[n-1] = strings.TrimRight(string(last), " ") + "…"
	return lines
}
