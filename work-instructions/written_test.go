package workinstructions

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
)

// written is a PDF that a test has made, and the text of its pages.
type written struct {
	file  []byte
	path  string
	pages []string
}

// write makes the PDF of a sheet and keeps it among the artifacts of the test.
func write(tb testing.TB, name string, s Sheet) written {
	tb.Helper()
	var out bytes.Buffer
	if err := Write(&out, s); err != nil {
		tb.Fatalf("%s: %v", name, err)
	}
	w := written{file: out.Bytes()}
	dir := tb.TempDir()
	if t, ok := tb.(*testing.T); ok {
		dir = t.ArtifactDir()
	}
	w.path = filepath.Join(dir, name+".pdf")
	if err := os.WriteFile(w.path, w.file, 0o644); err != nil {
		tb.Fatal(err)
	}
	w.pages = pageTexts(tb, w.file)
	return w
}

var textShown = regexp.MustCompile(`(?s)\(((?:[^()\\]|\\.)*)\) ?Tj`)

// pageTexts reads the text of each page out of its content stream: strings of
// UTF-16 as this font's encoding has them, one a line. It knows just enough of
// the format for that, and nothing of how this package writes it.
func pageTexts(tb testing.TB, file []byte) []string {
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

// flat puts a text on one line, as a reader sees it.
func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

// validated has the files read by pdfcpu in its strict mode.
func validated(tb testing.TB, paths ...string) {
	tb.Helper()
	api.DisableConfigDir()
	for _, p := range paths {
		conf := model.NewDefaultConfiguration()
		conf.ValidationMode = model.ValidationStrict
		if err := api.ValidateFile(p, conf); err != nil {
			tb.Errorf("%s: %v", filepath.Base(p), err)
		}
	}
}

func TestEverySheetIsValid(t *testing.T) {
	var paths []string
	for name, s := range variants(t) {
		w := write(t, name, s)
		paths = append(paths, w.path)
		t.Logf("%s: %d pages, %d bytes", name, len(w.pages), len(w.file))
		n := len(w.pages)
		job := flat(s.Job)
		for i, text := range w.pages {
			line := flat(text)
			for _, want := range []string{fmt.Sprintf("%d of %d", i+1, n), s.Revision, s.Date.Format("2006-01-02"), s.Fingerprint, s.Tool} {
				if !strings.Contains(line, want) {
					t.Errorf("%s, page %d: no %q", name, i+1, want)
				}
			}
			if !strings.Contains(strings.ReplaceAll(line, " ", ""), job) {
				t.Errorf("%s, page %d: no job number", name, i+1)
			}
			if s.Override != "" && !strings.Contains(line, s.Override) {
				t.Errorf("%s, page %d: no reason for the override", name, i+1)
			}
			if s.Override == "" && strings.Contains(line, "OVERRIDE") {
				t.Errorf("%s, page %d: an override that nobody gave", name, i+1)
			}
		}
	}
	validated(t, paths...)
}

// A second reader, where there is one, finds the same words on the same pages.
func TestPopplerReadsTheSameText(t *testing.T) {
	w := write(t, "press", demoSheet(t))
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Log("pdftotext is not here; the file is checked by pdfcpu only")
		validated(t, w.path)
		return
	}
	for i, text := range w.pages {
		out, err := exec.Command(tool, "-f", fmt.Sprint(i+1), "-l", fmt.Sprint(i+1), "-raw", "-enc", "UTF-8", w.path, "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		have := strings.Join(strings.Fields(string(out)), "")
		for line := range strings.SplitSeq(text, "\n") {
			if want := strings.Join(strings.Fields(line), ""); !strings.Contains(have, want) {
				t.Errorf("page %d: %q is not in the text that pdftotext finds", i+1, line)
			}
		}
	}
}

func TestSameSheetSameBytes(t *testing.T) {
	for name, s := range map[string]Sheet{"press": demoSheet(t), "two": twoStepSheet(t), "hostile": hostileSheet(t)} {
		var first []byte
		for i := range 20 {
			before := runtime.GOMAXPROCS(1 + i%4)
			var out bytes.Buffer
			err := Write(&out, s)
			runtime.GOMAXPROCS(before)
			if err != nil {
				t.Fatal(err)
			}
			if i == 0 {
				first = out.Bytes()
			} else if !bytes.Equal(first, out.Bytes()) {
				t.Fatalf("%s: run %d gives other bytes", name, i+1)
			}
		}
	}
}

func TestFileStaysSmall(t *testing.T) {
	if n := len(write(t, "press", demoSheet(t)).file); n > 300_000 {
		t.Errorf("%d bytes with ten pictures; want less than 300 kB", n)
	}
}

func BenchmarkWrite(b *testing.B) {
	bare := demoSheet(b)
	bare.Parts[0].Picture, bare.Parts[1].Picture, bare.Tooling[0].Picture, bare.Tooling[1].Picture = nil, nil, nil, nil
	bare.Steps[0].Pictures = Pictures{}
	for _, row := range []struct {
		name  string
		sheet Sheet
	}{{"pictures=10", demoSheet(b)}, {"pictures=0", bare}} {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			n := 0
			for b.Loop() {
				var out bytes.Buffer
				if err := Write(&out, row.sheet); err != nil {
					b.Fatal(err)
				}
				n = out.Len()
			}
			b.ReportMetric(float64(n), "bytes")
		})
	}
}
