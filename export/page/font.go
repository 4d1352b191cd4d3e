package page

import "ramnest/force/unit"

// A Face is a cut of the typeface.
type Face uint8

// The faces.
const (
	Regular Face = iota
	Bold
)

// A Shade is a tone of ink: black on white and one grey.
type Shade uint8

// The shades.
const (
	Black Shade = iota
	Grey        // for grounds, 86 % white: stays apart from white in a copy
	White
)

// A Font is how text is set.
type Font struct {
	Face  Face
	Size  float64 // [pt]
	Shade Shade
}

// point is a typographic point [mm].
const point = unit.Inch / 72

// Leading is the distance from one line to the next [mm].
func (f Font) Leading() float64 { return 1.3 * f.Size * point }

// Ascent is from the top of a line to its baseline [mm].
func (f Font) Ascent() float64 { return 1.0 * f.Size * point }

// Strong switches bold on and off inside a text that is set in lines.
const Strong = '\x02'

// Emphasised gives a text set in bold.
func Emphasised(s string) string { return string(Strong) + s + string(Strong) }
