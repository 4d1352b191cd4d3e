package jobfile

import (
	"fmt"
	"strconv"
	"strings"

	"ramnest/force/fault"

	"gopkg.in/yaml.v3"
)

// override puts the values of the Set option into the tree. Their nodes carry
// the number of the override, below 0, in the place of a line.
func (f *filler) override(sets []string) {
	for i, set := range sets {
		mark := -(i + 1)
		path, written, ok := strings.Cut(set, "=")
		if path = strings.TrimSpace(path); !ok || path == "" {
			f.add(mark, "", fault.Fault{Problem: "is not an override", Want: "path=value, such as latches.rim.annular.undercut=0.7"})
			continue
		}
		value, wrong := overrideValue(path, written, mark)
		if wrong != nil {
			f.add(mark, "", *wrong)
			continue
		}
		if wrong, near := put(f.doc.root, path, value, mark); wrong != nil {
			f.add(mark, near, *wrong)
		}
	}
}

// overrideValue reads the value of an override as the file would.
func overrideValue(path, written string, mark int) (*yaml.Node, *fault.Fault) {
	if len(written) > DefaultMaxBytes {
		return nil, &fault.Fault{Field: path, Problem: "is too long", Want: fmt.Sprintf("%d bytes at most", DefaultMaxBytes)}
	}
	value, flaws := parse([]byte(written))
	if len(flaws) > 0 {
		wrong := flaws[0].fault
		if strings.TrimSpace(written) == "" {
			wrong = fault.Fault{Problem: "has no value", Want: "a value behind the ="}
		}
		wrong.Field = path
		return nil, &wrong
	}
	value, flaw := expand(value)
	if flaw != nil {
		wrong := flaw.fault
		wrong.Field = path
		return nil, &wrong
	}
	stamp(value, mark)
	return value, nil
}

// stamp marks a tree as coming from an override.
func stamp(n *yaml.Node, mark int) {
	n.Line = mark
	for _, c := range n.Content {
		stamp(c, mark)
	}
}

// put replaces what stands at a path, or adds a key that is not there.
func put(n *yaml.Node, path string, value *yaml.Node, mark int) (wrong *fault.Fault, near string) {
	for rest := path; ; {
		i, tail, wrong, near := named(n, rest)
		if wrong != nil {
			wrong.Field = path
			return wrong, near
		}
		if i < 0 {
			var key string
			if key, tail = firstKey(rest); key == "" {
				return &fault.Fault{Field: path, Problem: "is not a path", Want: "such as latches.rim.annular.undercut"}, ""
			}
			i = len(n.Content) + 1
			n.Content = append(n.Content,
				&yaml.Node{Kind: yaml.ScalarNode, Tag: "!!str", Value: key, Line: mark},
				&yaml.Node{Kind: yaml.MappingNode, Tag: "!!map", Line: mark})
		}
		if tail == "" {
			n.Content[i] = value
			return nil, ""
		}
		n, rest = n.Content[i], tail
	}
}

// named follows the first part of an override's path below a node. i is -1 for a
// key that a section does not have.
func named(n *yaml.Node, path string) (i int, tail string, wrong *fault.Fault, near string) {
	if i, tail, ok := child(n, path); ok {
		return i, tail, nil, ""
	}
	switch n.Kind {
	case yaml.MappingNode:
		return -1, "", nil, ""
	case yaml.SequenceNode:
		return entry(n, path)
	}
	return 0, "", &fault.Fault{Problem: "has nothing below " + described(n), Want: "the path of a key in the file"}, ""
}

// entry finds an entry of a list by the id it has, or by its index.
func entry(n *yaml.Node, path string) (i int, tail string, wrong *fault.Fault, near string) {
	var ids []string
	best, found := -1, 0
	for k, c := range n.Content {
		at, rest, ok := child(c, "id")
		if c.Kind != yaml.MappingNode || !ok || rest != "" || c.Content[at].Kind != yaml.ScalarNode {
			continue
		}
		id := c.Content[at].Value
		ids = append(ids, id)
		if id == "" || path != id && !below(path, id) || len(id) < best {
			continue
		}
		if len(id) > best {
			best, found = len(id), 0
		}
		found, i = found+1, k
	}
	name, tail := firstKey(path)
	if index, err := strconv.Atoi(name); found == 0 && err == nil && index >= 0 && index < len(n.Content) {
		return index, tail, nil, ""
	}
	switch {
	case found == 1:
		return i, strings.TrimPrefix(path[best:], "."), nil, ""
	case found > 1:
		return 0, "", &fault.Fault{Given: shown(path[:best]), Problem: "is the id of " + fmt.Sprint(found) + " entries",
			Want: "an index such as [0]"}, ""
	}
	if name == "" {
		name, _, _ = strings.Cut(path, ".") // a bracket with no such index
	}
	wrong = &fault.Fault{Given: shown(name), Problem: "names no entry of the list",
		Want: count(len(n.Content), "entry", "entries") + ", by id or by index from 0"}
	return 0, "", wrong, nearest(name, ids)
}

// firstKey cuts a path behind its first key.
func firstKey(path string) (key, tail string) {
	end := strings.IndexAny(path, ".[")
	if end < 0 {
		return path, ""
	}
	return path[:end], strings.TrimPrefix(path[end:], ".")
}
