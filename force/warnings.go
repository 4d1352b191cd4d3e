package force

import (
	"fmt"
	"math"

	"ramnest/force/warning"
)

// The numbers of warnings; they keep their meaning, and one that is no longer given
// is not given to another. Each is explained by the command, see its guide.
const (
	warnOverstrained      = 1
	warnYield             = 2
	warnLockedRelease     = 3
	warnNotFinished       = 4
	warnSharpEdge         = 5
	warnNoSecant          = 6
	warnModel             = 7
	warnCreep             = 8
	warnBuild             = 9
	warnLoose             = 10
	warnOverstrainedShare = 11
	warnJam               = 12
	warnThick             = 13
	warnBendsAcross       = 14
	warnSharpRoot         = 15
	warnBigDeflection     = 16
	warnBallRoom          = 17
	warnStemRoom          = 18
	warnFitOnPrint        = 19
	warnCrush             = 20
	warnStagger           = 21
	warnSpringback        = 22
	warnCone              = 23
	warnWideFinger        = 24
	warnNoFloat           = 25
	warnWallBends         = 26
	warnPinPressed        = 27
	warnHoldUnsure        = 28
	warnWorstBelowP95     = 29
	warnBelowNominal      = 30
	warnHoldShort         = 84
	warnHoldUnknown       = 85
	warnUnlikelyFigure    = 76
	warnUnlikelySize      = 77
)

