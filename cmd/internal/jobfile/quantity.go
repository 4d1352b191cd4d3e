package jobfile

import (
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"ramnest/force/fault"
)

// longestNumber is the longest figure read [characters]. Exact arithmetic takes
// its time from the length of what it is given.
const longestNumber = 60

// quantity reads a value of dimension d as it stands in the file and gives it in
// the stored unit, rounded once. quoted says that it stood in quotes. The fault
// has no field yet; near is the unit that was perhaps meant.
func quantity(text string, quoted bool, d dimension, units Units) (v float64, wrong *fault.Fault, near string) {
	refuse := func(problem, want string) (float64, *fault.Fault, string) {
		return 0, &fault.Fault{Given: shown(text), Problem: problem, Want: want}, near
	}
	figure, name := cutNumber(strings.TrimSpace(text))
	if problem, want := figureFault(figure, name); problem != "" {
		if want == "" {
			want = d.wanted()
		}
		return refuse(problem, want)
	}
	name = strings.TrimSpace(name)
	if name == "" {
		if quoted {
			return refuse("is a text, not "+d.noun, d.wanted())
		}
		plain, ok := d.plain(units)
		if !ok {
			return refuse("needs its unit in a job that is not all metric", d.wanted())
		}
		name = plain
	} else if d.tag == "none" {
		return refuse("has a unit, but is a plain number", "the number alone")
	}
	u, ok := d.unit(name)
	if !ok && d.tag != "none" {
		near = nearest(name, d.spellings())
		return refuse(wrongUnit(name, d), d.wanted())
	}
	value, problem := scaled(figure, u)
	if problem != "" {
		return refuse(problem, d.wanted())
	}
	return value, nil, ""
}

// wanted says how a value of the dimension is written.
func (d dimension) wanted() string {
	if len(d.units) == 0 {
		return "a decimal number such as " + d.example
	}
	return "such as " + d.example + "; units: " + strings.Join(d.names(), ", ")
}

// wrongUnit says what a unit is that does not belong to d.
func wrongUnit(name string, d dimension) string {
	for _, other := range dimensions {
		if _, ok := other.unit(name); ok {
			return shown(name) + " is the unit of " + other.noun + ", not of " + d.noun
		}
	}
	return shown(name) + " is not a unit of " + d.noun
}

// scaled gives figure times the factor of its unit as the nearest float64.
func scaled(figure string, u measure) (v float64, problem string) {
	plain, err := strconv.ParseFloat(figure, 64)
	switch {
	case err != nil || math.IsInf(plain, 0):
		return 0, "is too large to be a number here"
	case plain == 0 && strings.ContainsAny(mantissa(figure), "123456789"):
		return 0, "is too small to be a number here"
	case plain == 0:
		return 0, "" // without the sign of -0
	case u.factor != "" && u.factor != "1":
		r, ok := new(big.Rat).SetString(figure)
		if !ok {
			return 0, "is not a decimal number"
		}
		if plain, _ = r.Mul(r, u.ratio()).Float64(); math.IsInf(plain, 0) {
			return 0, "is too large to be a number here"
		}
	}
	return plain, ""
}

func mantissa(figure string) string {
	m, _, _ := strings.Cut(strings.ToLower(figure), "e")
	return m
}

// cutNumber splits a text behind the decimal number it starts with: a sign,
// digits with at most one point, a power of ten. figure is empty if there is none.
func cutNumber(s string) (figure, rest string) {
	i := 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	digits := func() (n int) {
		for ; i < len(s) && s[i] >= '0' && s[i] <= '9'; i++ {
			n++
		}
		return n
	}
	n := digits()
	if i < len(s) && s[i] == '.' {
		i++
		n += digits()
	}
	if n == 0 {
		return "", s
	}
	end := i
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		i++
		if i < len(s) && (s[i] == '+' || s[i] == '-') {
			i++
		}
		if digits() > 0 {
			end = i
		}
	}
	return s[:end], s[end:]
}

// figureFault says why a text split by cutNumber is not read as a number, and
// how it would be; want is empty where the dimension knows best.
func figureFault(figure, rest string) (problem, want string) {
	digits := strings.TrimLeft(figure, "+-")
	switch {
	case figure == "":
		bare := strings.ToLower(strings.TrimLeft(rest, "+-."))
		if slices.Contains([]string{"nan", "inf", "infinity"}, bare) {
			return "is nothing that can be measured", "a finite number"
		}
		return "is not a number", ""
	case len(figure) > longestNumber:
		return "has too many digits", strconv.Itoa(longestNumber) + " characters at most"
	case len(rest) > 1 && rest[0] == ',' && rest[1] >= '0' && rest[1] <= '9':
		return "has a comma", "a decimal point: " + figure + "." + shown(rest[1:])
	case len(digits) > 1 && digits[0] == '0' && digits[1] >= '0' && digits[1] <= '9':
		return "has a leading zero and could be read in two ways", "a decimal number without it"
	case rest != "" && (rest[0] == '_' || rest[0] == '.' || rest[0] == ':' || rest[0] == '/' || digits == "0" &&
		strings.Contains("xXoObB", rest[:1]) && len(rest) > 1 && rest[1] >= '0' && rest[1] <= '9'):
		return "is not a decimal number", "such as 1000.5"
	}
	return "", ""
}

// Length reads a length from a command line as a file in the same units would hold it, and
// gives it in mm. field is where it stands, for the error.
func Length(field, text string, units Units) (float64, error) {
	d, _ := dimensionOf("mm")
	v, wrong, _ := quantity(text, false, d, units)
	if wrong != nil {
		wrong.Field = field
		return 0, *wrong
	}
	return v, nil
}

// CutUnit splits a text behind its decimal number and gives both without the room round
// them; number is empty if there is none.
func CutUnit(text string) (number, name string) {
	number, name = cutNumber(strings.TrimSpace(text))
	return number, strings.TrimSpace(name)
}
