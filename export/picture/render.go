package picture

import (
	"context"
	"image"
)

// Render draws a scene. Anything wrong with it, such as an index without a
// vertex or a coordinate that is no number, comes back as [*SceneError] values
// joined; then there is no picture.
func Render(s Scene) (*image.Paletted, error) { return RenderContext(context.Background(), s) }

// RenderContext is [Render] that can be stopped: then it gives the error of the
// context.
func RenderContext(ctx context.Context, s Scene) (*image.Paletted, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	camera, turned, err := newCamera(&s)
	if err != nil {
		return nil, err
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	l := newLens(camera)
	c := newCanvas(s.Width, s.Height)
	stroke := strokeScale(s.Width, s.Height)

	shapes := make([]*shape, len(s.Bodies))
	for i := range s.Bodies {
		if shapes[i], err = newShape(ctx, &s.Bodies[i], turned[i], l, s.Section.of(&s.Bodies[i], &camera)); err != nil {
			return nil, err
		}
		if err := shapes[i].fill(ctx, c); err != nil {
			return nil, err
		}
	}
	cap, seen := newCap(s.Section, l)
	if seen {
		for i, sh := range shapes {
			cap.hatch = newHatch(sh.body.Tone, i, stroke)
			sh.fillCap(c, cap)
		}
	}

	p := newPen(c, l, stroke)
	for _, sh := range shapes {
		if err := sh.drawSeams(ctx, p); err != nil {
			return nil, err
		}
		if seen {
			sh.drawTraces(p, cap)
		}
	}
	for _, line := range s.Lines {
		p.line(line)
	}
	img := develop(c, p)
	for _, a := range s.Arrows {
		drawArrow(img, camera, a, stroke)
	}
	evened(img)
	return img, nil
}

// often looks at a context at every 64th step of a loop: so many triangles that fill
// the picture each are a tenth of a second.
func often(ctx context.Context, step int) error {
	if step&0x3f != 0 {
		return nil
	}
	return ctx.Err()
}

// steps is how many lightnesses are left between black and white. Fewer would show as
// bands on round bodies; with all 128 the file is two fifths larger (measured on 18
// pictures: 236 kB against 170 kB).
const steps = 32

// evened takes the lightness of each pixel to the nearest step.
func evened(img *image.Paletted) {
	var table [256]uint8
	for i := range table {
		step := (i&0x7f*(steps-1) + white/2) / white
		table[i] = uint8(i&0x80 | (step*white+(steps-1)/2)/(steps-1))
	}
	for i, p := range img.Pix {
		img.Pix[i] = table[p]
	}
}

// strokeScale is the width in pixels of a stroke of weight 1: a picture twice
// as large, put into the same frame on paper, has lines as strong as before.
func strokeScale(width, height int) float64 {
	return max(float64(max(width, height))/900, 0.7)
}

// develop averages the samples of each pixel and puts the ink on.
func develop(c *canvas, p *pen) *image.Paletted {
	width, height := c.width/oversample, c.height/oversample
	img := image.NewPaletted(image.Rect(0, 0, width, height), palette())
	for y := range height {
		upper := c.samples[2*y*c.width:][:c.width]
		lower := c.samples[(2*y+1)*c.width:][:c.width]
		inked := p.ink[y*width:][:width]
		out := img.Pix[y*img.Stride:][:width]
		for x := range out {
			a, b := upper[2*x].shade(), upper[2*x+1].shade()
			d, e := lower[2*x].shade(), lower[2*x+1].shade()
			if a|b|d|e == 0 && inked[x] == 0 {
				out[x] = white
				continue
			}
			light := int(white - a&darkness)
			hue := a & inAccent
			if a != b || a != d || a != e {
				sum := int(a&darkness) + int(b&darkness) + int(d&darkness) + int(e&darkness)
				light = white - (sum+2)/4
				// Half of the pixel decides about the colour.
				hue = 0
				if a>>7+b>>7+d>>7+e>>7 >= 2 {
					hue = inAccent
				}
			}
			if cover := int(inked[x]); cover > 0 {
				light = (light*(255-cover) + ink*cover + 127) / 255
			}
			out[x] = uint8(light) | uint8(hue)
		}
	}
	return img
}
