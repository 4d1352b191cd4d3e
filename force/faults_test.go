package force

import (
	"errors"
	"math"
	"slices"
	"testing"

	"ramnest/force/fault"
	"ramnest/force/planar"
)

// wrong is one thing wrong with a job, and the field that must be named.
type wrong struct {
	field  string
	change func(*Assembly)
}

func checkFaults(t *testing.T, job func() Assembly, cases []wrong) {
	t.Helper()
	for _, c := range cases {
		a := job()
		c.change(&a)
		var fields []string
		for _, f := range a.Validate() {
			fields = append(fields, f.Field)
			if f.Problem == "" {
				t.Errorf("%s: fault without a problem", f.Field)
			}
		}
		if !slices.Contains(fields, c.field) {
			t.Errorf("want a fault in %s, got %v", c.field, a.Validate())
		}
		_, err := Analyse(a)
		if _, ok := errors.AsType[fault.Fault](err); !ok {
			t.Errorf("%s: Analyse returned %v, want faults", c.field, err)
		}
	}
}

func TestFaultsOfTheJob(t *testing.T) {
	checkFaults(t, capJob, []wrong{
		{"lower.material", func(a *Assembly) { a.Lower.Material = "unobtainium" }},
		{"lower.material", func(a *Assembly) { a.Lower.Material = "" }},
		{"upper.modulus", func(a *Assembly) { a.Upper.Modulus = ptr(math.NaN()) }},
		{"upper.tolerance", func(a *Assembly) { a.Upper.Tolerance = ptr(-0.1) }},
		{"upper.strain_once", func(a *Assembly) { a.Upper.StrainOnce = ptr(3.0) }},
		{"latches[0].at", func(a *Assembly) { a.Latches[0].At = make([]planar.Point, maxPlaces+1) }},
		{"upper.process", func(a *Assembly) { a.Upper.Process = "MEX" }},
		{"lower.build", func(a *Assembly) { a.Lower.Build = "up" }},
		{"latches", func(a *Assembly) { a.Latches = nil }},
		{"latches", func(a *Assembly) {
			b := a.Latches[0]
			b.ID, b.At = "b", make([]planar.Point, maxPlaces)
			a.Latches = append(a.Latches, b)
		}},
		{"draws", func(a *Assembly) { a.Draws = -1 }},
		{"draws", func(a *Assembly) { a.Draws = 7 }},
		{"latches[0].at", func(a *Assembly) { a.Latches[0].At = nil }},
		{"latches[0].at[0]", func(a *Assembly) { a.Latches[0].At[0].X = math.Inf(1) }},
		{"latches[0].z", func(a *Assembly) { a.Latches[0].Z = math.NaN() }},
		{"latches[0].engage", func(a *Assembly) { a.Latches[0].Engage = ptr(-1.0) }},
		{"latches[0].use", func(a *Assembly) { a.Latches[0].Use = "often" }},
		{"latches[0].id", func(a *Assembly) { a.Latches[0].ID = "" }},
		{"latches[1].id", func(a *Assembly) { a.Latches = append(a.Latches, a.Latches[0]) }},
		{"latches[0]", func(a *Assembly) { a.Latches[0].Annular = nil }},
		{"latches[0]", func(a *Assembly) { a.Latches[0].Ball = &Ball{} }},
	})
}

