package jobfile

import "testing"

func TestDistance(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		a, b   string
		want   int
		source string
	}{
		{"kitten", "sitting", 3, "the usual example of Levenshtein's distance"},
		{"ca", "abc", 3, "the usual example of the restricted distance with swaps"},
		{"", "abc", 3, "own"},
		{"undercut", "undercut", 0, "own"},
		{"undrecut", "undercut", 1, "own: one swap"},
		{"wände", "wande", 1, "own: letters, not bytes"},
	} {
		if ab, ba := distance(c.a, c.b), distance(c.b, c.a); ab != c.want || ba != c.want {
			t.Errorf("%q, %q: got %d and %d, want %d (%s)", c.a, c.b, ab, ba, c.want, c.source)
		}
	}
}

func TestNearest(t *testing.T) {
	t.Parallel()
	known := []string{"id", "at", "z", "undercut", "joint_diameter", "outer_diameter", "mm", "cm"}
	for _, c := range []struct{ word, want string }{
		{"undercut_", "undercut"},
		{"jointDiameter", "joint_diameter"},
		{"joint-diameter", "joint_diameter"},
		{"diameter", "joint_diameter"}, // the first of two equally near
		{"ID", "id"},
		{"it", ""}, // one of two letters is no likeness
		{"mn", ""},
		{"MM", "mm"},
		{"zebra", ""},
		{"", ""},
	} {
		if got := nearest(c.word, known); got != c.want {
			t.Errorf("%q: got %q, want %q", c.word, got, c.want)
		}
	}
}
