package force

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
)

// arithmetic evaluates what Line.Numbers writes: an independent small reader of
// + - * / ^, brackets and functions of degrees.
type arithmetic struct {
	s string
	i int
}

func evaluate(s string) (v float64, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%q: %v", s, r)
		}
	}()
	a := &arithmetic{s: strings.ReplaceAll(s, " ", "")}
	v = a.sum()
	if a.i != len(a.s) {
		panic("rest " + a.s[a.i:])
	}
	return v, nil
}

func (a *arithmetic) take(c byte) bool {
	if a.i < len(a.s) && a.s[a.i] == c {
		a.i++
		return true
	}
	return false
}

func (a *arithmetic) sum() float64 {
	v := a.product()
	for {
		switch {
		case a.take('+'):
			v += a.product()
		case a.take('-'):
			v -= a.product()
		default:
			return v
		}
	}
}

func (a *arithmetic) product() float64 {
	v := a.power()
	for {
		switch {
		case a.take('*'):
			v *= a.power()
		case a.take('/'):
			v /= a.power()
		default:
			return v
		}
	}
}

func (a *arithmetic) power() float64 {
	if a.take('-') {
		return -a.power()
	}
	v := a.atom()
	if a.take('^') {
		return math.Pow(v, a.power())
	}
	return v
}

func (a *arithmetic) atom() float64 {
	if a.take('(') {
		v := a.sum()
		if !a.take(')') {
			panic("no closing bracket")
		}
		return v
	}
	start := a.i
	for a.i < len(a.s) && a.s[a.i] >= 'a' && a.s[a.i] <= 'z' {
		a.i++
	}
	if name := a.s[start:a.i]; name != "" {
		if name == "pi" {
			return math.Pi
		}
		v := a.atom()
		r := v * math.Pi / 180
		f, ok := map[string]float64{"sqrt": math.Sqrt(v), "ln": math.Log(v), "exp": math.Exp(v), "sinh": math.Sinh(v), "cosh": math.Cosh(v), "sin": math.Sin(r), "cos": math.Cos(r), "tan": math.Tan(r),
			"atan": math.Atan(v) * 180 / math.Pi, "acos": math.Acos(v) * 180 / math.Pi}[name]
		if !ok {
			panic("unknown " + name)
		}
		return f
	}
	for a.i < len(a.s) && (strings.IndexByte("0123456789.", a.s[a.i]) >= 0 || (a.s[a.i] == 'e' && a.i > start) || (a.s[a.i] == '-' || a.s[a.i] == '+') && a.i > start && a.s[a.i-1] == 'e') {
		a.i++
	}
	v, err := strconv.ParseFloat(a.s[start:a.i], 64)
	if err != nil {
		panic(err)
	}
	return v
}

func TestArithmeticReader(t *testing.T) {
	for s, want := range map[string]float64{"1 + 2*3^2/(4 - 1)": 7, "tan(45)": 1, "2*sqrt(16) - (-3)": 11, "1e-05*2": 2e-5, "atan(1)": 45, "2^0.5^2": math.Pow(2, 0.25)} {
		got, err := evaluate(s)
		if err != nil {
			t.Error(err)
		}
		near(t, s, got, want, 1e-12)
	}
}

