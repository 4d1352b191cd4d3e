package page

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"

	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// Image gives the page as dots, scale of them to the mm, 1 to 40. Pictures and text that
// runs upward are left out.
func (p *Page) Image(scale float64) (*image.Gray, error) {
	if !(scale >= 1 && scale <= 40) {
		return nil, fmt.Errorf("%g dots to the mm are out of range (1 to 40)", scale)
	}
	img := image.NewGray(image.Rect(0, 0, int(math.Ceil(p.size.Width*scale)), int(math.Ceil(p.size.Height*scale))))
	draw.Draw(img, img.Bounds(), image.White, image.Point{}, draw.Src)
	r := raster{img: img, scale: scale}
	for _, m := range p.marks {
		switch {
		case m.path != nil:
			r.path(m.path, m.style)
		case m.text != "" && !m.up:
			if err := r.text(m); err != nil {
				return nil, err
			}
		}
	}
	return img, nil
}

// A raster fills outlines on an image.
type raster struct {
	img   *image.Gray
	scale float64
	pen   vector.Rasterizer
}

// fill fills a closed outline [mm].
func (r *raster) fill(s Shade, outline ...[2]float64) {
	box := emptyBox()
	for _, q := range outline {
		box = box.with(q[0]*r.scale, q[1]*r.scale)
	}
	at := image.Rect(int(math.Floor(box.x0)), int(math.Floor(box.y0)), int(math.Ceil(box.x1)),
		int(math.Ceil(box.y1))).Intersect(r.img.Bounds())
	if at.Empty() {
		return
	}
	r.pen.Reset(at.Dx(), at.Dy())
	for i, q := range outline {
		x, y := float32(q[0]*r.scale-float64(at.Min.X)), float32(q[1]*r.scale-float64(at.Min.Y))
		if i == 0 {
			r.pen.MoveTo(x, y)
		} else {
			r.pen.LineTo(x, y)
		}
	}
	r.pen.ClosePath()
	r.pen.Draw(r.img, at, image.NewUniform(color.Gray{uint8(level(s))}), image.Point{})
}

// path fills a path and draws its line. Curves become sixteen chords.
func (r *raster) path(p *Path, s Style) {
	lines := p.chords()
	if s.Filled {
		for _, l := range lines {
			r.fill(s.Fill, l...)
		}
	}
	if s.Stroke <= 0 {
		return
	}
	for _, l := range lines {
		dash := dashes{lengths: s.Dash}
		for i := 1; i < len(l); i++ {
			dash.along(l[i-1], l[i], func(a, b [2]float64) { r.stroke(a, b, s) })
		}
	}
}

// stroke draws one straight piece with square ends, half the width beyond them, so that
// pieces that follow each other leave no gap.
func (r *raster) stroke(a, b [2]float64, s Style) {
	dx, dy := b[0]-a[0], b[1]-a[1]
	long := math.Hypot(dx, dy)
	if long == 0 {
		return
	}
	h := s.Stroke / 2
	ux, uy := dx/long*h, dy/long*h
	over := 1.0
	if len(s.Dash) > 0 {
		over = 0
	}
	ax, ay, bx, by := a[0]-over*ux, a[1]-over*uy, b[0]+over*ux, b[1]+over*uy
	r.fill(s.Line, [2]float64{ax - uy, ay + ux}, [2]float64{bx - uy, by + ux}, [2]float64{bx + uy, by - ux}, [2]float64{ax + uy, ay - ux})
}

// chords gives the pieces of a path as points; a closed one ends where it began.
func (p *Path) chords() [][][2]float64 {
	var out [][][2]float64
	for _, s := range p.steps {
		last := len(out) - 1
		switch s.kind {
		case 'm':
			out = append(out, [][2]float64{{s.p[0], s.p[1]}})
		case 'l':
			out[last] = append(out[last], [2]float64{s.p[0], s.p[1]})
		case 'c':
			from := out[last][len(out[last])-1]
			for i := 1; i <= 16; i++ {
				t := float64(i) / 16
				u := 1 - t
				at := func(k int) float64 {
					return u*u*u*from[k] + 3*u*u*t*s.p[k] + 3*u*t*t*s.p[2+k] + t*t*t*s.p[4+k]
				}
				out[last] = append(out[last], [2]float64{at(0), at(1)})
			}
		case 'z':
			out[last] = append(out[last], out[last][0])
		}
	}
	return out
}

// dashes walks along a line and says where it is drawn.
type dashes struct {
	lengths []float64
	i       int
	used    float64
}

func (d *dashes) along(a, b [2]float64, put func(a, b [2]float64)) {
	if len(d.lengths) == 0 {
		put(a, b)
		return
	}
	long := math.Hypot(b[0]-a[0], b[1]-a[1])
	at := func(t float64) [2]float64 { return [2]float64{a[0] + (b[0]-a[0])*t/long, a[1] + (b[1]-a[1])*t/long} }
	for t := 0.0; t < long; {
		step := min(d.lengths[d.i]-d.used, long-t)
		if d.i%2 == 0 {
			put(at(t), at(t+step))
		}
		t += step
		if d.used += step; d.used >= d.lengths[d.i]-1e-9 {
			d.i, d.used = (d.i+1)%len(d.lengths), 0
		}
	}
}

// text sets a line in the typeface of the document.
func (r *raster) text(m mark) error {
	ttf := liberationsansregular.TTF
	if m.font.Face == Bold {
		ttf = liberationsansbold.TTF
	}
	f, err := opentype.Parse(ttf)
	if err != nil {
		return fmt.Errorf("open the typeface: %w", err)
	}
	face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: m.font.Size * point * r.scale, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		return fmt.Errorf("open the typeface: %w", err)
	}
	defer face.Close()
	d := font.Drawer{Dst: r.img, Src: image.NewUniform(color.Gray{uint8(level(m.font.Shade))}), Face: face,
		Dot: fixed.Point26_6{X: fixed.Int26_6(m.x * r.scale * 64), Y: fixed.Int26_6(m.y * r.scale * 64)}}
	d.DrawString(m.text)
	return nil
}
