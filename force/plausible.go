package force

import (
	"fmt"
	"strings"

	"ramnest/force/fault"
	"ramnest/force/unit"
)

// What a person wrote is held against what is published for that material, process
// or kind of latch: a modulus of 2 for 2 GPa would give 3 N and a hand. A figure
// under `materials` that names its source counts as measured and is believed.

const (
	doubtful     = 1.5 // times beyond a published range from which a figure is warned of [1]; own
	unbelievable = 5.0 // and from which it is refused [1]; own
)

// unitSlip is the ratio from which a figure is taken for one in another unit [1]; the
// least that units differ by here is 6.9; own.
const unitSlip = 2.5

// A doubt is a figure outside what is published.
type doubt struct {
	field  string  // path below the assembly
	what   string  // "modulus"
	of     string  // "PA12 by PBF"
	v      float64 // in the unit
	lo, hi float64 // published
	unit   string  // "MPa", "mm", "%" or none
	mark   Mark
	shop   bool // stated in the shop's own table, without a source
}

// times is how far the figure lies outside its range, as a ratio; 1 is inside.
func (d doubt) times() float64 {
	switch {
	case d.v > d.hi:
		return d.v / d.hi
	case d.v < d.lo && d.v > 0:
		return d.lo / d.v
	}
	return 1
}

// text says how far off the figure is and what unit was probably meant.
func (d doubt) text() unit.Text {
	side := "above"
	if d.v < d.lo {
		side = "below"
	}
	known := "published"
	if d.mark == MarkPractice {
		known = "usual"
	}
	times := fmt.Sprintf("%.2g", d.times())
	if d.times() > 9.9 {
		times = fmt.Sprintf("%.0f", d.times())
	}
	lo := d.figure(d.lo)
	lo.Bare = true
	out := unit.Textf("is %s times %s what is %s for %s, %v to %v [%s]", times, side, known, d.of, lo, d.figure(d.hi), d.mark)
	if meant := meantUnit(d.v, d.lo, d.hi, d.unit); meant != "" && d.times() > unitSlip {
		out = out.Plus(": ", meant)
	}
	return out
}

func (d doubt) figure(v float64) unit.Figure { return unit.Kind(d.unit).Of(v).To(6) }

func (d doubt) fault() fault.Fault {
	want := "another value"
	switch {
	case d.shop:
		want = "another value, or its source beside it if it was measured"
	case d.unit != "mm" && !strings.HasPrefix(d.field, "latches"):
		want = "another value, or this one under materials with its source if it was measured"
	}
	given := d.figure(d.v).String()
	if d.unit == "" && d.what != "friction" {
		given = d.what + " " + given // a ratio, which no key has by itself
	}
	return fault.Fault{Field: d.field, Given: given, Problem: d.text().String(), Want: want}
}

// otherUnits are the units that are mistaken for ours: v of them are factor v of ours.
var otherUnits = map[string][]struct {
	name   string
	factor float64
}{
	"MPa": {{"GPa", 1000}, {"ksi", 1000 * psi}, {"psi", psi}, {"kPa", 1e-3}, {"Pa", 1e-6}},
	"mm":  {{"in", unit.Inch}, {"cm", 10}, {"m", 1000}, {"um", 1e-3}},
	"%":   {{"as a share", 100}},
}

const psi = unit.PoundForce / unit.Inch / unit.Inch // [MPa]

// meantUnit says in which other unit the figure would lie in its range; empty if in
// none.
func meantUnit(v, lo, hi float64, of string) string {
	lo, hi = lo/doubtful, hi*doubtful
	for _, u := range otherUnits[of] {
		if within(v*u.factor, lo, hi) {
			out := fmt.Sprintf("%s %s is %s %s", short(v), u.name, short(v*u.factor), of)
			if u.name == "GPa" {
				out += "; likewise ksi for psi"
			}
			return out
		}
	}
	// The other way: millimetres in a job of inches.
	if of == "mm" && within(v/unit.Inch, lo, hi) {
		return fmt.Sprintf("that is %s in, perhaps %[1]s mm is meant", short(v/unit.Inch))
	}
	return ""
}

// short writes a figure with four digits, whole from a thousand on.
func short(v float64) string {
	if v >= 1000 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.4g", v)
}

// Implausible gives the figures and sizes that lie so far outside what is published
// that they are taken for slips, field paths below the assembly, or "materials" for
// those of the shop's table. It is for what a person wrote; [Analyse] itself only
// warns, since a study may go anywhere. The assembly must be valid.
func (a Assembly) Implausible() []fault.Fault {
	var out []fault.Fault
	for _, d := range a.doubts() {
		if d.times() > unbelievable {
			out = append(out, d.fault())
		}
	}
	return out
}

// doubts lists what lies outside its range, by however little.
func (a Assembly) doubts() []doubt {
	var out []doubt
	for _, p := range []struct {
		side       string
		spec, mate MaterialSpec
	}{{"lower", a.Lower, a.Upper}, {"upper", a.Upper, a.Lower}} {
		out = append(out, a.Shop.doubts(p.side, p.spec, &p.mate)...)
	}
	for i, l := range a.Latches {
		out = append(out, sizeDoubts(fmt.Sprintf("latches[%d]", i), l)...)
	}
	return out
}

// Implausible is [Assembly.Implausible] for one material by itself, as that of
// tooling; field paths below the spec.
func (s Shop) Implausible(spec MaterialSpec) []fault.Fault {
	var out []fault.Fault
	for _, d := range s.doubts("", spec, nil) {
		if d.times() > unbelievable {
			out = append(out, d.fault())
		}
	}
	return out
}

