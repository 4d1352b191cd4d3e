package picture

import (
	"image"
	"math"

	"ramnest/fixture/mesh"
)

// Sizes of arrows [px at stroke scale 1].
const (
	shaftWidth = 7.0
	headWidth  = 20.0
	headLength = 19.0
	arrowRim   = 1.3 // dark line round the arrow
	arrowHalo  = 2.2 // white gap round that, so that it stands off the picture
	arrowTone  = 62  // lightness of the fill
)

// drawArrow draws a block arrow over the picture. One that points at the viewer
// or away, and so has no length to be seen, becomes a circle with a point or a
// cross in it, as physicists draw a vector.
func drawArrow(img *image.Paletted, c Camera, a Arrow, stroke float64) {
	if a.Weight == None {
		return
	}
	size := stroke * [weights]float64{Normal: 1, Fine: 0.65, Heavy: 1.4}[a.Weight]
	x0, y0 := c.Project(a.From)
	x1, y1 := c.Project(a.To)
	long := math.Hypot(x1-x0, y1-y0)
	if long < 3*size {
		drawEndOn(img, x1, y1, mesh.Dot(c.toward, mesh.Sub(a.To, a.From)) > 0, size)
		return
	}
	// A short arrow is a smaller arrow, not a squashed one.
	if least := 1.5 * headLength * size; long < least {
		size *= long / least
	}
	ux, uy := (x1-x0)/long, (y1-y0)/long
	corner := func(along, across float64) [2]float64 {
		return [2]float64{x0 + along*ux - across*uy, y0 + along*uy + across*ux}
	}
	neck := long - headLength*size
	w, h := shaftWidth/2*size, headWidth/2*size
	outline := [][2]float64{
		corner(0, w), corner(neck, w), corner(neck, h), corner(long, 0),
		corner(neck, -h), corner(neck, -w), corner(0, -w),
	}
	paint(img, outline, size, func(x, y float64) float64 { return outside(outline, x, y) })
}

// drawEndOn draws the sign for a movement along the line of sight.
func drawEndOn(img *image.Paletted, x, y float64, toViewer bool, size float64) {
	r := headWidth / 2 * size
	frame := [][2]float64{{x - r, y - r}, {x + r, y + r}}
	paint(img, frame, size, func(px, py float64) float64 {
		dx, dy := px-x, py-y
		disc := math.Hypot(dx, dy) - r
		mark := math.Hypot(dx, dy) - 0.25*r
		if !toViewer {
			// Two bars at 45 degrees that end inside the circle.
			u, v := math.Abs(dx+dy)/math.Sqrt2, math.Abs(dx-dy)/math.Sqrt2
			mark = max(min(u, v)-0.12*r, math.Hypot(dx, dy)-0.9*r)
		}
		// The mark is a hole in the fill: the rim is drawn along its edge.
		return max(disc, -mark)
	})
}

// paint fills a figure given by its signed distance, negative inside, and draws
// rim and halo round it. frame holds points that span the figure.
func paint(img *image.Paletted, frame [][2]float64, size float64, distance func(x, y float64) float64) {
	rim, halo := arrowRim*size/2, arrowRim*size/2+arrowHalo*size
	low, high := frame[0], frame[0]
	for _, p := range frame {
		for k := range p {
			low[k], high[k] = min(low[k], p[k]), max(high[k], p[k])
		}
	}
	area := image.Rect(
		int(math.Floor(low[0]-halo-1)), int(math.Floor(low[1]-halo-1)),
		int(math.Ceil(high[0]+halo+1)), int(math.Ceil(high[1]+halo+1)),
	).Intersect(img.Rect)
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			d := distance(float64(x)+0.5, float64(y)+0.5)
			covered := min(max(halo+0.5-d, 0), 1)
			if covered == 0 {
				continue
			}
			at := img.PixOffset(x, y)
			old := img.Pix[at]
			light := float64(old & 0x7f)
			light += (white - light) * covered
			light += (ink - light) * min(max(rim+0.5-d, 0), 1)
			fill := min(max(0.5-rim-d, 0), 1)
			light += (arrowTone - light) * fill
			hue := old & 0x80
			switch {
			case fill > 0:
				hue = 0x80
			case covered >= 0.5:
				hue = 0
			}
			img.Pix[at] = uint8(math.Round(light)) | hue
		}
	}
}

// outside is the signed distance of a point from a polygon, negative inside.
func outside(polygon [][2]float64, x, y float64) float64 {
	nearest := math.Inf(1)
	inside := false
	b := polygon[len(polygon)-1]
	for _, a := range polygon {
		ex, ey := b[0]-a[0], b[1]-a[1]
		wx, wy := x-a[0], y-a[1]
		t := 0.0
		if l := ex*ex + ey*ey; l > 0 {
			t = min(max((wx*ex+wy*ey)/l, 0), 1)
		}
		nearest = min(nearest, math.Hypot(wx-t*ex, wy-t*ey))
		if (a[1] > y) != (b[1] > y) && x < a[0]+(y-a[1])/(b[1]-a[1])*(b[0]-a[0]) {
			inside = !inside
		}
		b = a
	}
	if inside {
		return -nearest
	}
	return nearest
}
