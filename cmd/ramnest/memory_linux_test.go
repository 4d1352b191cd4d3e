package main

import (
	"fmt"
	"os"
	"syscall"
)

// peakMemory is the largest resident set of a process that ended.
func peakMemory(p *os.ProcessState) string {
	if u, ok := p.SysUsage().(*syscall.Rusage); ok {
		return fmt.Sprintf("%d MB", u.Maxrss/1024) // in kB on Linux
	}
	return "unknown"
}
