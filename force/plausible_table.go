package force

import "math"

// A plausibleRange is what sources give for a figure of a material by a process, the
// extremes of them. The mark is that of the weaker end.
type plausibleRange struct {
	material, process, figure string
	lo, hi                    float64 // [MPa], [1]
	mark                      Mark
	source                    string
}

const (
	sheets   = "data sheets, recalled"
	practice = "usual range of data sheets, no source"
	measured = "measured prints and data sheets"
	table3   = "Snap-Fit Joints for Plastics - A Design Guide, table 3"
	breaking = "from the least usual permitted strain to the strain at the top of the curve"
)

// plausibleRanges holds the ranges, material by material. A modulus reaches down to
// thin sections (sintered below 3 mm: 0.55 of the bulk, abstract) and to moist
// polyamide (memory), a strain up to that at the top of the curve.
var plausibleRanges = [...]plausibleRange{
	{"PA12", "PBF", "modulus", 800, 2000, MarkMemory, "1482 measured, 0.55 of it in thin sections; 2000 by a printing reference"},
	{"PA12", "PBF", "strength", 40, 50.1, MarkRead, "43.1 to 50.1 measured"},
	{"PA12", "PBF", "strain", 0.015, 0.12, MarkRead, "top of four measured curves at 10 to 12 %"},
	{"PA12", "PBF", "friction", 0.20, 0.60, MarkRead, table3 + ", PA; smoothed lower"},
	{"PA11", "PBF", "modulus", 850, 1800, MarkMemory, sheets},
	{"PA11", "PBF", "strength", 40, 55, MarkMemory, sheets},
	{"PA11", "PBF", "strain", 0.02, 0.20, MarkMemory, sheets},
	{"PA11", "PBF", "friction", 0.20, 0.60, MarkRead, table3 + ", PA"},
	{"PA12-GB", "PBF", "modulus", 1500, 3300, MarkMemory, sheets},
	{"PA12-GB", "PBF", "strength", 25, 40, MarkMemory, sheets},
	{"PA12-GB", "PBF", "strain", 0.008, 0.06, MarkMemory, sheets},
	{"PA12-GB", "PBF", "friction", 0.20, 0.60, MarkRead, table3 + ", PA"},
	{"PLA", "MEX", "modulus", 1880, 3500, MarkRead, measured},
	{"PLA", "MEX", "strength", 33, 65, MarkRead, "seven filaments, in the layers"},
	{"PLA", "MEX", "strain", 0.005, 0.03, MarkPractice, breaking},
	{"PLA", "MEX", "friction", 0.30, 0.76, MarkRead, "0.62 to 0.76 measured on prints; lower end common practice"},
	{"PETG", "MEX", "modulus", 1630, 3000, MarkRead, measured},
	{"PETG", "MEX", "strength", 34.8, 55, MarkRead, "ten filaments, in the layers"},
	{"PETG", "MEX", "strain", 0.0075, 0.05, MarkPractice, breaking},
	{"PETG", "MEX", "friction", 0.13, 0.45, MarkPractice, "0.13 to 0.21 measured on prints; upper end common practice"},
	{"ABS", "MEX", "modulus", 1500, 2400, MarkPractice, practice},
	{"ABS", "MEX", "strength", 22, 45, MarkPractice, practice},
	{"ABS", "MEX", "strain", 0.006, 0.04, MarkPractice, breaking},
	{"ABS", "MEX", "friction", 0.35, 0.78, MarkRead, table3},
	{"ASA", "MEX", "modulus", 1500, 2400, MarkPractice, practice},
	{"ASA", "MEX", "strength", 25, 50, MarkPractice, practice},
	{"ASA", "MEX", "strain", 0.006, 0.04, MarkPractice, breaking},
	{"ASA", "MEX", "friction", 0.35, 0.78, MarkRead, table3 + ", ABS"},
	{"PC", "MEX", "modulus", 1700, 2450, MarkPractice, practice},
	{"PC", "MEX", "strength", 40, 70, MarkPractice, practice},
	{"PC", "MEX", "strain", 0.01, 0.07, MarkPractice, breaking},
	{"PC", "MEX", "friction", 0.30, 0.66, MarkRead, table3},
	{"PA", "MEX", "modulus", 1000, 3000, MarkMemory, "0.37 of the dry modulus when moist"},
	{"PA", "MEX", "strength", 30, 85, MarkPractice, practice},
	{"PA", "MEX", "strain", 0.0125, 0.10, MarkPractice, breaking},
	{"PA", "MEX", "friction", 0.30, 1.10, MarkRead, table3 + "; 0.66 to 1.10 measured on prints"},
	{"PA-GF", "MEX", "modulus", 1500, 7000, MarkPractice, practice},
	{"PA-GF", "MEX", "strength", 40, 115, MarkRead, "66 and 111 measured on prints"},
	{"PA-GF", "MEX", "strain", 0.005, 0.05, MarkPractice, breaking},
	{"PA-GF", "MEX", "friction", 0.30, 1.10, MarkOwn, "as PA"},
	{"PA-CF", "MEX", "modulus", 2500, 8000, MarkMemory, "5000 to 8000 dry, 2500 to 4500 moist"},
	{"PA-CF", "MEX", "strength", 40, 90, MarkRead, "62 to 70 measured on prints"},
	{"PA-CF", "MEX", "strain", 0.005, 0.03, MarkPractice, breaking},
	{"PA-CF", "MEX", "friction", 0.30, 1.10, MarkOwn, "as PA"},
	{"RESIN", "VPP", "modulus", 1000, 3200, MarkMemory, sheets + "; green a third"},
	{"RESIN", "VPP", "strength", 30, 70, MarkPractice, practice},
	{"RESIN", "VPP", "strain", 0.005, 0.06, MarkPractice, breaking},
	{"RESIN", "VPP", "friction", 0.30, 0.60, MarkPractice, practice},
	{"RESIN-TOUGH", "VPP", "modulus", 700, 2300, MarkMemory, sheets + "; green a third"},
	{"RESIN-TOUGH", "VPP", "strength", 25, 60, MarkPractice, practice},
	{"RESIN-TOUGH", "VPP", "strain", 0.01, 0.08, MarkPractice, breaking},
	{"RESIN-TOUGH", "VPP", "friction", 0.30, 0.60, MarkPractice, practice},
	{"RESIN-DURABLE", "VPP", "modulus", 450, 1300, MarkExcerpt, "450 green, 1260 cured"},
	{"RESIN-DURABLE", "VPP", "strength", 18.6, 32, MarkExcerpt, "18.6 green, 31.8 cured"},
	{"RESIN-DURABLE", "VPP", "strain", 0.02, 0.15, MarkPractice, breaking},
	{"RESIN-DURABLE", "VPP", "friction", 0.30, 0.60, MarkPractice, practice},
	{"PP", "moulded", "modulus", 1000, 1700, MarkMemory, sheets},
	{"PP", "moulded", "strength", 25, 40, MarkPractice, practice},
	{"PP", "moulded", "strain", 0.03, 0.12, MarkPractice, breaking},
	{"PP", "moulded", "friction", 0.25, 0.45, MarkRead, table3},
	{"POM", "moulded", "modulus", 2400, 3200, MarkPractice, practice},
	{"POM", "moulded", "strength", 55, 75, MarkPractice, practice},
	{"POM", "moulded", "strain", 0.03, 0.10, MarkPractice, breaking},
	{"POM", "moulded", "friction", 0.20, 0.53, MarkRead, table3},
	{"PA", "moulded", "modulus", 1000, 3300, MarkMemory, "0.37 of the dry modulus when moist"},
	{"PA", "moulded", "strength", 40, 90, MarkPractice, practice},
	{"PA", "moulded", "strain", 0.03, 0.10, MarkPractice, breaking},
	{"PA", "moulded", "friction", 0.30, 0.60, MarkRead, table3},
	{"PC", "moulded", "modulus", 2200, 2450, MarkRead, "chart of the same guide, and blends"},
	{"PC", "moulded", "strength", 55, 72, MarkPractice, practice},
	{"PC", "moulded", "strain", 0.02, 0.07, MarkRead, "4 % once in the same guide; yield at 6 to 7 %"},
	{"PC", "moulded", "friction", 0.45, 0.66, MarkRead, table3},
	{"ABS", "moulded", "modulus", 1800, 2700, MarkPractice, practice},
	{"ABS", "moulded", "strength", 35, 55, MarkPractice, practice},
	{"ABS", "moulded", "strain", 0.015, 0.04, MarkPractice, breaking},
	{"ABS", "moulded", "friction", 0.50, 0.78, MarkRead, table3},
	{"PBT", "moulded", "modulus", 2200, 2800, MarkPractice, practice},
	{"PBT", "moulded", "strength", 45, 60, MarkPractice, practice},
	{"PBT", "moulded", "strain", 0.02, 0.08, MarkPractice, breaking},
	{"PBT", "moulded", "friction", 0.35, 0.60, MarkPractice, table3 + ", on steel; on itself common practice"},
	{"steel", "machined", "modulus", 180e3, 215e3, MarkPractice, "handbooks"},
	{"steel", "machined", "strength", 180, 2000, MarkPractice, "handbooks, soft to hard"},
	{"steel", "machined", "strain", 0.0005, 0.01, MarkPractice, "handbooks"},
	{"steel", "machined", "friction", 0.10, 0.60, MarkPractice, "handbooks"},
	{"brass", "machined", "modulus", 90e3, 125e3, MarkPractice, "handbooks"},
	{"brass", "machined", "strength", 100, 600, MarkPractice, "handbooks"},
	{"brass", "machined", "strain", 0.0005, 0.01, MarkPractice, "handbooks"},
	{"brass", "machined", "friction", 0.10, 0.60, MarkPractice, "handbooks"},
	{"aluminium", "machined", "modulus", 65e3, 75e3, MarkPractice, "handbooks"},
	{"aluminium", "machined", "strength", 30, 600, MarkPractice, "handbooks"},
	{"aluminium", "machined", "strain", 0.0005, 0.01, MarkPractice, "handbooks"},
	{"aluminium", "machined", "friction", 0.10, 1.0, MarkPractice, "handbooks"},
}

