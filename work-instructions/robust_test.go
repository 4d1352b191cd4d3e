package workinstructions

import (
	"bytes"
	"errors"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"ramnest/export/page/pagetest"
	"ramnest/force/fault"
)

// fields visits every text and every number of a sheet that can be set, lists
// and long curves by their first entry.
func fields(v reflect.Value, visit func(reflect.Value)) {
	switch v.Kind() {
	case reflect.String, reflect.Float64, reflect.Int:
		visit(v)
	case reflect.Slice, reflect.Array:
		for i := range min(v.Len(), 1) {
			fields(v.Index(i), visit)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			fields(v.Elem(), visit)
		}
	case reflect.Struct:
		if v.Type() == timeType {
			return
		}
		for i := range v.NumField() {
			fields(v.Field(i), visit)
		}
	}
}

// Whatever stands in one field, the sheet is written whole or refused with a
// fault; no infinity and no missing number gets onto paper.
func TestAnyValueInAnyField(t *testing.T) {
	strange := map[reflect.Kind][]any{
		reflect.String:  {"\x00\x02) Tj (", strings.Repeat("W", MostName)},
		reflect.Float64: {-1.0, 1e-9, 1e9, math.NaN()},
		reflect.Int:     {-1, 1_000_000_000},
	}
	s := demoSheet(t)
	s.Steps[0].Pictures = Pictures{}
	for i := range s.Parts {
		s.Parts[i].Picture, s.Tooling[i].Picture = nil, nil
	}
	written, refused, every := 0, 0, 3
	if os.Getenv("RAMNEST_LONG") != "" {
		every = 1
	}
	n := 0
	fields(reflect.ValueOf(&s), func(v reflect.Value) {
		was := reflect.New(v.Type()).Elem()
		was.Set(v)
		defer v.Set(was)
		for _, value := range strange[v.Kind()] {
			if n++; n%every != 0 {
				continue
			}
			v.Set(reflect.ValueOf(value).Convert(v.Type()))
			var out bytes.Buffer
			if err := Write(&out, s); err != nil {
				if _, ok := errors.AsType[fault.Fault](err); !ok || out.Len() > 0 {
					t.Errorf("%v %.20v: %v, %d bytes (%v)", v.Kind(), value, err, out.Len(), v.Type())
				}
				refused++
				continue
			}
			written++
			text := strings.Join(pagetest.Lines(t, out.Bytes()), "\n")
			for _, bad := range []string{"NaN", "Inf", "%!", "e+"} {
				if strings.Contains(text, bad) {
					t.Errorf("%v %v: %q is printed", v.Kind(), value, bad)
				}
			}
		}
	})
	t.Logf("%d sheets written, %d refused", written, refused)
	if written < 80/every || refused < 80/every {
		t.Errorf("%d written, %d refused; the test does not reach what it should", written, refused)
	}
}
