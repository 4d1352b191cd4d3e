package drawings

import (
	"ramnest/export/drawing"
	"ramnest/fixture"
	"ramnest/fixture/plan"
	"ramnest/fixture/solid"
)

// anvil draws an anvil: the sections run through the thrust line.
func (d drafter) anvil(a fixture.Anvil) drawing.Body {
	b := d.body(a.Piece, [2]float64{a.Thrust.X - a.Shift[0], a.Thrust.Y - a.Shift[1]})
	plate := named(a.Piece.Body, "plate")[0]
	o := outlineOf(plate)
	face, top := plan.Millimetres(plate.Low), plan.Millimetres(plate.Z)
	dim := func(p drawing.Place, what string, from, to [3]float64) {
		b.Dims = append(b.Dims, drawing.Dim{Place: p, What: what, From: from, To: to})
	}
	dim(drawing.PlanBelow, "overall length", up(o.ends[0], top), up(o.ends[1], top))
	dim(drawing.PlanLeft, "overall width", up(o.ends[2], top), up(o.ends[3], top))
	dim(drawing.SectionA, "plate", up(o.ends[0], face), up(o.ends[0], top))

	boss := named(a.Piece.Body, "boss")[0]
	bo, lip := outlineOf(boss), plan.Millimetres(boss.Z)
	if lip < face {
		dim(drawing.SectionA, "lip below the plate", up(bo.ends[0], lip), up(o.ends[0], face))
	}
	pocket := named(a.Piece.Body, "pocket")
	ceiling := highest(pocket)
	co := outlineOf(ceiling)
	dim(drawing.PlanBelow, "pocket length", up(co.ends[0], plan.Millimetres(ceiling.Z)), up(co.ends[1], plan.Millimetres(ceiling.Z)))
	dim(drawing.PlanLeft, "pocket width", up(co.ends[2], plan.Millimetres(ceiling.Z)), up(co.ends[3], plan.Millimetres(ceiling.Z)))
	dim(drawing.SectionB, "pocket depth", up(bo.ends[2], lip), up(co.ends[2], plan.Millimetres(ceiling.Z)))
	b.Features = append(b.Features, drawing.Feature{Name: "boss", At: bo.middle(), Size: bo.size(), Z: [2]float64{lip, face}})

	lowestAt, low := up(bo.ends[0], lip), lip
	for _, p := range named(a.Piece.Body, "pad") {
		if z, _ := heights(p); z < low && len(p.Facets) == 0 {
			lowestAt, low = up(outlineOf(p).ends[0], z), z
		}
	}
	highAt := up(o.ends[0], top)
	b.Features = append(b.Features, through("G", "guide hole", named(a.Piece.Body, "guide hole"), face, top)...)
	b.Features = append(b.Features, through("H", "hole for the step pin", named(a.Piece.Body, "step hole"), face, top)...)
	for _, s := range named(a.Piece.Body, "ram socket") {
		so, z := outlineOf(s), plan.Millimetres(s.Z)
		dim(drawing.SectionAUp, "ram socket", up(so.ends[0], z), up(so.ends[1], z))
		dim(drawing.SectionBUp, "ram socket", up(so.ends[2], z), up(so.ends[3], z))
		dim(drawing.SectionB, "socket depth", up(so.ends[2], z), up(o.ends[2], top))
		dim(drawing.SectionB, "back under the socket", up(co.ends[2], plan.Millimetres(ceiling.Z)), up(so.ends[2], z))
		b.Features = append(b.Features, drawing.Feature{Tag: "R", Name: "ram socket", At: so.middle(), Size: so.size(), Z: [2]float64{z, top}})
	}
	for _, k := range named(a.Piece.Body, "back") {
		z := plan.Millimetres(k.Z)
		highAt = up(centre(k), z)
		dim(drawing.SectionB, "back over the plate", up(o.ends[2], top), highAt)
		dim(drawing.SectionB, "back over the pocket", up(co.ends[2], plan.Millimetres(ceiling.Z)), up(o.ends[2], top))
		b.Features = append(b.Features, drawing.Feature{Tag: "F", Name: "face that is pushed", At: centre(k), Diameter: across(k, plan.Inside),
			Z: [2]float64{top, z}})
	}
	dim(drawing.SectionA, "overall height", lowestAt, highAt)
	b.Features = append(b.Features, pads(named(a.Piece.Body, "pad"), plan.Millimetres(ceiling.Z), true)...)
	b.Notes = append(b.Notes, "Boss, pocket, pads and lead-in follow the part: take their shape from the STL or 3MF file of the same fingerprint.")
	b.Notes = append(b.Notes, d.marks(a.Piece, "back", top)...)
	return b
}

// highest is the feature whose surface lies highest: the ceiling of a pocket from below.
func highest(fs []solid.Feature) solid.Feature {
	most := fs[0]
	for _, f := range fs {
		if f.Z > most.Z {
			most = f
		}
	}
	return most
}
