package quote

import (
	"errors"
	"fmt"
	"math"

	"ramnest/force/fault"
)

// An Item is a body to be quoted.
type Item struct {
	Name        string
	Process     string // PBF, MEX or VPP
	Material    string // printed as it stands
	Volume      float64
	Box         [3]float64 // as it stands in the build [mm]
	Orientation string     // in words, "back down"; may be empty
	Group       string     // items that a customer sees as one line; may be empty
	Count       int        // 1 or more
}

// An Offer is what an order costs.
type Offer struct {
	Card     string `json:"card"`
	Currency string `json:"currency"`
	Invented bool   `json:"invented"`
	Note     string `json:"note"` // printed on every output; says so when the card is invented

	Items  []OfferItem  `json:"items"`
	Builds []OfferBuild `json:"builds"` // of the order's own; none where builds are shared with other work

	Handling  float64 `json:"handling"`
	Margin    float64 `json:"margin"`
	ToMinimum float64 `json:"to_minimum"` // added to reach the least price
	Total     float64 `json:"total"`      // of items, handling, margin and that

	Breaks []Break `json:"breaks"`
}

// An OfferItem is one line.
type OfferItem struct {
	Name           string     `json:"name"`
	Process        string     `json:"process"`
	Material       string     `json:"material"`
	Orientation    string     `json:"orientation"`
	Group          string     `json:"group,omitzero"`
	Count          int        `json:"count"`
	Volume         float64    `json:"volume_mm3"`
	Mass           float64    `json:"mass_g"`
	Box            [3]float64 `json:"box_mm"`
	PiecesPerBuild int        `json:"pieces_per_build"` // of this alone, in straight rows
	BuildHeight    float64    `json:"build_height_mm"`  // of the build it stands in, the highest
	HeightShare    float64    `json:"height_share"`     // of that build, one piece [1]
	Hours          float64    `json:"machine_hours"`    // its share of the machine's time, one piece [h]

	// Of one piece, rejects counted in.
	Machine   float64 `json:"machine"`
	Stuff     float64 `json:"material_cost"`
	Finishing float64 `json:"finishing"`
	Each      float64 `json:"each"`
	Amount    float64 `json:"amount"`
}

// An OfferBuild is one build of the order.
type OfferBuild struct {
	Process string  `json:"process"`
	Pieces  int     `json:"pieces"`
	Height  float64 `json:"height_mm"`
	Hours   float64 `json:"hours"`
	Cost    float64 `json:"cost"`    // machine, set-up and what the build uses up
	Density float64 `json:"density"` // share of the build volume that is print [1]
}

// A Break is the price at a multiple of the order.
type Break struct {
	Quantity int     `json:"quantity"`
	Total    float64 `json:"total"`
	Each     float64 `json:"each"`
}

// Offer prices an order and its multiples. It returns the faults joined.
func (c RateCard) Offer(items []Item) (Offer, error) {
	if err := c.refuse(items); err != nil {
		return Offer{}, err
	}
	o, err := c.price(items)
	if err != nil {
		return Offer{}, err
	}
	for _, q := range c.quantities() {
		more := make([]Item, len(items))
		pieces := 0
		for i, it := range items {
			it.Count *= q
			more[i] = it
			pieces += it.Count
		}
		if pieces > mostPieces {
			break
		}
		p, err := c.price(more)
		if err != nil {
			return Offer{}, err
		}
		o.Breaks = append(o.Breaks, Break{q, p.Total, cents(p.Total / float64(q))})
	}
	return o, nil
}

