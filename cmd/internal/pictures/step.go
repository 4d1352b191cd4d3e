package pictures

import (
	"context"
	"image"
	"math"
	"sync"

	"ramnest/export/picture"
	"ramnest/fixture"
	"ramnest/fixture/envelope"
	"ramnest/force"
	"ramnest/force/planar"
)

// A Set holds the pictures of one press step.
type Set struct {
	Load    *image.Paletted // the lower part goes into the nest
	Place   *image.Paletted // the upper part is set on
	Anvil   *image.Paletted // the anvil is put on
	Press   *image.Paletted // pressed down to the dead stops
	Section *image.Paletted // the closed stack, cut through the thrust line
	Plan    *image.Paletted // the nest from above, with the thrust line
	Nest    *image.Paletted
	Under   *image.Paletted // the anvil, from below
	Lower   *image.Paletted
	Upper   *image.Paletted

	Cut string // the latch that Section goes through; empty: there is none

	Exploded *image.Paletted // apart along the press axis
	Layers   [4]Layer        // where anvil, upper part, lower part and nest stand in it
}

// Size of the pictures [px].
const (
	Width, Height           = 660, 480
	SmallWidth, SmallHeight = 360, 270
)

// The usual view: from the front right and above.
var usual = picture.View{Azimuth: 0.50, Elevation: 0.52}

// OfStep draws the pictures of a step. It works on a few at a time; the result
// does not depend on how many. It ends with the error of the context when that ends.
func OfStep(ctx context.Context, st fixture.Step, n fixture.Nest, a fixture.Anvil) (Set, error) {
	s := stack{st: st, nest: n, anvil: a}
	var out Set
	out.Cut, _, _ = nearest(st.Latches, a.Thrust)
	apart := s.exploded()
	var err error
	if out.Layers, err = apart.layers(); err != nil {
		return Set{}, err
	}
	jobs := []struct {
		to    **image.Paletted
		scene picture.Scene
	}{
		{&out.Exploded, apart.scene},
		{&out.Load, s.load()},
		{&out.Place, s.place()},
		{&out.Anvil, s.putOn()},
		{&out.Press, s.press()},
		{&out.Section, s.section()},
		{&out.Plan, s.plan()},
		{&out.Nest, small(usual, tool(n.Piece, picture.Light))},
		{&out.Under, small(picture.View{Azimuth: 0.50, Elevation: -0.52}, tool(a.Piece, picture.Light))},
		{&out.Lower, small(usual, s.lower(0))},
		{&out.Upper, small(usual, s.upper(0))},
	}
	errs := make([]error, len(jobs))
	var wg sync.WaitGroup
	for i := range jobs {
		wg.Go(func() { *jobs[i].to, errs[i] = picture.RenderContext(ctx, jobs[i].scene) })
	}
	wg.Wait()
	for _, err := range errs {
		if err != nil {
			return Set{}, err
		}
	}
	return out, nil
}

// small is a picture of one body by itself.
func small(v picture.View, b picture.Body) picture.Scene {
	return picture.Scene{Bodies: []picture.Body{b}, View: v, Width: SmallWidth, Height: SmallHeight}
}

// A stack is nest, parts and anvil in the coordinates of the assembly.
type stack struct {
	st    fixture.Step
	nest  fixture.Nest
	anvil fixture.Anvil
}

func tool(p fixture.Piece, tone picture.Tone) picture.Body {
	return picture.Body{Mesh: *p.Mesh, Tone: tone, Offset: p.Shift}
}

func part(p fixture.Part, tone picture.Tone, lift float64) picture.Body {
	return picture.Body{Mesh: p.Envelope.Mesh, Tone: tone, Offset: [3]float64{0, 0, lift}}
}

func (s stack) holder() picture.Body { return tool(s.nest.Piece, picture.Light) }

func (s stack) lower(lift float64) picture.Body { return part(s.st.Lower, picture.Medium, lift) }
func (s stack) upper(lift float64) picture.Body { return part(s.st.Upper, picture.Accent, lift) }

