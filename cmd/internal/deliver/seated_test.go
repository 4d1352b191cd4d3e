package deliver_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ramnest/cmd/internal/solve/solvetest"
	"ramnest/fixture"
	"ramnest/fixture/envelope"
)

// A column is what a vertical line meets of a surface: its lowest and its highest
// crossing.
type column struct {
	low, high float64
	met       bool
}

// meet finds a column at a place among triangles, by brute force.
func meet(triangles [][3][3]float64, x, y float64) column {
	c := column{low: math.Inf(1), high: math.Inf(-1)}
	for _, t := range triangles {
		x0, y0, x1, y1, x2, y2 := t[0][0]-x, t[0][1]-y, t[1][0]-x, t[1][1]-y, t[2][0]-x, t[2][1]-y
		a, b, d := x1*y2-x2*y1, x2*y0-x0*y2, x0*y1-x1*y0 // areas against each corner
		if !(a > 0 && b > 0 && d > 0 || a < 0 && b < 0 && d < 0) {
			continue
		}
		z := (a*t[0][2] + b*t[1][2] + d*t[2][2]) / (a + b + d)
		c.low, c.high, c.met = min(c.low, z), max(c.high, z), true
	}
	return c
}

// asWritten gives the triangles of a written STL in the coordinates of the assembly.
func asWritten(t *testing.T, b []byte, p fixture.Piece) [][3][3]float64 {
	var out [][3][3]float64
	for _, q := range readSTL(t, b) {
		var v [3][3]float64
		for k := range 3 {
			for c := range 3 {
				v[k][c] = float64(q[k][c]) + p.Shift[c]
			}
		}
		out = append(out, v)
	}
	return out
}

func surface(e *envelope.Envelope) [][3][3]float64 {
	var out [][3][3]float64
	for _, q := range e.Triangles {
		out = append(out, [3][3]float64{e.Vertices[q[0]], e.Vertices[q[1]], e.Vertices[q[2]]})
	}
	return out
}

// TestNothingStrikesOnTheWayIn looks along thousands of vertical lines: what the nest
// has there must lie below all that the parts have, and what the anvil has above it.
// As everything moves along these lines, that holds for the whole way, and for the
// seat. Somewhere they have to touch, or nothing would carry the force.
func TestNothingStrikesOnTheWayIn(t *testing.T) {
	t.Parallel()
	const (
		lines = 3000
		slack = 0.002 // rounding of the files [mm]
	)
	for _, name := range solvetest.Jobs() {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := exampleOf(t, name)
			files := s.files
			for i := range s.Steps {
				st := &s.Steps[i]
				read := func(p fixture.Piece) [][3][3]float64 {
					return asWritten(t, files[s.Job.Number+"-"+strings.ReplaceAll(p.Name, " ", "-")+".stl"], p)
				}
				n, a := s.NestOf(i), s.Tooling.Anvils[i]
				nest, anvil := read(n.Piece), read(a.Piece)
				parts := append(surface(st.LowerEnvelope), surface(st.UpperEnvelope)...)
				x0, y0 := min(st.LowerEnvelope.Min[0], st.UpperEnvelope.Min[0]), min(st.LowerEnvelope.Min[1], st.UpperEnvelope.Min[1])
				x1, y1 := max(st.LowerEnvelope.Max[0], st.UpperEnvelope.Max[0]), max(st.LowerEnvelope.Max[1], st.UpperEnvelope.Max[1])
				rng := rand.New(rand.NewPCG(1, uint64(i)))
				below, above := math.Inf(1), math.Inf(1)
				look := func(x, y float64) {
					p := meet(parts, x, y)
					if !p.met {
						return
					}
					if c := meet(nest, x, y); c.met {
						below = min(below, p.low-c.high)
						if c.high > p.low+slack {
							t.Fatalf("step %d: at %.3f, %.3f the nest reaches %.4f mm and the parts begin at %.4f", i, x, y, c.high, p.low)
						}
					}
					if c := meet(anvil, x, y); c.met {
						above = min(above, c.low-p.high)
						if c.low < p.high-slack {
							t.Fatalf("step %d: at %.3f, %.3f the anvil reaches down to %.4f mm and the parts end at %.4f", i, x, y, c.low, p.high)
						}
					}
				}
				for range lines {
					look(x0+rng.Float64()*(x1-x0), y0+rng.Float64()*(y1-y0))
				}
				for _, p := range n.Pads {
					look(p.At.X+0.0137, p.At.Y+0.0091)
				}
				for _, p := range a.Pads {
					look(p.At.X+0.0137, p.At.Y+0.0091)
				}
				if math.Abs(below) > slack || math.Abs(above) > slack {
					t.Errorf("step %d: the nest comes as near as %.4f mm, the anvil %.4f: nothing carries", i, below, above)
				}
			}
		})
	}
}
