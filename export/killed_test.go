package export_test

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"ramnest/export"
)

// generation is a set of files that all tell which set they are of, large enough that
// half of one shows.
func generation(n int) []export.File {
	var files []export.File
	for k := range 6 {
		files = append(files, text(fmt.Sprintf("file-%d.stl", k), content(n)))
	}
	return files
}

func content(n int) string { return strings.Repeat(fmt.Sprintf("%06d\n", n), 3000) + "end" }

// generationIn gives the set that the files of a folder are of; whole is false if a
// file is cut off, one if they are of several.
func generationIn(t *testing.T, dir string) (n string, whole, one bool) {
	t.Helper()
	whole, one = true, true
	for k := range 6 {
		data, err := os.ReadFile(filepath.Join(dir, fmt.Sprintf("file-%d.stl", k)))
		if err != nil {
			t.Fatal(err)
		}
		first, _, _ := strings.Cut(string(data), "\n")
		whole = whole && string(data) == strings.Repeat(first+"\n", 3000)+"end"
		one = one && (k == 0 || first == n)
		n = first
	}
	return n, whole, one
}

const (
	child     = "RAMNEST_TEST_WRITE_INTO"
	childStep = "RAMNEST_TEST_END_AT" // number of the step, and whether the set fails half way
)

// TestMain lets the tests start this program again as a run that they can kill.
func TestMain(m *testing.M) {
	if dir := os.Getenv(child); dir != "" && os.Getenv(childStep) != "" {
		endAtStep(dir)
	} else if dir != "" {
		fmt.Print("+")
		for n := 1; ; n++ {
			if err := export.WriteFiles(dir, generation(n)); err != nil {
				fmt.Println(err)
				os.Exit(1)
			}
		}
	}
	os.Exit(m.Run())
}

// A run is killed at random moments: every file is whole at once, and the next run
// leaves files of one set only, and nothing else.
func TestKilledAtAnyMoment(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	if err := export.WriteFiles(dir, generation(0)); err != nil {
		t.Fatal(err)
	}
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	random := rand.New(rand.NewPCG(1, 2))
	mixed, leftovers := 0, 0
	kills := 30
	if os.Getenv("RAMNEST_LONG") != "" {
		kills = 100
	}
	for range kills {
		run := exec.Command(program, "-test.run=^$")
		run.Env = append(os.Environ(), child+"="+dir)
		pipe, err := run.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := run.Start(); err != nil {
			t.Fatal(err)
		}
		io.ReadFull(pipe, make([]byte, 1)) // it is at work, however slowly it came to it
		time.Sleep(time.Duration(random.IntN(40_000)) * time.Microsecond)
		run.Process.Kill()
		run.Wait()
		_, whole, one := generationIn(t, dir)
		if !whole {
			t.Fatal("a file is half written")
		}
		if !one {
			mixed++
		}
		leftovers += len(folder(t, dir)) - 6
		if err := export.WriteFiles(dir, []export.File{text("other", "x")}); err != nil {
			t.Fatal(err)
		}
		if n, whole, one := generationIn(t, dir); !whole || !one {
			t.Fatalf("after the next run the files are of several sets, or half: %s", n)
		}
		if held := folder(t, dir); len(held) != 7 {
			t.Fatalf("after the next run %d files are left: %v", len(held), held)
		}
		os.Remove(filepath.Join(dir, "other"))
	}
	t.Logf("%d kills: %d temporary files left and cleared, %d sets finished by the next run", kills, leftovers, mixed)
	if leftovers == 0 {
		t.Error("no kill hit a run at work")
	}
}

// endAtStep writes one set and ends the process before the change to the folder of the
// number asked for. If it is to fail, a folder gets the name of the fourth file when all
// are staged, so that what was placed must be taken back.
func endAtStep(dir string) {
	var at, fail int
	fmt.Sscan(os.Getenv(childStep), &at, &fail)
	steps := 0
	export.BeforeEachStep(func() {
		if steps == at {
			os.Exit(9)
		}
		steps++
	})
	files := []export.File{}
	for _, f := range generation(7) {
		if f.Name != "file-1.stl" { // one file of the earlier set is not of this one
			files = append(files, f)
		}
	}
	files = append(files, text("fresh", "7"))
	if fail == 1 {
		export.BeforeRename(func(name string) {
			if name == "file-4.stl" {
				os.Remove(filepath.Join(dir, name))
				os.Mkdir(filepath.Join(dir, name), 0o755)
			}
		})
	}
	if err := export.WriteFiles(dir, files); (err != nil) != (fail == 1) {
		fmt.Println(err)
		os.Exit(1)
	}
	os.Exit(0)
}

