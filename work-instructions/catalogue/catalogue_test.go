package catalogue

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var files = map[Language]string{English: english, German: german, Spanish: spanish, French: french, Polish: polish}

// Every line of a file is a comment or a text, and no key is there twice.
func TestFilesAreRead(t *testing.T) {
	for _, l := range Languages() {
		seen := map[string]bool{}
		for n, line := range strings.Split(files[l], "\n") {
			if line == "" || strings.HasPrefix(line, "#") {
				continue
			}
			key, text, ok := strings.Cut(line, " = ")
			if !ok || text == "" || text != strings.TrimSpace(text) || strings.Contains(text, "  ") {
				t.Errorf("%s.txt:%d: %q is no text", l, n+1, line)
			}
			if seen[key] {
				t.Errorf("%s.txt:%d: %q is there before", l, n+1, key)
			}
			seen[key] = true
		}
		if len(seen) != len(read[l]()) {
			t.Errorf("%s: %d keys in the file, %d read", l, len(seen), len(read[l]()))
		}
	}
}

var verb = regexp.MustCompile(`%(\[\d+\])?.?`)

// fills are the places to fill in, as often as each argument stands there.
func fills(text string) []string {
	out := verb.FindAllString(text, -1)
	slices.Sort(out)
	return out
}

// No language lacks a key or has one that English has not got; the places to fill in,
// the bold parts and the number of orders agree; a form for each way to count.
func TestLanguagesAgree(t *testing.T) {
	forms := map[Language]int{English: 2, German: 2, Spanish: 2, French: 2, Polish: 3}
	keys := slices.Sorted(maps.Keys(read[English]()))
	for _, l := range Languages() {
		words := read[l]()
		for _, key := range slices.Sorted(maps.Keys(words)) {
			if _, ok := read[English]()[key]; !ok {
				t.Errorf("%s: %q is not in English", l, key)
			}
		}
		for _, key := range keys {
			text, ok := words[key]
			if !ok {
				t.Errorf("%s: no %q", l, key)
				continue
			}
			first := read[English]()[key]
			want, n := fills(first), len(parted(text))
			if strings.HasPrefix(key, "count.") {
				want = slices.Repeat([]string{"%s"}, forms[l])
				if n != forms[l] {
					t.Errorf("%s: %q has %d forms; want %d", l, key, n, forms[l])
				}
			} else if n != len(parted(first)) {
				t.Errorf("%s: %q has %d sentences; want %d", l, key, n, len(parted(first)))
			}
			if got := fills(text); !slices.Equal(got, want) {
				t.Errorf("%s: %q is filled with %v; want %v", l, key, got, want)
			}
			if got, want := strings.Count(text, string(Strong)), strings.Count(first, string(Strong)); got != want {
				t.Errorf("%s: %q has %d bold marks; want %d", l, key, got, want)
			}
			if strings.HasSuffix(first, ".") != strings.HasSuffix(text, ".") && key != "decimal" {
				t.Errorf("%s: %q: one ends with a full stop, the other does not: %q", l, key, text)
			}
		}
	}
}

// A text that is the same as the English one has been forgotten, but for words that
// the languages share.
func TestNothingIsLeftInEnglish(t *testing.T) {
	shared := regexp.MustCompile(`^(c\.|act\.|setup\.|acc\.|reject|remark\.|limit\.|cap\.|way\.|gear\.|open\.|warn\.|hold\.|first\.when|table\.why|care\.)`)
	for _, l := range Languages()[1:] {
		for key, text := range read[l]() {
			if strings.Contains(text, " ") && shared.MatchString(key) && text == read[English]()[key] && key != "act.check.gap" {
				t.Errorf("%s: %q is English: %q", l, key, text)
			}
		}
	}
}

// Words and number together, as the plural rules of CLDR have them (from memory).
func TestCount(t *testing.T) {
	for _, row := range []struct {
		l    Language
		n    int
		want string
	}{
		{"", 1, "1 blow"}, {English, 0, "0 blows"}, {English, 2, "2 blows"}, {German, 1, "1 Schlag"}, {German, 5, "5 Schläge"},
		{Spanish, 1, "1 golpe"}, {Spanish, 2, "2 golpes"}, {French, 0, "0 coup"}, {French, 1, "1 coup"}, {French, 2, "2 coups"},
		{Polish, 1, "1 uderzenie"}, {Polish, 2, "2 uderzenia"}, {Polish, 4, "4 uderzenia"}, {Polish, 5, "5 uderzeń"}, {Polish, 12, "12 uderzeń"},
		{Polish, 14, "14 uderzeń"}, {Polish, 22, "22 uderzenia"}, {Polish, 25, "25 uderzeń"}, {Polish, 112, "112 uderzeń"}, {Polish, 0, "0 uderzeń"}, {Polish, 21, "21 uderzeń"},
	} {
		if got := strings.ReplaceAll(row.l.Count("count.blow", row.n, digits(row.n)), "\u00a0", " "); got != row.want {
			t.Errorf("%s, %d: %q; want %q", row.l.Code(), row.n, got, row.want)
		}
	}
}

func digits(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return digits(n/10) + digits(n%10)
}

func TestFallsBackToEnglish(t *testing.T) {
	was := read[Polish]
	defer func() { read[Polish] = was }()
	read[Polish] = func() map[string]string { return map[string]string{} }
	if got := Polish.Say("act.out"); got != "Take the assembly out." {
		t.Errorf("a missing text: %q", got)
	}
	if got := German.Say("no such key"); got != "no such key" {
		t.Errorf("a key that no language has: %q", got)
	}
	if Language("xx").Known() || !Language("").Known() || Language("xx").Say("act.out") != "Take the assembly out." {
		t.Error("a language without a file")
	}
	for l, want := range map[Language]string{"": "1.5", German: "1,5", French: "1,5", English: "1.5", Spanish: "1,5"} {
		if got := l.Number("1.5"); got != want {
			t.Errorf("%s: %s; want %s", l.Code(), got, want)
		}
	}
}
