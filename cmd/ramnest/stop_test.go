package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/binary"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// A lookContext ends at the look of a given number, as if Ctrl-C had been pressed then.
type lookContext struct {
	context.Context
	mu         sync.Mutex
	looks, end int
	done       chan struct{}
}

func lookingTo(end int) *lookContext {
	return &lookContext{Context: context.Background(), end: end, done: make(chan struct{})}
}

func (c *lookContext) Done() <-chan struct{} { return c.done }

func (c *lookContext) Err() error {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.looks++; c.looks <= c.end {
		return nil
	}
	if c.looks == c.end+1 {
		close(c.done)
	}
	return context.Canceled
}

// longCommands are the commands that may take long, with what they write into out.
func longCommands(mesh, out string) map[string][]string {
	const job = "../../testdata/jobs/rim-cap.yaml"
	return map[string][]string{
		"make":              {"make", job, "-o", out},
		"force -o":          {"force", job, "-o", out},
		"preview":           {"preview", job, "-o", filepath.Join(out, "a.html")},
		"drawing":           {"drawing", job, "-o", filepath.Join(out, "a.pdf")},
		"ladder":            {"ladder", job, "--latch", "rim", "-o", out},
		"quote -o":          {"quote", job, "-o", out},
		"calibrate -o":      {"calibrate", job, "../../testdata/jobs/shop/measured.csv", "-o", filepath.Join(out, "shop.yaml")},
		"inspect --picture": {"inspect", mesh, "--circles", "--picture", filepath.Join(out, "a.png")},
	}
}

// Wherever a run is stopped before its files stand, it says so in one line, ends with
// the code for it and leaves nothing.
func TestStoppedAnywhere(t *testing.T) {
	t.Parallel()
	const mesh = "../../testdata/jobs/parts/tiny-case-ascii.stl"
	for name := range longCommands(mesh, "") {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			whole := lookingTo(math.MaxInt)
			args := func(out string) []string { return longCommands(mesh, out)[name] }
			var errs bytes.Buffer
			if code := run(whole, args(t.TempDir()), nil, io.Discard, &errs); code != exitDone {
				t.Fatalf("exit code %d: %s", code, &errs)
			}
			// Looks come from several goroutines, so their number is not the same each time:
			// the last ones are left out.
			last := whole.looks - 1 - whole.looks/50
			t.Logf("%d looks", whole.looks)
			stops := 2
			if os.Getenv("RAMNEST_LONG") != "" {
				stops = 4
			}
			for k := range stops {
				last := k * last / (stops - 1)
				out := filepath.Join(t.TempDir(), "out")
				var said, errs bytes.Buffer
				code := run(lookingTo(last), args(out), nil, &said, &errs)
				if code != exitStopped || !bytes.HasSuffix(errs.Bytes(), []byte("ramnest: stopped; nothing was written\n")) || said.Len() > 0 {
					t.Errorf("stopped at look %d of %d: exit code %d, %q, %q", last, whole.looks, code, &said, &errs)
				}
				if _, err := os.Stat(out); err == nil {
					t.Errorf("stopped at look %d of %d: something was written", last, whole.looks)
				}
			}
		})
	}
}

// With a mesh of many triangles a command takes long at every stage, and yet ends soon
// after it is stopped. A command that does not heed its context runs to its end instead.
// Time is that of the processor for this process, whatever else the machine does.
func TestStoppedSoon(t *testing.T) {
	dir := t.TempDir()
	mesh := filepath.Join(dir, "ball.stl")
	if err := os.WriteFile(mesh, ball(200), 0o644); err != nil {
		t.Fatal(err)
	}
	args := []string{"inspect", mesh, "--circles", "--picture", filepath.Join(dir, "a.png")}
	start := processor()
	var errs bytes.Buffer
	if code := run(t.Context(), args, nil, io.Discard, &errs); code != exitDone {
		t.Fatalf("exit code %d: %s", code, &errs)
	}
	whole := processor() - start
	if err := os.Remove(filepath.Join(dir, "a.png")); err != nil {
		t.Fatal(err)
	}
	slowest, stops := time.Duration(0), 0
	for k := range 4 {
		ctx, cancel := context.WithCancel(t.Context())
		at, ended := make(chan time.Duration, 1), make(chan struct{})
		go func() {
			for begun := processor(); ctx.Err() == nil && processor()-begun < whole*time.Duration(2*k+1)/10; {
				select {
				case <-ended:
					return
				case <-time.After(time.Millisecond):
				}
			}
			at <- processor()
			cancel()
		}()
		code := run(ctx, args, nil, io.Discard, io.Discard)
		took := processor()
		close(ended)
		if code == exitDone {
			cancel()
			continue // faster this time, and already through
		}
		took -= <-at
		stops++
		slowest = max(slowest, took)
		if code != exitStopped {
			t.Errorf("exit code %d", code)
		}
		if _, err := os.Stat(filepath.Join(dir, "a.png")); err == nil {
			t.Error("a picture was written")
		}
	}
	t.Logf("%v whole, stopped %d times, after %v at most", whole, stops, slowest)
	if stops < 2 || slowest > max(200*time.Millisecond, whole/8) {
		t.Errorf("of %v, stopped %d times, after %v at most", whole, stops, slowest)
	}
}

// Ctrl-C reaches a run in a process of its own: it says so and ends with the code for it.
// The run would take minutes; it is stopped when it has named its stage.
func TestCtrlC(t *testing.T) {
	t.Parallel()
	cmd := exec.Command("ramnest", "sweep", "../../testdata/jobs/rim-cap.yaml", "--vary", "latches.rim.annular.undercut=0.4:0.6:50", "--set", "draws=1000000")
	pipe, err := cmd.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	said := bufio.NewReader(pipe)
	if line, err := said.ReadString('\n'); err != nil || !strings.HasSuffix(line, " ...\n") {
		t.Errorf("%q, %v", line, err)
	}
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	rest, err := io.ReadAll(said)
	if err != nil || string(rest) != "ramnest: stopped; nothing was written\n" {
		t.Errorf("%q, %v", rest, err)
	}
	if code := exitCodeOf(t, cmd.Wait()); code != exitStopped {
		t.Errorf("exit code %d", code)
	}
}

// ball is an STL of a ball with n by n faces.
func ball(n int) []byte {
	at := func(i, k int) [3]float32 {
		a, e := 2*math.Pi*float64(i%n)/float64(n), math.Pi*float64(k)/float64(n)
		return [3]float32{float32(20 * math.Sin(e) * math.Cos(a)), float32(20 * math.Sin(e) * math.Sin(a)), float32(20 * math.Cos(e))}
	}
	out := binary.LittleEndian.AppendUint32(make([]byte, 80), uint32(2*n*n-2*n))
	triangle := func(a, b, c [3]float32) {
		for _, p := range [4][3]float32{{}, a, b, c} {
			for _, v := range p {
				out = binary.LittleEndian.AppendUint32(out, math.Float32bits(v))
			}
		}
		out = append(out, 0, 0)
	}
	for i := range n {
		for k := range n {
			a, b, c, d := at(i, k), at(i, k+1), at(i+1, k), at(i+1, k+1)
			if k < n-1 {
				triangle(a, b, d)
			}
			if k > 0 {
				triangle(a, d, c)
			}
		}
	}
	return out
}
