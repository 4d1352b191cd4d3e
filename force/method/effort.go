package method

import "fmt"

// An Effort is a force that a person gives, held against what the sources say of it
// at a rate. They disagree about repeated work by a factor of four: EN 1005-3 is for
// designing work for nearly everyone, the others rate it for the person who does it.
// The stricter one decides.
type Effort struct {
	Force      float64 // [N]
	Base       float64 // force for one exertion [N]
	Population string  // whom the base is for

	EN    Zone   // multipliers and zones of EN 1005-3 [N]
	Zone  string // recommended, not recommended or to be avoided
	Steps string // which steps of its stairs count

	Acceptable    float64 // by duty cycle, Potvin 2012 [N]
	ActionLimit   float64 // of the ACGIH hand activity, for the ergonomist [N]
	ActivityLimit float64 // its limit value [N]

	Strict, Other     float64 // up to Strict it passes; up to Other an ergonomist must agree; above it does not [N]
	StrictBy, OtherBy string
}

// The sources that decide.
const (
	byEN     = "EN 1005-3"
	byPotvin = "Potvin 2012"
)

// EffortOf holds a force against the sources. force, base: [N], 0 or more. perHour:
// actions an hour. seconds: of each [s]. hours: of similar actions a day, above 0, at
// most 8 [h]. Sources: [ZoneOf], [AcceptableEffort], [HandActivity]. Left out:
// posture, grip, gloves. ok is false outside the tables of EN 1005-3.
func EffortOf(force, base, perHour, seconds, hours float64) (e Effort, ok bool) {
	if e, ok = effortOf(force, base, perHour, seconds, hours); !ok {
		return Effort{}, false
	}
	if hal, ok := HandActivity(perHour/3600, 100*DutyCycle(perHour, seconds)); ok {
		limit, action, _ := PeakForceLimits(hal)
		e.ActivityLimit, e.ActionLimit = limit/10*base, action/10*base
	}
	e.Steps = fmt.Sprintf("%s an hour, %s each, %s a day", step(perHour, "", 12, 120, 1200), step(seconds, " s", 3),
		step(hours, " h", 1, 2, 8))
	return e, true
}

// effortOf is EffortOf as far as it decides.
func effortOf(force, base, perHour, seconds, hours float64) (e Effort, ok bool) {
	if !(force >= 0 && force <= 1e9) {
		return Effort{}, false
	}
	e = Effort{Force: force, Base: base}
	if e.EN, ok = ZoneOf(base, perHour, seconds, hours); !ok {
		return Effort{}, false
	}
	share, ok := AcceptableEffort(DutyCycle(perHour, seconds))
	if !ok {
		return Effort{}, false
	}
	e.Acceptable = share * base
	e.Zone = e.EN.Of(force)
	e.Strict, e.StrictBy, e.Other, e.OtherBy = e.EN.Recommended, byEN, e.Acceptable, byPotvin
	if e.Other < e.Strict {
		e.Strict, e.StrictBy, e.Other, e.OtherBy = e.Other, e.OtherBy, e.Strict, e.StrictBy
	}
	return e, true
}

// The zones of EN 1005-3.
const (
	recommended    = "recommended"
	notRecommended = "not recommended"
	toBeAvoided    = "to be avoided"
)

// Of names the zone of a force [N].
func (z Zone) Of(force float64) string {
	switch {
	case force <= z.Recommended*(1+1e-12):
		return recommended
	case force <= z.Avoid*(1+1e-12):
		return notRecommended
	}
	return toBeAvoided
}

// step says between which edges of a stair x lies.
func step(x float64, unit string, edges ...float64) string {
	for i, e := range edges {
		switch {
		case x > e*(1+1e-12):
		case i == 0:
			return fmt.Sprintf("up to %g%s", e, unit)
		default:
			return fmt.Sprintf("over %g to %g%s", edges[i-1], e, unit)
		}
	}
	return fmt.Sprintf("over %g%s", edges[len(edges)-1], unit)
}

// effort is EffortOf and ShiftOf at the line of the demand, nil where there is none.
func (d Demand) effort(force, base float64, population string) (*Effort, *Shift) {
	e, ok := EffortOf(force, base, d.RatePerHour, d.ActionSeconds, d.HoursPerDay)
	if !ok {
		return nil, nil
	}
	e.Population = population
	s, ok := ShiftOf(force, base, d.RatePerHour, d.ActionSeconds, d.HoursPerDay)
	if !ok {
		return &e, nil
	}
	return &e, &s
}

// largest goes before the name of a soft limit to name the hard one beyond it.
const largest = "largest "

// exertion holds a human force against the stricter source, up to the other one
// as a matter for an ergonomist, above both as a no.
func exertion(what string, demand, base float64, from basis, d Demand) []Limit {
	duty := DutyCycle(d.RatePerHour, d.ActionSeconds)
	time := newLimit("time under force in an hour", duty*3600, 3600, "s", own("rate times time of one action"))
	e, ok := effortOf(demand, base, d.RatePerHour, d.ActionSeconds, d.HoursPerDay)
	if !ok {
		return []Limit{time, refusal(fmt.Sprintf("no published limit for %s an hour of %s s over %s h", num(d.RatePerHour), num(d.ActionSeconds),
			num(d.HoursPerDay)),
			memory("EN 1005-3 tables end at 8 h, and at 20 a minute for actions over 3 s"))}
	}
	source := map[string]basis{
		byEN: memory(fmt.Sprintf("EN 1005-3 recommended, base %s; m_v %g, m_f %g, m_d %g", from.text, e.EN.Speed, e.EN.Frequency,
			e.EN.Duration)),
		byPotvin: memory(fmt.Sprintf("Potvin 2012 acceptable effort %.2g of base", e.Acceptable/base)),
	}
	strict, other := source[e.StrictBy], source[e.OtherBy]
	strict.mark, strict.mixed = weaker(strict.mark, from.mark), true
	other.mark, other.mixed = weaker(other.mark, from.mark), true
	return []Limit{
		newLimit(what, demand, e.Strict, "N", strict).soft(ergonomist),
		newLimit(largest+what, demand, e.Other, "N", other),
		time,
	}
}
