package calibrate

import "math"

// cholesky gives the lower triangle L with A = L L', or false if A is not positive
// definite. Source: textbook algorithm (from memory).
func cholesky(a [][]float64) ([][]float64, bool) {
	n := len(a)
	l := make([][]float64, n)
	for i := range n {
		l[i] = make([]float64, n)
		for k := range i + 1 {
			s := a[i][k]
			for j := range k {
				s -= l[i][j] * l[k][j]
			}
			if k < i {
				l[i][k] = s / l[k][k]
				continue
			}
			if !(s > 1e-12) {
				return nil, false
			}
			l[i][i] = math.Sqrt(s)
		}
	}
	return l, true
}

// solve gives x of L L' x = b.
func solve(l [][]float64, b []float64) []float64 {
	return backward(l, forward(l, b))
}

// forward gives x of L x = b.
func forward(l [][]float64, b []float64) []float64 {
	x := make([]float64, len(b))
	for i := range b {
		s := b[i]
		for k := range i {
			s -= l[i][k] * x[k]
		}
		x[i] = s / l[i][i]
	}
	return x
}

// backward gives x of L' x = b.
func backward(l [][]float64, b []float64) []float64 {
	n := len(b)
	x := make([]float64, n)
	for i := n - 1; i >= 0; i-- {
		s := b[i]
		for k := i + 1; k < n; k++ {
			s -= l[k][i] * x[k]
		}
		x[i] = s / l[i][i]
	}
	return x
}

func clone(a [][]float64) [][]float64 {
	out := make([][]float64, len(a))
	for i := range a {
		out[i] = append([]float64(nil), a[i]...)
	}
	return out
}