// variants adds the shapes and ways of writing that the shared jobs leave out.
func variants() []Assembly {
	out := everyJob()
	inner := collarJob()
	v := inner.Latches[0].Annular
	v.Split, v.SlotDepth = "inner", 12
	pc := capJob()
	pc.Lower, pc.Upper = MaterialSpec{Material: "PC", Process: "moulded"}, MaterialSpec{Material: "PA12", Build: "along"}
	pcBoth := capJob()
	pcBoth.Lower = MaterialSpec{Material: "PC", Process: "moulded"}
	pcBoth.Upper = MaterialSpec{Material: "PC", Process: "MEX"}
	floored := capJob()
	f := floored.Latches[0].Annular
	f.FarEnd, f.FarDistance, f.InnerDiameter = "floored", 5, 0
	short := capJob() // ends near the joint on every side
	f = short.Latches[0].Annular
	f.EndDistance, f.EndDistanceInner, f.FarEnd, f.FarDistance, f.FarEndInner, f.FarDistanceInner = 0.01, ptr(0.3), "free", 1.4, "floored", 1.5
	hollow := capJob() // both parts of PC, the inner far softer: it reaches the top of its line
	hollow.Lower, hollow.Upper = MaterialSpec{Material: "PC", Process: "moulded"}, MaterialSpec{Material: "PC", Process: "moulded"}
	f = hollow.Latches[0].Annular
	f.InnerDiameter, f.Undercut, f.UndercutTol = 39, 4.5, ptr(0.1)
	turned := capJob() // and the outer
	turned.Lower, turned.Upper = hollow.Lower, hollow.Upper
	f = turned.Latches[0].Annular
	f.OuterDiameter, f.Undercut, f.UndercutTol = 40.6, 4.5, ptr(0.1)
	mixedSecant := capJob() // the inner at its top, the outer without a line
	mixedSecant.Upper = MaterialSpec{Material: "PC", Process: "moulded"}
	f = mixedSecant.Latches[0].Annular
	f.InnerDiameter, f.Undercut, f.UndercutTol = 39.4, 4.5, ptr(0.1)
	out = append(out, inner, pc, pcBoth, floored, short, hollow, turned, mixedSecant)

	cone, slotted := ballJob(), ballJob()
	cone.Latches[0].Ball.EntryAngle = ptr(rad(12))
	b := slotted.Latches[0].Ball
	b.Slots, b.SlotWidth, b.SlotDepth = 4, 0.8, 6
	pcBall := ballJob()
	pcBall.Lower = MaterialSpec{Material: "PC", Process: "moulded"}
	softBall := ballJob() // opened past the top of its line
	softBall.Lower = MaterialSpec{Material: "PC", Process: "moulded", Figures: Figures{Friction: ptr(0.2)}}
	softBall.Latches[0].Ball.MouthDiameter = 5.6
	softBall.Lower.SecantZero = ptr(0.1)
	flat := ballJob() // a cone so near the contact angle that the force falls from its end on
	flat.Latches[0].Ball.EntryAngle, flat.Lower.Friction, flat.Upper.Friction = ptr(rad(4)), ptr(0.05), ptr(0.05)
	thick := ballJob() // so few fingers that the ring gives sooner
	thick.Latches[0].Ball.Slots, thick.Latches[0].Ball.SlotWidth, thick.Latches[0].Ball.SlotDepth = 2, 0.2, 2
	out = append(out, cone, slotted, pcBall, softBall, flat, thick)

	arm := func(change func(*Cantilever)) {
		a := armJob()
		change(a.Latches[0].Cantilever)
		out = append(out, a)
	}
	arm(func(c *Cantilever) { c.TipThickness, c.Base = 0, "solid" })
	arm(func(c *Cantilever) { c.TipThickness, c.TipWidth, c.RootRadius = 0, 3, nil })
	arm(func(c *Cantilever) { c.TipThickness, c.BaseFactor = 0.6, ptr(1.3) })
	arm(func(c *Cantilever) { c.TipThickness, c.TipWidth = 0.4, 1 })
	arm(func(c *Cantilever) { c.TipThickness, c.TipWidth = 0.5, 1.5 })
	arm(func(c *Cantilever) { c.TipThickness, c.TipWidth = 1.8, 5 })
	arm(func(c *Cantilever) { c.TipThickness, c.TipWidth = 0, 0.9 })
	arm(func(c *Cantilever) { c.TipThickness = 0.3 })
	arm(func(c *Cantilever) { c.TipThickness, c.LeadIn, c.Land = 0, "mate", 0 })
	arm(func(c *Cantilever) { c.ReturnAngle = rad(85) })
	arm(func(c *Cantilever) { c.Section, c.NarrowWidth, c.Tension = "trapezoid", 4, "wide" })
	arm(func(c *Cantilever) { c.Section, c.NarrowWidth, c.Tension = "trapezoid", 4, "narrow" })
	arm(func(c *Cantilever) {
		c.Section, c.OuterRadius, c.InnerRadius, c.Arc, c.TipThickness = "ring_segment", 12, 10.4, rad(60), 0
	})
	arm(func(c *Cantilever) {
		c.Section, c.OuterRadius, c.InnerRadius, c.Arc, c.TipThickness, c.Bends = "ring_segment", 12, 10.4, rad(60), 0, "inward"
	})
	arm(func(c *Cantilever) { c.Shape, c.TipThickness, c.BaseLength, c.BaseThickness = "l_arm", 0, 8, 2 })
	arm(func(c *Cantilever) { c.Shape, c.TipThickness, c.BaseLength, c.BaseThickness = "l_arm", 0, 8, 1.2 })
	arm(func(c *Cantilever) { c.Shape, c.TipThickness, c.BendRadius = "u_arm", 0, 2.5 })
	arm(func(c *Cantilever) { c.Shape, c.TipThickness, c.BendRadius, c.BendSide = "u_arm", 0, 2.5, "toward" })
	arm(func(c *Cantilever) {
		c.Shape, c.TipThickness, c.BarRadius, c.BarLength = "rocker", 0, 1.2, 8
		c.Thickness, c.Width = 0, 0
	})
	arm(func(c *Cantilever) {
		c.Shape, c.TipThickness, c.BarRadius, c.BarLength, c.Bars, c.BaseFactor = "rocker", 0, 1.2, 8, 1, ptr(1.4)
		c.Thickness, c.Width = 0, 0
	})

	bent, sharp, slim := leverJob(), leverJob(), leverJob()
	bent.Latches[0].Torsional.Thickness, bent.Latches[0].Torsional.Width = 3, 4
	sharp.Latches[0].Torsional.RootRadius, sharp.Latches[0].Torsional.Bars, sharp.Latches[0].Torsional.Land = nil, 1, 0
	lever := slim.Latches[0].Torsional // strained most in its lever, on bars with large fillets
	lever.Thickness, lever.Width, lever.BarRadius, lever.RootRadius, lever.PushLength = 1, 3, 2, ptr(4.0), 0
	out = append(out, bent, sharp, slim)

	diameters, fit, thin := pinJob(), pinJob(), pinJob()
	p := diameters.Latches[0].PressFit
	p.Interference, p.InterferenceTol, p.JointDiameter, p.PinDiameter, p.BoreDiameter, p.PinTol, p.BoreTol = 0, nil, 0, 5.06, 5, ptr(0.005), ptr(0.02)
	p = fit.Latches[0].PressFit
	p.Interference, p.InterferenceTol, p.JointDiameter, p.Fit, p.BoreFinished = 0, nil, 0, "5 H7/s6", true
	p = thin.Latches[0].PressFit
	p.OuterDiameter, p.Interference, p.InnerDiameter, p.LeadInAngle = 6, 0.4, 3, nil
	pcPin := pinJob()
	pcPin.Lower = MaterialSpec{Material: "PC", Process: "moulded"}
	plastic, through := pinJob(), pinJob() // a plastic pin; a boss that ends with the pin
	plastic.Upper = MaterialSpec{Material: "PC", Process: "moulded"}
	through.Latches[0].PressFit.BoreBeyond = ptr(0.0)
	sleeve := pinJob() // a thin sleeve of plastic gives way before the boss
	sleeve.Upper = MaterialSpec{Material: "PA12"}
	sleeve.Latches[0].PressFit.InnerDiameter, sleeve.Latches[0].PressFit.Interference, sleeve.Latches[0].PressFit.EngagementLength = 4.6, 0.3, 4
	rib := ribJob()
	rib.Latches[0].CrushRib.FlowStress, rib.Latches[0].CrushRib.LeadInAngle = ptr(55.0), nil
	metal := pinJob() // steel in steel, which flows
	metal.Lower = MaterialSpec{Material: "steel"}
	return append(out, diameters, fit, thin, pcPin, plastic, through, sleeve, rib, metal)
}

