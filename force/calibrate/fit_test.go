package calibrate

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/planar"
)

func arm() force.Latch {
	return force.Latch{ID: "arm", At: []planar.Point{{X: 10}, {X: -10}}, Cantilever: &force.Cantilever{Flexes: "upper", Bends: "inward", Undercut: 0.8, UndercutTol: new(0.2),
		MatingAngle: rad(30), ReturnAngle: rad(45), Length: 14, Thickness: 1.6, Width: 6, RootRadius: new(0.8)}}
}

func stud() force.Latch {
	return force.Latch{ID: "stud", At: []planar.Point{{}}, Ball: &force.Ball{Socket: "lower", BallDiameter: 6, BallTol: new(0.08), MouthDiameter: 5.6, MouthTol: new(0.08), OuterDiameter: 8.5, Slots: 4, SlotWidth: 0.8, SlotDepth: 7}}
}

func rib() force.Latch {
	return force.Latch{ID: "rib", At: []planar.Point{{}}, CrushRib: &force.CrushRib{Ribs: "lower", JointDiameter: 4, Count: 3, Height: 0.4, Width: 0.5, Crush: 0.15, CrushTol: new(0.05), EngagementLength: 3, LeadInAngle: new(rad(20))}}
}

func model(t *testing.T, latches []force.Latch, coupons ...Coupon) *Model {
	t.Helper()
	m, err := NewModel(Input{Assembly: force.Assembly{Lower: pa12, Upper: pa12, Latches: latches}, Coupons: coupons})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// The tables of the model agree with package force wherever they are asked.
func TestTablesAgreeWithForce(t *testing.T) {
	for _, c := range []struct {
		latch         force.Latch
		nominal, step float64
	}{{rim(), 0.5, 0.1}, {pin(), 0.12, 0.03}, {arm(), 0.8, 0.1}, {stud(), 0.4, 0.05}, {rib(), 0.15, 0.03}} {
		t.Run(c.latch.ID, func(t *testing.T) {
			t.Parallel()
			m := model(t, []force.Latch{c.latch}, ladder(c.latch, c.nominal, c.step, 5)...)
			s := &m.latches[0]
			rng := rand.New(rand.NewPCG(1, 1))
			worst := 0.0
			for range 60 {
				mu, e := m.friction*math.Exp(0.2*(2*rng.Float64()-1)), math.Exp(0.3*(2*rng.Float64()-1))
				size := c.nominal * (0.2 + 1.4*rng.Float64())
				r, err := force.Analyse(m.assembly(s, inJob, mu, e, size))
				if err != nil {
					t.Fatal(err)
				}
				g := s.curves[inJob].at(math.Log(mu), math.Log(e))
				got, slope := g.peak(size)
				worst = max(worst, math.Abs(got/r.Peak-1))
				after, _ := g.peak(size + 1e-5)
				if !(math.Abs((after-got)/1e-5-slope) < 0.02*slope) {
					t.Errorf("slope %g, by difference %g", slope, (after-got)/1e-5)
				}
			}
			t.Logf("worst %.2f %%", 100*worst)
			if worst > 0.01 {
				t.Errorf("a table is off by %.2f %%", 100*worst)
			}
		})
	}
}

// With the nominal friction, stiffness and size the model is the job itself: this
// holds the two figures that are written down again here, of ribs and of friction.
func TestNominalIsTheJob(t *testing.T) {
	for _, l := range []force.Latch{rim(), pin(), stud(), rib()} {
		m := model(t, []force.Latch{l}, Coupon{Latch: l.ID, Name: Piece, Size: l.Size(force.Material{}, force.Material{}).Value})
		// The size of a fit is that which the pair has, not that drawn.
		want, err := force.Analyse(force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{l.Toleranced(0.1)}, Draws: 100})
		if err != nil {
			t.Fatal(err)
		}
		got, err := force.Analyse(m.assembly(&m.latches[0], inJob, m.friction, 1, m.latches[0].size.Value))
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got.Peak/want.Peak-1) > 1e-12 {
			t.Errorf("%s: %g N, the job %g N", l.ID, got.Peak, want.Peak)
		}
	}
}

