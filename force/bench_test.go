package force

import (
	"fmt"
	"testing"

	"ramnest/force/planar"
)

// BenchmarkAnalyse24Latches is 10,000 draws of 24 latches; the figures to keep
// are 30 ms on two cores (different designs take 49) and no allocation a draw.
func BenchmarkAnalyse24Latches(b *testing.B) {
	for _, c := range []struct {
		name string
		job  func() Assembly
	}{{"rings", rings24}, {"mixed", mixed24}, {"balls", balls24}, {"designs", designs24}} {
		b.Run(c.name, func(b *testing.B) {
			a := c.job()
			a.Draws = 10000
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Analyse(a); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func rings24() Assembly {
	a := capJob()
	a.Latches[0].At = make([]planar.Point, 24)
	return a
}

func balls24() Assembly {
	a := ballJob()
	a.Latches[0].At = make([]planar.Point, 24)
	return a
}

// mixed24 is six each of balls, arms, pins and rings, at four depths.
func mixed24() Assembly {
	a := capJob()
	a.Latches = append(a.Latches, ballJob().Latches[0], armJob().Latches[0], pinJob().Latches[0])
	for i := range a.Latches {
		a.Latches[i].At = make([]planar.Point, 6)
	}
	return a
}

// designs24 is the same, each latch a design of its own at a depth of its own.
func designs24() Assembly {
	a := mixed24()
	var out []Latch
	for _, l := range a.Latches {
		for i := range 6 {
			one := l
			one.ID, one.At = fmt.Sprint(l.ID, i), make([]planar.Point, 1)
			one.Engage = ptr(5 + 0.25*float64(i))
			out = append(out, one)
		}
	}
	a.Latches = out
	return a
}