// refuse checks card and items.
func (c RateCard) refuse(items []Item) error {
	var errs []error
	for _, f := range fault.Under("card", c.Validate()) {
		errs = append(errs, f)
	}
	if len(items) == 0 || len(items) > 1000 {
		errs = append(errs, fault.Fault{Field: "items", Given: fmt.Sprint(len(items)), Problem: "is no order", Want: "1 to 1000 items"})
	}
	pieces := 0
	for i, it := range items {
		var k check
		k.word("name", it.Name)
		k.number("volume", it.Volume, 1e-3, 1e9, " mm3")
		room := 1.0
		for n, v := range it.Box {
			k.number(fmt.Sprintf("box[%d]", n), v, 0.01, 5000, " mm")
			room *= v
		}
		if len(k.faults) == 0 && it.Volume > 1.001*room {
			k.add("volume", fmt.Sprintf("%g mm3", it.Volume), "is more than its box holds", fmt.Sprintf("up to %.6g mm3", room))
		}
		k.number("count", float64(it.Count), 1, mostPieces, "")
		if it.Process != "PBF" && it.Process != "MEX" && it.Process != "VPP" {
			k.add("process", it.Process, "is not quoted", "PBF, MEX or VPP")
		} else if c.machine(it.Process) == nil {
			k.add("process", it.Process, "has no rates on the card", "rates for it, or another process")
		}
		pieces += max(0, min(it.Count, mostPieces))
		for _, f := range fault.Under(fmt.Sprintf("items[%d]", i), k.faults) {
			errs = append(errs, f)
		}
	}
	if pieces > mostPieces {
		errs = append(errs, fault.Fault{Field: "items", Given: fmt.Sprint(pieces, " pieces"), Problem: "are too many for one order",
			Want: fmt.Sprintf("%d at most", mostPieces)})
	}
	return errors.Join(errs...)
}

// machine gives the rates that all processes have, nil if the card has none.
func (c RateCard) machine(process string) *Machine {
	switch {
	case process == "PBF" && c.PBF != nil:
		return &c.PBF.Machine
	case process == "MEX" && c.MEX != nil:
		return &c.MEX.Machine
	case process == "VPP" && c.VPP != nil:
		return &c.VPP.Machine
	}
	return nil
}

// price adds up one order.
func (c RateCard) price(items []Item) (Offer, error) {
	o := Offer{Card: c.Name, Currency: c.Currency, Invented: c.Invented, Note: "rates: " + c.Name}
	if c.Invented {
		o.Note = "INVENTED rates, round numbers: not a price until the shop's own card stands here"
	}
	costs := make([]cost, len(items))
	for _, process := range []string{"PBF", "MEX", "VPP"} {
		var of []int
		for i, it := range items {
			if it.Process == process {
				of = append(of, i)
			}
		}
		if len(of) == 0 {
			continue
		}
		builds, err := c.print(process, items, of, costs)
		if err != nil {
			return Offer{}, err
		}
		o.Builds = append(o.Builds, builds...)
	}
	for i, it := range items {
		x, n := costs[i], float64(it.Count)
		m := c.machine(it.Process)
		line := OfferItem{Name: it.Name, Process: it.Process, Material: it.Material, Orientation: it.Orientation, Group: it.Group,
			Count: it.Count, Volume: it.Volume,
			Mass: it.Volume / 1000 * m.Density, Box: it.Box, PiecesPerBuild: x.perBuild, BuildHeight: x.height, HeightShare: x.share / n,
			Hours:   x.hours / n,
			Machine: cents(x.machine / n / (1 - c.Reject)), Stuff: cents(x.material / n / (1 - c.Reject)), Finishing: cents(m.PieceWork)}
		line.Each = cents(line.Machine + line.Stuff + line.Finishing)
		line.Amount = cents(line.Each * n)
		o.Items = append(o.Items, line)
		o.Total = cents(o.Total + line.Amount)
	}
	o.Handling = cents(c.Handling)
	o.Total = cents(o.Total + o.Handling)
	o.Margin = cents(c.Margin * o.Total)
	o.Total = cents(o.Total + o.Margin)
	if o.Total < c.Minimum {
		o.ToMinimum = cents(c.Minimum - o.Total)
		o.Total = cents(o.Total + o.ToMinimum)
	}
	return o, nil
}

// cents rounds to hundredths, so that lines add up as printed.
func cents(x float64) float64 { return math.Round(x*100) / 100 }
