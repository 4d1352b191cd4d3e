package force

import (
	"math"

	"ramnest/force/unit"
)

func (a Annular) First() string                { return a.Outside }
func (a Annular) Opening() string              { return a.Outside }
func (a Annular) Carrier() string              { return "" }
func (a Annular) Snaps() bool                  { return true }
func (a Annular) Searched() bool               { return false }
func (a Annular) Play() float64                { return a.GrooveFloat }
func (a Annular) Aside() float64               { return 0 }
func (a Annular) Kept([]int) Kind              { return a }
func (a Annular) OnPlate() (Kind, string)      { return a, "" }
func (a Annular) Accept(v Visitor)             { v.Annular(a) }
func (a Annular) relations() []relation        { return nil }
func (a Annular) sizeKey() string              { return "undercut" }
func (a Annular) Assumed() (string, unit.Text) { return "", unit.Text{} }

func (a Annular) Stiffened(Material, float64) (Kind, string, float64) { return a, "", 0 }

func (a Annular) writtenAs(key string) string {
	if key == "undercut" && a.BeadDiameter != 0 {
		return "bead_diameter"
	}
	return key
}

func (a Annular) Size(outer, inner Material) Size {
	if a.BeadDiameter != 0 {
		return sizeApart("bead_diameter less lip_diameter", a.LipDiameter, a.BeadDiameter, a.LipTol, a.BeadTol, outer, inner)
	}
	return sizeOfBoth("undercut", a.Undercut, a.UndercutTol, a.JointDiameter, 2, outer, inner)
}

func (a Annular) Resized(size float64, m Member) Kind {
	if a.BeadDiameter != 0 {
		m.change(&a.LipDiameter, &a.BeadDiameter, size)
	} else {
		a.Undercut = size
	}
	return a
}

func (a Annular) Toleranced(tol float64) Kind {
	if a.BeadDiameter != 0 {
		a.BeadTol, a.LipTol = each(tol), each(tol)
	} else {
		a.UndercutTol = new(tol)
	}
	return a
}

func (a Annular) Largest() (float64, bool) { return 0.2 * a.JointDiameter, false }

func (a Annular) Deeper(_, offset float64, _ Member) float64 {
	return cotDeeper(offset/2, a.ReturnAngle)
}

func (a Annular) Footprint() Footprint {
	y, r := a.Undercut, a.JointDiameter/2
	if y == 0 {
		y = a.BeadDiameter - a.LipDiameter
	}
	return Footprint{Radius: r, Slack: a.Undercut, Ring: true, Within: r - y/2, Size: r + y/2}
}

// AcrossLayers of a ring: the outer one widens; the inner one is pressed together.
func (a Annular) AcrossLayers(outer, inner Material) bool {
	switch a.Split {
	case "outer":
		return armAcross(outer)
	case "inner":
		return armAcross(inner)
	}
	return ringAcross(outer)
}

func (a Annular) Looser(share float64) (Kind, unit.Text) {
	if a.Undercut > 0 {
		a.Undercut *= share
		return a, unit.Textf("undercut %v", unit.Length.Of(a.Undercut))
	}
	a.BeadDiameter = a.LipDiameter + (a.BeadDiameter-a.LipDiameter)*share
	return a, unit.Textf("bead %v", unit.Length.Of(a.BeadDiameter).To(4))
}

func (a Annular) Gentler(angle float64) (Kind, string, bool) {
	if a.MatingAngle <= angle {
		return nil, "", false
	}
	a.MatingAngle = angle
	return a, "mating_angle", true
}

// How a collar is slotted first (own: what a designer would try).
const (
	collarSlots = 6
	slotWide    = 1.0 // [mm]
)

func (a Annular) Slotted() (Kind, unit.Text) {
	if a.Split != "" && a.Split != "none" {
		return nil, unit.Text{}
	}
	a.Split, a.Slots, a.SlotWidth = "outer", collarSlots, slotWide
	a.SlotDepth = math.Max(a.EndDistance+a.OuterDiameter-a.JointDiameter, 2.5*a.EndDistance)
	if a.FarDistance > 0 {
		a.SlotDepth = math.Min(a.SlotDepth, a.EndDistance+0.8*a.FarDistance)
	}
	return a, unit.Textf("with %d slots %v deep", a.Slots, unit.Length.Of(a.SlotDepth))
}

func (a Annular) strengths(b *bounds) {
	d, h, share := a.JointDiameter, b.j.size/2, 1.0
	if a.Split == "outer" || a.Split == "inner" {
		share = float64(a.Slots) * a.fingers().arc() / (2 * math.Pi)
	}
	b.shear("shear of the bead", math.Pi*d*share*flankBase(h, a.MatingAngle, a.ReturnAngle, a.Land), true, false)
	b.pressed(math.Pi * d * share * h)
	wo, wi := (a.OuterDiameter-d)/2, (d-a.InnerDiameter)/2
	b.section("section of the outer part", true, share*math.Pi*(d+wo)*neck(wo, h))
	b.section("section of the inner part", false, share*math.Pi*(d-wi)*neck(wi, h))
}

func (a Annular) warn(w *warner) {
	w.add(warnModel, "the force is from shell theory; a published design guide would have it lower by a factor of about %v, which the band carries downward", unit.Plain.Of(math.Exp(w.j.modelDown-w.j.thin)))
	to, ti := a.outerTube(w.outer), a.innerTube(w.inner)
	if to.Wall > thickWall*to.Radius || ti.Wall > thickWall*ti.Radius {
		w.add(warnThick, "a wall thicker than %.2g of its radius depends on how wide the bead bears: measure a sample", thickWall)
	}
	a.warnWalls(w)
	if a.GrooveFloat == 0 {
		w.add(warnNoFloat, "has no stated play in its groove: a printed groove needs some, or the parts do not come home")
	}
	if a.Split == "outer" || a.Split == "inner" {
		w.fingers(a.fingers())
	}
}

// warnWalls says where a ring's wall bends more along the axis than its layers
// may take.
func (a Annular) warnWalls(w *warner) {
	check := func(part string, m Material, spring member, t Tube, isOuter bool, movement float64) {
		limit := m.PermittedAxial(w.l.Use)
		if strain := t.RingBending(isOuter) * movement; m.Layered() && spring.law == ringWall && strain > limit.Value {
			shown, permitted := distinct(3, 100*strain, 100*limit.Value)
			w.add(warnWallBends, "the wall of the %s part bends beside the bead by %s %% along the press axis, above the %s %% that it may take in that direction: bring it nearer to the end, or take less undercut", part, shown, permitted)
		}
	}
	check("outer", w.outer, w.j.outer, a.outerTube(w.outer), true, w.s.outerMove)
	check("inner", w.inner, w.j.inner, a.innerTube(w.inner), false, w.s.move-w.s.outerMove)
}

func (a Annular) usual() []usualSize {
	y := a.sizing(Material{}, Material{}).size
	return []usualSize{
		{"joint_diameter", "joint diameter", "rings", "mm", 3, 250, MarkPractice, a.JointDiameter},
		{"undercut", "undercut", "rings", "mm", 0.05, 3.5, MarkPractice, y},
		{"undercut", "undercut over joint diameter", "rings", "", 0.001, 0.08, MarkPractice, y / a.JointDiameter},
		{"outer_diameter", "wall of the outer tube", "rings", "mm", 0.4, 12, MarkPractice, (a.OuterDiameter - a.JointDiameter) / 2},
	}
}