// A shop far from the table: the force of its prints is found all the same.
func TestFarShopIsFound(t *testing.T) {
	m := model(t, []force.Latch{rim()}, ladder(rim(), 0.5, 0.1, 5)...)
	held, runs := 0, 40
	for k := range runs {
		s := shop{m: m, friction: 0.38, stiffness: 0.8, scatter: 0.5, offsets: []float64{0.15}, rng: rand.New(rand.NewPCG(3, uint64(k)))}
		f, err := m.Fit(s.press(2))
		if err != nil {
			t.Fatal(err)
		}
		r, err := force.Analyse(m.assembly(&m.latches[0], inJob, s.friction, s.stiffness, 0.65))
		if err != nil {
			t.Fatal(err)
		}
		b, _ := f.Band("rim", 0.5, 1)
		if b.Low <= r.Peak && r.Peak <= b.High {
			held++
		}
		if !(b.High/b.Low < 1.6) {
			t.Errorf("run %d: the band %g to %g N tells nothing", k, b.Low, b.High)
		}
	}
	t.Logf("held in %d of %d runs", held, runs)
	if held < runs*85/100 {
		t.Errorf("the band held the force in %d of %d runs", held, runs)
	}
}

func TestOutlierIsNamedAndHardlyCounts(t *testing.T) {
	m := model(t, []force.Latch{rim()}, ladder(rim(), 0.5, 0.1, 5)...)
	s := shop{m: m, friction: 0.5, stiffness: 1, scatter: 0.5, offsets: []float64{0}, rng: rand.New(rand.NewPCG(1, 9))}
	clean := s.press(2)
	f, err := m.Fit(clean)
	if err != nil {
		t.Fatal(err)
	}
	spoilt := append([]Measurement(nil), clean...)
	spoilt[5].Force, spoilt[5].Line = 6*spoilt[5].Force, 7
	g, err := m.Fit(spoilt)
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range g.Residuals {
		if r.Outlier != (i == 5) {
			t.Errorf("measurement %d: outlier %v, doubt %.2f", i, r.Outlier, r.Doubt)
		}
	}
	if len(g.Remarks) == 0 || !strings.Contains(g.Remarks[0].String(), "coupon 3 of rim on line 7 is an outlier") {
		t.Errorf("remarks %q", g.Remarks)
	}
	a, _ := f.Band("rim", 0.5, 1)
	b, _ := g.Band("rim", 0.5, 1)
	if math.Abs(b.Mid/a.Mid-1) > 0.1 {
		t.Errorf("one outlier moved the force from %g to %g N", a.Mid, b.Mid)
	}
	if g.Sheet("x").Outliers != 1 {
		t.Error("the sheet does not count the outlier")
	}
}

func TestNoGoRaisesTheForce(t *testing.T) {
	m := model(t, []force.Latch{rim()}, ladder(rim(), 0.5, 0.1, 5)...)
	base := []Measurement{{Latch: "rim", Coupon: "1", Force: 300}}
	f, err := m.Fit(base)
	if err != nil {
		t.Fatal(err)
	}
	stuck, err := m.Fit(append(base, Measurement{Latch: "rim", Coupon: "3", Force: 900, NoGo: true}))
	if err != nil {
		t.Fatal(err)
	}
	a, _ := f.Band("rim", 0.5, 1)
	b, _ := stuck.Band("rim", 0.5, 1)
	if !(b.Mid > a.Mid) {
		t.Errorf("a pair that stuck moved the force from %g to %g N", a.Mid, b.Mid)
	}
}

