// Command mutate plants faults in the rooms of the checkout, one at a time, and says
// which of them the tests of the same package do not notice. Sites are drawn with a
// seed, so many a room, rooms in the order of their names; the same seed draws the same.
//
//	go run .ci/mutate/main.go -n 300 -seed 1
//	go run .ci/mutate/main.go -n 40 -rooms force,force/method
//
// A survivor that is listed in .ci/mutate/excused.txt with a reason does not count.
// It prints a line a survivor and the share caught, by room and in all; exit 1 if the
// share is under -least or one survives in a room named by -strict.
package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// A site is a place at which a fault can be planted.
type site struct {
	file, was, now string
	line           int
	plant          func() (undo func())
}

// A room is a package with its parsed files.
type room struct {
	name  string
	fset  *token.FileSet
	files map[string]*ast.File
	sites []site
}

func main() {
	n := flag.Int("n", 300, "faults to plant")
	seed := flag.Uint64("seed", 1, "of the draw")
	only := flag.String("rooms", "", "packages, such as force,force/method; empty: all")
	in := flag.String("files", "", "regular expression of the files; empty: all")
	first := flag.String("first", "", "tests to try before all of them; a fault that these catch is caught")
	least := flag.Float64("least", 0.85, "share that must be caught")
	strict := flag.String("strict", "force,force/method,fixture/strength,work-instructions/caution_,work-instructions/acceptance.go,work-instructions/gap.go,fixture/seated.go,fixture/seat_gap.go", "rooms, and beginnings of files, in which none may survive")
	most := flag.Duration("for", 0, "plant no more after so long; 0: all")
	limit := flag.Duration("timeout", 3*time.Minute, "of the tests of one package; a fault that hangs them is caught")
	flag.Parse()
	files, err := regexp.Compile(*in)
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutate: -files:", err)
		os.Exit(1)
	}
	rooms, err := find(*only, files)
	if err != nil || len(rooms) == 0 {
		fmt.Fprintln(os.Stderr, "mutate: no rooms found:", err)
		os.Exit(1)
	}
	for _, r := range rooms {
		if out, err := exec.Command("go", "test", "-vet=off", "./"+r.name).CombinedOutput(); err != nil {
			fmt.Fprintf(os.Stderr, "mutate: %s fails without a fault:\n%s", r.name, out)
			os.Exit(1)
		}
	}
	excused := reasons()
	rng := rand.New(rand.NewPCG(*seed, 0x6d7574617465))
	tried, caught := map[string]int{}, map[string]int{}
	bad := false
	begun := time.Now()
	for k := 0; k < *n && (*most == 0 || time.Since(begun) < *most); k++ {
		r := rooms[k%len(rooms)]
		var s site
		verdict := "does not build"
		for try := 0; try < 40 && verdict == "does not build" && len(r.sites) > 0; try++ {
			i := rng.IntN(len(r.sites))
			s = r.sites[i]
			r.sites = slices.Delete(r.sites, i, i+1)
			verdict = r.judge(s, *first, *limit)
		}
		if verdict == "does not build" {
			continue
		}
		key := fmt.Sprintf("%s: %s -> %s", s.file, s.was, s.now)
		reason, known := excused[key]
		if verdict == "survived" && known {
			fmt.Printf("excused  %s (%s)\n", key, reason)
			continue
		}
		tried[r.name]++
		if verdict == "caught" {
			caught[r.name]++
			continue
		}
		fmt.Printf("SURVIVED %s:%d: %s -> %s\n", s.file, s.line, s.was, s.now)
		bad = bad || slices.ContainsFunc(strings.Split(*strict, ","), func(w string) bool {
			return w == r.name || strings.HasPrefix(s.file, w) && filepath.Dir(w) == r.name
		})
	}
	all, good := 0, 0
	for _, r := range rooms {
		if tried[r.name] > 0 {
			fmt.Printf("%-32s %3d of %3d caught\n", r.name, caught[r.name], tried[r.name])
			all, good = all+tried[r.name], good+caught[r.name]
		}
	}
	fmt.Printf("%d of %d caught, %.0f %%\n", good, all, 100*float64(good)/float64(max(all, 1)))
	if bad || float64(good) < *least*float64(all) {
		os.Exit(1)
	}
}

