package audit

import (
	"strings"

	"ramnest/cmd/internal/solve"
	"ramnest/force/method"
)

// demand holds what a method was asked for against the result it stems from.
func (f *finding) demand(s *solve.Solution, st *solve.Step) {
	const law = "the demand on the method is that of the forces"
	d, r := st.Demand, st.Result
	for _, v := range []struct {
		what        string
		asked, here float64
	}{
		{"design force", d.DesignForce, r.Design}, {"P50", d.P50, r.P50}, {"worst case", d.Worst, r.Worst}, {"nominal peak", d.PeakForce, r.Peak},
		{"work", d.Work, r.Work}, {"force at the seat", d.SeatForce, r.SeatForce}, {"stroke", d.Stroke, r.Stroke},
		{"share that jams", d.Jammed, r.Jammed},
		{"wander of the thrust line", d.ThrustWander, r.ThrustWander}, {"rate", d.RatePerHour, s.Job.RatePerHour},
	} {
		f.same(law, v.what, v.asked, v.here, 0)
	}
	equal(f, law, "no P95", d.NoP95, r.NoP95)
}

// stated is what a limit of a name must ask for, where it is a figure of the forces.
func stated(name string, d method.Demand) (asked float64, ok bool) {
	switch strings.TrimPrefix(name, "largest ") {
	case "hand force", string(method.LimitRated), "force a blow must reach":
		return d.DesignForce, true
	case "worst case", "worst case against the plate":
		return d.Worst, true
	case string(method.LimitJams):
		return 100 * d.Jammed, true
	}
	return 0, false
}

// verdicts weighs every option again, by demand and capacity alone.
func (f *finding) verdicts(st *solve.Step) {
	const law = "a verdict agrees with demand and capacity"
	for _, a := range st.Decision.Options {
		title := a.Method.Title()
		hard, soft, known := false, false, 0
		most := map[method.Verdict]float64{}
		for _, l := range a.Limits {
			if asked, ok := stated(l.Name, st.Demand); ok && !close(l.Demand, asked, rounding) {
				f.say("a limit asks for what the forces are", "%s, %s: %.6g %s asked, %.6g computed", title, l.Name, l.Demand, l.Unit, asked)
			}
			if l.Open {
				if l.OK {
					f.say(law, "%s, %s: kept, and not known", title, l.Name)
				}
				continue
			}
			known++
			kept := l.Demand <= 0 || l.Demand <= l.Capacity*(1+rounding)
			if kept != l.OK {
				f.say(law, "%s, %s: %.6g %s of %.6g, and it says kept: %t", title, l.Name, l.Demand, l.Unit, l.Capacity, l.OK)
			}
			used := 0.0
			switch {
			case l.Demand <= 0:
			case l.Capacity*method.Beyond <= l.Demand:
				used = method.Beyond
			default:
				used = l.Demand / l.Capacity
			}
			if !close(used, l.Utilisation, rounding) {
				f.say(law, "%s, %s: %.6g %s of %.6g, and it says %.6g used", title, l.Name, l.Demand, l.Unit, l.Capacity, l.Utilisation)
			}
			makes := method.Pass
			switch {
			case !kept && l.Soft:
				soft, makes = true, method.Conditional
			case !kept:
				hard, makes = true, method.Fail
			}
			most[makes] = max(most[makes], used)
		}
		want := method.Pass
		switch {
		case hard || known == 0:
			want = method.Fail
		case soft:
			want = method.Conditional
		}
		if a.Verdict != want {
			f.say(law, "%s: the limits make it %s, and it says %s", title, want, a.Verdict)
		} else if known > 0 && !close(most[want], a.Utilisation, rounding) {
			f.say(law, "%s: the nearest limit is used to %.6g, and it says %.6g", title, most[want], a.Utilisation)
		}
		f.effort(st, a)
	}
}

// effort holds what is put in against what it has to do: no lever and no mallet gives
// more work than goes in.
func (f *finding) effort(st *solve.Step, a method.Assessment) {
	const law = "no tool gives more work than goes in"
	d := st.Demand
	if l := a.Lever; l != nil && l.Travel > 0 && l.Pull*l.Travel < d.DesignForce*d.Stroke*(1-rounding) {
		f.say(law, "a pull of %.6g N over %.6g mm, for %.6g N over %.6g mm", l.Pull, l.Travel, d.DesignForce, d.Stroke)
	}
	if m := a.Mallet; m != nil && a.Blows > 0 && a.Verdict != method.Fail {
		if energy := float64(a.Blows) * 1000 * m.Mass * m.Speed * m.Speed / 2; energy < d.Work*(1-rounding) {
			f.say(law, "%d blows of %.6g mJ together, for work of %.6g mJ", a.Blows, energy, d.Work)
		}
	}
}

// choice holds the method taken against the verdicts: the least that passes, else the
// least on a condition, unless the job insists on one or a shared nest asks for the press.
func (f *finding) choice(s *solve.Solution, st *solve.Step) {
	const law = "the method taken is the least that is good enough"
	least := method.None
	for _, v := range []method.Verdict{method.Pass, method.Conditional} {
		for _, m := range []method.Method{method.ByHand, method.ByMallet, method.ByPress} {
			for _, a := range st.Decision.Options {
				if least == method.None && a.Method == m && a.Verdict == v {
					least = m
				}
			}
		}
	}
	d := st.Decision
	taken := st.Chosen().Verdict
	switch {
	case d.Chosen == method.None:
		if forced := s.Job.Forced(); least != method.None && forced == nil && len(s.Steps) == 1 {
			f.say(law, "none is taken, and %s is good enough", least.Title())
		}
	case taken == method.Fail && !d.Overridden:
		f.say(law, "%s is taken, and fails", d.Chosen.Title())
	case st.Result.NoP95:
		f.say(law, "%s is taken, and there is no design force", d.Chosen.Title())
	case d.Overridden && s.Job.Forced() == nil:
		f.say(law, "%s is taken by override, and the job has none", d.Chosen.Title())
	case s.Job.Forced() != nil:
		if want := s.Job.Forced().Method; d.Chosen != want {
			f.say(law, "%s is taken, and the job asks for %s", d.Chosen.Title(), want.Title())
		}
	case d.Chosen != least && !(d.Chosen == method.ByPress && least == method.ByMallet && len(s.Steps) > 1):
		f.say(law, "%s is taken, and %s is good enough", d.Chosen.Title(), least.Title())
	}
}