func TestSameMeasurementsSameFit(t *testing.T) {
	fit := func() *Fit {
		m := model(t, []force.Latch{rim()}, ladder(rim(), 0.5, 0.1, 5)...)
		f, err := m.Fit([]Measurement{{Latch: "rim", Coupon: "1", Force: 300}, {Latch: "rim", Coupon: "4", Force: 700}})
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	a, b := fit(), fit()
	a.model, b.model = nil, nil
	if !reflect.DeepEqual(a, b) {
		t.Error("two fits of the same measurements differ")
	}
}

func TestSheetGoesBackIntoAJob(t *testing.T) {
	job := force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{rim(), arm()}}
	m := model(t, job.Latches, ladder(rim(), 0.5, 0.1, 5)...)
	s := shop{m: m, friction: 0.45, stiffness: 0.9, scatter: 0.5, offsets: []float64{0.1}, rng: rand.New(rand.NewPCG(1, 4))}
	f, err := m.Fit(s.press(3))
	if err != nil {
		t.Fatal(err)
	}
	sheet := f.Sheet("coupons of week 12")
	if faults := sheet.Validate(); len(faults) > 0 {
		t.Fatal(faults)
	}
	after, changes, err := sheet.Apply(job)
	if err != nil {
		t.Fatal(err)
	}
	r, err := force.Analyse(after)
	if err != nil {
		t.Fatal(err)
	}
	b, _ := f.Band("rim", 0.5, 1)
	if got := r.Latches[0].PeakEach; math.Abs(got/b.Mid-1) > 0.05 {
		t.Errorf("the job now computes %g N, the fit says %g N", got, b.Mid)
	}
	before, err := force.Analyse(job)
	if err != nil {
		t.Fatal(err)
	}
	if !(r.P95-r.P5 < before.P95-before.P5) {
		t.Errorf("the band was %g N wide, calibrated %g N", before.P95-before.P5, r.P95-r.P5)
	}
	text := fmt.Sprint(changes)
	for _, want := range []string{"lower.modulus", "upper.modulus", "friction between the parts", "latches[0] rim: undercut 0.5 mm as drawn", "latches[1] arm: undercut 0.8 mm -> not measured: as drawn"} {
		if !strings.Contains(text, want) {
			t.Errorf("the changes do not say %q: %s", want, text)
		}
	}
	if job.Latches[0].Annular.Undercut != 0.5 || job.Lower.Modulus != nil {
		t.Error("the job itself was changed")
	}
	line := sheet.ShopMaterial(m.lower)
	if faults := (force.Shop{"ours": line}).Validate(); len(faults) > 0 {
		t.Error(faults)
	}
	var one, two bytes.Buffer
	if err := errors.Join(WriteSheet(&one, sheet), WriteSheet(&two, sheet)); err != nil || !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error(err)
	}
	for _, want := range []string{`source: "coupons of week 12"`, `lower: {material: "PA12", process: PBF}`, "  - latch: \"rim\"\n    kind: annular\n"} {
		if !strings.Contains(one.String(), want) {
			t.Errorf("the file lacks %q:\n%s", want, one.String())
		}
	}
}

func TestFaultsOfASheet(t *testing.T) {
	good := Sheet{Source: "x", Lower: Pairing{"PA12", "PBF"}, Upper: Pairing{"PA12", "PBF"}, Friction: 0.5, Stiffness: 1, Latches: []Offset{{"rim", "annular", 0.1, 0.1, 0}}}
	job := force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{rim()}}
	for _, c := range []struct {
		want   string
		change func(s *Sheet, a *force.Assembly)
	}{
		{"calibration.source", func(s *Sheet, _ *force.Assembly) { s.Source = "" }},
		{"calibration.friction", func(s *Sheet, _ *force.Assembly) { s.Friction = math.NaN() }},
		{"calibration.date", func(s *Sheet, _ *force.Assembly) { s.Date = "2026-13-01" }},
		{"calibration.latches[0].tol_alone", func(s *Sheet, _ *force.Assembly) { s.Latches = []Offset{{"rim", "annular", 0.1, 0.1, -1}} }},
		{"calibration.stiffness", func(s *Sheet, _ *force.Assembly) { s.Stiffness = 0 }},
		{"calibration.latches", func(s *Sheet, _ *force.Assembly) { s.Latches = nil }},
		{"calibration.latches[0].offset", func(s *Sheet, _ *force.Assembly) { s.Latches = []Offset{{"rim", "annular", math.Inf(1), 0.1, 0}} }},
		{"calibration.latches[1].latch", func(s *Sheet, _ *force.Assembly) { s.Latches = append(s.Latches, s.Latches[0]) }},
		{"lower.material", func(_ *Sheet, a *force.Assembly) { a.Lower = force.MaterialSpec{Material: "PLA"} }},
		{"latches[0]", func(s *Sheet, _ *force.Assembly) { s.Latches = []Offset{{"rim", "annular", -0.6, 0.1, 0}} }},
	} {
		t.Run(c.want, func(t *testing.T) {
			s, a := good, job
			s.Latches = append([]Offset(nil), good.Latches...)
			c.change(&s, &a)
			_, changes, err := s.Apply(a)
			var f fault.Fault
			if !errors.As(err, &f) || f.Field != c.want || changes != nil {
				t.Errorf("want a fault at %s, got %v", c.want, err)
			}
		})
	}
}

