package method

import (
	"math"
	"math/rand/v2"
	"testing"

	"ramnest/force/planar"
)

func TestPlacement(t *testing.T) {
	p := Press{Name: "p", Rated: 8896, Ratio: 20, Throat: 70, RamBore: 8, Mass: 15}
	for _, c := range []struct {
		name        string
		nest        [3]float64
		thrust      planar.Point
		column      string
		back, right float64
		reach, gap  float64
		text        string
	}{
		{"in the middle", [3]float64{80, 60, 25}, planar.Point{}, "+y", 0, 0, 30, 40, "the +y side of the nest to the column, its middle under the ram"},
		{"thrust line to the back", [3]float64{80, 60, 25}, planar.Point{X: 4, Y: 6}, "+y", -6, -4, 24, 46, "the +y side of the nest to the column, its middle 6.0 mm to the front and 4.0 mm to the left of the ram axis"},
		{"thrust line to the right", [3]float64{60, 80, 25}, planar.Point{X: 10, Y: 3}, "+x", -10, 3, 20, 50, "the +x side of the nest to the column, its middle 10.0 mm to the front and 3.0 mm to the right of the ram axis"},
		{"to the left", [3]float64{60, 80, 25}, planar.Point{X: -10, Y: 3}, "-x", -10, -3, 20, 50, "the -x side of the nest to the column, its middle 10.0 mm to the front and 3.0 mm to the left of the ram axis"},
		{"to the front", [3]float64{80, 60, 25}, planar.Point{X: 4, Y: -6}, "-y", -6, 4, 24, 46, "the -y side of the nest to the column, its middle 6.0 mm to the front and 4.0 mm to the right of the ram axis"},
	} {
		d := Demand{DesignForce: 100, NestSize: c.nest, Thrust: c.thrust, ThrustWander: 2}
		got := d.place(p)
		if got.Column != c.column || got.Back != c.back || got.Right != c.right || got.Reach != c.reach || got.Gap != c.gap || got.Text().String() != c.text {
			t.Errorf("%s: %+v; %s", c.name, got, got.Text())
		}
		if want := math.Hypot(c.thrust.X, c.thrust.Y) + 2; got.Middle != want {
			t.Errorf("%s: %g mm off if centred by its middle, want %g", c.name, got.Middle, want)
		}
		if got.Bridges != 40 || math.Abs(got.TipsAt-15*9.80665*75/450) > 1e-9 || got.Hang.String() == "" {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
	if got := (Demand{DesignForce: 100}).place(p); got != nil {
		t.Errorf("a nest of unknown size was placed: %+v", got)
	}
}

// Turning the nest as it is told brings the thrust line under the ram, and the named
// side to the back: done here by turning every corner.
func TestPlacementByTurningCorners(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 42))
	quarter := map[string]int{"+y": 0, "+x": 1, "-y": 2, "-x": 3}
	for range 500 {
		w, h := 30+100*rng.Float64(), 30+100*rng.Float64()
		d := Demand{DesignForce: 100, NestSize: [3]float64{w, h, 20}, Thrust: planar.Point{X: w * (rng.Float64() - 0.5), Y: h * (rng.Float64() - 0.5)}}
		got := d.place(Press{Name: "p", Rated: 8896, Ratio: 20, Throat: 70})
		turn := func(p planar.Point) planar.Point { // and move its middle to where it is told
			for range quarter[got.Column] {
				p = planar.Point{X: -p.Y, Y: p.X}
			}
			return planar.Point{X: p.X + got.Right, Y: p.Y + got.Back}
		}
		if at := turn(d.Thrust); math.Hypot(at.X, at.Y) > 1e-9 {
			t.Fatalf("thrust line lands %v off the ram; %+v", at, got)
		}
		back := math.Inf(-1)
		for _, c := range []planar.Point{{X: w / 2, Y: h / 2}, {X: -w / 2, Y: h / 2}, {X: w / 2, Y: -h / 2}, {X: -w / 2, Y: -h / 2}} {
			back = max(back, turn(c).Y)
		}
		if math.Abs(back-got.Reach) > 1e-9 {
			t.Fatalf("reaches %g mm to the back, said %g", back, got.Reach)
		}
		for _, side := range []float64{w/2 - d.Thrust.X, w/2 + d.Thrust.X, h/2 - d.Thrust.Y, h/2 + d.Thrust.Y} {
			if side < got.Reach-1e-9 {
				t.Fatalf("another side needs less throat: %g of %g", side, got.Reach)
			}
		}
	}
}

func TestPlateOverTheSlot(t *testing.T) {
	p := Press{Name: "p", Rated: 8896, Ratio: 20}
	for _, c := range []struct {
		name        string
		slot, plate float64
		bridges     float64
	}{
		{"slot not known", 0, 0, 30},
		{"bridged, at the bound", 30, 0, 30},
		{"just wider", 30.1, 8, 0},         // sqrt(1.5 * 8896 * 30.1 / (50 * 160)) = 7.09
		{"as wide as the nest", 50, 10, 0}, // 9.13
		{"wider", 200, 19, 0},              // 18.3
	} {
		p.TableSlot = c.slot
		got := Demand{DesignForce: 100, NestSize: [3]float64{80, 50, 25}}.place(p)
		if got.Plate != c.plate || got.Bridges != c.bridges {
			t.Errorf("%s: plate %g, bridges %g; want %g and %g", c.name, got.Plate, got.Bridges, c.plate, c.bridges)
		}
	}
}
