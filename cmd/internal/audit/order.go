package audit

import (
	"math"

	"ramnest/force"
)

// rounding is how far two sums of the same terms may lie apart, in another order of
// adding: a share of the sum.
const rounding = 1e-9

// The peak of a sum with balls in it is searched, not solved for, and near the angle at
// which a ball jams its summit is narrow. So far it may lie below the true one: that of
// the curve or a percentile, and that of a single draw. Of 3,000 random assemblies three
// had a draw that was 0.06 to 0.11 low, at the edge of jamming.
const (
	searched     = 0.05
	searchedOnce = 0.15
)

// slack is how far a peak of an assembly may lie below the true one.
func slack(a force.Assembly) float64 {
	for _, l := range a.Latches {
		if l.Joint().Searched() {
			return searched
		}
	}
	return rounding
}

// finite says that every figure is a number, and none below 0.
func (f *finding) finite(r force.Result) {
	for _, v := range []struct {
		what  string
		value float64
	}{
		{"nominal peak", r.Peak}, {"P5", r.P5}, {"P50", r.P50}, {"P95", r.P95}, {"design force", r.Design}, {"worst case", r.Worst},
		{"work", r.Work}, {"P95 of the work", r.WorkP95}, {"force at the seat", r.SeatForce}, {"stroke", r.Stroke},
		{"all at one lift", r.PeakStack},
		{"share that jams", r.Jammed}, {"share that is loose", r.Loose}, {"share that is overstrained", r.Overstrained},
		{"standard error of P95", r.P95StdErr},
	} {
		if !(v.value >= 0) || math.IsInf(v.value, 0) {
			f.say("a figure is a number, 0 or more", "%s %g", v.what, v.value)
		}
	}
	for _, s := range []float64{r.Jammed, r.Loose, r.Overstrained} {
		if s > 1 {
			f.say("a share is 1 at most", "%g", s)
		}
	}
}

// order holds the figures of the band against one another.
func (f *finding) order(a force.Assembly, r force.Result) {
	const law = "percentiles in order"
	least, name := r.P5, "P5"
	for _, p := range []struct {
		name  string
		value float64
	}{{"P50", r.P50}, {"P95", r.P95}} {
		if p.value > 0 && p.value < least {
			f.say(law, "%s %.6g N lies below %s %.6g N", p.name, p.value, name, least)
		}
		if p.value > 0 {
			least, name = p.value, p.name
		}
	}
	// Those that jam lie above every force: of a percentile there is none, there is none
	// of any above it.
	if r.P5 == 0 && r.P50 > 0 && r.Loose == 0 || r.P50 == 0 && r.P95 > 0 && r.Loose == 0 {
		f.say(law, "P5 %.6g N, P50 %.6g N, P95 %.6g N: one is missing below another", r.P5, r.P50, r.P95)
	}
	f.same("the design force is P95", "the design force", r.Design, r.P95, 0)
	const jams = "no P95 beyond the share that may jam"
	switch {
	case r.NoP95 && r.P95 != 0:
		f.say(jams, "there is none, and it is %.6g N", r.P95)
	case !r.NoP95 && (r.Jammed > force.JamsForP95 || r.Locks):
		f.say(jams, "P95 %.6g N where %.4g %% jam", r.P95, 100*r.Jammed)
	case !r.NoP95 && !(r.P95 > 0) && r.Loose < 0.5 && r.Peak > 0:
		f.say(jams, "P95 0 N and nobody says that there is none")
	}
	if !r.NoP95 && r.P95StdErr > 0 && r.P95StdErr > r.P95 {
		f.say("the standard error is below the figure", "P95 %.6g N, standard error %.6g N", r.P95, r.P95StdErr)
	}
	if r.Locks || r.NoP95 {
		return
	}
	explained := func(number int) bool {
		for _, w := range r.Warnings {
			if w.Number == number {
				return true
			}
		}
		return false
	}
	if r.Worst < r.Peak*(1-slack(a)) {
		f.say("the worst case is not below the nominal peak", "worst case %.6g N, nominal peak %.6g N", r.Worst, r.Peak)
	}
	if r.Worst < r.P95 && !explained(worstBelowP95) {
		f.say("a worst case below P95 is explained", "worst case %.6g N, P95 %.6g N, and no W%d says why", r.Worst, r.P95, worstBelowP95)
	}
	if r.Design < r.Peak && !explained(belowNominal) {
		f.say("a design force below the nominal peak is explained", "design force %.6g N, nominal peak %.6g N, and no W%d says why", r.Design,
			r.Peak, belowNominal)
	}
}

// The warnings that explain an order which a reader would not expect.
const (
	worstBelowP95 = 29
	belowNominal  = 30
)
