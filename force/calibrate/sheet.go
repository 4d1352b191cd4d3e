package calibrate

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/unit"
)

// A Sheet is a fit put on paper: what a shop found of one pair of materials, to be
// used in later jobs. It is the shop's calibration file.
type Sheet struct {
	Source string  `yaml:"source" required:"true"` // where the figures come from, "coupons of week 12"
	Date   string  `yaml:"date" format:"date"`     // when it was measured; left out: not stated
	Lower  Pairing `yaml:"lower" required:"true"`
	Upper  Pairing `yaml:"upper" required:"true"`

	Friction        float64 `yaml:"friction" unit:"none" required:"true"`        // coefficient between the two parts [1]
	FrictionSpread  float64 `yaml:"friction_spread" unit:"pct" required:"true"`  // plus or minus, share of it [1]
	Stiffness       float64 `yaml:"stiffness" unit:"none" required:"true"`       // factor on the modulus of what is no metal, and on the flow stress of ribs [1]
	StiffnessSpread float64 `yaml:"stiffness_spread" unit:"pct" required:"true"` // plus or minus, share of it [1]

	Latches  []Offset `yaml:"latches" required:"true"`
	Measured int      `yaml:"measured" required:"true"` // pairs that were pressed
	Outliers int      `yaml:"outliers"`                 // of them, that hardly count
}

// A Pairing is the material of one part.
type Pairing struct {
	Material string `yaml:"material" required:"true"`
	Process  string `yaml:"process" oneof:"PBF MEX VPP moulded machined" required:"true"`
}

// An Offset is how the size of one latch comes out.
type Offset struct {
	Latch     string  `yaml:"latch" required:"true"`            // its id
	Kind      string  `yaml:"kind" required:"true"`             // the key under which the job states the latch
	Offset    float64 `yaml:"offset" unit:"mm" required:"true"` // how much more its interference comes out than drawn [mm]
	Tolerance float64 `yaml:"tol" unit:"mm" required:"true"`    // plus or minus that is left [mm]; made smaller for what friction and stiffness explain, see [Fit.Sheet]
	Alone     float64 `yaml:"tol_alone" unit:"mm"`              // the same of the offset by itself, for where the latch is home [mm]; left out: as tol
}

// Sheet puts the fit on paper. source says where the figures come from.
//
// Package force draws friction, stiffness and sizes apart, while the fit knows them
// together: what makes the one larger makes the other smaller. So all spreads are
// written smaller by the factor with which the force, drawn apart, scatters as the
// fit says.
func (f *Fit) Sheet(source string) Sheet {
	m := f.model
	together := f.together()
	s := Sheet{Source: source, Lower: Pairing{m.lower.Name, m.lower.Process}, Upper: Pairing{m.upper.Name, m.upper.Process},
		Friction: figures(f.Friction.Value, 4), FrictionSpread: figures(min(0.9, math.Expm1(2*together*logDeviation(f.Friction))), 3),
		Stiffness: figures(f.Stiffness.Value, 4), StiffnessSpread: figures(together*evenSpread(f.Stiffness), 3), Measured: f.Measured}
	for _, r := range f.Residuals {
		if r.Outlier {
			s.Outliers++
		}
	}
	for i, e := range f.Offsets {
		l := &m.latches[i]
		sd := math.Hypot(together*(e.High-e.Low)/3.92, l.own()*f.Scatter.Value)
		alone := math.Hypot((e.High-e.Low)/3.92, l.own()*f.Scatter.Value)
		s.Latches = append(s.Latches, Offset{l.latch.ID, l.latch.Kind(), microns(e.Value), max(0.001, microns(2*sd)),
			max(0.001, microns(2*alone))})
	}
	return s
}

