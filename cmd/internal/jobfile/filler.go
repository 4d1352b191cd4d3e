package jobfile

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"ramnest/force/fault"

	"gopkg.in/yaml.v3"
)

// A filler walks the nodes and the shape side by side, fills the struct and
// collects what does not fit. line is always that of the key or list entry.
type filler struct {
	doc      *Document
	top      *shape
	problems Problems
	unlisted int
	places   map[string][]string // where each key belongs; made when first asked for
}

// add notes a fault, and counts those that are too many to list.
func (f *filler) add(line int, near string, wrong fault.Fault) {
	if f.full() {
		f.unlisted++
		return
	}
	f.doc.faulted[wrong.Field] = true
	p := f.doc.at(line, wrong)
	p.Near = near
	f.problems = append(f.problems, p)
}

// full says whether no more faults are listed, so that the search for a nearest
// key is not done for faults that nobody will read.
func (f *filler) full() bool { return len(f.problems) == maxListed }

// finish gives the problems in file order.
func (f *filler) finish() Problems {
	out := f.problems.sorted()
	if f.unlisted > 0 {
		out = append(out, f.doc.at(0, fault.Fault{Problem: count(f.unlisted, "more fault is", "more faults are") + " not listed"}))
	}
	return out
}

// units reads the job's own units before anything is converted.
func (f *filler) units(root *yaml.Node) {
	u := &f.doc.Units
	if f.unitKey(root, "units", &u.Length, []string{"mm", "in"}) && u.Length == "in" {
		u.Force = "lbf"
	}
	f.unitKey(root, "force_units", &u.Force, []string{"N", "lbf"})
}

// unitKey reads one of the keys for units, if the file has it.
func (f *filler) unitKey(root *yaml.Node, key string, to *string, known []string) bool {
	if !slices.Contains(f.top.names(), key) {
		return false // an unknown key, and refused as such
	}
	i, tail, ok := child(root, key)
	if !ok || tail != "" {
		return false
	}
	n := root.Content[i]
	if n.Kind == yaml.ScalarNode && slices.Contains(known, n.Value) {
		*to = n.Value
		return true
	}
	f.add(lineOf(root, i), nearest(n.Value, known), fault.Fault{Field: key, Given: described(n), Problem: "is not known",
		Want: strings.Join(known, " or ")})
	return false
}

// value fills v, of shape s, from a node.
func (f *filler) value(n *yaml.Node, s *shape, v reflect.Value, path string, line int) {
	if f.doc.faulted[path] {
		return // said already
	}
	refuse := func(problem, want string) {
		f.add(line, "", fault.Fault{Field: path, Given: described(n), Problem: problem, Want: want})
	}
	if n.Style&yaml.TaggedStyle != 0 {
		refuse("has a tag, "+shown(n.Tag)+", and tags are not read", "the value alone, or in quotes")
		return
	}
	if isNull(n) {
		f.add(line, "", fault.Fault{Field: path, Problem: "has no value", Want: s.wanted() + ", or no such key"})
		return
	}
	if s.pointer {
		v.Set(reflect.New(s.goType))
		v = v.Elem()
	}
	if s.kind == list && s.elem.kind == whole && n.Kind == yaml.ScalarNode { // one alone
		n = &yaml.Node{Kind: yaml.SequenceNode, Content: []*yaml.Node{n}, Line: n.Line}
	}
	expected := yaml.ScalarNode
	switch s.kind {
	case section, table:
		expected = yaml.MappingNode
	case list, tuple, point:
		expected = yaml.SequenceNode
	}
	if n.Kind != expected {
		refuse("is not "+s.noun(), s.wanted())
		return
	}
	switch s.kind {
	case section:
		f.section(n, s, v, path, line)
	case table:
		f.table(n, s, v, path)
	case list:
		v.Set(reflect.MakeSlice(s.goType, len(n.Content), len(n.Content)))
		f.entries(n, s.elem, v, path)
	case tuple:
		if len(n.Content) != s.goType.Len() {
			refuse("has the wrong length", s.wanted())
			return
		}
		f.entries(n, s.elem, v, path)
	case point:
		if len(n.Content) != 2 {
			refuse("is not a point", s.wanted())
			return
		}
		axis := &shape{kind: number, dimension: s.dimension}
		for i := range 2 {
			f.value(n.Content[i], axis, v.Field(i), fmt.Sprintf("%s[%d]", path, i), lineOf(n, i))
		}
	default:
		f.scalar(n, s, v, path, line)
	}
}

