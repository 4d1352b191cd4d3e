package jobfile

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"gopkg.in/yaml.v3"

	"ramnest/force"
)

// value decodes node n into v and tells whether nothing was wrong with it. A
// faulty scalar leaves v as it was; a list or block keeps what is right in it.
func (d *decoder) value(n *yaml.Node, v reflect.Value, path string, line int, r rule) bool {
	d.doc.lines[path] = line
	if n.Kind == yaml.ScalarNode && isEmpty(n) {
		d.fault(path, line, force.Fault{Problem: "has no value", Want: "a value, or leave the key out"})
		return false
	}
	switch {
	case v.Type() == pointType:
		return d.point(n, v, path, line, r)
	case v.Kind() == reflect.Pointer:
		p := reflect.New(v.Type().Elem())
		ok := d.value(n, p.Elem(), path, line, r)
		if ok || p.Elem().Kind() == reflect.Struct {
			v.Set(p)
		}
		return ok
	case v.Kind() == reflect.Struct:
		return d.block(n, v, path, line)
	case v.Kind() == reflect.Map:
		return d.table(n, v, path, line, r)
	case v.Kind() == reflect.Slice:
		return d.list(n, v, path, line, r)
	case v.Kind() == reflect.Array:
		return d.array(n, v, path, line, r)
	}
	return d.scalar(n, v, path, line, r)
}

// block decodes a mapping into a struct.
func (d *decoder) block(n *yaml.Node, v reflect.Value, path string, line int) bool {
	if n.Kind != yaml.MappingNode {
		d.fault(path, line, force.Fault{Given: given(n), Problem: "must be a block of keys", Want: known(d.schema.keys(v.Type()))})
		return false
	}
	ok := true
	first := map[string]int{}
	meant := map[string]bool{} // keys that an unknown one was probably meant for
	fields := d.schema[v.Type()]
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, child := n.Content[i], n.Content[i+1]
		name, good := d.key(key, path, first)
		if !good {
			ok = false
			continue
		}
		var f *field
		for j := range fields {
			if fields[j].name == name {
				f = &fields[j]
			}
		}
		if f == nil {
			ok = false
			names := d.schema.keys(v.Type())
			fault := force.Fault{Problem: "unknown key"}
			near := nearest(name, names)
			if near == "" {
				fault.Want = known(names)
			}
			d.fault(join(path, name), key.Line, fault)
			d.problems[len(d.problems)-1].Near = near
			meant[near] = true
			continue
		}
		r := f.rule
		if path == "" && rootChoices(name) != nil {
			r.oneof = rootChoices(name)
		}
		if !d.value(child, v.FieldByIndex(f.index), join(path, name), key.Line, r) {
			ok = false
		}
		if f.required && child.Kind != yaml.ScalarNode && len(child.Content) == 0 && holdsMany(v.FieldByIndex(f.index).Type()) {
			ok = false
			d.fault(join(path, name), key.Line, force.Fault{Problem: "is empty", Want: "at least one entry"})
		}
	}
	for _, f := range fields {
		if f.required && first[f.name] == 0 && !meant[f.name] {
			ok = false
			d.fault(join(path, f.name), line, force.Fault{Problem: "is missing", Want: d.expected(f)})
		}
	}
	return ok
}

// expected says in a few words what a required field holds.
func (d *decoder) expected(f field) string {
	dim, _ := dimensionOf(f.unit)
	switch {
	case len(f.oneof) > 0:
		return orList(f.oneof)
	case f.isDate:
		return "a date, 2026-03-31"
	case len(dim.units) > 0:
		return "a " + dim.noun + " in " + d.system.plain(f.unit, dim).name
	}
	return ""
}

