package page

// A Size is that of the paper, upright [mm].
type Size struct{ Width, Height float64 }

// A4 is by ISO 216, Letter 8.5 by 11 inch.
var (
	A4     = Size{210, 297}
	Letter = Size{215.9, 279.4}
)

// Lying gives the sheet lying on its long side.
func (s Size) Lying() Size { return Size{max(s.Width, s.Height), min(s.Width, s.Height)} }

// Doubled gives the sheet of twice the area: A3 of A4, Tabloid of Letter.
func (s Size) Doubled() Size { return Size{s.Height, 2 * s.Width} }

// A Frame is the part of a page that a flow may fill [mm].
type Frame struct{ X, Y, Width, Height float64 }
