package preview

import "ramnest/force/unit"

// units are those that are shown: what one of them is in mm and N.
type units struct {
	Length     float64 `json:"length"`
	LengthName string  `json:"lengthName"`
	Force      float64 `json:"force"`
	ForceName  string  `json:"forceName"`
}

func unitsOf(s unit.System) units {
	return units{s.One(unit.Length), s.Name(unit.Length), s.One(unit.Force), s.Name(unit.Force)}
}
