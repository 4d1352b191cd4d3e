package force

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// The built-in table lies inside the ranges that a job is held against, and each of
// its materials has all four.
func TestTableIsPlausible(t *testing.T) {
	if len(plausibleRanges) != 4*len(table) {
		t.Errorf("%d ranges for %d materials", len(plausibleRanges), len(table))
	}
	for _, r := range table {
		m := r.material()
		for _, c := range []struct {
			figure string
			values []float64
		}{
			{"modulus", []float64{m.Modulus.Value}}, {"strength", []float64{m.Strength.Value}},
			{"strain", []float64{m.StrainOnce.Value}}, {"friction", []float64{m.Friction.Value, m.FrictionSteel.Value}},
		} {
			p, ok := plausibleFor(r.name, r.process, c.figure)
			if !ok || p.mark == "" || p.source == "" || !(p.lo > 0 && p.hi > p.lo) {
				t.Errorf("%s %s: %s is %+v", r.name, r.process, c.figure, p)
			}
			for _, v := range c.values {
				if !within(v, p.lo, p.hi) {
					t.Errorf("%s %s: %s of the table, %g, is outside %g to %g", r.name, r.process, c.figure, v, p.lo, p.hi)
				}
			}
		}
		// Stated as they stand in the table, its figures raise no doubt.
		a := capJob()
		a.Lower = MaterialSpec{Material: r.name, Process: r.process, Figures: Figures{Modulus: &m.Modulus.Value, Strength: &m.Strength.Value, StrengthZ: &m.StrengthZ.Value,
			Friction: &m.Friction.Value, StrainOnce: &m.StrainOnce.Value, StrainRepeated: &m.StrainRepeated.Value, StrainOnceZ: &m.StrainOnceZ.Value, StrainRepeatedZ: &m.StrainRepeatedZ.Value}}
		for _, d := range a.doubts() {
			if d.times() > doubtful {
				t.Errorf("%s %s: %s %s", r.name, r.process, d.field, d.text())
			}
		}
	}
}

