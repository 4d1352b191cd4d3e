package jobfile

import (
	"fmt"
	"reflect"
	"strings"

	"ramnest/force"
)

// A rule is what the tags of a field say about its value. It holds for the
// elements of a list or map as well.
type rule struct {
	unit   string
	oneof  []string
	isDate bool
}

// A field is one key that a struct accepts.
type field struct {
	name     string
	index    []int
	required bool
	rule
}

var pointType = reflect.TypeFor[force.Point]()

// schema knows the fields of every struct type below a root.
type schema map[reflect.Type][]field

// add enters t and all types below it. It panics on a type or tag that the
// decoder does not know: that is a slip in the program, found by the first
// test that decodes anything.
func (s schema) add(t reflect.Type, r rule) {
	if _, ok := dimensionOf(r.unit); !ok {
		panic(fmt.Sprintf("jobfile: unit tag %q of %v", r.unit, t))
	}
	if t == pointType {
		return
	}
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice, reflect.Array:
		s.add(t.Elem(), r)
	case reflect.Map:
		if t.Key().Kind() != reflect.String {
			panic(fmt.Sprintf("jobfile: key of %v is no string", t))
		}
		s.add(t.Elem(), r)
	case reflect.Struct:
		if _, done := s[t]; done {
			return
		}
		s[t] = nil
		fields := fieldsOf(t)
		s[t] = fields
		for _, f := range fields {
			s.add(t.FieldByIndex(f.index).Type, f.rule)
		}
	case reflect.String, reflect.Bool, reflect.Float64,
		reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64,
		reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
	default:
		panic(fmt.Sprintf("jobfile: cannot decode into %v", t))
	}
}

// keys lists the keys of the struct type in the order of its fields.
func (s schema) keys(t reflect.Type) []string {
	names := make([]string, len(s[t]))
	for i, f := range s[t] {
		names[i] = f.name
	}
	return names
}

// fieldsOf reads the tags of a struct type, inlined structs included.
func fieldsOf(t reflect.Type) []field {
	var out []field
	for i := range t.NumField() {
		sf := t.Field(i)
		name, option, _ := strings.Cut(sf.Tag.Get("yaml"), ",")
		if option == "inline" {
			if sf.Type.Kind() != reflect.Struct {
				panic(fmt.Sprintf("jobfile: inline field %s of %v is no struct", sf.Name, t))
			}
			for _, f := range fieldsOf(sf.Type) {
				f.index = append([]int{i}, f.index...)
				out = append(out, f)
			}
			continue
		}
		if name == "" || name == "-" || !sf.IsExported() {
			continue
		}
		out = append(out, field{
			name:     name,
			index:    []int{i},
			required: sf.Tag.Get("required") == "true",
			rule: rule{
				unit:   sf.Tag.Get("unit"),
				oneof:  strings.Fields(sf.Tag.Get("oneof")),
				isDate: sf.Tag.Get("format") == "date",
			},
		})
	}
	return out
}
