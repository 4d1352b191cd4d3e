package audit

import (
	"math"

	"ramnest/force"
)

// nominal holds the nominal figures of the sum against those of its latches.
func (f *finding) nominal(a force.Assembly, r force.Result) {
	if len(r.Latches) != len(a.Latches) {
		f.say("a result for each latch", "%d latches, %d results", len(a.Latches), len(r.Latches))
		return
	}
	var largest, stack, work, seat, jams float64
	locks := false
	for i, l := range r.Latches {
		equal(f, "a result for each latch", "the latch", l.ID, a.Latches[i].ID)
		equal(f, "a result for each latch", "places of "+l.ID, l.Count, len(a.Latches[i].At))
		f.same("a latch at so many places needs so many times the force", "peak of "+l.ID, l.PeakAll, float64(l.Count)*l.PeakEach, rounding)
		largest, stack, work, seat = max(largest, l.PeakAll), stack+l.PeakAll, work+l.Work, seat+l.SeatForce
		jams, locks = max(jams, l.Jammed), locks || l.Locks
	}
	equal(f, "the whole locks if a latch does", "locking", r.Locks, locks)
	if jams > r.Jammed || r.Jammed > 0 && jams == 0 {
		f.say("as many assemblies jam as the worst latch, or more", "%.4g %% of assemblies, %.4g %% by one latch", 100*r.Jammed, 100*jams)
	}
	if r.Locks {
		return
	}
	const law = "the sum lies between its largest latch and all at one lift"
	if r.Peak < largest*(1-rounding)-1e-9 {
		f.say(law, "nominal peak %.6g N, one latch alone %.6g N", r.Peak, largest)
	}
	if r.Peak > stack*(1+rounding)+1e-9 {
		f.say(law, "nominal peak %.6g N, all at one lift %.6g N", r.Peak, stack)
	}
	f.same(law, "all at one lift", r.PeakStack, stack, rounding)
	f.same("the work is that of all latches", "work", r.Work, work, 1e-6)
	f.same("the force at the seat is that of all latches", "force at the seat", r.SeatForce, seat, 1e-6)
}

// curve holds the curve against the figures read off it, and against the sum of the
// latches' own curves.
func (f *finding) curve(r force.Result) {
	if r.Locks {
		return
	}
	const law = "curve and peak agree"
	points := r.Curve.Points(200)
	var most, work float64
	for i, p := range points { // lift falling
		most = max(most, p[1])
		if i > 0 {
			work += (points[i-1][0] - p[0]) * (p[1] + points[i-1][1]) / 2
		}
	}
	if most > r.Peak*(1+rounding)+1e-9 {
		f.say(law, "the curve holds %.6g N, the peak is %.6g N", most, r.Peak)
	}
	if most < r.Peak*(1-searched)-1e-9 { // a ball has its summit between points
		f.say(law, "the curve holds %.6g N at most, the peak is %.6g N", most, r.Peak)
	}
	f.same(law, "the force at the lift of the peak", r.Curve.At(r.PeakLift), r.Peak, rounding)
	f.same("the curve begins with the stroke", "stroke", r.Curve.Stroke(), r.Stroke, rounding)
	// Trapezia over a few hundred stretches.
	f.same("the work is the area under the curve", "work", r.Work, work, 0.01)
	f.sumOfCurves(r)
	for _, b := range r.Band {
		if !(b.P5 <= b.P50 && b.P50 <= b.P95) {
			f.say("percentiles in order", "along the stroke at %.4g mm: P5 %.6g N, P50 %.6g N, P95 %.6g N", b.Lift, b.P5, b.P50, b.P95)
			break
		}
	}
}

// sumOfCurves adds the latches' curves where none of them breaks.
func (f *finding) sumOfCurves(r force.Result) {
	const apart = 1e-5 // breaks closer together than that count as one [mm]
	breaks := r.Curve.Breaks()
	for i := 1; i < len(breaks); i++ {
		hi, lo := breaks[i-1], breaks[i]
		if hi-lo < 4*apart {
			continue
		}
		for _, share := range []float64{0, 0.37, 1} {
			lift := lo + apart + (hi-lo-2*apart)*share
			var sum float64
			for _, l := range r.Latches {
				sum += float64(l.Count) * l.Curve.At(lift)
			}
			if here := r.Curve.At(lift); math.Abs(here-sum) > 1e-6*r.Peak {
				f.say("the curve is the sum of the latches' curves", "at a lift of %.6g mm the curve has %.6g N, the latches together %.6g N", lift,
					here, sum)
				return
			}
		}
	}
}
