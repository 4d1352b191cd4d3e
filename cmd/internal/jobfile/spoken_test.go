package jobfile

import "testing"

func TestFaultsSpeakTheUnitsOfTheJob(t *testing.T) {
	t.Parallel()
	inches, pounds := Units{"in", "lbf"}, Units{"mm", "lbf"}
	for _, c := range []struct {
		units      Units
		text, want string
	}{
		{inches, "0.0001 to 12.7 mm", "0.000003937 to 0.5 in"},
		{inches, "must be 25.4 mm or more", "must be 1 in or more"},
		{inches, "within x -32.02 to 32 mm, y 2.54 mm", "within x -1.261 to 1.26 in, y 0.1 in"},
		{inches, "44.482216 N at 3 N/mm", "10 lbf at 3 N/mm"},
		{inches, "A 5 Nm wrench, 12 mmx", "A 5 Nm wrench, 12 mmx"},
		{pounds, "25.4 mm and 444.82216 N", "25.4 mm and 100 lbf"},
		{metric, "25.4 mm and 100 N", "25.4 mm and 100 N"},
		{inches, "2 to 80 deg", "2 to 80 deg"},
	} {
		if got := c.units.Spoken(c.text); got != c.want {
			t.Errorf("%v, %q: %q, want %q", c.units, c.text, got, c.want)
		}
	}
}
