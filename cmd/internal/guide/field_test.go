package guide

import (
	"flag"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
)

var update = flag.Bool("update", false, "rewrite fields.txt from the source")

const module = "../../.."

// sources parses every file of the program, tests left out.
func sources(t *testing.T) map[string][]*ast.File {
	t.Helper()
	out := map[string][]*ast.File{}
	err := filepath.WalkDir(module, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && path != module) {
			return fs.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		dir, err := filepath.Rel(module, filepath.Dir(path))
		if err != nil {
			return err
		}
		key := "ramnest/" + filepath.ToSlash(dir)
		out[key] = append(out[key], f)
		return nil
	})
	if err != nil || len(out) < 10 {
		t.Fatalf("%d packages read: %v", len(out), err)
	}
	return out
}

// house is the unit of the program inside, which is not that of the file.
var house = regexp.MustCompile(`\s*\[(mm|mm²|mm2|N|rad|MPa|mJ|J|kg|s|h|1|N/mm|g/cm3|m/s)\]`)

// comments gives what stands on every field that takes a key of a file.
func comments(t *testing.T) jobfile.About {
	out := jobfile.About{}
	for path, files := range sources(t) {
		for _, f := range files {
			ast.Inspect(f, func(n ast.Node) bool {
				spec, ok := n.(*ast.TypeSpec)
				if !ok {
					return true
				}
				fields, ok := spec.Type.(*ast.StructType)
				if !ok {
					return true
				}
				for _, field := range fields.Fields.List {
					if field.Tag == nil {
						continue
					}
					tag, err := strconv.Unquote(field.Tag.Value)
					if err != nil || slices.Contains([]string{"", "-"}, reflect.StructTag(tag).Get("yaml")) {
						continue
					}
					text := field.Comment.Text()
					if text == "" {
						text = field.Doc.Text()
					}
					text = strings.Join(strings.Fields(text), " ")
					for _, name := range field.Names {
						if text = strings.TrimLeft(house.ReplaceAllString(text, ""), "; "); text != "" {
							out[path+"."+spec.Name.Name+"."+name.Name] = text
						}
					}
				}
				return true
			})
		}
	}
	return out
}

func TestFieldsAreInStepWithTheSource(t *testing.T) {
	t.Parallel()
	want := comments(t)
	if *update {
		var lines []string
		for field, text := range want {
			lines = append(lines, field+"\t"+text+"\n")
		}
		slices.Sort(lines)
		if err := os.WriteFile("fields.txt", []byte(strings.Join(lines, "")), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if got := About(); !reflect.DeepEqual(got, want) {
		t.Error("fields.txt is not what the source says; go test ./cmd/internal/guide -run Fields -update")
	}
}

// Most keys of a job say what they are for; those that do not are plain by their name.
func TestKeysOfAJobSayWhatTheyAreFor(t *testing.T) {
	t.Parallel()
	silent, all := 0, 0
	for _, k := range jobfile.Keys(new(job.File), About()) {
		all++
		if k.About == "" {
			silent++
		}
		if strings.Contains(k.About, "[rad]") || strings.Contains(k.About, "[mm]") {
			t.Errorf("%s is described in the unit of the program: %s", k.Path, k.About)
		}
	}
	t.Logf("%d of %d keys have no comment", silent, all)
	if silent*4 > all {
		t.Errorf("%d of %d keys have no comment", silent, all)
	}
}