// together is the standard deviation of ln force over the points of the fit, over that
// of its three causes in quadrature, each alone with the others at their medians: the
// largest of the latches, 1 at most.
func (f *Fit) together() float64 {
	m := f.model
	median := make(theta, len(f.points[0]))
	for i := range median {
		_, median[i], _ = f.interval(0.5, 0.5, func(t theta) float64 { return t[i] })
	}
	var out float64
	for i := range m.latches {
		deviation := func(mix func(t, at theta)) float64 {
			var n, sum, squares float64
			for _, t := range f.points {
				at := slices.Clone(median)
				mix(t, at)
				g := m.gripAt(at, i, inJob)
				if p, _ := g.peak(m.latches[i].size.Value + m.offsetOf(at, i)); p > 0 {
					n, sum, squares = n+1, sum+math.Log(p), squares+math.Log(p)*math.Log(p)
				}
			}
			return math.Sqrt(max(0, squares/n-sum*sum/(n*n)))
		}
		all := deviation(func(t, at theta) { copy(at, t) })
		apart := math.Hypot(deviation(func(t, at theta) { at[atFriction] = t[atFriction] }),
			deviation(func(t, at theta) { at[atStiffness] = t[atStiffness] }))
		apart = math.Hypot(apart, deviation(func(t, at theta) { at[atOffset+i] = t[atOffset+i] }))
		if apart > 0 {
			out = max(out, all/apart)
		}
	}
	return min(1, max(0.05, out))
}

// evenSpread is the half width of the even draw that package force makes of a figure,
// with the standard deviation of the estimate [1].
func evenSpread(e Estimate) float64 {
	return min(0.9, math.Sqrt(3)*logDeviation(e))
}

// logDeviation is the standard deviation of ln of an estimate [1]. A friction is drawn
// log-normal, and its spread is the ratio of two of them.
func logDeviation(e Estimate) float64 { return math.Log(e.High/e.Low) / 3.92 }

func microns(v float64) float64 { return math.Round(v*1000) / 1000 }

// figures rounds to so many significant figures.
func figures(v float64, n int) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64)
	if err != nil {
		return v
	}
	return r
}

// Validate returns everything wrong with the sheet.
func (s Sheet) Validate() []fault.Fault {
	var out []fault.Fault
	word := func(field, text string) {
		if strings.TrimSpace(text) == "" || strings.ContainsAny(text, "\n\r") {
			out = append(out, fault.Fault{Field: field, Problem: "is empty or has several lines", Want: "one line of text"})
		}
	}
	number := func(field string, v, lo, hi, shown float64, unit string) {
		if !(v >= lo && v <= hi) {
			out = append(out, fault.Fault{Field: field, Given: fmt.Sprintf("%g%s", v*shown, unit), Problem: "is out of range",
				Want: fmt.Sprintf("%g to %g%s", lo*shown, hi*shown, unit)})
		}
	}
	word("source", s.Source)
	if s.Date != "" {
		if _, err := time.Parse(time.DateOnly, s.Date); err != nil {
			out = append(out, fault.Fault{Field: "date", Given: s.Date, Problem: "is no date", Want: "year-month-day, such as 2026-11-25"})
		}
	}
	for _, p := range []struct {
		name string
		Pairing
	}{{"lower", s.Lower}, {"upper", s.Upper}} {
		word(p.name+".material", p.Material)
		word(p.name+".process", p.Process)
	}
	number("friction", s.Friction, 0.01, 2, 1, "")
	number("friction_spread", s.FrictionSpread, 0, 0.9, 100, " %")
	number("stiffness", s.Stiffness, 0.1, 5, 1, "")
	number("stiffness_spread", s.StiffnessSpread, 0, 0.9, 100, " %")
	if len(s.Latches) == 0 || len(s.Latches) > 100 {
		out = append(out, fault.Fault{Field: "latches", Given: fmt.Sprint(len(s.Latches)), Problem: "is out of range", Want: "1 to 100 latches"})
		return out
	}
	for i, o := range s.Latches {
		field := fmt.Sprintf("latches[%d].", i)
		word(field+"latch", o.Latch)
		word(field+"kind", o.Kind)
		number(field+"offset", o.Offset, -5, 5, 1, " mm")
		number(field+"tol", o.Tolerance, 0, 5, 1, " mm")
		number(field+"tol_alone", o.Alone, 0, 5, 1, " mm")
		if slices.ContainsFunc(s.Latches[:i], func(p Offset) bool { return p.Latch == o.Latch && p.Kind == o.Kind }) {
			out = append(out, fault.Fault{Field: field + "latch", Given: o.Latch, Problem: "is listed twice", Want: "each latch once"})
		}
	}
	return out
}