func TestFaultsOfAModelAndFit(t *testing.T) {
	job := force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{rim()}}
	for _, c := range []struct {
		want string
		in   Input
	}{
		{"coupons", Input{Assembly: job}},
		{"coupons[0].latch", Input{Assembly: job, Coupons: []Coupon{{Latch: "x"}}}},
		{"coupons[0].size", Input{Assembly: job, Coupons: []Coupon{{Latch: "rim", Size: math.NaN()}}}},
		{"gauge", Input{Assembly: job, Gauge: -1, Coupons: ladder(rim(), 0.5, 0.1, 3)}},
		{"latches", Input{}},
	} {
		_, err := NewModel(c.in)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("want a fault at %s, got %v", c.want, err)
		}
	}
	m := model(t, job.Latches, ladder(rim(), 0.5, 0.1, 3)...)
	for _, c := range []struct {
		want string
		x    []Measurement
	}{
		{"measured", nil},
		{"line 4: latch: pin", []Measurement{{Line: 4, Latch: "pin", Coupon: "1", Force: 3}}},
		{"line 5: coupon: 9", []Measurement{{Line: 5, Latch: "rim", Coupon: "9", Force: 3}}},
		{"line 6: force", []Measurement{{Line: 6, Latch: "rim", Coupon: "1", Force: math.NaN()}}},
	} {
		if _, err := m.Fit(c.x); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("want %q, got %v", c.want, err)
		}
	}
	f, err := m.Fit([]Measurement{{Latch: "rim", Coupon: "1", Force: 300}})
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := f.Band("pin", 0.5, 1); ok {
		t.Error("a latch without coupons has a band")
	}
	if _, err := f.Advise(Goal{Latch: "rim", Least: 5, Most: 4}); err == nil {
		t.Error("an empty window was taken")
	}
	if _, err := f.Seats(math.NaN()); err == nil {
		t.Error("a stop that is no number was taken")
	}
}

func TestDeadStopAgainstTheSeat(t *testing.T) {
	l := rim()
	l.Annular.GrooveFloat = 0
	m := model(t, []force.Latch{l}, ladder(l, 0.5, 0.1, 5)...)
	press := func(offset float64) []Seat {
		s := shop{m: m, friction: 0.6, stiffness: 1, scatter: 0.3, offsets: []float64{offset}, rng: rand.New(rand.NewPCG(1, 6))}
		f, err := m.Fit(s.press(6))
		if err != nil {
			t.Fatal(err)
		}
		seats, err := f.Seats(0.15)
		if err != nil {
			t.Fatal(err)
		}
		return seats
	}
	// Return angle 45 deg: 0.2 mm more on the diameter is home 0.1 mm deeper.
	for _, offset := range []float64{-0.2, 0.2} {
		s := press(offset)[0]
		if math.Abs(s.Printed+offset/2) > 0.03 || s.Stop != -0.15 {
			t.Errorf("offset %g: home at %.3f mm, by hand %.3f", offset, s.Printed, -offset/2)
		}
	}
	if s := press(0)[0]; !s.Held || s.Gap > 0.02 {
		t.Errorf("as drawn: %+v", s)
	}
	if s := press(0.45)[0]; s.Held {
		t.Errorf("0.22 mm deeper than drawn is past a stop 0.15 mm beyond the seat: %+v", s)
	}
}

// An arm whose job states a soft base is stiffer on the plate of a coupon: what the
// coupons tell is carried over to the part.
func TestCouponOnItsPlateSpeaksForThePart(t *testing.T) {
	l := arm()
	l.Cantilever.BaseFactor = new(4.0)
	m := model(t, []force.Latch{l}, append(ladder(l, 0.8, 0.1, 5), Coupon{Latch: "arm", Name: Piece, Size: 0.8})...)
	s := shop{m: m, friction: 0.5, stiffness: 0.9, scatter: 0.3, offsets: []float64{0.05}, rng: rand.New(rand.NewPCG(1, 3))}
	all := s.press(4)
	coupons := slices.DeleteFunc(slices.Clone(all), func(x Measurement) bool { return x.Coupon == Piece })
	r, err := force.Analyse(m.assembly(&m.latches[0], inJob, s.friction, s.stiffness, 0.85))
	if err != nil {
		t.Fatal(err)
	}
	piece := r.Peak
	if !(all[8].Force > 2*piece) {
		t.Errorf("coupon 3 takes %g N, a piece of the same size %g N", all[8].Force, piece)
	}
	f, err := m.Fit(coupons)
	if err != nil {
		t.Fatal(err)
	}
	b, _ := f.Band("arm", 0.8, 1)
	if !(b.Low <= piece && piece <= b.High) {
		t.Errorf("pieces take %g N, the coupons say %g to %g N", piece, b.Low, b.High)
	}
}

