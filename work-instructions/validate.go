package workinstructions

import (
	"errors"
	"fmt"
	"image"
	"math"
	"reflect"
	"strings"
	"time"
	"unicode/utf8"

	"ramnest/export/page"
	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/method"
)

// How much a sheet can hold: texts in characters, so that every page keeps its
// shape, and numbers of things.
const (
	MostName     = 400  // names, captions and other short texts
	MostText     = 2000 // remarks, lines of the bench list
	MostHead     = 60   // job number, revision, fingerprint, tool, author: in the title block of every page
	MostOverride = 600  // the reason on every page
	MostSteps    = 50
	MostLatches  = 500 // of one step
	MostList     = 500 // parts, tools, remarks of a kind
	MostCurve    = 20000
)

// largest is the largest number that is printed [any unit].
const largest = 1e9

// Validate returns everything wrong with the sheet; then Write writes nothing.
func (s Sheet) Validate() []fault.Fault {
	var v checker
	if s.Paper != "" && s.Paper != A4 && s.Paper != Letter {
		v.fault("paper", string(s.Paper), "is no format of this sheet", "A4 or Letter")
	}
	if !s.Language.Known() {
		v.fault("language", string(s.Language), "has no words in the catalogue", "en, de, es, fr or pl")
	}
	v.text("job", s.Job, MostHead, true)
	v.text("title", s.Title, MostName, true)
	v.text("revision", s.Revision, MostHead, true)
	v.text("author", s.Author, MostHead, false)
	v.text("fingerprint", s.Fingerprint, MostHead, true)
	v.text("tool", s.Tool, MostHead, true)
	v.text("override", s.Override, MostOverride, false)
	if s.Date.IsZero() || s.Date.Year() < 1 || s.Date.Year() > 9999 {
		v.fault("date", "", "is missing", "the date of the job")
	}
	if s.Quantity < 0 || s.Quantity > largest {
		v.fault("quantity", fmt.Sprint(s.Quantity), "is out of range", "0 (not stated) to 1e9")
	}
	v.texts("bench", s.Bench)
	v.most("warnings", len(s.Warnings), MostList)
	for i, w := range s.Warnings {
		v.text(fmt.Sprintf("warnings[%d].about", i), w.About, MostName, false)
		v.text(fmt.Sprintf("warnings[%d].text", i), w.Text, MostText, true)
	}
	v.texts("notes", s.Notes)
	v.most("parts", len(s.Parts), MostList)
	for i, p := range s.Parts {
		v.part(fmt.Sprintf("parts[%d]", i), p, len(s.Steps))
	}
	v.most("tooling", len(s.Tooling), MostList)
	for i, t := range s.Tooling {
		v.tool(fmt.Sprintf("tooling[%d]", i), t, len(s.Steps))
	}
	if len(s.Steps) == 0 {
		v.fault("steps", "", "there is nothing to do", "one press step or more")
	}
	v.most("steps", len(s.Steps), MostSteps)
	overridden := false
	for i, st := range s.Steps {
		v.step(fmt.Sprintf("steps[%d]", i), st)
		overridden = overridden || st.Decision.Overridden || st.Facts.Overridden
	}
	switch {
	case overridden && strings.TrimSpace(s.Override) == "":
		v.fault("override", "", "is empty, but a step uses a method that fails", "the reason, printed on every page")
	case !overridden && s.Override != "":
		v.fault("override", s.Override, "is given, but no step uses a method that fails", "leave it out")
	}
	v.numbers("", reflect.ValueOf(s))
	return v.faults
}

// checker gathers faults.
type checker struct{ faults []fault.Fault }

func (v *checker) fault(field, given, problem, want string) {
	if r := []rune(given); len(r) > 60 {
		given = string(r[:60]) + "…"
	}
	v.faults = append(v.faults, fault.Fault{Field: field, Given: given, Problem: problem, Want: want})
}

func (v *checker) text(field, s string, most int, required bool) {
	n := utf8.RuneCountInString(s)
	switch {
	case required && strings.TrimSpace(s) == "":
		v.fault(field, "", "is empty", "a text")
	case n > most:
		v.fault(field, s, fmt.Sprintf("has %d characters", n), fmt.Sprintf("at most %d", most))
	}
}

