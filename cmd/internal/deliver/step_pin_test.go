package deliver_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"ramnest/fixture"
)

// The anvil of one step does not go on while the pin stands in the hole of another: along
// lines over the pin it stands on it, and there it has not yet reached the guide pins. At
// its own step it goes down to the dead stops.
func TestTheAnvilOfAnotherStepStandsOnThePin(t *testing.T) {
	t.Parallel()
	s := exampleOf(t, "shell-pair")
	n := s.Tooling.Nests[0]
	if len(n.StepPins) != 2 {
		t.Fatalf("%d step pins, want 2", len(n.StepPins))
	}
	read := func(p fixture.Piece) [][3][3]float64 {
		return asWritten(t, s.files[s.Job.Number+"-"+strings.ReplaceAll(p.Name, " ", "-")+".stl"], p)
	}
	nest := read(n.Piece)
	rng := rand.New(rand.NewPCG(17, 1))
	for at, pin := range n.StepPins {
		var over []struct{ x, y float64 }
		for range 200 {
			r, phi := pin.Wide/2*math.Sqrt(rng.Float64()), 2*math.Pi*rng.Float64()
			over = append(over, struct{ x, y float64 }{pin.At.X + r*math.Cos(phi), pin.At.Y + r*math.Sin(phi)})
		}
		bottom := math.Inf(-1)
		for _, p := range over {
			bottom = max(bottom, meet(nest, p.x, p.y).high)
		}
		if d := pin.Top - bottom; math.Abs(d-pin.Long) > 0.02 {
			t.Errorf("step %d: a pin of %g mm in its hole stands %.2f mm below where it should end", at+1, pin.Long, d-pin.Long)
		}
		guides := math.Inf(-1) // how high the guide pins reach
		for _, g := range n.Pins {
			guides = max(guides, meet(nest, g.X+0.01, g.Y+0.02).high)
		}
		for which, a := range s.Tooling.Anvils {
			anvil := read(a.Piece)
			stands := math.Inf(-1) // how far over its seat the pin holds the anvil
			for _, p := range over {
				if c := meet(anvil, p.x, p.y); c.met {
					stands = max(stands, pin.Top-c.low)
				}
			}
			switch {
			case which == at && !math.IsInf(stands, -1):
				t.Errorf("step %d: its own anvil meets the pin", at+1)
			case which != at && a.Face+stands < guides-0.01:
				t.Errorf("the anvil of step %d goes on at step %d: its face comes to %.2f mm, the guide pins reach %.2f", which+1, at+1, a.Face+stands, guides)
			}
		}
	}
	var marks []string
	for i, a := range s.Tooling.Anvils {
		if !strings.HasSuffix(a.Mark, []string{" 1/2", " 2/2"}[i]) || slices.Contains(marks, a.Mark) {
			t.Errorf("anvil %d is engraved %q", i+1, a.Mark)
		}
		marks = append(marks, a.Mark)
	}
}
