package solve

import (
	"fmt"
	"math"
	"strings"

	"ramnest/force"
	"ramnest/force/method"
	"ramnest/force/unit"
)

// Whole degrees and hundredths of friction that are looked through for the one that
// brings the share that jams in. Below 5 deg a lead-in is none.
const (
	leastLead, mostLead = 5, 80
	leastSlip, mostSlip = 1, 200 // [0.01]
	degree              = math.Pi / 180
	fewJam              = method.JamPass
)

// jamFree gives the assembly with the steepest lead-in of the latches that jam, in
// whole degrees, or with the highest friction, in hundredths, at which no more
// assemblies jam than any method may have; and what was changed. ok is false if none
// jams, or no figure brings it in. The share is that of the same draws as the job's,
// so that the job with the figure has it too.
func jamFree(a force.Assembly, r force.Result, c method.Change) (out force.Assembly, what unit.Text, ok bool) {
	if r.Jammed <= fewJam {
		return a, unit.Text{}, false
	}
	at, lo, hi := slippery, leastSlip, mostSlip
	if c == method.JamFreeAngle {
		at, lo, hi = func(a force.Assembly, n int) (force.Assembly, unit.Text) { return gentler(a, r, n) }, leastLead, mostLead
	}
	fits := func(n int) bool {
		changed, what := at(a, n)
		if what.Empty() {
			return false
		}
		r, err := force.Analyse(changed)
		return err == nil && r.Jammed <= fewJam && !r.NoP95
	}
	if !fits(lo) {
		return a, unit.Text{}, false
	}
	for lo+1 < hi {
		if mid := (lo + hi) / 2; fits(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	out, what = at(a, lo)
	return out, what, true
}

// slippery gives both parts a friction of so many hundredths.
func slippery(a force.Assembly, hundredths int) (force.Assembly, unit.Text) {
	mu := float64(hundredths) / 100
	a.Lower.Friction, a.Upper.Friction = &mu, &mu
	return a, unit.Textf("friction %.2f on both parts, to be measured on them", mu)
}

// gentler gives the latches that jam a lead-in of so many degrees at most.
func gentler(a force.Assembly, r force.Result, deg int) (force.Assembly, unit.Text) {
	angle := float64(deg) * degree
	a.Latches = append([]force.Latch(nil), a.Latches...)
	var say []string
	for i := range a.Latches {
		if r.Latches[i].Jammed == 0 {
			continue
		}
		l := a.Latches[i]
		if k, key, _ := l.Joint().Gentler(angle); k != nil {
			a.Latches[i] = l.With(k)
			field := l.Kind() + "." + key
			say = append(say, fmt.Sprintf("%s %s %d deg", a.Latches[i].ID, field, deg))
		}
	}
	return a, unit.Say(strings.Join(say, ", "))
}
