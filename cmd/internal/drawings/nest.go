package drawings

import (
	"fmt"

	"ramnest/export/drawing"
	"ramnest/fixture"
	"ramnest/fixture/plan"
	"ramnest/fixture/solid"
)

// nest draws a nest: the section runs through the ejection hole, or the middle.
func (d drafter) nest(n fixture.Nest) drawing.Body {
	block := named(n.Piece.Body, "block")[0]
	bo := outlineOf(block)
	cut := bo.middle()
	if e := named(n.Piece.Body, "ejection hole"); len(e) > 0 {
		cut = centre(e[0])
	}
	b := d.body(n.Piece, cut)
	top, under := plan.Millimetres(block.Z), plan.Millimetres(block.Low)
	pocket := lowest(named(n.Piece.Body, "pocket"))
	po, floor := outlineOf(pocket), plan.Millimetres(pocket.Z)
	b.Notes = append(b.Notes,
		fmt.Sprintf("Pocket: %s clearance a side; pads, pocket and lead-in follow the part: take their shape from the STL or 3MF file of the same fingerprint. The block is %s high.", d.length(n.Clearance), d.length(n.Body)))

	dim := func(p drawing.Place, what string, from, to [3]float64) {
		b.Dims = append(b.Dims, drawing.Dim{Place: p, What: what, From: from, To: to})
	}
	foot := named(n.Piece.Body, "foot")
	if whole := outlineOf(append(foot, block)...); len(foot) > 0 {
		z := plan.Millimetres(foot[0].Low)
		if whole.size()[0] > bo.size()[0] {
			dim(drawing.PlanBelow, "overall length", up(whole.ends[0], z), up(whole.ends[1], z))
		}
		if whole.size()[1] > bo.size()[1] {
			dim(drawing.PlanLeft, "overall width", up(whole.ends[2], z), up(whole.ends[3], z))
		}
		dim(drawing.SectionB, "foot", up(whole.ends[2], z), up(whole.ends[2], plan.Millimetres(foot[0].Z)))
	}
	dim(drawing.PlanBelow, "block length", up(bo.ends[0], under), up(bo.ends[1], under))
	dim(drawing.PlanLeft, "block width", up(bo.ends[2], under), up(bo.ends[3], under))
	dim(drawing.PlanBelow, "pocket length", up(po.ends[0], floor), up(po.ends[1], floor))
	dim(drawing.PlanLeft, "pocket width", up(po.ends[2], floor), up(po.ends[3], floor))
	dim(drawing.PlanBelow, "wall at the left", up(bo.ends[0], under), up(po.ends[0], floor))
	dim(drawing.PlanLeft, "wall at the front", up(bo.ends[2], under), up(po.ends[2], floor))

	tongue := named(n.Piece.Body, "tongue")
	base := up(bo.ends[0], under)
	if len(tongue) > 0 {
		base = up(outlineOf(tongue[0]).ends[0], plan.Millimetres(tongue[0].Z))
		dim(drawing.SectionA, "tongue depth", base, up(bo.ends[0], under))
	}
	rim := up(bo.ends[0], top)
	dim(drawing.SectionA, "floor", up(bo.ends[0], under), up(po.ends[0], floor))
	dim(drawing.SectionA, "pocket depth", up(po.ends[0], floor), rim)
	stops, pins := named(n.Piece.Body, "dead stop"), named(n.Piece.Body, "guide pin")
	for _, s := range stops {
		if !carries(pins, s) {
			at := centre(s) // or beside it, where a hole is
			at[1] += 0.45 * across(s, plan.Outside)
			dim(drawing.SectionA, "dead stop over the top", rim, up(at, plan.Millimetres(s.Z)))
			break
		}
	}
	if len(pins) > 0 {
		dim(drawing.SectionA, "overall height", base, up(centre(pins[0]), plan.Millimetres(pins[0].Z)))
	}
	dim(drawing.SectionB, "block height", up(bo.ends[0], under), rim)
	for _, f := range named(n.Piece.Body, "finger relief") {
		o := outlineOf(f)
		b.Features = append(b.Features, drawing.Feature{Name: "finger relief", At: clip(o, bo).middle(), Size: clip(o, bo).size(),
			Z: [2]float64{plan.Millimetres(f.Z), top}})
	}
	b.Features = append(posts("D", "dead stop", stops, plan.Outside, top), b.Features...)
	b.Features = append(b.Features, posts("G", "guide pin", pins, plan.Inside, plan.Millimetres(stops[0].Z))...)
	holes := named(n.Piece.Body, "step hole")
	for i, h := range holes {
		b.Features = append(b.Features, drawing.Feature{Tag: fmt.Sprint("H", i+1),
			Name: fmt.Sprintf("hole for the pin of step %d", n.StepPins[i].Step+1), At: centre(h), Diameter: across(h,
				plan.Outside), Z: [2]float64{plan.Millimetres(h.Z), plan.Millimetres(stops[0].Z)}})
	}
	b.Features = append(b.Features, through("E", "ejection hole", named(n.Piece.Body, "ejection hole"), under, floor)...)
	if len(foot) > 0 {
		b.Features = append(b.Features, through("S", "screw hole", named(n.Piece.Body, "screw hole"), under, plan.Millimetres(foot[0].Z))...)
	}
	b.Features = append(b.Features, pads(named(n.Piece.Body, "pad"), floor, false)...)
	for _, k := range named(n.Piece.Body, "key") {
		o := outlineOf(k)
		b.Features = append(b.Features, drawing.Feature{Tag: "K", Name: "key", At: o.middle(), Size: o.size(),
			Z: [2]float64{floor, plan.Millimetres(k.Z)}})
	}
	for _, t := range tongue {
		o := outlineOf(t)
		b.Features = append(b.Features, drawing.Feature{Name: "tongue", At: o.middle(), Size: o.size(),
			Z: [2]float64{plan.Millimetres(t.Z), under}})
	}
	b.Notes = append(b.Notes, d.marks(n.Piece, "top", top)...)
	return b
}

