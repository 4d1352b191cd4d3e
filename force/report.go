package force

import (
	"fmt"
	"math"
	"slices"
)

// The numbers of warnings; they keep their meaning.
const (
	warnOverstrained = 1 + iota
	warnYield
	warnLockedRelease
	warnNotFinished
	warnSharpEdge
	warnNoSecant
	warnModel
	warnCreep
	warnBuild
	warnLoose
	warnOverstrainedShare
	warnJam
	warnThick
	warnBendsAcross
	warnSharpRoot
	warnBigDeflection
	warnBallRoom
	warnStemRoom
	warnFitOnPrint
	warnCrush
	warnStagger
	warnSpringback
	warnCone
	warnWideFinger
	warnNoFloat
)

// latchResult puts one latch's figures together.
func latchResult(l Latch, j *joint, p profile, s state, mu Figure, lower, upper Material) LatchResult {
	r := LatchResult{ID: l.ID, Kind: j.kind, Count: len(l.At), Stroke: j.stroke, Transverse: s.load}
	r.Curve = sumCurve([]profile{p}, []int{1})
	n := float64(r.Count)
	r.PeakEach, r.PeakLift = r.Curve.Peak()
	r.PeakAll, r.Work, r.SeatForce, r.Humps = n*r.PeakEach, n*r.Curve.Work(), n*r.Curve.At(0), r.Curve.humps(0.05)
	if j.path == slide {
		r.Transverse *= j.length
	}
	r.Strain, r.Permitted = s.outerStrain, j.outer.limit
	if s.innerStrain/j.inner.limit > s.outerStrain/j.outer.limit {
		r.Strain, r.Permitted = s.innerStrain, j.inner.limit
	}
	r.StrainOf = strainOf(l, j, s)
	r.ElasticPart = elasticPart(s, j.outerIsLower)
	r.Separation, r.SelfLocking = j.separation(mu.Value, s)
	outer, inner := lower, upper
	if !j.outerIsLower {
		outer, inner = upper, lower
	}
	switch {
	case l.Annular != nil:
		r.Swing = l.Annular.swing(l.Z, s.outerMove, outer)
	case l.Ball != nil:
		r.Swing = l.Ball.swing(l.Z, s.outerMove, outer)
	case l.Cantilever != nil:
		r.Swing = l.Cantilever.swing(l.Z, l.At)
	case l.PressFit != nil:
		r.Swing = l.PressFit.swing(l.Z, s.outerMove)
	case l.CrushRib != nil:
		half := l.CrushRib.EngagementLength / 2
		r.Swing = Swing{Part: l.CrushRib.Ribs, ZLow: l.Z - half, ZHigh: l.Z + half}
	}
	for _, line := range explain(l, j, p, s, mu, outer, inner) {
		if line.ID != "" && !slices.Contains(r.Formulas, line.ID) {
			r.Formulas = append(r.Formulas, line.ID)
		}
	}
	r.Warnings = latchWarnings(l, j, s, r, mu, outer, inner)
	return r
}

// strainOf names the strain that is nearest its limit.
func strainOf(l Latch, j *joint, s state) string {
	inner := s.innerStrain/j.inner.limit > s.outerStrain/j.outer.limit
	member := j.outer
	if inner {
		member = j.inner
	}
	switch {
	case l.CrushRib != nil:
		return "share of the rib crushed"
	case l.Cantilever != nil && l.Cantilever.shape() == "rocker":
		return "shear of the torsion bars over 1 + nu, with the root's concentration"
	case l.Cantilever != nil:
		return "bending of the arm, with the root's concentration"
	case member.law == armWall:
		return "bending of the fingers"
	case inner:
		return "hoop of the inner part"
	}
	return "hoop of the outer part"
}