func TestFaultsOfAnnular(t *testing.T) {
	on := func(field string, change func(*Annular)) wrong {
		return wrong{"latches[0].annular." + field, func(a *Assembly) { change(a.Latches[0].Annular) }}
	}
	checkFaults(t, capJob, []wrong{
		on("undercut", func(v *Annular) { v.Undercut = -0.1 }),
		on("undercut", func(v *Annular) { v.Undercut, v.UndercutTol = 0, nil }),
		on("undercut", func(v *Annular) { v.BeadDiameter = 40 }),
		on("lip_diameter", func(v *Annular) { v.Undercut, v.UndercutTol, v.BeadDiameter = 0, nil, 40 }),
		on("bead_diameter", func(v *Annular) { v.Undercut, v.UndercutTol, v.BeadDiameter, v.LipDiameter = 0, nil, 39, 40 }),
		on("outside", func(v *Annular) { v.Outside = "" }),
		on("joint_diameter", func(v *Annular) { v.JointDiameter = math.NaN() }),
		on("outer_diameter", func(v *Annular) { v.OuterDiameter = 39 }),
		on("inner_diameter", func(v *Annular) { v.InnerDiameter = 41 }),
		on("return_angle", func(v *Annular) { v.ReturnAngle = 2 }),
		on("mating_angle", func(v *Annular) { v.MatingAngle = 0 }),
		on("far_distance", func(v *Annular) { v.FarEnd = "floored" }),
		on("far_end", func(v *Annular) { v.FarEnd = "closed" }),
		on("groove_float", func(v *Annular) { v.GrooveFloat = -1 }),
		on("wall_tol", func(v *Annular) { v.WallTol = ptr(-1.0) }),
		on("split", func(v *Annular) { v.Slots = 4 }),
		on("split", func(v *Annular) { v.Split = "both" }),
		on("slots", func(v *Annular) { v.Split, v.SlotWidth, v.SlotDepth = "outer", 1, 10 }),
		on("slot_width", func(v *Annular) { v.Split, v.Slots, v.SlotWidth, v.SlotDepth = "outer", 40, 4, 10 }),
		on("slot_depth", func(v *Annular) { v.Split, v.Slots, v.SlotWidth, v.SlotDepth = "outer", 8, 1, 3 }),
		on("inner_diameter", func(v *Annular) {
			v.Split, v.Slots, v.SlotWidth, v.SlotDepth, v.InnerDiameter = "inner", 8, 1, 10, 0
		}),
		on("end_distance_inner", func(v *Annular) {
			v.Split, v.Slots, v.SlotWidth, v.SlotDepth, v.EndDistanceInner = "inner", 8, 1, 10, nil
		}),
	})
}

func TestFaultsOfBall(t *testing.T) {
	on := func(field string, change func(*Ball)) wrong {
		return wrong{"latches[0].ball." + field, func(a *Assembly) { change(a.Latches[0].Ball) }}
	}
	checkFaults(t, ballJob, []wrong{
		on("socket", func(v *Ball) { v.Socket = "middle" }),
		on("ball_diameter", func(v *Ball) { v.BallDiameter = 0 }),
		on("mouth_diameter", func(v *Ball) { v.MouthDiameter = 6 }),
		on("mouth_diameter", func(v *Ball) { v.MouthDiameter = 2 }),
		on("outer_diameter", func(v *Ball) { v.OuterDiameter = 6 }),
		on("stem_diameter", func(v *Ball) { v.StemDiameter = 5.8 }),
		on("socket_diameter", func(v *Ball) { v.SocketDiameter = 5.9 }),
		on("socket_depth", func(v *Ball) { v.SocketDepth = 0.1 }),
		on("seat_depth", func(v *Ball) { v.SeatDepth = -1 }),
		on("land", func(v *Ball) { v.Land = ptr(-0.1) }),
		on("entry_angle", func(v *Ball) { v.EntryAngle = ptr(math.Inf(1)) }),
		on("ball_tol", func(v *Ball) { v.BallTol = ptr(-0.1) }),
		on("slots", func(v *Ball) { v.SlotDepth = 3 }),
		on("slots", func(v *Ball) { v.Slots = 1 }),
		on("slot_width", func(v *Ball) { v.Slots, v.SlotDepth = 4, 5 }),
		on("slot_depth", func(v *Ball) { v.Slots, v.SlotWidth = 4, 1 }),
		on("ball_diameter", func(v *Ball) { v.BallTol, v.MouthTol = ptr(0.9), ptr(0.9) }),
	})
}

