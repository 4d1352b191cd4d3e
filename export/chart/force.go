package chart

import (
	"errors"
	"math"
	"slices"

	"ramnest/export/page"
)

// A Force is what is drawn.
type Force struct {
	Curve  [][2]float64 // lift [mm], falling, and nominal force [N]
	Band   [][4]float64 // lift [mm] and P5, P50, P95 [N]; may be empty
	Levels []Level      // lines across

	Length, Push float64 // what one unit of the axes is in mm and in N
	Words        Words
	Number       func(v float64, decimals int) string // writes a figure on an axis
}

// A Level is a force that stands as a line across the drawing, named at its right end.
type Level struct {
	Name   string
	Force  float64 // [N]
	Strong bool    // dashed and bold: the force to be reckoned with
}

// Words are what the drawing says.
type Words struct {
	Push   string // axis of the force: "force, N"
	Travel string // axis of the way: "travel from first contact, mm"
	Stop   string // the end of the way
	Band   string // what the grey is; empty: not said
}

// A Plot is where the drawing has its axes on the page [mm].
type Plot struct{ Left, Top, Right, Bottom float64 }

// Faults of what is to be drawn.
var (
	ErrNoCurve = errors.New("the curve of the force has no points to draw")
	ErrNumber  = errors.New("the curve of the force holds what is no number")
)

// margins round the axes, and sizes of the type [mm, pt].
const (
	left, right, top, bottom = 15.0, 27.0, 6.0, 10.5
	textSize                 = 8.5
	labelGap                 = 4.0
)

// check looks for what cannot be drawn.
func (f Force) check() error {
	if len(f.Curve) < 2 || !(f.Length > 0) || !(f.Push > 0) {
		return ErrNoCurve
	}
	none := func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) }
	for _, p := range f.Curve {
		if slices.ContainsFunc(p[:], none) {
			return ErrNumber
		}
	}
	for _, b := range f.Band {
		if slices.ContainsFunc(b[:], none) {
			return ErrNumber
		}
	}
	if slices.ContainsFunc(f.Levels, func(l Level) bool { return none(l.Force) }) {
		return ErrNumber
	}
	return nil
}

// begin and end of the way [mm of lift]: first contact of whichever comes first, and the
// seat or what lies beyond it.
func (f Force) begin() float64 {
	lift := f.Curve[0][0]
	for _, p := range f.Curve {
		lift = max(lift, p[0])
	}
	for _, b := range f.Band {
		lift = max(lift, b[0])
	}
	return lift
}

// highest force in the drawing [N].
func (f Force) highest() float64 {
	most := 0.0
	for _, p := range f.Curve {
		most = max(most, p[1])
	}
	for _, b := range f.Band {
		most = max(most, b[3])
	}
	for _, l := range f.Levels {
		most = max(most, l.Force)
	}
	return most
}

// Draw draws into a rectangle of a page [mm] and says where the axes are.
func (f Force) Draw(p *page.Page, x, y, width, height float64) (Plot, error) {
	if err := f.check(); err != nil {
		return Plot{}, err
	}
	at := Plot{x + left, y + top, x + width - right, y + height - bottom}
	w, h := at.Right-at.Left, at.Bottom-at.Top
	begin := f.begin()
	way := max((begin-min(0, f.Curve[len(f.Curve)-1][0]))/f.Length, 1e-9)
	most := max(f.highest()/f.Push, 1e-9)
	stepY, stepX := niceStep(most/4), niceStep(way/5)
	most = math.Ceil(most*1.02/stepY) * stepY
	px := func(lift float64) float64 { return at.Left + (begin-lift)/f.Length/way*w }
	py := func(force float64) float64 { return at.Bottom - force/f.Push/most*h }
	small := page.Font{Size: textSize}

	f.ground(p, px, py)
	for k := range count(most, stepY) {
		v := float64(k) * stepY
		yy := py(v * f.Push)
		p.Line(at.Left-1.2, yy, at.Left, yy, page.Hairline)
		p.TextAt(at.Left-2, yy+1, small, page.End, f.Number(v, decimals(stepY)))
	}
	for k := range count(way, stepX) {
		v := float64(k) * stepX
		xx := px(begin - v*f.Length)
		p.Line(xx, at.Bottom, xx, at.Bottom+1.2, page.Hairline)
		p.TextAt(xx, at.Bottom+4.6, small, page.Middle, f.Number(v, decimals(stepX)))
	}
	p.TextAt(x, y+3, small, page.Start, f.Words.Push)
	p.TextAt(at.Right, y+height-1.2, small, page.End, f.Words.Travel)
	f.levels(p, at, py)
	curve := new(page.Path).Move(px(f.Curve[0][0]), py(0))
	for _, c := range f.Curve {
		curve.Line(px(c[0]), py(c[1]))
	}
	p.Draw(curve, page.Style{Stroke: 0.6})
	p.Draw(new(page.Path).Move(at.Left, at.Top).Line(at.Left, at.Bottom).Line(at.Right, at.Bottom), page.Style{Stroke: 0.35})
	p.Line(px(0), at.Top, px(0), at.Bottom, 0.35)
	p.TextAt(px(0)-0.8, at.Top-1, small, page.End, f.Words.Stop)
	return at, nil
}

// ground is the grey of what most assemblies lie within.
func (f Force) ground(p *page.Page, px, py func(float64) float64) {
	if len(f.Band) < 2 {
		return
	}
	var ring []float64
	for _, b := range f.Band {
		ring = append(ring, px(b[0]), py(b[1]))
	}
	for i := len(f.Band) - 1; i >= 0; i-- {
		ring = append(ring, px(f.Band[i][0]), py(f.Band[i][3]))
	}
	p.Draw(new(page.Path).Polygon(ring...), page.Style{Filled: true, Fill: page.Grey})
}

// levels draws the lines across, their names spread so that none stands on another.
func (f Force) levels(p *page.Page, at Plot, py func(float64) float64) {
	levels := merged(f.Levels)
	labels := make([]float64, len(levels))
	for i, l := range levels {
		labels[i] = py(l.Force)
	}
	spread(labels, labelGap, at.Top, at.Bottom+1)
	for i, l := range levels {
		yy := py(l.Force)
		style, face := page.Style{Stroke: page.Hairline}, page.Font{Size: textSize}
		if l.Strong {
			style, face.Face = page.Style{Stroke: 0.45, Dash: []float64{3, 1.2}}, page.Bold
		}
		p.Draw(new(page.Path).Move(at.Left, yy).Line(at.Right, yy), style)
		p.Line(at.Right, yy, at.Right+3, labels[i], page.Hairline)
		p.TextAt(at.Right+3.6, labels[i]+1.05, face, page.Start, l.Name)
	}
	if f.Words.Band != "" && len(f.Band) > 1 {
		p.Ground(at.Left+1, at.Top-4.6, 4, 2.6, page.Grey)
		p.TextAt(at.Left+6, at.Top-2.4, page.Font{Size: textSize}, page.Start, f.Words.Band)
	}
}
