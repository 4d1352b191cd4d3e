package unit

import (
	"math"
	"strconv"
	"strings"
)

// Digits is how a figure is rounded: a count of digits that tell something, at least 1, or
// one of the two below. 0 is three digits.
type Digits int

// Lengths as a shop reads them off, to a place behind the point.
const (
	Shop Digits = -1 // a rule or a caliper: to 0.1 mm or 0.001 in
	Fine Digits = -2 // a feeler gauge: to 0.01 mm or 0.001 in
	Grid Digits = -3 // what is drawn: to 0.001 mm or 0.0001 in
)

// A Figure is a value on its way to paper.
type Figure struct {
	Value  float64 // in the unit of its kind
	Kind   Kind
	Digits Digits
	Bare   bool // without its unit, which stands behind the figure that follows
}

// Of makes a figure of a kind, with three digits.
func (k Kind) Of(v float64) Figure { return Figure{Value: v, Kind: k} }

// To gives the figure with other digits.
func (f Figure) To(d Digits) Figure { f.Digits = d; return f }

// A Writer puts a number into the way of a language: 1.5 becomes 1,5. nil leaves it.
type Writer func(string) string

// Text gives the figure with its unit, in the units of a job.
func (f Figure) Text(s System, w Writer) string {
	number, name := f.Number(s, w), f.unit(s)
	if f.Bare || name == "" {
		return number
	}
	return number + " " + name
}

// unit names the unit that the figure is shown in.
func (f Figure) unit(s System) string { _, name := s.In(f.Value, f.Kind); return name }

// Number gives the figure without its unit, for a column that names it.
func (f Figure) Number(s System, w Writer) string {
	v, _ := s.In(f.Value, f.Kind)
	text := ""
	switch {
	case f.Digits < 0:
		places := -int(f.Digits)
		if s.Inch && f.Kind == Length {
			places = max(3, places+1)
		}
		text = fixed(v, places)
	case f.Digits == 0:
		text = rounded(v, 3)
	default:
		text = rounded(v, int(f.Digits))
	}
	if w != nil {
		return w(text)
	}
	return text
}

// String gives the figure in the units of the rooms.
func (f Figure) String() string { return f.Text(System{}, nil) }

// Short writes a number with three digits, or whole from a hundred on.
func Short(v float64) string { return rounded(v, 3) }

// rounded writes a number with so many digits, whole where the point stands behind them,
// without zeros that say nothing.
func rounded(v float64, digits int) string {
	if math.Abs(v) >= math.Pow10(digits-1)*(1-0.5*math.Pow10(-digits)) {
		return fixed(v, 0)
	}
	s := strconv.FormatFloat(v, 'g', digits, 64)
	if x, err := strconv.ParseFloat(s, 64); err == nil {
		s = strconv.FormatFloat(x+0, 'f', -1, 64)
	}
	return s
}

// fixed writes a number with so many places behind the point, and no minus before a zero.
func fixed(v float64, places int) string {
	s := strconv.FormatFloat(v, 'f', places, 64)
	if strings.HasPrefix(s, "-") && strings.Trim(s, "-0.") == "" {
		return s[1:]
	}
	return s
}

// Inward gives the figure, or the nearest one below it that its places show; up turns to
// the nearest above: a limit that is printed is never wider than the one that was worked
// out. Digits must be one of the places, such as Fine.
func (f Figure) Inward(s System, up bool) Figure {
	one := s.One(f.Kind)
	p := -int(f.Digits)
	if s.Inch && f.Kind == Length {
		p = max(3, p+1)
	}
	step := one / math.Pow10(p)
	n := f.Value / step
	if r := math.Round(n); math.Abs(r-n) < 1e-6 { // a round one but for its last bits
		n = r
	}
	if up {
		f.Value = math.Ceil(n) * step
	} else {
		f.Value = math.Floor(n) * step
	}
	return f
}

// Apart gives two figures of a kind with as many digits as it takes to tell them from each
// other in any unit; digits at least. Equal ones have those digits.
func Apart(digits Digits, k Kind, a, b float64) (Figure, Figure) {
	for most := max(math.Abs(a), math.Abs(b)); a != b && digits < 17 && math.Abs(a-b) < most*math.Pow10(1-int(digits)); {
		digits++
	}
	return k.Of(a).To(digits), k.Of(b).To(digits)
}
