package force

// strength explains the least of the strengths that bound the hold of one joint.
func (e *explainer) strength(k Kind) {
	least := leastStrength(strengths(k, e.j, e.outer, e.inner))
	e.step("hold.strength", "R", least.force, "N", least.formula+", "+least.what+": no joint holds more, locked or not",
		"own; beam theory, maximum shear rule", MarkOwn, least.numbers, least.vals...)
}

// lifeLine explains what a service leaves of the hold: each factor, and their product if
// all are known.
func lifeLine(factors []LifeFactor) []Line {
	e := &explainer{}
	numbers, vals := "", []float64{}
	for _, f := range factors {
		if f.Known {
			e.given("K_"+f.Name, f.Value, "1", f.Why, f.Mark)
			numbers, vals = numbers+"*%s", append(vals, f.Value)
		}
	}
	if k, known := LifeShare(factors); known {
		e.step("hold.life", "K", k, "1", "K = product of the shares; the hold at the end of life is K times the P5 of now", "own", MarkOwn,
			numbers[1:], vals...)
	}
	return e.lines
}
