package workinstructions

import (
	"fmt"
	"strings"
	"testing"

	"ramnest/force/method"
	"ramnest/force/planar"
	"ramnest/force/unit"
)

// byHandSheet is the demo with a joint so light that hands do it.
func byHandSheet(tb testing.TB) Sheet {
	s := demoSheet(tb)
	d := demoDemand()
	d.DesignForce, d.P50, d.Worst, d.PeakForce, d.Work, d.SeatForce, d.Permanent, d.Thrust = 38, 30, 47, 30, 52, 4, false, planar.Point{}
	st := &s.Steps[0]
	st.Decision, st.Usable, st.Lever, st.Thrust, st.Pull = method.Choose(d, method.Bench{}, nil), 0, 0, planar.Point{}, 15
	st.Force = Force{Design: 38, Peak: 30, P5: 22, P50: 30, P95: 38, Worst: 47, Seat: 4, Stroke: 4.2, Work: 52, Humps: 1}
	st.Latches = []Latch{{ID: "hook", Kind: "cantilever", Count: 2, PeakEach: 15, Strain: 0.012, Permitted: 0.024, Separation: 41}}
	return s
}

// malletSheet is the demo by mallet and vise.
func malletSheet(tb testing.TB) Sheet {
	s := demoSheet(tb)
	d := demoDemand()
	d.DesignForce, d.P50, d.Worst, d.PeakForce, d.Work, d.SeatForce, d.Permanent, d.Thrust, d.ShockLimit = 320, 250, 390, 250, 1400, 20, false, planar.Point{}, 3000
	st := &s.Steps[0]
	st.Decision, st.Usable, st.Lever, st.Thrust = method.Choose(d, method.Bench{}, nil), 0, 0, planar.Point{}
	st.Force = Force{Design: 320, Peak: 250, P5: 190, P50: 250, P95: 320, Worst: 390, Seat: 20, Stroke: 4.2, Work: 1400, Humps: 3}
	st.Latches[0].Permanent = false
	return s
}

// overrideSheet is a hand sheet for a joint that hands cannot close.
func overrideSheet(tb testing.TB) Sheet {
	s := demoSheet(tb)
	s.Override = "Trial of five parts by the engineer in charge, behind a screen; no press on site until week 14."
	st := &s.Steps[0]
	st.Decision = method.Choose(demoDemand(), method.Bench{}, &method.Forced{Method: method.ByHand, Override: s.Override})
	st.Usable, st.Lever = 0, 0
	return s
}

// twoStepSheet presses the cap, then pushes two pins in by hand.
func twoStepSheet(tb testing.TB) Sheet {
	s := demoSheet(tb)
	second := byHandSheet(tb).Steps[0]
	second.Name, second.Lower, second.Upper, second.Nest, second.Anvil = "pins into cap", "Housing", "Pin carrier", "nest", "anvil 2"
	second.SoFar = true
	s.Steps = append(s.Steps, second)
	s.Parts = append(s.Parts, Part{Name: "Pin carrier", Material: "PETG", Process: "MEX", Role: Upper, Step: 2, Count: 1})
	s.Tooling[0].Steps = []int{1, 2}
	s.Tooling = append(s.Tooling, Tool{Name: "anvil 2", Mark: "FWL-1042 B 7f3a-91c2", Size: [3]float64{60, 40, 22}, Mass: 0.05, Material: "PA12, PBF", Steps: []int{2}})
	return s
}

