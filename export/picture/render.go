package picture

import "image"

// Render draws a scene. Anything wrong with it, such as an index without a
// vertex or a coordinate that is no number, comes back as [*SceneError] values
// joined; then there is no picture.
func Render(s Scene) (*image.Paletted, error) {
	camera, err := NewCamera(s)
	if err != nil {
		return nil, err
	}
	l := newLens(camera)
	c := newCanvas(s.Width, s.Height)
	stroke := strokeScale(s.Width, s.Height)

	shapes := make([]*shape, len(s.Bodies))
	for i := range s.Bodies {
		shapes[i] = newShape(&s.Bodies[i], l, s.Section.of(&s.Bodies[i]))
		shapes[i].fill(c)
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
		sh.drawSeams(p)
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
	return img, nil
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
		upper := c.shade[2*y*c.width:][:c.width]
		lower := c.shade[(2*y+1)*c.width:][:c.width]
		inked := p.ink[y*width:][:width]
		out := img.Pix[y*img.Stride:][:width]
		for x := range out {
			a, b, d, e := upper[2*x], upper[2*x+1], lower[2*x], lower[2*x+1]
			sum := int(a&darkness) + int(b&darkness) + int(d&darkness) + int(e&darkness)
			light := white - (sum+2)/4
			if cover := int(inked[x]); cover > 0 {
				light = (light*(255-cover) + ink*cover + 127) / 255
			}
			// Half of the pixel decides about the colour; half counts as well.
			if a>>7+b>>7+d>>7+e>>7 >= 2 {
				light += 128
			}
			out[x] = uint8(light)
		}
	}
	return img
}
