// Package catalogue holds the words of the work instruction in the languages that it
// can be printed in, one small text file a language. A text has a key; what is filled
// in stands as %s. A key that a language has not got is taken from English.
//
// It knows words and how numbers are written, and nothing of what they are about.
package catalogue

import (
	_ "embed"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"
)

// A Language is one of the languages by its code after ISO 639-1; "" is English.
type Language string

// The languages.
const (
	English Language = "en"
	German  Language = "de"
	Spanish Language = "es"
	French  Language = "fr"
	Polish  Language = "pl"
)

// Languages are all of them, English first.
func Languages() []Language { return []Language{English, German, Spanish, French, Polish} }

// Known tells whether there are words in the language.
func (l Language) Known() bool { return l == "" || slices.Contains(Languages(), l) }

// Code is the code of the language, "en" for "".
func (l Language) Code() string {
	if l == "" {
		return string(English)
	}
	return string(l)
}

//go:embed en.txt
var english string

//go:embed de.txt
var german string

//go:embed es.txt
var spanish string

//go:embed fr.txt
var french string

//go:embed pl.txt
var polish string

// Strong begins and ends what is printed bold, as in export/page.
const Strong = '\x02'

var read = map[Language]func() map[string]string{
	English: sync.OnceValue(func() map[string]string { return parse(english) }),
	German:  sync.OnceValue(func() map[string]string { return parse(german) }),
	Spanish: sync.OnceValue(func() map[string]string { return parse(spanish) }),
	French:  sync.OnceValue(func() map[string]string { return parse(french) }),
	Polish:  sync.OnceValue(func() map[string]string { return parse(polish) }),
}

// parse reads "key = text" line by line; # begins a comment.
func parse(file string) map[string]string {
	out := map[string]string{}
	marks := strings.NewReplacer("~", "\u00a0", "*", string(Strong))
	for line := range strings.Lines(file) {
		key, text, ok := strings.Cut(strings.TrimRight(line, "\r\n"), " = ")
		if ok && !strings.HasPrefix(line, "#") {
			out[key] = marks.Replace(text)
		}
	}
	return out
}

// Find gives the text of a key, that of English where the language has none.
func (l Language) Find(key string) (text string, ok bool) {
	if words, known := read[Language(l.Code())]; known {
		if text, ok = words()[key]; ok {
			return text, true
		}
	}
	text, ok = read[English]()[key]
	return text, ok
}

// Say gives the text of a key with what is filled in. A key that no language has is
// given as it is.
func (l Language) Say(key string, fill ...string) string {
	text, ok := l.Find(key)
	if !ok {
		return key
	}
	return filled(text, fill)
}

func filled(text string, fill []string) string {
	if len(fill) == 0 {
		return text
	}
	args := make([]any, len(fill))
	for i, f := range fill {
		args[i] = f
	}
	return fmt.Sprintf(text, args...)
}

// Sentences gives a text that is parted into sentences.
func (l Language) Sentences(key string) []string { return parted(l.Say(key)) }

func parted(text string) []string { return strings.Split(text, " | ") }

// Count gives the form of a text that belongs to a number, with that number filled in
// as shown.
func (l Language) Count(key string, n int, shown string) string {
	forms := parted(l.Say(key))
	return filled(forms[min(l.form(n), len(forms)-1)], []string{shown})
}

// form is the form for a number: English, German and Spanish have one for 1 and one
// for the rest; in French 0 goes with 1; Polish has a third one for numbers that end
// in 2, 3 or 4, but not in 12, 13 or 14. Source: the plural rules of Unicode CLDR
// (from memory).
func (l Language) form(n int) int {
	switch {
	case n == 1 || n == 0 && l == French:
		return 0
	case l == Polish && (n%10 < 2 || n%10 > 4 || n%100 >= 12 && n%100 <= 14):
		return 2
	}
	return 1
}

// Number puts the decimal sign of the language into a number written with a point.
func (l Language) Number(s string) string {
	if sign, ok := l.Find("decimal"); ok && sign != "." {
		return strings.Replace(s, ".", sign, 1)
	}
	return s
}

// Keys are all keys, in order.
func Keys() []string { return slices.Sorted(maps.Keys(read[English]())) }
