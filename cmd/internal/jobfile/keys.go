package jobfile

// A Key documents one key of a file. It is made from the tags of the struct
// field that takes it:
//
//	yaml:"undercut"       the key; ",inline" puts the keys of a struct in this section
//	unit:"mm"             dimension of a float64 or point: mm, N, deg, MPa, kg, J, s, d, pct, none;
//	                      none may also stand on what is no number
//	oneof:"lower upper"   the words a text may be
//	format:"date"         a text that is a date, 2026-11-25
//	required:"true"       the key may not be left out, a list not be empty
//
// A pointer, a slice, a map or a plain field without the required tag may be
// left out and then keeps what it had before.
type Key struct {
	Path     string   // "latches[].annular.undercut"; "<name>" stands for a name that the job chooses
	Type     string   // section, table, list of numbers, point, number, whole number, text, date, true or false
	Unit     string   // the unit tag; empty for what is no number
	Accepts  []string // units that a value may be written with
	Required bool     // in its section
	OneOf    []string
	About    string // what it is for; may be empty
}

// About says what the keys of a file are for, by the Go field that takes each:
// "ramnest/force.Annular.Undercut".
type About map[string]string

// Keys lists every key of the struct that into points to, each section before
// its keys, in the order of the struct. It panics as [Decode] does.
func Keys(into any, about About) []Key {
	var out []Key
	shapeOf(into).walk("", func(path string, f field) {
		leaf := f.shape
		for leaf.elem != nil {
			leaf = leaf.elem
		}
		out = append(out, Key{
			Path: path, Type: f.shape.typeName(), Unit: leaf.dimension.tag, Accepts: leaf.dimension.names(),
			Required: f.required, OneOf: leaf.oneOf, About: about[f.owner],
		})
	})
	return out
}

// walk calls each for every key at and below a shape.
func (s *shape) walk(path string, each func(path string, f field)) {
	switch s.kind {
	case list, tuple:
		s.elem.walk(path+"[]", each)
	case table:
		s.elem.walk(join(path, "<name>"), each)
	case section:
		for _, f := range s.fields {
			each(join(path, f.name), f)
			f.shape.walk(join(path, f.name), each)
		}
	}
}

// typeName names the shape for a list of keys.
func (s *shape) typeName() string {
	switch s.kind {
	case section:
		return "section"
	case table:
		return "table of " + s.elem.typeNames()
	case list, tuple:
		return "list of " + s.elem.typeNames()
	case point:
		return "point"
	case number:
		return "number"
	case whole:
		return "whole number"
	case truth:
		return "true or false"
	}
	if s.date {
		return "date"
	}
	return "text"
}

// typeNames is the plural of typeName.
func (s *shape) typeNames() string {
	switch s.kind {
	case truth:
		return "true or false"
	case list, tuple:
		return "lists of " + s.elem.typeNames()
	case table:
		return "tables of " + s.elem.typeNames()
	}
	return s.typeName() + "s"
}
