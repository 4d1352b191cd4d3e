package force

import (
	"ramnest/force/unit"
)

func (c CrushRib) First() string                { return c.Ribs }
func (c CrushRib) Opening() string              { return "lower" }
func (c CrushRib) Carrier() string              { return c.Ribs }
func (c CrushRib) Snaps() bool                  { return false }
func (c CrushRib) Searched() bool               { return false }
func (c CrushRib) Play() float64                { return 0 }
func (c CrushRib) Aside() float64               { return 0 }
func (c CrushRib) Kept([]int) Kind              { return c }
func (c CrushRib) OnPlate() (Kind, string)      { return c, "" }
func (c CrushRib) Slotted() (Kind, unit.Text)   { return nil, unit.Text{} }
func (c CrushRib) Accept(v Visitor)             { v.CrushRib(c) }
func (c CrushRib) relations() []relation        { return nil }
func (c CrushRib) sizeKey() string              { return "crush" }
func (c CrushRib) writtenAs(key string) string  { return key }
func (c CrushRib) Assumed() (string, unit.Text) { return "", unit.Text{} }

func (c CrushRib) Deeper(_, _ float64, _ Member) float64 { return 0 }

func (c CrushRib) AcrossLayers(_, _ Material) bool { return false }

// Stiffened scales the flow stress: ribs have no modulus.
func (c CrushRib) Stiffened(ribs Material, by float64) (Kind, string, float64) {
	c.FlowStress = new(c.flowStress(ribs).Value * by)
	return c, "flow_stress", *c.FlowStress
}

func (c CrushRib) Size(lower, upper Material) Size {
	return sizeOfBoth("crush", c.Crush, c.CrushTol, c.JointDiameter, 1, lower, upper)
}

func (c CrushRib) Resized(size float64, _ Member) Kind {
	c.Crush = size
	return c
}

func (c CrushRib) Toleranced(tol float64) Kind {
	c.CrushTol, c.RoughnessLoss = new(tol), new(0.0)
	return c
}

func (c CrushRib) Largest() (float64, bool) { return c.Height, false }

func (c CrushRib) Footprint() Footprint {
	r := c.JointDiameter / 2
	return Footprint{Radius: r, Size: r + c.Height, Hole: true}
}

func (c CrushRib) Looser(share float64) (Kind, unit.Text) {
	c.Crush *= share
	return c, unit.Textf("crush %v", unit.Length.Of(c.Crush))
}

func (c CrushRib) Gentler(angle float64) (Kind, string, bool) {
	if !steeper(c.LeadInAngle, angle) {
		return nil, "", false
	}
	c.LeadInAngle = new(angle)
	return c, "lead_in_angle", false
}

func (c CrushRib) swing(l *Latch, _ float64, _ Material) Swing {
	half := c.EngagementLength / 2
	return Swing{Part: c.Ribs, ZLow: l.Z - half, ZHigh: l.Z + half}
}

func (c CrushRib) strengths(b *bounds) {
	b.shear("shear of the ribs", float64(c.Count)*c.Width*c.EngagementLength, true)
}

func (c CrushRib) warn(w *warner) {
	w.add(warnCrush, "crushed ribs are an estimate: rigid mate, flow stress times flattened crest, constraint %.2g; measure a sample",
		crushConstraint)
}

func (c CrushRib) usual() []usualSize {
	return []usualSize{
		{"joint_diameter", "joint diameter", "ribs", "mm", 1, 100, MarkPractice, c.JointDiameter},
		{"rib_height", "rib height", "ribs", "mm", 0.15, 3, MarkPractice, c.Height},
		{"rib_width", "rib width", "ribs", "mm", 0.2, 4, MarkPractice, c.Width},
		{"crush", "crush", "ribs", "mm", 0.02, 1.5, MarkPractice, c.Crush},
		{"engagement_length", "engaged length over diameter", "ribs", "", 0.1, 8, MarkPractice, c.EngagementLength / c.JointDiameter},
	}
}
