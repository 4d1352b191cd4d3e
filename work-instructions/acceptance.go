package workinstructions

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ramnest/force/method"
	"ramnest/force/unit"
	"ramnest/work-instructions/catalogue"
)

// A Criterion is one thing that a good assembly fulfils, in words for people and as
// figures for programs.
type Criterion struct {
	ID    string // seat, stop, humps, force, latches, pull
	What  string // "Gap"
	Where string // "between the rim and the housing, at four places"; may be empty
	Limit string // "0.05 mm to 0.25 mm"
	With  string // with what, or how to look
	Often string // "every piece"

	Low, High float64 // of the limit; 0: any
	Unit      string  // mm, N or 1; empty: a look
}

// Criteria gives what a good assembly of the step fulfils, in English. The sheet
// prints these and no others, in its language.
func (s Step) Criteria(u unit.System) []Criterion {
	out := criteria(figures{u, catalogue.English}, s)
	for i := range out {
		for _, text := range []*string{&out[i].What, &out[i].Where, &out[i].Limit, &out[i].With, &out[i].Often} {
			*text = strings.ReplaceAll(*text, nbsp, " ")
		}
	}
	return out
}

// criteria gives what a good assembly fulfils, with numeric limits where there is a
// number.
func criteria(f figures, s Step) []Criterion {
	every := f.say("acc.every")
	seat := Criterion{ID: "seat", What: f.what(s.Seat), Where: f.where(s.Seat), Limit: f.seatLimit(s), With: f.gauge(s.Seat), Often: every,
		Low: s.Seat.Low, High: s.Seat.High, Unit: "mm"}
	if s.Seat.Each > 0 {
		seat.Often = f.say("acc.some", strconv.Itoa(s.Seat.First), strconv.Itoa(s.Seat.Each))
	}
	out := []Criterion{seat}
	if s.Anvil != "" && s.Seat.Kind != UnderAnvil { // there the seat says more than a look does
		limit := f.say("acc.stop.or")
		if s.Facts.Past > 0 {
			limit = f.say("acc.stop.past")
		}
		out = append(out, Criterion{ID: "stop", What: f.say("acc.stop"), Limit: limit, With: f.say("acc.stop.how"), Often: every})
	}
	if n := s.Force.Humps; n > 0 && s.Decision.Chosen != method.ByMallet {
		out = append(out, Criterion{ID: "humps", What: f.say("acc.humps"), Limit: f.count(n, "hump"), With: f.say("acc.humps.how"), Often: every,
			Low: float64(n), High: float64(n), Unit: "1"})
	}
	if f95 := s.Force.P95; f95 > 0 && s.Decision.Chosen == method.ByPress {
		out = append(out, Criterion{ID: "force", What: f.say("acc.force"), Limit: f.say("gap.most", f.force(f95)), With: f.say("acc.force.how"),
			Often: every, High: f95, Unit: "N"})
	}
	var ids []string
	total := 0
	for _, l := range s.Latches {
		ids = append(ids, fmt.Sprintf("%s%s×%s%d", l.ID, nbsp, nbsp, l.Count))
		total += l.Count
	}
	if total > 0 {
		out = append(out, Criterion{ID: "latches", What: f.say("acc.latches", strings.Join(ids, ", ")), Limit: f.count(total, "home"),
			With: f.say("acc.latches.how"), Often: every,
			Low: float64(total), High: float64(total), Unit: "1"})
	}
	if s.Pull > 0 {
		out = append(out, Criterion{ID: "pull", What: f.say("acc.pull"), Limit: f.say("acc.pull.held", f.force(s.Pull)),
			With: f.say("acc.pull.how"), Often: every, Low: s.Pull, Unit: "N"})
	}
	return out
}

// seatLimit is the limit of the seat. Parts that are hard on each other are home, too,
// where the dead stop does not lie past their seat.
func (f figures) seatLimit(s Step) string {
	if s.Seat.Kind == UnderAnvil && s.Facts.Past == 0 {
		return f.say("acc.or hard", f.gap(s.Seat))
	}
	return f.gap(s.Seat)
}

// measured is what is looked at, and where.
func (k Criterion) measured() string { return strings.TrimSpace(k.What + " " + k.Where) }

// reject says what to do with what is not good, and with what takes more force than
// nineteen of twenty: this is the one place for that, actions and criteria point to it.
func reject(f figures, s Step, facts Facts) []string {
	mark := "reject.mark"
	if s.saysForce() && facts.Method == method.ByPress {
		mark = "reject.mark force"
	}
	out := []string{f.say(mark), f.say("reject.no more")}
	if s.saysForce() {
		out = append(out, f.say("reject.above", f.force(s.Force.P95))+" "+f.noticed(s))
	}
	if facts.Permanent {
		out = append(out, f.say("reject.permanent"))
	}
	return append(out, f.say("reject.tell"))
}

// saysForce tells whether the sheet says from which force on to stop: not for blows, whose
// force nobody feels.
func (s Step) saysForce() bool { return s.Force.P95 > 0 && s.Decision.Chosen != method.ByMallet }

// noticed says how a force above P95 shows where nothing measures it. The lever is reckoned
// at the design force; where that is another one, no figure stands for it.
func (f figures) noticed(s Step) string {
	switch {
	case s.Decision.Chosen != method.ByPress:
		return f.say("reject.hand")
	case s.Lever > 0 && math.Abs(s.Force.P95-s.Force.Design) < 0.005*s.Force.Design:
		return f.say("reject.lever", f.force(s.Lever))
	}
	return f.say("reject.lever unknown")
}
