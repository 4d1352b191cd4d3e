package picture

// oversample is how many canvas samples a pixel has along each side. Lines
// hide what is left of the steps.
const oversample = 2

// grain is the number of steps a sample is divided into: corners are snapped
// to that grid, and from there on coverage is exact.
const grain = 16

// depthSteps is the number of steps from the farthest to the nearest thing.
const depthSteps = 1 << 24

// canvas holds, for each sample, how near the surface is and its shade. Depth
// 0 is the background; what is drawn starts above it.
type canvas struct {
	width, height int // in samples
	samples       []sample
}

// A sample is depth times 256 plus shade, so that one comparison finds the
// nearer of two surfaces and one store keeps it.
type sample uint32

func (s sample) depth() int32 { return int32(s >> 8) }
func (s sample) shade() shade { return shade(s) }

func newCanvas(width, height int) *canvas {
	c := &canvas{width: width * oversample, height: height * oversample}
	c.samples = make([]sample, c.width*c.height)
	return c
}

// A spot is a point on the canvas: x and y in grains, z in depth steps.
type spot struct{ x, y, z int32 }

// triangle fills the samples whose centres lie inside, left and top edge
// included, and keeps the nearest.
func (c *canvas) triangle(a, b, d spot, s shade) {
	if a.y > b.y {
		a, b = b, a
	}
	if b.y > d.y {
		b, d = d, b
	}
	if a.y > b.y {
		a, b = b, a
	}
	top, bottom := max(firstSample(a.y), 0), min(firstSample(d.y), int32(c.height))
	if top >= bottom {
		return
	}
	abx, aby := int64(b.x)-int64(a.x), int64(b.y)-int64(a.y)
	adx, ady := int64(d.x)-int64(a.x), int64(d.y)-int64(a.y)
	area := abx*ady - adx*aby
	if area == 0 {
		return
	}
	zx, zy, z0 := slope(a, b, d, area)

	long := newEdge(a, d, top)
	middle := min(max(firstSample(b.y), top), bottom)
	short := newEdge(a, b, top)
	for row := top; row < bottom; row++ {
		if row == middle {
			short = newEdge(b, d, row)
		}
		left, right := long.column, short.column
		if area < 0 { // b lies left of the long edge
			left, right = right, left
		}
		long.step()
		short.step()
		left, right = max(left, 0), min(right, int64(c.width))
		if left >= right {
			continue
		}
		samples := c.samples[int(row)*c.width+int(left) : int(row)*c.width+int(right)]
		z := z0 + zx*left + zy*int64(row)
		for i := range samples {
			if near := sample(z>>(zBits-8))&^0xff | sample(s); near > samples[i] {
				samples[i] = near
			}
			z += zx
		}
	}
}

// zBits are the binary digits behind the point while depth runs along a row.
const zBits = 16

// slope gives the depth of a triangle's plane at the centre of sample (x, y):
// (z0 + zx*x + zy*y) >> zBits.
//
// On a splinter the terms may wrap round; they are whole numbers, so the sum,
// which lies between the depths of the corners, is right all the same.
func slope(a, b, d spot, area int64) (zx, zy, z0 int64) {
	abz, adz := float64(b.z)-float64(a.z), float64(d.z)-float64(a.z)
	abx, aby := float64(b.x)-float64(a.x), float64(b.y)-float64(a.y)
	adx, ady := float64(d.x)-float64(a.x), float64(d.y)-float64(a.y)
	f := (1 << zBits) / float64(area)
	gx := (float64(abz*ady) - float64(adz*aby)) * f
	gy := (float64(adz*abx) - float64(abz*adx)) * f
	// A splinter so thin that its slope leaves the range covers a sample or
	// two; it lies flat at its farthest corner, where it hides nothing.
	const steepest = 1 << 46
	if !(gx > -steepest && gx < steepest && gy > -steepest && gy < steepest) {
		return 0, 0, int64(min(a.z, b.z, d.z)) << zBits
	}
	zx, zy = int64(gx), int64(gy)
	z0 = int64(a.z)<<zBits - zx*(int64(a.x)-grain/2) - zy*(int64(a.y)-grain/2)
	return zx * grain, zy * grain, z0
}

// firstSample is the first sample whose centre is not before g grains.
func firstSample(g int32) int32 { return (g + grain/2 - 1) >> 4 }

// An edge walks down a side of a triangle row by row. In each row, column is
// the first sample whose centre is not left of the side; whole numbers only,
// so that two triangles share a side without a gap or an overlap.
type edge struct {
	column      int64 // ceil of the crossing
	short       int64 // what the crossing lacks of column, in 1/unit samples
	unit        int64
	whole, rest int64 // what a row adds: whole columns and rest/unit
}

func newEdge(a, b spot, row int32) edge {
	dx, dy := int64(b.x)-int64(a.x), int64(b.y)-int64(a.y)
	if dy <= 0 {
		return edge{unit: 1}
	}
	e := edge{unit: grain * dy}
	at := (int64(a.x)-grain/2)*dy + (int64(row)*grain+grain/2-int64(a.y))*dx
	e.column = -floorDiv(-at, e.unit)
	e.short = e.column*e.unit - at
	e.whole = floorDiv(grain*dx, e.unit)
	e.rest = grain*dx - e.whole*e.unit
	return e
}

func (e *edge) step() {
	e.column += e.whole
	e.short -= e.rest
	if e.short < 0 {
		e.column++
		e.short += e.unit
	}
}

// floorDiv divides by a positive number and rounds down. It divides as float64,
// which is faster, and corrects the last step by the remainder.
func floorDiv(a, b int64) int64 {
	q := int64(float64(a) / float64(b))
	for q*b > a {
		q--
	}
	for a-q*b >= b {
		q++
	}
	return q
}