// plausibleFor finds a range.
func plausibleFor(material, process, figure string) (plausibleRange, bool) {
	for _, r := range plausibleRanges {
		if r.figure == figure && r.material == material && r.process == process {
			return r, true
		}
	}
	return plausibleRange{}, false
}

// A usualSize is what latches of a kind have: a length [mm] or a ratio of two [1].
type usualSize struct {
	kind, key, what, of string
	unit                string
	lo, hi              float64
	mark                Mark
	value               func(Latch) float64 // NaN: not of this latch
}

// usualSizes are wide on purpose: they are to find a slip of the unit or the point,
// not to judge a design. Common practice, no source, but for the ring of 200 mm (a
// worked example of the guide above) and ISO 286 fits at the low end of pressed ones.
var usualSizes = []usualSize{
	{"annular", "joint_diameter", "joint diameter", "rings", "mm", 3, 250, MarkPractice, ofAnnular(func(a *Annular) float64 { return a.JointDiameter })},
	{"annular", "undercut", "undercut", "rings", "mm", 0.05, 3.5, MarkPractice, ofAnnular(ringUndercut)},
	{"annular", "undercut", "undercut over joint diameter", "rings", "", 0.001, 0.08, MarkPractice, ofAnnular(func(a *Annular) float64 { return ringUndercut(a) / a.JointDiameter })},
	{"annular", "outer_diameter", "wall of the outer tube", "rings", "mm", 0.4, 12, MarkPractice, ofAnnular(func(a *Annular) float64 { return (a.OuterDiameter - a.JointDiameter) / 2 })},
	{"ball", "ball_diameter", "ball diameter", "ball joints", "mm", 2, 40, MarkPractice, ofBall(func(b *Ball) float64 { return b.BallDiameter })},
	{"ball", "mouth_diameter", "undercut over ball diameter", "ball joints", "", 0.005, 0.15, MarkPractice, ofBall(func(b *Ball) float64 { return 1 - b.MouthDiameter/b.BallDiameter })},
	{"ball", "outer_diameter", "wall of the socket", "ball joints", "mm", 0.4, 10, MarkPractice, ofBall(func(b *Ball) float64 { return (b.OuterDiameter - b.MouthDiameter) / 2 })},
	{"cantilever", "length", "length of the arm", "arms", "mm", 2, 80, MarkPractice, ofArm(func(c *Cantilever) float64 { return c.Length })},
	{"cantilever", "undercut", "undercut", "arms", "mm", 0.1, 6, MarkPractice, ofArm(func(c *Cantilever) float64 { return c.Undercut })},
	{"cantilever", "undercut", "undercut over length", "arms", "", 0.005, 0.3, MarkPractice, ofArm(func(c *Cantilever) float64 { return c.Undercut / c.Length })},
	{"cantilever", "thickness", "thickness of the arm", "arms", "mm", 0.4, 8, MarkPractice, ofBar(func(c *Cantilever) float64 { return c.Thickness })},
	{"cantilever", "length", "length over thickness", "arms", "", 2, 30, MarkPractice, ofBar(func(c *Cantilever) float64 { return c.Length / c.Thickness })},
	{"cantilever", "width", "width of the arm", "arms", "mm", 1, 60, MarkPractice, ofBar(func(c *Cantilever) float64 { return c.Width })},
	{"press_fit", "joint_diameter", "joint diameter", "press fits", "mm", 1, 100, MarkPractice, ofPress(func(f *PressFit) float64 { return f.drawn().d })},
	{"press_fit", "interference", "interference over joint diameter", "press fits", "", 0.0003, 0.05, MarkPractice, ofPress(func(f *PressFit) float64 { s := f.drawn(); return s.size / s.d })},
	{"press_fit", "engagement_length", "engaged length over diameter", "press fits", "", 0.2, 8, MarkPractice, ofPress(func(f *PressFit) float64 { return f.EngagementLength / f.drawn().d })},
	{"crush_rib", "joint_diameter", "joint diameter", "ribs", "mm", 1, 100, MarkPractice, ofRib(func(c *CrushRib) float64 { return c.JointDiameter })},
	{"crush_rib", "rib_height", "rib height", "ribs", "mm", 0.15, 3, MarkPractice, ofRib(func(c *CrushRib) float64 { return c.Height })},
	{"crush_rib", "rib_width", "rib width", "ribs", "mm", 0.2, 4, MarkPractice, ofRib(func(c *CrushRib) float64 { return c.Width })},
	{"crush_rib", "crush", "crush", "ribs", "mm", 0.02, 1.5, MarkPractice, ofRib(func(c *CrushRib) float64 { return c.Crush })},
	{"crush_rib", "engagement_length", "engaged length over diameter", "ribs", "", 0.1, 8, MarkPractice, ofRib(func(c *CrushRib) float64 { return c.EngagementLength / c.JointDiameter })},
}

