package export_test

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"ramnest/export"
)

// An input is known under every name that leads to it, and other files are free.
func TestInputsUnderEveryName(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	for _, d := range []string{"jobs/sub", "other", "jobs-like"} {
		if err := os.MkdirAll(at(d), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for _, f := range []string{"jobs/a.yaml", "jobs/b.yaml", "jobs-like/a.yaml"} {
		if err := os.WriteFile(at(f), []byte(f), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := errors.Join(os.Link(at("jobs/a.yaml"), at("other/hard")), os.Symlink("../jobs/a.yaml", at("other/soft")), os.Symlink("soft", at("other/softer")), os.Symlink("jobs", at("same"))); err != nil {
		t.Skip("no links here: ", err)
	}
	var in export.Inputs
	in.Add(at("jobs/a.yaml"))
	in.Add(at("jobs/a.yaml"))
	in.Add(at("is not there"))
	sep := string(filepath.Separator)
	for _, c := range []struct {
		folder, name string
		refused      bool
	}{
		{at("jobs"), "a.yaml", true}, {at("jobs") + sep, "a.yaml", true}, {at("same"), "a.yaml", true}, {at("other"), "hard", true}, {at("other"), "soft", true}, {at("other"), "softer", true},
		{at("jobs") + sep + "sub" + sep + "..", "a.yaml", true}, {at("jobs") + sep + "new" + sep + "..", "a.yaml", true},
		{at("jobs"), "b.yaml", false}, {at("jobs-like"), "a.yaml", false}, {at("other"), "a.yaml", false}, {at("new"), "a.yaml", false}, {at("jobs"), "is not there", false},
		{at("same") + sep + ".." + sep + "other", "a.yaml", false},
	} {
		err := in.Refuse(c.folder, "first", c.name)
		at, ours := errors.AsType[*export.InputError](err)
		if ours != c.refused || ours && at.Output != c.name || err != nil && !ours {
			t.Errorf("%s in %s: %v", c.name, c.folder, err)
		}
		if c.refused {
			write := func(w io.Writer) error { _, err := w.Write([]byte("over it")); return err }
			if err := export.WriteFilesTelling(t.Context(), c.folder, []export.File{{Name: "beside", Write: write}, {Name: c.name, Write: write}}, &in, func(string) {}); err == nil {
				t.Errorf("%s in %s was written", c.name, c.folder)
			}
			if got, err := os.ReadFile(filepath.Join(dir, "jobs", "a.yaml")); err != nil || string(got) != "jobs/a.yaml" {
				t.Fatalf("%s in %s: the input is %q, %v", c.name, c.folder, got, err)
			}
		}
	}
	for _, name := range []string{"jobs/beside", "jobs/new", "other/beside"} {
		if _, err := os.Lstat(at(name)); err == nil {
			t.Errorf("a refused set left %s", name)
		}
	}
	for folder, refused := range map[string]bool{"jobs": true, "same": true, ".": true, "jobs/sub": false, "other": false, "jobs-like": false, "new": false} {
		if _, ours := errors.AsType[*export.InputError](in.RefuseWithin(at(folder))); ours != refused {
			t.Errorf("within %s: refused %v", folder, ours)
		}
	}
	var none *export.Inputs
	if err := errors.Join(none.Refuse(at("jobs"), "a.yaml"), none.RefuseWithin(at("jobs")), new(export.Inputs).Refuse(at("jobs"), "a.yaml")); err != nil {
		t.Errorf("no inputs refuse: %v", err)
	}
}
