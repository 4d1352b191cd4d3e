package main

import (
	"crypto/sha256"
	"encoding/binary"
	"flag"
	"fmt"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite what the scripts compare with")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"ramnest": func() {
		if os.Getenv(patient) != "" {
			patience = time.Hour
		}
		main()
	}})
}

// patient, in the surroundings of a script, keeps a slow machine from naming stages among
// what the script compares.
const patient = "RAMNEST_TEST_PATIENT"

func TestScripts(t *testing.T) {
	t.Parallel()
	jobs, err := filepath.Abs("../../testdata/jobs")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script", RequireExplicitExec: true, UpdateScripts: *update,
		Setup: func(env *testscript.Env) error {
			env.Setenv(patient, "1")
			if err := os.CopyFS(filepath.Join(env.WorkDir, "jobs"), os.DirFS(jobs)); err != nil {
				return err
			}
			return badMeshes(filepath.Join(env.WorkDir, "meshes"))
		},
		Condition: func(name string) (bool, error) {
			return name == "root" && os.Getuid() == 0 || name == "long" && os.Getenv("RAMNEST_LONG") != "", nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"code": exitCode, "windows": windows, "edit": edit, "files": files, "quiet": quiet,
			"refused": refused, "hardlink": hardlink,
		},
	})
}

// exitCode runs ramnest and checks the code that it ends with: code 2 make ...
func exitCode(ts *testscript.TestScript, neg bool, args []string) {
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec("ramnest", args[1:]...); err != nil {
		exit, ok := err.(*exec.ExitError)
		if !ok {
			ts.Fatalf("run ramnest: %v", err)
		}
		got = exit.ExitCode()
	}
	if got != want || neg {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// windows writes a copy of a text as another system would: with a byte order mark and
// its line ends.
func windows(ts *testscript.TestScript, _ bool, args []string) {
	text := "\ufeff" + strings.ReplaceAll(ts.ReadFile(args[0]), "\n", "\r\n")
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(text), 0o644))
}

// edit writes a copy of a file with one text replaced: edit from to old new.
func edit(ts *testscript.TestScript, _ bool, args []string) {
	text := ts.ReadFile(args[0])
	if strings.Count(text, args[2]) != 1 {
		ts.Fatalf("%q stands %d times in %s, not once", args[2], strings.Count(text, args[2]), args[0])
	}
	text = strings.Replace(text, args[2], strings.ReplaceAll(args[3], `\n`, "\n"), 1)
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(text), 0o644))
}

// files checks that a folder holds these files and no others: files out a b.
func files(ts *testscript.TestScript, _ bool, args []string) {
	entries, err := os.ReadDir(ts.MkAbs(args[0]))
	ts.Check(err)
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if want := args[1:]; strings.Join(got, " ") != strings.Join(want, " ") {
		ts.Fatalf("%s holds\n %s\nwant\n %s", args[0], strings.Join(got, " "), strings.Join(want, " "))
	}
}

// quiet checks that stderr held nothing but what a slow machine adds: named stages.
func quiet(ts *testscript.TestScript, _ bool, _ []string) {
	for line := range strings.Lines(ts.ReadFile("stderr")) {
		if !strings.HasPrefix(line, "ramnest: ") || !strings.HasSuffix(line, " ...\n") {
			ts.Fatalf("stderr: %s", line)
		}
	}
}

// refused runs ramnest, which must end with code 2, say that an output would take the
// place of the input that is named, and leave every file below the folder of the script as
// it was, and no other: refused jobs/rim-cap.yaml preview ...
func refused(ts *testscript.TestScript, _ bool, args []string) {
	before := everyFile(ts)
	exitCode(ts, false, append([]string{"2"}, args[1:]...))
	said := ts.ReadFile("stderr")
	if want := " would take the place of " + filepath.FromSlash(args[0]) + ", which this run reads; write to another name or folder"; !strings.Contains(said, want) {
		ts.Fatalf("stderr: %s\nwant %q in it", said, want)
	}
	if faults := regexp.MustCompile(`(?m)^ramnest: .* \.\.\.\n`).ReplaceAllString(said, ""); strings.Count(faults, "\n") != 1 {
		ts.Fatalf("stderr has not one fault: %s", said)
	}
	if after := everyFile(ts); !maps.Equal(before, after) {
		ts.Fatalf("files before:\n%v\nafter:\n%v", before, after)
	}
}

// everyFile gives what lies below the folder of the script: a fingerprint by name.
func everyFile(ts *testscript.TestScript) map[string]string {
	out := map[string]string{}
	root := ts.MkAbs(".")
	ts.Check(filepath.WalkDir(root, func(path string, e os.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, _ := filepath.Rel(root, path)
		switch {
		case e.IsDir():
			out[name] = "folder"
		case e.Type()&os.ModeSymlink != 0:
			to, err := os.Readlink(path)
			out[name] = "link to " + to
			return err
		default:
			data, err := os.ReadFile(path)
			out[name] = fmt.Sprintf("%x", sha256.Sum256(data))
			return err
		}
		return nil
	}))
	return out
}

// hardlink gives a file a second name: hardlink old new.
func hardlink(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(os.Link(ts.MkAbs(args[0]), ts.MkAbs(args[1])))
}

// badMeshes writes binary STL files with faults that a text cannot show.
func badMeshes(folder string) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	stl := func(claimed, stored int, corner float32) []byte {
		b := make([]byte, 80, 84+50*stored)
		b = binary.LittleEndian.AppendUint32(b, uint32(claimed))
		for range stored {
			for _, v := range []float32{0, 0, 1, 0, 0, 0, 10, 0, 0, 0, 10, corner} {
				b = binary.LittleEndian.AppendUint32(b, math.Float32bits(v))
			}
			b = append(b, 0, 0)
		}
		return b
	}
	for name, content := range map[string][]byte{
		"empty.stl":     {},
		"none.stl":      stl(0, 0, 0),
		"truncated.stl": stl(20, 20, 5)[:84+50*12],
		"nan.stl":       stl(20, 20, float32(math.NaN())),
		"huge.stl":      stl(10_000_000, 18, 5), // 984 bytes
	} {
		if err := os.WriteFile(filepath.Join(folder, name), content, 0o644); err != nil {
			return err
		}
	}
	return nil
}
