package jobfile

import (
	"bytes"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"
)

// FuzzDecode holds whatever bytes to the laws of the package.
func FuzzDecode(f *testing.F) {
	golden, err := os.ReadFile("testdata/faults.yaml")
	if err != nil {
		f.Fatal(err)
	}
	for _, seed := range []string{
		full, placed, overridden, string(golden), "", "job: [", "a: &a [*a]\n", "job: 'x\n", "%YAML 1.2\n---\njob: x\n", "? x\n", "- - - x\n",
		"job: x\nwall: 1e308 in\n", "job: x\nwall: |\n  3\n", "{job: x, wall: 3 mm}", "job: x # c\n# d\n\n- e\n", "\ufeffjob: x\r\nwall: 2\r\n",
	} {
		f.Add([]byte(seed), "wall=3")
		f.Add([]byte(seed), "parts.cap.ring.undercut=[1")
	}
	f.Fuzz(func(t *testing.T, data []byte, set string) {
		decode := func(data []byte, sets ...string) (sample, *Document, Problems) {
			var s sample
			d, p := Decode("job.yaml", data, &s, Options{MaxBytes: 1 << 16, Set: sets})
			return s, d, p
		}
		decode(data, set) // no panic
		s, d, p := decode(data)
		lines := bytes.Count(data, []byte("\n")) + 1
		for i, q := range p {
			text := q.String()
			if q.Problem == "" || q.File != "job.yaml" || q.Line < 0 || q.Line > lines || !utf8.ValidString(text) || strings.ContainsAny(text, "\n\r\x1b") {
				t.Errorf("problem %d of %q: %+v", i, data, q)
			}
			if i > 0 && q.Line != 0 && q.Line < p[i-1].Line {
				t.Errorf("%q: out of order: %v", data, p)
			}
		}
		if again, _, q := decode(data); !reflect.DeepEqual(again, s) || !reflect.DeepEqual(q, p) {
			t.Errorf("%q: twice differs: %v and %v", data, p, q)
		}
		if len(p) == 0 {
			if s.Job == "" {
				t.Errorf("%q: a required text is empty", data)
			}
			finite(t, data, reflect.ValueOf(s))
		}
		// A comment line on top moves every line by one and changes nothing else.
		if !bytes.HasPrefix(data, []byte("\ufeff")) && len(data) < 1<<15 {
			moved, _, q := decode(append([]byte("#\n"), data...))
			for i := range q {
				if q[i].Line > 0 {
					q[i].Line--
				}
			}
			if utf8.Valid(data) && !sameSaid(p, q) || len(p) == 0 && !reflect.DeepEqual(moved, s) {
				t.Errorf("%q: got %v, below a comment %v", data, p, q)
			}
		}
		if line, ok := d.Place("parts[0].ring.undercut"); ok && (line < 1 || line > lines) {
			t.Errorf("%q: place on line %d of %d", data, line, lines)
		}
	})
}

// sameSaid compares problems apart from "first on line", which moves as well.
func sameSaid(p, q Problems) bool {
	if len(p) != len(q) {
		return false
	}
	for i := range p {
		a, b := p[i], q[i]
		if strings.HasPrefix(a.Problem, "is written twice") {
			a.Problem, b.Problem = "", ""
		}
		if a != b {
			return false
		}
	}
	return true
}

// finite looks at every number of a value.
func finite(t *testing.T, data []byte, v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Errorf("%q: number %v", data, x)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			finite(t, data, v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, data, v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			finite(t, data, v.Index(i))
		}
	case reflect.Map:
		for _, k := range v.MapKeys() {
			finite(t, data, v.MapIndex(k))
		}
	}
}

// FuzzQuantity reads lengths: finite, within a rounding of a plain calculation,
// and the same in its own unit and in a thousandth of it.
func FuzzQuantity(f *testing.F) {
	for _, s := range []string{"1 mm", "0.1 in", "12 thou", "1e308 in", ".5", "-0", "0x1p3 mm", "1e-320 thou", "3 µm", "1,5", "nan", "1 1 mm"} {
		f.Add(s)
	}
	mm, _ := dimensionOf("mm")
	f.Fuzz(func(t *testing.T, s string) {
		v, fault, _ := quantity(s, false, mm, metric)
		if math.IsNaN(v) || math.IsInf(v, 0) || v == 0 && math.Signbit(v) || fault != nil && v != 0 {
			t.Errorf("%q: got %v, fault %v", s, v, fault)
		}
		figure, rest := cutNumber(strings.TrimSpace(s))
		if figure+rest != strings.TrimSpace(s) {
			t.Errorf("%q: cut into %q and %q", s, figure, rest)
		}
		if fault != nil || figure == "" {
			return
		}
		a, faultA, _ := quantity(figure+" in", false, mm, metric)
		b, faultB, _ := quantity(figure, false, mm, Units{Length: "in", Force: "lbf"})
		if a != b || (faultA == nil) != (faultB == nil) {
			t.Errorf("%q: %v in written out, %v in a job of inches", figure, a, b)
		}
	})
}
