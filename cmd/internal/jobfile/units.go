package jobfile

import (
	"math/big"
	"ramnest/force/unit"
	"slices"
	"strconv"
	"strings"
)

// Units are what a plain number in a job file means: lengths in mm or in, forces
// in N or lbf. A struct for a whole file embeds it inline; left out, lengths are
// in mm, and forces in N, or in lbf if lengths are in inches.
type Units struct {
	Length string `yaml:"units" oneof:"mm in"`
	Force  string `yaml:"force_units" oneof:"N lbf"`
}

// Shown are the units in which results are shown: those that the file is written in.
func (u Units) Shown() unit.System {
	return unit.System{Inch: u.Length == "in", Pound: u.Force == "lbf" || u.Force == "" && u.Length == "in"}
}

var metric = Units{Length: "mm", Force: "N"}

// A dimension is what a unit tag stands for.
type dimension struct {
	tag     string // as in the struct tag
	noun    string // for a fault: "is the unit of a mass, not of a length"
	example string
	units   []measure // the first is what a plain number means, unless the job says otherwise
}

// A measure is a way to write a value: so many times the stored unit, as exact
// decimals multiplied and divided.
type measure struct {
	name   string
	factor string
	also   []string // other spellings
}

// pi to 50 places, so that an angle in degrees is rounded once as well and a right
// angle is math.Pi/2.
const pi = "3.14159265358979323846264338327950288419716939937511"

// By definition, see package unit, in decimals.
var (
	inch       = exact(unit.Inch)
	pound      = exact(unit.Pound)
	gravity    = exact(unit.Gravity)
	poundForce = pound + "*" + gravity                // [N]
	psi        = poundForce + "/" + inch + "/" + inch // lbf/in² [MPa]
	inchPound  = poundForce + "*" + inch + "/1000"    // in lbf [J]
	footPound  = poundForce + "*" + inch + "*12/1000" // ft lbf [J]
)

// exact writes a defined figure in decimals.
func exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// dimensions lists every unit tag with the units that a job file may use. Left
// out on purpose: the pound as a force without its f, and the ton, which is
// three different forces.
var dimensions = []dimension{
	{"mm", "a length", "12.5 mm", []measure{
		{"mm", "1", nil}, {"in", inch, []string{"inch", "inches", "\""}}, {"thou", inch + "/1000", []string{"mil"}},
		{"um", "1/1000", []string{"µm", "μm"}}, {"cm", "10", nil}, {"m", "1000", nil},
	}},
	{"N", "a force", "110 N", []measure{
		{"N", "1", nil}, {"lbf", poundForce, nil}, {"kN", "1000", nil}, {"ozf", poundForce + "/16", nil}, {"kgf", gravity, nil},
	}},
	{"deg", "an angle", "30 deg", []measure{{"deg", pi + "/180", []string{"°"}}, {"rad", "1", nil}}},
	{"MPa", "a stress or modulus", "1700 MPa", []measure{
		{"MPa", "1", []string{"N/mm2", "N/mm²"}}, {"GPa", "1000", nil}, {"kPa", "1/1000", nil}, {"psi", psi, nil}, {"ksi", psi + "*1000", nil},
	}},
	{"kg", "a mass", "0.25 kg", []measure{{"kg", "1", nil}, {"g", "1/1000", nil}, {"lb", pound, nil}, {"oz", pound + "/16", nil}}},
	{"J", "an energy", "5 J", []measure{{"J", "1", []string{"Nm"}}, {"mJ", "1/1000", nil}, {"in-lbf", inchPound, nil},
		{"ft-lbf", footPound, nil}}},
	{"s", "a time", "2 s", []measure{{"s", "1", nil}, {"ms", "1/1000", nil}, {"min", "60", nil}, {"h", "3600", nil}}},
	{"d", "a duration", "90 d", []measure{{"d", "1", []string{"days"}}, {"y", "1461/4", []string{"years"}}}},
	{"pct", "a share", "4 %", []measure{{"%", "1/100", []string{"pct"}}}},
	{"none", "a plain number", "0.3", nil},
}

// dimensionOf finds a dimension by its tag.
func dimensionOf(tag string) (dimension, bool) {
	i := slices.IndexFunc(dimensions, func(d dimension) bool { return d.tag == tag })
	if i < 0 {
		return dimension{}, false
	}
	return dimensions[i], true
}

// unit finds a unit by its name or another spelling of it.
func (d dimension) unit(name string) (measure, bool) {
	i := slices.IndexFunc(d.units, func(u measure) bool { return u.name == name || slices.Contains(u.also, name) })
	if i < 0 {
		return measure{}, false
	}
	return d.units[i], true
}

// names lists the units of a dimension, each by its first name.
func (d dimension) names() []string {
	var out []string
	for _, u := range d.units {
		out = append(out, u.name)
	}
	return out
}

// spellings lists every way to write a unit of the dimension.
func (d dimension) spellings() []string {
	var out []string
	for _, u := range d.units {
		out = append(append(out, u.name), u.also...)
	}
	return out
}

// plain gives the unit of a plain number in a job with units u. ok is false
// where the job does not say: a modulus, mass or energy in a job of inches or
// pounds-force could be meant either way, and a wrong guess can hurt somebody.
func (d dimension) plain(u Units) (name string, ok bool) {
	switch d.tag {
	case "mm":
		return u.Length, true
	case "N":
		return u.Force, true
	case "MPa", "kg", "J":
		return d.tag, u == metric
	case "none":
		return "", true
	}
	return d.units[0].name, true
}

// ratio multiplies out the factor of a unit.
func (u measure) ratio() *big.Rat {
	product := big.NewRat(1, 1)
	for quotient := range strings.SplitSeq("*"+u.factor, "/") {
		over := quotient[0] != '*'
		for figure := range strings.SplitSeq(strings.TrimPrefix(quotient, "*"), "*") {
			r, ok := new(big.Rat).SetString(figure)
			if !ok {
				panic("jobfile: unit " + u.name + " has no factor")
			}
			if over {
				r.Inv(r)
				over = false
			}
			product.Mul(product, r)
		}
	}
	return product
}

// A Dimension is a kind of value with the units that it may be written in.
type Dimension struct {
	Noun  string   // "a length"
	Units []string // by their first names; none for a plain number
}

// Dimensions lists every kind of value that a file may hold.
func Dimensions() []Dimension {
	var out []Dimension
	for _, d := range dimensions {
		if len(d.units) > 0 {
			out = append(out, Dimension{d.noun, d.names()})
		}
	}
	return out
}
