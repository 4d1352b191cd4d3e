package force

import (
	"math"
	"ramnest/force/unit"
)

func (f PressFit) First() string                { return f.Outside }
func (f PressFit) Opening() string              { return f.Outside }
func (f PressFit) Carrier() string              { return "" }
func (f PressFit) Snaps() bool                  { return false }
func (f PressFit) Searched() bool               { return false }
func (f PressFit) Play() float64                { return 0 }
func (f PressFit) Aside() float64               { return 0 }
func (f PressFit) Kept([]int) Kind              { return f }
func (f PressFit) OnPlate() (Kind, string)      { return f, "" }
func (f PressFit) Slotted() (Kind, unit.Text)   { return nil, unit.Text{} }
func (f PressFit) Accept(v Visitor)             { v.PressFit(f) }
func (f PressFit) relations() []relation        { return nil }
func (f PressFit) sizeKey() string              { return "interference" }
func (f PressFit) Assumed() (string, unit.Text) { return "", unit.Text{} }

func (f PressFit) Deeper(_, _ float64, _ Member) float64 { return 0 }

func (f PressFit) Stiffened(Material, float64) (Kind, string, float64) { return f, "", 0 }

func (f PressFit) writtenAs(key string) string {
	switch {
	case key != "interference" && (key != "joint_diameter" || f.JointDiameter != 0):
	case f.Fit != "":
		return "fit"
	case f.BoreDiameter != 0:
		return "bore_diameter"
	}
	return key
}

// withDiameters writes an ISO fit as the two mean diameters and their tolerances.
func (f PressFit) withDiameters() PressFit {
	fit, err := ParseISOFit(f.Fit)
	if f.Fit == "" || err != nil {
		return f
	}
	f.Fit = ""
	if f.JointDiameter == 0 {
		f.JointDiameter = fit.Nominal
	}
	f.BoreDiameter = fit.Nominal + (fit.HoleLower+fit.HoleUpper)/2
	f.PinDiameter = fit.Nominal + (fit.ShaftLower+fit.ShaftUpper)/2
	if f.BoreFinished {
		f.BoreTol = new(fit.HoleTol)
	}
	if f.PinFinished {
		f.PinTol = new(fit.ShaftTol)
	}
	return f
}

func (f PressFit) Size(hub, shaft Material) Size {
	f = f.withDiameters()
	if f.PinDiameter == 0 {
		return sizeOfBoth("interference", f.Interference, f.InterferenceTol, f.JointDiameter, 2, hub, shaft)
	}
	return sizeApart("pin_diameter less bore_diameter", f.BoreDiameter, f.PinDiameter, f.BoreTol, f.PinTol, hub, shaft)
}

func (f PressFit) Resized(size float64, m Member) Kind {
	f = f.withDiameters()
	if f.PinDiameter == 0 {
		f.Interference = size
		return f
	}
	if f.JointDiameter == 0 {
		f.JointDiameter = f.BoreDiameter
	}
	m.change(&f.BoreDiameter, &f.PinDiameter, size)
	return f
}

func (f PressFit) Toleranced(tol float64) Kind {
	f = f.withDiameters()
	f.RoughnessLoss = new(0.0)
	if f.PinDiameter == 0 {
		f.InterferenceTol = new(tol)
	} else {
		f.PinTol, f.BoreTol = each(tol), each(tol)
	}
	return f
}

func (f PressFit) Largest() (float64, bool) {
	f = f.Resized(1, Inner).(PressFit)
	return 0.15 * max(f.BoreDiameter, f.JointDiameter), true
}

func (f PressFit) Footprint() Footprint {
	return Footprint{Radius: f.diameter() / 2, Size: f.OuterDiameter / 2, Hole: true}
}

// diameter is that of the joint, by whichever way it is written [mm].
func (f PressFit) diameter() float64 {
	if iso, err := ParseISOFit(f.Fit); f.Fit != "" && err == nil {
		return iso.Nominal
	}
	for _, d := range []float64{f.JointDiameter, f.BoreDiameter, f.PinDiameter} {
		if d > 0 {
			return d
		}
	}
	return 0
}

func (f PressFit) AcrossLayers(hub, _ Material) bool { return ringAcross(hub) }

func (f PressFit) Looser(share float64) (Kind, unit.Text) {
	switch {
	case f.Interference > 0:
		f.Interference *= share
		return f, unit.Textf("interference %v", unit.Length.Of(f.Interference))
	case f.PinDiameter > 0:
		f.PinDiameter = f.BoreDiameter + (f.PinDiameter-f.BoreDiameter)*share
		return f, unit.Textf("pin %v", unit.Length.Of(f.PinDiameter).To(4))
	}
	return nil, unit.Text{}
}

func (f PressFit) Gentler(angle float64) (Kind, string, bool) {
	if !steeper(f.LeadInAngle, angle) {
		return nil, "", false
	}
	f.LeadInAngle = new(angle)
	return f, "lead_in_angle", true
}

func (f PressFit) strengths(b *bounds) {
	d := f.drawn().d
	b.shear("shear of the bore's surface", math.Pi*d*f.EngagementLength, true, false)
	b.section("section of the boss", true, math.Pi/4*(f.OuterDiameter*f.OuterDiameter-d*d))
	b.section("section of the pin", false, math.Pi/4*(d*d-f.InnerDiameter*f.InnerDiameter))
}

func (f PressFit) warn(w *warner) {
	hub, shaft := w.outer, w.inner
	d := f.sizing(hub, shaft).d
	p := w.s.load / (math.Pi * d)
	if hoop, strength := p*lameRatio(f.OuterDiameter, d), hub.HoopStrength(); hoop > strength.Value {
		stress, limit := unit.Apart(3, unit.Stress, hoop, strength.Value)
		w.add(warnYield, "hoop stress in the boss %v is above its strength %v [%s]: it yields or splits", stress, limit, strength.Mark)
	}
	if w.s.yields {
		w.add(warnYield, "the boss or pin flows through its wall: the force is limited to that of %v in the joint", unit.Stress.Of(p))
	}
	if stress := w.r.PeakEach / (math.Pi / 4 * (d*d - f.InnerDiameter*f.InnerDiameter)); stress > shaft.Strength.Value {
		shown, limit := unit.Apart(3, unit.Stress, stress, shaft.Strength.Value)
		w.add(warnPinPressed, "the force presses the pin with %v along its axis, above its strength of %v: it buckles or swells", shown, limit)
	}
	if f.Fit != "" {
		fit, _ := ParseISOFit(f.Fit)
		if !f.BoreFinished && hub.ToleranceOn(d) > 1.5*fit.HoleTol || !f.PinFinished && shaft.ToleranceOn(d) > 1.5*fit.ShaftTol {
			w.add(warnFitOnPrint, "the process does not keep %s; its own tolerance is drawn: finish the bore or pin and say so, or state diameters",
				f.Fit)
		}
	}
}

func (f PressFit) usual() []usualSize {
	s := f.drawn()
	return []usualSize{
		{"joint_diameter", "joint diameter", "press fits", "mm", 1, 100, MarkPractice, s.d},
		{"interference", "interference over joint diameter", "press fits", "", 0.0003, 0.05, MarkPractice, s.size / s.d},
		{"engagement_length", "engaged length over diameter", "press fits", "", 0.2, 8, MarkPractice, f.EngagementLength / s.d},
	}
}