// base is the lower part with what earlier steps pressed on it.
func (s stack) base(lift float64) []picture.Body {
	out := []picture.Body{s.lower(lift)}
	for _, p := range s.st.Before {
		out = append(out, part(p, picture.Dark, lift))
	}
	return out
}

func (s stack) pusher(lift float64) picture.Body {
	b := tool(s.anvil.Piece, picture.Light)
	b.Offset[2] += lift
	return b
}

// stroke is the lift at which the upper part rests on its latches [mm].
func (s stack) stroke() float64 { return s.st.Result.Stroke }

// top of the seated parts [mm].
func (s stack) top() float64 {
	return max(s.st.Upper.Envelope.Max[2], s.st.Lower.Envelope.Max[2])
}

// clear is a lift at which a part stands well above what it goes into [mm].
func clear(over, bottom, height float64) float64 {
	return math.Max(over-bottom, 0) + 0.35*height + 12
}

func scene(v picture.View, bodies ...picture.Body) picture.Scene {
	return picture.Scene{Bodies: bodies, View: v, Width: Width, Height: Height}
}

// falling adds the arrow and the axis of something that comes down at p: from
// height z0 to z1 [mm].
func falling(sc *picture.Scene, p planar.Point, z0, z1 float64) {
	sc.Lines = append(sc.Lines, picture.Line{From: [3]float64{p.X, p.Y, z0}, To: [3]float64{p.X, p.Y, z1}, Dash: picture.Chain,
		Weight: picture.Fine})
}

func (s stack) load() picture.Scene {
	env := s.st.Lower.Envelope
	lift := clear(s.nest.Top, env.Min[2], env.Max[2]-env.Min[2])
	sc := scene(usual, append(s.base(lift), s.holder())...)
	c := env.Centre()
	falling(&sc, c, env.Max[2]+lift, s.nest.Seat)
	sc.Arrows = []picture.Arrow{s.beside(env.Min, env.Max, lift, s.nest.Top)}
	return sc
}

func (s stack) place() picture.Scene {
	env := s.st.Upper.Envelope
	lift := clear(s.st.Lower.Envelope.Max[2], env.Min[2], env.Max[2]-env.Min[2]) + s.stroke()
	sc := scene(usual, append(s.base(0), s.holder(), s.upper(lift))...)
	falling(&sc, env.Centre(), env.Max[2]+lift, env.Min[2])
	sc.Arrows = []picture.Arrow{s.beside(env.Min, env.Max, lift, env.Min[2]+s.stroke())}
	return sc
}

func (s stack) putOn() picture.Scene {
	lift := s.stroke() + 0.5*s.anvil.Size[2] + 22
	sc := scene(usual, append(s.base(0), s.holder(), s.upper(s.stroke()), s.pusher(lift))...)
	for _, p := range s.corners() {
		falling(&sc, p, s.anvil.Face+lift, s.nest.StopTop)
	}
	lo := [3]float64{s.nest.Middle.X - s.anvil.Size[0]/2, s.nest.Middle.Y - s.anvil.Size[1]/2, s.anvil.Face}
	hi := [3]float64{s.nest.Middle.X + s.anvil.Size[0]/2, s.nest.Middle.Y + s.anvil.Size[1]/2, s.anvil.Face}
	sc.Arrows = []picture.Arrow{s.beside(lo, hi, lift, s.anvil.Face)}
	return sc
}

// corners are two opposite corners of the tooling where the guide pins stand.
func (s stack) corners() []planar.Point { return s.nest.Pins }

func (s stack) press() picture.Scene {
	sc := scene(usual, append(s.base(0), s.holder(), s.upper(0), s.pusher(0))...)
	t, top := s.anvil.Thrust, s.anvil.Above
	long := 0.45*s.anvil.Size[2] + 30
	sc.Arrows = []picture.Arrow{{From: [3]float64{t.X, t.Y, top + long}, To: [3]float64{t.X, t.Y, top + 1}, Weight: picture.Heavy}}
	return sc
}

