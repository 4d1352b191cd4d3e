package page

import "strings"

// Missing stands for a character that cannot be printed.
const Missing = '□'

// printable lists the characters that both faces have and that are set right by
// placing one after the other: Latin with the European accents, Greek, Cyrillic,
// the signs of arithmetic. Scripts that run from right to left and accents apart
// from their letter are left out though the font has glyphs for some.
var printable = [...][2]rune{
	{0x20, 0x7e}, {0xa0, 0xac}, {0xae, 0x17f}, {0x18f, 0x192}, {0x1cd, 0x1dc}, {0x1fa, 0x1ff}, {0x218, 0x21b},
	{0x386, 0x386}, {0x388, 0x38a}, {0x38c, 0x38c}, {0x38e, 0x3a1}, {0x3a3, 0x3ce},
	{0x400, 0x481}, {0x48a, 0x513},
	{0x1e80, 0x1e85}, {0x1ef2, 0x1ef3},
	{0x2012, 0x2015}, {0x2018, 0x201e}, {0x2020, 0x2022}, {0x2026, 0x2026}, {0x2030, 0x2030}, {0x2032, 0x2033}, {0x2039, 0x203a},
	{0x2044, 0x2044},
	{0x2074, 0x2078}, {0x20ac, 0x20ac}, {0x2116, 0x2116}, {0x2122, 0x2122}, {0x2126, 0x2126},
	{0x2153, 0x2154}, {0x215b, 0x215e}, {0x2190, 0x2195}, {0x2206, 0x2206}, {0x2211, 0x2212}, {0x221a, 0x221a}, {0x221e, 0x221e},
	{0x2248, 0x2248}, {0x2260, 0x2260}, {0x2264, 0x2265}, {0x25a0, 0x25a1}, {0x25cf, 0x25cf},
}

// Printable tells whether a character can be set.
func Printable(r rune) bool {
	for _, g := range printable {
		if r >= g[0] && r <= g[1] {
			return true
		}
	}
	return false
}

// Clean makes a text safe to set: white space becomes a space, whatever cannot
// be printed becomes the sign Missing, so that the reader sees that something
// stood there. replaced tells whether that happened.
func Clean(s string) (clean string, replaced bool) {
	ok := true
	for _, r := range s {
		ok = ok && r != '\uFFFD' && Printable(r)
	}
	if ok {
		return s, false
	}
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\t' || r == '\n' || r == '\r' || r == '\v' || r == '\f' || r == 0x85 || r == 0x2028 || r == 0x2029:
			b.WriteByte(' ')
		case r == 0x2010 || r == 0x2011:
			b.WriteByte('-')
		case Printable(r):
			b.WriteRune(r)
		default:
			b.WriteRune(Missing)
			replaced = true
		}
	}
	return b.String(), replaced
}
