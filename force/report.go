package force

import "slices"

// latchResult puts one latch's figures together.
func latchResult(l Latch, j *joint, p profile, s state, mu Friction, b band, lower, upper Material) LatchResult {
	r := LatchResult{ID: l.ID, Kind: l.Kind(), Count: len(l.At), Stroke: j.stroke, Transverse: s.load, Locks: s.jam, LocksFrom: j.locksFrom()}
	whole := p
	if s.jam {
		p, s.factor = profile{}, 0
	}
	r.Curve = sumCurve([]profile{p}, []int{1})
	n := float64(r.Count)
	r.PeakEach, r.PeakLift = r.Curve.Peak()
	r.PeakAll, r.Work, r.SeatForce, r.Humps = n*r.PeakEach, n*r.Curve.Work(), n*r.Curve.At(0), r.Curve.humps(0.05)
	switch j.path {
	case slide:
		r.Transverse *= j.length
	case hump:
		r.Transverse *= 1 + j.lever*s.factor // P = K w + kappa W
	case ball:
		r.Transverse /= 1 - mu.Value*j.lever // at the equator
	}
	r.Strain, r.Permitted = s.outerStrain, j.outer.limit
	if s.innerStrain/j.inner.limit > s.outerStrain/j.outer.limit {
		r.Strain, r.Permitted = s.innerStrain, j.inner.limit
	}
	r.StrainOf = strainOf(j, s)
	r.ElasticPart = elasticPart(s, j.outerIsLower)
	if !r.Locks {
		q, held := p, s
		if j.hold != 0 {
			q, held = j.holding(mu.Value)
		}
		r.Separation, r.SelfLocking = j.separation(mu.Value, held, &q)
		r.SeparationLow, r.SeparationHigh = j.separations(b, r.Separation)
		r.Home, r.HomeLeast = j.home(b)
	}
	outer, inner := lower, upper
	if !j.outerIsLower {
		outer, inner = upper, lower
	}
	r.Swing = l.Joint().swing(&l, s.outerMove, outer)
	for _, line := range explain(l, j, whole, s, mu, outer, inner) {
		if line.ID != "" && !slices.Contains(r.Formulas, line.ID) {
			r.Formulas = append(r.Formulas, line.ID)
		}
	}
	r.Warnings = latchWarnings(l, j, s, r, mu, outer, inner)
	return r
}

// strainOf names the strain that is nearest its limit.
func strainOf(j *joint, s state) string {
	inner := s.innerStrain/j.inner.limit > s.outerStrain/j.outer.limit
	member := j.outer
	if inner {
		member = j.inner
	}
	switch {
	case j.strained != "":
		return j.strained
	case member.law == armWall:
		return "bending of the fingers"
	case inner:
		return "hoop of the inner part"
	}
	return "hoop of the outer part"
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
