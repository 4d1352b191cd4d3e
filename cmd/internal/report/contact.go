package report

import (
	"fmt"

	"ramnest/cmd/internal/solve"
	"ramnest/fixture/pose"
	"ramnest/force/unit"
)

// A Contact is how the seated parts stand to each other, read off columns along the axes.
type Contact struct {
	Gap      float64       `json:"least_gap_mm"`        // upper part over lower one, along the press axis
	Seat     float64       `json:"seat_area_mm2"`       // where they touch, or would
	Quarters [4]float64    `json:"seat_by_quarter"`     // shares, from +x +y counter-clockwise
	Middle   [2]float64    `json:"seat_middle_mm"`      //
	None     bool          `json:"none_under,omitzero"` // nothing of the lower part lies under the upper one: no gap, no seat
	Overlap  float64       `json:"overlap_mm3"`         // outside the places of pins, ribs and balls
	At       *[3]float64   `json:"overlap_at_mm,omitzero"`
	Play     [3][2]float64 `json:"play_mm"`       // along x, y, z, each way, at most 3
	Hump     float64       `json:"gives_way_mm3"` // the most in the way, of the first hump on the way up
	HumpAt   float64       `json:"gives_way_at_lift_mm"`
	HumpEnds float64       `json:"gives_way_until_lift_mm"`
	Rests    []Rest        `json:"rests"` // every lift at which the upper part would come to rest
	Pitch    float64       `json:"column_pitch_mm"`
}

// A Rest is a lift at which the upper part comes to rest.
type Rest struct {
	Lift  float64 `json:"lift_mm"`
	Play  float64 `json:"play_mm"`
	Bears float64 `json:"bears_mm2"`
}

func contactOf(c *pose.Contact) *Contact {
	if c == nil {
		return nil
	}
	out := &Contact{Gap: c.Gap, Seat: c.Seat.Area, Quarters: c.Seat.Quarters, Middle: [2]float64{c.Seat.Middle.X, c.Seat.Middle.Y},
		None:    !c.Over,
		Overlap: c.Both, Play: [3][2]float64{c.PlayX, c.PlayY,
			c.PlayZ}, Hump: c.Hump.Volume, HumpAt: c.Hump.At, HumpEnds: c.Hump.Ends, Rests: []Rest{}, Pitch: c.Pitch}
	if c.Both > 0 {
		out.At = &[3]float64{c.At.X, c.At.Y, (c.Low + c.High) / 2}
	}
	for _, r := range c.Rests {
		out.Rests = append(out.Rests, Rest{r.Lift, r.Play, r.Bears})
	}
	return out
}

// contact says in two lines how the seated parts stand to each other.
func (p *page) contact(u units, st *solve.Step) {
	c := st.Contact
	if c == nil {
		return
	}
	seat := "none along the press axis: nothing lies under the upper part"
	if c.Over {
		seat = u.say(c.Seat.Area, unit.Area)
		for q, s := range c.Seat.Quarters {
			seat += map[bool]string{true: "; quarters ", false: ", "}[q == 0] + fmt.Sprintf("%.0f", 100*s)
		}
		seat += " %"
		if c.Gap > 0.005 {
			seat = unit.Length.Of(c.Gap).To(unit.Fine).Text(u.System, nil) + " above " + seat
		}
	}
	p.line("  %-18s%s", "seat of the parts", seat)
	one := func(way float64) string {
		if way >= pose.Farthest {
			return ">" + u.bare(pose.Farthest, unit.Length)
		}
		return unit.Length.Of(way).To(unit.Fine).Number(u.System, nil)
	}
	play := func(name string, way [2]float64) string { return name + " -" + one(way[0]) + " +" + one(way[1]) }
	_, name := u.In(0, unit.Length)
	p.line("  %-18s%s, %s, %s %s", "play of the parts", play("x", c.PlayX), play("y", c.PlayY), play("z", c.PlayZ), name)
}