// reasons reads why some survivors do no harm: "file: was -> now | reason".
func reasons() map[string]string {
	out := map[string]string{}
	data, err := os.ReadFile(".ci/mutate/excused.txt")
	if err != nil {
		return out
	}
	for s := bufio.NewScanner(bytes.NewReader(data)); s.Scan(); {
		if key, why, ok := strings.Cut(s.Text(), " | "); ok {
			out[key] = why
		}
	}
	return out
}

// find lists the packages that have tests, with their sites.
func find(only string, in *regexp.Regexp) ([]*room, error) {
	list, err := exec.Command("go", "list", "-f", "{{if .TestGoFiles}}{{.Dir}}{{else if .XTestGoFiles}}{{.Dir}}{{end}}", "./...").Output()
	if err != nil {
		return nil, err
	}
	top, err := os.Getwd()
	if err != nil {
		return nil, err
	}
	var out []*room
	for _, dir := range strings.Fields(string(list)) {
		name, err := filepath.Rel(top, dir)
		if err != nil {
			return nil, err
		}
		if only != "" && !slices.Contains(strings.Split(only, ","), name) {
			continue
		}
		r := &room{name: name, fset: token.NewFileSet(), files: map[string]*ast.File{}}
		files, _ := filepath.Glob(filepath.Join(name, "*.go"))
		for _, f := range files {
			if strings.HasSuffix(f, "_test.go") {
				continue
			}
			parsed, err := parser.ParseFile(r.fset, f, nil, parser.ParseComments)
			if err != nil {
				return nil, err
			}
			r.files[f] = parsed
			if in.MatchString(f) {
				r.look(f, parsed)
			}
		}
		if len(r.sites) > 0 {
			out = append(out, r)
		}
	}
	return out, nil
}

var swapped = map[token.Token]token.Token{
	token.ADD: token.SUB, token.SUB: token.ADD, token.MUL: token.QUO, token.QUO: token.MUL,
	token.LSS: token.GEQ, token.GEQ: token.LSS, token.GTR: token.LEQ, token.LEQ: token.GTR,
	token.EQL: token.NEQ, token.NEQ: token.EQL, token.LAND: token.LOR, token.LOR: token.LAND,
	token.ADD_ASSIGN: token.SUB_ASSIGN, token.SUB_ASSIGN: token.ADD_ASSIGN,
}

