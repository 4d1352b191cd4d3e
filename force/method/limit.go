package method

import (
	"fmt"
	"strings"
)

// Beyond is the utilisation [1] given where the capacity is zero or the quotient
// would be larger: a plain refusal such as a brittle part under a mallet.
const Beyond = 1000

// A Limit compares what is asked with what there is.
type Limit struct {
	Name             string
	Demand, Capacity float64 // [Unit]
	Unit             string
	Utilisation      float64 // Demand over Capacity [1], at most Beyond; 0 while Open
	OK               bool    // false while Open
	Soft             bool    // going over it asks for a judgement; over a hard limit is a no
	Open             bool    // something is not known yet: neither passed nor failed
	Source           string  // where the capacity comes from, with its mark
}

func newLimit(name string, demand, capacity float64, unit, source string) Limit {
	l := Limit{Name: name, Demand: demand, Capacity: capacity, Unit: unit, Source: source}
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

func (l Limit) soft() Limit { l.Soft = true; return l }

// unknown marks the limit as open.
func (l Limit) unknown(what string) Limit {
	l.Open, l.OK, l.Utilisation = true, false, 0
	l.Source = "open: " + what + "; " + l.Source
	return l
}

// limitIfKnown is newLimit, left open unless every figure is known, that is above 0.
func limitIfKnown(name string, demand, capacity float64, unit, source string, known bool, what string) Limit {
	l := newLimit(name, demand, capacity, unit, source)
	if !known {
		return l.unknown(what)
	}
	return l
}

// refusal is a limit nothing can keep.
func refusal(name, source string) Limit { return newLimit(name, 1, 0, "", source) }

// text gives the limit as half a sentence.
func (l Limit) text() string {
	if l.Unit == "" && l.Capacity == 0 {
		return l.Name
	}
	return strings.TrimSpace(fmt.Sprintf("%s: %s of %s %s", l.Name, num(l.Demand), num(l.Capacity), l.Unit))
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
