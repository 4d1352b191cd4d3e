package drawing

// A Kind is a kind of line, by what it stands for.
type Kind int

// The kinds, after ISO 128 (from memory): wide lines 0.5 mm, narrow ones 0.25 mm.
const (
	Visible  Kind = iota // continuous, wide
	Hidden               // dashed, narrow
	Centre               // long dash, dot; narrow
	Cutting              // the same: where a section runs
	CutEnd               // continuous, wide: its ends
	Thin                 // continuous, narrow: dimensions, leaders
	Hatching             // continuous, narrow
	Border               // frame and title block
	kinds
)

// Widths and dashes on the sheet [mm].
var (
	widths = [kinds]float64{0.5, 0.25, 0.2, 0.25, 0.7, 0.2, 0.18, 0.5}
	dashes = [kinds][]float64{Hidden: {2.4, 1}, Centre: {7, 1, 0.6, 1}, Cutting: {7, 1, 0.6, 1}}
)

// A point on the sheet, from its upper left corner, y down [mm].
type point [2]float64

// A stroke is a line through points.
type stroke struct {
	kind   Kind
	points []point
	closed bool
}

// A label is a text on the sheet.
type label struct {
	at    point // on the baseline
	align float64
	size  float64 // of the type [pt]
	bold  bool
	up    bool // reads from the right
	text  string
	blank bool // on a white ground, lines under it are broken
}

// An arrow is the head at an end of a dimension line.
type arrow struct {
	tip point
	to  point // unit direction in which it points
}

// ink is all that is on one sheet.
type ink struct {
	strokes []stroke
	labels  []label
	arrows  []arrow
}

func (k *ink) line(kind Kind, p ...point) {
	k.strokes = append(k.strokes, stroke{kind: kind, points: p})
}

func (k *ink) loop(kind Kind, p ...point) {
	k.strokes = append(k.strokes, stroke{kind, p, true})
}

func (k *ink) box(kind Kind, x, y, w, h float64) {
	k.loop(kind, point{x, y}, point{x + w, y}, point{x + w, y + h}, point{x, y + h})
}

// text puts a label; align is which share of its width lies left of the point.
func (k *ink) text(x, y, align, size float64, s string) {
	k.labels = append(k.labels, label{at: point{x, y}, align: align, size: size, text: s})
}

// Of an arrow head [mm].
const arrowLong, arrowHalf = 2.6, 0.45

// corners of an arrow head.
func (a arrow) corners() [3]point {
	back := point{a.tip[0] - arrowLong*a.to[0], a.tip[1] - arrowLong*a.to[1]}
	return [3]point{a.tip, {back[0] - arrowHalf*a.to[1], back[1] + arrowHalf*a.to[0]},
		{back[0] + arrowHalf*a.to[1], back[1] - arrowHalf*a.to[0]}}
}