// latchWarnings says what the person should know of one latch.
func latchWarnings(l Latch, j *joint, s state, r LatchResult, mu Figure, outer, inner Material) []Warning {
	var out []Warning
	add := func(n int, format string, v ...any) {
		out = append(out, Warning{n, l.ID + ": " + fmt.Sprintf(format, v...)})
	}
	switch {
	case l.Annular != nil:
		a := l.Annular
		add(warnModel, "the force is from shell theory; a published design guide would have it lower by a factor of about %.2f, which the band carries downward", math.Exp(j.modelDown))
		to, ti := a.outerTube(outer), a.innerTube(inner)
		if to.Wall > thickWall*to.Radius || ti.Wall > thickWall*ti.Radius {
			add(warnThick, "a wall thicker than %.2g of its radius depends on how wide the bead bears: measure a sample", thickWall)
		}
		if a.GrooveFloat == 0 {
			add(warnNoFloat, "has no stated play in its groove: a printed groove needs some, or the parts do not come home")
		}
		if a.Split == "outer" || a.Split == "inner" {
			fingerWarning(a.fingers(), add)
		}
	case l.Ball != nil:
		ballWarnings(l.Ball, add)
	case l.Cantilever != nil:
		armWarnings(l.Cantilever, outer, s, add)
	case l.PressFit != nil:
		pressWarnings(l.PressFit, j, s, outer, inner, add)
	case l.CrushRib != nil:
		add(warnCrush, "crushed ribs are an estimate: rigid mate, flow stress times flattened crest, constraint %.2g; measure a sample", crushConstraint)
	}
	if j.path == slide && j.alpha == 0 {
		add(warnSharpEdge, "has no lead-in: a sharp edge shaves plastic and the force is not the one computed")
	}
	if j.path == slide && !(outer.Metal() && inner.Metal()) {
		add(warnCreep, "plastic creeps: the hold falls from the day of assembly on; the separation force is the one right after pressing")
	}
	if r.SelfLocking && l.Use == "releasable" {
		add(warnLockedRelease, "is to be releasable but its return angle %.3g deg locks at a friction of %.3g (limit %.3g deg)", j.back*degree, mu.Value, SeparableLimit(mu.Value)*degree)
	}
	if r.Strain > r.Permitted {
		add(warnOverstrained, "%s: %.3g %% is above the permitted %.3g %%", r.StrainOf, 100*r.Strain, 100*r.Permitted)
	}
	if j.engage < j.stroke-1e-6 {
		add(warnNotFinished, "engages at a lift of %.4g mm but needs %.4g mm: it is not home at the seat", j.engage, j.stroke)
	}
	if l.CrushRib == nil {
		materialWarnings(l, j, outer, inner, add)
	}
	return out
}

// thickWall is the wall over mid-wall radius beyond which the ring model depends
// on the width of the contact; see the finite elements in the tests.
const thickWall = 0.8

func fingerWarning(f fingers, add func(int, string, ...any)) {
	if f.arc() > 2*math.Pi/3+1e-9 {
		add(warnWideFinger, "fingers %.3g deg wide flatten as they bend: they count as stiff beams and the force lies high", f.arc()*degree)
	}
}

func ballWarnings(b *Ball, add func(int, string, ...any)) {
	if b.SocketDiameter > 0 && (b.SocketDiameter-b.BallDiameter)/2 < ballRoom-1e-9 {
		add(warnBallRoom, "room round the ball is %.3g mm; start near %.2g mm (common practice) and expect to iterate", (b.SocketDiameter-b.BallDiameter)/2, ballRoom)
	}
	if b.StemDiameter > 0 && (b.MouthDiameter-b.StemDiameter)/2 < stemRoom-1e-9 {
		add(warnStemRoom, "room round the stem is %.3g mm; start near %.2g mm (common practice) and expect to iterate", (b.MouthDiameter-b.StemDiameter)/2, stemRoom)
	}
	if b.EntryAngle != nil && !b.coned() {
		add(warnCone, "the ball meets the lip at %.3g deg, before an entry cone of %.3g deg is touched", BallContactAngle(b.MouthDiameter, b.BallDiameter)*degree, *b.EntryAngle*degree)
	}
	if b.Slots > 0 {
		fingerWarning(b.fingers(), add)
	}
}

func armWarnings(c *Cantilever, arm Material, s state, add func(int, string, ...any)) {
	if c.RootRadius == nil && c.shape() != "u_arm" {
		add(warnSharpRoot, "no root radius is stated: taken as sharp, %.2g of the thickness, strain times %.3g; %.2g of the thickness is usually advised", sharpRoot, RootConcentration(sharpRoot), adviseRoot)
	} else if c.RootRadius != nil && *c.RootRadius < adviseRoot*c.thickness() {
		add(warnSharpRoot, "root radius %.3g mm is below %.2g of the thickness: strain times %.3g", *c.RootRadius, adviseRoot, RootConcentration(*c.RootRadius/c.thickness()))
	}
	if s.outerMove > 0.2*c.Length {
		add(warnBigDeflection, "bends by %.2g of its length: beyond small deflections, force and strain are estimates", s.outerMove/c.Length)
	}
	if arm.Layered() && arm.Build != "across" && c.shape() != "rocker" && arm.StrainOnceZ.Value < arm.StrainOnce.Value {
		add(warnBendsAcross, "its arm bends across the layers, or may: turn the part so that the arm lies in the layers and say build: across, or enlarge the root radius and expect a short life")
	}
}

