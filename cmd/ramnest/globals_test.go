package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// changing lists the variables of packages that are meant to change after they were
// initialised, with the reason.
var changing = map[string]string{
	"ramnest/fixture/solid.idleTriangulators": "a pool of buffers, readied before each use; TestManyJobsAtOnce compares what comes out",
	"ramnest/fixture/solid.idleSurfaces":      "as solid.idleTriangulators",
}

// readOnly lists those that a function is given the address of, and only reads.
var readOnly = map[string]string{
	"ramnest/force.mainRanges":                   "sliced to be searched",
	"ramnest/force.fineRanges":                   "sliced to be searched",
	"ramnest/force.torsionGoverns":               "sliced to be joined to others, which copies",
	"ramnest/force.commonInputs":                 "sliced up to its capacity, so that to append is to copy",
	"ramnest/fixture/envelope/meshfile.identity": "the map of what nothing holds; maps are multiplied into new ones",
}

// No variable of a package that others may import changes after it was initialised, so
// that nothing one job does shows in another, however many run at once.
func TestNoStateBetweenJobs(t *testing.T) {
	t.Parallel()
	known := map[string]bool{}
	packages := 0
	for _, p := range checked(t, "ramnest/...") {
		public := !strings.HasPrefix(p.path, "ramnest/cmd/")
		if public {
			packages++
		}
		for _, w := range p.writes() {
			if !strings.HasPrefix(w.name, "ramnest/") || strings.HasPrefix(w.name, "ramnest/cmd/") {
				continue
			}
			known[w.name] = true
			if changing[w.name] == "" && (readOnly[w.name] == "" || strings.Contains(w.how, "assigned") || strings.Contains(w.how, "counted")) {
				t.Errorf("%s: %s %s", p.files.Position(w.at), w.name, w.how)
			}
		}
	}
	if packages < 15 {
		t.Errorf("only %d packages were looked at", packages)
	}
	for _, excused := range []map[string]string{changing, readOnly} {
		for name := range excused {
			if !known[name] {
				t.Errorf("%s is excused and does not need it", name)
			}
		}
	}
}

// What the test above looks for is found, and nothing else is.
func TestWritesAreFound(t *testing.T) {
	t.Parallel()
	const head = "package p\nimport (\"sync\"; \"slices\")\nvar _ sync.Mutex; var _ = slices.Sort[[]int]\ntype s struct{ f int; a [3]int; p *int }\nfunc (x *s) set() { x.f = 1 }\nfunc (x s) get() int { return x.f }\nfunc use(...any) {}\n" +
		"var v s; var n int; var m = map[string]int{}; var l = []int{1}; var mu sync.Mutex; var arr [3]int; var ptr = &s{}; var fn func()\n"
	for body, want := range map[string]int{
		"n = 1": 1, "n++": 1, "n += 2": 1, "v.f = 1": 1, "v.a[1] = 2": 1, "m[\"a\"] = 1": 1, "delete(m, \"a\")": 1, "clear(l)": 1, "l[0] = 1": 1, "(n) = 1": 1,
		"l = append(l, 1)": 1, "_ = append(l, 1)": 1, "copy(l, l)": 1, "mu.Lock()": 1, "v.set()": 1, "p := &n; *p = 1": 1, "use(&v.f)": 1, "slices.Sort(l)": 1, "fn = nil": 1,
		"for n = range 3 {}": 1, "for _, l[0] = range l {}": 1, "ptr.f = 1": 1, "*ptr = s{}": 1, "ptr.set()": 1, "q := ptr; q.f = 1": 1, "k := l[:1]; k[0] = 1": 1,
		"k := m; j := k; j[\"a\"] = 1": 1, "func() { n = 1 }()": 1, "x := arr[:]; x[0] = 1": 1, "_ = arr[:]": 1,
		"n := 1; n = 2; _ = n": 0, "use(n, v, m, l, arr)": 0, "x := v; x.f = 1; use(x)": 0, "use(v.get(), m[\"a\"], len(l))": 0, "for range l {}": 0,
		"x := arr; x[0] = 1; use(x)": 0, "k := slices.Clone(l); k[0] = 1": 0, "copy(make([]int, 1), l)": 0,
	} {
		fset := token.NewFileSet()
		file, err := parser.ParseFile(fset, "p.go", head+"func f() {\n"+body+"\n}\nfunc init() { n = 7 }\n", 0)
		if err != nil {
			t.Fatalf("%s: %v", body, err)
		}
		p := &sourcePackage{path: "p", files: fset, trees: []*ast.File{file}}
		if err := p.check(importer.ForCompiler(fset, "source", nil)); err != nil {
			t.Fatalf("%s: %v", body, err)
		}
		if got := p.writes(); (len(got) > 0) != (want > 0) {
			t.Errorf("%s: found %v", body, got)
		}
	}
}

