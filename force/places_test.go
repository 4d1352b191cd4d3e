package force

import (
	"testing"

	"ramnest/force/planar"
)

// A caller may ask for more places than are taken by default, or for fewer.
func TestMostPlaces(t *testing.T) {
	t.Parallel()
	a := Assembly{Lower: MaterialSpec{Material: "PA12", Process: "PBF"}, Upper: MaterialSpec{Material: "PA12", Process: "PBF"}, Draws: 100}
	one := Latch{ID: "rib", CrushRib: &CrushRib{Ribs: "lower", JointDiameter: 4, Count: 3, Height: 0.4, Width: 0.5, Crush: 0.15, EngagementLength: 3, LeadInAngle: new(0.35)}}
	for i := range maxPlaces + 1 {
		one.At = append(one.At, planar.Point{X: float64(i)})
	}
	a.Latches = []Latch{one}
	for _, c := range []struct{ most, faults int }{{0, 2}, {maxPlaces, 2}, {maxPlaces + 1, 0}, {10 * maxPlaces, 0}, {1, 2}} {
		a.MostPlaces = c.most
		if faults := a.Validate(); len(faults) != c.faults {
			t.Errorf("at most %d: got %v, want %d faults", c.most, faults, c.faults)
		}
	}
	a.MostPlaces = maxPlaces + 1
	if r, err := Analyse(a); err != nil || r.Latches[0].Count != maxPlaces+1 {
		t.Errorf("got %+v, %v", r.Latches, err)
	}
}
