package page

import (
	"encoding/binary"
	"testing"
	"unicode"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansregular"
)

// glyphs reads the character map of a font, format 4 of its Windows Unicode
// table (OpenType specification, cmap), apart from the writer's own reading.
func glyphs(t *testing.T, font []byte) func(rune) bool {
	t.Helper()
	u16 := func(at int) int { return int(binary.BigEndian.Uint16(font[at:])) }
	u32 := func(at int) int { return int(binary.BigEndian.Uint32(font[at:])) }
	for i := range u16(4) {
		if entry := 12 + 16*i; string(font[entry:entry+4]) == "cmap" {
			cmap := u32(entry + 8)
			for k := range u16(cmap + 2) {
				rec := cmap + 4 + 8*k
				sub := cmap + u32(rec+4)
				if u16(rec) != 3 || u16(rec+2) != 1 || u16(sub) != 4 {
					continue
				}
				n := u16(sub+6) / 2
				return func(r rune) bool {
					for s := range n {
						end, start := u16(sub+14+2*s), u16(sub+16+2*n+2*s)
						if int(r) < start || int(r) > end {
							continue
						}
						delta, at := u16(sub+16+4*n+2*s), sub+16+6*n+2*s
						if off := u16(at); off != 0 {
							return u16(at+off+2*(int(r)-start)) != 0
						}
						return (int(r)+delta)&0xffff != 0
					}
					return false
				}
			}
		}
	}
	t.Fatal("no character map")
	return nil
}

func TestFontHasEveryPrintableCharacter(t *testing.T) {
	for name, font := range map[string][]byte{"regular": liberationsansregular.TTF, "bold": liberationsansbold.TTF} {
		has := glyphs(t, font)
		for r := rune(0); r < 0x20000; r++ {
			if Printable(r) && !has(r) {
				t.Errorf("%s: %U is called printable and has no glyph", name, r)
			}
			if Printable(r) && (unicode.In(r, unicode.Hebrew, unicode.Arabic, unicode.Mn, unicode.Cc, unicode.Cf)) {
				t.Errorf("%s: %U cannot be set by placing it after the one before", name, r)
			}
		}
	}
}

// What a sheet of this trade needs: units, signs, accents of the languages of
// Europe, Greek letters of formulas.
func TestNeededCharactersArePrintable(t *testing.T) {
	for _, r := range "mm°²³≤≥±µ×–—−→…„“”‘’«»€·½ ÄÖÜäöüßÉèêëçñÑåøæŁłŻżŚśĆćĘęĄąŃńÓóŘřŠšČčŽžĐđŐőŰűȘșȚțİıĞğþðαβγδεηθμνπρσφΔΣΩ" + string(Missing) {
		if !Printable(r) {
			t.Errorf("%c (%U) cannot be printed", r, r)
		}
	}
}

func TestCleanShowsWhatIsMissing(t *testing.T) {
	for _, row := range []struct {
		in, want string
		replaced bool
	}{
		{"Gehäuse 5 µm", "Gehäuse 5 µm", false},
		{"tab\tline\nend", "tab line end", false},
		{"hyphen\u2011here", "hyphen-here", false},
		{"bell\a", "bell□", true},
		{"\x02bold\x02", "□bold□", true},
		{"\u202eright to left", "□right to left", true},
		{"\u05e9\u05dc", "□□", true},
		{"emoji 😀", "emoji □", true},
		{"bad \xff", "bad □", true},
		{"e\u0301", "e□", true},
		{"soft\u00adhyphen", "soft□hyphen", true},
	} {
		if got, replaced := Clean(row.in); got != row.want || replaced != row.replaced {
			t.Errorf("%q: %q, %v; want %q, %v", row.in, got, replaced, row.want, row.replaced)
		}
	}
}
