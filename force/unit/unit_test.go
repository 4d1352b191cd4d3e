package unit_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	. "ramnest/force/unit"
)

var metric, us, inches, pounds = System{}, System{Inch: true, Pound: true}, System{Inch: true}, System{Pound: true}

// By definition 1 in = 25.4 mm, 1 lb = 0.45359237 kg, g = 9.80665 m/s2; the values were
// worked out by hand from those.
func TestFigures(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		s    System
		f    Figure
		want string
	}{
		{metric, Length.Of(12.7), "12.7 mm"}, {us, Length.Of(12.7), "0.5 in"}, {inches, Length.Of(12.7), "0.5 in"}, {pounds, Length.Of(12.7), "12.7 mm"},
		{metric, Force.Of(4.4482216152605), "4.45 N"}, {us, Force.Of(4.4482216152605), "1 lbf"}, {inches, Force.Of(4.4482216152605), "4.45 N"}, {pounds, Force.Of(917), "206 lbf"},
		{us, Stress.Of(6.894757293), "1000 psi"}, {inches, Stress.Of(6.894757293), "6.89 MPa"},
		{metric, Energy.Of(999), "999 mJ"}, {metric, Energy.Of(1500), "1.5 J"}, {us, Energy.Of(112.984829), "1 in-lbf"},
		{us, Mass.Of(0.45359237), "1 lb"}, {metric, Mass.Of(0.25), "0.25 kg"}, {us, Stiffness.Of(0.175126835), "1 lbf/in"},
		{us, Area.Of(645.16), "1 square in"}, {metric, Area.Of(12), "12 square mm"}, {us, Bulk.Of(16387.064), "1 cubic in"}, {metric, Volume.Of(2), "2 cubic cm"},
		{us, Kind("an hour").Of(45), "45 an hour"}, {us, Plain.Of(1), "1"}, {metric, Force.Of(math.Copysign(0, -1)), "0 N"},
		{us, Angle.Of(math.Pi / 4), "45 deg"}, {us, Share.Of(0.125), "12.5 %"}, {us, Speed.Of(3), "3 m/s"},
		{metric, Length.Of(4.2).To(Shop), "4.2 mm"}, {inches, Length.Of(4.2).To(Shop), "0.165 in"}, {metric, Length.Of(-0.04).To(Shop), "0.0 mm"},
		{metric, Length.Of(0.054).To(Fine), "0.05 mm"}, {inches, Length.Of(25.4).To(Fine), "1.000 in"}, {inches, Length.Of(0.5).To(Grid), "0.0197 in"},
		{metric, Plain.Of(0), "0"}, {metric, Plain.Of(0.00012345), "0.000123"}, {metric, Plain.Of(99.949), "99.9"}, {metric, Plain.Of(99.96), "100"},
		{metric, Plain.Of(12345.6), "12346"}, {metric, Plain.Of(-3.14159), "-3.14"}, {metric, Plain.Of(999.96).To(4), "1000"}, {metric, Plain.Of(999.94).To(4), "999.9"},
	} {
		if got := c.f.Text(c.s, nil); got != c.want {
			t.Errorf("%v: %+v = %q, want %q", c.s, c.f, got, c.want)
		}
	}
	comma := func(s string) string { return strings.Replace(s, ".", ",", 1) }
	if got := Mass.Of(0.25).Text(us, comma); got != "0,551 lb" {
		t.Errorf("with a comma %q", got)
	}
}

// A limit that is printed is never wider than the one that was worked out, and no
// further from it than one step.
func TestInward(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		s := System{Inch: r.IntN(2) == 0}
		f := Length.Of(r.Float64()*3 - 1).To(Fine)
		for _, up := range []bool{false, true} {
			v, err := strconv.ParseFloat(f.Inward(s, up).Number(s, nil), 64)
			if err != nil {
				t.Fatal(err)
			}
			v *= s.One(Length)
			if off := v - f.Value; up && off < -1e-8 || !up && off > 1e-8 || math.Abs(off) > 0.0254 {
				t.Fatalf("%v %v up %v: %.9f", s, f.Value, up, v)
			}
		}
	}
	if got := Length.Of(0.3).To(Fine).Inward(metric, false).String(); got != "0.30 mm" {
		t.Errorf("a round limit became %s", got)
	}
}

// Two figures that differ can be told from each other in every system.
func TestApart(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		a := math.Pow(10, 6*r.Float64()-3)
		b := a * (1 + math.Pow(10, -1-6*r.Float64()))
		for _, s := range []System{metric, us, inches, pounds} {
			if x, y := Apart(3, Force, a, b); x.Text(s, nil) == y.Text(s, nil) {
				t.Fatalf("%v: %.12g and %.12g are both %s", s, a, b, x.Text(s, nil))
			}
		}
	}
	if a, b := Apart(3, Force, 2, 2); a.String() != "2 N" || b.String() != "2 N" {
		t.Errorf("equal ones %v, %v", a, b)
	}
}

func TestTexts(t *testing.T) {
	t.Parallel()
	limit := Textf("%v of %v", Force.Of(889.644323), Force.Of(444.8221615))
	text := Textf("%s: %v, %.0f %% used", "hand", limit, 200.0).Plus("; gap ", Length.Of(12.7))
	for s, want := range map[System]string{
		metric: "hand: 890 N of 445 N, 200 % used; gap 12.7 mm", us: "hand: 200 lbf of 100 lbf, 200 % used; gap 0.5 in",
		inches: "hand: 890 N of 445 N, 200 % used; gap 0.5 in", pounds: "hand: 200 lbf of 100 lbf, 200 % used; gap 12.7 mm",
	} {
		if got := text.In(s); got != want {
			t.Errorf("%v: %q, want %q", s, got, want)
		}
	}
	if got := text.Capital().String(); got != "Hand: 890 N of 445 N, 200 % used; gap 12.7 mm" {
		t.Errorf("capital %q", got)
	}
	if got := Join([]Text{Say("a"), limit, Say("")}, ", ").In(us); got != "a, 200 lbf of 100 lbf, " {
		t.Errorf("joined %q", got)
	}
	if (Text{}).String() != "" || !(Text{}).Empty() || !Say("").Empty() || limit.Empty() {
		t.Error("empty")
	}
	if a, b := text.Plus("x"), text.Plus("y"); a.String() == b.String() {
		t.Error("two texts share their end")
	}
}
