package quote

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"ramnest/force/fault"
)

// bare is a card on which only what a test sets costs anything.
func bare() RateCard {
	m := Machine{Build: [3]float64{200, 200, 300}, Spacing: 5, Layer: 0.1, Density: 1}
	return RateCard{Name: "test", Currency: "EUR", Quantities: []int{1}, PBF: &PBFRates{Machine: m}, MEX: &MEXRates{Machine: m, Deposit: 20}, VPP: &VPPRates{Machine: m, LayerTime: 10}}
}

func box(name, process string, x, y, z, volume float64, count int) Item {
	return Item{Name: name, Process: process, Box: [3]float64{x, y, z}, Volume: volume, Count: count}
}

func offer(t *testing.T, c RateCard, items ...Item) Offer {
	t.Helper()
	o, err := c.Offer(items)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// The worked examples of the costing notes, through the whole offer.
func TestWorkedExamplesThroughTheOffer(t *testing.T) {
	const grs = "Gibson, Rosen, Stucker, Additive Manufacturing Technologies, eq. 16.7 and 16.8; layer and recoat seconds own"
	hours := bare()
	hours.PBF.Recoat, hours.PBF.MachineHour = 10, 1
	tall := offer(t, hours, box("tall", "PBF", 60, 60, 60, 40000, 1))

	shares := bare()
	shares.PBF.BuildSetUp = 600
	shared := offer(t, shares, box("small", "PBF", 60, 60, 40, 40000, 10), box("large", "PBF", 60, 60, 80, 80000, 1))

	packed := offer(t, bare(), box("box", "PBF", 60, 60, 40, 40000, 54))

	even := bare()
	even.LabourHour = 36
	p, err := even.Payback(Offer{Total: 120, Currency: "EUR"}, Work{Now: 18, Then: 11})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		id, source, mark string
		want, got, tol   float64
	}{
		{"recoat-time hours", grs, "read", 1.6667, tall.Builds[0].Hours, 1e-4},
		{"recoat-time cost at 1 an hour", grs, "read", 1.67, tall.Items[0].Machine, 1e-9},
		{"height-share small", "share by envelope volume", "own", 50, shared.Items[0].Machine, 1e-9},
		{"height-share large", "share by envelope volume", "own", 100, shared.Items[1].Machine, 1e-9},
		{"packing-boxes pieces", "boxes with spacing", "own", 54, float64(packed.Items[0].PiecesPerBuild), 0},
		{"packing-boxes in one build", "boxes with spacing", "own", 1, float64(len(packed.Builds)), 0},
		{"packing-boxes density", "boxes with spacing", "own", 0.18, packed.Builds[0].Density, 1e-9},
		{"break-even", "tooling over saving, rounded up", "own", 1715, float64(p.Assemblies), 0},
	} {
		t.Run(c.id, func(t *testing.T) {
			t.Logf("%s; %s; want %g, got %g", c.source, c.mark, c.want, c.got)
			if !(math.Abs(c.got-c.want) <= c.tol) {
				t.Errorf("got %g, want %g within %g", c.got, c.want, c.tol)
			}
		})
	}
}

