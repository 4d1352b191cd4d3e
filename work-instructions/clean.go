package workinstructions

import (
	"reflect"

	"ramnest/export/page"
	"ramnest/force/unit"
)

// cleaned gives a copy of the sheet in which every text can be printed, and
// whether anything had to be replaced.
func cleaned(s Sheet) (clean Sheet, replaced bool) {
	out := reflect.New(reflect.TypeFor[Sheet]()).Elem()
	cleanInto(out, reflect.ValueOf(s), &replaced)
	return out.Interface().(Sheet), replaced
}

// cleanInto copies texts, and whatever can hold one; all else is taken over.
func cleanInto(to, from reflect.Value, replaced *bool) {
	switch from.Kind() {
	case reflect.String:
		s, changed := page.Clean(from.String())
		*replaced = *replaced || changed
		to.SetString(s)
	case reflect.Slice:
		if from.IsNil() {
			return
		}
		to.Set(reflect.MakeSlice(from.Type(), from.Len(), from.Len()))
		for i := range from.Len() {
			cleanInto(to.Index(i), from.Index(i), replaced)
		}
	case reflect.Pointer:
		if !from.IsNil() {
			to.Set(reflect.New(from.Type().Elem()))
			cleanInto(to.Elem(), from.Elem(), replaced)
		}
	case reflect.Struct:
		if from.Type() == timeType || from.Type() == reflect.TypeFor[unit.Text]() { // sentences of the method are not printed
			to.Set(from)
			return
		}
		for i := range from.NumField() {
			cleanInto(to.Field(i), from.Field(i), replaced)
		}
	default:
		to.Set(from)
	}
}
