package export_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"ramnest/export"
)

// small mounts a file system of 128 kB; ok is false where the test may not.
func small(t *testing.T) (dir string, ok bool) {
	t.Helper()
	dir = t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=128k"); err != nil {
		t.Logf("no file system can be mounted here (%v): a limit on file size takes its place", err)
		return dir, false
	}
	t.Cleanup(func() { syscall.Unmount(dir, 0) })
	return dir, true
}

// A disk runs full in the second of three files: nothing of the set is left, and what
// was there before is as it was.
func TestFullDisk(t *testing.T) {
	dir, mounted := small(t)
	before := []export.File{text("a.stl", "earlier a"), text("b.stl", "earlier b")}
	if err := export.WriteFiles(dir, before); err != nil {
		t.Fatal(err)
	}
	want := error(syscall.ENOSPC)
	if !mounted {
		want = syscall.EFBIG
		var was syscall.Rlimit
		if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &was); err != nil {
			t.Fatal(err)
		}
		low := was
		low.Cur = 64 << 10
		if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &low); err != nil {
			t.Fatal(err)
		}
		defer syscall.Setrlimit(syscall.RLIMIT_FSIZE, &was)
	}
	big := strings.Repeat("x", 100<<10)
	err := export.WriteFiles(dir, []export.File{text("a.stl", "new"), text("b.stl", big), text("c.stl", big)})
	if !errors.Is(err, want) {
		t.Errorf("got %v, want %v", err, want)
	}
	wantFolder(t, dir, map[string]string{"a.stl": "earlier a", "b.stl": "earlier b"})
}

// A folder that can be read and not written: said, and as it was.
func TestReadOnlyFolder(t *testing.T) {
	dir, mounted := small(t)
	if err := export.WriteFiles(dir, []export.File{text("a.stl", "earlier a")}); err != nil {
		t.Fatal(err)
	}
	want := error(syscall.EROFS)
	if mounted {
		if err := syscall.Mount("", dir, "", syscall.MS_REMOUNT|syscall.MS_RDONLY, ""); err != nil {
			t.Fatal(err)
		}
	} else {
		want = os.ErrPermission
		if err := os.Chmod(dir, 0o555); err != nil {
			t.Fatal(err)
		}
		defer os.Chmod(dir, 0o755)
	}
	for _, into := range []string{dir, filepath.Join(dir, "new")} {
		if err := export.WriteFiles(into, []export.File{text("a.stl", "new")}); !errors.Is(err, want) {
			t.Errorf("%s: got %v, want %v", into, err, want)
		}
	}
	wantFolder(t, dir, map[string]string{"a.stl": "earlier a"})
}