// Slips of the unit or the point, and what is said of them.
func TestSillyValues(t *testing.T) {
	shop := func(source string, f Figures) Shop { return Shop{"ours": {Like: "PA12", Source: source, Figures: f}} }
	for _, c := range []struct {
		name   string
		job    func() Assembly
		change func(*Assembly)
		field  string // empty: no fault
		hint   string
		warns  int // number of the warning; 0: none
	}{
		{"2 for 2 GPa", capJob, func(a *Assembly) { a.Lower.Modulus = ptr(2.0) }, "lower.modulus", "2 GPa is 2000 MPa", warnUnlikelyFigure},
		{"psi", capJob, func(a *Assembly) { a.Upper.Modulus = ptr(290000.0) }, "upper.modulus", "290000 psi is 1999 MPa", warnUnlikelyFigure},
		{"ksi", capJob, func(a *Assembly) { a.Upper.Modulus = ptr(290.0) }, "", "290 ksi is 1999 MPa", warnUnlikelyFigure},
		{"a modulus of steel", capJob, func(a *Assembly) { a.Upper.Modulus = ptr(210000.0) }, "upper.modulus", "", warnUnlikelyFigure},
		{"a soft print", capJob, func(a *Assembly) { a.Lower.Modulus = ptr(500.0) }, "", "", warnUnlikelyFigure},
		{"a usual print", capJob, func(a *Assembly) { a.Lower.Modulus = ptr(1500.0) }, "", "", 0},
		{"strength in GPa", capJob, func(a *Assembly) { a.Lower.Strength = ptr(0.5) }, "lower.strength", "", warnUnlikelyFigure},
		{"strength in psi", capJob, func(a *Assembly) { a.Lower.Strength = ptr(4950.0) }, "lower.strength", "4950 psi is 34.13 MPa", warnUnlikelyFigure},
		{"strain as a share", capJob, func(a *Assembly) { a.Lower.StrainOnce = ptr(0.00035) }, "lower.strain_once", "0.035 as a share is 3.5 %", warnUnlikelyFigure},
		{"strain of rubber", capJob, func(a *Assembly) { a.Lower.StrainOnce = ptr(0.9) }, "lower.strain_once", "", warnUnlikelyFigure},
		{"friction of ice", capJob, func(a *Assembly) { a.Lower.Friction = ptr(0.01) }, "lower.friction", "", warnUnlikelyFigure},
		{"low friction", capJob, func(a *Assembly) { a.Lower.Friction = ptr(0.1) }, "", "", warnUnlikelyFigure},
		{"measured, with a source", capJob, func(a *Assembly) {
			a.Shop, a.Lower.Material = shop("coupons of week 12", Figures{Modulus: ptr(2.0)}), "ours"
		}, "", "", 0},
		{"in the shop's table, without a source", capJob, func(a *Assembly) {
			a.Shop, a.Lower.Material = shop("", Figures{Modulus: ptr(2.0)}), "ours"
		}, "materials.ours.modulus", "2 GPa is 2000 MPa", warnUnlikelyFigure},
		{"near what the shop measured", capJob, func(a *Assembly) {
			a.Shop, a.Lower.Material, a.Lower.Modulus = shop("coupons", Figures{Modulus: ptr(100.0)}), "ours", ptr(90.0)
		}, "", "", 0},
		{"a ring in inches", capJob, func(a *Assembly) {
			v := a.Latches[0].Annular
			v.JointDiameter, v.OuterDiameter, v.InnerDiameter = v.JointDiameter*40, v.OuterDiameter*40, v.InnerDiameter*40
		}, "latches[0].annular.joint_diameter", "that is 62.99 in, perhaps 62.99 mm is meant", warnUnlikelySize},
		{"a wall in inches", armJob, func(a *Assembly) {
			a.Latches[0].Cantilever.Thickness, a.Latches[0].Cantilever.TipThickness, a.Latches[0].Cantilever.RootRadius = 0.0787, 0, nil
		}, "latches[0].cantilever.thickness", "0.0787 in is 1.999 mm", warnUnlikelySize},
		{"an undercut of a tenth", armJob, func(a *Assembly) {
			a.Latches[0].Cantilever.Undercut, a.Latches[0].Cantilever.UndercutTol = 0.012, ptr(0.001)
		}, "latches[0].cantilever.undercut", "0.012 in is 0.3048 mm", warnUnlikelySize},
		{"a long arm", armJob, func(a *Assembly) { a.Latches[0].Cantilever.Length = 110 }, "", "", warnUnlikelySize},
		{"a long pin", pinJob, func(a *Assembly) { a.Latches[0].PressFit.EngagementLength = 70 }, "", "", warnUnlikelySize},
		{"a large ball", ballJob, func(a *Assembly) {
			a.Latches[0].Ball.BallDiameter, a.Latches[0].Ball.MouthDiameter, a.Latches[0].Ball.OuterDiameter, a.Latches[0].Ball.SocketDiameter, a.Latches[0].Ball.SocketDepth = 240, 230, 260, 241, 0
		}, "latches[0].ball.ball_diameter", "", warnUnlikelySize},
		{"tall ribs", ribJob, func(a *Assembly) { a.Latches[0].CrushRib.Height = 6 }, "", "", warnUnlikelySize},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := c.job()
			c.change(&a)
			if faults := a.Validate(); len(faults) > 0 {
				t.Fatal("the job has other faults: ", faults)
			}
			var text string
			fields := []string{}
			for _, f := range a.Implausible() {
				fields = append(fields, f.Field)
				text += f.Error() + "\n"
			}
			if want := c.field; want == "" && len(fields) > 0 || want != "" && !slices.Contains(fields, want) {
				t.Errorf("faults in %q, want %q", fields, want)
			}
			var numbers []int
			for _, w := range mustAnalyse(t, a).Warnings {
				if w.Number == warnUnlikelyFigure || w.Number == warnUnlikelySize {
					numbers = append(numbers, w.Number)
					text += w.Text.String() + "\n"
				}
			}
			if c.warns == 0 && len(numbers) > 0 || c.warns != 0 && !slices.Contains(numbers, c.warns) {
				t.Errorf("warned by %v, want %d: %s", numbers, c.warns, text)
			}
			if !strings.Contains(text, c.hint) {
				t.Errorf("no %q in %s", c.hint, text)
			}
		})
	}
}

