package workinstructions

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"ramnest/export/page/pagetest"
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
	w.pages = pagetest.Lines(tb, w.file)
	return w
}

// flat puts a text on one line, as a reader sees it.
func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

// validated has the files read by pdfcpu in its strict mode.
func validated(tb testing.TB, paths ...string) {
	tb.Helper()
	for _, p := range paths {
		file, err := os.ReadFile(p)
		if err != nil {
			tb.Fatal(err)
		}
		pagetest.Validate(tb, file)
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
		runs := 6
		if os.Getenv("RAMNEST_LONG") != "" {
			runs = 20
		}
		for i := range runs {
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
