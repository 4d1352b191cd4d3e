package method

import (
	"fmt"

	"ramnest/force"
	"ramnest/force/unit"
)

// Beyond is the utilisation [1] given where the capacity is zero or the quotient
// would be larger: a plain refusal such as a brittle part under a mallet.
const Beyond = 1000

// A LimitID is what a limit is about, whatever it is called where it is printed.
type LimitID string

// The limits that other rooms ask for.
const (
	LimitLever LimitID = "lever effort"
	LimitRated LimitID = "rated force with margin"
	LimitJams  LimitID = "assemblies that jam"
)

// A Limit compares what is asked with what there is.
type Limit struct {
	ID               LimitID
	Name             string
	Demand, Capacity float64 // [Unit]
	Unit             unit.Kind
	Utilisation      float64 // Demand over Capacity [1], at most Beyond; 0 while Open
	OK               bool    // false while Open
	Soft             bool    // going over it asks for a judgement; over a hard limit is a no
	Open             bool    // something is not known yet: neither passed nor failed
	Source           string  // where the capacity comes from, with its mark
	Mark             force.Mark
	Who              string // whose judgement a soft limit asks for; empty for a hard one
	Partly           bool   // the mark is that of a part of it only
}

// A basis is where a capacity comes from, and how far that can be trusted.
type basis struct {
	text  string
	mark  force.Mark
	mixed bool // the mark is that of a part of it
}

func read(text string) basis     { return basis{text: text, mark: force.MarkRead} }
func memory(text string) basis   { return basis{text: text, mark: force.MarkMemory} }
func practice(text string) basis { return basis{text: text, mark: force.MarkPractice} }
func own(text string) basis      { return basis{text: text, mark: force.MarkOwn} }
func stated(text string) basis   { return basis{text: text, mark: force.MarkJob} }
func ofShop(text string) basis   { return basis{text: text, mark: force.MarkShop} }

// weaker gives the mark that is trusted less.
func weaker(a, b force.Mark) force.Mark {
	rank := map[force.Mark]int{force.MarkMemory: 1, force.MarkPractice: 2, force.MarkOwn: 3}
	if rank[b] > rank[a] {
		return b
	}
	return a
}

func newLimit(name string, demand, capacity float64, kind unit.Kind, from basis) Limit {
	l := Limit{ID: LimitID(name), Name: name, Demand: demand, Capacity: capacity, Unit: kind,
		Source: from.text + " (" + string(from.mark) + ")", Mark: from.mark, Partly: from.mixed}
	switch {
	case demand <= 0:
		l.OK = true
	case capacity*Beyond <= demand:
		l.Utilisation = Beyond
	default:
		l.Utilisation = demand / capacity
		l.OK = demand <= capacity*(1+1e-12)
	}
	return l
}

// soft makes going over the limit a matter for who.
func (l Limit) soft(who string) Limit { l.Soft, l.Who = true, who; return l }

// Who can judge what lies over a soft limit.
const (
	ergonomist = "an ergonomist"
	engineer   = "the engineer responsible"
)

// unknown marks the limit as open.
func (l Limit) unknown(what string) Limit {
	l.Open, l.OK, l.Utilisation = true, false, 0
	l.Source = "open: " + what + "; " + l.Source
	return l
}

// limitIfKnown is newLimit, left open unless every figure is known, that is above 0.
func limitIfKnown(name string, demand, capacity float64, kind unit.Kind, from basis, known bool, what string) Limit {
	l := newLimit(name, demand, capacity, kind, from)
	if !known {
		return l.unknown(what)
	}
	return l
}

// refusal is a limit nothing can keep.
func refusal(name string, from basis) Limit { return newLimit(name, 1, 0, "", from) }

// near gives a limit that is kept as a piece of a sentence.
func (l Limit) near() unit.Text {
	demand, capacity := l.sides()
	demand.Bare = true
	return unit.Textf("%s, %v of %v%s", l.Name, demand, capacity, l.note())
}

// over gives a limit that is not kept as a piece of a sentence: what stands in the
// way, or after after the name, what is asked and what is the most.
func (l Limit) over(after string) unit.Text {
	if l.Unit == "" && l.Capacity == 0 {
		return unit.Say(", " + l.Name)
	}
	demand, capacity := l.sides()
	return unit.Textf("%s %s, %v where %v is the most%s", after, l.Name, demand, capacity, l.note())
}

// sides gives demand and capacity; over a limit they can be told from each other.
func (l Limit) sides() (demand, capacity unit.Figure) {
	if l.OK {
		return l.Unit.Of(l.Demand), l.Unit.Of(l.Capacity)
	}
	return unit.Apart(3, l.Unit, l.Demand, l.Capacity)
}

// note marks a limit that stands in no source.
func (l Limit) note() string {
	switch {
	case l.Mark != force.MarkOwn:
		return ""
	case l.Partly:
		return " (partly our own figure)"
	}
	return " (our own limit)"
}

// num writes a figure with three digits or whole numbers.
func num(x float64) string {
	if x >= 1000 || x <= -1000 {
		return fmt.Sprintf("%.0f", x)
	}
	return fmt.Sprintf("%.3g", x)
}

// judge gives the verdict of the limits and the place of the one that governs:
// the most used among those that make the verdict.
func judge(limits []Limit) (Verdict, int) {
	verdict, at := Pass, -1
	for i, l := range limits {
		if l.Open {
			continue
		}
		v := Pass
		switch {
		case !l.OK && l.Soft:
			v = Conditional
		case !l.OK:
			v = Fail
		}
		if at < 0 || verdict.better(v) || v == verdict && l.Utilisation > limits[at].Utilisation {
			verdict, at = v, i
		}
	}
	return verdict, at
}