func (v *checker) texts(field string, list []string) {
	v.most(field, len(list), MostList)
	for i, s := range list {
		v.text(fmt.Sprintf("%s[%d]", field, i), s, MostText, true)
	}
}

func (v *checker) most(field string, n, most int) {
	if n > most {
		v.fault(field, fmt.Sprint(n), "are too many for one sheet", fmt.Sprintf("at most %d", most))
	}
}

func (v *checker) part(at string, p Part, steps int) {
	v.text(at+".name", p.Name, MostName, true)
	v.text(at+".material", p.Material, MostName, false)
	v.text(at+".process", p.Process, MostName, false)
	if p.Role != Lower && p.Role != Upper {
		v.fault(at+".role", string(p.Role), "is no role of a part", "lower or upper")
	}
	if p.Count < 1 || p.Count > largest {
		v.fault(at+".count", fmt.Sprint(p.Count), "is out of range", "1 or more for one assembly")
	}
	if p.Step < 0 || p.Step > steps {
		v.fault(at+".step", fmt.Sprint(p.Step), "there is no such step", fmt.Sprintf("1 to %d, or 0 if not stated", steps))
	}
}

func (v *checker) tool(at string, t Tool, steps int) {
	v.text(at+".name", t.Name, MostName, true)
	v.text(at+".mark", t.Mark, MostName, false)
	v.text(at+".material", t.Material, MostName, false)
	v.text(at+".process", t.Process, MostHead, false)
	for _, n := range t.Size {
		if !(n > 0) {
			v.fault(at+".size", fmt.Sprintf("%g mm", n), "must be above 0", "")
			break
		}
	}
	if t.Mass < 0 {
		v.fault(at+".mass", fmt.Sprintf("%g kg", t.Mass), "must be 0 (not known) or more", "")
	}
	for _, k := range t.Steps {
		if k < 1 || k > steps {
			v.fault(at+".steps", fmt.Sprint(k), "there is no such step", fmt.Sprintf("1 to %d", steps))
		}
	}
}

func (v *checker) step(at string, s Step) {
	for _, t := range []struct{ name, text string }{{"name", s.Name}, {"lower", s.Lower}, {"upper", s.Upper}, {"nest", s.Nest}} {
		v.text(at+"."+t.name, t.text, MostName, true)
	}
	v.text(at+".anvil", s.Anvil, MostName, s.Decision.Chosen != method.ByHand)
	if s.Facts.AnvilHeld && s.Anvil == "" {
		v.fault(at+".facts.anvil_held", "", "is set, but no anvil is named", "the name of the anvil")
	}
	v.decision(at+".decision", s)
	v.force(at+".force", s.Force)
	v.most(at+".latches", len(s.Latches), MostLatches)
	for i, l := range s.Latches {
		v.latch(fmt.Sprintf("%s.latches[%d]", at, i), l)
	}
	switch g := s.Seat; {
	case gapWords[g.Kind][0] == "":
		v.fault(at+".seat.kind", string(g.Kind), "is no kind of gap", "empty, height, depth, pair or anvil")
	case g.Where == "" && g.Kind != UnderAnvil:
		v.text(at+".seat.between[0]", g.Between[0], MostName, true)
		v.text(at+".seat.between[1]", g.Between[1], MostName, true)
	}
	v.text(at+".seat.where", s.Seat.Where, MostName, false)
	v.text(at+".seat.what", s.Seat.What, MostName, false)
	v.text(at+".seat.gauge", s.Seat.Gauge, MostName, false)
	v.notBelowZero(at+".seat.low", s.Seat.Low)
	v.notBelowZero(at+".seat.high", s.Seat.High)
	if !(s.Seat.Low >= 0.01 || s.Seat.High >= 0.01) || s.Seat.High > 0 && !(s.Seat.High-s.Seat.Low >= 0.01) {
		v.fault(at+".seat", fmt.Sprintf("%g to %g mm", s.Seat.Low, s.Seat.High), "are no limits that can be measured",
			"0.01 mm apart or more, 0 for any")
	}
	if g := s.Seat; g.First < 0 || g.Each < 0 || (g.First > 0) != (g.Each > 0) {
		v.fault(at+".seat.each", fmt.Sprintf("first %d, one in %d", g.First, g.Each), "is no plan", "both above 0, or none")
	}
	v.notBelowZero(at+".seat.alone[0]", s.Seat.Alone[0])
	v.notBelowZero(at+".seat.alone[1]", s.Seat.Alone[1])
	for _, n := range []struct {
		name  string
		value float64
	}{{"usable", s.Usable}, {"lever", s.Lever}, {"pull", s.Pull}, {"facts.tool_mass_kg", s.Facts.ToolMassKg}, {"facts.rated_force",
		s.Facts.RatedForce}, {"facts.worst_force", s.Facts.WorstForce}} {
		v.notBelowZero(at+"."+n.name, n.value)
	}
	p := s.Pictures
	for i, l := range p.Layers {
		if !(l[0] >= 0 && l[0] <= 1 && l[1] >= 0 && l[1] <= 1) {
			v.fault(fmt.Sprintf("%s.pictures.layers[%d]", at, i), fmt.Sprint(l), "lies outside the picture", "0 to 1")
		}
	}
	for i, pic := range []Picture{p.Load, p.Place, p.Anvil, p.Press, p.Section, p.Plan, p.Exploded} {
		v.text(at+".pictures."+[]string{"load", "place", "anvil", "press", "section", "plan", "exploded"}[i], pic.Caption, MostName, false)
	}
}

