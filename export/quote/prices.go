package quote

// A Price is one line of an offer as a customer sees it.
type Price struct {
	Name        string
	Process     string
	Material    string
	Orientation string
	Pieces      int
	Box         [3]float64 // the largest of its pieces in each direction [mm]
	Volume      float64    // of all its pieces [mm3]
	Mass        float64    // of all its pieces [g]
	PerBuild    int        // pieces of it alone in a build, the least of its items
	HeightShare float64    // of the height of their builds, all pieces [1]
	Amount      float64
}

// Prices gives the lines for a customer: items of a group together, and what comes on
// top, handling, margin, minimum, shared over the lines by what they cost. They add up
// to the total in hundredths.
func (o Offer) Prices() []Price {
	var out []Price
	at := map[string]int{}
	var costs []float64
	var sum float64
	for _, it := range o.Items {
		name := it.Group
		if name == "" {
			name = it.Name
		}
		key := name + "\x00" + it.Process + "\x00" + it.Material
		k, known := at[key]
		if !known {
			k = len(out)
			at[key] = k
			out = append(out, Price{Name: name, Process: it.Process, Material: it.Material, Orientation: it.Orientation,
				PerBuild: it.PiecesPerBuild})
			costs = append(costs, 0)
		}
		p, n := &out[k], float64(it.Count)
		p.Pieces += it.Count
		for c := range 3 {
			p.Box[c] = max(p.Box[c], it.Box[c])
		}
		p.Volume, p.Mass, p.HeightShare = p.Volume+n*it.Volume, p.Mass+n*it.Mass, p.HeightShare+n*it.HeightShare
		p.PerBuild = min(p.PerBuild, it.PiecesPerBuild)
		costs[k] += it.Amount
		sum += it.Amount
	}
	// Cumulated, then rounded: what is rounded off one line stands in the next.
	var cost, given float64
	for k := range out {
		cost += costs[k]
		upTo := o.Total * float64(k+1) / float64(len(out))
		if sum > 0 {
			upTo = o.Total * cost / sum
		}
		out[k].Amount = cents(cents(upTo) - given)
		given = cents(given + out[k].Amount)
	}
	return out
}