// A Change is a figure of a job that a sheet replaced, so that nothing happens in
// silence.
type Change struct {
	Field    string // "lower.modulus", "latches[0].annular.undercut"
	Was, Now unit.Text
}

// String is the change in one line, in the units of the rooms.
func (c Change) String() string { return c.Field + ": " + c.Was.String() + " -> " + c.Now.String() }

// Apply gives the assembly as the shop prints it: friction, modulus and the spreads
// of both, and of each latch that was measured its size and tolerance. The changes
// are to be printed with every result; a latch that was not measured is among them.
// It is a fault if the sheet is of other materials.
func (s Sheet) Apply(a force.Assembly) (force.Assembly, []Change, error) {
	faults := append(fault.Under("calibration", s.Validate()), a.Validate()...)
	if len(faults) > 0 {
		return a, nil, joined(faults)
	}
	lower, _ := a.Shop.Resolve(a.Lower)
	upper, _ := a.Shop.Resolve(a.Upper)
	var changes []Change
	tune := func(part string, spec force.MaterialSpec, m force.Material, p Pairing) force.MaterialSpec {
		if !strings.EqualFold(m.Name, p.Material) || m.Process != p.Process {
			faults = append(faults, fault.Fault{Field: part + ".material", Given: m.Name + " " + m.Process, Problem: "is not what was measured",
				Want: p.Material + " " + p.Process + " as in the calibration, or the job without it"})
			return spec
		}
		note := func(field string, was, now float64, k unit.Kind) {
			if was != now {
				changes = append(changes, Change{part + "." + field, unit.Textf("%v", k.Of(was).To(4)), unit.Textf("%v", k.Of(now).To(4))})
			}
		}
		spec.FrictionSpread = new(s.FrictionSpread)
		note("friction_spread", m.FrictionSpread.Value, s.FrictionSpread, unit.Share)
		if !m.Metal() {
			spec.Modulus, spec.ModulusSpread = new(m.Modulus.Value*s.Stiffness), new(s.StiffnessSpread)
			spec.SecantZero = new(m.SecantZero.Value) // what was measured scales the force, not the strain
			note("modulus", m.Modulus.Value, *spec.Modulus, unit.Stress)
			note("modulus_spread", m.ModulusSpread.Value, s.StiffnessSpread, unit.Share)
		}
		spec.Friction = new(s.Friction)
		return spec
	}
	if was := pairFriction(a); was != s.Friction {
		changes = append(changes, Change{"friction between the parts", unit.Textf("%.4g", was), unit.Textf("%.4g", s.Friction)})
	}
	a.Lower, a.Upper = tune("lower", a.Lower, lower, s.Lower), tune("upper", a.Upper, upper, s.Upper)
	a.Latches = slices.Clone(a.Latches)
	for i, l := range a.Latches {
		field := fmt.Sprintf("latches[%d]", i)
		k := slices.IndexFunc(s.Latches, func(o Offset) bool { return o.Latch == l.ID && o.Kind == l.Kind() })
		size := l.Size(lower, upper)
		if k < 0 {
			changes = append(changes, Change{field + " " + l.ID, unit.Textf("%s %v", size.Name, coupon(size.Value)),
				unit.Say("not measured: as drawn")})
			continue
		}
		now := size.Value + s.Latches[k].Offset
		if now <= 0 {
			faults = append(faults, fault.Fault{Field: field, Given: l.ID,
				Problem: fmt.Sprintf("comes out loose: %s of %s as drawn, %s as printed", size.Name, mm(size.Value), mm(now)), Want: "more than " +
					mm(-s.Latches[k].Offset) + " as drawn"})
			continue
		}
		l, key, flow := l.Resized(now, force.Outer).Toleranced(s.Latches[k].Tolerance).Stiffened(lower, upper, s.Stiffness)
		a.Latches[i] = l
		changes = append(changes, Change{field + " " + l.ID,
			unit.Textf("%s %v as drawn, plus or minus %v", size.Name, coupon(size.Value),
				coupon(size.Tolerance())), unit.Textf("%v as printed, plus or minus %v", coupon(now), coupon(s.Latches[k].Tolerance))})
		if key != "" {
			changes = append(changes, Change{field + "." + l.Kind() + "." + key, unit.Textf("%v", unit.Stress.Of(flow/s.Stiffness).To(4)),
				unit.Textf("%v", unit.Stress.Of(flow).To(4))})
		}
	}
	if len(faults) > 0 {
		return a, nil, joined(faults)
	}
	if faults := a.Validate(); len(faults) > 0 {
		return a, nil, fmt.Errorf("with the calibration: %w", joined(faults))
	}
	return a, changes, nil
}