// fullSheet has six steps, twelve latches in each, and many remarks.
func fullSheet(tb testing.TB) Sheet {
	s := demoSheet(tb)
	base := s.Steps[0]
	base.Latches = nil
	for i := range 12 {
		base.Latches = append(base.Latches, Latch{ID: fmt.Sprintf("L%d", i+1), Kind: "cantilever", Count: 4, PeakEach: 20 + float64(i), Strain: 0.01 + 0.001*float64(i), Permitted: 0.03, Permanent: i%2 == 0, Separation: 90, SelfLocking: i%3 == 0})
	}
	base.Facts = Facts{Brittle: true, ShockSensitive: true, Electronics: true, KeepOuts: true, SharpOrUncured: true, AcrossLayers: true, ToolMassKg: 4.2}
	base.Force.Humps = 12
	s.Steps = nil
	for i := range 6 {
		st := base
		st.Name = fmt.Sprintf("module %d onto base", i+1)
		s.Steps = append(s.Steps, st)
		s.Parts = append(s.Parts, Part{Name: fmt.Sprintf("Module %d", i+1), Material: "PA12", Process: "PBF", Role: Upper, Step: i + 1, Count: i + 1})
		s.Notes = append(s.Notes, strings.Repeat(fmt.Sprintf("Note %d says something that a reader may want to know about the joint. ", i+1), 4))
	}
	return s
}

// longSheet has names as long as they may be.
func longSheet(tb testing.TB) Sheet {
	s := fullSheet(tb)
	long := strings.Repeat("Intermediate housing of the weather logger with reinforced rim ", 5)[:300]
	unbroken := strings.Repeat("ABCDEFGHIJ-0123456789_", 14)[:300]
	s.Title, s.Author, s.Job = long, strings.Repeat("Author ", 8), strings.Repeat("J", MostHead)
	for i := range s.Parts {
		s.Parts[i].Name, s.Parts[i].Material = unbroken, long
	}
	for i := range s.Tooling {
		s.Tooling[i].Name, s.Tooling[i].Mark = long, unbroken
	}
	for i := range s.Steps {
		st := &s.Steps[i]
		st.Name, st.Lower, st.Upper, st.Nest, st.Anvil, st.Seat.Where, st.Seat.Gauge = long, long, unbroken, long, unbroken, long, long
		st.Latches[0].ID = unbroken
		st.Pictures.Load.Caption = strings.Repeat("x", MostName)
	}
	s.Bench = []string{strings.Repeat("b ", MostText/2), unbroken}
	s.Warnings = []Remark{{Text: strings.Repeat("word ", MostText/5)}, {Text: strings.Repeat("w", MostText)}}
	return s
}

// hostileSheet has texts that no font has, or that would break a file.
func hostileSheet(tb testing.TB) Sheet {
	s := demoSheet(tb)
	s.Title = "Cap \x00\x01\x02\x1b[31m (with) \\ brackets ) ( and \u202e right to left \u05e9\u05dc\u05d5\u05dd"
	s.Parts[0].Name = "Геäuse 😀 日本 ﬁ \xff\xfe e\u0301 \u2028 Żółć ≤ 5 µm ±2° ²"
	s.Steps[0].Lower = "%s %d {nb} \n\r\t tab"
	s.Author = "Zażółć Gęślą, Ærø Ñandú Ὰ"
	return s
}

// variants are all sheets by name.
func variants(tb testing.TB) map[string]Sheet {
	letter := demoSheet(tb)
	letter.Paper, letter.Units = Letter, unit.System{Inch: true, Pound: true}
	bare := byHandSheet(tb)
	bare.Parts, bare.Tooling, bare.Bench, bare.Notes, bare.Assumed, bare.Warnings = nil, nil, nil, nil, 0, nil
	bare.Quantity, bare.RatePerHour, bare.Author = 0, 0, ""
	st := &bare.Steps[0]
	st.Anvil, st.Pictures, st.Latches, st.Pull = "", Pictures{}, nil, 0
	st.Force = Force{Design: 38}
	return map[string]Sheet{
		"press": demoSheet(tb), "hand": byHandSheet(tb), "mallet": malletSheet(tb), "override": overrideSheet(tb), "two": twoStepSheet(tb),
		"full": fullSheet(tb), "long": longSheet(tb), "hostile": hostileSheet(tb), "letter": letter, "bare": bare,
	}
}
