package audit

import "ramnest/cmd/internal/solve"

// acceptance holds the limit by which a pair counts as seated against the lifts at which
// its latches drop: what is accepted stands on no crest.
func (f *finding) acceptance(st *solve.Step) {
	const law = "a pair that is accepted has every latch home"
	p := st.Seated
	if p.High < p.Low || p.Travel < 0 {
		f.say(law, "accepted from %.6g to %.6g mm, a lift of %.6g mm", p.Low, p.High, p.Travel)
	}
	for _, l := range st.Result.Latches {
		if l.HomeLeast > l.Home*(1+rounding) {
			f.say(law, "%s is home below %.6g mm, and below %.6g mm at the least", l.ID, l.Home, l.HomeLeast)
		}
		if l.Home == 0 || p.Travel == 0 {
			continue
		}
		if p.Travel > l.HomeLeast*(1+rounding) || p.Travel >= l.PeakLift {
			f.say(law, "a lift of %.6g mm is accepted, %s is home below %.6g mm and has its crest at %.6g mm", p.Travel, l.ID, l.HomeLeast,
				l.PeakLift)
		}
	}
}
