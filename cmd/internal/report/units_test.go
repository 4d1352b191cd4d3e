package report

import (
	"testing"

	"ramnest/force/unit"
)

func TestSentencesOfOtherPackages(t *testing.T) {
	t.Parallel()
	us := units{unit.System{Inch: true, Pound: true}}
	for _, c := range []struct{ in, want string }{
		{"hand force: 889.6 of 444.8 N", "hand force: 200 of 100 lbf"},
		{"passes up to 444.8 N, the design force is 889.6 N; above 30 an hour", "passes up to 100 lbf, the design force is 200 lbf; above 30 an hour"},
		{"from 889.6 N below 444.8 N (-50 %)", "from 200 lbf below 100 lbf (-50 %)"},
		{"within 12.7 to 25.4 mm.", "within 0.5 to 1 in."},
		{"254 x 254 x 254 mm", "10 x 10 x 10 in"},
		{"at 12.7, 25.4 mm", "at 0.5, 1 in"},
		{"rubber mallet 340 g at 3 m/s", "rubber mallet 340 g at 3 m/s"},
		{"face: 175.126835 N/mm", "face: 1000 lbf/in"},
		{"1e+03 mJ", "8.85 in-lbf"},
		{"no figures", "no figures"},
		{"8 Nm", "8 Nm"},
	} {
		if got := us.text(c.in); got != c.want {
			t.Errorf("%q\n got %q\nwant %q", c.in, got, c.want)
		}
		if got := (units{}).text(c.in); got != c.in {
			t.Errorf("metric: %q became %q", c.in, got)
		}
	}
}
