//go:build !linux

package main

import "os"

// peakMemory is not asked of this system.
func peakMemory(*os.ProcessState) string { return "not measured" }
