package workinstructions

import (
	"ramnest/force/method"
	"ramnest/force/unit"
	"strings"
	"testing"
)

func plain(s string) string { return strings.ReplaceAll(s, nbsp, " ") }

// Factors by definition: 1 in = 25.4 mm, 1 lbf = 4.4482216152605 N,
// 1 lb = 0.45359237 kg; the values were worked out by hand from those.
func TestFigures(t *testing.T) {
	mm, in := figures{}, figures{units: unit.System{Inch: true, Pound: true}}
	for _, row := range []struct{ name, got, want string }{
		{"force", mm.force(412.4), "412 N"},
		{"small force", mm.force(4.126), "4.13 N"},
		{"tenths", mm.force(41.26), "41.3 N"},
		{"rounds up to a hundred", mm.force(99.96), "100 N"},
		{"pounds", in.force(1180), "265 lbf"},
		{"never above a limit", mm.force(5337.87), "5338 N"},
		{"a round limit stays", mm.force(5338), "5338 N"},
		{"nearly round limit", mm.force(0.1 * 3 * 1000), "300 N"},
		{"limit in pounds", in.force(1180), "265 lbf"},
		{"in pounds", in.force(1182), "266 lbf"},
		{"demand", mm.force(1180.01), "1180 N"},
		{"length", mm.length(4.2), "4.2 mm"},
		{"length in inch", in.length(4.2), "0.165 in"},
		{"offset", mm.offset(3.2), "+3.2 mm"},
		{"offset below", mm.offset(-1), "−1.0 mm"},
		{"offset that rounds to nothing", mm.offset(-0.04), "0.0 mm"},
		{"size", mm.size([3]float64{110, 84, 52}), "110.0 × 84.0 × 52.0 mm"},
		{"mass", mm.mass(0.24), "0.24 kg"},
		{"heavy mass", mm.mass(12.34), "12.3 kg"},
		{"mass in pounds", in.mass(1), "2.2 lb"},
		{"work", mm.work(1510), "1.51 J"},
		{"work in inch and pounds", in.work(1129.848), "10 in-lbf"},
		{"gap", mm.gap(Gap{Low: 0.05, High: 0.25}), "0.05 to 0.25 mm"},
		{"gap from nothing", mm.gap(Gap{Low: 0, High: 0.2}), "at most 0.20 mm"},
		{"gap below nothing", mm.gap(Gap{Low: 0, High: 0.15}), "at most 0.15 mm"},
		{"gap not made wider", mm.gap(Gap{Low: 0.054, High: 0.254}), "0.06 to 0.25 mm"},
		{"gap in inch", in.gap(Gap{Low: 0.05, High: 0.25}), "0.002 to 0.009 in"},
		{"share", mm.percent(0.0213), "2.1 %"},
		{"large share", mm.percent(8.43), "843 %"},
		{"limit", mm.limit(method.Limit{Demand: 42.1, Capacity: 58.04, Unit: unit.Force}), "42.1 N of 58 N"},
		{"limit of blows", mm.limit(method.Limit{Demand: 3, Capacity: 5}), "3 of 5"},
		{"one", mm.count(1, "hump"), "1 hump"},
		{"three", mm.count(3, "hump"), "3 humps"},
	} {
		if got := plain(row.got); got != row.want {
			t.Errorf("%s: %q; want %q", row.name, got, row.want)
		}
	}
}
