package force

import "testing"

func TestFinishIsForPrintedParts(t *testing.T) {
	for _, c := range []struct{ material, process, finish, want string }{
		{"PA12", "PBF", "", "as_printed"},
		{"PA12", "PBF", "smoothed", "smoothed"},
		{"PLA", "MEX", "tumbled", "tumbled"},
		{"steel", "machined", "", ""},
		{"PC", "moulded", "", ""},
	} {
		m, faults := Resolve(MaterialSpec{Material: c.material, Process: c.process, Finish: c.finish})
		if len(faults) > 0 || m.Finish != c.want {
			t.Errorf("%+v: %q, %v", c, m.Finish, faults)
		}
	}
	for _, c := range []struct{ material, finish string }{{"steel", "smoothed"}, {"PA12", "polished"}} {
		_, faults := Resolve(MaterialSpec{Material: c.material, Finish: c.finish})
		if len(faults) != 1 || faults[0].Field != "finish" {
			t.Errorf("%+v: %v", c, faults)
		}
	}
}
