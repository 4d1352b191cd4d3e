package main

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/synctest"
	"time"
)

func TestALongStageIsNamed(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		takes time.Duration
		want  string
	}{
		{"quick", 400 * time.Millisecond, ""},
		{"slow", 600 * time.Millisecond, "ramnest: sieving sand ...\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				var b bytes.Buffer
				con := &console{ctx: t.Context(), err: &lockedWriter{w: &b}}
				done := con.stage("sieving sand")
				time.Sleep(c.takes)
				done()
				time.Sleep(time.Second)
				synctest.Wait()
				if got := b.String(); got != c.want {
					t.Errorf("%q, want %q", got, c.want)
				}
			})
		})
	}
}

// closed is a pipe that nobody reads any more.
type closed struct{}

func (closed) Write([]byte) (int, error) { return 0, errors.New("broken pipe") }

func TestOutputThatCannotBeWritten(t *testing.T) {
	t.Parallel()
	var errs bytes.Buffer
	if code := run(t.Context(), []string{"schema"}, nil, closed{}, &errs); code != exitInternal || !strings.Contains(errs.String(), "broken pipe") {
		t.Errorf("code %d: %s", code, errs.String())
	}
}

func TestExitCodes(t *testing.T) {
	t.Parallel()
	const cap = "../../testdata/jobs/rim-cap.yaml"
	for _, c := range []struct {
		args []string
		want int
	}{
		{[]string{"check", cap}, exitDone},
		{[]string{"check", cap, "--json"}, exitDone},
		{[]string{"check", cap, "--set", "latches.rim.annular.undercut=2.5"}, exitNone},
		{[]string{"check", cap, "--set", "latches.rim.annular.undercut=-1"}, exitBad},
		{[]string{"check", "nowhere"}, exitBad},
		{[]string{}, exitBad},
		{[]string{"--version"}, exitDone},
		{[]string{"force", "--help"}, exitDone},
	} {
		if got := run(t.Context(), c.args, nil, io.Discard, io.Discard); got != c.want {
			t.Errorf("%q: %d, want %d", c.args, got, c.want)
		}
	}
}

// BenchmarkMake is the whole command but for the start of the process: reading,
// forces, method, tooling, rendering, writing.
func BenchmarkMake(b *testing.B) {
	for _, name := range []string{"rim-cap", "battery-tray", "sensor-hood", "shell-pair", "snap-case"} {
		b.Run(name, func(b *testing.B) {
			folder := b.TempDir()
			b.ReportAllocs()
			for b.Loop() {
				if code := run(b.Context(), []string{"make", "../../testdata/jobs/" + name + ".yaml", "-o", folder}, nil, io.Discard, io.Discard); code != exitDone {
					b.Fatalf("exit code %d", code)
				}
			}
		})
	}
}