func TestFaultsOfCantilever(t *testing.T) {
	on := func(field string, change func(*Cantilever)) wrong {
		return wrong{"latches[0].cantilever." + field, func(a *Assembly) { change(a.Latches[0].Cantilever) }}
	}
	checkFaults(t, armJob, []wrong{
		on("flexes", func(v *Cantilever) { v.Flexes = "" }),
		on("bends", func(v *Cantilever) { v.Bends = "sideways" }),
		on("shape", func(v *Cantilever) { v.Shape = "s_arm" }),
		on("length", func(v *Cantilever) { v.Length = 0 }),
		on("undercut", func(v *Cantilever) { v.Undercut = 15 }),
		on("thickness", func(v *Cantilever) { v.Thickness = 0 }),
		on("thickness", func(v *Cantilever) { v.Thickness = 25 }),
		on("thickness_tol", func(v *Cantilever) { v.ThicknessTol = ptr(3.0) }),
		on("tip_thickness", func(v *Cantilever) { v.TipThickness = 0.01 }),
		on("width", func(v *Cantilever) { v.Width = math.NaN() }),
		on("tip_width", func(v *Cantilever) { v.TipWidth = 100 }),
		on("section", func(v *Cantilever) { v.Section = "round" }),
		on("tension", func(v *Cantilever) { v.Section, v.NarrowWidth = "trapezoid", 3 }),
		on("narrow_width", func(v *Cantilever) { v.Section, v.Tension, v.NarrowWidth = "trapezoid", "wide", 9 }),
		on("arc", func(v *Cantilever) { v.Section, v.OuterRadius, v.InnerRadius = "ring_segment", 12, 10 }),
		on("tip_thickness", func(v *Cantilever) {
			v.Section, v.OuterRadius, v.InnerRadius, v.Arc = "ring_segment", 12, 10, rad(60)
		}),
		on("base_length", func(v *Cantilever) { v.Shape, v.TipThickness, v.BaseThickness = "l_arm", 0, 2 }),
		on("bend_radius", func(v *Cantilever) { v.Shape, v.TipThickness = "u_arm", 0 }),
		on("bend_side", func(v *Cantilever) { v.Shape, v.TipThickness, v.BendRadius, v.BendSide = "u_arm", 0, 3, "left" }),
		on("lead_in", func(v *Cantilever) { v.LeadIn = "both" }),
		on("tip_thickness", func(v *Cantilever) { v.Shape, v.BendRadius = "u_arm", 3 }),
		on("bar_radius", func(v *Cantilever) { v.Shape, v.BarLength = "rocker", 8 }),
		on("bars", func(v *Cantilever) { v.Shape, v.BarRadius, v.BarLength, v.Bars = "rocker", 1, 8, 3 }),
		on("base", func(v *Cantilever) { v.Base = "soft" }),
		on("base", func(v *Cantilever) { v.Shape, v.TipThickness, v.BendRadius, v.Base = "u_arm", 0, 3, "solid" }),
		on("base_factor", func(v *Cantilever) { v.BaseFactor = ptr(0.5) }),
		on("base_factor", func(v *Cantilever) { v.BaseFactor, v.Base = ptr(1.5), "solid" }),
		on("root_radius", func(v *Cantilever) { v.RootRadius = ptr(0.0) }),
		on("toward[0]", func(v *Cantilever) { v.Toward = []planar.Point{{}} }),
	})
}

