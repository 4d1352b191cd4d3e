package main

import (
	"fmt"
	"os"
	"syscall"
	"time"
)

// peakMemory is the largest resident set of a process that ended.
func peakMemory(p *os.ProcessState) string {
	if u, ok := p.SysUsage().(*syscall.Rusage); ok {
		return fmt.Sprintf("%d MB", u.Maxrss/1024) // in kB on Linux
	}
	return "unknown"
}

// processor is the time that the processors have worked for this process.
func processor() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
