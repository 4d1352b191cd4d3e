package force

import (
	"fmt"
	"strings"

	"ramnest/force/fault"
)

// Validate returns what is wrong with the latch, field paths relative to it.
func (l Latch) Validate() []fault.Fault { return l.validate(maxPlaces) }

// validate is Validate with so many places at most.
func (l Latch) validate(most int) []fault.Fault {
	var out []fault.Fault
	if l.ID == "" {
		out = append(out, fault.Fault{Field: "id", Problem: "is missing", Want: "a short name, unique in the job"})
	}
	if len(l.At) == 0 {
		out = append(out, fault.Fault{Field: "at", Problem: "is empty", Want: "one plan position or more"})
	}
	if len(l.At) > most {
		out = append(out, fault.Fault{Field: "at", Given: fmt.Sprint(len(l.At), " places"), Problem: "are too many",
			Want: fmt.Sprintf("%d at most, or a higher limit", most)})
	}
	for i, p := range l.At {
		if !within(p.X, -maxLength, maxLength) || !within(p.Y, -maxLength, maxLength) {
			out = append(out, fault.Fault{Field: fmt.Sprintf("at[%d]", i), Given: fmt.Sprintf("%.6g, %.6g mm", p.X, p.Y),
				Problem: "is not a place on a hand-sized job", Want: "-10000 to 10000 mm"})
		}
	}
	out = append(out, lengthFault("z", l.Z, -maxLength, maxLength)...)
	if l.Engage != nil {
		out = append(out, lengthFault("engage", *l.Engage, smallest, maxLength)...)
	}
	if l.Use != "" && l.Use != "permanent" && l.Use != "releasable" {
		out = append(out, fault.Fault{Field: "use", Given: l.Use, Problem: "is not known", Want: "permanent or releasable"})
	}
	known := "one of " + strings.Join(Kinds(), ", ")
	switch names, stated := l.stated(); len(names) {
	case 0:
		out = append(out, fault.Fault{Problem: "says no kind of latch", Want: known})
	case 1:
		out = append(out, fault.Under(names[0], stated[0].Validate())...)
	default:
		out = append(out, fault.Fault{Given: strings.Join(names, ", "), Problem: "are several kinds of latch", Want: known})
	}
	return out
}
