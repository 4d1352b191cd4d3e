package report

import (
	"fmt"
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/export/quote"
	"ramnest/fixture/coupon"
)

// A Ladder is a ladder of coupons for its JSON: mm, N, and the card's currency.
type Ladder struct {
	Schema  string           `json:"schema"` // "ramnest ladder"
	Tool    string           `json:"tool"`
	Number  string           `json:"number"`
	Latch   string           `json:"latch"`
	Kind    string           `json:"kind"`
	Figure  string           `json:"figure"` // that is stepped
	Step    float64          `json:"step_mm"`
	Stepped string           `json:"stepped_part"`
	Places  int              `json:"joints_of_a_pair"`
	Steps   []LadderStep     `json:"steps"`
	Bought  []string         `json:"bought,omitzero"`
	Remarks []string         `json:"remarks,omitzero"`
	Cost    quote.LadderCost `json:"cost"`
	Files   []string         `json:"files"`
}

// A LadderStep is one pair.
type LadderStep struct {
	Number      int         `json:"number"`
	Size        float64     `json:"size_mm"`
	Nominal     bool        `json:"nominal,omitzero"`
	Outcome     string      `json:"outcome"` // computed, loose or locks
	Peak        float64     `json:"peak_n"`
	P5          float64     `json:"p5_n"`
	P95         float64     `json:"p95_n"`
	Separation  float64     `json:"separation_n"`
	SelfLocking bool        `json:"self_locking,omitzero"`
	Strain      float64     `json:"strain"`
	Permitted   float64     `json:"permitted_strain"`
	Lower       []Dimension `json:"lower"`
	Upper       []Dimension `json:"upper"`
	Warnings    []string    `json:"warnings,omitzero"`
}

// A Dimension is a dimension of a coupon.
type Dimension struct {
	Name  string  `json:"name"`
	Value float64 `json:"mm"`
}

// LadderOf takes from a ladder what its JSON says.
func LadderOf(j *job.File, set coupon.Set, cost quote.LadderCost, tool string, files []string) Ladder {
	out := Ladder{Schema: "ramnest ladder", Tool: tool, Number: j.Number, Latch: set.Latch, Kind: set.Kind, Figure: set.SizeName,
		Step: set.StepSize, Stepped: set.Stepped,
		Places: set.Places, Steps: []LadderStep{}, Bought: set.Bought, Remarks: unitsOf(j).texts(set.Remarks), Cost: cost, Files: files}
	for _, s := range set.Steps {
		e := s.Expected
		step := LadderStep{Number: s.Number, Size: s.Size, Nominal: s.Nominal, Outcome: "computed", Peak: e.Peak, P5: e.P5, P95: e.P95,
			Separation: e.Separation, SelfLocking: e.SelfLocking, Strain: e.Strain, Permitted: e.Permitted, Lower: figuresOf(s.Lower), Upper: figuresOf(s.Upper)}
		switch {
		case e.Loose:
			step.Outcome = "loose"
		case e.Locks:
			step.Outcome = "locks"
		}
		for _, w := range s.Warnings {
			step.Warnings = append(step.Warnings, w.In(j.Shown()))
		}
		out.Steps = append(out.Steps, step)
	}
	return out
}

func figuresOf(d []coupon.Dimension) []Dimension {
	out := []Dimension{}
	for _, x := range d {
		out = append(out, Dimension(x))
	}
	return out
}

// LadderText is a ladder for a terminal.
func LadderText(j *job.File, set coupon.Set, cost quote.LadderCost, folder string, files []string) string {
	p := headOf(j)
	u := unitsOf(j)
	f := u.Name("N")
	l := u.Name("mm")
	p.head("LADDER  of latch %s, %s: %s in steps of %s, in the %s part", set.Latch, strings.ReplaceAll(set.Kind, "_", " "),
		strings.ReplaceAll(set.SizeName, "_", " "), u.say(set.StepSize, "mm"), set.Stepped)
	rows := [][]string{{"", "size " + l, "peak " + f, "P5..P95 " + f, "apart " + f, "strain of limit", ""}}
	for _, s := range set.Steps {
		e := s.Expected
		mark := ""
		if s.Nominal {
			mark = "as drawn"
		}
		row := []string{fmt.Sprint(s.Number), u.coupon(s.Size), "-", "-", "-", "-", mark}
		switch {
		case e.Loose:
			row[6] = "loose: no force expected"
		case e.Locks:
			row[6] = "locks, or jams too often: do not force it"
		default:
			force := func(v float64) string { return u.bare(v, "N") }
			row[2], row[3], row[4] = force(e.Peak), force(e.P5)+".."+force(e.P95), force(e.Separation)
			if e.SelfLocking {
				row[4] = "locked"
			}
			row[5] = fmt.Sprintf("%s of %s %%", number(100*e.Strain), number(100*e.Permitted))
			if e.Strain > e.Permitted {
				row[6] = strings.TrimSpace(mark + " OVERSTRAINED")
			}
		}
		rows = append(rows, row)
	}
	p.table("rrrrrrl", rows)
	if set.Places > 1 {
		p.line("  Forces are those of a whole pair with its %d joints.", set.Places)
	}
	p.head("COST")
	p.wrap("  ", "  ", cost.Text)
	p.wrap("  ", "  ", cost.Offer.Note)
	p.head("TO TEST")
	p.wrap("  ", "  ", "Press each pair together once, slowly and straight, and write the largest force into the test table. A note that begins with no-go says that a pair did not go together at that force.")
	for _, b := range set.Bought {
		p.wrap("  - ", "    ", b)
	}
	for _, r := range set.Remarks {
		p.wrap("  - ", "    ", r.In(u.System))
	}
	p.ladderWarnings(u, set)
	p.files(folder, files)
	return p.b.String()
}

// ladderWarnings lists the cautions of the pairs, each once with the pairs it is of.
func (p *page) ladderWarnings(u units, set coupon.Set) {
	list := warningsOfLadder(u, set)
	if len(list) == 0 {
		return
	}
	p.head("WARNINGS")
	for _, t := range list {
		p.wrap("  - ", "    ", t)
	}
}

// LadderWarnings gives the cautions of the pairs in the units of the job, each once with
// the pairs it is of.
func LadderWarnings(j *job.File, set coupon.Set) []string { return warningsOfLadder(unitsOf(j), set) }

func warningsOfLadder(u units, set coupon.Set) []string {
	var texts, out []string
	of := map[string][]string{}
	for _, s := range set.Steps {
		for _, w := range s.Warnings {
			text := w.Text.In(u.System)
			if of[text] == nil {
				texts = append(texts, text)
			}
			of[text] = append(of[text], fmt.Sprint(s.Number))
		}
	}
	for _, t := range texts {
		out = append(out, "pair "+strings.Join(of[t], ", ")+": "+t)
	}
	return out
}