func (v *checker) notBelowZero(field string, n float64) {
	if n < 0 {
		v.fault(field, fmt.Sprintf("%g", n), "must be 0 (not known) or more", "")
	}
}

func (v *checker) decision(at string, s Step) {
	d := s.Decision
	switch d.Chosen {
	case method.ByHand, method.ByMallet, method.ByPress:
	case method.None:
		v.fault(at+".chosen", string(d.Chosen), "there is no sheet where no method is good enough", "hand, mallet or press")
		return
	default:
		v.fault(at+".chosen", string(d.Chosen), "is no method", "hand, mallet or press")
		return
	}
	if m := s.Facts.Method; m != "" && m != d.Chosen {
		v.fault(at+".chosen", string(d.Chosen), "differs from the method of the facts, "+string(m), "the same, or no method in the facts")
	}
	for _, o := range d.Options {
		if o.Verdict != method.Pass && o.Verdict != method.Conditional && o.Verdict != method.Fail {
			v.fault(at+".options", string(o.Verdict), "is no verdict", "pass, conditional or fail")
			return
		}
	}
	a := s.chosen()
	switch {
	case a == nil:
		v.fault(at+".options", "", "have no assessment of the chosen method", "the assessment of "+string(d.Chosen))
	case a.Verdict == method.Fail && !d.Overridden && !s.Facts.Overridden:
		v.fault(at+".chosen", string(d.Chosen), "fails its assessment and is not overridden", "a method that passes")
	case a.Verdict != method.Fail && d.Overridden:
		v.fault(at+".overridden", "", "is set, but the method does not fail", "leave it out")
	case d.Chosen == method.ByPress && a.Press == nil:
		v.fault(at+".options", "", "name no press", "the press that was assessed")
	case d.Chosen == method.ByPress && !(a.Press.Rated > 0):
		v.fault(at+".options", fmt.Sprintf("%g N", a.Press.Rated), "is no rated force of a press", "above 0 N")
	case d.Chosen == method.ByMallet && a.Mallet == nil:
		v.fault(at+".options", "", "name no mallet", "the mallet that was assessed")
	}
	v.most(at+".options", len(d.Options), 10)
	for _, o := range d.Options {
		v.most(at+".options", len(o.Limits), 100)
		v.text(at+".options", o.Hand+o.Governing, MostName, false)
	}
}

