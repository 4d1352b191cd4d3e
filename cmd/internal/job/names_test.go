package job_test

import (
	"strings"
	"testing"

	"ramnest/cmd/internal/job"
)

func TestStem(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ number, want string }{
		{"FWL-1042", "FWL-1042"},
		{"a.b_C-9", "a.b_C-9"},
		{"1042", "1042"},
	} {
		if got := job.Stem(c.number); got != c.want {
			t.Errorf("Stem(%q) = %q, want %q", c.number, got, c.want)
		}
	}
	// What is changed gets a hash; numbers that look alike afterwards stay apart.
	seen := map[string]string{}
	for _, number := range []string{"FWL 1042", "FWL/1042", "FWL:1042", "FWL_1042", "FWL\\1042", "Fjäll", "Fj_ll", ".hidden", "hidden", "-rf", "rf", "../up", "+", "_", "FWL_1042+777cb6fd", strings.Repeat("7", 61), strings.Repeat("7", 60), "…"} {
		got := job.Stem(number)
		if other, taken := seen[got]; taken {
			t.Errorf("%q and %q both become %q", other, number, got)
		}
		seen[got] = number
		if strings.Trim(got, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789._-+") != "" || strings.ContainsAny(got[:1], ".-") || len(got) > 70 {
			t.Errorf("Stem(%q) = %q is no safe name", number, got)
		}
	}
}