// A run is ended before each of its changes to the folder, also while it takes back what
// it had placed, and the run after it before each of its own: the run after those leaves
// one set, all of it, says what it found, and leaves nothing else.
func TestKilledAtEveryStep(t *testing.T) {
	t.Parallel()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	end := func(dir string, at, fail int) int {
		run := exec.Command(program, "-test.run=^$")
		run.Env = append(os.Environ(), child+"="+dir, fmt.Sprintf("%s=%d %d", childStep, at, fail))
		var said strings.Builder
		run.Stdout = &said
		run.Run()
		if code := run.ProcessState.ExitCode(); code == 0 || code == 9 {
			return code
		}
		t.Fatalf("%s: %s", run.ProcessState, &said)
		return 0
	}
	// state is what the folder holds: the earlier set, the new one, or both.
	state := func(dir string) string {
		var is []string
		for _, name := range []string{"file-0.stl", "file-2.stl", "file-3.stl", "file-5.stl", "fresh"} {
			data, err := os.ReadFile(filepath.Join(dir, name))
			switch {
			case err != nil && name == "fresh" || strings.HasPrefix(string(data), "000001"):
				is = append(is, "old")
			case name == "fresh" || strings.HasPrefix(string(data), "000007"):
				is = append(is, "new")
			default:
				t.Fatalf("%s: %v, %.10q", name, err, data)
			}
		}
		slices.Sort(is)
		return strings.Join(slices.Compact(is), " and ")
	}
	for fail := range 2 {
		mixed, told, steps := 0, map[string]int{}, 0
		for ended := 9; ended == 9; steps++ {
			dir := t.TempDir()
			if err := export.WriteFiles(dir, generation(1)); err != nil {
				t.Fatal(err)
			}
			ended = end(dir, steps, fail)
			between := state(dir)
			if between == "new and old" {
				mixed++
			}
			// The next run is ended, too, somewhere in what it does for the one before.
			if steps%3 == 0 {
				end(dir, steps%7, 0)
			}
			if fail == 1 { // whoever made the folder takes it away again
				if info, err := os.Lstat(filepath.Join(dir, "file-4.stl")); err == nil && info.IsDir() {
					os.Remove(filepath.Join(dir, "file-4.stl"))
				}
			}
			said := ""
			err := export.WriteFilesTelling(t.Context(), dir, []export.File{text("other", "x")}, nil, func(s string) { said += s })
			if err != nil {
				t.Fatal(err)
			}
			after := state(dir)
			if after != "old" && after != "new" {
				t.Errorf("fails %d, ended before step %d: %s, after the next run %s", fail, steps, between, after)
			}
			if between == "new and old" && said == "" && steps%3 != 0 {
				t.Errorf("fails %d, ended before step %d: %s, and the next run said nothing", fail, steps, between)
			}
			told[said]++
			for name := range folder(t, dir) {
				if strings.HasPrefix(name, ".ramnest") {
					t.Errorf("fails %d, ended before step %d: %s is left", fail, steps, name)
				}
			}
		}
		t.Logf("fails %d: ended before %d steps, %d times with both sets there; said %v", fail, steps, mixed, told)
		if steps < 20 || mixed < 3 || len(told) < 2 {
			t.Errorf("fails %d: only %d steps, %d of them with both sets there; said %v", fail, steps, mixed, told)
		}
	}
}

func TestRunsIntoOneFolderTakeTurns(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	var group sync.WaitGroup
	for run := range 6 {
		group.Go(func() {
			for k := range 8 {
				if err := export.WriteFiles(dir, generation(100*run+k)); err != nil {
					t.Error(err)
				}
			}
		})
	}
	group.Wait()
	if n, whole, one := generationIn(t, dir); !whole || !one {
		t.Errorf("files of several runs stand side by side, of %s among them", n)
	}
	if held := folder(t, dir); len(held) != 6 {
		t.Errorf("%d files", len(held))
	}
}

func TestStoppedSetLeavesNothing(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	if err := export.WriteFiles(dir, generation(1)); err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	files := append(generation(2), export.File{Name: "last", Write: func(w io.Writer) error {
		stop()
		_, err := io.WriteString(w, strings.Repeat("x", 1<<20))
		return err
	}})
	if err := export.WriteFilesContext(ctx, dir, files); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	if n, whole, one := generationIn(t, dir); n != "000001" || !whole || !one || len(folder(t, dir)) != 6 {
		t.Errorf("a stopped run left %v", folder(t, dir))
	}
	if err := export.WriteFilesContext(ctx, filepath.Join(dir, "new"), files); !errors.Is(err, context.Canceled) || len(folder(t, dir)) != 6 {
		t.Errorf("begun after it was stopped: %v", err)
	}
}

// A note that somebody else laid into the folder moves nothing out of it or over it.
func TestForeignNoteIsNotFollowed(t *testing.T) {
	t.Parallel()
	for _, note := range []string{
		"../secret\tmine\told\nend\n", ".ramnest.0.x\t../mine\tnew\nend\n", "mine\tsecret\tnew\nend\n", ".ramnest.0.x\tmine\told\n", "end\n", "",
		".ramnest.0.x\tmine\t\nend\n", ".ramnest.0.x\tmine\nend\n", ".ramnest.0.x mine old\nend\n", ".ramnest.0.x\tmine\told\t\nend\n", strings.Repeat("x", 2<<20) + "end\n",
	} {
		top := t.TempDir()
		dir := filepath.Join(top, "out")
		if err := export.WriteFiles(dir, []export.File{text("mine", "mine")}); err != nil {
			t.Fatal(err)
		}
		for name, data := range map[string]string{"../secret": "secret", ".ramnest.complete": note, ".ramnest.undo": note, ".ramnest.0.x": "temporary", ".ramnest.notes": "kept"} {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(data), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if err := export.WriteFiles(dir, []export.File{text("a", "a")}); err != nil {
			t.Fatal(err)
		}
		wantFolder(t, dir, map[string]string{"a": "a", "mine": "mine", ".ramnest.notes": "kept"})
		wantFolder(t, top, map[string]string{"out": "a folder", "secret": "secret"})
	}
}

// What a killed run had complete is put in place, what it had not is cleared away.
func TestNextRunFinishesAKilledOne(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	for name, data := range map[string]string{
		"a": "new a", "b": "old b", ".ramnest.1.b": "new b", ".ramnest-old.1.b": "old b", ".ramnest.0.c": "new c", ".ramnest.0.half": "ha",
		".ramnest.complete": ".ramnest.0.a\ta\tnew\n.ramnest.1.b\tb\told\n.ramnest.0.c\tc\tnew\nend\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(data), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := export.WriteFiles(dir, []export.File{text("d", "d")}); err != nil {
		t.Fatal(err)
	}
	wantFolder(t, dir, map[string]string{"a": "new a", "b": "new b", "c": "new c", "d": "d"})
}
