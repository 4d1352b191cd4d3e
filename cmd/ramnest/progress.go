package main

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"sync"
	"time"

	"ramnest/export"
)

// patience is how long a stage may take before it is named on stderr. A variable for the
// tests only, whose machine may be slow.
var patience = 500 * time.Millisecond

// stage names a stage on stderr if it takes long. done ends it.
func (c *console) stage(name string) (done func()) {
	t := time.AfterFunc(patience, func() { fmt.Fprintf(c.err, "ramnest: %s ...\n", name) })
	return func() { t.Stop() }
}

// write writes files into a folder, all or none and none in the place of an input, and
// tells what it found of a run that was killed there. Every command writes by it; a batch
// writes its jobs by a folder of its own, which asks the same inputs.
func (c *console) write(folder string, files []export.File) error {
	return export.WriteFilesTelling(c.ctx, folder, files, &c.inputs,
		func(text string) { fmt.Fprintf(c.err, "ramnest: %s: %s\n", folder, text) })
}

// writeFile writes one file, whole or not at all.
func (c *console) writeFile(path string, write func(io.Writer) error) error {
	dir, name := filepath.Split(path)
	if dir == "" {
		dir = "."
	}
	if err := c.write(dir, []export.File{{Name: name, Write: write}}); err != nil {
		return badUse{fmt.Sprintf("cannot write %s: %s; nothing was written", path, writeFault(dir, err))}
	}
	return nil
}

// until gives what f finds, or the error of the context as soon as that ends. f must
// write no file: it is left to itself then, and ends with the process.
func until[T any](ctx context.Context, f func() (T, error)) (T, error) {
	var none T
	if err := ctx.Err(); err != nil {
		return none, err
	}
	type answer struct {
		v   T
		err error
	}
	found := make(chan answer, 1)
	go func() {
		v, err := f()
		found <- answer{v, err}
	}()
	select {
	case a := <-found:
		return a.v, a.err
	case <-ctx.Done():
		return none, ctx.Err()
	}
}

// A lockedWriter takes one write at a time: progress comes from a timer.
type lockedWriter struct {
	mu sync.Mutex
	w  io.Writer
}

func (l *lockedWriter) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.w.Write(p)
}