// Each process by hand.
func TestEachProcessByHand(t *testing.T) {
	c := bare()
	*c.PBF = PBFRates{Machine: Machine{Build: [3]float64{200, 200, 300}, Spacing: 5, Layer: 0.1, MachineHour: 20, BuildSetUp: 40, PieceWork: 3, MaterialKg: 60, Density: 0.95}, Recoat: 9, ScanRate: 400, WarmHours: 3, PowderDensity: 0.45, Refresh: 0.4}
	*c.MEX = MEXRates{Machine: Machine{Build: [3]float64{200, 200, 300}, Spacing: 5, Layer: 0.2, MachineHour: 4, BuildSetUp: 6, PieceWork: 2, MaterialKg: 30, Density: 1.25}, Deposit: 20, LayerChange: 3, Support: 0.1}
	*c.VPP = VPPRates{Machine: Machine{Build: [3]float64{200, 200, 300}, Spacing: 5, Layer: 0.05, MachineHour: 6, BuildSetUp: 15, PieceWork: 5, MaterialKg: 80, Density: 1.15}, LayerTime: 9, Support: 0.2}
	c.Handling, c.Margin, c.Reject, c.Minimum = 10, 0.2, 0.1, 0

	// 40 mm: 400 layers x 9 s = 1 h, warm 3 h, 40 cm3 / 400 = 0.1 h: 4.1 h, 82 + 40 = 122.
	// Powder: 0.4 x (1600 - 40) cm3 x 0.45 = 0.2808 kg; print 0.038 kg: 19.128.
	// Over 0.9: 135.56 and 21.25; with 3: 159.81; handling 10, margin 33.96: 203.77.
	pbf := offer(t, c, box("nest", "PBF", 60, 60, 40, 40000, 1))
	// 44 cm3 / 20 = 2.2 h, 200 layers x 3 s = 0.1667 h: 2.3667 h x 4 + 6 = 15.4667; 0.055 kg: 1.65.
	// Over 0.9: 17.19 and 1.83; with 2: 21.02; 10; 6.20: 37.22.
	mex := offer(t, c, box("nest", "MEX", 60, 60, 40, 40000, 1))
	// 800 layers x 9 s = 2 h: 12 + 15 = 27; 48 cm3 x 1.15 = 0.0552 kg: 4.416.
	// Over 0.9: 30 and 4.91; with 5: 39.91; 10; 9.98: 59.89.
	vpp := offer(t, c, box("nest", "VPP", 60, 60, 40, 40000, 1))
	for _, x := range []struct {
		name        string
		got         Offer
		each, total float64
		hours       float64
	}{{"PBF", pbf, 159.81, 203.77, 4.1}, {"MEX", mex, 21.02, 37.22, 2.36667}, {"VPP", vpp, 39.91, 59.89, 2}} {
		if x.got.Items[0].Each != x.each || x.got.Total != x.total || math.Abs(x.got.Items[0].Hours-x.hours) > 1e-4 {
			t.Errorf("%s: each %g, total %g, %g h; by hand %g, %g, %g h", x.name, x.got.Items[0].Each, x.got.Total, x.got.Items[0].Hours, x.each, x.total, x.hours)
		}
	}

	// In builds filled to half with other work: box 144 of 6000 cm3, share 0.024. Full
	// build 3000 layers x 9 s = 7.5 h + 3 h = 10.5 h. Hours 0.252 + 0.1 = 0.352: 7.04, set-up
	// 0.96: 8.00. Powder 0.024 x 0.4 x 12 dm3 x 0.45 = 0.05184 kg, print 0.038: 5.39.
	c.PBF.SharedFill = 0.5
	part := offer(t, c, box("nest", "PBF", 60, 60, 40, 40000, 1))
	if l := part.Items[0]; l.Machine != 8.89 || l.Stuff != 5.99 || math.Abs(l.HeightShare-0.024) > 1e-12 || math.Abs(l.Hours-0.352) > 1e-9 || len(part.Builds) != 0 {
		t.Errorf("shared build: %+v", l)
	}
}

// The laws by which the processes differ.
func TestCountAndHeight(t *testing.T) {
	c := InventedRateCard()
	c.PBF.SharedFill = 0
	each := func(process string, count int, z float64) float64 {
		return offer(t, c, box("x", process, 40, 40, z, 12000, count)).Items[0].Each
	}
	if a, b := each("MEX", 1, 30), each("MEX", 9, 30); math.Abs(a-b) > c.MEX.BuildSetUp/(1-c.Reject)+0.02 {
		t.Errorf("MEX is linear in the count but for the set-up: %g for one, %g each for nine", a, b)
	}
	if a, b := each("PBF", 1, 30), each("PBF", 30, 30); !(b < a/5) {
		t.Errorf("PBF: a build is shared: %g for one, %g each for thirty", a, b)
	}
	a, b := offer(t, c, box("x", "VPP", 40, 40, 30, 12000, 1)), offer(t, c, box("x", "VPP", 40, 40, 30, 12000, 6))
	if a.Builds[0].Cost != b.Builds[0].Cost || len(b.Builds) != 1 {
		t.Errorf("VPP: a build costs %g with one and %g with six", a.Builds[0].Cost, b.Builds[0].Cost)
	}
	for _, process := range []string{"PBF", "MEX", "VPP"} {
		if low, high := each(process, 1, 30), each(process, 1, 60); process != "MEX" && !(high > low) {
			t.Errorf("%s: twice the height costs %g instead of %g", process, high, low)
		}
	}
	full := offer(t, c, box("x", "VPP", 40, 40, 30, 12000, 200))
	if n := full.Items[0].PiecesPerBuild; len(full.Builds) != (200+n-1)/n {
		t.Errorf("200 pieces, %d a build, in %d builds", n, len(full.Builds))
	}
}

