package quote

import (
	"fmt"
	"strings"

	"ramnest/force"
)

// A Card holds the rates of a shop, in its own currency.
type Card struct {
	Name        string  `yaml:"name" unit:"none"`
	Currency    string  `yaml:"currency" unit:"none"`     // printed as it stands
	MaterialCM3 float64 `yaml:"material_cm3" unit:"none"` // a cubic centimetre of solid print
	HeightMM    float64 `yaml:"height_mm" unit:"none"`    // a millimetre of build height, machine time included
	SetUp       float64 `yaml:"set_up" unit:"none"`       // a job
	PieceWork   float64 `yaml:"piece_work" unit:"none"`   // cleaning and finishing a piece
	LabourHour  float64 `yaml:"labour_hour" unit:"none"`  // of assembly
	Margin      float64 `yaml:"margin" unit:"pct"`        // on top of cost [1]
	Reject      float64 `yaml:"reject" unit:"pct"`        // share of prints thrown away [1], below 0.9
	Minimum     float64 `yaml:"minimum" unit:"none"`      // least price of a quote
	Invented    bool    `yaml:"-"`                        // not a shop's rates: see InventedCard
}

// InventedCard is a card of invented round numbers. It is nobody's price: it stands in
// until the shop writes its own, and every quote made from it says so.
func InventedCard() Card {
	return Card{Name: "INVENTED round numbers, not a price", Currency: "units", MaterialCM3: 0.5, HeightMM: 1, SetUp: 20, PieceWork: 5, LabourHour: 40, Margin: 0.3, Reject: 0.05, Minimum: 50, Invented: true}
}

// Validate returns everything wrong with the card.
func (c Card) Validate() []force.Fault {
	var out []force.Fault
	for _, s := range []struct{ field, text string }{{"name", c.Name}, {"currency", c.Currency}} {
		if strings.TrimSpace(s.text) == "" {
			out = append(out, force.Fault{Field: s.field, Problem: "is empty", Want: "a word to print"})
		}
	}
	for _, a := range []struct {
		field string
		x, hi float64
	}{{"material_cm3", c.MaterialCM3, 1e6}, {"height_mm", c.HeightMM, 1e6}, {"set_up", c.SetUp, 1e9}, {"piece_work", c.PieceWork, 1e9},
		{"labour_hour", c.LabourHour, 1e6}, {"margin", c.Margin, 10}, {"reject", c.Reject, 0.9}, {"minimum", c.Minimum, 1e9}} {
		if !(a.x >= 0 && a.x <= a.hi) {
			out = append(out, force.Fault{Field: a.field, Given: fmt.Sprint(a.x), Problem: "is out of range", Want: fmt.Sprintf("0 to %g", a.hi)})
		}
	}
	return out
}
