package audit

import (
	"fmt"
	"testing"

	"ramnest/cmd/internal/solve"
	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/force"
	"ramnest/force/planar"
)

// BenchmarkCost times the audit of a job and, below, what it audits: it is to stay under
// a tenth of that.
func BenchmarkCost(b *testing.B) {
	for _, name := range []string{"rim-cap", "snap-case", "sensor-hood"} {
		s, _ := solvetest.Example(b, name)
		b.Run(name+"/audit", func(b *testing.B) {
			for b.Loop() {
				if err := Solution(b.Context(), s); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(name+"/solution", func(b *testing.B) {
			for b.Loop() {
				if _, err := solve.Run(s.Job, solve.Means{Open: solvetest.Open}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	// 24 places of four designs, forces alone: nothing else to hide behind.
	d := drawn{newRand()}
	a := d.assembly()
	for len(a.Latches) != 4 {
		a = d.assembly()
	}
	for i := range a.Latches {
		a.Latches[i].ID, a.Latches[i].At = fmt.Sprint(i), make([]planar.Point, 6)
	}
	a.Draws = 10000
	r, err := force.Analyse(a)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("24 latches/audit", func(b *testing.B) {
		for b.Loop() {
			if found, err := Force(b.Context(), "", a, r); err != nil || len(found) > 0 {
				b.Fatal(found, err)
			}
		}
	})
	b.Run("24 latches/forces", func(b *testing.B) {
		for b.Loop() {
			if _, err := force.Analyse(a); err != nil {
				b.Fatal(err)
			}
		}
	})
}