func ringUndercut(a *Annular) float64 { return a.sizing(Material{}, Material{}).size }

func ofAnnular(f func(*Annular) float64) func(Latch) float64 {
	return func(l Latch) float64 { return valueOf(l.Annular, f) }
}

func ofBall(f func(*Ball) float64) func(Latch) float64 {
	return func(l Latch) float64 { return valueOf(l.Ball, f) }
}

func ofPress(f func(*PressFit) float64) func(Latch) float64 {
	return func(l Latch) float64 { return valueOf(l.PressFit, f) }
}

func ofRib(f func(*CrushRib) float64) func(Latch) float64 {
	return func(l Latch) float64 { return valueOf(l.CrushRib, f) }
}

func ofArm(f func(*Cantilever) float64) func(Latch) float64 {
	return func(l Latch) float64 { return valueOf(l.Cantilever, f) }
}

// ofBar is for arms of a rectangle or trapezoid.
func ofBar(f func(*Cantilever) float64) func(Latch) float64 {
	return func(l Latch) float64 {
		if c := l.Cantilever; c != nil && (c.Section == "ring_segment" || c.shape() == "rocker") {
			return math.NaN()
		}
		return valueOf(l.Cantilever, f)
	}
}

func valueOf[K any](k *K, f func(*K) float64) float64 {
	if k == nil {
		return math.NaN()
	}
	return f(k)
}
