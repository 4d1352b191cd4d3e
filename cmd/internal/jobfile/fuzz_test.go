package jobfile

import (
	"math"
	"math/big"
	"reflect"
	"strings"
	"testing"
	"unicode"
)

// FuzzDecode: whatever the bytes, the same answer twice; problems in file order,
// each one printable line within the file; without problems only finite values.
func FuzzDecode(f *testing.F) {
	for _, seed := range []string{metric, inches, "width: [", "a: &a [*a]", "units: in\nwidth: 1e308", "? {a: 1}\n: 2\n", "%YAML 1.1\n---\n"} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var s, again sample
		_, problems := Decode("job.yaml", data, &s)
		_, second := Decode("job.yaml", data, &again)
		if !reflect.DeepEqual(problems, second) || !reflect.DeepEqual(s, again) {
			t.Fatalf("%q: two answers:\n%+v %v\n%+v %v", data, s, problems, again, second)
		}
		last, lines := 0, 1+len(strings.FieldsFunc(string(data), func(r rune) bool { return false }))
		lines += strings.Count(string(data), "\n") + strings.Count(string(data), "\r") +
			strings.Count(string(data), "\u0085") + strings.Count(string(data), "\u2028") + strings.Count(string(data), "\u2029")
		for _, p := range problems {
			if p.Line < last || p.Line > lines || p.Problem == "" {
				t.Errorf("%q: %v after line %d of %d", data, p, last, lines)
			}
			if strings.ContainsFunc(p.String(), unicode.IsControl) {
				t.Errorf("%q: %q is not fit for a terminal", data, p.String())
			}
			last = p.Line
		}
		eachFloat(reflect.ValueOf(s), func(v float64) {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("%q gives %v", data, v)
			}
		})
	})
}

// FuzzNumber: a length is either refused, or finite and the same to the last bit
// as the exact product of figure and unit.
func FuzzNumber(f *testing.F) {
	f.Add("0.5")
	f.Add("1e-320")
	f.Add("-17.3e2")
	f.Fuzz(func(t *testing.T, figure string) {
		got, fault := (&system{}).number(figure+" in", "mm", false)
		if fault != nil {
			return
		}
		x, ok := new(big.Rat).SetString(strings.TrimSpace(figure))
		if !ok {
			t.Fatalf("%q is taken as %v, but is no number", figure, got)
		}
		want, _ := x.Mul(x, big.NewRat(254, 10)).Float64()
		plain, fault := (&system{inches: true}).number(figure, "mm", false)
		if got != want || plain != want || fault != nil {
			t.Errorf("%q in: got %v, as plain number %v (%v), want %v", figure, got, plain, fault, want)
		}
	})
}

func eachFloat(v reflect.Value, visit func(float64)) {
	switch v.Kind() {
	case reflect.Float64:
		visit(v.Float())
	case reflect.Pointer:
		if !v.IsNil() {
			eachFloat(v.Elem(), visit)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			eachFloat(v.Field(i), visit)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			eachFloat(v.Index(i), visit)
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			eachFloat(v.MapIndex(k), visit)
		}
	}
}