// What lies inside every range is never doubted, and a figure is doubted the more the
// further it lies outside, on either side.
func TestDoubtGrowsWithDistance(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 4))
	for range 400 {
		p := plausibleRanges[rng.IntN(len(plausibleRanges))]
		key := p.figure
		if key == "strain" {
			key = "strain_once"
		}
		of := func(v float64) (times float64) {
			a := capJob()
			a.Lower = MaterialSpec{Material: p.material, Process: p.process}
			a.Upper = a.Lower
			switch key {
			case "modulus":
				a.Lower.Modulus = &v
			case "strength":
				a.Lower.Strength = &v
			case "friction":
				a.Lower.Friction = &v
			case "strain_once":
				a.Lower.StrainOnce = &v
			}
			for _, d := range a.doubts() {
				if d.field == "lower."+key {
					return d.times()
				}
			}
			return 1
		}
		at := fmt.Sprint(p.material, " ", p.process, " ", p.figure)
		if v := p.lo + rng.Float64()*(p.hi-p.lo); of(v) != 1 {
			t.Errorf("%s: %g is doubted between %g and %g", at, v, p.lo, p.hi)
		}
		by := 1 + 0.9*rng.Float64()
		near(t, at+" above", of(p.hi*by), by, 1e-9)
		near(t, at+" below", of(p.lo/by), by, 1e-9)
	}
}

// Jobs of every kind with sizes and figures that occur are never refused as silly.
func TestRandomJobsAreBelieved(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 5))
	between := func(lo, hi float64) float64 { return lo + rng.Float64()*(hi-lo) }
	for range 500 {
		for _, a := range everyJob() {
			scale := between(0.6, 2)
			l := &a.Latches[0]
			switch {
			case l.Annular != nil:
				l.Annular.Undercut *= scale * between(0.5, 1.2)
				l.Annular.JointDiameter, l.Annular.OuterDiameter, l.Annular.InnerDiameter = scale*l.Annular.JointDiameter, scale*l.Annular.OuterDiameter, scale*l.Annular.InnerDiameter
			case l.Ball != nil:
				l.Ball.BallDiameter, l.Ball.MouthDiameter, l.Ball.OuterDiameter = scale*l.Ball.BallDiameter, scale*l.Ball.MouthDiameter, scale*l.Ball.OuterDiameter
			case l.Cantilever != nil:
				l.Cantilever.Length, l.Cantilever.Thickness, l.Cantilever.Undercut = between(8, 40), between(0.8, 4), between(0.3, 2)
			case l.Torsional != nil:
				l.Torsional.Length, l.Torsional.BarRadius, l.Torsional.BarLength, l.Torsional.Undercut = between(8, 40), between(0.6, 4), between(3, 20), between(0.3, 2)
			case l.PressFit != nil:
				l.PressFit.JointDiameter, l.PressFit.Interference, l.PressFit.OuterDiameter = 5*scale, between(0.01, 0.1), 11*scale
			case l.CrushRib != nil:
				l.CrushRib.JointDiameter, l.CrushRib.Crush = 8*scale, between(0.1, 0.5)
			}
			r := table[rng.IntN(12)] // printed
			a.Lower = MaterialSpec{Material: r.name, Process: r.process, Figures: Figures{Modulus: ptr(r.modulus * between(0.5, 1.1)), Friction: ptr(between(0.15, 0.6)),
				Strength: ptr(r.strength * between(0.7, 1.3)), StrainOnce: ptr(r.strainIn * between(0.4, 2))}}
			if faults := a.Implausible(); len(faults) > 0 {
				t.Fatal(faults)
			}
		}
	}
}

// A size is named by the key that the job writes it under.
func TestDoubtNamesTheKeyWritten(t *testing.T) {
	a := pinJob()
	f := a.Latches[0].PressFit
	f.JointDiameter, f.Interference, f.InterferenceTol, f.PinDiameter, f.BoreDiameter = 0, 0, nil, 5.6, 5
	if d := a.doubts(); len(d) != 1 || d[0].field != "latches[0].press_fit.bore_diameter" {
		t.Errorf("%+v", d)
	}
	a = capJob()
	v := a.Latches[0].Annular
	v.Undercut, v.UndercutTol, v.LipDiameter, v.BeadDiameter = 0, nil, 39, 43
	if d := a.doubts(); len(d) != 2 || d[0].field != "latches[0].annular.bead_diameter" {
		t.Errorf("%+v", d)
	}
}
