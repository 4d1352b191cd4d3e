package quote

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"
)

// rows is how many boxes of a length stand in a room, put one by one.
func rows(room, length, spacing float64) (n int) {
	for end := length; end <= room+1e-9; end += spacing + length {
		n++
	}
	return n
}

// Equal boxes: a build holds as many as stand in it when they are put one by one, turned
// if more go in so, and its height is that of the layers used.
func TestFillOfEqualBoxes(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		m := &Machine{Build: [3]float64{100 + 100*rng.Float64(), 80 + 100*rng.Float64(), 60 + 100*rng.Float64()}, Spacing: 6 * rng.Float64()}
		w, d, h := 10+40*rng.Float64(), 10+40*rng.Float64(), 10+30*rng.Float64()
		count, stack := 1+rng.IntN(120), rng.IntN(2) == 0
		across := rows(m.Build[0], w, m.Spacing) * rows(m.Build[1], d, m.Spacing)
		along := rows(m.Build[0], d, m.Spacing) * rows(m.Build[1], w, m.Spacing)
		layer, layers := max(across, along), 1
		if stack {
			layers = rows(m.Build[2], h, m.Spacing)
		}
		it := Item{Box: [3]float64{w, d, h}, Volume: 7, Count: count}
		if n, err := perBuild(m, it.Box, stack); err != nil || n != layer*layers {
			t.Fatalf("%d a build, want %d x %d (%v)", n, layer, layers, err)
		}
		got := fill(m, []Item{it}, []int{0}, stack)
		left := count
		for i, b := range got {
			want := min(left, layer*layers)
			left -= want
			used := float64((want + layer - 1) / layer)
			if b.pieces != want || b.parts[0].count != float64(want) || math.Abs(b.height-(used*h+(used-1)*m.Spacing)) > 1e-9 {
				t.Fatalf("%v in %v, stack %t: build %d holds %d to %g mm; want %d", it.Box, m.Build, stack, i, b.pieces, b.height, want)
			}
			n := float64(want)
			for what, v := range map[string][2]float64{"volume": {b.volume, 7 * n}, "volume of the item": {b.parts[0].volume, 7 * n}, "room": {b.room, w * d * h * n}, "room of the item": {b.parts[0].room, w * d * h * n}} {
				if math.Abs(v[0]/v[1]-1) > 1e-9 {
					t.Fatalf("%s %g, want %g", what, v[0], v[1])
				}
			}
		}
		if left != 0 {
			t.Fatalf("%d pieces are in no build", left)
		}
	}
	if n, err := perBuild(&Machine{Build: [3]float64{100, 100, 50}}, [3]float64{10, 10, 50.1}, false); n != 0 || err != nil {
		t.Errorf("%d of what is higher than the build, %v", n, err)
	}
	if n, _ := perBuild(&Machine{Build: [3]float64{100, 100, 50}}, [3]float64{10, 10, 50}, false); n != 100 {
		t.Errorf("%d of what is just as high as the build", n)
	}
}

// Boxes of several heights by hand: the high ones first, a row as deep as its deepest, a
// layer as high as its highest.
func TestFillOfSeveralBoxes(t *testing.T) {
	m := &Machine{Build: [3]float64{100, 100, 100}, Spacing: 10}
	items := []Item{
		{Name: "low", Box: [3]float64{45, 45, 20}, Count: 4},
		{Name: "high", Box: [3]float64{45, 60, 50}, Count: 1},
		{Name: "wide", Box: [3]float64{100, 30, 20}, Count: 1},
	}
	// The high one and a low one beside it make a row 60 deep; behind it is no room for 45.
	// A layer 50 high and 10 between: on 60 the other three lows, to 80, and behind them no
	// room for the wide one, nor above.
	of := []int{0, 1, 2}
	for _, c := range []struct {
		high  float64
		stack bool
		want  string
	}{
		{100, true, "5 to 80 mm, 1 to 20 mm, "}, {100, false, "2 to 50 mm, 3 to 20 mm, 1 to 20 mm, "},
		{80, true, "5 to 80 mm, 1 to 20 mm, "}, {79, true, "2 to 50 mm, 4 to 50 mm, "}, {109, true, "5 to 80 mm, 1 to 20 mm, "}, {110, true, "6 to 110 mm, "},
	} {
		m.Build[2] = c.high
		got := ""
		for _, b := range fill(m, items, of, c.stack) {
			got += fmt.Sprintf("%d to %g mm, ", b.pieces, b.height)
		}
		if got != c.want {
			t.Errorf("%g mm high, stack %t: %s; want %s", c.high, c.stack, got, c.want)
		}
	}
	// What stands in the plan just fills it: four rows of 25, none between.
	m = &Machine{Build: [3]float64{100, 100, 10}}
	if got := fill(m, []Item{{Box: [3]float64{100, 25, 10}, Count: 4}}, []int{0}, false); len(got) != 1 || got[0].pieces != 4 {
		t.Errorf("a plan that is just filled: %+v", got)
	}
}

