package main

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"time"
)

var figures = flag.Int("batch", 0, "measure a batch of so many jobs on one core and on two")

// variants fills a folder with n jobs: the examples with numbers, sizes and rates of
// their own, now and then one that no manual method closes and one with a fault.
func variants(t *testing.T, n int) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "jobs")
	examples := filepath.Join("..", "..", "testdata", "jobs")
	if err := os.CopyFS(filepath.Join(dir, "parts"), os.DirFS(filepath.Join(examples, "parts"))); err != nil {
		t.Fatal(err)
	}
	names := []string{"rim-cap", "battery-tray", "sensor-hood", "shell-pair", "snap-case", "rim-cap-inch"}
	number, rate := regexp.MustCompile(`(?m)^job: (\S+)`), regexp.MustCompile(`(?m)^rate_per_hour: \S+`)
	seed := regexp.MustCompile(`(?m)^seed: .*$`)
	undercut := regexp.MustCompile(`undercut: [0-9.]+`)
	rng := rand.New(rand.NewPCG(1, uint64(n)))
	for i := range n {
		name := names[i%len(names)]
		b, err := os.ReadFile(filepath.Join(examples, name+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		job := number.ReplaceAllString(string(b), fmt.Sprintf("job: ${1}-%04d", i))
		job = rate.ReplaceAllString(job, fmt.Sprintf("rate_per_hour: %d", 5+rng.IntN(25)))
		switch {
		case i%50 == 3:
			job = strings.Replace(job, "material: PA12", "material: PA13", 1)
		case i%50 == 6: // a rim cap
			job = undercut.ReplaceAllString(job, "undercut: 2.5")
		case name == "rim-cap":
			job = undercut.ReplaceAllString(job, fmt.Sprintf("undercut: %.2f", 0.3+0.3*rng.Float64()))
		}
		job = seed.ReplaceAllString(job, "") + fmt.Sprintf("\nseed: %d\n", i)
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%04d-%s.yaml", i, name)), []byte(job), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// batchOf prepares the program in a process of its own.
func batchOf(dir, out string, env ...string) (cmd *exec.Cmd, stderr *bytes.Buffer) {
	stderr = new(bytes.Buffer)
	cmd = exec.Command("ramnest", "batch", dir, "-o", out)
	cmd.Env = append(os.Environ(), env...)
	cmd.Stderr = stderr
	return cmd, stderr
}

// tree gives a sum of every file below a folder.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := os.ReadFile(path)
		name, _ := filepath.Rel(dir, path)
		out[name] = fmt.Sprintf("%d bytes %x", len(b), sha256.Sum256(b))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// whole checks that every folder of a job that stands holds exactly what its record
// says, in files that other programs read.
func whole(t *testing.T, out string) (folders int) {
	t.Helper()
	entries, err := os.ReadDir(out)
	if errors.Is(err, fs.ErrNotExist) {
		return 0
	}
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !e.IsDir() || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		folders++
		var record struct {
			Files []struct{ Name, SHA256 string }
		}
		b, err := os.ReadFile(filepath.Join(out, e.Name(), "ramnest-batch.json"))
		if err := errors.Join(err, json.Unmarshal(b, &record)); err != nil {
			t.Fatalf("%s: %v", e.Name(), err)
		}
		there := tree(t, filepath.Join(out, e.Name()))
		if len(there) != len(record.Files)+1 {
			t.Errorf("%s holds %d files, its record names %d", e.Name(), len(there), len(record.Files))
		}
		for _, f := range record.Files {
			if !strings.HasSuffix(there[f.Name], f.SHA256) {
				t.Errorf("%s/%s is not as it was written", e.Name(), f.Name)
			}
			if strings.HasSuffix(f.Name, "report.json") {
				b, err := os.ReadFile(filepath.Join(out, e.Name(), f.Name))
				if err != nil || !json.Valid(b) {
					t.Errorf("%s/%s: no report: %v", e.Name(), f.Name, err)
				}
			}
		}
	}
	return folders
}

// foldersOf counts the folders of jobs that stand.
func foldersOf(out string) (n int) {
	entries, _ := os.ReadDir(out)
	for _, e := range entries {
		if e.IsDir() && !strings.HasPrefix(e.Name(), ".") {
			n++
		}
	}
	return n
}

func exitCodeOf(t *testing.T, err error) int {
	t.Helper()
	if err == nil {
		return 0
	}
	exit, ok := errors.AsType[*exec.ExitError](err)
	if !ok {
		t.Fatal(err)
	}
	return exit.ExitCode()
}

// A batch that is killed, again and again, and one that is stopped by Ctrl-C, end as
// one that was let alone: the same files, byte for byte, and never one in between that
// is not whole.
func TestABatchKilledInTheMiddle(t *testing.T) {
	t.Parallel()
	jobs := 8
	if os.Getenv("RAMNEST_LONG") != "" {
		jobs = 18
	}
	dir := variants(t, jobs)
	base := t.TempDir()
	alone := filepath.Join(base, "alone")
	cmd, stderr := batchOf(dir, alone)
	if code := exitCodeOf(t, cmd.Run()); code != exitBad { // one job has a fault
		t.Fatalf("exit code %d: %s", code, stderr)
	}
	want := tree(t, alone)

	killed := filepath.Join(base, "killed")
	kills := 0
	for stood := 0; kills < 6; {
		cmd, stderr := batchOf(dir, killed)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		// Killed somewhere in the next job or the one after, however long one takes.
		ended := make(chan struct{})
		go func() {
			defer cmd.Process.Kill()
			for deadline := time.Now().Add(time.Minute); foldersOf(killed) < stood+kills%2 && time.Now().Before(deadline); {
				select {
				case <-ended:
					return
				case <-time.After(2 * time.Millisecond):
				}
			}
			time.Sleep(time.Duration(7*kills) * time.Millisecond)
		}()
		err := cmd.Wait()
		close(ended)
		stood = whole(t, killed)
		if code := exitCodeOf(t, err); code == exitBad {
			break // it had come to its end
		} else if code != -1 {
			t.Fatalf("exit code %d: %s", code, stderr)
		}
		if _, err := os.Stat(filepath.Join(killed, "batch.csv")); err == nil && stood < jobs-1 {
			t.Error("a table stands before its jobs")
		}
		kills++
	}
	cmd, stderr = batchOf(dir, killed)
	if code := exitCodeOf(t, cmd.Run()); code != exitBad {
		t.Fatalf("exit code %d: %s", code, stderr)
	}
	if kills < 3 {
		t.Errorf("killed %d times only", kills)
	}
	t.Logf("killed %d times", kills)
	compare(t, "killed", tree(t, killed), want)

	stopped := filepath.Join(base, "stopped")
	cmd, stderr = batchOf(dir, stopped)
	pipe, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	for deadline := time.Now().Add(time.Minute); foldersOf(stopped) < 3; time.Sleep(10 * time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatal("no job was done")
		}
	}
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	if bufio.NewScanner(pipe).Scan() {
		t.Error("a table was printed")
	}
	if code := exitCodeOf(t, cmd.Wait()); code != exitStopped || !strings.Contains(stderr.String(), "the same command goes on from there") {
		t.Fatalf("exit code %d: %s", code, stderr)
	}
	if n := whole(t, stopped); n < 3 || n > jobs-2 {
		t.Errorf("%d jobs done when it was stopped", n)
	}
	if _, err := os.Stat(filepath.Join(stopped, "batch.csv")); err == nil {
		t.Error("a table was written")
	}
	cmd, stderr = batchOf(dir, stopped)
	if code := exitCodeOf(t, cmd.Run()); code != exitBad {
		t.Fatalf("exit code %d: %s", code, stderr)
	}
	if !strings.Contains(stderr.String(), " unchanged") {
		t.Errorf("nothing was kept: %s", stderr)
	}
	compare(t, "stopped", tree(t, stopped), want)
}

func compare(t *testing.T, name string, got, want map[string]string) {
	t.Helper()
	for file, sum := range want {
		if got[file] != sum {
			t.Errorf("%s: %s is %q, want %q", name, file, got[file], sum)
		}
	}
	if len(got) != len(want) {
		t.Errorf("%s: %d files, want %d", name, len(got), len(want))
	}
}

// Figures of many jobs, on one core and on two:
//
//	go test ./cmd/ramnest -run BatchFigures -batch 1000 -v -timeout 60m
//
// Without -batch it runs eight, as a test that the run holds together.
func TestBatchFigures(t *testing.T) {
	n := *figures
	if n == 0 {
		n = 8
	}
	dir := variants(t, n)
	var sums []map[string]string
	var rates []float64
	for _, cores := range []int{1, 2} {
		out := filepath.Join(t.TempDir(), "out")
		cmd, stderr := batchOf(dir, out, fmt.Sprintf("GOMAXPROCS=%d", cores))
		begun := time.Now()
		code := exitCodeOf(t, cmd.Run())
		took := time.Since(begun)
		if code != exitBad {
			t.Fatalf("exit code %d: %s", code, stderr)
		}
		rates = append(rates, float64(n)/took.Seconds())
		var table struct {
			Tooling int `json:"with_tooling"`
			None    int `json:"without_method"`
			Failed  int `json:"failed"`
		}
		b, err := os.ReadFile(filepath.Join(out, "batch.json"))
		if err := errors.Join(err, json.Unmarshal(b, &table)); err != nil {
			t.Fatal(err)
		}
		if table.Tooling+table.None+table.Failed != n || table.Failed == 0 {
			t.Errorf("%+v of %d jobs", table, n)
		}
		again := time.Now()
		cmd2, _ := batchOf(dir, out, fmt.Sprintf("GOMAXPROCS=%d", cores))
		exitCodeOf(t, cmd2.Run())
		t.Logf("GOMAXPROCS=%d of %d cores: %d jobs (%d with tooling, %d without a method, %d failed) in %.1f s, %.2f jobs/s, %.0f ms of processor a job, peak memory %s; again, nothing changed: %.1f s",
			cores, runtime.NumCPU(), n, table.Tooling, table.None, table.Failed, took.Seconds(), rates[len(rates)-1], float64((cmd.ProcessState.UserTime()+cmd.ProcessState.SystemTime()).Milliseconds())/float64(n), peakMemory(cmd.ProcessState), time.Since(again).Seconds())
		sums = append(sums, tree(t, out))
	}
	t.Logf("two cores against one: %.2f times", rates[1]/rates[0])
	compare(t, "two cores", sums[1], sums[0])
}
