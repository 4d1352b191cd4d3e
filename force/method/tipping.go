package method

import (
	"fmt"
	"math"
	"ramnest/force/unit"
	"strings"
)

// sensitivity is the free choice at the median, the design force and the worst draw.
func sensitivity(d Demand, b Bench) []AtForce {
	var out []AtForce
	for _, s := range []AtForce{{Name: "P50", Force: d.P50}, {Name: "P95", Force: d.DesignForce}, {Name: "worst", Force: d.Worst}} {
		if s.Force <= 0 {
			continue
		}
		at := d
		at.DesignForce, at.Worst = s.Force, s.Force
		a := free(at, b)
		s.Method, s.Verdict = a.Method, a.Verdict
		out = append(out, s)
	}
	return out
}

// Carries gives the largest design force at which the method passes with all else
// equal [N], to a thousandth; 0 if it passes at none. The demand and the bench must
// be valid. The worst case goes along in proportion.
func Carries(m Method, d Demand, b Bench) float64 {
	if len(d.Validate())+len(b.Validate()) > 0 {
		return 0
	}
	d, _ = d.filled()
	b, _ = b.filled()
	return carries(m, d, b)
}

func carries(m Method, d Demand, b Bench) float64 {
	passes := func(f float64) bool {
		return weigh(m, d.atForce(f), b).Verdict == Pass
	}
	lo, hi := 0.01, float64(maxForce)
	if !passes(lo) {
		return 0
	}
	for hi/lo > 1.0005 {
		mid := math.Sqrt(lo * hi)
		if passes(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// edges gives [Carries] of each method, each worked out once.
func edges(d Demand, b Bench) func(Method) float64 {
	known := map[Method]float64{}
	return func(m Method) float64 {
		if _, ok := known[m]; !ok {
			known[m] = carries(m, d, b)
		}
		return known[m]
	}
}

// binStarts are the rates just past each step of the frequency multiplier, and of
// the mallet's own limits [an hour].
var binStarts = [...]float64{12, MalletRate, MalletRateMax, 120, 1200}

// tipping says at which force and at which rate the free choice changes.
func tipping(d Demand, b Bench, chosen Assessment, most func(Method) float64) unit.Text {
	var say []unit.Text
	if f := most(chosen.Method); f >= d.DesignForce {
		say = append(say, unit.Textf("%s passes up to %v, the design force is %v", chosen.Method.Title(), unit.Force.Of(f),
			unit.Force.Of(d.DesignForce)))
		if a := free(d.atForce(1.002*f), b); f < maxForce/2 {
			say = append(say, unit.Say("above that force the answer is "+a.answer()))
		}
	} else {
		for _, m := range []Method{ByHand, ByMallet, ByPress} {
			if f := most(m); f > 0 {
				say = append(say, unit.Textf("%s would pass up to %v", m.Title(), unit.Force.Of(f)))
			}
		}
		if len(say) > 0 {
			say = append(say, unit.Textf("the design force is %v", unit.Force.Of(d.DesignForce)))
		}
	}
	for _, start := range binStarts {
		at := d
		at.RatePerHour = math.Nextafter(start, math.Inf(1)) * (1 + 1e-9)
		if at.RatePerHour <= d.RatePerHour || chosen.Method == None {
			continue
		}
		if a := free(at, b); a.Method != chosen.Method || a.Verdict != chosen.Verdict {
			say = append(say, unit.Textf("above %s an hour the answer is %s", num(start), a.answer()))
			break
		}
	}
	switch {
	case len(say) > 0:
		return unit.Join(say, "; ")
	case chosen.Method == None:
		return unit.Say("no force is small enough for any method as things stand")
	}
	return unit.Say("no single change of force or rate was found to tip it")
}

// answer names the method of a free choice.
func (a Assessment) answer() string {
	if a.Verdict == Conditional {
		return a.Method.Title() + " on a condition"
	}
	return a.Method.Title()
}

// AtRate is the free choice at another rate.
type AtRate struct {
	Name    string
	PerHour float64 // assemblies an hour
	Hours   float64 // of this work a day [h]
	Method  Method
	Verdict Verdict // Fail for none
}

// byRate gives the free choice for work of other kinds, and says in a sentence
// whether it changes: ten prototypes and a line are different answers.
func byRate(d Demand, b Bench, chosen Assessment) ([]AtRate, string) {
	rates := []AtRate{
		{Name: "ten prototypes", PerHour: 12, Hours: 1},
		{Name: "a batch", PerHour: 60, Hours: 1.5},
		{Name: "a line", PerHour: 360, Hours: 7.5},
	}
	var same, other []string
	for i := range rates {
		r := &rates[i]
		at := d
		at.RatePerHour, at.HoursPerDay = r.PerHour, r.Hours
		a := free(at, b)
		r.Method, r.Verdict = a.Method, a.Verdict
		name := fmt.Sprintf("%s (%s an hour for %s h)", r.Name, num(r.PerHour), num(r.Hours))
		if r.Method == chosen.Method && r.Verdict == chosen.Verdict {
			same = append(same, name)
			continue
		}
		other = append(other, name+" "+a.answer())
	}
	switch {
	case len(other) == 0:
		return rates, fmt.Sprintf("the answer is the same for %s", join(same, "and"))
	case len(same) == 0:
		return rates, "the answer changes with the rate: " + strings.Join(other, ", ")
	}
	return rates, "the answer changes with the rate: " + strings.Join(other, ", ") + "; " + join(same, "and") + " as here"
}
