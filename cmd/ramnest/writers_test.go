package main

import (
	"go/ast"
	"go/types"
	"slices"
	"strings"
	"testing"
)

// reading lists what of package os changes no file. All else there counts as writing.
var reading = []string{
	"os.Open", "os.OpenRoot", "os.ReadDir", "os.ReadFile", "os.Stat", "os.Lstat", "os.SameFile", "os.Executable", "os.Getenv", "os.Getwd", "os.Exit", "os.DirFS",
	"(*os.Root).Open", "(*os.Root).Stat", "(*os.Root).Lstat", "(*os.Root).Close", "(*os.Root).Name",
	"(*os.File).Stat", "(*os.File).Close", "(*os.File).Fd", "(*os.File).Sync", "(*os.File).Name", "(*os.File).Read", "(*os.File).ReadAt",
	"(os.FileMode).IsRegular",
}

// writers are the functions of cmd that write, each with what keeps the inputs from it.
var writers = map[string]string{
	"(*ramnest/cmd/ramnest.console).write":         "hands the inputs to export, which refuses them",
	"ramnest/cmd/internal/stepmesh.Mesh":           "works in a folder of its own that it has just made",
	"ramnest/cmd/internal/stepmesh.run":            "runs the mesher in that folder",
	"ramnest/cmd/internal/stepmesh.put":            "copies the STEP file into that folder",
	"ramnest/cmd/internal/batch.openFolder":        "makes the folder of a batch",
	"(*ramnest/cmd/internal/batch.folder).recover": "asks the inputs before what was begun is cleared away",
	"(*ramnest/cmd/internal/batch.folder).put":     "asks the inputs before a folder is replaced",
	"ramnest/cmd/internal/batch.write":             "fills a folder that put has just made",
	"(*ramnest/cmd/internal/batch.folder).retire":  "clears what put has put aside, or would have but for a kill, and no input lies in that",
}

// Nothing in cmd writes a file but by the functions that keep the inputs of a run.
func TestWritersKeepTheInputs(t *testing.T) {
	t.Parallel()
	met := map[string]bool{}
	for _, p := range checked(t, "ramnest/cmd/...") {
		if !strings.HasPrefix(p.path, "ramnest/cmd/") {
			continue
		}
		for _, tree := range p.trees {
			for _, d := range tree.Decls {
				in := "a variable of " + p.path
				if f, ok := d.(*ast.FuncDecl); ok {
					in = p.info.Defs[f.Name].(*types.Func).FullName()
				}
				ast.Inspect(d, func(n ast.Node) bool {
					id, ok := n.(*ast.Ident)
					if !ok {
						return true
					}
					if used, ok := p.info.Uses[id].(*types.Func); ok && writesFiles(used) {
						met[in] = true
						if writers[in] == "" {
							t.Errorf("%s: %s uses %s: write by console.write, which keeps the inputs", p.files.Position(id.Pos()), in, used.FullName())
						}
					}
					return true
				})
			}
		}
	}
	for name := range writers {
		if !met[name] {
			t.Errorf("%s is excused and writes nothing", name)
		}
	}
}

// writesFiles tells whether a function changes files, by its name.
func writesFiles(f *types.Func) bool {
	if f.Pkg() == nil {
		return false
	}
	switch path := f.Pkg().Path(); path {
	case "os":
		return !slices.Contains(reading, f.FullName())
	case "io/ioutil", "syscall", "os/exec":
		return path != "syscall" || !strings.Contains(f.Name(), "ock") // a lock
	case "ramnest/export":
		return strings.HasPrefix(f.Name(), "WriteFiles")
	}
	return false
}