// doubts judges the figures of one part. The friction is that of the pair, so the
// mate's range counts too.
func (s Shop) doubts(side string, spec MaterialSpec, mate *MaterialSpec) []doubt {
	m, faults := s.Resolve(spec)
	if len(faults) > 0 {
		return nil
	}
	var line ShopMaterial
	name, shop := s.find(spec.Material)
	if shop {
		line = s[name]
	}
	var out []doubt
	base, process := s.published(spec)
	for _, f := range judged {
		r, ok := plausibleFor(base, process, f.of)
		if !ok {
			continue
		}
		d := doubt{what: f.what, of: m.Name + " by " + process, unit: f.unit, mark: r.mark, lo: r.lo, hi: r.hi}
		if process == "moulded" || process == "machined" {
			d.of = process + " " + m.Name
		}
		if f.low != nil {
			d.lo *= f.low(process)
		}
		if mate != nil && f.of == "friction" {
			if o, ok := plausibleFor(s.mateOf(*mate)); ok {
				d.lo, d.hi = min(d.lo, o.lo), max(d.hi, o.hi)
			}
		}
		scale := 1.0
		if f.unit == "%" {
			scale = 100
		}
		d.lo, d.hi = scale*d.lo, scale*d.hi
		stated, own := f.get(&spec.Figures), f.get(&line.Figures)
		if own != nil && line.Source != "" {
			d.lo, d.hi = min(d.lo, scale**own), max(d.hi, scale**own)
		}
		switch {
		case stated != nil:
			d.v, d.field = scale**stated, strings.TrimPrefix(side+"."+f.key, ".")
		case own != nil:
			d.v, d.field, d.shop = scale**own, "materials."+name+"."+f.key, true
		default:
			continue
		}
		if d.times() > 1 {
			out = append(out, d)
		}
	}
	return out
}

// published gives the built-in material and process whose ranges count for a spec.
func (s Shop) published(spec MaterialSpec) (material, process string) {
	material, process = spec.Material, spec.Process
	if name, ok := s.find(material); ok {
		material = s[name].Like
		if s[name].Process != "" {
			process = s[name].Process
		}
	}
	if r, ok, _ := findRow(material, process); ok {
		return r.name, r.process
	}
	return material, process
}

// mateOf is published for the friction of the mate.
func (s Shop) mateOf(mate MaterialSpec) (material, process, figure string) {
	material, process = s.published(mate)
	return material, process, "friction"
}

// judged are the figures of a material that are held against the table.
var judged = []struct {
	key, what string
	of        string // figure of the table
	unit      string
	low       func(process string) float64 // how much lower it may be than the table's
	get       func(*Figures) *float64
}{
	{"modulus", "modulus", "modulus", "MPa", nil, func(f *Figures) *float64 { return f.Modulus }},
	{"strength", "strength", "strength", "MPa", nil, func(f *Figures) *float64 { return f.Strength }},
	{"strength_z", "strength across the layers", "strength", "MPa", leastAcross, func(f *Figures) *float64 { return f.StrengthZ }},
	{"friction", "friction", "friction", "", nil, func(f *Figures) *float64 { return f.Friction }},
	{"strain_once", "permitted strain", "strain", "%", nil, func(f *Figures) *float64 { return f.StrainOnce }},
	{"strain_repeated", "permitted repeated strain", "strain", "%", repeated, func(f *Figures) *float64 { return f.StrainRepeated }},
	{"strain_once_z", "permitted strain across the layers", "strain", "%", leastAcross, func(f *Figures) *float64 { return f.StrainOnceZ }},
	{"strain_repeated_z", "permitted repeated strain across the layers", "strain", "%",
		func(p string) float64 { return repeatFactor * leastAcross(p) }, func(f *Figures) *float64 { return f.StrainRepeatedZ }},
}

func repeated(string) float64 { return repeatFactor }

// leastAcross is the least published share of strength across the layers over that
// in them [1]: of 30 extruded filaments (read); powder bed and resin common practice,
// no source.
func leastAcross(process string) float64 {
	switch process {
	case "MEX":
		return 0.13
	case "PBF":
		return 0.5
	case "VPP":
		return 0.8
	}
	return 1
}

// sizeDoubts judges the sizes of one latch.
func sizeDoubts(at string, l Latch) []doubt {
	var out []doubt
	k := l.Joint()
	for _, s := range k.usual() {
		if !(s.v > 0) {
			continue
		}
		d := doubt{field: at + "." + l.Kind() + "." + k.writtenAs(s.key), what: s.what, of: s.of, v: s.v, lo: s.lo, hi: s.hi, unit: s.unit,
			mark: s.mark}
		if d.times() > 1 {
			out = append(out, d)
		}
	}
	return out
}

// warnDoubts warns of what lies far outside its range.
func (a Assembly) warnDoubts(add func(n int, format string, v ...any)) {
	for _, d := range a.doubts() {
		if d.times() <= doubtful {
			continue
		}
		who, number := strings.TrimSuffix(d.field, d.field[strings.LastIndex(d.field, "."):]), warnUnlikelyFigure
		var i int
		if n, _ := fmt.Sscanf(d.field, "latches[%d]", &i); n == 1 {
			who, number = a.Latches[i].ID, warnUnlikelySize
		}
		add(number, "%s: %s %v %v", who, d.what, d.figure(d.v), d.text())
	}
}
