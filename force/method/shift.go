package method

import "math"

// movements is the table of MostMovements: share of strength [1] and movements.
var movements = [...]struct {
	share float64
	most  int
}{{0.07, 27600}, {0.08, 24300}, {0.09, 21800}, {0.10, 19800}, {0.11, 18100}, {0.12, 16700},
	{0.48, 3200}, {0.49, 3000}, {0.50, 2700}, {0.51, 2400}, {0.52, 2100}, {0.53, 1800}}

// MostMovements gives how often hand and forearm may be used in a shift of eight
// hours at an average share of strength. share: [1], 0 to 0.53. Between the lines of
// the table the next stronger one counts, so 0.13 to 0.48 is one step: the lines
// between were not read. Source: Czech government decree 361/2007 Sb. as tabled in a
// thesis (read). ok is false out of range.
func MostMovements(share float64) (most int, ok bool) {
	if !(share >= 0) {
		return 0, false
	}
	for _, m := range movements {
		if share <= m.share+1e-12 {
			return m.most, true
		}
	}
	return 0, false
}

// A Shift is how much of the work one person may do, by the strictest source.
type Shift struct {
	PerHour  float64 // assemblies an hour, evenly over the hours; 0: not one
	PerShift int
	Hours    float64 // of this and similar work [h]
	Rest     float64 // between two exertions at that pace, other work or none [s]
	People   int     // that the rate of the line needs, taking turns; 0: no number is enough
	By       string  // the source that decides
}

// ShiftOf gives how many exertions one person may do in a shift: the least of
// EN 1005-3 recommended, the acceptable effort by duty cycle, and the movements a
// shift of [MostMovements].
//
// force: [N], 0 or more. base: force for one exertion [N], above 0. perHour: of the
// line, 0 or more, shared by People who take turns. seconds: of one exertion [s],
// above 0. hours: above 0, at most 8 [h]. Sources: as named; taking the least, and
// resting by turns through all the hours, is own. ok is false out of range.
func ShiftOf(force, base, perHour, seconds, hours float64) (s Shift, ok bool) {
	if !(force >= 0 && force <= 1e9) || !(base > 0 && base <= maxForce) || !(perHour >= 0 && perHour <= 1e6) ||
		!(seconds > 0 && seconds <= 3600) || !(hours > 0 && hours <= 8) {
		return Shift{}, false
	}
	s = Shift{Hours: hours, By: byEN}
	for _, rate := range []float64{3600 / seconds, 1200, 120, 12} {
		rate = min(rate, 3600/seconds)
		if z, ok := ZoneOf(base, rate, seconds, hours); ok && z.Of(force) == recommended {
			s.PerHour = rate
			break
		}
	}
	if r := acceptableRate(force/base, seconds); r < s.PerHour {
		s.PerHour, s.By = r, byPotvin
	}
	s.PerShift = int(s.PerHour*hours + 1e-6)
	most, _ := MostMovements(force / base)
	if most < s.PerShift {
		s.PerShift, s.PerHour, s.By = most, float64(most)/hours, "decree 361/2007"
	}
	if s.PerShift == 0 {
		s.PerHour = 0
		return s, true
	}
	s.Rest = 3600/s.PerHour - seconds
	s.People = max(1, int(math.Ceil(perHour*hours/float64(s.PerShift)-1e-9)))
	return s, true
}

// acceptableRate is how often an hour a share of strength may be given for seconds
// each: [AcceptableEffort] solved for the duty cycle.
func acceptableRate(share, seconds float64) float64 {
	if share >= 1 {
		return 0
	}
	duty := 1.0/28800 + math.Pow(1-share, 1/0.24)
	return min(1, duty) * 3600 / seconds
}

// A Crew is how many people the line needs.
type Crew struct {
	ByTime   int // for the cycle time
	ByEffort int // to take turns at the force
	People   int // the larger one
}

// allowance is what is added to a standard time [1], of 0.10 to 0.15 (common
// practice).
const allowance = 0.15

// Crew gives the people that the rate needs. perHour: of the line, above 0. cycle:
// standard time of one assembly by this method [s], above 0. Source: rate times
// cycle with 15 % allowance (common practice), and [ShiftOf]. ok is false out of
// range, and where no number of people is enough or no source says.
func (a Assessment) Crew(perHour, cycle float64) (c Crew, ok bool) {
	if !(perHour > 0 && perHour <= 1e6) || !(cycle > 0 && cycle <= 1e5) || a.Shift == nil || a.Shift.People == 0 {
		return Crew{}, false
	}
	c = Crew{ByTime: int(math.Ceil(perHour*cycle*(1+allowance)/3600 - 1e-9)), ByEffort: a.Shift.People}
	c.People = max(1, c.ByTime, c.ByEffort)
	return c, true
}
