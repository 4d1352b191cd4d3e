// Package pagetest reads PDF files back, for tests: the text of each page, and a strict
// validation by a reader that is not ours.
package pagetest

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

var textShown = regexp.MustCompile(`(?s)\(((?:[^()\\]|\\.)*)\) ?Tj`)

// Texts reads the text of each page, words parted by one space.
func Texts(tb testing.TB, file []byte) []string {
	tb.Helper()
	out := Lines(tb, file)
	for i, text := range out {
		out[i] = strings.Join(strings.Fields(text), " ")
	}
	return out
}

// Lines reads the text of each page out of its content stream, one string that is shown
// a line. It knows just enough of the format for that, and nothing of how package page
// writes it.
func Lines(tb testing.TB, file []byte) []string {
	tb.Helper()
	var out []string
	for part := range bytes.SplitSeq(file, []byte("\nendstream")) {
		at := bytes.LastIndex(part, []byte("stream\n"))
		if at < 0 {
			continue
		}
		z, err := zlib.NewReader(bytes.NewReader(part[at+len("stream\n"):]))
		if err != nil {
			continue
		}
		content, err := io.ReadAll(z)
		if err != nil || !bytes.Contains(content, []byte("BT ")) {
			continue
		}
		var lines []string
		for _, m := range textShown.FindAllSubmatch(content, -1) {
			lines = append(lines, decode(m[1]))
		}
		out = append(out, strings.Join(lines, "\n"))
	}
	if len(out) == 0 {
		tb.Fatal("no page with text")
	}
	return out
}

// decode undoes the escapes of a string and reads it as UTF-16.
func decode(s []byte) string {
	var raw []byte
	for i := 0; i < len(s); i++ {
		if s[i] == '\\' {
			i++
			if s[i] == 'r' {
				raw = append(raw, '\r')
				continue
			}
		}
		raw = append(raw, s[i])
	}
	var u []uint16
	for i := 0; i+1 < len(raw); i += 2 {
		u = append(u, uint16(raw[i])<<8|uint16(raw[i+1]))
	}
	return string(utf16.Decode(u))
}

// Validate has a file read by pdfcpu in its strict mode.
func Validate(tb testing.TB, file []byte) {
	tb.Helper()
	api.DisableConfigDir()
	conf := model.NewDefaultConfiguration()
	conf.ValidationMode = model.ValidationStrict
	if err := api.Validate(bytes.NewReader(file), conf); err != nil {
		tb.Errorf("pdfcpu: %v", err)
	}
}