// TestExplainRedoneByHand evaluates the numbers put into every formula of every
// kind and compares them with the value beside them.
func TestExplainRedoneByHand(t *testing.T) {
	for i, a := range variants() {
		if faults := a.Validate(); len(faults) > 0 {
			t.Errorf("variant %d: %v", i, faults)
			continue
		}
		lines := Explain(a, a.Latches[0].ID)
		redone := 0
		for _, l := range lines {
			if l.Symbol == "" || l.Source == "" || l.Mark == "" || l.Unit == "" || !finite(l.Value) || (l.ID != "") != (l.Formula != "") {
				t.Errorf("variant %d: incomplete line %+v", i, l)
			}
			if l.Numbers == "" {
				if l.ID != "" {
					t.Errorf("variant %d (%s): %s has no numbers", i, a.Latches[0].ID, l.ID)
				}
				continue
			}
			v, err := evaluate(l.Numbers)
			if err != nil {
				t.Errorf("variant %d, %s: %v", i, l.ID, err)
				continue
			}
			redone++
			// Seven digits put in lose some where terms are near each other.
			if math.Abs(v-l.Value) > 3e-6*math.Abs(l.Value)+1e-12 {
				t.Errorf("variant %d (%s), %s: %s = %s gives %.8g, stated %.8g", i, a.Latches[0].ID, l.ID, l.Symbol, l.Numbers, v, l.Value)
			}
		}
		if redone < 6 {
			t.Errorf("variant %d: %d lines can be redone, want 6 or more", i, redone)
		}
	}
}

// TestExplainEndsAtTheForce: the last force that the lines state is the peak that
// Analyse finds.
func TestExplainEndsAtTheForce(t *testing.T) {
	for i, a := range variants() {
		r := mustAnalyse(t, a)
		id := map[string]string{"annular": "snap.force", "cantilever": "snap.force", "ball": "ball.force", "press_fit": "press.force", "crush_rib": "press.force", "torsional": "snap.force"}[r.Latches[0].Kind]
		found := false
		for _, l := range Explain(a, a.Latches[0].ID) {
			if l.ID == id {
				found = true
				near(t, fmt.Sprintf("variant %d %s", i, id), l.Value, r.Latches[0].PeakEach, 1e-6)
			}
			if l.Symbol == "eps" {
				near(t, fmt.Sprintf("variant %d strain", i), l.Value, r.Latches[0].Strain, 1e-9)
			}
		}
		if !found {
			t.Errorf("variant %d: no line %s", i, id)
		}
		if len(r.Latches[0].Formulas) < 5 {
			t.Errorf("variant %d: formulas %v", i, r.Latches[0].Formulas)
		}
	}
}

func TestExplainUnknownLatch(t *testing.T) {
	if got := Explain(capJob(), "no such latch"); got != nil {
		t.Errorf("got %d lines, want none", len(got))
	}
	a := capJob()
	a.Latches[0].Annular.Undercut = -1
	if got := Explain(a, "rim"); got != nil {
		t.Errorf("faulty job: got %d lines, want none", len(got))
	}
}
