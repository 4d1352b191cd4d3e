package workinstructions

import (
	"image"
	"math"
	"sync"
	"testing"
	"time"

	"ramnest/export/picture"
	"ramnest/fixture/plan"
	"ramnest/fixture/solid"
	"ramnest/force/method"
	"ramnest/force/planar"
)

// demoBodies are a round housing, its cap, a nest and an anvil, in the seated
// pose [mm].
func demoBodies(tb testing.TB) map[string]picture.Body {
	tb.Helper()
	const chord, side = 0.05, plan.Inside
	circle := func(x, y, r float64) plan.Loop { return plan.Circle(x, y, r, chord, side) }
	housing := &solid.Body{Name: "housing"}
	housing.Fill("wall", 0, 25, circle(0, 0, 30))
	housing.Cut("bore", 3, circle(0, 0, 26))
	for _, x := range []float64{-12, 12} {
		housing.Raise("boss", 14, circle(x, 0, 4))
		housing.Cut("core", 6, circle(x, 0, 1.6))
	}
	housing.Fill("lug", 0, 9, plan.Rectangle(0, 31, 12, 8, 1, chord, side))
	capBody := &solid.Body{Name: "cap"}
	capBody.Fill("disc", 25, 28, circle(0, 0, 30))
	capBody.Drop("plug", 19, circle(0, 0, 25.8))
	capBody.Lift("hollow", 25.5, circle(0, 0, 23))
	for _, x := range []float64{-9, 0, 9} {
		capBody.Cut("groove", 27, plan.Rectangle(x, 0, 3, 26, 1.5, chord, side))
	}
	nest := &solid.Body{Name: "nest"}
	nest.Fill("block", -12, 14, plan.Rectangle(0, 0, 110, 84, 6, chord, side))
	nest.Cut("pocket", 0, circle(0, 0, 30.3))
	nest.Cut("key", 0, plan.Rectangle(0, 31.5, 12.6, 8.6, 1, chord, side))
	for _, x := range []float64{-31, 31} {
		nest.Cut("finger relief", -2, plan.Rectangle(x, 0, 24, 22, 6, chord, side))
	}
	for _, x := range []float64{-44, 44} {
		for _, y := range []float64{-32, 32} {
			nest.Void("bolt hole", circle(x, y, 3.3))
		}
		nest.Raise("post", 40, circle(x*1.05, 0, 5))
	}
	nest.Void("ejection hole", circle(0, 0, 8))
	anvil := &solid.Body{Name: "anvil"}
	anvil.Fill("plate", 28, 46, plan.Rectangle(0, 0, 110, 50, 8, chord, side))
	anvil.Lift("clear of the rim", 30, circle(0, 0, 22))
	anvil.Cut("ram socket", 38, plan.Rectangle(3.2, -1, 29, 29, 1, chord, side))
	for _, x := range []float64{-46.2, 46.2} {
		anvil.Void("bush", circle(x, 0, 5.2))
	}
	out := map[string]picture.Body{}
	for _, b := range []*solid.Body{housing, capBody, nest, anvil} {
		m, err := b.Mesh()
		if err != nil {
			tb.Fatalf("%s: %v", b.Name, err)
		}
		out[b.Name] = picture.Body{Mesh: *m}
	}
	return out
}

var demoPictures struct {
	sync.Once
	images map[string]image.Image
}

// demoImages renders the pictures of the demo once.
func demoImages(tb testing.TB) map[string]image.Image {
	tb.Helper()
	demoPictures.Do(func() {
		bodies := demoBodies(tb)
		get := func(name string, tone picture.Tone, dz float64) picture.Body {
			b := bodies[name]
			b.Tone, b.Offset = tone, [3]float64{0, 0, dz}
			return b
		}
		iso := picture.View{Azimuth: 0.55, Elevation: 0.5}
		axis := func(lo, hi float64) picture.Line {
			return picture.Line{From: [3]float64{0, 0, lo}, To: [3]float64{0, 0, hi}, Dash: picture.Chain, Weight: picture.Fine}
		}
		arrow := func(x, y, from, to float64) picture.Arrow {
			return picture.Arrow{From: [3]float64{x, y, from}, To: [3]float64{x, y, to}, Weight: picture.Heavy}
		}
		scenes := map[string]picture.Scene{
			"load":    {Bodies: []picture.Body{get("nest", picture.Light, 0), get("housing", picture.Accent, 52)}, Lines: []picture.Line{axis(10, 90)}, Arrows: []picture.Arrow{arrow(36, -20, 70, 44)}},
			"place":   {Bodies: []picture.Body{get("nest", picture.Light, 0), get("housing", picture.Medium, 0), get("cap", picture.Accent, 34)}, Lines: []picture.Line{axis(20, 80)}, Arrows: []picture.Arrow{arrow(36, -20, 66, 44)}},
			"anvil":   {Bodies: []picture.Body{get("nest", picture.Light, 0), get("housing", picture.Medium, 0), get("cap", picture.Medium, 6), get("anvil", picture.Accent, 34)}, Lines: []picture.Line{axis(30, 95)}, Arrows: []picture.Arrow{arrow(40, -30, 80, 56)}},
			"press":   {Bodies: []picture.Body{get("nest", picture.Light, 0), get("housing", picture.Medium, 0), get("cap", picture.Medium, 0), get("anvil", picture.Accent, 0)}, Arrows: []picture.Arrow{arrow(3.2, -1, 84, 46)}},
			"section": {Bodies: []picture.Body{get("nest", picture.Light, 0), get("housing", picture.Medium, 0), get("cap", picture.Accent, 0), get("anvil", picture.Dark, 0)}, Section: &picture.Section{Normal: [3]float64{0, -1, 0}}, View: picture.View{Elevation: 0.2}},
			"plan":    {Bodies: []picture.Body{get("nest", picture.Light, 0)}, View: picture.View{Elevation: math.Pi / 2}, Lines: []picture.Line{{From: [3]float64{-8, -1, 60}, To: [3]float64{14, -1, 60}, Dash: picture.Chain}, {From: [3]float64{3.2, -12, 60}, To: [3]float64{3.2, 10, 60}, Dash: picture.Chain}}},
			"housing": {Bodies: []picture.Body{get("housing", picture.Medium, 0)}, Width: 480, Height: 360},
			"cap":     {Bodies: []picture.Body{get("cap", picture.Accent, 0)}, Width: 480, Height: 360},
			"nest":    {Bodies: []picture.Body{get("nest", picture.Light, 0)}, Width: 480, Height: 360},
			"tool":    {Bodies: []picture.Body{get("anvil", picture.Dark, 0)}, Width: 480, Height: 360},
		}
		demoPictures.images = map[string]image.Image{}
		for name, s := range scenes {
			if s.Width == 0 {
				s.Width, s.Height = 1000, 750
			}
			if s.View.Elevation == 0 {
				s.View = iso
			}
			img, err := picture.Render(s)
			if err != nil {
				tb.Fatalf("picture %q: %v", name, err)
			}
			demoPictures.images[name] = img
		}
	})
	return demoPictures.images
}

