package main

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/alecthomas/kong"
)

var (
	block  = regexp.MustCompile(`(?m)^    (go|bash|ramnest) (.*?)(?:\s+#.*)?$`) // a command on a line of its own
	listed = regexp.MustCompile(`(?m)^func ((?:Test|Benchmark|Fuzz|Example)\w*)\(`)
	inline = regexp.MustCompile("`(go|bash|ramnest) ([^`]+)`")
)

// Every command that README and DEVELOPERS name: those of ramnest on a line of their own
// are run, those inside a sentence must have their command and flags, those of go name
// packages and tests that there are, those of bash scripts that parse.
func TestCommandsOfTheReadme(t *testing.T) {
	t.Chdir("../..")
	var seen []string
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for i, pattern := range []*regexp.Regexp{block, inline} {
			for _, m := range pattern.FindAllStringSubmatch(string(text), -1) {
				line := strings.Join(strings.Fields(m[1]+" "+m[2]), " ")
				if slices.Contains(seen, line) {
					continue
				}
				seen = append(seen, line)
				words := strings.Fields(line)
				if rest, ok := strings.CutPrefix(line, "go run ./cmd/ramnest "); ok {
					words = append([]string{"ramnest"}, strings.Fields(rest)...)
				}
				switch {
				case words[0] == "ramnest" && i == 0:
					runLine(t, words[1:])
				case words[0] == "ramnest":
					knownLine(t, words[1:])
				case words[0] == "bash":
					if out, err := exec.Command("bash", "-n", words[1]).CombinedOutput(); err != nil {
						t.Errorf("%s: %s: %v %s", name, line, err, out)
					}
				default:
					goLine(t, words)
				}
			}
		}
	}
	if len(seen) < 10 {
		t.Errorf("only %d commands were found: %q", len(seen), seen)
	}
	t.Logf("%d commands", len(seen))
}

// runLine runs a command of ramnest, its output going to a folder of the test.
func runLine(t *testing.T, args []string) {
	t.Helper()
	out := t.TempDir()
	for i := range args {
		if i > 0 && args[i-1] == "-o" {
			args[i] = filepath.Join(out, args[i])
		}
	}
	var errs strings.Builder
	if code := run(t.Context(), args, nil, io.Discard, &errs); code != exitDone {
		t.Errorf("ramnest %q: code %d, %s", args, code, errs.String())
	}
}

// knownLine holds a command in a sentence to the commands and flags that there are.
func knownLine(t *testing.T, words []string) {
	t.Helper()
	var grammar commands
	parser := kong.Must(&grammar, vars())
	for _, n := range parser.Model.Children {
		if n.Name != words[0] {
			continue
		}
		var flags []string
		for _, g := range n.AllFlags(false) {
			for _, f := range g {
				flags = append(flags, "--"+f.Name, "-"+string(f.Short))
			}
		}
		for _, w := range words[1:] {
			if w, _, _ = strings.Cut(w, "="); strings.HasPrefix(w, "-") && w != "-" && !slices.Contains(flags, w) {
				t.Errorf("ramnest %q: no flag %s", words, w)
			}
		}
		return
	}
	t.Errorf("ramnest %q: no such command", words)
}

// goLine holds a command of go to the packages and tests that there are.
func goLine(t *testing.T, words []string) {
	t.Helper()
	for i, w := range words {
		if path, ok := strings.CutPrefix(w, "./"); ok && path != "..." {
			if _, err := os.Stat(path); err != nil {
				t.Errorf("%q: %v", words, err)
			}
			continue
		}
		if i > 0 && (words[i-1] == "-run" || words[i-1] == "-bench") {
			if w = strings.Trim(w, "'"); w == "xxx" || w == "^$" { // none, on purpose
				continue
			}
			if !named(t, words[2], w) {
				t.Errorf("%q: no test %s in %s", words, w, words[2])
			}
		}
	}
}

// named tells whether a folder has a test, benchmark or example of a name that matches.
func named(t *testing.T, folder, pattern string) bool {
	t.Helper()
	p, err := regexp.Compile(pattern)
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob(filepath.Join(folder, "*_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range listed.FindAllStringSubmatch(string(text), -1) {
			if p.MatchString(m[1]) {
				return true
			}
		}
	}
	return false
}
