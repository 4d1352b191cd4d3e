package drawing

import (
	"math"
	"math/rand/v2"
	"testing"

	"ramnest/fixture/mesh"
)

// total is the length of segments [mm].
func total(all []segment) float64 {
	sum := 0.0
	for _, s := range all {
		sum += math.Hypot(s[1][0]-s[0][0], s[1][1]-s[0][1])
	}
	return sum
}

func outlines(b Body, w view, cut bool) (seen, hidden, rims []segment) {
	m := w.of(b)
	plane := 0.0
	if cut {
		m, plane = cutBehind(m, mesh.Dot(w.toward, [3]float64{b.Cut[0], b.Cut[1], 0}))
	}
	s, h, rims := sight(m, edgesOf(m), plane)
	if cut {
		h = nil
	}
	s, h = tidied(append(s, rims...), h)
	return s, h, rims
}

// From above a block shows its outline and nothing hidden; a smaller block under it, its
// own, dashed; one on top hides what it stands on.
func TestWhatLiesBehindIsHidden(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name         string
		low, high    [3]float64
		seen, hidden float64 // lengths [mm]
	}{
		{"under", [3]float64{10, 10, -5}, [3]float64{20, 20, -1}, 200, 40},
		{"on top", [3]float64{10, 10, 13}, [3]float64{20, 20, 15}, 240, 0},
		{"half under", [3]float64{50, 10, -5}, [3]float64{70, 20, -1}, 200 + 30, 30},
		{"over the side", [3]float64{50, 10, 13}, [3]float64{70, 20, 15}, 200 - 10 + 60, 10},
	} {
		var b Body
		cuboid(&b, [3]float64{0, 0, 0}, [3]float64{60, 40, 12})
		cuboid(&b, c.low, c.high)
		seen, hidden, _ := outlines(b, fromAbove, false)
		if s, h := total(seen), total(hidden); math.Abs(s-c.seen) > 0.02 || math.Abs(h-c.hidden) > 0.02 {
			t.Errorf("%s: %.3f mm seen, %.3f hidden; want %g, %g", c.name, s, h, c.seen, c.hidden)
		}
	}
}

// A section shows the cut face, hatched, and what lies behind it where nothing is cut.
func TestSectionHidesWhatIsBehindTheCut(t *testing.T) {
	t.Parallel()
	var b Body
	b.Cut = [2]float64{30, 20}
	cuboid(&b, [3]float64{0, 0, 0}, [3]float64{60, 40, 12})
	cuboid(&b, [3]float64{10, 30, 12.5}, [3]float64{20, 35, 20})
	cuboid(&b, [3]float64{30, 50, 2}, [3]float64{40, 55, 8}) // behind the cut face
	seen, _, rims := outlines(b, fromFront, true)
	if s := total(seen); math.Abs(s-(144+35)) > 0.02 {
		t.Errorf("%.3f mm seen, want 179", s)
	}
	hatch := hatched(rims, 1)
	if area := total(hatch); math.Abs(area-60*12) > 0.02*60*12 { // lines 1 mm apart cover their length
		t.Errorf("hatching covers %.1f mm2, want 720", area)
	}
	for _, s := range hatch {
		if m := s.at(0.5); m[0] < 0 || m[0] > 60 || m[1] < 0 || m[1] > 12 {
			t.Errorf("hatching at %v lies beyond the cut", m)
		}
	}
}

// What is seen of random blocks one over the other, against the plainest way to tell: of
// the upper edges, what lies under no higher block.
func TestSightAgainstSamples(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(3, 4))
	for range 60 {
		var b Body
		var lows, highs [][3]float64
		for k := range 5 {
			low := [3]float64{40 * r.Float64(), 40 * r.Float64(), float64(12 * k)}
			high := [3]float64{low[0] + 5 + 30*r.Float64(), low[1] + 5 + 30*r.Float64(), low[2] + 4 + 6*r.Float64()}
			lows, highs = append(lows, low), append(highs, high)
			cuboid(&b, low, high)
		}
		m := fromAbove.of(b)
		seen, hidden, _ := sight(m, edgesOf(m), 0)
		want, all := 0.0, 0.0
		for k := range lows {
			x0, y0, x1, y1 := lows[k][0], lows[k][1], highs[k][0], highs[k][1]
			for _, e := range []segment{{{x0, y0}, {x1, y0}}, {{x1, y0}, {x1, y1}}, {{x1, y1}, {x0, y1}}, {{x0, y1}, {x0, y0}}} {
				const n = 2000
				piece := total([]segment{e}) / n
				all += 2 * n * piece // above and below
				for i := range n {
					p := e.at((float64(i) + 0.5) / n)
					covered := false
					for o := k + 1; o < len(lows); o++ {
						covered = covered || p[0] > lows[o][0] && p[0] < highs[o][0] && p[1] > lows[o][1] && p[1] < highs[o][1]
					}
					if !covered {
						want += piece
					}
				}
			}
		}
		if s, h := total(seen), total(hidden); math.Abs(s-want) > 0.3 || math.Abs(s+h-all) > 0.3 {
			t.Fatalf("%.3f mm seen, %.3f hidden; want %.3f, %.3f", s, h, want, all-want)
		}
	}
}
