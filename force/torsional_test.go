package force

import (
	"math"
	"testing"
)

// leverOf is a lever on bars of figures that a hand can follow: E 2000, nu 0.35.
func leverOf(change func(*Torsional)) (Torsional, Material) {
	v := Torsional{Flexes: "upper", Bends: "inward", Undercut: 0.8, MatingAngle: rad(30), ReturnAngle: rad(40), Length: 12, BarRadius: 1.5, BarLength: 8}
	change(&v)
	m, _ := Resolve(MaterialSpec{Material: "PA12", Process: "PBF", Figures: Figures{Modulus: ptr(2000.0)}})
	m.Poisson = Figure{0.35, MarkJob}
	return v, m
}

// The check value: a bar of radius 1.5 and length 8 at a shear strain of 0.03, E 2000, nu
// 0.35, twists by 9.16732 deg and takes 9.81748 N at a lever of 12 (own, cross-checked, by
// the formulas of the guide).
func TestTorsionalByTheCheckValue(t *testing.T) {
	v, m := leverOf(func(v *Torsional) { v.Bars = 1 })
	w, _ := v.work(m, "")
	y := rad(9.16732) * 12
	near(t, "force at the hook", w.value["K"]*y, 9.81748, 1e-5)
	near(t, "shear strain", w.value["eps_t"]*y*1.35, 0.03, 1e-5)
	v.Bars = 2
	two, _ := v.work(m, "")
	near(t, "two bars", two.value["K"], 2*w.value["K"], 1e-12)
	near(t, "and no more strain of each", two.value["eps_t"], w.value["eps_t"], 1e-12)
}

// The same by energy: bending of the lever and twist of the bars added up in small pieces,
// each under a unit force or a unit moment at the hook.
func TestTorsionalAgainstItsEnergy(t *testing.T) {
	v, m := leverOf(func(v *Torsional) { v.Thickness, v.Width, v.BarRadius = 3, 4, 2 })
	w, bars := v.work(m, "")
	const parts = 20000
	g, ei := 2000/(2*1.35), 2000*4*27/12.0
	ip := 0.0
	for i := range parts { // rings of a bar's section
		r := 2 * (float64(i) + 0.5) / parts
		ip += 2 * math.Pi * r * r * r * 2 / parts
	}
	twist := 8 / (2 * g * ip) // per moment at the bars
	force, cross, moment := twist*12*12, twist*12, twist
	for i := range parts {
		x := 12 * (float64(i) + 0.5) / parts
		force, cross, moment = force+x*x/ei*12/parts, cross+x/ei*12/parts, moment+1/ei*12/parts
	}
	near(t, "stiffness", w.value["K"], 1/force, 1e-6)
	near(t, "slope by a force", w.value["theta_y"], cross/force, 1e-6)
	near(t, "slope by a moment", w.value["turn_y"], moment/cross, 1e-6)
	near(t, "strain of the lever", w.value["eps_b"], 12*1.5/ei/force, 1e-6)
	near(t, "strain of the bars", w.value["eps_t"], 12/force/2*2/(g*ip)/1.35, 1e-6)
	near(t, "lever of the axial force", w.value["kappa"], 1.5*cross/force, 1e-6)
	if bars {
		t.Error("thick short bars are strained more than their lever")
	}
}

// A lever that bends takes less load across than a stiff one at the same undercut, and a
// very thick one as much.
func TestTorsionalLeverBends(t *testing.T) {
	stiff := explained(leverJob())["P"]
	a := leverJob()
	v := a.Latches[0].Torsional
	v.Thickness, v.Width = 4, 5
	if bent := explained(a)["P"]; bent >= stiff || bent < stiff/2 {
		t.Errorf("bends: %g N across, stiff %g N", bent, stiff)
	}
	v.Thickness, v.Width = 10, 1000
	w, _ := v.work(Material{Modulus: Figure{Value: 2000}, Poisson: Figure{Value: 0.4}}, "")
	s, _ := leverJob().Latches[0].Torsional.work(Material{Modulus: Figure{Value: 2000}, Poisson: Figure{Value: 0.4}}, "")
	near(t, "thick as a stiff one", w.value["K"], s.value["K"], 1e-3)
}

