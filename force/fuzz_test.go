package force

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"ramnest/force/planar"
)

// FuzzAnalyse fills one latch of every kind with any numbers. What Validate lets
// through must give finite figures that are not negative, a band in order and an
// explanation without gaps; what it refuses must name a field.
func FuzzAnalyse(f *testing.F) {
	f.Add(uint8(0), 40.0, 0.8, 25.0, 40.0, 43.2, 36.8, 3.0, 0.4, 20.0, 0.6, int8(8))
	f.Add(uint8(1), 6.0, 5.6, 12.0, 0.8, 9.0, 0.0, 6.0, 0.05, 20.0, 0.3, int8(4))
	f.Add(uint8(2), 19.0, 1.2, 30.0, 45.0, 2.0, 6.0, 1.0, 0.3, 5.0, 0.6, int8(1))
	f.Add(uint8(3), 5.0, 0.05, 15.0, 90.0, 11.0, 0.0, 10.0, 0.02, 40.0, 0.1, int8(0))
	f.Add(uint8(4), 8.0, 0.3, 20.0, 0.6, 0.8, 0.0, 8.0, 0.1, 9.0, 0.4, int8(3))
	f.Fuzz(func(t *testing.T, kind uint8, d, y, mate, back, outer, inner, end, tol, engage, mu float64, n int8) {
		l := Latch{ID: "l", At: []planar.Point{{X: 1, Y: 2}, {X: 3, Y: 4}}}
		if engage > 0 {
			l.Engage = &engage
		}
		switch kind % 10 {
		case 0:
			l.Annular = &Annular{Outside: "lower", JointDiameter: d, Undercut: y, MatingAngle: rad(mate), ReturnAngle: rad(back), Land: tol, OuterDiameter: outer, InnerDiameter: inner, EndDistance: end, EndDistanceInner: &end, UndercutTol: &tol}
		case 5:
			l.Annular = &Annular{Outside: "upper", JointDiameter: d, Undercut: y, MatingAngle: rad(mate), ReturnAngle: rad(back), OuterDiameter: outer, InnerDiameter: inner, EndDistance: end, EndDistanceInner: &end,
				Split: []string{"outer", "inner"}[int(kind/10)%2], Slots: int(n), SlotWidth: tol, SlotDepth: end + engage, FarEnd: "floored", FarDistance: end}
		case 1:
			l.Ball = &Ball{Socket: "lower", BallDiameter: d, MouthDiameter: y, OuterDiameter: outer, EntryAngle: ptr(rad(mate)), SeatDepth: inner, BallTol: &tol, MouthTol: &tol}
		case 6:
			l.Ball = &Ball{Socket: "upper", BallDiameter: d, MouthDiameter: y, OuterDiameter: outer, SocketDepth: inner, Slots: int(n), SlotWidth: back, SlotDepth: end}
		case 2:
			l.Cantilever = &Cantilever{Flexes: "lower", Bends: "outward", Undercut: y, UndercutTol: &tol, MatingAngle: rad(mate), ReturnAngle: rad(back), Length: d, Thickness: outer, Width: inner, TipThickness: end, Land: tol, LeadIn: []string{"hook", "mate", ""}[int(kind/10)%3]}
		case 7:
			l.Cantilever = &Cantilever{Flexes: "upper", Bends: "inward", Undercut: y, MatingAngle: rad(mate), ReturnAngle: rad(back), Length: d, Thickness: outer, Width: inner, RootRadius: &tol,
				Shape: []string{"l_arm", "u_arm", "rocker"}[int(kind/10)%3], BaseLength: end, BaseThickness: outer, BendRadius: end, BarRadius: outer, BarLength: inner, Bars: int(n), BendSide: []string{"away", "toward"}[int(kind/30)%2]}
			if l.Cantilever.Shape != "u_arm" {
				l.Cantilever.BendSide = ""
			}
			if l.Cantilever.Shape == "rocker" {
				l.Cantilever.Thickness, l.Cantilever.Width = 0, 0
			}
		case 3:
			l.PressFit = &PressFit{Outside: "lower", JointDiameter: d, Interference: y, InterferenceTol: &tol, OuterDiameter: outer, InnerDiameter: inner, EngagementLength: end, LeadInAngle: ptr(rad(mate)), BoreBeyond: &inner}
		case 8:
			l.PressFit = &PressFit{Outside: "upper", BoreDiameter: d, PinDiameter: d + y, OuterDiameter: outer, InnerDiameter: inner, EngagementLength: end}
		default:
			l.CrushRib = &CrushRib{Ribs: "lower", JointDiameter: d, Count: int(n), Height: back, Width: outer, Crush: y, CrushTol: &tol, EngagementLength: end, LeadInAngle: ptr(rad(mate))}
		}
		a := Assembly{Lower: MaterialSpec{Material: "PC", Figures: Figures{Friction: &mu}}, Upper: MaterialSpec{Material: "PA12", Figures: Figures{Friction: &mu}}, Latches: []Latch{l}, Draws: 100}
		if n < 0 { // the other way round
			a.Lower, a.Upper = a.Upper, a.Lower
		}
		r, err := Analyse(a)
		if err != nil {
			for _, f := range a.Validate() {
				if f.Field == "" || f.Problem == "" {
					t.Errorf("fault without field or problem: %+v", f)
				}
			}
			return
		}
		checkFigures(t, "result", reflect.ValueOf(r))
		for _, p := range r.Curve.Points(20) {
			if !(p[0] >= 0 && p[1] >= 0 && p[0] <= math.MaxFloat64 && p[1] <= math.MaxFloat64) {
				t.Errorf("curve point %v", p)
			}
		}
		if outOfOrder(r) || r.Peak > r.PeakStack*(1+1e-6)+1e-9 {
			t.Errorf("out of order: P %g %g %g, peak %g, stacked %g", r.P5, r.P50, r.P95, r.Peak, r.PeakStack)
		}
		if len(Explain(a, "l")) == 0 {
			t.Error("no explanation")
		}
		for _, line := range Explain(a, "l") {
			if !finite(line.Value) || strings.Contains(line.Numbers, "%!") || line.ID != "" && line.Numbers == "" {
				t.Errorf("line %+v", line)
			}
		}
		for _, w := range append(r.Warnings, r.Latches[0].Warnings...) {
			if strings.Contains(w.Text.String(), "%!") || strings.Contains(w.Text.String(), "NaN") || strings.Contains(w.Text.String(), "Inf") {
				t.Errorf("warning %q", w.Text.String())
			}
		}
		if l := r.Latches[0]; !l.SelfLocking && (l.SeparationLow > l.Separation*(1+1e-9) || l.SeparationHigh > 0 && l.SeparationHigh < l.Separation*(1-1e-9)) {
			t.Errorf("holds %g to %g, nominally %g", l.SeparationLow, l.SeparationHigh, l.Separation)
		}
		if b, what, ok := Stagger(a); ok {
			if what.String() == "" || len(b.Validate()) > 0 {
				t.Errorf("staggered by %q: %v", what, b.Validate())
			}
		}
	})
}

// outOfOrder says whether the percentiles that exist fall, or one exists beyond one
// that does not.
func outOfOrder(r Result) bool {
	last := 0.0
	for i, p := range []float64{r.P5, r.P50, r.P95} {
		if none := p == 0 && r.Jammed > []float64{0.95, 0.5, 0}[i]; !none && p < last {
			return true
		} else if !none {
			last = p
		}
	}
	return r.NoP95 != (r.P95 == 0) && r.Jammed > 0
}

// signed are the figures that may be below 0: places.
var signed = map[string]bool{"X": true, "Y": true, "ZLow": true, "ZHigh": true}

// checkFigures walks a result: every number finite, none negative but places.
func checkFigures(t *testing.T, path string, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		f := v.Float()
		if !finite(f) || f < 0 && !signed[path[max(0, lastDot(path)+1):]] {
			t.Errorf("%s is %g", path, f)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if field := v.Type().Field(i); field.IsExported() {
				checkFigures(t, path+"."+field.Name, v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			checkFigures(t, path, v.Index(i))
		}
	}
}

func lastDot(s string) int {
	for i := len(s) - 1; i >= 0; i-- {
		if s[i] == '.' {
			return i
		}
	}
	return -1
}
