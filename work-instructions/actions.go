package workinstructions

import (
	"fmt"

	"ramnest/export/page"
	"ramnest/force/method"
)

// An action is one thing to do, with its picture.
type action struct {
	number   string
	place    Place
	title    string
	detail   []string
	picture  Picture
	hold     string    // hand action whose sketch is shown; empty: none
	cautions []Caution // printed in full
	reminded []Caution // printed in short
}

// strong sets a value in bold.
func strong(s string) string { return page.Emphasised(s) }

// actions gives what the operator does in a step, one action each.
func actions(f figures, s Step, facts Facts) []action {
	var out []action
	add := func(at Place, pic Picture, title string, detail ...string) {
		out = append(out, action{place: at, picture: pic, title: title, detail: detail})
	}
	load := []string{f.wayRound(s), f.say("act.load.rest")}
	if g := s.Seat; g.Kind == OnPair {
		load = append(load, f.say("act.load.measure", part(g.Between[0]), part(g.Between[1])))
	}
	add(AtLoad, f.captioned(s, s.Pictures.Load, "cap.load"), f.say(s.soFar("act.load"), append(s.lower(), f.nest(s))...), load...)
	how := f.say("act.place.how")
	if s.OneWay || !s.AnyWay {
		how += " " + f.say("act.place.round")
	}
	add(AtPosition, f.captioned(s, s.Pictures.Place, "cap.place"),
		f.say(s.soFar("act.place"), append([]string{part(s.Upper)}, s.lower()...)...), how)
	seat := f.say("act.check.gap", f.what(s.Seat), f.where(s.Seat), strong(f.seatLimit(s)))
	takenOff := s.Anvil != "" && !s.Facts.AnvilHeld
	if takenOff {
		add(AtAnvil, f.captioned(s, s.Pictures.Anvil, "cap.anvil"), f.say("act.anvil", f.anvil(s), part(s.Upper)), f.anvilOn(s))
	}
	out = append(out, pressing(f, s, facts)...)
	if takenOff {
		off := []string{f.say("act.anvil off.how")}
		if s.Seat.Kind == UnderAnvil {
			off = append([]string{seat}, off...)
		}
		add(AtTakeOut, Picture{}, f.say("act.anvil off", f.anvil(s)), off...)
	}
	add(AtTakeOut, Picture{}, f.say("act.out"), f.say("act.out.hold", part(s.Upper))+" "+f.ifItSticks(s, facts))
	check := []string{f.say("act.check.latches")}
	if !takenOff || s.Seat.Kind != UnderAnvil { // that is measured before the anvil is off
		check = append([]string{seat}, check...)
	}
	add(AtCheck, f.captioned(s, s.Pictures.Section, "cap.section"), f.say("act.check"), check...)
	return out
}

// wayRound says which way round the lower part goes in.
func (f figures) wayRound(s Step) string {
	switch {
	case s.OneWay:
		return f.say("way.one")
	case s.AnyWay:
		return f.say("way.any")
	case s.Pictures.Load.Image == nil:
		return f.say("way.mind")
	}
	return f.say("way.turn")
}

// anvilOn says how the anvil goes on.
func (f figures) anvilOn(s Step) string {
	how := f.say("act.anvil.picture")
	if s.Pictures.Anvil.Image == nil {
		how = f.say("act.anvil.flat")
	}
	if s.Guided {
		how += " " + f.say("act.anvil.pins")
		if s.Facts.AnvilCloses {
			how += " " + f.say("act.anvil.slow")
		}
		if s.Pin.Hole > 0 {
			how += " " + f.say("act.anvil.pinned")
		}
	}
	return how
}

// ifItSticks says how a product comes out that does not by itself.
func (f figures) ifItSticks(s Step, facts Facts) string {
	switch {
	case !facts.Ejection:
		return f.say("act.out.rock")
	case facts.Method == method.ByPress:
		return f.say("act.out.press", f.nest(s))
	case facts.Method == method.ByMallet:
		return f.say("act.out.mallet", f.nest(s))
	}
	return f.say("act.out.hand", f.nest(s))
}

