package workinstructions

import (
	"fmt"
	"strings"

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
	way := "Turn it as the picture shows: it also goes in the wrong way round."
	round := " Make sure that it is the right way round."
	switch {
	case s.OneWay:
		way = "It goes in one way only."
	case s.AnyWay:
		way, round = "Turned, it looks the same: any way that it goes in is right.", ""
	case s.Pictures.Load.Image == nil:
		way = "Mind which way round: it also goes in the wrong way."
	}
	add(AtLoad, s.Pictures.Load, fmt.Sprintf("Lay %s into %s.", the(s.Lower), the(s.Nest)), way, "Push it down with your fingers until it rests on the ground of the nest and does not rock.")
	add(AtPosition, s.Pictures.Place, fmt.Sprintf("Set %s on %s.", the(s.Upper), the(s.Lower)), "By hand and without force, until it rests evenly on the latches."+round)
	if s.Anvil != "" && !s.Facts.AnvilHeld {
		how := "As the picture shows. It lies flat and does not rock."
		if s.Pictures.Anvil.Image == nil {
			how = "It lies flat and does not rock."
		}
		if s.Guided {
			how += " Let the pins find their holes."
			if s.Facts.AnvilCloses {
				how += " Lower it slowly: its weight may close latches."
			}
		}
		add(AtAnvil, s.Pictures.Anvil, fmt.Sprintf("Put %s on %s.", the(s.Anvil), the(s.Upper)), how)
	}
	out = append(out, pressing(f, s, facts)...)
	if s.Anvil != "" && !s.Facts.AnvilHeld {
		add(AtTakeOut, Picture{}, fmt.Sprintf("Take %s off.", the(s.Anvil)), "Lift it straight up.")
	}
	add(AtTakeOut, Picture{}, "Take the assembly out.", fmt.Sprintf("Hold it by %s, not by %s. %s", the(s.Lower), the(s.Upper), ifItSticks(s, facts)))
	add(AtCheck, s.Pictures.Section, "Check the assembly.", fmt.Sprintf("%s %s: %s.", s.Seat.what(), s.Seat.Where, strong(f.gap(s.Seat))), "Look at every latch, as under acceptance. Write the values into the record.")
	return out
}

// ifItSticks says how a product comes out that does not by itself.
func ifItSticks(s Step, facts Facts) string {
	switch {
	case !facts.Ejection:
		return "If it sticks, rock it at the finger reliefs; do not use a tool."
	case facts.Method == method.ByPress:
		return fmt.Sprintf("If it sticks, take %s off the table, and push the product out through the hole in its floor.", the(s.Nest))
	case facts.Method == method.ByMallet:
		return fmt.Sprintf("If it sticks, take %s out of the vise, and push the product out through the hole in its floor.", the(s.Nest))
	}
	return fmt.Sprintf("If it sticks, lift %s, and push the product out through the hole in its floor.", the(s.Nest))
}

// the puts the article before a name.
func the(name string) string {
	if strings.HasPrefix(strings.ToLower(name), "the ") {
		return name
	}
	return "the " + name
}

