package batch

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"ramnest/export"
)

func text(name, content string) export.File {
	return export.File{Name: name, Write: func(w io.Writer) error { _, err := io.WriteString(w, content); return err }}
}

// made is a plan of jobs that write their own key into two files, and counts how many
// it works out.
func made(out string, worked *atomic.Int32, keys map[string]string) Plan {
	files := []string{}
	for f := range keys {
		files = append(files, f)
	}
	slices.Sort(files)
	return Plan{Out: out, Files: files, Workers: 2, Ready: func(file string) (string, Work, error) {
		key := keys[file]
		if key == "bad" {
			return "", nil, errors.New(file + ":3: wall: 0 mm; must be above 0\n" + file + ":9: no")
		}
		return key, func() (Row, []export.File, error) {
			worked.Add(1)
			if key == "panic" {
				panic("a state that cannot be")
			}
			return Row{Outcome: Tooling, Job: key}, []export.File{text("nest.stl", key), text("report.json", key+key)}, nil
		}, nil
	}}
}

func run(t *testing.T, p Plan) []Row {
	t.Helper()
	rows, state, err := Run(t.Context(), p)
	if err != nil || state.Done != len(p.Files) {
		t.Fatalf("%d of %d done, %v", state.Done, len(p.Files), err)
	}
	return rows
}

func read(t *testing.T, path ...string) string {
	t.Helper()
	b, err := os.ReadFile(filepath.Join(path...))
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func TestOnlyWhatChangedIsDoneAgain(t *testing.T) {
	t.Parallel()
	out := t.TempDir()
	var worked atomic.Int32
	keys := map[string]string{"a.yaml": "A", "b.yaml": "B", "c.yaml": "C"}
	first := run(t, made(out, &worked, keys))
	for _, c := range []struct {
		name   string
		change func() error
		want   int32
	}{
		{"nothing", func() error { return nil }, 0},
		{"a key", func() error { keys["b.yaml"] = "B2"; return nil }, 1},
		{"a file cut short", func() error { return os.Truncate(filepath.Join(out, "a", "nest.stl"), 0) }, 1},
		{"a file of the same length", func() error { return os.WriteFile(filepath.Join(out, "a", "nest.stl"), []byte("X"), 0o644) }, 1},
		{"a file gone", func() error { return os.Remove(filepath.Join(out, "c", "report.json")) }, 1},
		{"a record gone", func() error { return os.Remove(filepath.Join(out, "c", recordName)) }, 1},
		{"a record that is none", func() error { return os.WriteFile(filepath.Join(out, "c", recordName), []byte("{"), 0o644) }, 1},
		{"a folder gone", func() error { return os.RemoveAll(filepath.Join(out, "b")) }, 1},
	} {
		worked.Store(0)
		if err := c.change(); err != nil {
			t.Fatal(err)
		}
		rows := run(t, made(out, &worked, keys))
		if worked.Load() != c.want {
			t.Errorf("%s: %d jobs were done, want %d", c.name, worked.Load(), c.want)
		}
		if rows[0].Job != first[0].Job || rows[0].Folder != "a" || rows[0].File != "a.yaml" {
			t.Errorf("%s: row %+v, first %+v", c.name, rows[0], first[0])
		}
		for file, key := range keys {
			if got := read(t, out, strings.TrimSuffix(file, ".yaml"), "report.json"); got != key+key {
				t.Errorf("%s: %s holds %q", c.name, file, got)
			}
		}
	}
}

func TestAFailingJobStopsNoOther(t *testing.T) {
	t.Parallel()
	out := t.TempDir()
	var worked atomic.Int32
	keys := map[string]string{"a.yaml": "A", "b.yaml": "B", "c.yaml": "C", "C.yml": "C"}
	run(t, made(out, &worked, keys))
	keys["a.yaml"], keys["b.yaml"] = "bad", "panic"
	rows := run(t, made(out, &worked, keys))
	by := map[string]Row{}
	for _, r := range rows {
		by[r.File] = r
	}
	if r := by["a.yaml"]; r.Outcome != Failed || len(r.Faults) != 2 || !r.Stale || r.Folder != "" {
		t.Errorf("%+v", r)
	}
	if r := by["b.yaml"]; r.Outcome != Broken || !strings.Contains(r.Faults[0], "a state that cannot be, ") || !strings.Contains(r.Faults[0], "run_test.go") {
		t.Errorf("%+v", r)
	}
	// Of two that would share a folder, the first in the order has it.
	if a, b := by["C.yml"], by["c.yaml"]; a.Outcome != Tooling || b.Outcome != Failed || !strings.Contains(b.Faults[0], "its folder would be that of C.yml") {
		t.Errorf("%+v, %+v", a, b)
	}
}

func TestWhatOthersPutThereStays(t *testing.T) {
	t.Parallel()
	out := t.TempDir()
	var worked atomic.Int32
	keys := map[string]string{"a.yaml": "A"}
	run(t, made(out, &worked, keys))
	for name, content := range map[string]string{"note.txt": "mine", "sub/deep.txt": "too"} {
		path := filepath.Join(out, "a", name)
		if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.WriteFile(path, []byte(content), 0o644)); err != nil {
			t.Fatal(err)
		}
	}
	keys["a.yaml"] = "A2"
	run(t, made(out, &worked, keys))
	if read(t, out, "a", "note.txt") != "mine" || read(t, out, "a", "sub", "deep.txt") != "too" || read(t, out, "a", "nest.stl") != "A2" {
		t.Error("files of others went, or the new ones did not come")
	}
	// What stands in the place of the folder and is none is left alone.
	keys["b.yaml"] = "B"
	if err := os.WriteFile(filepath.Join(out, "b"), []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	rows := run(t, made(out, &worked, keys))
	if rows[1].Outcome != Failed || read(t, out, "b") != "mine" {
		t.Errorf("%+v", rows[1])
	}
}

// A run can be killed between any two of its renames.
func TestEveryMomentIsTakenUp(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name string
		at   func(out string) error // from folder a, whole, of key A
		want int32
	}{
		{"new files begun", func(out string) error {
			return os.CopyFS(filepath.Join(out, newPrefix+"a"), os.DirFS(filepath.Join(out, "a")))
		}, 0},
		{"old files put aside", func(out string) error {
			return errors.Join(os.CopyFS(filepath.Join(out, newPrefix+"a"), os.DirFS(filepath.Join(out, "a"))), os.Rename(filepath.Join(out, "a"), filepath.Join(out, oldPrefix+"a")))
		}, 0},
		{"new files there, old ones not yet gone", func(out string) error {
			aside := filepath.Join(out, oldPrefix+"a")
			return errors.Join(os.CopyFS(aside, os.DirFS(filepath.Join(out, "a"))), os.WriteFile(filepath.Join(aside, "note.txt"), []byte("mine"), 0o644))
		}, 0},
		{"old ones half gone", func(out string) error {
			aside := filepath.Join(out, oldPrefix+"a")
			return errors.Join(os.CopyFS(aside, os.DirFS(filepath.Join(out, "a"))), os.Remove(filepath.Join(aside, "nest.stl")), os.WriteFile(filepath.Join(aside, "note.txt"), []byte("mine"), 0o644))
		}, 0},
		{"an empty folder aside", func(out string) error { return os.Mkdir(filepath.Join(out, oldPrefix+"a"), 0o755) }, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			out := t.TempDir()
			var worked atomic.Int32
			keys := map[string]string{"a.yaml": "A"}
			run(t, made(out, &worked, keys))
			if err := c.at(out); err != nil {
				t.Fatal(err)
			}
			worked.Store(0)
			run(t, made(out, &worked, keys))
			if worked.Load() != c.want || read(t, out, "a", "nest.stl") != "A" {
				t.Errorf("%d jobs were done, want %d", worked.Load(), c.want)
			}
			entries, err := os.ReadDir(out)
			if err != nil || len(entries) != 2 {
				t.Errorf("left over: %v, %v", entries, err)
			}
			if strings.HasPrefix(c.name, "new files there") || strings.HasPrefix(c.name, "old ones") {
				if read(t, out, "a", "note.txt") != "mine" {
					t.Error("a file of somebody else is lost")
				}
			}
		})
	}
}

