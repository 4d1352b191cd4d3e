package solve

import (
	"math"
	"testing"

	"ramnest/fixture/envelope"
	"ramnest/force"
)

func TestAcrossLayers(t *testing.T) {
	t.Parallel()
	printed := func(build string) force.Material {
		return force.Material{Process: "PBF", Build: build, Modulus: force.Figure{Value: 1700}}
	}
	moulded := force.Material{Process: "moulded", Modulus: force.Figure{Value: 2000}}
	arm := force.Latch{Cantilever: &force.Cantilever{Flexes: "upper"}}
	ring := force.Latch{Annular: &force.Annular{Outside: "upper"}}
	split := force.Latch{Annular: &force.Annular{Outside: "upper", Split: "inner"}}
	socket := force.Latch{Ball: &force.Ball{Socket: "lower"}}
	fingers := force.Latch{Ball: &force.Ball{Socket: "lower", Slots: 4}}
	boss := force.Latch{PressFit: &force.PressFit{Outside: "lower"}}
	for _, c := range []struct {
		name         string
		latch        force.Latch
		lower, upper force.Material
		want         bool
	}{
		{"arm built along", arm, moulded, printed("along"), true},
		{"arm built across", arm, moulded, printed("across"), false},
		{"arm, not said", arm, moulded, printed(""), true},
		{"moulded arm", arm, printed("along"), moulded, false},
		{"ring built along", ring, printed("across"), printed("along"), false},
		{"ring built across", ring, printed("along"), printed("across"), true},
		{"ring, not said", ring, printed("along"), printed(""), true},
		{"inner fingers built along", split, printed("along"), printed("along"), true},
		{"inner fingers built across", split, printed("across"), printed("along"), false},
		{"closed socket built across", socket, printed("across"), moulded, true},
		{"slotted socket built across", fingers, printed("across"), moulded, false},
		{"slotted socket built along", fingers, printed("along"), moulded, true},
		{"boss built across", boss, printed("across"), moulded, true},
		{"boss built along", boss, printed("along"), moulded, false},
		{"ribs", force.Latch{CrushRib: &force.CrushRib{Ribs: "lower"}}, printed("across"), moulded, false},
	} {
		if got := c.latch.AcrossLayers(c.lower, c.upper); got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// cube is a closed box as an envelope.
func cube(x0, y0, z0, x1, y1, z1 float64) *envelope.Envelope {
	e := &envelope.Envelope{Min: [3]float64{x0, y0, z0}, Max: [3]float64{x1, y1, z1}}
	for i := range 8 {
		v := e.Min
		for k := range 3 {
			if i>>k&1 == 1 {
				v[k] = e.Max[k]
			}
		}
		e.Vertices = append(e.Vertices, v)
	}
	e.Triangles = [][3]int32{{0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4}, {2, 6, 3}, {3, 6, 7}, {0, 4, 2}, {2, 4, 6}, {1, 3, 5}, {3, 7, 5}}
	return e
}

func TestMassOfAClosedSurface(t *testing.T) {
	t.Parallel()
	water := force.Material{Density: force.Figure{Value: 1}}
	if m := mass(cube(100, -3, 7, 102, 0, 11), water); math.Abs(m-24e-6) > 1e-15 {
		t.Errorf("box of 2 x 3 x 4 mm of water: %g kg; want 24e-6", m)
	}
	for name, spoil := range map[string]func(t [][3]int32) [][3]int32{
		"open": func(t [][3]int32) [][3]int32 { return t[1:] },
		"inside out": func(t [][3]int32) [][3]int32 {
			for i, q := range t {
				t[i] = [3]int32{q[0], q[2], q[1]}
			}
			return t
		},
		"with one triangle flipped": func(t [][3]int32) [][3]int32 {
			t[0][1], t[0][2] = t[0][2], t[0][1]
			return t
		},
	} {
		e := cube(0, 0, 0, 1, 1, 1)
		e.Triangles = spoil(e.Triangles)
		if m := mass(e, water); m != 0 {
			t.Errorf("a box %s has a mass of %g kg", name, m)
		}
	}
}