func (v *checker) force(at string, f Force) {
	if !(f.Design > 0) {
		v.fault(at+".design", fmt.Sprintf("%g N", f.Design), "must be above 0", "the force for which the method was chosen")
	}
	for _, n := range []struct {
		name  string
		value float64
	}{{"peak", f.Peak}, {"p5", f.P5}, {"p50", f.P50}, {"p95", f.P95}, {"worst", f.Worst}, {"seat", f.Seat}, {"stroke", f.Stroke}, {"work",
		f.Work}, {"humps", float64(f.Humps)}} {
		v.notBelowZero(at+"."+n.name, n.value)
	}
	if !(f.Jammed >= 0 && f.Jammed <= force.JamsForP95) {
		v.fault(at+".jammed", fmt.Sprint(f.Jammed), "is no share that has a design force", fmt.Sprintf("0 to %g", force.JamsForP95))
	}
	if f.P5 > f.P50 && f.P50 > 0 || f.P50 > f.P95 && f.P95 > 0 || f.P5 > f.P95 && f.P95 > 0 {
		v.fault(at+".p50", fmt.Sprintf("P5 %g, P50 %g, P95 %g N", f.P5, f.P50, f.P95), "are not in order", "P5 up to P50 up to P95")
	}
	v.most(at+".humps", f.Humps, 10000)
	v.most(at+".curve", len(f.Curve), MostCurve)
	for i, p := range f.Curve {
		if p[1] < 0 || i > 0 && p[0] > f.Curve[i-1][0] {
			v.fault(fmt.Sprintf("%s.curve[%d]", at, i), fmt.Sprintf("lift %g mm, force %g N", p[0], p[1]), "does not belong to a stroke",
				"lift falling, force 0 or more")
			break
		}
	}
	if n := len(f.Curve); n > 1 && !(f.Curve[0][0]-f.Curve[n-1][0] > 1e-6) {
		v.fault(at+".curve", "", "has no stroke", "lift falling")
	}
}

func (v *checker) latch(at string, l Latch) {
	v.text(at+".id", l.ID, MostName, true)
	v.text(at+".kind", l.Kind, MostHead, true)
	if l.Count < 1 || l.Count > largest {
		v.fault(at+".count", fmt.Sprint(l.Count), "is out of range", "1 or more")
	}
	v.notBelowZero(at+".peak_each", l.PeakEach)
	v.notBelowZero(at+".strain", l.Strain)
	v.notBelowZero(at+".permitted", l.Permitted)
	v.notBelowZero(at+".separation", l.Separation)
}

var (
	timeType  = reflect.TypeFor[time.Time]()
	imageType = reflect.TypeFor[image.Image]()
)

// numbers looks at every number of the sheet, and at every picture.
func (v *checker) numbers(at string, x reflect.Value) {
	switch x.Kind() {
	case reflect.Float64:
		if n := x.Float(); math.IsNaN(n) || math.Abs(n) > largest {
			v.fault(at, fmt.Sprint(n), "is no number that can be printed", "-1e9 to 1e9")
		}
	case reflect.Slice, reflect.Array:
		for i := range x.Len() {
			v.numbers(fmt.Sprintf("%s[%d]", at, i), x.Index(i))
		}
	case reflect.Pointer:
		if !x.IsNil() {
			v.numbers(at, x.Elem())
		}
	case reflect.Interface:
		if x.Type() == imageType {
			if img, _ := x.Interface().(image.Image); !page.Blank(img) && !page.Sound(img) {
				v.fault(at, "", "is a picture that cannot be printed", "1 to 8192 pixels a side, each with a colour")
			}
		}
	case reflect.Struct:
		if x.Type() == timeType {
			return
		}
		for i := range x.NumField() {
			name := snake(x.Type().Field(i).Name)
			if at != "" {
				name = at + "." + name
			}
			v.numbers(name, x.Field(i))
		}
	}
}

// snake writes a field's name as the job file would.
func snake(s string) string {
	var b strings.Builder
	for i, r := range s {
		if r >= 'A' && r <= 'Z' {
			if i > 0 && s[i-1] >= 'a' && s[i-1] <= 'z' {
				b.WriteByte('_')
			}
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}

// join makes one error of faults, nil of none.
func join(faults []fault.Fault) error {
	errs := make([]error, len(faults))
	for i, f := range faults {
		errs[i] = f
	}
	return errors.Join(errs...)
}