// A sourcePackage is a package as it is written, with its types.
type sourcePackage struct {
	path  string
	files *token.FileSet
	trees []*ast.File
	info  types.Info
}

// checked reads packages of this module without their tests.
func checked(t *testing.T, pattern string) []*sourcePackage {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), "go", "list", "-export", "-deps", "-json=ImportPath,Dir,GoFiles,Export,Module", pattern)
	cmd.Dir = "../.."
	var said bytes.Buffer
	cmd.Stderr = &said
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v: %s", err, &said)
	}
	fset := token.NewFileSet()
	exports := map[string]string{}
	var found []*sourcePackage
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p struct {
			ImportPath, Dir, Export string
			GoFiles                 []string
			Module                  *struct{ Main bool }
		}
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		exports[p.ImportPath] = p.Export
		if p.Module == nil || !p.Module.Main {
			continue
		}
		s := &sourcePackage{path: p.ImportPath, files: fset}
		for _, name := range p.GoFiles {
			tree, err := parser.ParseFile(fset, filepath.Join(p.Dir, name), nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			s.trees = append(s.trees, tree)
		}
		found = append(found, s)
	}
	in := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	for _, s := range found {
		if err := s.check(in); err != nil {
			t.Fatal(err)
		}
	}
	return found
}

func (p *sourcePackage) check(in types.Importer) error {
	p.info = types.Info{Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{}, Types: map[ast.Expr]types.TypeAndValue{}, Selections: map[*ast.SelectorExpr]*types.Selection{}}
	_, err := (&types.Config{Importer: in}).Check(p.path, p.files, p.trees, &p.info)
	return err
}

// A write is a place where a variable of a package changes, or could.
type write struct {
	name, how string
	at        token.Pos
}

// writes looks through all functions but init.
func (p *sourcePackage) writes() []write {
	var out []write
	for _, tree := range p.trees {
		for _, d := range tree.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Body != nil && (f.Recv != nil || f.Name.Name != "init") {
				l := looker{sourcePackage: p, behind: map[types.Object]string{}}
				for n := -1; n != len(l.behind); { // until no further name for a variable is found
					n = len(l.behind)
					l.out = nil
					ast.Inspect(f.Body, l.look)
				}
				out = append(out, l.out...)
			}
		}
	}
	return out
}

// A looker goes through one function.
type looker struct {
	*sourcePackage
	behind map[types.Object]string // locals through which a variable of a package can be changed
	out    []write
}

func (l *looker) add(e ast.Expr, how string) {
	if name := l.root(e, false); name != "" {
		l.out = append(l.out, write{name, how, e.Pos()})
	}
}

// root gives the variable of a package that an expression is a place in; "" if it is none.
// reached says that the way leads through a pointer, a slice or a map.
func (l *looker) root(e ast.Expr, reached bool) string {
	through := func(x ast.Expr) bool {
		switch l.info.Types[x].Type.Underlying().(type) {
		case *types.Pointer, *types.Slice, *types.Map:
			return true
		}
		return reached
	}
	switch e := e.(type) {
	case *ast.Ident:
		v, ok := l.info.Uses[e].(*types.Var)
		if !ok {
			return ""
		}
		if v.Pkg() != nil && v.Parent() == v.Pkg().Scope() {
			return v.Pkg().Path() + "." + v.Name()
		}
		if reached {
			return l.behind[v]
		}
	case *ast.ParenExpr:
		return l.root(e.X, reached)
	case *ast.StarExpr:
		return l.root(e.X, true)
	case *ast.IndexExpr:
		return l.root(e.X, through(e.X))
	case *ast.SliceExpr:
		return l.root(e.X, through(e.X))
	case *ast.SelectorExpr:
		if s := l.info.Selections[e]; s != nil {
			return l.root(e.X, through(e.X))
		}
		return l.root(e.Sel, reached) // of another package
	}
	return ""
}