// lowest is the feature whose surface lies lowest: of a pocket that is stepped, its floor.
func lowest(fs []solid.Feature) solid.Feature {
	least := fs[0]
	for _, f := range fs {
		if f.Z < least.Z {
			least = f
		}
	}
	return least
}

// carries tells whether a stop goes on as one of the pins.
func carries(pins []solid.Feature, stop solid.Feature) bool {
	m := centre(stop)
	for _, p := range pins {
		if centre(p) == m {
			return true
		}
	}
	return false
}

// clip keeps an outline within another.
func clip(o, within outline) outline {
	for k := range 2 {
		o.low[k], o.high[k] = max(o.low[k], within.low[k]), min(o.high[k], within.high[k])
	}
	return o
}

// posts lists round posts that rise from a height.
func posts(tag, name string, fs []solid.Feature, side plan.Side, from float64) []drawing.Feature {
	var out []drawing.Feature
	for i, f := range fs {
		out = append(out, drawing.Feature{
			Tag: fmt.Sprint(tag, i+1), Name: name, At: centre(f), Diameter: across(f, side), Z: [2]float64{from, plan.Millimetres(f.Z)},
		})
	}
	return out
}

// through lists round holes between two heights.
func through(tag, name string, fs []solid.Feature, from, to float64) []drawing.Feature {
	var out []drawing.Feature
	for i, f := range fs {
		t := fmt.Sprint(tag, i+1)
		if len(fs) == 1 {
			t = tag
		}
		out = append(out, drawing.Feature{Tag: t, Name: name + ", through", At: centre(f), Diameter: across(f, plan.Outside),
			Z: [2]float64{from, to}})
	}
	return out
}

// pads lists the pads; those of an anvil look down.
func pads(fs []solid.Feature, ground float64, hidden bool) []drawing.Feature {
	var out []drawing.Feature
	for i, f := range fs {
		o := outlineOf(f)
		low, high := heights(f)
		p := drawing.Feature{Tag: fmt.Sprint("P", i+1), Name: "pad", At: o.middle(), Size: o.size(),
			Z: [2]float64{min(low, ground), max(high, ground)}, Hidden: hidden}
		if len(f.Facets) > 0 {
			p.Name, p.Z = "pad, follows the part", [2]float64{low, high}
		}
		out = append(out, p)
	}
	return out
}

// marks says what is engraved, and how deep.
func (d drafter) marks(p fixture.Piece, face string, z float64) []string {
	m := named(p.Body, "mark")
	if len(m) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("%s engraved on the %s, %s deep.", p.Mark, face, d.length(round(z-plan.Millimetres(m[0].Z))))}
}
