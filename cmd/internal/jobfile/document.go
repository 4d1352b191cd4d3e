package jobfile

import (
	"strings"

	"ramnest/force"
)

// A Document remembers where in the file each value stands.
type Document struct {
	name  string
	lines map[string]int // line by field path
	bad   []string       // paths that already have a problem
}

// Line gives the line on which the value with this path stands, or that of the
// nearest value around it; 0 if the file holds neither.
func (d *Document) Line(path string) int {
	for {
		if line, ok := d.lines[path]; ok {
			return line
		}
		if path == "" {
			return 0
		}
		path = parent(path)
	}
}

// Problems adds file and line to the faults that Validate found in the decoded
// value. The path of each fault starts at the root of the file.
//
// A fault is left out where it may follow from a problem that Decode has
// reported: at or below the field of that problem, in the same struct, or in a
// struct around it. What Validate finds elsewhere stands.
func (d *Document) Problems(faults []force.Fault) Problems {
	var out Problems
	for _, f := range faults {
		if d.mayFollow(f.Field) {
			continue
		}
		out = append(out, Problem{File: d.name, Line: d.Line(f.Field), Fault: f})
	}
	out.sort()
	return out
}

// mayFollow tells whether a fault at path may only be the echo of a problem
// already reported.
func (d *Document) mayFollow(path string) bool {
	for _, bad := range d.bad {
		if bad == "" || within(path, bad) || within(parent(bad), parent(path)) {
			return true
		}
	}
	return false
}

// within tells whether path is root or lies below it.
func within(path, root string) bool {
	rest, ok := strings.CutPrefix(path, root)
	return ok && (root == "" || rest == "" || rest[0] == '.' || rest[0] == '[')
}

// parent gives the path of what holds path: "a[0].b" is in "a[0]", that in "a".
func parent(path string) string {
	return path[:max(strings.LastIndexAny(path, ".["), 0)]
}