// shared tells whether a copy of a value still reaches what it was copied from.
func shared(t types.Type) bool {
	switch t.Underlying().(type) {
	case *types.Pointer, *types.Slice, *types.Map:
		return true
	}
	return false
}

// changers are functions of the standard library that change what they are given first.
var changers = []string{"slices.Sort", "slices.SortFunc", "slices.SortStableFunc", "slices.Reverse", "slices.Delete", "slices.DeleteFunc", "slices.Insert", "slices.Compact", "slices.CompactFunc", "slices.Replace", "maps.Copy", "maps.DeleteFunc", "sort.Slice", "sort.SliceStable", "sort.Ints", "sort.Strings", "sort.Float64s", "sort.Sort", "sort.Stable"}

func (l *looker) look(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.AssignStmt:
		for i, left := range n.Lhs {
			if n.Tok == token.DEFINE {
				if id, ok := left.(*ast.Ident); ok && len(n.Rhs) == len(n.Lhs) {
					l.name(id, n.Rhs[i])
				}
				continue
			}
			l.add(left, "is assigned to")
			if id, ok := left.(*ast.Ident); ok && len(n.Rhs) == len(n.Lhs) {
				l.name(id, n.Rhs[i])
			}
		}
	case *ast.ValueSpec:
		for i, id := range n.Names {
			if len(n.Values) == len(n.Names) {
				l.name(id, n.Values[i])
			}
		}
	case *ast.IncDecStmt:
		l.add(n.X, "is counted")
	case *ast.RangeStmt:
		if n.Tok == token.ASSIGN {
			if n.Key != nil {
				l.add(n.Key, "is assigned to")
			}
			if n.Value != nil {
				l.add(n.Value, "is assigned to")
			}
		}
	case *ast.UnaryExpr:
		if n.Op == token.AND {
			l.add(n.X, "has its address taken")
		}
	case *ast.SliceExpr:
		if _, array := l.info.Types[n.X].Type.Underlying().(*types.Array); array {
			l.add(n.X, "is an array that is sliced")
		}
	case *ast.CallExpr:
		l.call(n)
	}
	return true
}

// name notes a local that reaches into a variable of a package.
func (l *looker) name(id *ast.Ident, from ast.Expr) {
	to := l.info.Defs[id]
	if to == nil {
		to = l.info.Uses[id]
	}
	if to == nil || !shared(l.info.Types[from].Type) {
		return
	}
	if root := l.root(from, true); root != "" {
		if v, ok := to.(*types.Var); ok && (v.Pkg() == nil || v.Parent() != v.Pkg().Scope()) {
			l.behind[to] = root
		}
	}
}

func (l *looker) call(c *ast.CallExpr) {
	switch f := ast.Unparen(c.Fun).(type) {
	case *ast.Ident:
		if _, built := l.info.Uses[f].(*types.Builtin); built && len(c.Args) > 0 && slices.Contains([]string{"append", "delete", "clear", "copy"}, f.Name) {
			if name := l.root(c.Args[0], true); name != "" {
				l.out = append(l.out, write{name, "goes through " + f.Name, c.Pos()})
			}
		}
	case *ast.SelectorExpr:
		s := l.info.Selections[f]
		if s == nil {
			if o := l.info.Uses[f.Sel]; o != nil && o.Pkg() != nil && len(c.Args) > 0 && slices.Contains(changers, o.Pkg().Path()+"."+o.Name()) {
				if name := l.root(c.Args[0], true); name != "" {
					l.out = append(l.out, write{name, "goes through " + o.Pkg().Path() + "." + o.Name(), c.Pos()})
				}
			}
			return
		}
		m, ok := s.Obj().(*types.Func)
		if !ok {
			return
		}
		if m.Pkg() != nil && m.Pkg().Path() == "regexp" {
			return // safe for use by many at once, by its documentation
		}
		if _, pointer := m.Signature().Recv().Type().Underlying().(*types.Pointer); pointer {
			if name := l.root(f.X, true); name != "" {
				l.out = append(l.out, write{name, fmt.Sprintf("has %s called on it, which may change it", m.Name()), c.Pos()})
			}
		}
	}
}
