package report

import (
	"math"
	"testing"
)

func TestFiguresInTheJobsOwnUnits(t *testing.T) {
	t.Parallel()
	metric, us, mixed := units{}, units{inch: true, pound: true}, units{inch: true}
	for _, c := range []struct {
		u    units
		v    float64
		unit string
		want string
	}{
		{metric, 12.7, "mm", "12.7 mm"}, {us, 12.7, "mm", "0.5 in"}, {mixed, 12.7, "mm", "0.5 in"},
		{metric, 4.4482216152605, "N", "4.45 N"}, {us, 4.4482216152605, "N", "1 lbf"}, {mixed, 4.4482216152605, "N", "4.45 N"},
		{us, 6.894757293, "MPa", "1000 psi"}, {mixed, 6.894757293, "MPa", "6.89 MPa"},
		{metric, 999, "mJ", "999 mJ"}, {metric, 1500, "mJ", "1.5 J"}, {us, 112.984829, "mJ", "1 in-lbf"},
		{us, 0.45359237, "kg", "1 lb"}, {metric, 0.25, "kg", "0.25 kg"},
		{us, 0.175126835, "N/mm", "1 lbf/in"}, {us, 645.16, "mm2", "1 square in"}, {metric, 12, "mm2", "12 square mm"},
		{us, 45, "an hour", "45 an hour"}, {us, 1, "", "1"}, {metric, math.Copysign(0, -1), "N", "0 N"},
	} {
		if got := c.u.say(c.v, c.unit); got != c.want {
			t.Errorf("%v: %g %s = %q, want %q", c.u, c.v, c.unit, got, c.want)
		}
	}
}

func TestNumber(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		v    float64
		want string
	}{{0, "0"}, {0.00012345, "0.000123"}, {1.2345, "1.23"}, {99.949, "99.9"}, {99.96, "100"}, {12345.6, "12346"}, {-3.14159, "-3.14"}, {-0.4e-12, "-0.0000000000004"}} {
		if got := number(c.v); got != c.want {
			t.Errorf("number(%g) = %q, want %q", c.v, got, c.want)
		}
	}
}

func TestSentencesOfOtherPackages(t *testing.T) {
	t.Parallel()
	us := units{inch: true, pound: true}
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
