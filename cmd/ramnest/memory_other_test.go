//go:build !linux

package main

import (
	"os"
	"time"
)

// peakMemory is not asked of this system.
func peakMemory(*os.ProcessState) string { return "not measured" }

var begun = time.Now()

// processor is the time by the clock, for want of a better one here.
func processor() time.Duration { return time.Since(begun) }
