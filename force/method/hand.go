package method

import "fmt"

// A HandAction is a way to push with hands.
type HandAction struct {
	Name   string
	Base   float64 // force for one exertion [N]
	Source string
}

// HandActions gives the actions in the order they are tried, least first. A palm or
// fist used as a hammer is never one: trained workers struck 600 N where 220 would
// do (read), and repeated strikes injure the ulnar artery (read).
func HandActions() []HandAction {
	return []HandAction{
		{"one thumb", 75, "75 N, P15 of women from a read mean of 100.6 N and an assumed spread of 25 % (own)"},
		{"one palm, pushing down", ArmDownSeated, "75 N, EN 1005-3 one arm down, P15 (read)"},
		{"two thumbs", 112.5, "1.5 times one thumb: two hands do not double (own)"},
		{"both palms, standing", BodyPush, "200 N, EN 1005-3 whole-body push, P15 (read); its use downward is own"},
	}
}

// exertion holds a human force against EN 1005-3 and against the acceptable effort:
// the stricter decides, up to the other it is for an ergonomist, above both it is no.
func exertion(what string, demand, base float64, baseSource string, d Demand) []Limit {
	duty := DutyCycle(d.RatePerHour, d.ActionSeconds)
	share, _ := AcceptableEffort(duty)
	mae := share * base
	time := newLimit("time under force in an hour", duty*3600, 3600, "s", "rate times time of one action (own)")
	zone, ok := ZoneOf(base, d.RatePerHour, d.ActionSeconds, d.HoursPerDay)
	if !ok {
		return []Limit{time, refusal(fmt.Sprintf("no published limit for %s an hour of %s s over %s h", num(d.RatePerHour), num(d.ActionSeconds), num(d.HoursPerDay)),
			"EN 1005-3 tables end at 8 h, and at 20 a minute for actions over 3 s (memory)")}
	}
	en := fmt.Sprintf("EN 1005-3 recommended, base %s; m_v %g, m_f %g, m_d %g (memory)", baseSource, zone.Speed, zone.Frequency, zone.Duration)
	potvin := fmt.Sprintf("Potvin 2012 acceptable effort %.2g of base (memory)", share)
	strict, strictSource, other, otherSource := zone.Recommended, en, mae, potvin
	if mae < zone.Recommended {
		strict, strictSource, other, otherSource = mae, potvin, zone.Recommended, en
	}
	return []Limit{
		newLimit(what, demand, strict, "N", strictSource).soft(),
		newLimit(what+", with an ergonomist", demand, other, "N", otherSource),
		time,
	}
}

// assessHand takes the least action that passes, else the best there is.
func assessHand(d Demand) Assessment {
	var best Assessment
	for i, a := range HandActions() {
		limits := exertion("hand force", d.DesignForce, a.Base, a.Source, d)
		if d.Worst > 0 {
			limits = append(limits, newLimit("worst case", d.Worst, a.Base, "N", "basic force of the action, one exertion; "+a.Source).soft())
		}
		got := Assessment{Method: ByHand, Action: a.Name, Limits: limits}.conclude()
		if i == 0 || got.betterThan(best) {
			best = got
		}
	}
	return best
}
