package method

import "testing"

// busy is a lid that needs advice: 3000 N on a line.
func busy() Demand {
	d := lid()
	push(&d, 3000)
	d.RatePerHour, d.HoursPerDay = 360, 7.5
	return d
}

func BenchmarkChoose(b *testing.B) {
	d := busy()
	b.ReportAllocs()
	for b.Loop() {
		Choose(d, Bench{}, nil)
	}
}

func BenchmarkAdvise(b *testing.B) {
	d := busy()
	var alts []Alternative
	for i, c := range Changes() {
		alts = append(alts, Alternative{Change: c, Demand: d.atForce(3000 / float64(i+2))})
	}
	b.ReportAllocs()
	for b.Loop() {
		Advise(d, 0, Bench{}, alts)
	}
}
