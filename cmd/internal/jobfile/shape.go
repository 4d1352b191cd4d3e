package jobfile

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"ramnest/force/planar"
)

// A kind is what may stand at a place of the file.
type kind int

const (
	section kind = iota // a struct: keys that are known
	table               // a map: keys that the job chooses
	list                // a slice
	tuple               // an array: a list of fixed length
	point               // a force.Point: [x, y], a place or a direction
	number              // a float64, with a dimension
	whole               // an integer
	text                // a string
	truth               // a bool
)

// A shape is a Go type seen as a place in the file: built once a call, so that
// the walk over the nodes reads no tags.
type shape struct {
	kind      kind
	pointer   bool         // optional: nil if the file has no such key
	goType    reflect.Type // behind the pointer
	dimension dimension    // of a number or a point
	oneOf     []string     // of a text; nil: any
	date      bool         // of a text
	elem      *shape       // of a table, list or tuple
	fields    []field      // of a section, in the order of the struct
}

// A field is a key of a section.
type field struct {
	name     string
	index    []int // through inlined structs
	required bool
	owner    string // the Go field: package path, type, name
	shape    *shape
}

// maxName is the longest key, id or word that is taken seriously [bytes].
const maxName = 100

var pointType = reflect.TypeFor[planar.Point]()

// shapeOf gives the shape of the struct that into points to. It panics on a
// struct that cannot be read: that is a mistake in the program.
func shapeOf(into any) *shape {
	t := reflect.TypeOf(into)
	if t == nil || t.Kind() != reflect.Pointer || t.Elem().Kind() != reflect.Struct {
		panic(fmt.Sprintf("jobfile: %T is not a pointer to a struct", into))
	}
	if reflect.ValueOf(into).IsNil() {
		panic(fmt.Sprintf("jobfile: %T is a nil pointer", into))
	}
	return build(t.Elem(), "", t.Elem().String(), nil)
}

// build gives the shape of a type under the tags of the field that holds it.
// where names it in a panic; within are the structs round it.
func build(t reflect.Type, tag reflect.StructTag, where string, within []reflect.Type) *shape {
	wrong := func(what string) { panic("jobfile: " + where + ": " + what) }
	s := &shape{goType: t}
	if t.Kind() == reflect.Pointer {
		s.pointer, t = true, t.Elem()
		s.goType = t
	}
	dim, hasUnit := dimensionOf(tag.Get("unit"))
	if !hasUnit && tag.Get("unit") != "" {
		wrong("unknown unit tag " + tag.Get("unit"))
	}
	needs, takes := false, "" // a unit tag; the tags taken beside it
	switch k := t.Kind(); {
	case t == pointType:
		s.kind, s.dimension, needs = point, dim, true
		if hasUnit && dim.tag != "mm" && dim.tag != "none" {
			wrong("a point is in mm, a direction has no unit")
		}
	case k == reflect.Struct:
		s.kind, s.fields = section, sectionFields(t, where, within)
	case k == reflect.Map && t.Key().Kind() == reflect.String:
		s.kind, s.elem, takes = table, build(t.Elem(), tag, where, within), "all"
	case k == reflect.Slice:
		s.kind, s.elem, takes = list, build(t.Elem(), tag, where, within), "all"
	case k == reflect.Array:
		s.kind, s.elem, takes = tuple, build(t.Elem(), tag, where, within), "all"
	case k == reflect.Float64:
		s.kind, s.dimension, needs = number, dim, true
	case k >= reflect.Int && k <= reflect.Int64, k >= reflect.Uint && k <= reflect.Uint64:
		s.kind = whole
		if hasUnit && dim.tag != "none" {
			wrong("a whole number has no unit")
		}
		hasUnit = false
	case k == reflect.Bool:
		s.kind = truth
	case k == reflect.String:
		s.kind, takes = text, "text"
		s.oneOf, s.date = strings.Fields(tag.Get("oneof")), tag.Get("format") == "date"
	default:
		wrong("cannot be read from a file: " + t.String())
	}
	switch {
	case needs && !hasUnit:
		wrong("has no unit tag")
	case hasUnit && dim.tag != "none" && !needs && takes != "all":
		wrong("has a unit tag but is not a number")
	case takes == "" && (tag.Get("oneof") != "" || tag.Get("format") != ""):
		wrong("has a oneof or format tag but is not a text")
	case tag.Get("format") != "" && tag.Get("format") != "date":
		wrong("unknown format tag " + tag.Get("format"))
	}
	return s
}

// sectionFields gives the keys of a struct, those of inlined structs included.
func sectionFields(t reflect.Type, where string, within []reflect.Type) []field {
	if slices.Contains(within, t) {
		panic("jobfile: " + where + ": contains itself")
	}
	within = append(slices.Clone(within), t)
	var out []field
	add := func(f field) {
		if slices.ContainsFunc(out, func(g field) bool { return g.name == f.name }) {
			panic("jobfile: " + where + ": two fields are called " + f.name)
		}
		out = append(out, f)
	}
	for i := range t.NumField() {
		f := t.Field(i)
		name, flags, _ := strings.Cut(f.Tag.Get("yaml"), ",")
		at := where + "." + f.Name
		switch {
		case name == "-" || !f.IsExported() && !f.Anonymous:
		case flags == "inline" && f.IsExported() && f.Type.Kind() == reflect.Struct:
			for _, g := range sectionFields(f.Type, at, within) {
				g.index = append([]int{i}, g.index...)
				add(g)
			}
		case name == "" || !f.IsExported() || flags != "" && flags != "omitempty":
			panic("jobfile: " + at + ": has no yaml tag that can be read; \"-\" keeps a field out of the file")
		default:
			if r := f.Tag.Get("required"); r != "" && r != "true" {
				panic("jobfile: " + at + ": unknown required tag " + r)
			}
			add(field{name: name, index: []int{i}, required: f.Tag.Get("required") == "true", owner: t.PkgPath() + "." + t.Name() + "." + f.Name,
				shape: build(f.Type, f.Tag, at, within)})
		}
	}
	return out
}

// names lists the keys of a section.
func (s *shape) names() []string {
	out := make([]string, len(s.fields))
	for i, f := range s.fields {
		out[i] = f.name
	}
	return out
}
