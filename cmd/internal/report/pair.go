package report

import (
	"fmt"
	"math"

	"ramnest/fixture/witness"
)

// A Pair is what was found between two part meshes.
type Pair struct {
	Lower    string       `json:"lower"`
	Upper    string       `json:"upper"`
	Latches  []FoundLatch `json:"latches"`
	Doubtful []FoundDoubt `json:"doubtful,omitzero"`
}

// A FoundLatch is a joint design measured in the meshes, in the words of a job file.
type FoundLatch struct {
	Kind    string        `json:"kind"`
	At      [][2]float64  `json:"at_mm"`
	Z       float64       `json:"z_mm"`
	Part    string        `json:"part"` // outside of a ring or fit, socket, carries the ribs, flexes
	Bends   string        `json:"bends,omitzero"`
	Toward  [][2]float64  `json:"toward,omitzero"`
	LeadIn  string        `json:"lead_in,omitzero"`
	Section string        `json:"section,omitzero"`
	Tension string        `json:"tension,omitzero"`
	Split   string        `json:"split,omitzero"`
	Slots   int           `json:"slots,omitzero"`
	Ribs    int           `json:"rib_count,omitzero"`
	Figures []FoundFigure `json:"figures"`
	Ask     []string      `json:"ask,omitzero"`
}

// A FoundFigure is one measured figure.
type FoundFigure struct {
	Name  string  `json:"name"` // the key of a job file, where it has one
	Value float64 `json:"value"`
	Off   float64 `json:"plus_or_minus"`
	Unit  string  `json:"unit"` // mm or deg
	Mark  string  `json:"mark"` // measured
}

// A FoundDoubt is a place of which no latch was made.
type FoundDoubt struct {
	At       [2]float64 `json:"at_mm"`
	Area     float64    `json:"area_mm2"`
	Undercut float64    `json:"undercut_mm,omitzero"`
	Reason   string     `json:"reason"`
}

// PairOf puts a find into the words of a report.
func PairOf(lower, upper string, f witness.Find) Pair {
	out := Pair{Lower: lower, Upper: upper, Latches: []FoundLatch{}}
	for _, l := range f.Latches {
		n := FoundLatch{Kind: l.Kind, Z: zero(l.Z), Part: l.Part, Bends: l.Bends, LeadIn: l.LeadIn, Section: l.Section, Tension: l.Tension,
			Split: l.Split, Slots: l.Slots, Ribs: l.Ribs, Ask: l.Ask}
		for _, p := range l.At {
			n.At = append(n.At, [2]float64{zero(p.X), zero(p.Y)})
		}
		for _, p := range l.Toward {
			n.Toward = append(n.Toward, [2]float64{zero(p.X), zero(p.Y)})
		}
		for _, g := range l.Figures {
			f := FoundFigure{Name: g.Name, Value: g.Value, Off: g.Off, Unit: "mm", Mark: "measured"}
			if g.Angle {
				f.Value, f.Off, f.Unit = g.Value*180/math.Pi, g.Off*180/math.Pi, "deg"
			}
			n.Figures = append(n.Figures, f)
		}
		out.Latches = append(out.Latches, n)
	}
	for _, d := range f.Doubtful {
		out.Doubtful = append(out.Doubtful, FoundDoubt{[2]float64{zero(d.At.X), zero(d.At.Y)}, d.Area, d.Undercut, d.Reason})
	}
	return out
}

// Paired is what was found of a pair for a person, 80 columns wide.
func Paired(n Pair) string {
	pg := &page{}
	p := pg.line
	p("%s", n.Lower)
	p("  with %s on it, as they stand", n.Upper)
	if len(n.Latches) == 0 {
		p("")
		p("  no latch: nothing has to give way on the way in, or it is in doubt")
	}
	for i, l := range n.Latches {
		p("")
		p("  %d. %s, %d place%s, z %.3f mm", i+1, l.Kind, len(l.At), plural(len(l.At)), l.Z)
		pg.wrap("     ", "     ", l.words())
		for _, a := range l.At {
			p("     at [%.3f, %.3f]", a[0], a[1])
		}
		for _, f := range l.Figures {
			p("     %-26s %9.3f %-3s  +- %.3f  %s", f.Name, f.Value, f.Unit, f.Off, f.Mark)
		}
		for _, a := range l.Ask {
			pg.wrap("     ask: ", "       ", a)
		}
	}
	for i, d := range n.Doubtful {
		if i == 0 {
			p("")
			p("  in doubt, no latch made of it:")
		}
		pg.wrap(fmt.Sprintf("  - at [%.2f, %.2f], %.2f mm2: ", d.At[0], d.At[1], d.Area), "    ", d.Reason)
	}
	return pg.b.String()
}

// words are what of a latch is no figure.
func (l FoundLatch) words() string {
	switch l.Kind {
	case "cantilever":
		s := fmt.Sprintf("the %s part flexes, %s; lead-in on the %s", l.Part, l.Bends, l.LeadIn)
		if l.Section != "rectangle" {
			s += "; section " + l.Section
		}
		return s
	case "crush_rib":
		return fmt.Sprintf("%d ribs on the %s part", l.Ribs, l.Part)
	case "ball":
		s := "socket in the " + l.Part + " part"
		if l.Slots > 0 {
			s += fmt.Sprintf(", %d slots", l.Slots)
		}
		return s
	}
	s := "outside is the " + l.Part + " part"
	if l.Slots > 0 {
		s += fmt.Sprintf("; %s one split by %d slots", l.Split, l.Slots)
	}
	return s
}
