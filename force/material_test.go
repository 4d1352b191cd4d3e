package force

import (
	"slices"
	"strings"
	"testing"

	"ramnest/force/warning"
)

func TestTableIsWhole(t *testing.T) {
	for _, r := range table {
		m, faults := Resolve(MaterialSpec{Material: strings.ToLower(r.name), Process: r.process})
		if len(faults) > 0 {
			t.Errorf("%s %s: %v", r.name, r.process, faults)
			continue
		}
		for name, f := range map[string]Figure{"modulus": m.Modulus, "poisson": m.Poisson, "friction": m.Friction.Figure(), "friction on steel": m.FrictionSteel.Figure(), "strain": m.StrainOnce,
			"strain Z": m.StrainOnceZ, "repeated": m.StrainRepeated, "repeated Z": m.StrainRepeatedZ, "density": m.Density, "strength": m.Strength, "strength Z": m.StrengthZ,
			"tolerance": m.Tolerance, "tolerance share": m.ToleranceShare, "friction spread": m.FrictionSpread, "modulus spread": m.ModulusSpread} {
			if !(f.Value > 0) || f.Mark == "" {
				t.Errorf("%s %s: %s is %+v", r.name, r.process, name, f)
			}
		}
		if m.StrainOnceZ.Value > m.StrainOnce.Value || m.StrengthZ.Value > m.Strength.Value || m.StrainRepeated.Value >= m.StrainOnce.Value {
			t.Errorf("%s %s: stronger across the layers, or when repeated", r.name, r.process)
		}
	}
}

func TestBuildDirectionPicksTheLimit(t *testing.T) {
	for _, c := range []struct {
		build       string
		hoop, axial float64
	}{{"along", 0.035, 0.020}, {"across", 0.020, 0.035}, {"", 0.020, 0.020}} {
		m, _ := Resolve(MaterialSpec{Material: "PA12", Build: c.build})
		if m.PermittedHoop("").Value != c.hoop || m.PermittedAxial("").Value != c.axial {
			t.Errorf("build %q: hoop %g, axial %g", c.build, m.PermittedHoop("").Value, m.PermittedAxial("").Value)
		}
		near(t, "repeated", m.PermittedHoop("releasable").Value, 0.6*c.hoop, 1e-12)
	}
	m, _ := Resolve(MaterialSpec{Material: "PC", Process: "moulded"})
	if m.PermittedAxial("") != m.PermittedHoop("") {
		t.Error("a moulded part has no layers")
	}
}

func TestArmAcrossLayersIsWarnedOf(t *testing.T) {
	for build, want := range map[string]bool{"along": true, "across": false, "": true} {
		a := armJob()
		a.Lower = MaterialSpec{Material: "PETG", Build: build}
		r := mustAnalyse(t, a)
		got := slices.ContainsFunc(r.Latches[0].Warnings, func(w warning.Warning) bool { return w.Number == warnBendsAcross })
		if got != want {
			t.Errorf("build %q: warned %v, want %v", build, got, want)
		}
	}
}

func TestJobFiguresGoFirst(t *testing.T) {
	m, faults := Resolve(MaterialSpec{Material: "PA12", Figures: Figures{StrainOnce: ptr(0.05), Strength: ptr(50.0), Modulus: ptr(1600.0)}})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if m.Modulus != (Figure{1600, MarkJob}) {
		t.Errorf("modulus %+v", m.Modulus)
	}
	near(t, "Z strain keeps its ratio", m.StrainOnceZ.Value, 0.05*20/35, 1e-12)
	near(t, "repeated", m.StrainRepeated.Value, 0.03, 1e-12)
	near(t, "Z strength keeps its ratio", m.StrengthZ.Value, 50*0.85, 1e-12)
}

func TestShopTableGoesBeforeTheBuiltIn(t *testing.T) {
	shop := Shop{
		"PA12":       {Like: "PA12", Source: "coupons", Figures: Figures{Modulus: ptr(1550.0), Friction: ptr(0.35)}},
		"house PETG": {Like: "PETG", Figures: Figures{StrainOnce: ptr(0.02)}},
	}
	if faults := shop.Validate(); len(faults) > 0 {
		t.Fatal(faults)
	}
	m, faults := shop.Resolve(MaterialSpec{Material: "pa12", Figures: Figures{Poisson: ptr(0.39)}})
	if len(faults) > 0 || m.Modulus != (Figure{1550, MarkShop}) || m.Poisson != (Figure{0.39, MarkJob}) || m.Source != "coupons" || m.Density.Mark != MarkPractice {
		t.Errorf("%+v, %v", m, faults)
	}
	a := capJob()
	before := mustAnalyse(t, a)
	a.Shop = shop
	after := mustAnalyse(t, a)
	if after.Peak >= before.Peak {
		t.Errorf("softer and slipperier shop PA12: %g N, before %g N", after.Peak, before.Peak)
	}
	if m, _ := shop.Resolve(MaterialSpec{Material: "house PETG"}); m.Process != "MEX" || m.StrainOnce.Value != 0.02 {
		t.Errorf("%+v", m)
	}
}

func TestShopFaultsNameTheLine(t *testing.T) {
	for _, c := range []struct {
		field string
		shop  Shop
	}{
		{"a.like", Shop{"a": {}}},
		{"a.like", Shop{"a": {Like: "a"}}},
		{"a.process", Shop{"a": {Like: "PA12", Process: "MEX"}}},
		{"a.modulus", Shop{"a": {Like: "PA12", Figures: Figures{Modulus: ptr(-3.0)}}}},
		{"", Shop{" ": {Like: "PA12"}}},
	} {
		faults := c.shop.Validate()
		if len(faults) == 0 || faults[0].Field != c.field {
			t.Errorf("want a fault in %q, got %v", c.field, faults)
		}
	}
	shop := Shop{"a": {Like: "PA12", Process: "PBF", Figures: Figures{Modulus: ptr(-3.0)}}}
	if _, faults := shop.Resolve(MaterialSpec{Material: "a"}); len(faults) == 0 || faults[0].Field != "material" {
		t.Errorf("got %v", faults)
	}
	if _, faults := (Shop{"a": {Like: "PA12", Process: "PBF"}}).Resolve(MaterialSpec{Material: "a", Process: "MEX"}); len(faults) == 0 {
		t.Error("a process that is not the shop line's must be refused")
	}
}

func TestPairFriction(t *testing.T) {
	get := func(s MaterialSpec) Material { m, _ := Resolve(s); return m }
	pa, pc, steel := get(MaterialSpec{Material: "PA12"}), get(MaterialSpec{Material: "PC", Process: "moulded"}), get(MaterialSpec{Material: "steel"})
	stated := get(MaterialSpec{Material: "PA12", Figures: Figures{Friction: ptr(0.25)}})
	for _, c := range []struct {
		a, b Material
		want float64
	}{{pa, pa, 0.58}, {pa, pc, 0.60}, {pc, pa, 0.60}, {pa, steel, 0.38}, {steel, pa, 0.38}, {stated, pc, 0.25}, {pc, stated, 0.25}} {
		if got := pairFriction(c.a, c.b).Value; got != c.want {
			t.Errorf("%s on %s: %g, want %g", c.a.Name, c.b.Name, got, c.want)
		}
	}
}