// TestTorsionalIsARocker: a stiff lever on bars is the rocker of the cantilevers.
func TestTorsionalIsARocker(t *testing.T) {
	a := leverJob()
	want := mustAnalyse(t, a)
	c := a.Latches[0].Torsional.Rocker()
	a.Latches[0].Torsional, a.Latches[0].Cantilever = nil, &c
	got := mustAnalyse(t, a)
	near(t, "peak", got.Peak, want.Peak, 1e-9)
	near(t, "P95", got.P95, want.P95, 1e-9)
	near(t, "strain", got.Latches[0].Strain, want.Latches[0].Strain, 1e-9)
	near(t, "separation", got.Latches[0].Separation, want.Latches[0].Separation, 1e-9)
}

func TestTorsionalOpensByMoments(t *testing.T) {
	a := leverJob()
	e := explained(a)
	near(t, "finger force times its lever", e["F_open"]*8, e["P"]*10, 1e-9)
	if e["F_open"] == 0 {
		t.Error("no line of the force that opens it")
	}
}

func TestTorsionalFaults(t *testing.T) {
	for field, change := range map[string]func(*Torsional){
		"flexes":       func(v *Torsional) { v.Flexes = "" },
		"length":       func(v *Torsional) { v.Length = 0 },
		"bar_radius":   func(v *Torsional) { v.BarRadius = 20 },
		"bar_length":   func(v *Torsional) { v.BarLength = math.NaN() },
		"undercut":     func(v *Torsional) { v.Undercut = 6.1 },
		"thickness":    func(v *Torsional) { v.Width = 3 },
		"width":        func(v *Torsional) { v.Thickness, v.Width = 2, -1 },
		"push_length":  func(v *Torsional) { v.PushLength = 0.1 },
		"bars":         func(v *Torsional) { v.Bars = 3 },
		"bar_tol":      func(v *Torsional) { v.BarTol = ptr(-1.0) },
		"mating_angle": func(v *Torsional) { v.MatingAngle = rad(89) },
	} {
		v, _ := leverOf(change)
		found := false
		for _, f := range v.Validate() {
			found = found || f.Field == field
		}
		if !found {
			t.Errorf("%s: %v", field, v.Validate())
		}
	}
}

// What was worked out reaches the joint: slopes, limit of what governs, stroke, thin bars;
// and the layers that are pulled apart are those of what is strained most.
func TestTorsionalHandsOver(t *testing.T) {
	bars, m := leverOf(func(v *Torsional) { v.Thickness, v.Width, v.BarRadius = 6, 8, 1.2 })
	lever, _ := leverOf(func(v *Torsional) { v.Thickness, v.Width, v.BarRadius, v.RootRadius = 1, 3, 2, ptr(4.0) })
	m.StrainOnce, m.StrainOnceZ = Figure{Value: 0.04}, Figure{Value: 0.02}
	for _, c := range []struct {
		name            string
		v               Torsional
		along, across   bool    // layers that are pulled apart, built so
		limit           float64 // built along
		thinAt, strokes float64
	}{
		{"bars", bars, false, true, 0.04, 2.4, 0.8/math.Tan(rad(30)) + 0.8/math.Tan(rad(40))},
		{"lever", lever, true, false, 0.02, 4, 0.8/math.Tan(rad(30)) + 0.8/math.Tan(rad(40))},
	} {
		m.Build = "along"
		j := c.v.ready(m, m, "")
		w := c.v.springs(m).value
		near(t, c.name+": slope", j.rotation, w["theta_y"], 1e-12)
		near(t, c.name+": turn", j.rotation+j.turning, w["turn_y"], 1e-12)
		near(t, c.name+": limit", j.outer.limit, c.limit, 1e-12)
		near(t, c.name+": stroke", j.stroke, c.strokes, 1e-12)
		if j.thin != thinness(m, c.thinAt) {
			t.Errorf("%s: thin by %g", c.name, j.thin)
		}
		if got := c.v.AcrossLayers(m, m); got != c.along {
			t.Errorf("%s built along: across the layers %v", c.name, got)
		}
		m.Build = "across"
		if got := c.v.AcrossLayers(m, m); got != c.across {
			t.Errorf("%s built across: across the layers %v", c.name, got)
		}
	}
}
