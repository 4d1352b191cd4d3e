package quote

import (
	"fmt"

	"ramnest/force/fault"
)

// cost is what all pieces of one item cost to print.
type cost struct {
	machine, material float64
	hours             float64
	height            float64 // of the highest build they stand in [mm]
	share             float64 // of their builds, summed over the pieces [1]
	perBuild          int
}

// print prices the items of one process and says which builds they fill.
func (c RateCard) print(process string, items []Item, of []int, costs []cost) ([]OfferBuild, error) {
	m := c.machine(process)
	stack := process == "PBF"
	for _, i := range of {
		n, err := perBuild(m, items[i].Box, stack)
		if err != nil {
			return nil, err
		}
		if n == 0 {
			return nil, fault.Fault{Field: fmt.Sprintf("items[%d].box", i),
				Given:   fmt.Sprintf("%g x %g x %g mm", items[i].Box[0], items[i].Box[1], items[i].Box[2]),
				Problem: "does not go into the build of " + process, Want: fmt.Sprintf("up to %g x %g x %g mm", m.Build[0], m.Build[1], m.Build[2])}
		}
		costs[i].perBuild = n
	}
	if process == "PBF" && c.PBF.SharedFill > 0 {
		for _, i := range of {
			c.PBF.shared(items[i], &costs[i])
		}
		return nil, nil
	}
	var out []OfferBuild
	for _, b := range fill(m, items, of, stack) {
		build := OfferBuild{Process: process, Pieces: b.pieces, Height: b.height, Density: b.volume / (m.Build[0] * m.Build[1] * m.Build[2])}
		switch process {
		case "PBF":
			c.PBF.build(b, &build, costs)
		case "MEX":
			c.MEX.build(b, items, &build, costs)
		case "VPP":
			c.VPP.build(b, items, &build, costs)
		}
		for _, p := range b.parts {
			costs[p.item].height = max(costs[p.item].height, b.height)
		}
		out = append(out, build)
	}
	return out, nil
}

// hours of a powder bed build of a height [mm] and a volume of print [mm3].
//
//	Tb = Ts + Tt + Te: scanning, between the layers, warming and cooling
//
// Source: Gibson, Rosen, Stucker, Additive Manufacturing Technologies, eq. 16.7 and
// 16.8 (read).
func (r *PBFRates) hours(height, volume float64) float64 {
	between, err := RecoatTime(height, r.Layer, max(r.Recoat, 1e-9))
	if err != nil {
		return 0
	}
	h := between/3600 + r.WarmHours
	if r.ScanRate > 0 {
		h += volume / 1000 / r.ScanRate
	}
	return h
}

// powder is what a bed of a height uses up beside the print [kg].
func (r *PBFRates) powder(height, volume float64) float64 {
	bed := r.Build[0] * r.Build[1] * height
	return r.Refresh * max(0, bed-volume) / 1e6 * r.PowderDensity
}

// build shares a build of the order's own by the volumes of the boxes.
func (r *PBFRates) build(b load, build *OfferBuild, costs []cost) {
	build.Hours = r.hours(b.height, b.volume)
	machine := r.MachineHour*build.Hours + r.BuildSetUp
	loss := r.MaterialKg * r.powder(b.height, b.volume)
	build.Cost = cents(machine + loss)
	for _, p := range b.parts {
		share := p.room / b.room
		x := &costs[p.item]
		x.machine += machine * share
		x.material += loss*share + r.MaterialKg*r.Density*p.volume/1e6
		x.hours += build.Hours * share
		x.share += share
	}
}

// shared gives each piece its part of a full build in which other work stands.
//
//	share = box / (fill x build volume)
//
// All of the bed counts as unused powder, a little too much.
func (r *PBFRates) shared(it Item, x *cost) {
	v := r.Build[0] * r.Build[1] * r.Build[2]
	share := min(1, it.Box[0]*it.Box[1]*it.Box[2]/(r.SharedFill*v))
	n := float64(it.Count)
	full := r.hours(r.Build[2], 0)
	hours := share * full
	if r.ScanRate > 0 {
		hours += it.Volume / 1000 / r.ScanRate
	}
	x.height = r.Build[2]
	x.share, x.hours = n*share, n*hours
	x.machine = n * (r.MachineHour*hours + r.BuildSetUp*share)
	x.material = n * r.MaterialKg * (r.Density*it.Volume/1e6 + share*r.powder(r.Build[2], 0))
}

// build adds up mass and time of each piece; only the set-up is shared.
func (r *MEXRates) build(b load, items []Item, build *OfferBuild, costs []cost) {
	build.Cost = r.BuildSetUp
	for _, p := range b.parts {
		x := &costs[p.item]
		layers, err := Layers(items[p.item].Box[2], r.Layer)
		if err != nil {
			continue
		}
		volume := p.volume * (1 + r.Support)
		hours := volume/1000/r.Deposit + p.count*float64(layers)*r.LayerChange/3600
		x.hours += hours
		x.machine += r.MachineHour*hours + r.BuildSetUp*p.room/b.room
		x.material += r.MaterialKg * r.Density * volume / 1e6
		x.share += p.room / b.room
		build.Hours += hours
		build.Cost += r.MachineHour * hours
	}
	build.Cost = cents(build.Cost)
}

// build shares a build, which takes its height's time whatever stands in it.
func (r *VPPRates) build(b load, items []Item, build *OfferBuild, costs []cost) {
	layers, err := Layers(b.height, r.Layer)
	if err != nil {
		return
	}
	build.Hours = float64(layers) * r.LayerTime / 3600
	machine := r.MachineHour*build.Hours + r.BuildSetUp
	build.Cost = cents(machine)
	for _, p := range b.parts {
		x := &costs[p.item]
		share := p.room / b.room
		x.machine += machine * share
		x.material += r.MaterialKg * r.Density * p.volume * (1 + r.Support) / 1e6
		x.hours += build.Hours * share
		x.share += share
	}
}
