package jobfile

import (
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"
)

func TestFileSize(t *testing.T) {
	t.Parallel()
	pad := func(n int) string { return "job: x\n" + strings.Repeat("#", n-8) + "\n" }
	for _, c := range []struct{ size, limit, want int }{
		{DefaultMaxBytes, 0, 0}, {DefaultMaxBytes + 1, 0, 1}, {DefaultMaxBytes + 1, DefaultMaxBytes + 1, 0}, {100, 99, 1}, {100, 100, 0},
	} {
		var s sample
		_, p := Decode("job.yaml", []byte(pad(c.size)), &s, Options{MaxBytes: c.limit})
		if len(p) != c.want {
			t.Errorf("%d bytes, limit %d: got %v, want %d problems", c.size, c.limit, p, c.want)
		}
	}
}

func TestAliasesMayRepeatUpToTheLimit(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ entries, uses, want int }{{99, 100, 0}, {100, 100, 1}} {
		// Each use copies the list and its entries.
		list := "&a [" + strings.TrimSuffix(strings.Repeat("1, ", c.entries), ", ") + "]"
		type lists struct {
			Lists [][]float64 `yaml:"lists" unit:"mm"`
		}
		var v lists
		text := "lists:\n  - " + list + "\n" + strings.Repeat("  - *a\n", c.uses)
		_, p := Decode("job.yaml", []byte(text), &v, Options{})
		if len(p) != c.want || c.want == 0 && len(v.Lists) != c.uses+1 || c.want == 1 && (p[0].Problem != "aliases repeat too much" || p[0].Line != c.uses+2) {
			t.Errorf("%d aliases to a list of %d: got %v and %d lists, want %d problems", c.uses, c.entries, p, len(v.Lists), c.want)
		}
	}
}

func TestDepthLimit(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		depth int // of the file: the top is 1
		want  string
	}{{40, "is not a section of keys"}, {41, "sections are nested too deep"}} {
		lists := c.depth - 1
		_, _, p := decoded("job: x\nparts: " + strings.Repeat("[", lists) + "1" + strings.Repeat("]", lists) + "\n")
		if len(p) != 1 || p[0].Problem != c.want || p[0].Line != 2 {
			t.Errorf("depth %d: got %v, want line 2, %s", c.depth, p, c.want)
		}
	}
}

func TestTooManyFaultsAreCounted(t *testing.T) {
	t.Parallel()
	var text strings.Builder
	text.WriteString("job: x\n")
	for i := range 1000 {
		fmt.Fprintf(&text, "xx%d: 1\n", i)
	}
	_, _, p := decoded(text.String())
	if len(p) != maxListed+1 || p[maxListed].String() != "job.yaml: 800 more faults are not listed" || p[0].Line != 2 || p[199].Line != 201 {
		t.Errorf("got %d problems, first %v, last %v", len(p), p[0], p[len(p)-1])
	}
}

// Files of a quarter of the largest size that are made to hurt: bounded time.
func TestHostileFilesStayCheap(t *testing.T) {
	const size = DefaultMaxBytes / 4
	fill := func(head, body, tail string) string {
		return head + strings.Repeat(body, (size-len(head)-len(tail))/len(body)) + tail
	}
	var keys strings.Builder
	for i := 0; keys.Len() < size-20; i++ {
		fmt.Fprintf(&keys, "k%d: 1\n", i)
	}
	bomb := "job: x\na0: &a0 [x, x, x, x, x, x, x, x, x]\n"
	for i := 1; i < 30; i++ {
		bomb += fmt.Sprintf("a%d: &a%d [%s*a%d]\n", i, i, strings.Repeat(fmt.Sprintf("*a%d, ", i-1), 8), i-1)
	}
	for _, c := range []struct{ name, text string }{
		{"points", fill("job: x\noutline: [", "[1,2],", "[1,2]]\n")},
		{"inches", fill("units: in\njob: x\nsizes: [", "0.1,", "1]\n")},
		{"empty entries", fill("job: x\nsizes: [", "a,", "a]\n")},
		{"unknown keys", keys.String()},
		{"one double key", fill("job: x\n", "wall: 1\n", "")},
		{"alias bomb", bomb},
		{"aliases", fill("job: &a x\nsizes: [", "*a,", "*a]\n")},
		{"long words", fill("job: x\n", strings.Repeat("w", 1000)+": 1\n", "")},
		{"one long key", fill("job: x\n", "w", ": 1\n")},
		{"one long text", fill("job: ", "w", "\n")},
		{"one long number", fill("job: x\nwall: ", "3", "\n")},
		{"open brackets", fill("job: x\nsizes: ", "[", "")},
		{"fault at the end", fill("job: x\n", "# \n", "wall: [\n")},
		{"fault at the end of a list", fill("job: x\nsizes:\n", "- 1\n", " x: [\n")},
		{"quote open from the start", fill("job: \"", "w\n", "")},
		{"indents", fill("job: x\n", "? ", "")},
		{"dashes", fill("", "- ", "")},
		{"comments", fill("job: x\n", "#\n", "")},
		{"spaces", fill("job: x\n", " ", "")},
		{"documents", fill("job: x\n", "---\n", "")},
		{"bad bytes", fill("job: x\n", "\xff\n", "")},
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		start := time.Now()
		_, _, p := decoded(c.text)
		took := time.Since(start)
		runtime.ReadMemStats(&after)
		allocated := float64(after.TotalAlloc-before.TotalAlloc) / (1 << 20)
		t.Logf("%-28s %4d problems %8.0f ms %7.0f MiB allocated in all", c.name, len(p), took.Seconds()*1000, allocated)
		if took > 20*time.Second || len(p) > maxListed+1 {
			t.Errorf("%s: took %v, %d problems", c.name, took, len(p))
		}
	}
}
