package picture

import "math"

// lens puts points on the canvas: pixels to grains, depth to steps.
type lens struct {
	camera Camera
	deep   float64 // depth steps a mm
}

func newLens(c Camera) *lens {
	// A few steps stay free at both ends for rounding and for caps.
	return &lens{camera: c, deep: (depthSteps - 64) / max(c.near-c.far, 1e-6)}
}

// spot puts a turned point on the canvas.
func (l *lens) spot(turned [3]float64) spot {
	x, y := l.camera.pixel(turned)
	const toGrain = oversample * grain
	return spot{
		x: clampGrain(x * toGrain),
		y: clampGrain(y * toGrain),
		z: l.steps(turned[2]),
	}
}

// steps is depth on the canvas. What the section takes away can lie outside
// the range; it is never drawn, only clipped.
func (l *lens) steps(depth float64) int32 {
	z := 32 + float64(l.deep*(depth-l.camera.far))
	return int32(math.Round(min(max(z, -depthSteps), 2*depthSteps)))
}

func clampGrain(g float64) int32 {
	const limit = farthestPixel * oversample * grain
	return int32(math.Round(min(max(g, -limit), limit)))
}

// gradient is what a face with this normal, in the axes of the picture, adds
// to depth from one sample to the next, in depth steps. The face must not be
// edge-on.
func (l *lens) gradient(n [3]float64) (zx, zy float64) {
	perSample := l.perSample()
	return -n[0] / n[2] * perSample, n[1] / n[2] * perSample
}

// perSample is the depth, in steps, of one sample's width.
func (l *lens) perSample() float64 { return l.deep / (l.camera.scale * oversample) }
