package main

import (
	"fmt"
	"io"
	"sync"
	"time"
)

// patience is how long a stage may take before it is named on stderr.
const patience = 500 * time.Millisecond

// stage names a stage on stderr if it takes long. done ends it.
func (c *console) stage(name string) (done func()) {
	t := time.AfterFunc(patience, func() { fmt.Fprintf(c.err, "ramnest: %s ...\n", name) })
	return func() { t.Stop() }
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