func pressWarnings(f *PressFit, j *joint, s state, hub, shaft Material, add func(int, string, ...any)) {
	d := f.sizing(hub, shaft).d
	p := s.load / (math.Pi * d)
	if hoop, strength := p*lameRatio(f.OuterDiameter, d), hub.HoopStrength(); hoop > strength.Value {
		add(warnYield, "hoop stress in the boss %.3g MPa is above its strength %.3g MPa [%s]: it yields or splits", hoop, strength.Value, strength.Mark)
	}
	if s.yields {
		add(warnYield, "the boss or pin flows through its wall: the force is limited to that of %.3g MPa in the joint", p)
	}
	if f.Fit != "" {
		fit, _ := ParseISOFit(f.Fit)
		if !f.BoreFinished && hub.ToleranceOn(d) > 1.5*fit.HoleTol || !f.PinFinished && shaft.ToleranceOn(d) > 1.5*fit.ShaftTol {
			add(warnFitOnPrint, "the process does not keep %s; its own tolerance is drawn: finish the bore or pin and say so, or state diameters", f.Fit)
		}
	}
}

func materialWarnings(l Latch, j *joint, outer, inner Material, add func(int, string, ...any)) {
	said := ""
	for i, m := range [2]Material{outer, inner} {
		spring := j.outer
		if i == 1 {
			spring = j.inner
		}
		if spring.stiffness == 0 || m.Metal() || m.Name+m.Process+m.Build == said {
			continue
		}
		said = m.Name + m.Process + m.Build
		if m.SecantZero.Value == 0 {
			add(warnNoSecant, "no secant data for %s: the modulus at small strain is used and overstates the force", m.Name)
		}
		if l.Cantilever == nil && spring.law == ringWall && m.Layered() && m.Build != "along" && m.StrainOnceZ.Value < m.StrainOnce.Value {
			add(warnBuild, "%s rings are stretched across their layers, or may be: build it along the press axis and say build: along", m.Name)
		}
		if l.Cantilever == nil && spring.law == armWall && m.Layered() && m.Build != "across" && m.StrainOnceZ.Value < m.StrainOnce.Value {
			add(warnBendsAcross, "%s fingers bend across the layers, or may: turn the part so that they lie in the layers and say build: across, or expect a short life", m.Name)
		}
	}
}

// elasticPart names who gives way: both unless one gives less than a tenth.
func elasticPart(s state, outerIsLower bool) string {
	share := s.outerMove / s.move
	switch {
	case share >= 0.1 && share <= 0.9:
		return "both"
	case (share > 0.9) == outerIsLower:
		return "lower"
	}
	return "upper"
}

// warn gathers the warnings of the whole step.
func (r *Result) warn(joints []joint, lower, upper Material) {
	add := func(n int, format string, v ...any) {
		r.Warnings = append(r.Warnings, Warning{n, fmt.Sprintf(format, v...)})
	}
	if r.Loose > 0 {
		add(warnLoose, "%.1f %% of assemblies have a loose latch within the stated tolerances", 100*r.Loose)
	}
	if r.Overstrained > 0 {
		add(warnOverstrainedShare, "%.1f %% of assemblies strain a latch beyond what is permitted", 100*r.Overstrained)
	}
	if r.Jammed > 0 {
		add(warnJam, "%.1f %% of assemblies have a lead-in that locks at their friction; their force is not known and counts as %.3g times the transverse force", 100*r.Jammed, jamFactor)
	}
	if r.Springback > 0 {
		add(warnSpringback, "at the seat the latches push the parts apart with %.3g N: they do not stay home by themselves", r.Springback)
	}
	if keeps := max(lower.Tolerance.Value, upper.Tolerance.Value); staggered(r.Latches, keeps) {
		add(warnStagger, "latches peak less than %.2g mm apart in lift, which the process does not keep: all at once they need %.4g N", keeps, r.PeakStack)
	}
}

// staggered says whether two designs peak apart, but by less than the process keeps.
func staggered(latches []LatchResult, keeps float64) bool {
	for i, a := range latches {
		for _, b := range latches[:i] {
			if d := math.Abs(a.PeakLift - b.PeakLift); d > 1e-6 && d < keeps {
				return true
			}
		}
	}
	return false
}
