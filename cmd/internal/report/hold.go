package report

import (
	"ramnest/force"
)

// A Hold is what all joints of a latch hold in a straight pull.
type Hold struct {
	P5       float64      `json:"p5_n"`
	P50      float64      `json:"p50_n"`
	P95      float64      `json:"p95_n"`
	Breaks   float64      `json:"share_limited_by_strength"`
	Strength float64      `json:"least_strength_each_n"`
	Limit    string       `json:"least_strength"`
	Factors  []HoldFactor `json:"end_of_life_factors,omitzero"`
	Share    float64      `json:"end_of_life_share,omitzero"`
	Life     float64      `json:"end_of_life_p5_n,omitzero"` // missing if a factor is not known
}

// A HoldFactor is the share that one influence leaves.
type HoldFactor struct {
	Name  string  `json:"name"`
	Known bool    `json:"known"`
	Value float64 `json:"value,omitzero"` // missing if not known
	Mark  string  `json:"mark,omitzero"`
	Why   string  `json:"why"`
}

func holdOf(h force.Hold) *Hold {
	out := &Hold{P5: h.P5, P50: h.P50, P95: h.P95, Breaks: h.Breaks, Strength: h.Strength, Limit: h.Limit, Share: h.Share, Life: h.Life}
	for _, f := range h.Factors {
		out.Factors = append(out.Factors, HoldFactor{f.Name, f.Known, f.Value, string(f.Mark), f.Why})
	}
	return out
}

// latchAt names a latch; none: empty.
func latchAt(r force.Result, i int) string {
	if i < 0 {
		return ""
	}
	return r.Latches[i].ID
}

// hold says what the step holds in a straight pull, now and at the end of life.
func (p *page) hold(u units, r force.Result) {
	if r.HoldLatch < 0 {
		return
	}
	h := r.Latches[r.HoldLatch].Hold
	p.line("")
	text := "hold of all, straight pull, right after pressing: P5 " + u.say(h.P5, "N") + ", P50 " + u.say(h.P50, "N") + ", P95 " +
		u.say(h.P95, "N")
	if len(r.Latches) > 1 {
		text += " (" + r.Latches[r.HoldLatch].ID + " alone, which holds the most)"
	}
	if h.Breaks > 0 {
		text += "; in " + share(h.Breaks) + " the " + h.Limit + " limits it"
	}
	p.wrap("  ", "    ", text+". Peel and tilt open it at far less.")
	at := r.HoldLifeLatch
	if at < 0 {
		at = r.HoldLatch
	}
	l := r.Latches[at]
	if len(l.Hold.Factors) == 0 {
		return
	}
	life := "not known"
	if l.Hold.LifeKnown {
		life = "P5 " + u.say(l.Hold.Life, "N")
	}
	if r.HoldWanted > 0 {
		life += ", wanted " + u.say(r.HoldWanted, "N")
		switch {
		case !l.Hold.LifeKnown:
			life += ": CANNOT BE SHOWN"
		case l.Hold.Life < r.HoldWanted:
			life += ": TOO LITTLE"
		default:
			life += ": held"
		}
	}
	p.wrap("  ", "    ", "hold at the end of life, "+l.ID+": "+life)
	for _, f := range l.Hold.Factors {
		value := "not known"
		if f.Known {
			value = "x " + number(f.Value) + " [" + string(f.Mark) + "]"
		}
		p.wrap("    ", "      ", f.Name+" "+value+": "+f.Why)
	}
}
