package method

import (
	"fmt"
	"math"
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
		s.Method = pick(assess(at, b), None)
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
		at := d.atForce(f)
		var a Assessment
		switch m {
		case ByHand:
			a = assessHand(at)
		case ByMallet:
			a = assessMallet(at, b)
		case ByPress:
			a = assessPress(at, b)
		default:
			return false
		}
		return a.Verdict == Pass
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

// binStarts are the rates just past each step of the frequency multiplier, and of
// the mallet's own limits [an hour].
var binStarts = [...]float64{12, MalletRate, MalletRateMax, 120, 1200}

// tipping says at which force and at which rate the free choice changes.
func tipping(d Demand, b Bench, chosen Method) string {
	var say []string
	if chosen == None {
		for _, m := range []Method{ByHand, ByMallet, ByPress} {
			if f := carries(m, d, b); f > 0 {
				say = append(say, fmt.Sprintf("%s would pass up to %s N", m.Title(), num(f)))
			}
		}
		if len(say) == 0 {
			return "no force is small enough for any method as things stand"
		}
		return strings.Join(say, "; ") + fmt.Sprintf("; the design force is %s N", num(d.DesignForce))
	}
	if f := carries(chosen, d, b); f > 0 {
		say = append(say, fmt.Sprintf("%s passes up to %s N, the design force is %s N", chosen.Title(), num(f), num(d.DesignForce)))
	}
	for _, start := range binStarts {
		at := d
		at.RatePerHour = math.Nextafter(start, math.Inf(1)) * (1 + 1e-9)
		if at.RatePerHour <= d.RatePerHour {
			continue
		}
		if m := pick(assess(at, b), None); m != chosen {
			say = append(say, fmt.Sprintf("above %s an hour the answer is %s", num(start), m.Title()))
			break
		}
	}
	if len(say) == 0 {
		return "no single change of force or rate was found to tip it"
	}
	return strings.Join(say, "; ")
}

// advice tries single changes of the work and says what each allows.
func advice(d Demand, b Bench) []string {
	var out []string
	for _, m := range []Method{ByHand, ByMallet, ByPress} {
		if f := carries(m, d, b); f > 0 && f < d.DesignForce {
			out = append(out, fmt.Sprintf("bring the design force from %s N below %s N (-%.0f %%): %s passes", num(d.DesignForce), num(f), 100*(1-f/d.DesignForce), m.Title()))
		}
	}
	trials := []struct {
		say string
		do  func(*Demand)
	}{
		{"no more than 120 an hour", func(d *Demand) { d.RatePerHour = min(d.RatePerHour, 120) }},
		{"no more than 12 an hour", func(d *Demand) { d.RatePerHour = min(d.RatePerHour, 12) }},
		{"two hours of this work a day", func(d *Demand) { d.HoursPerDay = min(d.HoursPerDay, 2) }},
		{"one hour of this work a day", func(d *Demand) { d.HoursPerDay = min(d.HoursPerDay, 1) }},
		{"actions of 3 s at most", func(d *Demand) { d.ActionSeconds = min(d.ActionSeconds, 3) }},
		{"the thrust line kept on the ram axis", func(d *Demand) { d.ThrustWander = 0 }},
		{"12 an hour for one hour a day", func(d *Demand) {
			d.RatePerHour, d.HoursPerDay = min(d.RatePerHour, 12), min(d.HoursPerDay, 1)
		}},
	}
	for _, t := range trials {
		at := d
		t.do(&at)
		if at == d {
			continue
		}
		for _, a := range assess(at, b) {
			if a.Verdict == Pass {
				out = append(out, fmt.Sprintf("%s: %s passes", t.say, a.Method.Title()))
				break
			}
		}
	}
	return append(out, "a powered press is another machine: a competent designer, guarding and an assessment of its own")
}
