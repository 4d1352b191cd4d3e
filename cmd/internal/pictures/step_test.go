package pictures

import (
	"bytes"
	"image"
	"runtime"
	"testing"

	"ramnest/export/picture"
	"ramnest/fixture"
	"ramnest/fixture/envelope"
	"ramnest/force"
	"ramnest/force/method"
	"ramnest/force/planar"
)

// pressed makes a step with its tooling.
func pressed(t testing.TB) (fixture.Step, fixture.Tooling) {
	t.Helper()
	m, faults := force.Resolve(force.MaterialSpec{Material: "PA12", Process: "PBF", Build: "along"})
	if faults != nil {
		t.Fatal(faults)
	}
	build := func(from, to float64) *envelope.Envelope {
		e, err := envelope.Build(envelope.Spec{Layers: []envelope.Layer{{From: from, To: to, Outline: envelope.Outline{Rectangle: &envelope.Rectangle{Size: planar.Point{X: 60, Y: 40}, Corner: 4}}}}}, nil)
		if err != nil {
			t.Fatal(err)
		}
		return e
	}
	at := []planar.Point{{X: 20, Y: 12}, {X: -20, Y: 12}, {X: 20, Y: -12}, {X: -20, Y: -12}}
	st := fixture.Step{
		Name: "close", DesignForce: 400, Latches: []force.Latch{{ID: "a", At: at}},
		Lower:  fixture.Part{Name: "housing", Envelope: build(0, 20), Material: m},
		Upper:  fixture.Part{Name: "lid", Envelope: build(20, 24), Material: m},
		Result: force.Result{Peak: 350, Stroke: 3, Latches: []force.LatchResult{{ID: "a", PeakAll: 350}}},
		Method: method.Assessment{Method: method.ByPress, Press: &method.GenericPresses()[0]},
	}
	tool, err := fixture.Design(fixture.Order{Mark: "T-1 A", Steps: []fixture.Step{st}, Material: m})
	if err != nil {
		t.Fatal(err)
	}
	return st, tool
}

func (s Set) all() map[string]*image.Paletted {
	return map[string]*image.Paletted{"load": s.Load, "place": s.Place, "anvil": s.Anvil, "press": s.Press, "section": s.Section, "plan": s.Plan, "nest": s.Nest, "under": s.Under, "lower": s.Lower, "upper": s.Upper, "exploded": s.Exploded}
}

// Each picture shows something, no two are the same, and the number of workers
// makes no difference.
func TestPicturesOfAStep(t *testing.T) {
	st, tool := pressed(t)
	set, err := OfStep(t.Context(), st, tool.Nests[0], tool.Anvils[0])
	if err != nil {
		t.Fatal(err)
	}
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	again, err := OfStep(t.Context(), st, tool.Nests[0], tool.Anvils[0])
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]string{}
	for name, img := range set.all() {
		drawn := 0
		for _, p := range img.Pix {
			if p != img.Pix[0] {
				drawn++
			}
		}
		if share := float64(drawn) / float64(len(img.Pix)); share < 0.08 || share > 0.9 {
			t.Errorf("%s: %.0f %% of the picture is drawn", name, 100*share)
		}
		if other, ok := seen[string(img.Pix)]; ok {
			t.Errorf("%s and %s are the same picture", name, other)
		}
		seen[string(img.Pix)] = name
		if !bytes.Equal(img.Pix, again.all()[name].Pix) {
			t.Errorf("%s: not the same pixels with one worker", name)
		}
	}
}

// What moves stands clear of what it moves to, and the arrow points down.
func TestWhatMovesStandsClear(t *testing.T) {
	st, tool := pressed(t)
	s := stack{st, tool.Nests[0], tool.Anvils[0]}
	for name, sc := range map[string]picture.Scene{"load": s.load(), "place": s.place(), "anvil": s.putOn(), "press": s.press()} {
		if len(sc.Arrows) != 1 || sc.Arrows[0].From[2] <= sc.Arrows[0].To[2] {
			t.Errorf("%s: arrows %v", name, sc.Arrows)
		}
		if name == "press" {
			continue
		}
		b := sc.Bodies
		last, below := low(b[len(b)-1]), s.nest.Top
		switch name {
		case "load":
			last = low(b[0])
		case "place":
			below = s.st.Lower.Envelope.Max[2]
		case "anvil":
			below = s.st.Upper.Envelope.Max[2] + s.stroke()
		}
		if last < below {
			t.Errorf("%s: stands at %.1f mm, what it goes to reaches %.1f", name, last, below)
		}
	}
}

// In the exploded view nothing touches: each body stands above the next one, and its
// place in the picture above that of the next.
func TestExplodedViewIsApart(t *testing.T) {
	st, tool := pressed(t)
	tw := stack{st, tool.Nests[0], tool.Anvils[0]}.exploded()
	at, err := tw.layers()
	if err != nil {
		t.Fatal(err)
	}
	for i := range 3 {
		lo, _ := extent(tw.groups[i])
		_, hi := extent(tw.groups[i+1])
		if lo <= hi {
			t.Errorf("body %d begins at %.1f mm, the one below ends at %.1f", i, lo, hi)
		}
		if at[i].Y >= at[i+1].Y || at[i].X <= 0 || at[i].X > 1 || at[i].Y <= 0 {
			t.Errorf("places in the picture: %v", at)
		}
	}
}

func low(b picture.Body) float64 {
	z := b.Vertices[0][2]
	for _, v := range b.Vertices {
		z = min(z, v[2])
	}
	return z + b.Offset[2]
}

func BenchmarkOfStep(b *testing.B) {
	st, tool := pressed(b)
	for b.Loop() {
		if _, err := OfStep(b.Context(), st, tool.Nests[0], tool.Anvils[0]); err != nil {
			b.Fatal(err)
		}
	}
}