func TestTwoRunsKeepApart(t *testing.T) {
	t.Parallel()
	out := t.TempDir()
	f, err := openFolder(out, nil)
	if err != nil {
		t.Fatal(err)
	}
	var worked atomic.Int32
	if _, _, err := Run(t.Context(), made(out, &worked, map[string]string{"a.yaml": "A"})); !errors.Is(err, ErrInUse) {
		t.Errorf("second run: %v", err)
	}
	f.close()
	run(t, made(out, &worked, map[string]string{"a.yaml": "A"}))
}

// Jobs in hand when the context ends are dropped: they count neither as done nor as
// failed, leave nothing behind, and are done by the next run; the others are kept.
func TestStoppedWithJobsInHand(t *testing.T) {
	t.Parallel()
	out := t.TempDir()
	ctx, stop := context.WithCancel(t.Context())
	keys := map[string]string{}
	for i := range 40 {
		keys[fmt.Sprintf("j%02d.yaml", i)] = fmt.Sprint(i)
	}
	var worked atomic.Int32
	p := made(out, &worked, keys)
	plain := p.Ready
	p.Ready = func(file string) (string, Work, error) {
		key, work, err := plain(file)
		if worked.Load() < 5 {
			return key, work, err
		}
		return key, func() (Row, []export.File, error) {
			stop()
			<-ctx.Done()
			return Row{}, nil, ctx.Err()
		}, nil
	}
	rows, state, err := Run(ctx, p)
	if !errors.Is(err, ErrStopped) || rows != nil || state.Failed != 0 || state.Done > 6 {
		t.Fatalf("%+v, %v", state, err)
	}
	entries, err := os.ReadDir(out)
	if err != nil {
		t.Fatal(err)
	}
	folders := 0
	for _, e := range entries {
		if e.IsDir() {
			folders++
		}
	}
	if folders != state.Done {
		t.Errorf("%d folders of %d jobs done: %v", folders, state.Done, entries)
	}
	p.Ready = plain
	worked.Store(0)
	run(t, p)
	if worked.Load() != int32(40-state.Done) {
		t.Errorf("%d done before, %d again", state.Done, worked.Load())
	}
}

func TestAFolderThatCannotBe(t *testing.T) {
	t.Parallel()
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if _, _, err := Run(t.Context(), Plan{Out: file}); err == nil {
		t.Error("a file was taken for a folder")
	}
}
