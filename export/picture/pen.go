package picture

import "math"

// Widths of lines [px at stroke scale 1]. Outlines stronger than inner edges,
// cut edges strongest: common practice in technical illustration, no source.
const (
	outlineWidth = 1.7
	creaseWidth  = 0.95
	cutWidth     = 1.9
	axisWidth    = 0.8
)

// pen draws lines in final pixels and keeps, for each pixel, how much of it is
// inked. Strokes that overlap do not add up, so joints leave no blots.
type pen struct {
	canvas        *canvas
	lens          *lens
	width, height int // in pixels
	stroke        float64
	ink           []uint8
}

func newPen(c *canvas, l *lens, stroke float64) *pen {
	p := &pen{canvas: c, lens: l, width: c.width / oversample, height: c.height / oversample, stroke: stroke}
	p.ink = make([]uint8, p.width*p.height)
	return p
}

// weigh gives the width of a line of that weight, 0 for none.
func (p *pen) weigh(width float64, w Weight) float64 {
	return width * p.stroke * [weights]float64{Normal: 1, Fine: 0.5, Heavy: 1.5, None: 0}[w]
}

// A place is a point on the way along a line: in samples, and its depth.
type place struct{ x, y, z float64 }

func placeOf(s spot) place {
	return place{float64(s.x) / grain, float64(s.y) / grain, float64(s.z)}
}

func (p place) toward(q place, t float64) place {
	return place{p.x + float64(t*(q.x-p.x)), p.y + float64(t*(q.y-p.y)), p.z + float64(t*(q.z-p.z))}
}

// trace walks from a to b in steps of about a sample, asks at each how wide the
// line is there (0: hidden), and draws the runs of equal width.
func (p *pen) trace(a, b place, widthAt func(place) float64) {
	a, b, inside := p.clip(a, b)
	if !inside {
		return
	}
	steps := max(int(math.Ceil(max(math.Abs(b.x-a.x), math.Abs(b.y-a.y)))), 1)
	at := func(i int) place { return a.toward(b, float64(i)/float64(steps)) }
	// Widths are asked in the middle of each step.
	middle := func(i int) float64 { return widthAt(a.toward(b, (float64(i)+0.5)/float64(steps))) }
	from, width := 0, middle(0)
	for i := 1; i <= steps; i++ {
		next := -1.0
		if i < steps {
			next = middle(i)
		}
		if next != width {
			if width > 0 {
				u, v := at(from), at(i)
				p.segment(u.x/oversample, u.y/oversample, v.x/oversample, v.y/oversample, width)
			}
			from, width = i, next
		}
	}
}

// clip leaves of a line what lies on the canvas or close to it.
func (p *pen) clip(a, b place) (place, place, bool) {
	const border = 8
	low, high := 0.0, 1.0
	for _, side := range [...][3]float64{
		{a.x, b.x, float64(p.canvas.width)},
		{a.y, b.y, float64(p.canvas.height)},
	} {
		from, to, end := side[0], side[1], side[2]
		if from == to {
			if from < -border || from > end+border {
				return a, b, false
			}
			continue
		}
		enter, leave := (-border-from)/(to-from), (end+border-from)/(to-from)
		if enter > leave {
			enter, leave = leave, enter
		}
		low, high = max(low, enter), min(high, leave)
	}
	if low >= high {
		return a, b, low == 0 && high == 0
	}
	return a.toward(b, low), a.toward(b, high), true
}

// depthAt is the depth of what is drawn at a sample, 0 for background.
func (p *pen) depthAt(x, y int) int32 {
	if x < 0 || y < 0 || x >= p.canvas.width || y >= p.canvas.height {
		return 0
	}
	return p.canvas.samples[y*p.canvas.width+x].depth()
}

// segment inks a straight stroke with round ends, by the distance of each pixel
// centre from the middle line.
func (p *pen) segment(x0, y0, x1, y1, width float64) {
	half := width / 2
	reach := half + 0.5
	dx, dy := x1-x0, y1-y0
	long := math.Sqrt(dx*dx + dy*dy)
	steep := math.Abs(dy) > math.Abs(dx)
	if steep {
		x0, y0, x1, y1, dx, dy = y0, x0, y1, x1, dy, dx
	}
	if x0 > x1 {
		x0, y0, x1, y1, dx, dy = x1, y1, x0, y0, -dx, -dy
	}
	// From here on the line runs along x at 45 degrees at most.
	endX, endY := p.width, p.height
	if steep {
		endX, endY = endY, endX
	}
	tilt, spread := 0.0, reach
	if dx > 0 {
		tilt = dy / dx
		spread = reach * long / dx
	}
	first, last := max(int(math.Floor(x0-reach)), 0), min(int(math.Ceil(x1+reach)), endX)
	inverse := 1 / max(long*long, 1e-12)
	for x := first; x < last; x++ {
		cx := float64(x) + 0.5
		middle := y0 + tilt*(min(max(cx, x0), x1)-x0)
		from, to := max(int(math.Floor(middle-spread)), 0), min(int(math.Ceil(middle+spread)), endY)
		for y := from; y < to; y++ {
			cy := float64(y) + 0.5
			px, py := cx-x0, cy-y0
			t := min(max((px*dx+py*dy)*inverse, 0), 1)
			ex, ey := px-t*dx, py-t*dy
			d := math.Sqrt(ex*ex + ey*ey)
			cover := min(max(reach-d, 0), 1, width)
			at := y*p.width + x
			if steep {
				at = x*p.width + y
			}
			if v := uint8(cover*255 + 0.5); v > p.ink[at] {
				p.ink[at] = v
			}
		}
	}
}
