package method

import (
	"math"

	"ramnest/force/planar"
	"ramnest/force/unit"
)

// A Placement is how the nest goes on the table of a press, so that the thrust line
// lies under the ram.
type Placement struct {
	Column string       // side of the nest that goes to the column: +x, -x, +y or -y in its plan
	Offset planar.Point // from the axis of the ram to the middle of the nest, in the plan of the nest [mm]
	Back   float64      // the same as a person at the press sees it: toward the column [mm]
	Right  float64      // and to the right [mm]
	Reach  float64      // from the axis of the ram to the edge of the nest at the column [mm]
	Gap    float64      // left between that edge and the column [mm]; no meaning if the throat is not known
	Middle float64      // thrust line off the ram axis if the nest is centred by its middle instead, at the worst of the stroke [mm]

	Bridges float64   // widest table slot that the nest bridges [mm]; 0: none
	Plate   float64   // steel plate needed over the slot of the table [mm]; 0: none, or the slot is not known
	TipsAt  float64   // pull on the lever at which the press tips if it is not bolted down [N]; 0: mass not known
	Hang    unit.Text // how the anvil hangs on the ram
}

// Figures of the table [own].
const (
	slotLanding   = 10  // of the nest on each side of a slot [mm]
	plateStress   = 160 // that a plate of structural steel may take, two thirds of a yield of 235 [MPa]
	thinnestPlate = 5   // [mm]
)

// place says where the nest goes; nil while its size is not known.
func (d Demand) place(p Press) *Placement {
	if d.NestSize[0] <= 0 || d.NestSize[1] <= 0 {
		return nil
	}
	out := &Placement{Offset: planar.Point{X: 0 - d.Thrust.X, Y: 0 - d.Thrust.Y}, Plate: d.tablePlate(p), TipsAt: p.tipsAt()}
	out.Reach, out.Column = d.reach()
	out.Gap = p.Throat - out.Reach
	// The plan is turned until that side is at the back.
	o := out.Offset
	switch out.Column {
	case "+x":
		out.Right, out.Back = 0-o.Y, o.X
	case "-x":
		out.Right, out.Back = o.Y, 0-o.X
	case "-y":
		out.Right, out.Back = 0-o.X, 0-o.Y
	default:
		out.Right, out.Back = o.X, o.Y
	}
	out.Middle = math.Hypot(d.Thrust.X, d.Thrust.Y) + d.ThrustWander
	out.Bridges = max(0, min(d.NestSize[0], d.NestSize[1])-2*slotLanding)
	if out.Plate > 0 {
		out.Bridges = 0
	}
	out.Hang = unit.Say("no bore in the ram is known: the anvil slips over the ram and is held by a magnet or a set-screw")
	if p.RamBore > 0 {
		out.Hang = unit.Textf("the ram has a bore of %v: a peg in it may hold the anvil, the flat end takes the force", unit.Length.Of(p.RamBore))
	}
	return out
}

// tablePlate gives the thickness of the steel plate that has to lie over the slot of
// the table because the nest does not bridge it [mm]; 0: none needed, or nothing is
// known of the slot or the nest.
//
//	t = sqrt(1.5 F w / (b s))
//
// F: what the lever can give, [StopForce] [N]; w: slot; b: short side of the nest
// [mm]; s: 160 MPa. Source: strip on two supports, F in its middle (own). Left out:
// the plate is as wide as the nest or wider.
func (d Demand) tablePlate(p Press) float64 {
	short := min(d.NestSize[0], d.NestSize[1])
	if p.TableSlot == 0 || short <= 0 || short >= p.TableSlot+2*slotLanding {
		return 0
	}
	f := max(d.DesignForce, StopForce(p))
	return max(thinnestPlate, math.Ceil(math.Sqrt(1.5*f*p.TableSlot/(short*plateStress))))
}

// Text says where the nest goes, in one sentence.
func (p Placement) Text() unit.Text {
	var by []unit.Text
	add := func(x float64, plus, minus string) {
		switch {
		case x >= 0.05:
			by = append(by, unit.Textf("%v %s", unit.Length.Of(x).To(unit.Shop), plus))
		case x <= -0.05:
			by = append(by, unit.Textf("%v %s", unit.Length.Of(-x).To(unit.Shop), minus))
		}
	}
	add(p.Back, "to the back", "to the front")
	add(p.Right, "to the right", "to the left")
	where := unit.Say("under the ram")
	if len(by) > 0 {
		where = unit.Join(by, " and ").Plus(" of the ram axis")
	}
	return unit.Textf("the %s side of the nest to the column, its middle %v", p.Column, where)
}
