package export_test

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"ramnest/export"
)

func text(name, content string) export.File {
	return export.File{Name: name, Write: func(w io.Writer) error {
		_, err := io.WriteString(w, content)
		return err
	}}
}

func failing(name string, err error) export.File {
	return export.File{Name: name, Write: func(w io.Writer) error {
		io.WriteString(w, "half a fi")
		return err
	}}
}

// folder reads everything in a folder, hidden files too.
func folder(t *testing.T, dir string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	held := make(map[string]string)
	for _, e := range entries {
		data := []byte("a folder")
		if !e.IsDir() {
			if data, err = os.ReadFile(filepath.Join(dir, e.Name())); err != nil {
				t.Fatal(err)
			}
		}
		held[e.Name()] = string(data)
	}
	return held
}

func wantFolder(t *testing.T, dir string, want map[string]string) {
	t.Helper()
	if got := folder(t, dir); fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("folder holds %q, want %q", got, want)
	}
}

func TestWriteFilesWritesTheWholeSet(t *testing.T) {
	t.Parallel()
	dir := filepath.Join(t.TempDir(), "jobs", "out")
	if err := export.WriteFiles(dir, []export.File{text("a.stl", "A"), text("b.json", "B")}); err != nil {
		t.Fatal(err)
	}
	wantFolder(t, dir, map[string]string{"a.stl": "A", "b.json": "B"})
	if err := export.WriteFiles(dir, []export.File{text("a.stl", "A2"), text("c.csv", "C")}); err != nil {
		t.Fatal(err)
	}
	wantFolder(t, dir, map[string]string{"a.stl": "A2", "b.json": "B", "c.csv": "C"})
}

func TestWriteFilesLeavesEarlierOutputAlone(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	before := []export.File{text("a.stl", "earlier A"), text("b.stl", "earlier B")}
	if err := export.WriteFiles(dir, before); err != nil {
		t.Fatal(err)
	}
	noRoom := errors.New("no room")
	err := export.WriteFiles(dir, []export.File{text("a.stl", "new"), text("new.stl", "new"), failing("b.stl", noRoom)})
	if !errors.Is(err, noRoom) || !strings.Contains(err.Error(), `"b.stl"`) {
		t.Errorf("got error %v, want the writer's own with the file's name", err)
	}
	wantFolder(t, dir, map[string]string{"a.stl": "earlier A", "b.stl": "earlier B"})
}

func TestWriteFilesUndoesRenames(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	if err := export.WriteFiles(dir, []export.File{text("a.stl", "earlier A")}); err != nil {
		t.Fatal(err)
	}
	// The last file turns the target of the one before it into a folder after
	// that target was looked at, so the rename fails half way through the set.
	spoiler := export.File{Name: "d.stl", Write: func(io.Writer) error {
		return os.MkdirAll(filepath.Join(dir, "c.stl", "full"), 0o755)
	}}
	err := export.WriteFiles(dir, []export.File{text("a.stl", "new A"), text("b.stl", "new B"), text("c.stl", "new C"), spoiler})
	if err == nil || !strings.Contains(err.Error(), `"c.stl"`) {
		t.Errorf("got error %v, want one about c.stl", err)
	}
	wantFolder(t, dir, map[string]string{"a.stl": "earlier A", "c.stl": "a folder"})
}

func TestWriteFilesCleansUpAfterPanic(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	func() {
		defer func() {
			if recover() == nil {
				t.Error("the panic of a writer was swallowed")
			}
		}()
		export.WriteFiles(dir, []export.File{text("a.stl", "A"), {Name: "b.stl", Write: func(io.Writer) error { panic("b") }}})
	}()
	wantFolder(t, dir, map[string]string{})
}

func TestWriteFilesRemovesFoldersItMade(t *testing.T) {
	t.Parallel()
	top := t.TempDir()
	err := export.WriteFiles(filepath.Join(top, "x", "y"), []export.File{failing("a", errors.New("stop"))})
	if err == nil {
		t.Error("no error from a failing writer")
	}
	wantFolder(t, top, map[string]string{})
}

func TestWriteFilesReplacesLinkNotItsTarget(t *testing.T) {
	t.Parallel()
	outside := filepath.Join(t.TempDir(), "outside.txt")
	if err := os.WriteFile(outside, []byte("untouched"), 0o644); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.Symlink(outside, filepath.Join(dir, "a.stl")); err != nil {
		t.Fatal(err)
	}
	if err := export.WriteFiles(dir, []export.File{text("a.stl", "A")}); err != nil {
		t.Fatal(err)
	}
	wantFolder(t, dir, map[string]string{"a.stl": "A"})
	if data, _ := os.ReadFile(outside); string(data) != "untouched" {
		t.Errorf("file outside the folder now holds %q", data)
	}
}

func TestWriteFilesRefusesNames(t *testing.T) {
	t.Parallel()
	for _, name := range []string{
		"", ".", "..", "../a", "a/b", `..\a`, "/etc/a", "c:a", "a?", "a\nb", "a.", "a ", "\xff", strings.Repeat("n", 300),
	} {
		dir := t.TempDir()
		err := export.WriteFiles(dir, []export.File{text("fine", "1"), text(name, "2")})
		if _, ok := errors.AsType[*export.NameError](err); !ok {
			t.Errorf("name %q: got error %v, want a *NameError", name, err)
		}
		wantFolder(t, dir, map[string]string{})
	}
}

func TestWriteFilesRefusesPlaces(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	occupied := filepath.Join(dir, "file")
	if err := os.WriteFile(occupied, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "sub"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		dir   string
		files []export.File
		want  string
	}{
		{"", []export.File{text("a", "A")}, "has no name"},
		{occupied, []export.File{text("a", "A")}, "is a file, not a folder"},
		{filepath.Join(occupied, "below"), []export.File{text("a", "A")}, "file"},
		{dir, []export.File{text("sub", "A")}, "is a folder already"},
		{dir, []export.File{text("A.stl", "A"), text("a.STL", "A")}, "occurs twice"},
	} {
		err := export.WriteFiles(c.dir, c.files)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q %v: got error %v, want %q in it", c.dir, c.files[0].Name, err, c.want)
		}
	}
	names := []string{}
	for name := range folder(t, dir) {
		names = append(names, name)
	}
	slices.Sort(names)
	if want := []string{"file", "sub"}; !slices.Equal(names, want) {
		t.Errorf("folder holds %q, want %q", names, want)
	}
}
