package jobfile

import (
	"slices"
	"strconv"
	"strings"

	"ramnest/force/fault"

	"gopkg.in/yaml.v3"
)

// A Document remembers where everything in a file stands. Field paths are in
// the names of the file: "latches[2].annular.undercut".
type Document struct {
	// Units are the job's own units, resolved: never empty.
	Units Units

	name    string
	sets    []string
	root    *yaml.Node // nil if the file could not be read at all
	faulted map[string]bool
}

// Place gives the line of a field, or that of its nearest ancestor that the file
// has. ok is false if there is none, or if the field comes from an override.
func (d *Document) Place(field string) (line int, ok bool) {
	line = d.mark(field)
	return max(line, 0), line > 0
}

// Problems gives faults that a Validate method found their file and line. It
// leaves out those on a field that Decode complained about before, and on
// anything below it: what was not understood cannot be judged. A value that the
// file writes in another unit than the house's is given as it is written, too.
func (d *Document) Problems(faults []fault.Fault) Problems {
	var out Problems
	for _, f := range faults {
		if !d.complained(f.Field) {
			given := d.asWritten(f)
			if n := d.exact(f.Field); given == f.Given && (n == nil || n.Kind != yaml.ScalarNode) {
				given = d.Units.Spoken(given)
			}
			f.Given, f.Problem, f.Want = given, d.Units.Spoken(f.Problem), d.Units.Spoken(f.Want)
			out = append(out, d.at(d.mark(f.Field), f))
		}
	}
	return out.sorted()
}

// asWritten gives the value of a fault as a person finds it in the file, with what
// was made of it: "-0.02 in, that is -0.508 mm".
func (d *Document) asWritten(f fault.Fault) string {
	n := d.exact(f.Field)
	if n == nil || n.Kind != yaml.ScalarNode {
		return f.Given
	}
	figure, unit := cutNumber(strings.TrimSpace(n.Value))
	given, house := cutNumber(f.Given)
	unit, house = strings.TrimSpace(unit), strings.TrimSpace(house)
	i := slices.IndexFunc(dimensions, func(m dimension) bool { return len(m.units) > 0 && m.units[0].name == house })
	if figure == "" || given == "" || i < 0 {
		return f.Given
	}
	if unit == "" {
		unit, _ = dimensions[i].plain(d.Units)
	}
	if unit == house || unit == "" {
		return f.Given
	}
	if spoken := d.Units.Spoken(f.Given); spoken != f.Given && strings.HasSuffix(spoken, " "+unit) {
		return figure + " " + unit // in which the rest of the fault is, too
	}
	return figure + " " + unit + ", that is " + f.Given
}

// exact gives the node of a field, nil if the file does not have it.
func (d *Document) exact(field string) *yaml.Node {
	if d.root == nil {
		return nil
	}
	n := d.root
	for rest := field; rest != ""; {
		i, tail, ok := child(n, rest)
		if !ok {
			return nil
		}
		n, rest = n.Content[i], tail
	}
	return n
}

// complained says whether Decode found a fault with the field or above it.
func (d *Document) complained(field string) bool {
	if d.faulted[""] || d.faulted[field] {
		return true
	}
	for end := range field {
		if (field[end] == '.' || field[end] == '[') && d.faulted[field[:end]] {
			return true
		}
	}
	return false
}

// mark gives the line of a field as the nodes carry it: above 0 in the file,
// below 0 in the override of that number, 0 nowhere.
func (d *Document) mark(field string) int {
	if d.root == nil {
		return 0
	}
	n, line := d.root, d.root.Line
	for rest := field; rest != ""; {
		i, tail, ok := child(n, rest)
		if !ok {
			break
		}
		line = lineOf(n, i)
		n, rest = n.Content[i], tail
	}
	return line
}

// at gives a fault the place that a mark stands for.
func (d *Document) at(mark int, f fault.Fault) Problem {
	if mark < 0 {
		return Problem{File: "set " + shown(d.sets[-mark-1]), Fault: f}
	}
	return Problem{File: d.name, Line: mark, Fault: f}
}

// refused is the end of a file that could not be read as a whole.
func (d *Document) refused(flaws ...flaw) Problems {
	d.faulted[""] = true
	var out Problems
	for _, f := range flaws {
		out = append(out, d.at(f.line, f.fault))
	}
	return out.sorted()
}

// lineOf gives the line of child i of a node: the line of its key if it has one,
// since that is where a reader looks, unless an override replaced the value.
func lineOf(n *yaml.Node, i int) int {
	if n.Kind == yaml.MappingNode && n.Content[i].Line >= 0 {
		return n.Content[i-1].Line
	}
	return n.Content[i].Line
}

// child follows the first part of a path below a node: i is the index of the
// value in the node's content, tail the rest of the path. Keys may hold dots, so
// the longest that fits is taken.
func child(n *yaml.Node, path string) (i int, tail string, ok bool) {
	switch n.Kind {
	case yaml.MappingNode:
		best := 0
		for k := 0; k+1 < len(n.Content); k += 2 {
			key := n.Content[k].Value
			if n.Content[k].Kind == yaml.ScalarNode && len(key) > best && (path == key || below(path, key)) {
				best, i = len(key), k+1
			}
		}
		return i, strings.TrimPrefix(path[best:], "."), best > 0
	case yaml.SequenceNode:
		rest, bracket := strings.CutPrefix(path, "[")
		digits, tail, closed := strings.Cut(rest, "]")
		i, err := strconv.Atoi(digits)
		if !bracket || !closed || err != nil || i < 0 || i >= len(n.Content) {
			return 0, "", false
		}
		return i, strings.TrimPrefix(tail, "."), true
	}
	return 0, "", false
}