// Whatever is ordered: builds hold every piece, their shares add up, lines add up to
// the total, and more pieces never cost less.
func TestOfferAddsUp(t *testing.T) {
	c := InventedRateCard()
	c.PBF.SharedFill = 0
	for seed := range 40 {
		n := float64(seed)
		items := []Item{
			box("nest", "PBF", 60+n, 50+2*n, 30+n, 30000, 1+seed%3), box("anvil", "PBF", 40, 90+n, 20, 20000, 2),
			box("plate", "MEX", 80+n, 60, 20+n, 20000, 1+seed%5), box("pad", "VPP", 20, 30, 10+n, 3000, 1+seed%9),
		}
		o := offer(t, c, items...)
		pieces, share := 0, 0.0
		for _, b := range o.Builds {
			pieces += b.Pieces
			m := c.machine(b.Process)
			if b.Height > m.Build[2] || !(b.Density > 0 && b.Density < 1) {
				t.Errorf("%+v", b)
			}
		}
		want, total := 0, o.Handling+o.Margin+o.ToMinimum
		for i, l := range o.Items {
			want += items[i].Count
			share += l.HeightShare * float64(l.Count)
			total += l.Amount
		}
		if pieces != want || math.Abs(share-float64(len(o.Builds))) > 1e-9 || math.Abs(total-o.Total) > 0.005 {
			t.Errorf("%d of %d pieces, shares %g of %d builds, lines %g of %g", pieces, want, share, len(o.Builds), total, o.Total)
		}
		for k := 1; k < len(o.Breaks); k++ {
			if a, b := o.Breaks[k-1], o.Breaks[k]; b.Total < a.Total-0.5 || b.Each > a.Each+0.5 {
				t.Errorf("%+v then %+v", a, b)
			}
		}
		if o.Breaks[0].Total != o.Total {
			t.Errorf("quantity 1 costs %g, the order %g", o.Breaks[0].Total, o.Total)
		}
		if again := offer(t, c, items...); !reflect.DeepEqual(o, again) {
			t.Error("the same order costs something else the second time")
		}
	}
}

func TestInventedCardSaysSoEverywhere(t *testing.T) {
	c := InventedRateCard()
	if faults := c.Validate(); len(faults) > 0 {
		t.Fatal(faults)
	}
	o := offer(t, c, box("=nest", "PBF", 60, 60, 40, 40000, 1))
	p, err := c.Payback(o, Work{Now: 18, Then: 11, Quantity: 100})
	if err != nil {
		t.Fatal(err)
	}
	var file bytes.Buffer
	if err := WriteOffer(&file, o, &p, ""); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var sum, total float64
	for _, r := range rows[1:] {
		if !strings.Contains(r[len(r)-1], "INVENTED") {
			t.Errorf("a row does not say that the rates are invented: %q", r)
		}
		amount, _ := strconv.ParseFloat(r[18], 64)
		switch {
		case r[0] == "total":
			total = amount
		case total == 0:
			sum += amount
		}
	}
	if math.Abs(sum-total) > 0.005 || total != o.Total || rows[1][0] != "'=nest" {
		t.Errorf("rows add to %g, total %g: %q", sum, total, rows)
	}
	l, err := c.LadderCost([][]Item{{box("1", "PBF", 30, 30, 20, 9000, 1)}, {box("2", "PBF", 30, 30, 20, 9000, 1)}}, 0)
	if err != nil || !strings.Contains(l.Text, "INVENTED") {
		t.Errorf("%v, %q", err, l.Text)
	}
	text, err := json.Marshal(o)
	if err != nil || !strings.Contains(string(text), `"invented":true`) {
		t.Errorf("%v: %s", err, text)
	}
}

func TestLadderIsCheaperThanOneByOne(t *testing.T) {
	c := InventedRateCard()
	c.PBF.SharedFill = 0
	var pairs [][]Item
	for k := range 5 {
		pairs = append(pairs, []Item{box(fmt.Sprint(k, "-lower"), "PBF", 40, 45, 25, 9000, 1), box(fmt.Sprint(k, "-upper"), "PBF", 40, 45, 20, 8000, 1)})
	}
	l, err := c.LadderCost(pairs, 2)
	if err != nil {
		t.Fatal(err)
	}
	t.Log(l.Text)
	if !(l.One < l.All && l.All < l.Apart && l.Extra > 0) {
		t.Errorf("%+v", l)
	}
	if _, err := c.LadderCost(nil, 0); err == nil {
		t.Error("a ladder without pairs was priced")
	}
}