// key reads the key of a mapping and reports one that is none or was there
// before. First: the lines of the keys so far.
func (d *decoder) key(n *yaml.Node, path string, first map[string]int) (string, bool) {
	name := n.Value
	bad := ""
	switch {
	case n.Kind != yaml.ScalarNode:
		bad = "a key must be a word"
	case n.ShortTag() == "!!merge":
		bad = "merge key << is not accepted"
	case n.ShortTag() == "!!null" || strings.TrimSpace(name) == "":
		bad = "a key is empty"
	case utf8.RuneCountInString(name) > maxKey:
		bad = fmt.Sprintf("a key has more than %d letters", maxKey)
	case strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsPrint(r) }):
		bad = "a key has letters that cannot be printed"
	}
	if bad != "" {
		d.fault(join(path, "?"), n.Line, force.Fault{Problem: bad})
		return "", false
	}
	if line := first[name]; line > 0 {
		d.fault(join(path, name), n.Line, force.Fault{Problem: "key is there twice", Want: "once; the first is on line " + strconv.Itoa(line)})
		return "", false
	}
	first[name] = n.Line
	return name, true
}

// table decodes a mapping with free keys.
func (d *decoder) table(n *yaml.Node, v reflect.Value, path string, line int, r rule) bool {
	if n.Kind != yaml.MappingNode {
		d.fault(path, line, force.Fault{Given: given(n), Problem: "must be a block of names, each with its value"})
		return false
	}
	ok := true
	first := map[string]int{}
	out := reflect.MakeMap(v.Type())
	for i := 0; i+1 < len(n.Content); i += 2 {
		key := n.Content[i]
		name, good := d.key(key, path, first)
		if !good {
			ok = false
			continue
		}
		item := reflect.New(v.Type().Elem()).Elem()
		good = d.value(n.Content[i+1], item, join(path, name), key.Line, r)
		if good || item.Kind() == reflect.Struct {
			out.SetMapIndex(reflect.ValueOf(name).Convert(v.Type().Key()), item)
		}
		ok = ok && good
	}
	v.Set(out)
	return ok
}

// list decodes a sequence of any length. A faulty entry stays zero, so that
// the others keep their place.
func (d *decoder) list(n *yaml.Node, v reflect.Value, path string, line int, r rule) bool {
	if n.Kind != yaml.SequenceNode {
		d.fault(path, line, force.Fault{Given: given(n), Problem: "must be a list", Want: "[...] or one line with a dash for each entry"})
		return false
	}
	out := reflect.MakeSlice(v.Type(), len(n.Content), len(n.Content))
	ok := d.entries(n, out, path, r)
	v.Set(out)
	return ok
}

// array decodes a sequence of fixed length.
func (d *decoder) array(n *yaml.Node, v reflect.Value, path string, line int, r rule) bool {
	if n.Kind != yaml.SequenceNode || len(n.Content) != v.Len() {
		d.fault(path, line, force.Fault{Given: given(n), Problem: fmt.Sprintf("must be a list of %d values", v.Len())})
		return false
	}
	out := reflect.New(v.Type()).Elem()
	if !d.entries(n, out, path, r) {
		return false
	}
	v.Set(out)
	return true
}

// point decodes [x, y]; a length unless the field says otherwise.
func (d *decoder) point(n *yaml.Node, v reflect.Value, path string, line int, r rule) bool {
	if n.Kind != yaml.SequenceNode || len(n.Content) != 2 {
		d.fault(path, line, force.Fault{Given: given(n), Problem: "must be a position in plan", Want: "[x, y]"})
		return false
	}
	if r.unit == "" {
		r.unit = "mm"
	}
	var xy [2]float64
	if !d.entries(n, reflect.ValueOf(&xy).Elem(), path, r) {
		return false
	}
	v.Set(reflect.ValueOf(force.Point{X: xy[0], Y: xy[1]}))
	return true
}

func (d *decoder) entries(n *yaml.Node, out reflect.Value, path string, r rule) bool {
	ok := true
	for i, child := range n.Content {
		if !d.value(child, out.Index(i), path+"["+strconv.Itoa(i)+"]", child.Line, r) {
			ok = false
		}
	}
	return ok
}

// holdsMany tells whether the type is a list or table of any length.
func holdsMany(t reflect.Type) bool {
	if t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	return t.Kind() == reflect.Slice || t.Kind() == reflect.Map
}

// join puts a key below a path.
func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