func TestFaultsOfPressed(t *testing.T) {
	on := func(field string, change func(*PressFit)) wrong {
		return wrong{"latches[0].press_fit." + field, func(a *Assembly) { change(a.Latches[0].PressFit) }}
	}
	checkFaults(t, pinJob, []wrong{
		on("outside", func(v *PressFit) { v.Outside = "" }),
		on("interference", func(v *PressFit) { v.Interference, v.InterferenceTol = 0, nil }),
		on("interference", func(v *PressFit) { v.Fit = "5 H7/s6" }),
		on("interference", func(v *PressFit) { v.Interference = 2 }),
		on("interference_tol", func(v *PressFit) { v.InterferenceTol = ptr(math.NaN()) }),
		on("fit", func(v *PressFit) { v.Interference, v.InterferenceTol, v.Fit = 0, nil, "5 H7 s6" }),
		on("fit", func(v *PressFit) { v.Interference, v.InterferenceTol, v.Fit = 0, nil, "5 H7/g6" }),
		on("joint_diameter", func(v *PressFit) { v.Interference, v.InterferenceTol, v.Fit = 0, nil, "8 H7/s6" }),
		on("joint_diameter", func(v *PressFit) { v.JointDiameter = -5 }),
		on("bore_diameter", func(v *PressFit) { v.Interference, v.InterferenceTol, v.PinDiameter = 0, nil, 5.05 }),
		on("pin_diameter", func(v *PressFit) {
			v.Interference, v.InterferenceTol, v.PinDiameter, v.BoreDiameter = 0, nil, 5, 5.1
		}),
		on("pin_tol", func(v *PressFit) {
			v.Interference, v.InterferenceTol, v.PinDiameter, v.BoreDiameter, v.PinTol = 0, nil, 5.1, 5, ptr(-1.0)
		}),
		on("outer_diameter", func(v *PressFit) { v.OuterDiameter = 5 }),
		on("bore_beyond", func(v *PressFit) { v.BoreBeyond = ptr(-1.0) }),
		on("inner_diameter", func(v *PressFit) { v.InnerDiameter = 5 }),
		on("engagement_length", func(v *PressFit) { v.EngagementLength = 0 }),
		on("lead_in_angle", func(v *PressFit) { v.LeadInAngle = ptr(rad(80)) }),
	})
	ribs := func(field string, change func(*CrushRib)) wrong {
		return wrong{"latches[0].crush_rib." + field, func(a *Assembly) { change(a.Latches[0].CrushRib) }}
	}
	checkFaults(t, ribJob, []wrong{
		ribs("ribs", func(v *CrushRib) { v.Ribs = "" }),
		ribs("joint_diameter", func(v *CrushRib) { v.JointDiameter = 0 }),
		ribs("rib_count", func(v *CrushRib) { v.Count = 0 }),
		ribs("rib_count", func(v *CrushRib) { v.Count = 50 }),
		ribs("rib_height", func(v *CrushRib) { v.Height = 0 }),
		ribs("rib_width", func(v *CrushRib) { v.Width = math.Inf(1) }),
		ribs("crush", func(v *CrushRib) { v.Crush = 0.7 }),
		ribs("crush_tol", func(v *CrushRib) { v.CrushTol = ptr(3.0) }),
		ribs("engagement_length", func(v *CrushRib) { v.EngagementLength = -1 }),
		ribs("lead_in_angle", func(v *CrushRib) { v.LeadInAngle = ptr(0.0) }),
		ribs("flow_stress", func(v *CrushRib) { v.FlowStress = ptr(0.0) }),
	})
}

func TestSoundJobsHaveNoFaults(t *testing.T) {
	for i, a := range append(variants(), mixed(), mixed24(), rings24(), balls24()) {
		if faults := a.Validate(); len(faults) > 0 {
			t.Errorf("variant %d: %v", i, faults)
		}
	}
}

// TestFaultsSayPercent: shares are written as the job file writes them.
func TestFaultsSayPercent(t *testing.T) {
	a := capJob()
	a.Upper.StrainOnce = ptr(3.0)
	want := "upper.strain_once: 300 %; is outside what a material can have (0.001 to 100 %)"
	if f := a.Validate(); len(f) != 1 || f[0].Error() != want {
		t.Errorf("got %v, want %q", f, want)
	}
}

func TestKindOfALatch(t *testing.T) {
	for _, a := range everyJob() {
		if got := a.Latches[0].Kind(); got != mustAnalyse(t, a).Latches[0].Kind {
			t.Errorf("%s: kind %q", a.Latches[0].ID, got)
		}
	}
	both := capJob().Latches[0]
	both.Ball = &Ball{}
	if both.Kind() != "" || (Latch{}).Kind() != "" {
		t.Error("several kinds or none have no name")
	}
}
