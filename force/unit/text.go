package unit

import (
	"fmt"
	"strings"
)

// A Text is a sentence with its figures in it as values, so that the units follow the job
// where the sentence is printed, however it was put together.
type Text struct{ parts []any } // string or Figure

// Textf makes a text as [fmt.Sprintf] does, with %v for figures and texts, which stay what
// they are.
func Textf(format string, args ...any) Text {
	var t Text
	var values []any
	for _, a := range args {
		switch a := a.(type) {
		case Figure:
			values = append(values, mark)
			t.parts = append(t.parts, a)
		case Text:
			values = append(values, mark)
			t.parts = append(t.parts, a)
		case string:
			values = append(values, strings.ReplaceAll(a, mark, ""))
		default:
			values = append(values, a)
		}
	}
	held := t.parts
	t.parts = nil
	for i, piece := range strings.Split(fmt.Sprintf(format, values...), mark) {
		t = t.add(piece)
		if i < len(held) {
			t = t.add(held[i])
		}
	}
	return t
}

// mark holds the place of a figure while a text is put together.
const mark = "\x00"

// Say makes a text of plain words.
func Say(words string) Text { return Text{}.add(words) }

// Plus gives the text with more behind it: words, figures or texts.
func (t Text) Plus(more ...any) Text {
	t.parts = append([]any(nil), t.parts...)
	for _, m := range more {
		t = t.add(m)
	}
	return t
}

func (t Text) add(m any) Text {
	switch m := m.(type) {
	case Text:
		for _, p := range m.parts {
			t = t.add(p)
		}
		return t
	case string:
		if m == "" {
			return t
		}
		if n := len(t.parts); n > 0 {
			if last, ok := t.parts[n-1].(string); ok {
				t.parts = append(t.parts[:n-1:n-1], last+m)
				return t
			}
		}
	}
	t.parts = append(t.parts[:len(t.parts):len(t.parts)], m)
	return t
}

// Without gives the text without the words that it begins with, if it does.
func (t Text) Without(words string) Text {
	if len(t.parts) > 0 {
		if first, ok := t.parts[0].(string); ok && strings.HasPrefix(first, words) {
			return Say(first[len(words):]).Plus(t.parts[1:]...)
		}
	}
	return t
}

// Join puts texts together with words between them.
func Join(all []Text, between string) Text {
	var out Text
	for i, t := range all {
		if i > 0 {
			out = out.add(between)
		}
		out = out.add(t)
	}
	return out
}

// Figures gives the figures in the text, in their order.
func (t Text) Figures() []Figure {
	var out []Figure
	for _, p := range t.parts {
		if f, ok := p.(Figure); ok {
			out = append(out, f)
		}
	}
	return out
}

// Empty says whether there is nothing to print.
func (t Text) Empty() bool { return len(t.parts) == 0 }

// In gives the text in the units of a job.
func (t Text) In(s System) string {
	var b strings.Builder
	for _, p := range t.parts {
		if f, ok := p.(Figure); ok {
			b.WriteString(f.Text(s, nil))
		} else {
			b.WriteString(fmt.Sprint(p))
		}
	}
	return b.String()
}

// String gives the text in the units of the rooms.
func (t Text) String() string { return t.In(System{}) }

// Capital gives the text with its first letter large.
func (t Text) Capital() Text {
	if len(t.parts) > 0 {
		if words, ok := t.parts[0].(string); ok {
			return Say(strings.ToUpper(words[:1]) + words[1:]).Plus(t.parts[1:]...)
		}
	}
	return t
}
