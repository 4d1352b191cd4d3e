package workinstructions

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"
	"time"

	"ramnest/force/fault"
	"ramnest/force/method"
)

// A sheet with a fault is refused with the field by name, and nothing is
// written.
func TestFaultySheetsAreRefused(t *testing.T) {
	for _, row := range []struct {
		field  string
		change func(*Sheet)
	}{
		{"paper", func(s *Sheet) { s.Paper = "A5" }},
		{"job", func(s *Sheet) { s.Job = " " }},
		{"job", func(s *Sheet) { s.Job = strings.Repeat("1", MostHead+1) }},
		{"title", func(s *Sheet) { s.Title = "" }},
		{"revision", func(s *Sheet) { s.Revision = "" }},
		{"fingerprint", func(s *Sheet) { s.Fingerprint = "" }},
		{"tool", func(s *Sheet) { s.Tool = "" }},
		{"date", func(s *Sheet) { s.Date = time.Time{} }},
		{"quantity", func(s *Sheet) { s.Quantity = -1 }},
		{"rate_per_hour", func(s *Sheet) { s.RatePerHour = math.NaN() }},
		{"override", func(s *Sheet) { s.Override = "because" }},
		{"bench[0]", func(s *Sheet) { s.Bench = []string{""} }},
		{"notes[0]", func(s *Sheet) { s.Notes = []string{strings.Repeat("x", MostText+1)} }},
		{"warnings", func(s *Sheet) { s.Warnings = make([]Remark, MostList+1) }},
		{"parts[0].name", func(s *Sheet) { s.Parts[0].Name = "" }},
		{"parts[1].role", func(s *Sheet) { s.Parts[1].Role = "middle" }},
		{"parts[0].count", func(s *Sheet) { s.Parts[0].Count = 0 }},
		{"parts[0].step", func(s *Sheet) { s.Parts[0].Step = 2 }},
		{"tooling[0].size", func(s *Sheet) { s.Tooling[0].Size[1] = 0 }},
		{"tooling[0].mass", func(s *Sheet) { s.Tooling[0].Mass = -1 }},
		{"tooling[1].mass", func(s *Sheet) { s.Tooling[1].Mass = math.Inf(1) }},
		{"tooling[1].steps", func(s *Sheet) { s.Tooling[1].Steps = []int{0} }},
		{"steps", func(s *Sheet) { s.Steps = nil }},
		{"steps[0].name", func(s *Sheet) { s.Steps[0].Name = "" }},
		{"steps[0].lower", func(s *Sheet) { s.Steps[0].Lower = "" }},
		{"steps[0].nest", func(s *Sheet) { s.Steps[0].Nest = "" }},
		{"steps[0].anvil", func(s *Sheet) { s.Steps[0].Anvil = "" }},
		{"steps[0].decision.chosen", func(s *Sheet) { s.Steps[0].Decision.Chosen = method.None }},
		{"steps[0].decision.chosen", func(s *Sheet) { s.Steps[0].Decision.Chosen = "hammer" }},
		{"steps[0].decision.chosen", func(s *Sheet) { s.Steps[0].Decision.Chosen = method.ByHand }},
		{"steps[0].decision.chosen", func(s *Sheet) { s.Steps[0].Facts.Method = method.ByMallet }},
		{"steps[0].decision.options", func(s *Sheet) { s.Steps[0].Decision.Options = nil }},
		{"steps[0].decision.options", func(s *Sheet) { s.Steps[0].Decision.Options[2].Press = nil }},
		{"steps[0].decision.options", func(s *Sheet) { s.Steps[0].Decision.Options[2].Verdict = "fine" }},
		{"steps[0].decision.overridden", func(s *Sheet) { s.Steps[0].Decision.Overridden = true }},
		{"steps[0].decision.options[0].limits[0].demand", func(s *Sheet) { s.Steps[0].Decision.Options[0].Limits[0].Demand = math.NaN() }},
		{"steps[0].facts.anvil_held", func(s *Sheet) { s.Steps[0].Facts.AnvilHeld, s.Steps[0].Anvil = true, "" }},
		{"steps[0].facts.tool_mass_kg", func(s *Sheet) { s.Steps[0].Facts.ToolMassKg = -1 }},
		{"steps[0].usable", func(s *Sheet) { s.Steps[0].Usable = -1 }},
		{"steps[0].force.design", func(s *Sheet) { s.Steps[0].Force.Design = 0 }},
		{"steps[0].force.design", func(s *Sheet) { s.Steps[0].Force.Design = math.NaN() }},
		{"steps[0].force.worst", func(s *Sheet) { s.Steps[0].Force.Worst = math.Inf(1) }},
		{"steps[0].force.p50", func(s *Sheet) { s.Steps[0].Force.P5 = 900 }},
		{"steps[0].force.humps", func(s *Sheet) { s.Steps[0].Force.Humps = -1 }},
		{"steps[0].force.curve[1]", func(s *Sheet) { s.Steps[0].Force.Curve[1][0] = 9 }},
		{"steps[0].force.curve[3]", func(s *Sheet) { s.Steps[0].Force.Curve[3][1] = -1 }},
		{"steps[0].force.curve[0][1]", func(s *Sheet) { s.Steps[0].Force.Curve[0][1] = math.NaN() }},
		{"steps[0].force.curve", func(s *Sheet) { s.Steps[0].Force.Curve = [][2]float64{{1, 0}, {1, 5}} }},
		{"steps[0].latches[0].id", func(s *Sheet) { s.Steps[0].Latches[0].ID = "" }},
		{"steps[0].latches[0].count", func(s *Sheet) { s.Steps[0].Latches[0].Count = 0 }},
		{"steps[0].latches[0].strain", func(s *Sheet) { s.Steps[0].Latches[0].Strain = -0.1 }},
		{"steps[0].thrust.x", func(s *Sheet) { s.Steps[0].Thrust.X = math.NaN() }},
		{"steps[0].seat.between[0]", func(s *Sheet) { s.Steps[0].Seat.Where = "" }},
		{"steps[0].seat", func(s *Sheet) { s.Steps[0].Seat.Low, s.Steps[0].Seat.High = 0, 0 }},
		{"steps[0].seat", func(s *Sheet) { s.Steps[0].Seat.Low = s.Steps[0].Seat.High }},
		{"steps[0].seat.each", func(s *Sheet) { s.Steps[0].Seat.First = 5 }},
		{"steps[0].seat.kind", func(s *Sheet) { s.Steps[0].Seat.Kind = "width" }},
		{"steps[0].seat.low", func(s *Sheet) { s.Steps[0].Seat.Low = -0.1 }},
		{"steps[0].pictures.load", func(s *Sheet) { s.Steps[0].Pictures.Load.Caption = strings.Repeat("x", MostName+1) }},
		{"steps[0].pictures.plan.image", func(s *Sheet) {
			s.Steps[0].Pictures.Plan.Image = image.NewPaletted(image.Rect(0, 0, 4, 4), color.Palette{})
		}},
		{"steps[0].pictures.plan.image", func(s *Sheet) {
			s.Steps[0].Pictures.Plan.Image = &image.Paletted{Rect: image.Rect(0, 0, 4, 4), Stride: 4, Palette: color.Palette{color.White}}
		}},
		{"steps[0].pictures.press.image", func(s *Sheet) { s.Steps[0].Pictures.Press.Image = image.White }},
	} {
		s := demoSheet(t)
		s.Tooling[1].Steps = []int{1}
		row.change(&s)
		var out bytes.Buffer
		err := Write(&out, s)
		if err == nil {
			t.Errorf("%s: written", row.field)
			continue
		}
		if out.Len() > 0 {
			t.Errorf("%s: refused, but %d bytes are written", row.field, out.Len())
		}
		found := false
		for _, f := range s.Validate() {
			found = found || f.Field == row.field
		}
		f, ok := errors.AsType[fault.Fault](err)
		if !found || !ok || f.Problem == "" {
			t.Errorf("%s: the error is %v", row.field, err)
		}
	}
}