// beside is an arrow that goes down to the right of something and of the nest, as
// the viewer sees it.
func (s stack) beside(low, high [3]float64, lift, to float64) picture.Arrow {
	sin, cos := math.Sincos(usual.Azimuth)
	right := func(x, y float64) float64 { return float64(cos*x) + float64(sin*y) }
	m := s.nest.Middle
	reach := right(m.X, m.Y)
	for _, x := range [2]float64{low[0], high[0]} {
		for _, y := range [2]float64{low[1], high[1]} {
			reach = math.Max(reach, right(x, y))
		}
	}
	for _, x := range [2]float64{-1, 1} {
		for _, y := range [2]float64{-1, 1} {
			reach = math.Max(reach, right(m.X+x*s.anvil.Size[0]/2, m.Y+y*s.anvil.Size[1]/2))
		}
	}
	out := reach + 9 - right(m.X, m.Y)
	x, y := m.X+float64(cos*out), m.Y+float64(sin*out)
	from := low[2] + lift
	if from-to < 8 {
		from = to + 8
	}
	return picture.Arrow{From: [3]float64{x, y, from}, To: [3]float64{x, y, to}}
}

// section cuts the closed stack through the press axis and a place of the latch nearest to
// it, and looks at the cut.
func (s stack) section() picture.Scene {
	t, n := s.anvil.Thrust, planar.Point{Y: -1}
	if _, at, ok := nearest(s.st.Latches, t); ok {
		if d := math.Hypot(at.X-t.X, at.Y-t.Y); d > onAxis {
			n = planar.Point{X: (at.Y - t.Y) / d, Y: -(at.X - t.X) / d}
			if n.Y > 0 || n.Y == 0 && n.X < 0 { // seen from the front, or else from the right
				n = planar.Point{X: -n.X, Y: -n.Y}
			}
		}
	}
	sc := scene(picture.View{Azimuth: math.Atan2(n.X, -n.Y) + 0.18, Elevation: 0.14},
		append(s.base(0), s.holder(), s.upper(0), s.pusher(0))...)
	sc.Section = &picture.Section{Point: [3]float64{t.X, t.Y, 0}, Normal: [3]float64{n.X, n.Y, 0}}
	return sc
}

// onAxis is how near to the press axis a latch goes round it, or any cut goes through it [mm].
const onAxis = 0.01

// nearest is the place of a latch that lies nearest to the press axis.
func nearest(latches []force.Latch, t planar.Point) (id string, at planar.Point, ok bool) {
	best := math.Inf(1)
	for _, l := range latches {
		for _, p := range l.At {
			if d := math.Hypot(p.X-t.X, p.Y-t.Y); d < best-1e-9 {
				best, id, at, ok = d, l.ID, p, true
			}
		}
	}
	return id, at, ok
}

// plan looks straight down on nest and lower part, with a cross on the thrust
// line.
func (s stack) plan() picture.Scene {
	sc := scene(picture.View{Elevation: math.Pi / 2}, append(s.base(0), s.holder())...)
	t := s.anvil.Thrust
	z := s.top() + 200 // above everything: the cross hides nothing but lies on top
	rx, ry := s.nest.Size[0]/2+6, s.nest.Size[1]/2+6
	m := s.nest.Middle
	sc.Lines = []picture.Line{
		{From: [3]float64{m.X - rx, t.Y, z}, To: [3]float64{m.X + rx, t.Y, z}, Dash: picture.Chain},
		{From: [3]float64{t.X, m.Y - ry, z}, To: [3]float64{t.X, m.Y + ry, z}, Dash: picture.Chain},
	}
	return sc
}

// OfPart draws a part by itself.
func OfPart(ctx context.Context, e *envelope.Envelope) (*image.Paletted, error) {
	return picture.RenderContext(ctx, scene(usual, part(fixture.Part{Envelope: e}, picture.Medium, 0)))
}

// OfPair draws two parts, the upper one in its place.
func OfPair(ctx context.Context, lower, upper *envelope.Envelope) (*image.Paletted, error) {
	return picture.RenderContext(ctx, scene(usual, part(fixture.Part{Envelope: lower}, picture.Medium, 0),
		part(fixture.Part{Envelope: upper}, picture.Accent, 0)))
}
