package picture

import "ramnest/fixture/mesh"

// A Scene is all that one picture shows. Lengths are mm in one common frame,
// z up, unless said otherwise.
type Scene struct {
	Bodies  []Body
	Arrows  []Arrow
	Lines   []Line
	Section *Section // nil: nothing is cut
	View    View
	Width   int // [px], 16 to 8192
	Height  int // [px], 16 to 8192
}

// A Body is one solid. Vertices are shared between triangles; those are
// counter-clockwise seen from outside. A body that is not closed, or whose
// triangles do not agree on the outside, is drawn from both sides.
type Body struct {
	mesh.Mesh
	Tone    Tone
	Offset  [3]float64 // added to every vertex [mm]
	Outline Weight
	Whole   bool // the section does not cut it, as is usual for pins and screws
}

// Tone is the grey or colour of a body's surface.
type Tone uint8

// The tones, told apart in print without colour too.
const (
	Light  Tone = iota
	Medium      // a second part
	Dark        // a third
	Accent      // what the picture is about
	tones
)

// Weight is how strong lines are drawn.
type Weight uint8

// The weights of lines.
const (
	Normal Weight = iota
	Fine          // half as strong, for what only gives context
	Heavy         // half as strong again
	None          // no lines, surface only
	weights
)

// An Arrow shows a movement, on top of everything else.
type Arrow struct {
	From, To [3]float64
	Weight   Weight
}

// A Line is a straight line in space, an axis for example; bodies hide it.
type Line struct {
	From, To [3]float64
	Dash     Dash
	Weight   Weight
}

// Dash is the pattern of a line.
type Dash uint8

// The patterns.
const (
	Solid  Dash = iota
	Dashed      // short strokes: hidden or imagined
	Chain       // long and short in turn: an axis
	dashes
)

// A Section cuts all bodies that are not Whole by a plane and takes away what
// lies on the side to which Normal points. Cut faces that can be seen are
// hatched, each body in a way of its own.
type Section struct {
	Point  [3]float64 // any point of the plane
	Normal [3]float64 // toward the part that is taken away; any length above 0
}

// A View says from where the scene is seen and how large.
//
// At azimuth 0 the viewer stands at -y and looks along +y, x to the right; a
// positive azimuth moves the viewer round z to +x. Elevation lifts the viewer
// above the xy plane, pi/2 looks straight down with x to the right.
type View struct {
	Azimuth   float64      // [rad]
	Elevation float64      // [rad], -pi/2 to pi/2
	Margin    float64      // free border as a fraction of the shorter side, below 0.5; 0 means 0.04
	Fit       [][3]float64 // points that fill the frame; none: all that is shown
}
