package force

// made explains what printing makes of a size as drawn: holes that come out tighter,
// asperities that flatten. It gives the symbol of what is left.
func (e *explainer) made(symbol string, s sizing, stated *float64, share float64) string {
	if s.size == s.drawn() && s.flatten == 0 {
		return symbol
	}
	bias := e.outer.HoleBias.Mark
	if s.inward {
		bias = e.inner.HoleBias.Mark
	}
	if s.tight != 0 {
		e.given("b", s.tight, "mm", "by which a hole of this size comes out tighter than drawn, by process", bias)
	}
	if s.loss != 0 || s.flatten != 0 {
		e.asperities(stated, share, s)
	}
	e.step("size.made", symbol+"_e", s.size, "mm", symbol+"_e = "+symbol+" + b - G: the size that decides how hard to press", "own", MarkOwn,
		"%s + %s - %s", s.drawn(), s.tight, s.loss)
	return symbol + "_e"
}

// asperities explains the ends of what flattened asperities lose.
func (e *explainer) asperities(stated *float64, share float64, s sizing) {
	if stated != nil {
		e.given("G", s.loss, "mm", "taken off by flattened asperities, as stated", MarkJob)
		return
	}
	outer, inner := e.outer, e.inner
	if e.finished[0] {
		outer = outer.machined()
	}
	if e.finished[1] {
		inner = inner.machined()
	}
	lo, ho, mo := outer.Roughness()
	li, hi, mi := inner.Roughness()
	e.given("Rz_o", lo, "mm", "mean roughness depth of the outer part, at least", mo)
	e.given("Rz_i", li, "mm", "of the inner part, at least", mi)
	half := ""
	if share != 1 {
		half = "/2" // a radial size
	}
	const din = "DIN 7190-1:2017, as quoted by a bearing calculation manual"
	e.step("press.flattened", "G", s.loss, "mm", "G = 0.4 (Rz_o + Rz_i), on the diameter: flattened asperities, the least, for the press", din,
		MarkRead, "0.4*(%[1]s + %[2]s)"+half, lo, li)
	e.step("press.flattened_most", "G_h", s.loss+s.flatten, "mm", "G_h = 0.8 (Rz_o + Rz_i) with the roughest surfaces, for the hold",
		din+", the edition before", MarkRead, "0.8*(%[1]s + %[2]s)"+half, ho, hi)
}

// holding goes over to the size that is sure to hold; loose says that there is none.
func (e *explainer) holding() (loose bool) {
	if e.j.hold == 0 {
		return false
	}
	w := e.s.move
	e.p, e.s = e.j.holding(e.mu)
	e.step("hold.size", "w_h", (e.j.size-e.j.hold)*e.j.half, "mm",
		"w_h = w - H: without what a tight hole adds, and with all asperities flattened; the P and W' that follow are for it", "own", MarkOwn, "%s - %s*%s", w, e.j.hold, e.j.half)
	if e.s.loose {
		e.step("hold.loose", "W'", 0, "N", "W' = 0: nothing is sure to hold", "own", MarkOwn, "0")
	}
	return e.s.loose
}
