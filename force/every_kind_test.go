package force

import (
	"reflect"
	"slices"
	"testing"
)

// Every kind of latch: a sound job gives finite figures in their order, and the
// design force is the one stated, the P95.
func TestEveryKindGivesFiguresInOrder(t *testing.T) {
	for _, a := range everyJob() {
		id := a.Latches[0].ID
		if faults := a.Validate(); len(faults) > 0 {
			t.Errorf("%s: %v", id, faults)
			continue
		}
		r, err := Analyse(a)
		if err != nil {
			t.Errorf("%s: %v", id, err)
			continue
		}
		for name, v := range map[string]float64{"peak": r.Peak, "work": r.Work, "stroke": r.Stroke, "P95": r.P95, "worst": r.Worst} {
			if !finite(v) || v <= 0 {
				t.Errorf("%s: %s is %g; want a finite figure above 0", id, name, v)
			}
		}
		if r.P5 > r.P50 || r.P50 > r.P95 || r.Design != r.P95 {
			t.Errorf("%s: P5 %g, P50 %g, P95 %g, design %g N; want them rising and the design force the P95", id, r.P5, r.P50, r.P95, r.Design)
		}
	}
}

// TestEveryKindIsRegisteredAndHasAJob: each field of a latch that holds a joint stands in
// the registry under its key in the job file, and the shared jobs have one of each, so
// that every law of this package runs over every kind.
func TestEveryKindIsRegisteredAndHasAJob(t *testing.T) {
	var keys []string
	latch := reflect.TypeFor[Latch]()
	for i := range latch.NumField() {
		f := latch.Field(i)
		if f.Type.Kind() == reflect.Pointer && f.Type.Elem().Implements(reflect.TypeFor[Kind]()) {
			keys = append(keys, f.Tag.Get("yaml"))
		}
	}
	if !slices.Equal(keys, Kinds()) {
		t.Errorf("keys of a latch %v, registry %v", keys, Kinds())
	}
	for _, kind := range Kinds() {
		if !slices.ContainsFunc(everyJob(), func(a Assembly) bool { return a.Latches[0].Kind() == kind }) {
			t.Errorf("no shared job of the tests has a latch of kind %s", kind)
		}
	}
}
