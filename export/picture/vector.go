package picture

import "math"

// Products are rounded before they are added, here and wherever a sum decides
// which pixel is set: a fused multiply-add would give other pictures on other
// processors.

func dot(a, b [3]float64) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}

func cross(a, b [3]float64) [3]float64 {
	return [3]float64{
		float64(a[1]*b[2]) - float64(a[2]*b[1]),
		float64(a[2]*b[0]) - float64(a[0]*b[2]),
		float64(a[0]*b[1]) - float64(a[1]*b[0]),
	}
}

func add(a, b [3]float64) [3]float64 { return [3]float64{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }

func sub(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

func scaled(a [3]float64, f float64) [3]float64 { return [3]float64{a[0] * f, a[1] * f, a[2] * f} }

func length(a [3]float64) float64 { return math.Sqrt(dot(a, a)) }

// between is the point a fraction t of the way from a to b.
func between(a, b [3]float64, t float64) [3]float64 {
	for i := range a {
		a[i] += float64(t * (b[i] - a[i]))
	}
	return a
}

type box struct{ low, high [3]float64 }

func empty() box {
	inf := math.Inf(1)
	return box{[3]float64{inf, inf, inf}, [3]float64{-inf, -inf, -inf}}
}

func (b *box) add(p [3]float64) {
	for i, v := range p {
		if v < b.low[i] {
			b.low[i] = v
		}
		if v > b.high[i] {
			b.high[i] = v
		}
	}
}