// A line for the customer holds its items, each as often as it is made.
func TestPriceOfAGroup(t *testing.T) {
	o := Offer{Total: 100, Items: []OfferItem{
		{Name: "a", Group: "pair", Process: "PBF", Material: "PA12", Count: 3, Mass: 5, Volume: 700, HeightShare: 0.1, Box: [3]float64{10, 50, 20}, PiecesPerBuild: 40, Amount: 30},
		{Name: "b", Group: "pair", Process: "PBF", Material: "PA12", Count: 2, Mass: 7, Volume: 900, HeightShare: 0.2, Box: [3]float64{30, 20, 10}, PiecesPerBuild: 9, Amount: 20},
		{Name: "c", Process: "PBF", Material: "PA12", Count: 1, Mass: 1, Volume: 100, HeightShare: 0.3, Box: [3]float64{1, 2, 3}, PiecesPerBuild: 99, Amount: 50},
	}}
	want := []Price{
		{Name: "pair", Process: "PBF", Material: "PA12", Pieces: 5, Box: [3]float64{30, 50, 20}, Volume: 3900, Mass: 29, PerBuild: 9, HeightShare: 0.1*3 + 0.2*2, Amount: 50},
		{Name: "c", Process: "PBF", Material: "PA12", Pieces: 1, Box: [3]float64{1, 2, 3}, Volume: 100, Mass: 1, PerBuild: 99, HeightShare: 0.3, Amount: 50},
	}
	got := o.Prices()
	for i := range got {
		if math.Abs(got[i].HeightShare-want[i].HeightShare) < 1e-12 {
			got[i].HeightShare = want[i].HeightShare
		}
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%+v,\nwant %+v", got, want)
	}
	// What costs nothing shares what comes on top evenly, to the hundredth.
	free := Offer{Total: 10, Items: []OfferItem{{Name: "a"}, {Name: "b"}, {Name: "c"}}}
	if p := free.Prices(); len(p) != 3 || p[0].Amount != 3.33 || p[1].Amount != 3.34 || p[2].Amount != 3.33 {
		t.Errorf("%+v, want 3.33, 3.34, 3.33", p)
	}
}

