package force

import "ramnest/force/planar"

// The invented jobs that the tests share.

// stated gives the parts of a job stated figures, so that a test can work with them by
// hand: PA12 and PETG with one modulus at any strain, PC with a straight secant line.
func stated(a Assembly) Assembly {
	of := func(s, other MaterialSpec) MaterialSpec {
		f := Figures{ModulusSpread: ptr(0.15), FrictionSpread: ptr(0.25), SecantZero: ptr(noBound)}
		switch s.Material {
		case "PA12":
			f.Modulus, f.Friction = ptr(2000.0), ptr(0.6)
			if other.Material == "steel" {
				f.Friction = ptr(0.4)
			}
		case "PETG":
			f.Modulus, f.Friction = ptr(2100.0), ptr(0.45)
		case "PC":
			f.Modulus, f.Friction, f.SecantZero = ptr(2310.0), ptr(0.66), ptr(0.0933)
		case "steel":
			f = Figures{Modulus: ptr(210000.0), ModulusSpread: ptr(0.15), FrictionSpread: ptr(0.25)}
		}
		s.Figures = f
		return s
	}
	a.Lower, a.Upper = of(a.Lower, a.Upper), of(a.Upper, a.Lower)
	return a
}

// capJob is a round cap of powder bed PA12 on a body of the same.
func capJob() Assembly {
	pa12 := MaterialSpec{Material: "PA12", Process: "PBF", Build: "along"}
	return Assembly{Lower: pa12, Upper: pa12, Seed: 7, Draws: 400, Latches: []Latch{{
		ID: "rim", At: []planar.Point{{X: 0, Y: 0}}, Z: 20,
		Annular: &Annular{Outside: "lower", JointDiameter: 40, Undercut: 0.8, UndercutTol: ptr(0.15), MatingAngle: rad(25), ReturnAngle: rad(40), Land: 0.4,
			OuterDiameter: 43.2, InnerDiameter: 36.8, EndDistance: 3, EndDistanceInner: ptr(2)},
	}}}
}

// collarJob is the same cap with its collar split into eight fingers.
func collarJob() Assembly {
	a := capJob()
	a.Latches[0].ID = "collar"
	v := a.Latches[0].Annular
	v.Split, v.Slots, v.SlotWidth, v.SlotDepth = "outer", 8, 1.5, 14
	return a
}

// pinJob is two steel pins in bosses of powder bed PA12.
func pinJob() Assembly {
	return Assembly{Lower: MaterialSpec{Material: "PA12"}, Upper: MaterialSpec{Material: "steel"}, Seed: 7, Draws: 400, Latches: []Latch{{
		ID: "pin", At: []planar.Point{{X: 10, Y: 0}, {X: -10, Y: 0}}, Z: 5,
		PressFit: &PressFit{Outside: "lower", JointDiameter: 5, Interference: 0.05, InterferenceTol: ptr(0.02), OuterDiameter: 11, EngagementLength: 10, LeadInAngle: ptr(rad(15)), RoughnessLoss: ptr(0)},
	}}}
}

// ballJob is six balls on stems in a hood of powder bed PA12.
func ballJob() Assembly {
	pa12 := MaterialSpec{Material: "PA12", Process: "PBF", Build: "along"}
	return Assembly{Lower: pa12, Upper: pa12, Seed: 7, Draws: 400, Latches: []Latch{{
		ID: "ball", At: []planar.Point{{X: 20, Y: 0}, {X: 10, Y: 17}, {X: -10, Y: 17}, {X: -20, Y: 0}, {X: -10, Y: -17}, {X: 10, Y: -17}}, Z: 12,
		Ball: &Ball{Socket: "lower", BallDiameter: 6, BallTol: ptr(0.05), MouthDiameter: 5.6, MouthTol: ptr(0.05), OuterDiameter: 9, StemDiameter: 3, SocketDiameter: 6.3, SocketDepth: 8},
	}}}
}

// armJob is four hooks of moulded PC.
func armJob() Assembly {
	pc := MaterialSpec{Material: "PC", Process: "moulded"}
	return Assembly{Lower: pc, Upper: pc, Seed: 7, Draws: 400, Latches: []Latch{{
		ID: "arm", At: []planar.Point{{X: 25, Y: 10}, {X: 25, Y: -10}, {X: -25, Y: 10}, {X: -25, Y: -10}}, Z: 15,
		Cantilever: &Cantilever{Flexes: "lower", Bends: "outward", Undercut: 1.2, UndercutTol: ptr(0.1), MatingAngle: rad(30), ReturnAngle: rad(45), Land: 0.3,
			Length: 19, Thickness: 2, TipThickness: 1, Width: 6, RootRadius: ptr(1)},
	}}}
}

// ribJob is a steel pin in a bore with three crush ribs.
func ribJob() Assembly {
	return Assembly{Lower: MaterialSpec{Material: "PETG"}, Upper: MaterialSpec{Material: "steel"}, Seed: 7, Draws: 400, Latches: []Latch{{
		ID: "rib", At: []planar.Point{{X: 0, Y: 0}}, Z: 6,
		CrushRib: &CrushRib{Ribs: "lower", JointDiameter: 8, Count: 3, Height: 0.6, Width: 0.8, Crush: 0.3, CrushTol: ptr(0.1), EngagementLength: 8, LeadInAngle: ptr(rad(20)), RoughnessLoss: ptr(0)},
	}}}
}

// leverJob is two hooks of PA12 on bars that twist.
func leverJob() Assembly {
	pa12 := MaterialSpec{Material: "PA12", Process: "PBF", Build: "along"}
	return Assembly{Lower: pa12, Upper: pa12, Seed: 7, Draws: 400, Latches: []Latch{{
		ID: "lever", At: []planar.Point{{X: 25, Y: 0}, {X: -25, Y: 0}}, Z: 9,
		Torsional: &Torsional{Flexes: "upper", Bends: "inward", Undercut: 0.6, UndercutTol: ptr(0.1), MatingAngle: rad(30), ReturnAngle: rad(40), Land: 0.2,
			Length: 10, BarRadius: 1.6, BarLength: 9, RootRadius: ptr(0.8), PushLength: 8},
	}}}
}

// everyJob is one job of each kind at least.
func everyJob() []Assembly {
	return []Assembly{capJob(), collarJob(), pinJob(), ballJob(), armJob(), ribJob(), leverJob()}
}
