package jobfile

import (
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"

	"ramnest/force"
)

// A unit is a name and the exact factor from it to the unit of the program.
type unit struct {
	name   string
	factor string // decimal number or fraction; deg is the exception, see dimension
}

// A dimension lists the units that a value may be given in. The first is the
// one meant by a plain number, unless the file says inches or lbf.
type dimension struct {
	noun  string
	units []unit
}

// dimensions by unit tag. International inch 25.4 mm, avoirdupois pound
// 0.45359237 kg, standard gravity 9.80665 m/s2: exact by definition
// (international yard and pound agreement 1959; CGPM 1901), from memory; so
// 1 lbf = 4.4482216152605 N, and psi = lbf / 645.16 mm2.
func dimensionOf(tag string) (dimension, bool) {
	switch tag {
	case "mm":
		return dimension{"length", []unit{
			{"mm", "1"},
			{"in", "25.4"},
			{"thou", "0.0254"},
			{"cm", "10"},
			{"m", "1000"},
			{"um", "0.001"},
			{"µm", "0.001"}, // micro sign
			{"μm", "0.001"}, // Greek mu
		}}, true
	case "N":
		return dimension{"force", []unit{
			{"N", "1"},
			{"lbf", "4.4482216152605"},
			{"kN", "1000"},
			{"kgf", "9.80665"},
		}}, true
	case "deg":
		return dimension{"angle", []unit{{"deg", "deg"}, {"rad", "1"}, {"°", "deg"}}}, true
	case "MPa":
		return dimension{"stress", []unit{
			{"MPa", "1"},
			{"GPa", "1000"},
			{"psi", "44482216152605/6451600000000000"},
			{"ksi", "44482216152605/6451600000000"},
			{"kPa", "0.001"},
			{"N/mm2", "1"},
			{"N/mm²", "1"},
		}}, true
	case "kg":
		return dimension{"mass", []unit{
			{"kg", "1"},
			{"g", "0.001"},
			{"lb", "0.45359237"},
			{"oz", "0.028349523125"},
		}}, true
	case "J":
		return dimension{"energy", []unit{
			{"J", "1"},
			{"mJ", "0.001"},
			{"N m", "1"},
			{"Nm", "1"},
			{"N mm", "0.001"},
			{"Nmm", "0.001"},
			{"in lbf", "0.1129848290276167"},
			{"ft lbf", "1.3558179483314004"},
		}}, true
	case "s":
		return dimension{"time", []unit{{"s", "1"}, {"ms", "0.001"}, {"min", "60"}, {"h", "3600"}}}, true
	case "pct":
		return dimension{"share", []unit{{"%", "0.01"}, {"pct", "0.01"}}}, true
	case "none", "":
		return dimension{"plain number", nil}, true
	}
	return dimension{}, false
}

// list names the units of the dimension, with or.
func (d dimension) list() string {
	names := make([]string, len(d.units))
	for i, u := range d.units {
		names[i] = u.name
	}
	return orList(names)
}

// plain gives the unit meant by a number without one.
func (s *system) plain(tag string, d dimension) unit {
	switch {
	case len(d.units) == 0:
		return unit{"", "1"}
	case tag == "mm" && s.inches, tag == "N" && s.poundsForce:
		return d.units[1]
	}
	return d.units[0]
}

// system is what the file says about plain numbers.
type system struct {
	inches      bool // plain lengths are inches
	poundsForce bool // plain forces are lbf
}

var quantity = regexp.MustCompile(`^([-+]?(?:(?:0|[1-9][0-9]*)(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?)\s*(.*)$`)

// maxNumber is the length of a number with its unit, in bytes. It bounds the
// work of exact arithmetic; nobody writes a dimension with sixty digits.
const maxNumber = 64

// number reads text as a quantity of the dimension named by the unit tag and
// gives it in the unit of the program, rounded once. Quoted: the text stood in
// quotes, where a number without unit is taken for a slip.
func (s *system) number(text, tag string, quoted bool) (float64, *force.Fault) {
	dim, _ := dimensionOf(tag)
	plain := s.plain(tag, dim)
	bad := func(problem, want string) (float64, *force.Fault) {
		return 0, &force.Fault{Given: show(text), Problem: problem, Want: want}
	}
	example := "a number like 2.5"
	if len(dim.units) > 0 {
		example += ", or with its unit, " + dim.list()
	}
	text = strings.TrimSpace(text)
	m := quantity.FindStringSubmatch(text)
	switch {
	case strings.EqualFold(strings.TrimLeft(text, "+-"), ".nan"), strings.EqualFold(strings.TrimLeft(text, "+-"), ".inf"):
		return bad("must be a finite number", example)
	case m == nil:
		return bad("must be a number", example)
	case len(text) > maxNumber:
		return bad("has too many digits", "at most "+strconv.Itoa(maxNumber)+" characters")
	case m[2] != "" && strings.ContainsAny(m[2][:1], "0123456789.,_'+-"):
		return bad("must be a decimal number with a point, without leading zeros or separators", example)
	}
	u := plain
	name := strings.Join(strings.Fields(m[2]), " ")
	switch {
	case name == "" && quoted && len(dim.units) > 0:
		return bad("is in quotes and has no unit", "no quotes, or a unit: "+dim.list())
	case name == "" && quoted:
		return bad("must be a number, not text", "no quotes")
	case name != "":
		found := false
		for _, k := range dim.units {
			if k.name == name {
				u, found = k, true
			}
		}
		if !found && len(dim.units) == 0 {
			return bad("has a unit, where a plain number is needed", "no unit")
		}
		if !found {
			return bad(show(name)+" is not a unit of "+dim.noun, dim.list())
		}
	}
	v, ok := exact(m[1], u.factor)
	if !ok {
		return bad("is too large or too small to compute with", "")
	}
	return v, nil
}

// exact multiplies the decimal number with the factor and rounds once, so that
// 0.012 in and 0.3048 mm are the same value to the last bit. Not ok: the
// result is no finite number, or vanishes though the number is not 0.
func exact(decimal, factor string) (float64, bool) {
	f, err := strconv.ParseFloat(decimal, 64)
	if err != nil || math.IsInf(f, 0) || math.IsNaN(f) {
		return 0, false
	}
	if f == 0 {
		mantissa, _, _ := strings.Cut(strings.ToLower(decimal), "e")
		return 0, !strings.ContainsAny(mantissa, "123456789")
	}
	if factor == "deg" {
		v := f * math.Pi / 180
		return v, v != 0 && !math.IsInf(v, 0)
	}
	x, okx := new(big.Rat).SetString(decimal)
	k, okk := new(big.Rat).SetString(factor)
	if !okx || !okk {
		return 0, false
	}
	v, _ := x.Mul(x, k).Float64()
	return v, v != 0 && !math.IsInf(v, 0)
}
