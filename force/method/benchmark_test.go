package method

import "testing"

func BenchmarkChoose(b *testing.B) {
	d := lid()
	push(&d, 3000)
	d.RatePerHour, d.HoursPerDay = 360, 7.5
	b.ReportAllocs()
	for b.Loop() {
		Choose(d, Bench{}, nil)
	}
}
