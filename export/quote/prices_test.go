package quote

import (
	"fmt"
	"math"
	"testing"
)

// Whatever is ordered, the lines for the customer add up to the total in hundredths,
// and none is negative.
func TestPricesAddUp(t *testing.T) {
	t.Parallel()
	c := InventedRateCard()
	for seed := range 60 {
		items := []Item{box("nest", "PBF", 60, 50, 30, 30000, 1), box("anvil", "MEX", 40, 90, 20, 20000+float64(17*seed), 1+seed%3)}
		for k := range seed % 11 {
			it := box(fmt.Sprint("rim-", k), "PBF", 20, 20+float64(k), 10, 1000, 1)
			it.Group = "coupons of latch rim"
			items = append(items, it)
		}
		if seed == 0 {
			items = []Item{box("pad", "PBF", 5, 5, 5, 50, 1)}
		}
		o := offer(t, c, items...)
		var sum, share float64
		pieces := 0
		for _, p := range o.Prices() {
			if p.Amount < 0 {
				t.Errorf("%+v", p)
			}
			sum, pieces, share = sum+p.Amount, pieces+p.Pieces, share+p.HeightShare
		}
		want, wantShare := 0, 0.0
		for _, it := range o.Items {
			want, wantShare = want+it.Count, wantShare+float64(it.Count)*it.HeightShare
		}
		if math.Abs(sum-o.Total) > 1e-9*o.Total || pieces != want || math.Abs(share-wantShare) > 1e-9 {
			t.Errorf("lines add to %g of %g, %d of %d pieces", sum, o.Total, pieces, want)
		}
		if n := len(o.Prices()); seed%11 > 1 && n != 3 {
			t.Errorf("%d lines, want nest, anvil and the coupons as one", n)
		}
	}
	// By hand: 75 and 25 of cost, 130 in all with what comes on top.
	o := Offer{Total: 130, Items: []OfferItem{{Name: "a", Count: 1, Amount: 75}, {Name: "b", Count: 1, Amount: 25}}}
	if p := o.Prices(); p[0].Amount != 97.5 || p[1].Amount != 32.5 {
		t.Errorf("%+v, want 97.50 and 32.50", p)
	}
}
