package jobfile

import (
	"fmt"
	"reflect"
	"strings"

	"gopkg.in/yaml.v3"

	"ramnest/force"
)

// Decode reads the job file data, called name in messages, into the struct that
// into points to. Fields that the file does not name keep their value.
//
// The root keys units (mm or in) and force_units (N or lbf) say what plain
// lengths and forces are; in alone means inches and lbf. They are fields of the
// struct like any other. A number with a unit ("0.5 in") is taken as it says.
//
// All problems are returned, in the order of the file. If there are any, into
// holds what could be read, for Validate to look at; it is not to be used for
// anything else. The document is never nil.
func Decode(name string, data []byte, into any) (*Document, Problems) {
	target := reflect.ValueOf(into)
	if target.Kind() != reflect.Pointer || target.IsNil() || target.Elem().Kind() != reflect.Struct {
		panic(fmt.Sprintf("jobfile: Decode into %T, want a pointer to a struct", into))
	}
	d := &decoder{
		doc:    &Document{name: name, lines: map[string]int{"": 1}},
		schema: schema{},
	}
	d.schema.add(target.Elem().Type(), rule{})
	root, refused := parse(data)
	if refused != nil {
		d.refuse(*refused)
		return d.doc, d.problems
	}
	if bad := structure(root); len(bad) > 0 {
		for _, r := range bad {
			d.refuse(r)
		}
		d.problems.sort()
		return d.doc, d.problems
	}
	d.units(root, target.Elem())
	d.value(root, target.Elem(), "", root.Line, rule{})
	d.problems.sort()
	if len(d.problems) > maxProblems {
		last := d.problems[maxProblems-1].Line
		more := len(d.problems) - maxProblems
		d.problems = append(d.problems[:maxProblems:maxProblems], Problem{
			File: name, Line: last,
			Fault: force.Fault{Problem: fmt.Sprintf("%d more faults from here on", more)},
		})
	}
	return d.doc, d.problems
}

// decoder is the state of one run.
type decoder struct {
	doc      *Document
	schema   schema
	system   system
	problems Problems
}

// fault reports a problem with the value at path.
func (d *decoder) fault(path string, line int, f force.Fault) {
	f.Field = path
	d.problems = append(d.problems, Problem{File: d.doc.name, Line: line, Fault: f})
	d.doc.bad = append(d.doc.bad, path)
}

// refuse reports a problem of the file as a whole.
func (d *decoder) refuse(r refusal) {
	d.fault("", r.line, force.Fault{Problem: r.problem, Want: r.want})
}

// The root keys that say what plain numbers are, and what they may say.
const (
	unitsKey      = "units"
	forceUnitsKey = "force_units"
)

func rootChoices(key string) []string {
	switch key {
	case unitsKey:
		return []string{"mm", "in"}
	case forceUnitsKey:
		return []string{"N", "lbf"}
	}
	return nil
}

// units looks up the units of the file before anything else is read. What it
// does not understand is reported later, when the field itself is decoded.
func (d *decoder) units(root *yaml.Node, target reflect.Value) {
	said := map[string]string{}
	for _, f := range d.schema[target.Type()] {
		if v := target.FieldByIndex(f.index); rootChoices(f.name) != nil && v.Kind() == reflect.String {
			said[f.name] = v.String()
		}
	}
	if root.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(root.Content); i += 2 {
			key, value := root.Content[i], root.Content[i+1]
			if _, known := said[key.Value]; known && value.Kind == yaml.ScalarNode {
				said[key.Value] = strings.TrimSpace(value.Value)
			}
		}
	}
	d.system.inches = said[unitsKey] == "in"
	d.system.poundsForce = said[forceUnitsKey] == "lbf" || said[forceUnitsKey] != "N" && d.system.inches
}