// Each figure of a card, at the ends of its range and past them.
func TestEndsOfTheCard(t *testing.T) {
	const money = 1e9
	build := func(k int) func(m *Machine) *float64 { return func(m *Machine) *float64 { return &m.Build[k] } }
	type row struct {
		field     string
		at        func(c *RateCard) *float64
		low, high float64
	}
	all := []row{
		{"handling", func(c *RateCard) *float64 { return &c.Handling }, 0, money}, {"labour_hour", func(c *RateCard) *float64 { return &c.LabourHour }, 0, money},
		{"reject", func(c *RateCard) *float64 { return &c.Reject }, 0, 0.9}, {"margin", func(c *RateCard) *float64 { return &c.Margin }, 0, 10}, {"minimum", func(c *RateCard) *float64 { return &c.Minimum }, 0, money},
		{"pbf.recoat", func(c *RateCard) *float64 { return &c.PBF.Recoat }, 0, 3600}, {"pbf.scan_cm3_h", func(c *RateCard) *float64 { return &c.PBF.ScanRate }, 0, 1e6},
		{"pbf.warm_up_hours", func(c *RateCard) *float64 { return &c.PBF.WarmHours }, 0, 1000}, {"pbf.powder_density", func(c *RateCard) *float64 { return &c.PBF.PowderDensity }, 0, 25},
		{"pbf.refresh", func(c *RateCard) *float64 { return &c.PBF.Refresh }, 0, 1}, {"pbf.shared_fill", func(c *RateCard) *float64 { return &c.PBF.SharedFill }, 0.01, 1},
		{"mex.deposit_cm3_h", func(c *RateCard) *float64 { return &c.MEX.Deposit }, 0.1, 1e5}, {"mex.layer_change", func(c *RateCard) *float64 { return &c.MEX.LayerChange }, 0, 3600},
		{"mex.support", func(c *RateCard) *float64 { return &c.MEX.Support }, 0, 10}, {"vpp.layer_time", func(c *RateCard) *float64 { return &c.VPP.LayerTime }, 0.05, 3600},
		{"vpp.support", func(c *RateCard) *float64 { return &c.VPP.Support }, 0, 10},
	}
	for process, m := range map[string]func(c *RateCard) *Machine{"pbf": func(c *RateCard) *Machine { return &c.PBF.Machine }, "mex": func(c *RateCard) *Machine { return &c.MEX.Machine }, "vpp": func(c *RateCard) *Machine { return &c.VPP.Machine }} {
		for _, f := range []struct {
			name      string
			at        func(m *Machine) *float64
			low, high float64
		}{
			{"build_volume[0]", build(0), 10, 5000}, {"build_volume[1]", build(1), 10, 5000}, {"build_volume[2]", build(2), 10, 5000},
			{"spacing", func(m *Machine) *float64 { return &m.Spacing }, 0, 200}, {"layer", func(m *Machine) *float64 { return &m.Layer }, 0.005, 5},
			{"machine_hour", func(m *Machine) *float64 { return &m.MachineHour }, 0, money}, {"build_set_up", func(m *Machine) *float64 { return &m.BuildSetUp }, 0, money},
			{"piece_work", func(m *Machine) *float64 { return &m.PieceWork }, 0, money}, {"material_kg", func(m *Machine) *float64 { return &m.MaterialKg }, 0, money}, {"density", func(m *Machine) *float64 { return &m.Density }, 0.01, 25},
		} {
			all = append(all, row{process + "." + f.name, func(c *RateCard) *float64 { return f.at(m(c)) }, f.low, f.high})
		}
	}
	for _, r := range all {
		beyond := r.low*0.999 - 1e-6
		for v, good := range map[float64]bool{r.low: true, r.high: true, beyond: false, r.high * 1.001: false, math.NaN(): false} {
			c := InventedRateCard()
			*r.at(&c) = v
			faults := c.Validate()
			if good != (len(faults) == 0) || !good && (len(faults) != 1 || faults[0].Field != r.field || !strings.Contains(faults[0].Error(), r.field)) {
				t.Errorf("%s of %g: %v", r.field, v, faults)
			}
		}
	}
	for _, c := range []struct {
		change func(c *RateCard)
		good   bool
	}{
		{func(c *RateCard) { c.Quantities = []int{1, mostPieces} }, true}, {func(c *RateCard) { c.Quantities = []int{0, 2} }, false},
		{func(c *RateCard) { c.Quantities = []int{mostPieces + 1} }, false}, {func(c *RateCard) { c.Quantities = []int{3, 3} }, false},
		{func(c *RateCard) { c.Quantities = make([]int, 21) }, false}, {func(c *RateCard) { c.PBF.SharedFill = 0 }, true},
		{func(c *RateCard) { c.Name = strings.Repeat("x", 200) }, true}, {func(c *RateCard) { c.Name = strings.Repeat("x", 201) }, false}, {func(c *RateCard) { c.Currency = "a\nb" }, false},
		{func(c *RateCard) { c.PBF, c.MEX = nil, nil }, true}, {func(c *RateCard) { c.MEX, c.VPP = nil, nil }, true}, {func(c *RateCard) { c.PBF, c.VPP = nil, nil }, true},
	} {
		card := InventedRateCard()
		c.change(&card)
		if faults := card.Validate(); (len(faults) == 0) != c.good {
			t.Errorf("%v", faults)
		}
	}
	twenty := InventedRateCard()
	for i := range 20 {
		twenty.Quantities = append(twenty.Quantities, i+1)
	}
	if faults := twenty.Validate(); len(faults) != 0 {
		t.Errorf("twenty quantities: %v", faults)
	}
	if mostMoney != money || mostPieces != 10000 {
		t.Errorf("an order of %d pieces, %g of money", mostPieces, mostMoney)
	}
}

