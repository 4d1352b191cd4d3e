package main

import (
	"go/ast"
	"go/types"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// Whatever the time zone, the language, the home and the number of threads of a machine,
// every command writes and prints the same bytes. The runs are seconds apart, so that a
// clock which found its way into a file would show as well.
func TestSurroundings(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	if err := os.CopyFS(filepath.Join(dir, "jobs"), os.DirFS("../../testdata/jobs")); err != nil {
		t.Fatal(err)
	}
	commands := [][]string{
		{"make", "jobs/rim-cap-inch.yaml", "-o", "out"},
		{"make", "jobs/snap-case.yaml", "-o", "out", "--set", "language=de"},
		{"force", "jobs/rim-cap.yaml", "-o", "out"},
		{"quote", "jobs/rim-cap.yaml", "--card", "jobs/shop/rates.yaml", "-o", "out/quote"},
		{"calibrate", "jobs/rim-cap.yaml", "jobs/shop/measured.csv", "-o", "out/shop.yaml"},
		{"preview", "jobs/snap-case.yaml", "-o", "out/preview.html"},
		{"drawing", "jobs/snap-case.yaml", "-o", "out/drawing.pdf"},
		{"drawing", "jobs/snap-case.yaml", "--format", "dxf", "-o", "out/drawing.dxf"},
		{"inspect", "jobs/parts/snapcase-lower.stl", "--picture", "out/part.png", "--json"},
	}
	var want map[string]string
	surroundings := [][]string{
		{"TZ=UTC", "LC_ALL=C", "GOMAXPROCS=2"},
		{"TZ=Pacific/Kiritimati", "LC_ALL=tr_TR.UTF-8", "LANG=tr_TR.UTF-8", "HOME=/nowhere", "GOMAXPROCS=1"},
		{"TZ=America/St_Johns", "LC_ALL=", "LANG=de_DE@euro", "LC_NUMERIC=de_DE.UTF-8", "GOMAXPROCS=4"},
		{"TZ=:/nowhere/at/all", "LC_ALL=ar_EG.UTF-8", "LANG=xx_XX.nonsense", "HOME=/nowhere", "GOGC=10"},
	}
	if os.Getenv("RAMNEST_LONG") == "" {
		surroundings = surroundings[:2]
	}
	for _, env := range surroundings {
		out := filepath.Join(dir, "out")
		if err := os.RemoveAll(out); err != nil {
			t.Fatal(err)
		}
		var said strings.Builder
		for _, args := range commands {
			cmd := exec.CommandContext(t.Context(), "ramnest", args...)
			cmd.Dir = dir
			cmd.Env = append(cmd.Environ(), env...)
			cmd.Stdout = &said
			var errs strings.Builder
			cmd.Stderr = &errs
			if err := cmd.Run(); err != nil {
				t.Fatalf("%v: %v: %v: %s", env, args, err, &errs)
			}
		}
		got := tree(t, out)
		got["what was said"] = said.String()
		if want == nil {
			want = got
			if len(want) < 20 {
				t.Errorf("only %d files", len(want))
			}
			continue
		}
		compare(t, strings.Join(env, " "), got, want)
	}
}

// The clock is read where waiting is bounded, and nowhere else: dates are the job's.
func TestNobodyReadsTheClock(t *testing.T) {
	t.Parallel()
	waiting := map[string]bool{"export/lock.go": true}
	found := 0
	for _, p := range checked(t, "ramnest/...") {
		for _, tree := range p.trees {
			ast.Inspect(tree, func(n ast.Node) bool {
				id, ok := n.(*ast.Ident)
				if !ok {
					return true
				}
				o := p.info.Uses[id]
				if o == nil || o.Pkg() == nil {
					return true
				}
				f, ok := o.(*types.Func)
				clock := ok && o.Pkg().Path() == "time" && f.Signature().Recv() == nil && (o.Name() == "Now" || o.Name() == "Since" || o.Name() == "Until")
				surroundings := o.Pkg().Path() == "time" && o.Name() == "Local" || o.Pkg().Path() == "os" && (o.Name() == "Hostname" || o.Name() == "UserHomeDir") || o.Pkg().Path() == "os/user"
				at := p.files.Position(id.Pos())
				if file := filepath.ToSlash(at.Filename); clock || surroundings {
					allowed := false
					for name := range waiting {
						allowed = allowed || strings.HasSuffix(file, "/"+name)
					}
					if allowed {
						found++
					} else {
						t.Errorf("%s: %s.%s", at, o.Pkg().Path(), o.Name())
					}
				}
				return true
			})
		}
	}
	if found == 0 {
		t.Error("the clock of export/lock.go was not found")
	}
}
