package preview

import (
	"math"
	"strconv"
)

// units are those that are shown: what one of them is in mm and N.
type units struct {
	Length     float64 `json:"length"`
	LengthName string  `json:"lengthName"`
	Force      float64 `json:"force"`
	ForceName  string  `json:"forceName"`
}

// unitsOf chooses them. The inch and the pound-force are so by definition.
func unitsOf(d Document) units {
	u := units{1, "mm", 1, "N"}
	if d.Inches {
		u.Length, u.LengthName = 25.4, "in"
	}
	if d.Pounds {
		u.Force, u.ForceName = 4.4482216152605, "lbf"
	}
	return u
}

// number writes a figure with three digits, or whole from a hundred on.
func number(v float64) string {
	if math.Abs(v) >= 99.95 {
		return strconv.FormatFloat(math.Round(v)+0, 'f', -1, 64)
	}
	s := strconv.FormatFloat(v, 'g', 3, 64)
	if x, err := strconv.ParseFloat(s, 64); err == nil {
		s = strconv.FormatFloat(x+0, 'f', -1, 64)
	}
	return s
}