// look collects the sites of a file: operators turned round, numbers a tenth larger,
// allowances for rounding a million times, whole numbers that have a name one larger, signs and negations left out. Struct tags, types
// and imports are none, nor is what adds nothing: + 0, which makes of -0 a 0.
func (r *room) look(name string, f *ast.File) {
	line := func(p token.Pos) int { return r.fset.Position(p).Line }
	ast.Inspect(f, func(n ast.Node) bool {
		switch v := n.(type) {
		case *ast.ImportSpec, *ast.ArrayType, *ast.StructType:
			return false
		case *ast.GenDecl:
			for _, spec := range v.Specs {
				values, ok := spec.(*ast.ValueSpec)
				for i := 0; ok && i < len(values.Values); i++ {
					lit, ok := values.Values[i].(*ast.BasicLit)
					if !ok || lit.Kind != token.INT {
						continue
					}
					if x, err := strconv.ParseInt(lit.Value, 0, 64); err == nil {
						was := lit.Value
						r.add(site{name, values.Names[min(i, len(values.Names)-1)].Name + " = " + was, strconv.FormatInt(x+1, 10), line(lit.Pos()),
							func() func() { lit.Value = strconv.FormatInt(x+1, 10); return func() { lit.Value = was } }})
					}
				}
			}
		case *ast.BinaryExpr:
			if to, ok := swapped[v.Op]; ok && !(v.Op == token.ADD && nothing(v.Y)) {
				was := v.Op
				r.add(site{name, text(v), "with " + to.String(), line(v.OpPos), func() func() { v.Op = to; return func() { v.Op = was } }})
			}
		case *ast.AssignStmt:
			if to, ok := swapped[v.Tok]; ok {
				was := v.Tok
				r.add(site{name, text(v), to.String(), line(v.TokPos), func() func() { v.Tok = to; return func() { v.Tok = was } }})
			}
		case *ast.BasicLit:
			was := v.Value
			if v.Kind == token.FLOAT {
				if x, err := strconv.ParseFloat(was, 64); err == nil && x != 0 {
					larger := 1.1
					if x < 1e-6 { // an allowance for rounding: a tenth of it is nothing
						larger = 1e6
					}
					to := strconv.FormatFloat(larger*x, 'g', -1, 64)
					r.add(site{name, was, to, line(v.Pos()), func() func() { v.Value = to; return func() { v.Value = was } }})
				}
			}
		case *ast.UnaryExpr:
			switch v.Op {
			case token.SUB:
				r.add(site{name, text(v), "without sign", line(v.Pos()), func() func() { v.Op = token.ADD; return func() { v.Op = token.SUB } }})
			case token.NOT:
				was := v.X
				r.add(site{name, text(v), "without not", line(v.Pos()),
					func() func() { v.X = &ast.UnaryExpr{Op: token.NOT, X: was}; return func() { v.X = was } }})
			}
		}
		return true
	})
}

// nothing tells whether an expression is the number 0.
func nothing(e ast.Expr) bool {
	lit, ok := e.(*ast.BasicLit)
	return ok && lit.Value == "0" && lit.Kind == token.INT
}

func (r *room) add(s site) { r.sites = append(r.sites, s) }

func text(n ast.Node) string {
	var b bytes.Buffer
	if err := format.Node(&b, token.NewFileSet(), n); err != nil {
		return "?"
	}
	s := strings.Join(strings.Fields(b.String()), " ")
	if len(s) > 90 {
		s = s[:90]
	}
	return s
}

// judge plants a fault and runs the tests of the room.
func (r *room) judge(s site, first string, limit time.Duration) string {
	undo := s.plant()
	var b bytes.Buffer
	err := format.Node(&b, r.fset, r.files[s.file])
	undo()
	if err != nil {
		return "does not build"
	}
	dir, err := os.MkdirTemp("", "mutate")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	planted, overlay := filepath.Join(dir, "planted.go"), filepath.Join(dir, "overlay.json")
	abs, err := filepath.Abs(s.file)
	if err != nil {
		panic(err)
	}
	laid, err := json.Marshal(map[string]map[string]string{"Replace": {abs: planted}})
	if err != nil {
		panic(err)
	}
	for path, data := range map[string][]byte{planted: b.Bytes(), overlay: laid} {
		if err := os.WriteFile(path, data, 0o644); err != nil {
			panic(err)
		}
	}
	for _, some := range slices.Compact([]string{first, ""}) {
		if said := tested(r.name, overlay, some, limit); said != "survived" {
			return said
		}
	}
	return "survived"
}

// tested runs tests with a fault laid over the room, and says how they took it.
func tested(room, overlay, run string, limit time.Duration) string {
	ctx, stop := context.WithTimeout(context.Background(), limit)
	defer stop()
	cmd := exec.CommandContext(ctx, "go", "test", "-overlay", overlay, "-failfast", "-vet=off", "-run", run, "-timeout", limit.String(),
		"./"+room)
	cmd.WaitDelay = 5 * time.Second
	switch out, err := cmd.CombinedOutput(); {
	case err == nil:
		return "survived"
	case bytes.Contains(out, []byte("[build failed]")):
		return "does not build"
	}
	return "caught"
}
