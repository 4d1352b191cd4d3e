// Package unit is how a figure gets onto paper: a value, what kind of thing it measures and
// how many digits of it count, put into the units of a job by one function. Terminal,
// report, sheet, drawing, offer and preview all take their text from here, so none can
// say another thing than the rest. It imports nothing of ours.
package unit

// A Kind is what a figure measures, by the unit that the rooms keep it in.
type Kind string

// The kinds.
const (
	Length    Kind = "mm"
	Area      Kind = "mm2"
	Bulk      Kind = "mm3"
	Volume    Kind = "cm3"
	Force     Kind = "N"
	Stress    Kind = "MPa"
	Stiffness Kind = "N/mm"
	Energy    Kind = "mJ"
	Moment    Kind = "N mm"
	Mass      Kind = "kg"
	Speed     Kind = "m/s" // a job file knows no other unit of it
	Angle     Kind = "rad" // shown in degrees
	Turn      Kind = "deg"
	Share     Kind = "share" // shown in percent
	Percent   Kind = "%"
	Plain     Kind = ""
)

// What one unit of the inch and pound system is in ours. All by definition: the inch, the
// pound (1959), the standard gravity (1901). Source: NIST SP 811, B.8 (memory).
const (
	Inch       = 25.4            // [mm]
	Pound      = 0.45359237      // [kg]
	Gravity    = 9.80665         // [m/s2]
	PoundForce = Pound * Gravity // [N]
)

// A System is the units that a job is shown in: lengths in inches or mm, forces in
// pounds-force or N. What has a length and a force in it, such as a stress, changes only
// with both.
type System struct{ Inch, Pound bool }

// shown are the units of inch and pound by kind: the name, what one of it is in ours, and
// whether it takes inches, pounds, or both.
var shown = map[Kind]struct {
	name        string
	one         float64
	inch, pound bool
}{
	Length:    {"in", Inch, true, false},
	Area:      {"square in", Inch * Inch, true, false},
	Bulk:      {"cubic in", Inch * Inch * Inch, true, false},
	Volume:    {"cubic in", Inch * Inch * Inch / 1000, true, false},
	Force:     {"lbf", PoundForce, false, true},
	Stress:    {"psi", PoundForce / Inch / Inch, true, true},
	Stiffness: {"lbf/in", PoundForce / Inch, true, true},
	Energy:    {"in-lbf", PoundForce * Inch, true, true},
	Moment:    {"in-lbf", PoundForce * Inch, true, true},
	Mass:      {"lb", Pound, false, true},
}

// house are kinds that are shown under another name, or as another multiple, than the rooms
// keep.
var house = map[Kind]struct {
	name string
	one  float64
}{
	Area: {"square mm", 1}, Bulk: {"cubic mm", 1}, Volume: {"cubic cm", 1}, Angle: {"deg", degree}, Share: {"%", 0.01},
}

const degree = 3.14159265358979323846264338327950288 / 180

// In gives a value of a kind, kept in our unit, in the unit that is shown, and its name.
func (s System) In(v float64, k Kind) (float64, string) {
	if u, ok := shown[k]; ok && (s.Inch || !u.inch) && (s.Pound || !u.pound) {
		return v / u.one, u.name
	}
	if u, ok := house[k]; ok {
		return v / u.one, u.name
	}
	if k == Energy && (v >= 1000 || v <= -1000) {
		return v / 1000, "J"
	}
	return v, string(k)
}

// One gives what one of the unit that is shown is in ours.
func (s System) One(k Kind) float64 { v, _ := s.In(1, k); return 1 / v }

// Name gives the name of the unit that is shown.
func (s System) Name(k Kind) string { _, name := s.In(0, k); return name }