// Times of work that are from memory, common practice or own, and the invented card: they
// are chosen once, and a change of one is made here as well.
func TestChosenFigures(t *testing.T) {
	// One TMU is a hundred-thousandth of an hour.
	if SecondsPerTMU != 3600/1e5 {
		t.Errorf("a TMU of %g s", SecondsPerTMU)
	}
	// Three times 35.7 TMU of handling and 54 at the lever.
	if got := PressCycle(); math.Abs(got-0.036*(3*(12.8+2+13.3+5.6+2)+54)) > 1e-12 {
		t.Errorf("%g s a cycle", got)
	}
	if HandSnap != 1.95+5 {
		t.Errorf("%g s by hand", HandSnap)
	}
	for blows, want := range map[int]float64{1: 8.35, 3: 10.35, 1000: 1007.35} {
		if got, err := MalletCycle(blows); err != nil || math.Abs(got-want) > 1e-12 {
			t.Errorf("%d blows: %g s, %v; want %g", blows, got, err, want)
		}
	}
	for _, blows := range []int{0, 1001} {
		if _, err := MalletCycle(blows); err == nil {
			t.Errorf("%d blows were taken", blows)
		}
	}
	const want = "{INVENTED round numbers, not a price units 20 40 0.05 0.3 50 [] {{[300 300 300] 5 0.1 20 40 3 60 0.95} 10 500 4 0.45 0.4 0.5} " +
		"{{[250 250 250] 10 0.2 4 5 3 30 1.25} 20 2 0.1} {{[200 120 200] 5 0.05 6 15 5 80 1.15} 8 0.15} true}"
	c := InventedRateCard()
	got := fmt.Sprint(struct {
		Name, Currency                                string
		Handling, LabourHour, Reject, Margin, Minimum float64
		Quantities                                    []int
		PBF                                           PBFRates
		MEX                                           MEXRates
		VPP                                           VPPRates
		Invented                                      bool
	}{c.Name, c.Currency, c.Handling, c.LabourHour, c.Reject, c.Margin, c.Minimum, c.Quantities, *c.PBF, *c.MEX, *c.VPP, c.Invented})
	if got != want {
		t.Errorf("%s,\nwant %s", got, want)
	}
}

// Counting boxes and layers at the ends of what is taken.
func TestEndsOfCounting(t *testing.T) {
	for _, c := range []struct {
		build, box, spacing float64
		want                int
	}{{100, 100, 0, 1}, {100, 100.1, 0, 0}, {100, 10, 0, 1000}, {0.3, 0.1, 0, 27}, {5, 100, 1e12, 1}, {100, 10, -1e-9, -1}, {0, 1, 0, -1}, {1, 0, 0, -1}, {1e12, 1, 0, -1}, {1e13, 1e12, 0, -1}} {
		got, err := Packing([3]float64{c.build, c.build, c.build}, [3]float64{c.box, c.box, c.box}, c.spacing)
		if c.build < c.box && c.want > 0 {
			c.want = got // a spacing as large as that says nothing
		}
		if (c.want < 0) != (err != nil) || err == nil && got != c.want {
			t.Errorf("%+v: %d, %v", c, got, err)
		}
	}
	for _, c := range []struct {
		height, layer float64
		want          int
	}{{10, 0.1, 100}, {10.01, 0.1, 101}, {0.3, 0.1, 3}, {1e6, 0.01, 1e8}, {1e6, 0.0099, -1}, {0, 1, -1}, {1, 0, -1}} {
		got, err := Layers(c.height, c.layer)
		if (c.want < 0) != (err != nil) || err == nil && got != c.want {
			t.Errorf("%+v: %d, %v", c, got, err)
		}
	}
}