// pressing gives the actions from the closed stack to the freed one.
func pressing(f figures, s Step, facts Facts) []action {
	switch facts.Method {
	case method.ByPress:
		down := "Lower the ram until the anvil touches " + the(s.Upper) + "."
		if !s.Facts.AnvilHeld {
			down = "Lower the ram until it touches " + the(s.Anvil) + "."
		}
		return []action{
			{place: AtAim, title: down, detail: []string{"The ram stands over the thrust mark, and nothing tilts.", "Let go of everything but the lever."}},
			{place: AtPress, picture: s.Pictures.Press, title: "Pull the lever, in one steady move, with both hands.",
				detail: append(expectation(f, s), travel(f, s, "The ram goes down")...)},
			{place: AtRetract, title: "Guide the lever back until the ram is up and held."},
		}
	case method.ByMallet:
		return []action{
			{place: AtAim, title: "Take the mallet; take the other hand away.", detail: []string{"Aim at the middle of the strike face."}},
			{place: AtPress, picture: s.Pictures.Press, title: "Strike square on the strike face: " + blows(s) + ".",
				detail: []string{"After each blow, look whether the anvil stands on its dead stop.",
					"Stop when it does: the blow then sounds hard.",
					fmt.Sprintf("Never more than %s, whatever comes: if it is not seated then, it is a reject.", strong(count(method.MaxBlows, "blow", "blows"))),
				}},
		}
	}
	on := the(s.Upper)
	if s.Anvil != "" {
		on = the(s.Anvil)
	}
	how := "Hands"
	if a := s.chosen(); a != nil && a.Action != "" {
		how = a.Action
	}
	return []action{
		{place: AtAim, title: fmt.Sprintf("Put your hands on %s.", on), detail: []string{fmt.Sprintf("How: %s, over the thrust mark.", strong(how))}},
		{place: AtPress, picture: s.Pictures.Press, title: "Push down steadily, without a jerk.",
			detail: append(expectation(f, s), travel(f, s, "It goes down")...)},
	}
}

// expectation says what force to expect, as far as it is known.
func expectation(f figures, s Step) []string {
	var out []string
	switch {
	case s.Force.P50 > 0 && s.Force.P5 > 0 && s.Force.P95 > 0:
		out = append(out, fmt.Sprintf("Expect about %s; nine of ten lie between %s and %s.", strong(f.force(s.Force.P50)), f.force(s.Force.P5), f.force(s.Force.P95)))
	case s.Force.Peak > 0:
		out = append(out, fmt.Sprintf("Expect about %s.", strong(f.force(s.Force.Peak))))
	}
	if s.Lever > 0 && s.Decision.Chosen == method.ByPress {
		out = append(out, fmt.Sprintf("Your hands feel up to %s at the lever.", f.force(s.Lever)))
	}
	return append(out, feel(s)...)
}

// feel says what is felt and heard on the way.
func feel(s Step) []string {
	switch n := s.Force.Humps; {
	case n == 0 && s.Force.Peak == 0:
		return nil
	case n == 0:
		return []string{"The force rises to the end, without a click."}
	case n == 1:
		return []string{fmt.Sprintf("Feel and hear %s: the force rises, then drops as the latches snap in.", strong(count(1, "hump", "humps")))}
	default:
		return []string{fmt.Sprintf("Feel and hear %s: the force rises and drops as often, one after the other.", strong(count(n, "hump", "humps")))}
	}
}

// travel says how far it goes and when to stop.
func travel(f figures, s Step, subject string) []string {
	var out []string
	if s.Force.Stroke > 0 {
		out = append(out, fmt.Sprintf("%s %s under force.", subject, strong(f.length(s.Force.Stroke))))
	}
	if s.Force.Seat > 0 {
		out = append(out, fmt.Sprintf("Keep pushing to the end: at the seat it still takes %s.", f.force(s.Force.Seat)))
	}
	stop := "Stop when " + the(s.Upper) + " is seated: it goes hard at once."
	if s.Anvil != "" {
		stop = "Stop when the anvil stands on its dead stop: it goes hard at once."
	}
	early := fmt.Sprintf("Stop earlier, and set it aside, if it takes clearly more than %s or if it tilts.", f.force(s.Force.Design))
	return append(out, strong("Stop")+stop[len("Stop"):], early)
}

// blows prints how many blows are expected.
func blows(s Step) string {
	n := 0
	if a := s.chosen(); a != nil {
		n = a.Blows
	}
	switch {
	case n < 1:
		return "as few blows as it takes"
	case n > method.MaxBlows:
		return "at most" + nbsp + count(method.MaxBlows, "blow", "blows")
	}
	return "about" + nbsp + count(n, "blow", "blows")
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