// pressing gives the actions from the closed stack to the freed one.
func pressing(f figures, s Step, facts Facts) []action {
	switch facts.Method {
	case method.ByPress:
		down := f.say("act.ram", f.anvil(s))
		if s.Facts.AnvilHeld {
			down = f.say("act.ram.held", part(s.Upper))
		}
		return []action{
			{place: AtAim, title: down, detail: []string{f.say("act.ram.over"), f.say("act.ram.let go")}},
			{place: AtPress, picture: f.captioned(s, s.Pictures.Press, "cap.press"), title: f.say(s.pull()),
				detail: append(expectation(f, s), travel(f, s, "travel.ram")...)},
			{place: AtRetract, title: f.say("act.back")},
		}
	case method.ByMallet:
		return []action{
			{place: AtAim, title: f.say("act.mallet"), detail: []string{f.say("act.mallet.aim")}},
			{place: AtPress, picture: f.captioned(s, s.Pictures.Press, "cap.press"), title: f.say("act.strike", f.blows(s)),
				detail: []string{f.say("act.strike.look"), f.say("act.strike.stop"),
					f.say("act.strike.never", strong(f.count(method.MaxBlows, "blow")))}},
		}
	}
	on := f.say("act.hands.part", part(s.Upper))
	if s.Anvil != "" {
		on = f.say("act.hands.anvil", f.anvil(s))
	}
	aim := action{place: AtAim, title: on}
	if a := s.chosen(); a != nil && a.Hand != "" {
		aim.detail = append(aim.detail, f.say("act.hands.how", strong(f.named("hand", a.Hand))))
		if how, ok := f.words.Find("hold." + a.Hand); ok {
			aim.detail, aim.hold = append(aim.detail, how), a.Hand
		}
	}
	return []action{
		aim,
		{place: AtPress, picture: f.captioned(s, s.Pictures.Press, "cap.press"), title: f.say("act.push"),
			detail: append(expectation(f, s), travel(f, s, "travel.hand")...)},
	}
}

// pull is how the lever is pulled: with as many hands as the choice of the method counts on.
func (s Step) pull() string {
	if a := s.chosen(); a != nil && a.Lever != nil && a.Lever.Hands == 1 {
		return "act.pull.one"
	}
	return "act.pull"
}

// expectation says what force to expect, as far as it is known.
func expectation(f figures, s Step) []string {
	var out []string
	switch {
	case s.Force.P50 > 0 && s.Force.P5 > 0 && s.Force.P95 > 0:
		out = append(out, f.say("expect.band", strong(f.force(s.Force.P50)), f.force(s.Force.P5), f.force(s.Force.P95)))
	case s.Force.Peak > 0:
		out = append(out, f.say("expect", strong(f.force(s.Force.Peak))))
	}
	if s.Lever > 0 && s.Decision.Chosen == method.ByPress {
		out = append(out, f.say("expect.lever", f.force(s.Lever)))
	}
	return append(out, feel(f, s)...)
}

// feel says what is felt and heard on the way.
func feel(f figures, s Step) []string {
	switch n := s.Force.Humps; {
	case n == 0 && s.Force.Peak == 0:
		return nil
	case n == 0:
		return []string{f.say("feel.none")}
	case n == 1:
		return []string{f.say("feel.one", strong(f.count(1, "hump")))}
	default:
		return []string{f.say("feel.many", strong(f.count(n, "hump")))}
	}
}

// travel says how far it goes and when to stop.
func travel(f figures, s Step, key string) []string {
	var out []string
	if s.Force.Stroke > 0 {
		out = append(out, f.say(key, strong(f.length(s.Force.Stroke))))
	}
	if s.Force.Seat > 0 {
		out = append(out, f.say("travel.seat", f.force(s.Force.Seat)))
	}
	stop := f.say("travel.stop.part", part(s.Upper))
	if s.Anvil != "" {
		stop = f.say("travel.stop")
	}
	early := f.say("travel.early plain", f.force(s.Force.Design))
	if s.saysForce() {
		early = f.say("travel.early", f.force(s.Force.P95))
	}
	return append(out, stop, early)
}

// blows prints how many blows are expected.
func (f figures) blows(s Step) string {
	n := 0
	if a := s.chosen(); a != nil {
		n = a.Blows
	}
	switch {
	case n < 1:
		return f.say("act.blows.few")
	case n > method.MaxBlows:
		return f.say("act.blows.most", f.count(method.MaxBlows, "blow"))
	}
	return f.say("act.blows.about", f.count(n, "blow"))
}

// numbered gives the actions their numbers and lays each caution beside the
// action where it bites: in full at its first place, in short at the others. A
// place that the step has no action for hands over to the next one. What bites
// at the set-up comes back.
func numbered(acts []action, cautions []Caution, prefix string) (full, short []Caution) {
	for i := range acts {
		acts[i].number = fmt.Sprintf("%s%d", prefix, i+1)
	}
	for _, c := range cautions {
		for k, at := range c.Places {
			to, also := &full, &short
			if at != AtSetUp {
				a := &acts[actionAt(acts, at)]
				to, also = &a.cautions, &a.reminded
			}
			if k > 0 {
				to = also
			}
			*to = append(*to, c)
		}
	}
	return full, short
}

// order is that of the places in the work.
var order = map[Place]int{AtSetUp: 0, AtLoad: 1, AtPosition: 2, AtAnvil: 3, AtAim: 4, AtPress: 5, AtRetract: 6, AtTakeOut: 7, AtCheck: 8}

// actionAt is the first action at a place, or after it if there is none.
func actionAt(acts []action, at Place) int {
	for i, a := range acts {
		if order[a.place] >= order[at] {
			return i
		}
	}
	return len(acts) - 1
}