func TestAdvice(t *testing.T) {
	m := model(t, []force.Latch{rim()}, ladder(rim(), 0.5, 0.1, 5)...)
	s := shop{m: m, friction: 0.6, stiffness: 1, scatter: 0.4, offsets: []float64{0.1}, rng: rand.New(rand.NewPCG(1, 8))}
	few, err := m.Fit(s.press(1)[:2])
	if err != nil {
		t.Fatal(err)
	}
	many, err := m.Fit(s.press(20))
	if err != nil {
		t.Fatal(err)
	}
	// The window is what the nominal pair does in this shop if drawn 0.1 mm smaller.
	b, _ := many.Band("rim", 0.4, 1)
	goal := Goal{Latch: "rim", Least: 0.8 * b.Mid, Most: 1.2 * b.Mid, Failure: 2000, Round: 100}
	advise := func(f *Fit) Advice {
		a, err := f.Advise(goal)
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range append(a.Options, a.Between) {
			if !(o.Failing >= 0 && o.Failing <= 1) || !(o.Light >= 0 && o.Heavy >= 0 && o.Over >= 0) {
				t.Errorf("%+v", o)
			}
		}
		t.Log(a.Text)
		return a
	}
	first, last := advise(few), advise(many)
	if take := last.Options[last.Take]; take.Coupon != "2" || math.Abs(last.Between.Size-0.4) > 0.03 {
		t.Errorf("takes coupon %s, best %g mm; the window was made for 0.4 mm, coupon 2", take.Coupon, last.Between.Size)
	}
	if !first.Another || last.Another {
		t.Errorf("another round: after two pairs %v, after a hundred %v", first.Another, last.Another)
	}
	if !(first.RiskAfter <= first.Risk && last.Risk-last.RiskAfter < 0.05) {
		t.Errorf("risk %g to %g, then %g to %g", first.Risk, first.RiskAfter, last.Risk, last.RiskAfter)
	}
	goal = Goal{Latch: "rim"}
	if a := advise(many); a.Another || !strings.Contains(a.Text.String(), "not stated") || !(a.Goal.Least > 0 && a.Goal.Least < a.Goal.Most) {
		t.Errorf("without figures: %+v", a.Goal)
	}
	// A hold that no size reaches makes every pair too loose.
	goal = Goal{Latch: "rim", Hold: 1e6}
	if a := advise(many); a.Risk < 0.99 {
		t.Errorf("a hold of 1 MN fails in %g of pairs only", a.Risk)
	}
}

func ExampleModel_Fit() {
	job := force.Assembly{Lower: pa12, Upper: pa12, Latches: []force.Latch{rim()}}
	model, err := NewModel(Input{Assembly: job, Coupons: ladder(rim(), 0.5, 0.1, 5)})
	if err != nil {
		fmt.Println(err)
		return
	}
	measured, err := ReadMeasurements(strings.NewReader("latch,coupon,force,note\nrim,1,260,go\nrim,2,380,go\nrim,3,490,go\nrim,4,610,go\nrim,5,700,no-go\n"), 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	fit, err := model.Fit(measured)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(fit.Measured, "pairs,", fit.Sheet("week 12").Outliers, "outliers")
	for _, r := range fit.Residuals {
		fmt.Printf("coupon %s, undercut %.1f mm: went together %t\n", r.Coupon, r.Size, !r.NoGo)
	}
	// Output:
	// 5 pairs, 0 outliers
	// coupon 1, undercut 0.3 mm: went together true
	// coupon 2, undercut 0.4 mm: went together true
	// coupon 3, undercut 0.5 mm: went together true
	// coupon 4, undercut 0.6 mm: went together true
	// coupon 5, undercut 0.7 mm: went together false
}
