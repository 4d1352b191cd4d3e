package export

import (
	"bytes"
	"cmp"
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"ramnest/force/fault"
)

// WriteJSON writes a value as indented JSON with a final newline: struct
// fields in their order, map keys sorted, no HTML escapes, the same bytes for
// the same value.
//
// Numbers that are not whole are written with nine significant digits, and as 0 below
// 1e-9: the digits behind are no measurement, and processors that fuse a product with a
// sum, or compute exponentials in another way, differ there.
//
// A number that JSON cannot hold (NaN, an infinity) is refused with the path
// of every field that has one, as [force.Fault] values joined; nothing has been
// written then. A report with a hole where a number belongs must not pass for
// complete.
func WriteJSON(w io.Writer, v any) error {
	var numbers []error
	if err := findNumbers(reflect.ValueOf(v), "", 0, &numbers); err != nil {
		return err
	}
	if err := errors.Join(numbers...); err != nil {
		return err
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(v); err != nil {
		return fmt.Errorf("report: %w", err)
	}
	_, err := w.Write(shortened(b.Bytes()))
	return err
}

// shortened rounds the numbers of a JSON text that have a point or an exponent.
func shortened(text []byte) []byte {
	out := make([]byte, 0, len(text))
	for i := 0; i < len(text); {
		from := i
		switch c := text[i]; {
		case c == '"':
			for i++; text[i] != '"'; i++ {
				if text[i] == '\\' {
					i++
				}
			}
			i++
		case c == '-' || c >= '0' && c <= '9':
			for i < len(text) && strings.IndexByte("+-.eE0123456789", text[i]) >= 0 {
				i++
			}
			if v, err := strconv.ParseFloat(string(text[from:i]), 64); err == nil && bytes.ContainsAny(text[from:i], ".eE") {
				if math.Abs(v) < 1e-9 {
					v = 0
				}
				v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 9, 64), 64) // of our own digits
				format := byte('f')
				if a := math.Abs(v); a >= 1e21 || a > 0 && a < 1e-6 {
					format = 'e'
				}
				number := strconv.FormatFloat(v+0, format, -1, 64)
				out = append(out, strings.Replace(number, "e-0", "e-", 1)...) // as encoding/json
				continue
			}
		default:
			i++
		}
		out = append(out, text[from:i]...)
	}
	return out
}

// maxDepth is far more than a report nests, and stops a value that holds
// itself.
const maxDepth = 200

var (
	jsonMarshaler = reflect.TypeFor[json.Marshaler]()
	textMarshaler = reflect.TypeFor[encoding.TextMarshaler]()
)

// findNumbers walks a value the way encoding/json does and notes each number
// that it would refuse, with the path in the names of the file.
func findNumbers(v reflect.Value, path string, depth int, faults *[]error) error {
	if depth > maxDepth {
		return fmt.Errorf("report: %s: nested more than %d deep", path, maxDepth)
	}
	if !v.IsValid() {
		return nil
	}
	if t := v.Type(); t.Implements(jsonMarshaler) || t.Implements(textMarshaler) {
		return nil // it writes itself; json reports what it gets wrong
	}
	switch v.Kind() {
	case reflect.Float32, reflect.Float64:
		f := v.Float()
		switch {
		case math.IsNaN(f):
			*faults = append(*faults, fault.Fault{Field: path, Given: "NaN", Problem: "is not a number"})
		case math.IsInf(f, 0):
			*faults = append(*faults, fault.Fault{Field: path, Given: strconv.FormatFloat(f, 'g', -1, 64), Problem: "is not finite"})
		}
	case reflect.Pointer, reflect.Interface:
		return findNumbers(v.Elem(), path, depth+1, faults)
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if err := findNumbers(v.Index(i), path+"["+strconv.Itoa(i)+"]", depth+1, faults); err != nil {
				return err
			}
		}
	case reflect.Map:
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return strings.Compare(fmt.Sprint(a), fmt.Sprint(b)) })
		for _, k := range keys {
			if err := findNumbers(v.MapIndex(k), join(path, fmt.Sprint(k)), depth+1, faults); err != nil {
				return err
			}
		}
	case reflect.Struct:
		t := v.Type()
		for i := range t.NumField() {
			field := t.Field(i)
			name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
			if name == "-" || !field.IsExported() && !field.Anonymous {
				continue
			}
			below := path
			if name != "" || !field.Anonymous {
				below = join(path, cmp.Or(name, field.Name))
			}
			if err := findNumbers(v.Field(i), below, depth+1, faults); err != nil {
				return err
			}
		}
	}
	return nil
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}