func TestPaybackSaysWhatTheJobIsWorth(t *testing.T) {
	c := bare()
	c.LabourHour = 36
	o := Offer{Total: 120, Currency: "EUR"}
	for _, x := range []struct {
		work Work
		want string
	}{
		{Work{Now: 18, Then: 11, Quantity: 500}, "paid for after 1715 assemblies: 18 s by hand, 11 s with it, at 36 EUR an hour; the job's 500 do not pay for it"},
		{Work{Now: 18, Then: 11, Quantity: 4000}, "; the job has 4000"},
		{Work{Now: 18, Then: 11, Scrap: 0.05}, "paid for after 1000 assemblies: 18 s by hand, 11 s with it, at 36 EUR an hour and 0.05 saved on each"},
		{Work{Now: 10, Then: 11, Quantity: 500}, "saves nothing"},
		{Work{Now: 18, Then: 11, PerHour: 100}, "paid for after 1715 assemblies, 17.1 h of work at 100 an hour: 18 s"},
		{Work{Now: 18, Then: 11, PerHour: 100, HoursPerShift: 4}, "17.1 h of work at 100 an hour, in 5 shifts of 4 h: 18 s"},
	} {
		p, err := c.Payback(o, x.work)
		if err != nil || !strings.Contains(p.Text, x.want) {
			t.Errorf("%v: %q, want %q", err, p.Text, x.want)
		}
	}
	if _, err := c.Payback(o, Work{Now: math.NaN(), Then: 1}); err == nil {
		t.Error("no time was taken")
	}
	if _, err := c.Payback(o, Work{Now: 18, Then: 11, PerHour: -1}); err == nil || !strings.Contains(err.Error(), "rate_per_hour") {
		t.Errorf("a rate below 0 was taken: %v", err)
	}
}

func TestFaultsOfAnOffer(t *testing.T) {
	good := box("nest", "PBF", 60, 60, 40, 40000, 1)
	for _, c := range []struct {
		want   string
		change func(c *RateCard, it *Item)
	}{
		{"card.name", func(c *RateCard, _ *Item) { c.Name = " " }},
		{"card.margin", func(c *RateCard, _ *Item) { c.Margin = math.NaN() }},
		{"card.reject", func(c *RateCard, _ *Item) { c.Reject = 0.95 }},
		{"card.quantities[1]", func(c *RateCard, _ *Item) { c.Quantities = []int{5, 2} }},
		{"card.pbf", func(c *RateCard, _ *Item) { c.PBF, c.MEX, c.VPP = nil, nil, nil }},
		{"card.pbf.build_volume[1]", func(c *RateCard, _ *Item) { c.PBF.Build[1] = 0 }},
		{"card.pbf.layer", func(c *RateCard, _ *Item) { c.PBF.Layer = 0 }},
		{"card.pbf.shared_fill", func(c *RateCard, _ *Item) { c.PBF.SharedFill = 0.001 }},
		{"card.mex.deposit_cm3_h", func(c *RateCard, _ *Item) { c.MEX.Deposit = 0 }},
		{"card.vpp.layer_time", func(c *RateCard, _ *Item) { c.VPP.LayerTime = math.Inf(1) }},
		{"items[0].process", func(_ *RateCard, it *Item) { it.Process = "machined" }},
		{"items[0].process", func(c *RateCard, it *Item) { c.VPP, it.Process = nil, "VPP" }},
		{"items[0].box[2]", func(_ *RateCard, it *Item) { it.Box[2] = 0 }},
		{"items[0].box", func(_ *RateCard, it *Item) { it.Box[2] = 900 }},
		{"items[0].volume", func(_ *RateCard, it *Item) { it.Volume = 1e6 }},
		{"items[0].count", func(_ *RateCard, it *Item) { it.Count = 0 }},
		{"items[0].name", func(_ *RateCard, it *Item) { it.Name = "" }},
		{"items", func(_ *RateCard, it *Item) { it.Count = 20000 }},
	} {
		t.Run(c.want, func(t *testing.T) {
			card, it := InventedRateCard(), good
			pbf, mex, vpp := *card.PBF, *card.MEX, *card.VPP
			card.PBF, card.MEX, card.VPP = &pbf, &mex, &vpp
			c.change(&card, &it)
			_, err := card.Offer([]Item{it})
			var f fault.Fault
			if !errors.As(err, &f) || !strings.Contains(err.Error(), c.want) {
				t.Errorf("want a fault at %s, got %v", c.want, err)
			}
		})
	}
	if _, err := InventedRateCard().Offer(nil); err == nil {
		t.Error("an empty order was priced")
	}
	if err := WriteOffer(full{}, Offer{}, nil, ""); err == nil {
		t.Error("a full disk went unseen")
	}
}

func ExampleRateCard_Offer() {
	o, err := InventedRateCard().Offer([]Item{{Name: "nest", Process: "PBF", Material: "PA12", Volume: 95000, Box: [3]float64{110, 100, 45}, Orientation: "back down", Count: 1}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(o.Note)
	fmt.Printf("%s: %d a build, %.1f %% of a build, %.2f %s\n", o.Items[0].Name, o.Items[0].PiecesPerBuild, 100*o.Items[0].HeightShare, o.Total, o.Currency)
	// Output:
	// INVENTED rates, round numbers: not a price until the shop's own card stands here
	// nest: 24 a build, 3.7 % of a build, 71.51 units
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }
