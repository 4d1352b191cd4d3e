package force

import (
	"fmt"

	"ramnest/force/planar"
	"ramnest/force/unit"
)

func (c Cantilever) First() string                { return c.Flexes }
func (c Cantilever) Opening() string              { return otherPart(c.Flexes) }
func (c Cantilever) Carrier() string              { return "" }
func (c Cantilever) Snaps() bool                  { return true }
func (c Cantilever) Searched() bool               { return false }
func (c Cantilever) Play() float64                { return 0 }
func (c Cantilever) Aside() float64               { return c.Length }
func (c Cantilever) Slotted() (Kind, unit.Text)   { return nil, unit.Text{} }
func (c Cantilever) Accept(v Visitor)             { v.Cantilever(c) }
func (c Cantilever) sizeKey() string              { return "undercut" }
func (c Cantilever) writtenAs(key string) string  { return key }
func (c Cantilever) Assumed() (string, unit.Text) { return "", unit.Text{} }

func (c Cantilever) Stiffened(Material, float64) (Kind, string, float64) { return c, "", 0 }

func (c Cantilever) Size(ledge, arm Material) Size {
	return sizeOfBoth("undercut", c.Undercut, c.UndercutTol, c.Length, 1, ledge, arm)
}

func (c Cantilever) Resized(size float64, _ Member) Kind {
	c.Undercut = size
	return c
}

func (c Cantilever) Toleranced(tol float64) Kind {
	c.UndercutTol = new(tol)
	return c
}

func (c Cantilever) Largest() (float64, bool) { return 0.5 * c.Length, false }

func (c Cantilever) Deeper(_, offset float64, _ Member) float64 {
	return cotDeeper(offset, c.ReturnAngle)
}

func (c Cantilever) Footprint() Footprint {
	return Footprint{Slack: c.Undercut + c.Thickness, Size: 0.75*max(c.Width, c.Thickness) + c.Undercut}
}

func (c Cantilever) AcrossLayers(arm, _ Material) bool { return armAcross(arm) }

func (c Cantilever) Looser(share float64) (Kind, unit.Text) {
	c.Undercut *= share
	return c, unit.Textf("undercut %v", unit.Length.Of(c.Undercut))
}

func (c Cantilever) Gentler(angle float64) (Kind, string, bool) {
	if c.MatingAngle <= angle {
		return nil, "", false
	}
	c.MatingAngle = angle
	return c, "mating_angle", true
}

func (c Cantilever) Kept(places []int) Kind {
	c.Toward = kept(c.Toward, places)
	return c
}

// kept gives the directions of the places that stay; one for all stays for all.
func kept(toward []planar.Point, places []int) []planar.Point {
	if places == nil || len(toward) == 1 {
		return toward[:min(len(toward), len(places))]
	}
	var out []planar.Point
	for _, i := range places {
		if i < len(toward) {
			out = append(out, toward[i])
		}
	}
	return out
}

// OnPlate stands on the solid plate of the coupon instead of a base that the job states
// a factor for.
func (c Cantilever) OnPlate() (Kind, string) {
	q := c.BaseFactor
	if q == nil {
		return c, ""
	}
	c.BaseFactor = nil
	if c.shape() == "straight" {
		c.Base = "solid"
	}
	return c, fmt.Sprintf("the job states a base factor of %.3g; the coupons stand on a solid plate, are stiffer, and are computed so", *q)
}

func (c Cantilever) strengths(s *bounds) {
	b := c.hookWidth()
	s.shear("shear of the hook", b*flankBase(c.Undercut, c.MatingAngle, c.ReturnAngle, c.Land), true, false)
	s.pressed(b * c.Undercut)
	s.all = append(s.all, c.armPull(s.outer))
}

func (c Cantilever) warn(w *warner) {
	if c.RootRadius == nil && c.shape() != "u_arm" {
		w.add(warnSharpRoot, "no root radius is stated: taken as sharp, %.2g of the thickness, strain times %.3g; %.2g of the thickness is usually advised", sharpRoot, RootConcentration(sharpRoot), adviseRoot)
	} else if c.RootRadius != nil && *c.RootRadius < adviseRoot*c.thickness() {
		w.add(warnSharpRoot, "root radius %v is below %.2g of the thickness: strain times %.3g", unit.Length.Of(*c.RootRadius), adviseRoot,
			RootConcentration(*c.RootRadius/c.thickness()))
	}
	if w.s.outerMove > 0.2*c.Length {
		w.add(warnBigDeflection, "bends by %v of its length: beyond small deflections, force and strain are estimates",
			unit.Share.Of(w.s.outerMove/c.Length).To(2))
	}
	if arm := w.outer; arm.Layered() && arm.Build != "across" && c.shape() != "rocker" && arm.StrainOnceZ.Value < arm.StrainOnce.Value {
		w.add(warnBendsAcross, "its arm bends across the layers, or may: turn the part so that the arm lies in the layers and say build: across, or enlarge the root radius and expect a short life")
	}
}

func (c Cantilever) usual() []usualSize {
	out := []usualSize{
		{"length", "length of the arm", "arms", "mm", 2, 80, MarkPractice, c.Length},
		{"undercut", "undercut", "arms", "mm", 0.1, 6, MarkPractice, c.Undercut},
		{"undercut", "undercut over length", "arms", "", 0.005, 0.3, MarkPractice, c.Undercut / c.Length},
	}
	if c.Section == "ring_segment" || c.shape() == "rocker" {
		return out
	}
	return append(out, []usualSize{
		{"thickness", "thickness of the arm", "arms", "mm", 0.4, 8, MarkPractice, c.Thickness},
		{"length", "length over thickness", "arms", "", 2, 30, MarkPractice, c.Length / c.Thickness},
		{"width", "width of the arm", "arms", "mm", 1, 60, MarkPractice, c.Width},
	}...)
}
