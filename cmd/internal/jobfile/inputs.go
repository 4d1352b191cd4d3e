package jobfile

import (
	"fmt"
	"maps"
	"reflect"
	"slices"

	"gopkg.in/yaml.v3"
)

// An Input is one value that the file states, as it was understood.
type Input struct {
	Path    string // "latches[0].annular.undercut"
	Value   any    // what the field holds: a float64, an integer, a string or a bool; []float64 for a point
	Unit    string // of the stored value: mm, N, rad, MPa, kg, J, s, 1 for a share; empty for what has none
	Written string // as it stands in the file or override
	Set     bool   // by an override
}

// storedUnit is the unit in which a dimension is stored, by its tag, where that is
// not the tag itself.
var storedUnit = map[string]string{"deg": "rad", "pct": "1", "none": ""}

// Inputs lists every value that the file states, as from holds it, in the order of
// the struct. from is the pointer that [Decode] filled.
func (d *Document) Inputs(from any) []Input {
	if d.root == nil {
		return nil
	}
	l := &lister{}
	l.list(d.root, shapeOf(from), reflect.ValueOf(from).Elem(), "")
	return l.out
}

// A lister walks nodes, shape and filled struct side by side.
type lister struct {
	out []Input
}

func (l *lister) list(n *yaml.Node, s *shape, v reflect.Value, path string) {
	if s.pointer {
		if v.IsNil() {
			return
		}
		v = v.Elem()
	}
	if (s.kind == section || s.kind == table) != (n.Kind == yaml.MappingNode) {
		return // refused by Decode
	}
	switch s.kind {
	case section:
		for _, f := range s.fields {
			if c := valueOf(n, f.name); c != nil {
				l.list(c, f.shape, v.FieldByIndex(f.index), join(path, f.name))
			}
		}
	case table:
		byName := map[string]reflect.Value{}
		for _, k := range v.MapKeys() {
			byName[k.String()] = v.MapIndex(k)
		}
		for _, name := range slices.Sorted(maps.Keys(byName)) {
			if c := valueOf(n, name); c != nil {
				l.list(c, s.elem, byName[name], join(path, name))
			}
		}
	case list, tuple:
		for i := range min(v.Len(), len(n.Content)) {
			l.list(n.Content[i], s.elem, v.Index(i), fmt.Sprintf("%s[%d]", path, i))
		}
	case point:
		if len(n.Content) == 2 {
			written := "[" + n.Content[0].Value + ", " + n.Content[1].Value + "]"
			l.add(n, s, []float64{v.Field(0).Float(), v.Field(1).Float()}, path, written)
		}
	default:
		l.add(n, s, v.Interface(), path, n.Value)
	}
}

func (l *lister) add(n *yaml.Node, s *shape, value any, path, written string) {
	unit, other := storedUnit[s.dimension.tag]
	if !other {
		unit = s.dimension.tag
	}
	l.out = append(l.out, Input{Path: path, Value: value, Unit: unit, Written: written, Set: n.Line < 0})
}

// valueOf gives the node behind a key of a mapping, nil if it has none.
func valueOf(n *yaml.Node, key string) *yaml.Node {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Kind == yaml.ScalarNode && n.Content[i].Value == key {
			return n.Content[i+1]
		}
	}
	return nil
}