// ShopMaterial gives the sheet as a line of a shop's material table, for a part that
// is no metal. Offsets do not go into it: they belong to a latch, not to a material.
func (s Sheet) ShopMaterial(part force.Material) force.ShopMaterial {
	out := force.ShopMaterial{Like: part.Name, Process: part.Process, Source: s.Source}
	out.Friction, out.FrictionSpread = new(s.Friction), new(s.FrictionSpread)
	if !part.Metal() {
		out.Modulus, out.ModulusSpread = new(figures(part.Modulus.Value*s.Stiffness, 4)), new(s.StiffnessSpread)
	}
	return out
}

// WriteSheet writes the sheet as YAML, the same bytes for the same sheet. It is a
// fault if the sheet has any.
func WriteSheet(w io.Writer, s Sheet) error {
	if faults := s.Validate(); len(faults) > 0 {
		return joined(faults)
	}
	var b strings.Builder
	p := func(format string, v ...any) { fmt.Fprintf(&b, format, v...) }
	num := func(v float64) string { return strconv.FormatFloat(v, 'g', 10, 64) }
	p("# What a shop measured of one pair of materials. Every job that uses it says so.\n\n")
	p("source: %s\n", strconv.Quote(s.Source))
	if s.Date != "" {
		p("date: %s\n", s.Date)
	}
	p("lower: {material: %s, process: %s}\n", strconv.Quote(s.Lower.Material), s.Lower.Process)
	p("upper: {material: %s, process: %s}\n", strconv.Quote(s.Upper.Material), s.Upper.Process)
	p("friction: %s            # coefficient between the two parts\n", num(s.Friction))
	p("friction_spread: %s      # plus or minus, percent\n", num(100*s.FrictionSpread))
	p("stiffness: %s           # factor on the modulus of what is no metal, and on the flow stress of ribs\n", num(s.Stiffness))
	p("stiffness_spread: %s     # plus or minus, percent\n", num(100*s.StiffnessSpread))
	p("latches:\n")
	for _, o := range s.Latches {
		p("  - latch: %s\n    kind: %s\n    offset: %s          # mm more interference than drawn\n    tol: %s             # plus or minus, mm, beside the spreads above\n", strconv.Quote(o.Latch), o.Kind, num(o.Offset), num(o.Tolerance))
		if o.Alone > 0 {
			p("    tol_alone: %s       # plus or minus, mm, by itself\n", num(o.Alone))
		}
	}
	p("measured: %d\noutliers: %d\n", s.Measured, s.Outliers)
	if _, err := io.WriteString(w, b.String()); err != nil {
		return errors.Join(errors.New("write calibration"), err)
	}
	return nil
}
