package jobfile

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"strings"
	"testing"
)

// Of the code that ships, this package alone uses the YAML library, so that a
// maintained continuation can take its place here. Tests of other packages may
// read their tables of published figures with it.
func TestOnlyThisPackageReadsYAML(t *testing.T) {
	root := os.DirFS("../../..")
	here := 0
	err := fs.WalkDir(root, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, ".go") ||
			strings.HasSuffix(name, "_test.go") && path.Dir(name) != "cmd/internal/jobfile" {
			return err
		}
		src, err := fs.ReadFile(root, name)
		if err != nil {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, src, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range file.Imports {
			switch {
			case !strings.HasPrefix(spec.Path.Value, `"gopkg.in/yaml`):
			case path.Dir(name) == "cmd/internal/jobfile":
				here++
			default:
				t.Errorf("%s imports %s", name, spec.Path.Value)
			}
		}
		return nil
	})
	if err != nil || here == 0 {
		t.Errorf("%d imports found here, %v", here, err)
	}
}