func TestOverrideNeedsAReason(t *testing.T) {
	s := overrideSheet(t)
	s.Override = "  "
	if err := Write(&bytes.Buffer{}, s); err == nil || !strings.Contains(err.Error(), "override:") {
		t.Errorf("an override without a reason: %v", err)
	}
}

// Pictures of every kind, and none, are good; an empty pointer is none.
func TestPicturesOfEveryKind(t *testing.T) {
	s := demoSheet(t)
	p := &s.Steps[0].Pictures
	gray := image.NewGray16(image.Rect(-5, -5, 60, 40))
	nrgba := image.NewNRGBA(image.Rect(0, 0, 50, 80))
	nrgba.SetNRGBA(10, 10, color.NRGBA{200, 0, 0, 90})
	clear := image.NewPaletted(image.Rect(3, 3, 40, 40), color.Palette{color.Transparent, color.Black})
	full := image.NewPaletted(image.Rect(0, 0, 40, 30), nil)
	for i := range 256 {
		full.Palette = append(full.Palette, color.Gray{uint8(i / 2)})
	}
	p.Load.Image, p.Place.Image, p.Anvil.Image, p.Press.Image = gray, nrgba, clear, full
	p.Section.Image, p.Plan.Image = (*image.Paletted)(nil), image.NewRGBA(image.Rectangle{})
	validated(t, write(t, "kinds", s).path)
}