// latchWarnings says what the person should know of one latch.
func latchWarnings(l Latch, j *joint, s state, r LatchResult, mu Friction, outer, inner Material) []warning.Warning {
	var out []warning.Warning
	add := func(n int, format string, v ...any) {
		out = append(out, warning.Warning{Number: n, Text: l.ID + ": " + fmt.Sprintf(format, v...)})
	}
	switch {
	case l.Annular != nil:
		a := l.Annular
		add(warnModel, "the force is from shell theory; a published design guide would have it lower by a factor of about %.2f, which the band carries downward", math.Exp(j.modelDown-j.thin))
		to, ti := a.outerTube(outer), a.innerTube(inner)
		if to.Wall > thickWall*to.Radius || ti.Wall > thickWall*ti.Radius {
			add(warnThick, "a wall thicker than %.2g of its radius depends on how wide the bead bears: measure a sample", thickWall)
		}
		wallWarnings(a, j, s, outer, inner, l.Use, add)
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
		pressWarnings(l.PressFit, s, r.PeakEach, outer, inner, add)
	case l.CrushRib != nil:
		add(warnCrush, "crushed ribs are an estimate: rigid mate, flow stress times flattened crest, constraint %.2g; measure a sample", crushConstraint)
	}
	if j.path == slide && j.alpha == 0 {
		add(warnSharpEdge, "has no lead-in: a sharp edge shaves plastic and the force is not the one computed")
	}
	if j.path == slide && !(outer.Metal() && inner.Metal()) {
		add(warnCreep, "plastic creeps: the hold falls from the day of assembly on; the separation force is the one right after pressing")
	}
	switch {
	case l.Use != "releasable" && r.SelfLocking && r.SeparationLow > 0:
		add(warnHoldUnsure, "locks at a friction of %.3g but not at the low end of its spread, where %.4g N may pull it apart", mu.Value, r.SeparationLow)
	case l.Use != "releasable":
	case r.SelfLocking && j.path == hump:
		add(warnLockedRelease, "is to be releasable but its return angle %s deg locks at a friction of %.3g (limit %.3g deg)", figure(j.back*degree), mu.Value, (SeparableLimit(mu.Value)+j.backLean(mu.Value, s.outerMove))*degree)
	case r.SelfLocking:
		add(warnLockedRelease, "is to be releasable but locks at a friction of %.3g", mu.Value)
	case r.SeparationHigh == 0:
		add(warnLockedRelease, "is to be releasable but locks at the high end of the spread of its friction")
	}
	if r.Strain > r.Permitted {
		strain, permitted := distinct(3, 100*r.Strain, 100*r.Permitted)
		add(warnOverstrained, "%s: %s %% is above the permitted %s %%", r.StrainOf, strain, permitted)
	}
	if j.engage < j.stroke-1e-6 {
		engage, stroke := distinct(4, j.engage, j.stroke)
		add(warnNotFinished, "engages at a lift of %s mm but needs %s mm: it is not home at the seat", engage, stroke)
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

func pressWarnings(f *PressFit, s state, peak float64, hub, shaft Material, add func(int, string, ...any)) {
	d := f.sizing(hub, shaft).d
	p := s.load / (math.Pi * d)
	if hoop, strength := p*lameRatio(f.OuterDiameter, d), hub.HoopStrength(); hoop > strength.Value {
		stress, limit := distinct(3, hoop, strength.Value)
		add(warnYield, "hoop stress in the boss %s MPa is above its strength %s MPa [%s]: it yields or splits", stress, limit, strength.Mark)
	}
	if s.yields {
		add(warnYield, "the boss or pin flows through its wall: the force is limited to that of %.3g MPa in the joint", p)
	}
	if stress := peak / (math.Pi / 4 * (d*d - f.InnerDiameter*f.InnerDiameter)); stress > shaft.Strength.Value {
		shown, limit := distinct(3, stress, shaft.Strength.Value)
		add(warnPinPressed, "the force presses the pin with %s MPa along its axis, above its strength of %s MPa: it buckles or swells", shown, limit)
	}
	if f.Fit != "" {
		fit, _ := ParseISOFit(f.Fit)
		if !f.BoreFinished && hub.ToleranceOn(d) > 1.5*fit.HoleTol || !f.PinFinished && shaft.ToleranceOn(d) > 1.5*fit.ShaftTol {
			add(warnFitOnPrint, "the process does not keep %s; its own tolerance is drawn: finish the bore or pin and say so, or state diameters", f.Fit)
		}
	}
}

// materialWarnings says what the materials of both members leave open, each matter
// once.
func materialWarnings(l Latch, j *joint, outer, inner Material, add func(int, string, ...any)) {
	said := map[string]bool{}
	once := func(n int, format, name string) {
		if !said[format+name] {
			said[format+name] = true
			add(n, format, name)
		}
	}
	for i, m := range [2]Material{outer, inner} {
		spring := j.outer
		if i == 1 {
			spring = j.inner
		}
		if spring.stiffness == 0 || m.Metal() {
			continue
		}
		if m.SecantZero.Mark == MarkOwn {
			once(warnNoSecant, "no measured secant data for %s: its stress is bent to its strength by rule, see the topic materials", m.Name)
		}
		if l.Cantilever != nil || !m.Layered() || m.StrainOnceZ.Value >= m.StrainOnce.Value {
			continue
		}
		if spring.law == ringWall && m.Build != "along" {
			once(warnBuild, "%s rings are stretched across their layers, or may be: build it along the press axis and say build: along", m.Name)
		}
		if spring.law == armWall && m.Build != "across" {
			once(warnBendsAcross, "%s fingers bend across the layers, or may: turn the part so that they lie in the layers and say build: across, or expect a short life", m.Name)
		}
	}
}

// wallWarnings says where a ring's wall bends more along the axis than its layers
// may take.
func wallWarnings(a *Annular, j *joint, s state, outer, inner Material, use string, add func(int, string, ...any)) {
	check := func(part string, m Material, spring member, t Tube, isOuter bool, movement float64) {
		limit := m.PermittedAxial(use)
		if strain := t.RingBending(isOuter) * movement; m.Layered() && spring.law == ringWall && strain > limit.Value {
			shown, permitted := distinct(3, 100*strain, 100*limit.Value)
			add(warnWallBends, "the wall of the %s part bends beside the bead by %s %% along the press axis, above the %s %% that it may take in that direction: bring it nearer to the end, or take less undercut", part, shown, permitted)
		}
	}
	check("outer", outer, j.outer, a.outerTube(outer), true, s.outerMove)
	check("inner", inner, j.inner, a.innerTube(inner), false, s.move-s.outerMove)
}

// friction writes the friction from which on a joint locks.
func friction(mu float64) string {
	if mu == 0 {
		return fmt.Sprintf("above %.3g", maxFriction)
	}
	return fmt.Sprintf("%.3g", mu)
}

// warn gathers the warnings of the whole step.
func (r *Result) warn(a Assembly, mu float64, lower, upper Material) {
	add := func(n int, format string, v ...any) {
		r.Warnings = append(r.Warnings, warning.Warning{Number: n, Text: fmt.Sprintf(format, v...)})
	}
	a.warnDoubts(add)
	if r.Loose > 0 {
		add(warnLoose, "%s of assemblies have a loose latch within the stated tolerances", portion(r.Loose))
	}
	if r.Overstrained > 0 {
		add(warnOverstrainedShare, "%s of assemblies strain a latch beyond what is permitted", portion(r.Overstrained))
	}
	for _, l := range r.Latches {
		switch {
		case l.Locks:
			add(warnJam, "%s: locks at a friction of %.3g, and from %s on: no push joins it, there is no nominal force", l.ID, mu, friction(l.LocksFrom))
		case l.Jammed > 0:
			add(warnJam, "%s: jams in %s of assemblies, from a friction of %s on at nominal size: no push joins those", l.ID, portion(l.Jammed), friction(l.LocksFrom))
		}
	}
	if r.NoP95 {
		add(warnJam, "%s of assemblies jam: with more than %.0f %% there is no P95, and no design force", portion(r.Jammed), 100*JamsForP95)
	}
	r.explain(add)
	r.warnHold(add)
	if r.Springback > 0 {
		add(warnSpringback, "at the seat the latches push the parts apart with %.3g N: they do not stay home by themselves", r.Springback)
	}
	if keeps := keepsApart(lower, upper); staggered(r.Latches, keeps) {
		add(warnStagger, "latches peak less than %.2g mm apart in lift, which the process does not keep: the band counts them at one lift; all at once they need %.4g N", keeps, r.PeakStack)
	}
}

// explain says why figures stand in an order that a reader would not expect. The worst
// case has every cause at the end of its stated range, and draws reach past that; the
// error of the model reaches further down than up where another model gives less.
func (r *Result) explain(add func(int, string, ...any)) {
	if r.Locks || r.NoP95 {
		return
	}
	if r.Worst < r.P95 {
		worst, p95 := distinct(4, r.Worst, r.P95)
		add(warnWorstBelowP95, "the worst case, every cause at the end of its stated range, is %s N, below P95, %s N: the draws reach past those ends", worst, p95)
	}
	if r.Design < r.Peak {
		design, peak := distinct(4, r.Design, r.Peak)
		add(warnBelowNominal, "the design force, %s N, lies below the nominal peak, %s N: sizes, friction or the force model vary further down than up", design, peak)
	}
}
