package page

// A Path is an outline of straight and curved pieces [mm].
type Path struct{ steps []step }

type step struct {
	kind byte // m, l, c, z
	p    [6]float64
}

// Move starts a new piece.
func (p *Path) Move(x, y float64) *Path { return p.add('m', x, y) }

// Line goes straight on.
func (p *Path) Line(x, y float64) *Path { return p.add('l', x, y) }

// Curve goes on along a cubic Bézier curve.
func (p *Path) Curve(x1, y1, x2, y2, x, y float64) *Path { return p.add('c', x1, y1, x2, y2, x, y) }

// Close goes back to the start of the piece.
func (p *Path) Close() *Path { return p.add('z') }

func (p *Path) add(kind byte, v ...float64) *Path {
	s := step{kind: kind}
	copy(s.p[:], v)
	p.steps = append(p.steps, s)
	return p
}

// arc is where the control points of a quarter circle lie, as a share of the
// radius: 4/3 (sqrt 2 - 1).
const arc = 0.5522847498

// Ellipse adds a closed ellipse.
func (p *Path) Ellipse(x, y, rx, ry float64) *Path {
	kx, ky := arc*rx, arc*ry
	return p.Move(x+rx, y).
		Curve(x+rx, y+ky, x+kx, y+ry, x, y+ry).
		Curve(x-kx, y+ry, x-rx, y+ky, x-rx, y).
		Curve(x-rx, y-ky, x-kx, y-ry, x, y-ry).
		Curve(x+kx, y-ry, x+rx, y-ky, x+rx, y).Close()
}

// Round adds a rectangle with round corners.
func (p *Path) Round(x, y, w, h, r float64) *Path {
	r = min(r, w/2, h/2)
	k := r * (1 - arc)
	return p.Move(x+r, y).Line(x+w-r, y).Curve(x+w-k, y, x+w, y+k, x+w, y+r).
		Line(x+w, y+h-r).Curve(x+w, y+h-k, x+w-k, y+h, x+w-r, y+h).
		Line(x+r, y+h).Curve(x+k, y+h, x, y+h-k, x, y+h-r).
		Line(x, y+r).Curve(x, y+k, x+k, y, x+r, y).Close()
}

// Polygon adds a closed polygon from x, y pairs.
func (p *Path) Polygon(xy ...float64) *Path {
	for i := 0; i+1 < len(xy); i += 2 {
		if i == 0 {
			p.Move(xy[0], xy[1])
		} else {
			p.Line(xy[i], xy[i+1])
		}
	}
	return p.Close()
}

// Placed gives the path scaled about its origin and moved.
func (p *Path) Placed(x, y, scale float64) *Path {
	out := &Path{steps: make([]step, len(p.steps))}
	for i, s := range p.steps {
		for k := 0; k < 6; k += 2 {
			s.p[k], s.p[k+1] = x+float64(scale*s.p[k]), y+float64(scale*s.p[k+1])
		}
		out.steps[i] = s
	}
	return out
}

// box is the box round all corners and control points.
func (p *Path) box() box {
	b := emptyBox()
	for _, s := range p.steps {
		n := map[byte]int{'m': 2, 'l': 2, 'c': 6}[s.kind]
		for k := 0; k < n; k += 2 {
			b = b.with(s.p[k], s.p[k+1])
		}
	}
	return b
}
