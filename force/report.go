package force

import (
	"fmt"
	"math"
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
)

// latchResult puts one latch's figures together.
func latchResult(l Latch, j *joint, lim limit, p profile, s state, mu Figure, lower, upper Material) LatchResult {
	r := LatchResult{ID: l.ID, Kind: j.kind, Count: len(l.At), Strain: s.outerStrain, Permitted: lim.outer}
	r.PeakEach, r.PeakLift = p.peak()
	r.PeakAll, r.Work = r.PeakEach*float64(r.Count), p.work()*float64(r.Count)
	if s.innerStrain/lim.inner > s.outerStrain/lim.outer {
		r.Strain, r.Permitted = s.innerStrain, lim.inner
	}
	r.ElasticPart = elasticPart(s, j.outerIsLower)
	r.Separation, r.SelfLocking = j.separation(mu.Value, s)
	r.Humps = sumCurve([]profile{p}, []int{1}).humps(0.05)
	r.Formulas = append(r.Formulas, j.formulas...)
	outer, inner := lower, upper
	if !j.outerIsLower {
		outer, inner = upper, lower
	}
	add := func(n int, format string, v ...any) {
		r.Warnings = append(r.Warnings, Warning{n, l.ID + ": " + fmt.Sprintf(format, v...)})
	}
	r.Formulas = append(r.Formulas, fmt.Sprintf("mu = %.3g [%s]; E outer %.5g MPa [%s], inner %.5g MPa [%s]", mu.Value, mu.Mark, outer.Modulus.Value, outer.Modulus.Mark, inner.Modulus.Value, inner.Modulus.Mark))
	if l.Annular != nil {
		factor, _ := MatingFactor(mu.Value, j.alpha)
		r.Formulas = append(r.Formulas,
			fmt.Sprintf("P = K y/2 = %.5g N at y = %.4g mm diametral; strain outer %.3g %%, inner %.3g %% [own; eps = y/d, design guide p. 20, read]", s.load, j.size, 100*s.outerStrain, 100*s.innerStrain),
			fmt.Sprintf("W = P tan(alpha + rho) = %.5g x %.4g = %.5g N [design guide p. 14, read]", s.load, factor, s.load*factor))
		r.Swing = l.Annular.swing(l.Z, s.outward, j.reach)
		add(warnModel, "the force is from shell theory; a published design guide differs from it by a factor of %.2f, which the band carries", math.Exp(j.modelLog))
		if t := l.Annular.innerTube(inner); t.Wall/t.Radius > 1 || l.Annular.OuterDiameter > 2*l.Annular.JointDiameter {
			add(warnThick, "a wall this thick has no shell band; its stiffness is an extrapolation, measure a sample")
		}
		if r.SelfLocking && l.Use == "releasable" {
			add(warnLockedRelease, "is to be releasable but its return angle %.3g deg locks at a friction of %.3g (limit %.3g deg)", j.back*degree, mu.Value, SeparableLimit(mu.Value)*degree)
		}
	} else {
		r.Formulas = append(r.Formulas, fmt.Sprintf("F = mu p pi d L at p = %.5g MPa, plus the lead-in; %.5g N at full engagement [plastics handbook p. 32, read; lead-in own]", s.load, r.PeakEach))
		half := j.length / 2
		r.Swing = Swing{Part: l.PressFit.Outside, Outward: s.outward, Radius: l.PressFit.OuterDiameter / 2, ZLow: l.Z - half, ZHigh: l.Z + half}
		hoop := s.load * lameRatio(l.PressFit.OuterDiameter, j.d)
		strength := outer.StrengthZ
		if outer.Build == "along" {
			strength = outer.Strength
		}
		if hoop > strength.Value {
			add(warnYield, "hoop stress in the boss %.3g MPa is above its strength %.3g MPa [%s]: it yields or splits; the elastic force is kept as an upper figure", hoop, strength.Value, strength.Mark)
		}
		if l.PressFit.LeadInAngle == nil {
			add(warnSharpEdge, "has no lead-in: a sharp edge shaves plastic and the force is not the one computed")
		}
		if !outer.Metal() || !inner.Metal() {
			add(warnCreep, "plastic creeps: the hold falls from the day of assembly on; the separation force is the one right after pressing")
		}
	}
	if lim.over(s) {
		add(warnOverstrained, "strain %.3g %% is above the permitted %.3g %%", 100*r.Strain, 100*r.Permitted)
	}
	if j.engage < j.ownStroke-1e-6 {
		add(warnNotFinished, "engages at a lift of %.4g mm but needs %.4g mm: it is not home at the seat", j.engage, j.ownStroke)
	}
	for _, m := range [2]Material{outer, inner} {
		if !m.Metal() && m.SecantZeroStrain.Value == 0 {
			add(warnNoSecant, "no secant data for %s: the modulus at small strain is used and overstates the force", m.Name)
		}
		if m.Build != "along" && (m.Process == "MEX" || m.Process == "PBF") {
			add(warnBuild, "%s rings are stretched across their layers, or may be: build it along the press axis and say build: along", m.Name)
		}
	}
	return r
}

// elasticPart names who gives way: both unless one gives less than a tenth.
func elasticPart(s state, outerIsLower bool) string {
	share := s.outerStrain / (s.outerStrain + s.innerStrain)
	switch {
	case share >= 0.1 && share <= 0.9:
		return "both"
	case (share > 0.9) == outerIsLower:
		return "lower"
	}
	return "upper"
}

// warn gathers the warnings of the whole step.
func (r *Result) warn() {
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
}