// entries fills a slice or an array.
func (f *filler) entries(n *yaml.Node, elem *shape, v reflect.Value, path string) {
	for i, c := range n.Content {
		f.value(c, elem, v.Index(i), fmt.Sprintf("%s[%d]", path, i), lineOf(n, i))
	}
}

// section fills a struct, and says which keys are unknown, double or missing.
func (f *filler) section(n *yaml.Node, s *shape, v reflect.Value, path string, line int) {
	seen := map[string]bool{}
	meant := map[string]bool{} // keys that a misspelt one was meant to be
	f.keys(n, path, func(key string, value *yaml.Node, line int) {
		i := slices.IndexFunc(s.fields, func(g field) bool { return g.name == key })
		if i < 0 {
			if near := f.unknown(s, path, key, line); near != "" {
				meant[near] = true
			}
			return
		}
		seen[key] = true
		f.value(value, s.fields[i].shape, v.FieldByIndex(s.fields[i].index), join(path, key), line)
	})
	for _, g := range s.fields {
		full := join(path, g.name)
		switch {
		case f.doc.faulted[full]:
		case !seen[g.name] && meant[g.name]:
			f.doc.faulted[full] = true // one mistake, one fault, also for a Validate method
		case !g.required:
		case !seen[g.name]:
			f.add(line, "", fault.Fault{Field: full, Problem: "is missing", Want: g.shape.wanted()})
		case (g.shape.kind == list || g.shape.kind == table) && v.FieldByIndex(g.index).Len() == 0:
			f.add(f.doc.mark(full), "", fault.Fault{Field: full, Problem: "is empty", Want: g.shape.wanted()})
		}
	}
}

// table fills a map.
func (f *filler) table(n *yaml.Node, s *shape, v reflect.Value, path string) {
	v.Set(reflect.MakeMapWithSize(s.goType, len(n.Content)/2))
	f.keys(n, path, func(key string, value *yaml.Node, line int) {
		if key == "" || len(key) > maxName || strings.ContainsFunc(key, unseen) || strings.ContainsAny(key, "\n\t") {
			f.add(line, "", fault.Fault{Field: path, Given: shown(key), Problem: "is not a name",
				Want: fmt.Sprintf("one line of up to %d characters", maxName)})
			return
		}
		elem := reflect.New(s.goType.Elem()).Elem()
		f.value(value, s.elem, elem, join(path, key), line)
		v.SetMapIndex(reflect.ValueOf(key).Convert(s.goType.Key()), elem)
	})
}

// keys goes through the keys of a mapping, each once.
func (f *filler) keys(n *yaml.Node, path string, each func(key string, value *yaml.Node, line int)) {
	first := map[string]int{}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, line := n.Content[i], lineOf(n, i+1)
		switch at, double := first[k.Value]; {
		case k.Kind != yaml.ScalarNode:
			f.add(line, "", fault.Fault{Field: path, Given: described(k), Problem: "cannot be a key", Want: "a word"})
		case k.ShortTag() == "!!merge":
			f.add(line, "", fault.Fault{Field: path, Given: "<<", Problem: "is not read", Want: "the keys written out"})
		case double:
			said := "in the file or an override"
			if at > 0 {
				said = fmt.Sprint("on line ", at)
			}
			f.add(line, "", fault.Fault{Field: join(path, shown(k.Value)), Problem: "is written twice, first " + said, Want: "one of them"})
		default:
			first[k.Value] = k.Line
			each(k.Value, n.Content[i+1], line)
		}
	}
}

// unknown says that a section has no such key, and what was perhaps meant, which
// it returns.
func (f *filler) unknown(s *shape, path, key string, line int) (near string) {
	wrong := fault.Fault{Field: join(path, shown(key)), Problem: "is not a known key"}
	if f.full() {
		f.add(line, "", wrong)
		return ""
	}
	near = nearest(key, s.names())
	if f.places == nil {
		f.places = map[string][]string{}
		f.top.walk("", func(at string, g field) {
			f.places[g.name] = append(f.places[g.name], strings.TrimSuffix(strings.TrimSuffix(at, g.name), "."))
		})
	}
	switch places := f.places[key]; {
	case len(places) > 0 && len(places) <= 3:
		near = ""
		wrong.Want = "belongs " + strings.Join(slices.Sorted(maps.Keys(asSet(places))), ", or ")
	case near == "":
		wrong.Want = "one of " + strings.Join(s.names(), ", ")
	}
	f.add(line, near, wrong)
	return near
}

// asSet puts each place of a key into words, once.
func asSet(places []string) map[string]bool {
	out := map[string]bool{}
	for _, p := range places {
		if p == "" {
			out["at the top of the file"] = true
		} else {
			out["under "+p] = true
		}
	}
	return out
}
