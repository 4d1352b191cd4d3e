package jobfile

import "testing"

func TestNearest(t *testing.T) {
	known := []string{"undercut", "undercut_tol", "mating_angle", "return_angle", "z", "id", "at"}
	for _, c := range []struct{ word, want string }{
		{"undercutt", "undercut"},
		{"udnercut", "undercut"},
		{"Undercut", "undercut"},
		{"matingangle", "mating_angle"},
		{"return-angle", "return_angle"},
		{"undercut_tolerance", "undercut_tol"},
		{"idd", "id"},
		{"banana", ""},
		{"", ""},
	} {
		if got := nearest(c.word, known); got != c.want {
			t.Errorf("%q: got %q, want %q", c.word, got, c.want)
		}
	}
}
