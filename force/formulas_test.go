package force

import (
	"cmp"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// TestEveryFormulaIsListed: what Explain names is in the list, what is in the list
// some job uses, and its datasheet exists and names a source.
func TestEveryFormulaIsListed(t *testing.T) {
	listed := map[string]Formula{}
	for _, f := range Formulas() {
		if listed[f.ID].ID != "" || f.Gives == "" {
			t.Errorf("%s is listed twice or gives nothing", f.ID)
		}
		listed[f.ID] = f
	}
	if !slices.IsSortedFunc(Formulas(), func(a, b Formula) int { return cmp.Compare(a.ID, b.ID) }) {
		t.Error("the list is out of order")
	}
	used := map[string]bool{}
	for i, a := range append(variants(), printedJobs()...) {
		if i == 0 {
			a.Service = &Service{Keeps: Keeps{Set: ptr(0.9)}}
		}
		for _, l := range Explain(a, a.Latches[0].ID) {
			if l.ID != "" && listed[l.ID].ID == "" {
				t.Errorf("%s is not listed", l.ID)
			}
			used[l.ID] = true
		}
		for _, id := range mustAnalyse(t, a).Latches[0].Formulas {
			if !used[id] {
				t.Errorf("the result names %s, the explanation does not", id)
			}
		}
	}
	sheets := datasheets(t)
	for _, f := range Formulas() {
		if !used[f.ID] {
			t.Errorf("no job uses %s", f.ID)
		}
		if f.In != "" && !strings.Contains(strings.ToLower(sheets[f.In]), "source") {
			t.Errorf("%s: the comment of %s names no source", f.ID, f.In)
		}
	}
}

// datasheets gives the comments of the package's functions by name.
func datasheets(t *testing.T) map[string]string {
	t.Helper()
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]string{}
	for _, name := range names {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok {
				out[fn.Name.Name] = fn.Doc.Text()
			}
		}
	}
	return out
}