// demoDemand is what the joint of the demo asks for.
func demoDemand() method.Demand {
	return method.Demand{DesignForce: 1180, P50: 870, Worst: 1490, PeakForce: 860, Work: 1510, SeatForce: 60, Stroke: 4.2,
		RatePerHour: 12, HoursPerDay: 1, ActionSeconds: 2, Thrust: planar.Point{X: 3.2, Y: -1}, ThrustWander: 0.8,
		NestSize: [3]float64{110, 84, 26}, AnvilHeight: 18, PartStackHeight: 14, AnvilMass: 0.19, UpperMass: 0.02, Permanent: true}
}

// demoSheet is a realistic sheet: one step by arbor press, ten pictures.
func demoSheet(tb testing.TB) Sheet {
	tb.Helper()
	pic := demoImages(tb)
	d := demoDemand()
	var curve [][2]float64
	for i := range 121 {
		lift := 4.2 * (1 - float64(i)/120)
		x := 4.2 - lift
		f := 0.0
		switch {
		case x < 2.4:
			f = 860 * math.Pow(x/2.4, 1.2)
		case x < 3:
			f = 860 - 190*(x-2.4)/0.6
		case x < 3.4:
			f = 670 - 610*(x-3)/0.4
		default:
			f = 60
		}
		curve = append(curve, [2]float64{lift, f})
	}
	return Sheet{
		Paper: A4, Job: "FWL-1042", Title: "Fjell weather logger: rim cap onto housing", Revision: "B", Author: "Workshop planning",
		Date: time.Date(2026, 3, 9, 0, 0, 0, 0, time.UTC), Fingerprint: "7f3a-91c2", Tool: "ramnest 0.1.0", Quantity: 240, RatePerHour: 12,
		Parts: []Part{
			{Name: "Housing", Material: "PA12", Process: "PBF", Role: Lower, Step: 1, Count: 1, Picture: pic["housing"]},
			{Name: "Rim cap", Material: "PA12", Process: "PBF", Role: Upper, Step: 1, Count: 1, Picture: pic["cap"]},
		},
		Tooling: []Tool{
			{Name: "nest", Mark: "FWL-1042 B 7f3a-91c2", Size: [3]float64{110, 84, 52}, Mass: 0.24, Material: "PA12, PBF", Steps: []int{1}, Picture: pic["nest"]},
			{Name: "anvil", Mark: "FWL-1042 B 7f3a-91c2", Size: [3]float64{110, 50, 18}, Mass: 0.09, Material: "PA12, PBF", Steps: []int{1}, Picture: pic["tool"]},
		},
		Bench: []string{"Reject box, marked."},
		Steps: []Step{{
			Name: "rim cap onto housing", Lower: "Housing", Upper: "Rim cap", Nest: "nest", Anvil: "anvil", OneWay: true, Guided: true,
			Decision: method.Choose(d, method.Bench{}, nil), Usable: 5337.8, Lever: 69.4,
			Force:   Force{Design: 1180, Peak: 860, P5: 610, P50: 870, P95: 1180, Worst: 1490, Seat: 60, Stroke: 4.2, Work: 1510, Humps: 1, Curve: curve},
			Latches: []Latch{{ID: "rim", Kind: "annular", Count: 1, PeakEach: 860, Strain: 0.021, Permitted: 0.04, Permanent: true, Separation: 1450}},
			Thrust:  d.Thrust, Seat: Gap{Low: 0.05, High: 0.25, Where: "between rim and housing, at four places", Gauge: "feeler gauge 0.05 to 0.25 mm"}, Pull: 150,
			Pictures: Pictures{
				Load:    Picture{pic["load"], "The lug goes into its slot."},
				Place:   Picture{pic["place"], "Cap set on, grooves across."},
				Anvil:   Picture{pic["anvil"], "Anvil over both posts."},
				Press:   Picture{pic["press"], "Ram on the thrust mark."},
				Section: Picture{pic["section"], "Closed stack, cut along x."},
				Plan:    Picture{pic["plan"], "Nest from above; the cross is the thrust mark."},
			},
		}},
		Notes:    []string{"The annular joint takes most of the force; a slot in the rim would halve it."},
		Assumed:  12,
		Warnings: []Remark{{Number: 8, About: "rim", Text: "rim: plastic creeps: the hold falls from the day of assembly on"}, {Text: "the nest serves one step"}},
	}
}
