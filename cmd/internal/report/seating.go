package report

import (
	"fmt"
	"math"

	"ramnest/fixture/pose"
)

// Seatings is the ranking of closed poses of two mesh files.
type Seatings struct {
	Lower string  `json:"lower"`
	Up    string  `json:"lower_up"`
	Upper string  `json:"upper"`
	Leads bool    `json:"first_leads"` // seat: find would take it
	Poses []Posed `json:"poses"`       // best first
}

// A Posed is one closed pose of the upper part, in the words of a job.
type Posed struct {
	Up      string     `json:"up"`
	Turn    float64    `json:"turn_deg"`
	Move    [3]float64 `json:"move_mm"`
	Same    int        `json:"quarter_turns_alike"`
	Score   float64    `json:"score"`
	Outline float64    `json:"shadow_shared"`
	Guided  float64    `json:"sides_guided"`
	Seat    float64    `json:"bears_mm2"`
	Hump    float64    `json:"gives_way_mm3"`
	Nested  float64    `json:"depth_nested"`
}

// SeatingsOf puts a ranking into the words of a job.
func SeatingsOf(lower, up, upper string, all []pose.Seating) Seatings {
	out := Seatings{Lower: lower, Up: up, Upper: upper, Leads: pose.Leads(all), Poses: []Posed{}}
	for _, g := range all {
		out.Poses = append(out.Poses, Posed{g.Up, math.Round(g.Turn * 180 / math.Pi), g.Move, g.Turns, g.Score, g.Outline, g.Guided, g.Bears,
			g.Hump, g.Nested})
	}
	return out
}

// Seated is a ranking for a person, 80 columns wide.
func Seated(n Seatings) string {
	pg := &page{}
	p := pg.line
	pg.wrap("", "  ", fmt.Sprintf("%s on %s, whose %s points up", n.Upper, n.Lower, n.Up))
	p("")
	if len(n.Poses) == 0 {
		p("  no closed pose was found")
		return pg.b.String()
	}
	p("     up  turn  move mm                      score  seat mm2  gives mm3  sides")
	for k, g := range n.Poses {
		turn := fmt.Sprintf("%.0f", g.Turn)
		if g.Same == 4 {
			turn = "any"
		}
		p("  %d  %s  %4s  %-26s  %5.2f  %8.0f  %9.1f  %5.0f", k+1, g.Up, turn, fmt.Sprintf("[%.7g, %.7g, %.7g]", g.Move[0], g.Move[1], g.Move[2]),
			g.Score, g.Seat, g.Hump, 4*g.Guided)
	}
	p("")
	if n.Leads {
		pg.wrap("  ", "  ", "The first leads clearly: seat: find would take it. Look whether it is right.")
	} else {
		pg.wrap("  ", "  ", "None leads clearly: seat: find would ask. Choose one by up, turn and move.")
	}
	pg.wrap("  ", "  ", "Seat: the area that stops the part; gives: what is in the way on the way in, the latches; sides: ways aside, of four, in which the parts guide each other within 1 mm.")
	return pg.b.String()
}
