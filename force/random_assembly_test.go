package force

import (
	"fmt"
	"math"
	"math/rand/v2"

	"ramnest/force/planar"
)

// randomAssembly draws a step of one to four designs of any kind, at one to six places
// each: sizes in round figures, so that lifts often coincide, depths sometimes stated.
func randomAssembly(rng *rand.Rand) Assembly {
	pa12 := MaterialSpec{Material: "PA12", Process: "PBF", Build: []string{"along", "across"}[rng.IntN(2)]}
	a := Assembly{Lower: pa12, Upper: pa12, Seed: rng.Uint64(), Draws: 200}
	jobs := everyJob()
	for i := range 1 + rng.IntN(4) {
		l := jobs[rng.IntN(6)].Latches[0]
		if l.Cantilever != nil && i%2 == 1 {
			l = leverJob().Latches[0]
		}
		one := Assembly{Latches: []Latch{l}}
		l = grow(one, math.Round(10*(0.4+0.8*rng.Float64()))/10).Latches[0]
		l.ID = fmt.Sprintf("%s %d", l.ID, i)
		l.At = nil
		for range 1 + rng.IntN(6) {
			l.At = append(l.At, planar.Point{X: math.Round(60*rng.Float64()) - 30, Y: math.Round(60*rng.Float64()) - 30})
		}
		if rng.IntN(2) == 0 {
			l.Engage = ptr(math.Round(20*(0.5+4*rng.Float64())) / 20)
		}
		a.Latches = append(a.Latches, l)
	}
	return a
}
