package workinstructions

import (
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
)

// The PDF library is used from one file only, so that a maintained continuation
// can take its place; and this package uses no room but those below it.
func TestImports(t *testing.T) {
	allowed := []string{"ramnest/export/picture", "ramnest/force", "ramnest/force/fault", "ramnest/force/method", "ramnest/force/planar", "ramnest/force/unit", "ramnest/force/warning", "ramnest/export/chart", "ramnest/export/page", "ramnest/work-instructions/catalogue"}
	var users []string
	for _, pattern := range []string{"*.go", "../export/page/*.go"} {
		files, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range files {
			if ok, _ := filepath.Match("*_test.go", filepath.Base(name)); ok {
				continue
			}
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
			if err != nil {
				t.Fatal(err)
			}
			for _, i := range f.Imports {
				path, err := strconv.Unquote(i.Path.Value)
				if err != nil {
					t.Fatal(err)
				}
				if path == "github.com/jung-kurt/gofpdf" {
					users = append(users, filepath.ToSlash(name))
				}
				if len(path) > 8 && path[:8] == "ramnest/" && !slices.Contains(allowed, path) {
					t.Errorf("%s imports %s", name, path)
				}
			}
		}
	}
	if !slices.Equal(users, []string{"../export/page/pdf.go"}) {
		t.Errorf("the PDF library is imported by %v; want export/page/pdf.go alone", users)
	}
}
