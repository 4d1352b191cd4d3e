package report

import (
	"ramnest/cmd/internal/solve"
	"ramnest/export/quote"
	"ramnest/fixture"
	"ramnest/force/warning"
)

// A Tooling is what was designed.
type Tooling struct {
	Material Material `json:"material"`
	Rounds   int      `json:"rounds"` // designed until method and tooling agreed
	Nests    []Nest   `json:"nests"`
	Anvils   []Anvil  `json:"anvils"` // one a step, in their order
	Margins  []Margin `json:"margins"`
	Notes    []string `json:"notes,omitzero"`
}

// A Piece is a body to print. Its own coordinates plus the shift are those of the
// assembly.
type Piece struct {
	Name      string     `json:"name"`
	Mark      string     `json:"mark,omitzero"`
	Size      [3]float64 `json:"size_mm"`
	Shift     [3]float64 `json:"shift_mm"`
	Volume    float64    `json:"volume_mm3"`
	Mass      float64    `json:"mass_kg"`
	Triangles int        `json:"triangles"`
	Scale     [3]float64 `json:"drawn_over_size"` // of the mesh files, more than 1 to make up for shrink
}

// A Nest holds the lower part. Heights are those of the assembly.
type Nest struct {
	Piece
	Steps     []int      `json:"steps"`
	Top       float64    `json:"top_mm"`
	Seat      float64    `json:"seat_mm"`
	StopTop   float64    `json:"dead_stop_mm"`
	Clearance float64    `json:"clearance_mm"`
	Grip      float64    `json:"grip_mm"`
	Middle    [2]float64 `json:"middle_mm"`
	OneWay    bool       `json:"fits_one_way_only"`
	Pads      []Pad      `json:"pads"`
}

// An Anvil pushes the upper part.
type Anvil struct {
	Piece
	Step   int        `json:"step"`
	Nest   int        `json:"nest"`
	Face   float64    `json:"face_mm"`
	Gap    float64    `json:"gap_mm"`
	Thrust [2]float64 `json:"thrust_line_mm"`
	Pads   []Pad      `json:"pads"`
}

// A Pad is ground through which the force goes.
type Pad struct {
	At   [3]float64 `json:"at_mm"`
	Area float64    `json:"area_mm2"`
}

// A Margin compares a load with what carries it, the safety factor taken off.
type Margin struct {
	Piece    string  `json:"piece"`
	Name     string  `json:"name"`
	Load     float64 `json:"load"`
	Capacity float64 `json:"capacity"`
	Unit     string  `json:"unit"`
	Factor   float64 `json:"factor"`
	Source   string  `json:"source"`
}

// A Quote is what the tooling costs.
type Quote struct {
	Currency  string         `json:"currency"`
	Total     float64        `json:"total"`
	Note      string         `json:"note"`
	Offer     quote.Offer    `json:"offer"`
	Payback   *quote.Payback `json:"payback,omitzero"`
	NoPayback string         `json:"payback_open,omitzero"` // why there is no break-even
}

func toolingOf(s *solve.Solution) *Tooling {
	t := &Tooling{Material: materialOf(s.Material), Rounds: s.Rounds, Nests: []Nest{}, Anvils: []Anvil{}, Margins: []Margin{},
		Notes: warning.Texts(s.Tooling.Notes, s.Job.Shown())}
	for _, n := range s.Tooling.Nests {
		t.Nests = append(t.Nests, Nest{
			Piece: pieceOf(n.Piece), Steps: n.Steps, Top: n.Top, Seat: n.Seat, StopTop: n.StopTop,
			Clearance: n.Clearance, Grip: n.Grip, Middle: [2]float64{n.Middle.X, n.Middle.Y}, OneWay: n.OneWay, Pads: padsOf(n.Pads),
		})
	}
	for _, a := range s.Tooling.Anvils {
		t.Anvils = append(t.Anvils, Anvil{
			Piece: pieceOf(a.Piece), Step: a.Step, Nest: a.Nest, Face: a.Face, Gap: a.Gap,
			Thrust: [2]float64{a.Thrust.X, a.Thrust.Y}, Pads: padsOf(a.Pads),
		})
	}
	for _, m := range s.Tooling.Margins {
		t.Margins = append(t.Margins, Margin{m.Piece, m.Name, m.Load, m.Capacity, m.Unit, m.Factor(), m.Source})
	}
	return t
}

func pieceOf(p fixture.Piece) Piece {
	return Piece{Name: p.Name, Mark: p.Mark, Size: p.Size, Shift: p.Shift, Volume: p.Volume, Mass: p.Mass, Triangles: len(p.Mesh.Triangles),
		Scale: p.Scale}
}

func padsOf(pads []fixture.Pad) []Pad {
	out := []Pad{}
	for _, p := range pads {
		out = append(out, Pad{[3]float64{p.At.X, p.At.Y, p.Z}, p.Area})
	}
	return out
}

// quoteOf is nil where the card does not price the tooling.
func quoteOf(s *solve.Solution) *Quote {
	if s.Quote == nil {
		return nil
	}
	return &Quote{s.Quote.Currency, s.Quote.Total, s.Quote.Note, *s.Quote, s.Payback, s.NoPayback}
}
