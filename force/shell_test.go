package force

import (
	"math"
	"testing"
)

func ptr(v float64) *float64 { return &v }

func rad(deg float64) float64 { return deg * math.Pi / 180 }

// near fails unless got is within rel of want.
func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: got %.9g, want %.9g within %.2g", what, got, want, rel)
	}
}

func TestBandOfLongTubeLoadedAtItsMouthAndFarFromIt(t *testing.T) {
	tube := Tube{Radius: 15, Wall: 1.2, Modulus: 1700, Poisson: 0.4}
	beta := Beta(15, 1.2, 0.4)
	near(t, "at the mouth, 1/(2 beta)", tube.bandWidth(false), 1/(2*beta), 1e-7)
	tube.Mouth = 1000
	near(t, "remote, 4 times", tube.bandWidth(false), 2/beta, 1e-7)
}

func TestBandOfShortFreeRingIsItsLength(t *testing.T) {
	tube := Tube{Radius: 100, Wall: 5, Poisson: 0.35, Mouth: 0.5, Beyond: 0.5, Far: Free}
	near(t, "ring loaded in its middle", tube.bandWidth(false), 1, 1e-4)
}

// bandByDifferences solves D w”” + k w = q by finite differences on a ring
// of length mouth + beyond: second-order differences, ghost nodes for the end
// conditions, dense elimination with pivots. Nothing of the closed form is used.
func bandByDifferences(tube Tube, beyond float64, nodes int) float64 {
	l := tube.Mouth + beyond
	n := nodes
	h := l / float64(n-1)
	at := int(math.Round(tube.Mouth / h))
	e, nu := 1.0, tube.Poisson
	d := e * math.Pow(tube.Wall, 3) / (12 * (1 - nu*nu))
	k := e * tube.Wall / (tube.Radius * tube.Radius)
	// The weak form as a sum of squares: bending energy at inner nodes with
	// w'' by three points, foundation energy by the trapezoid. Free ends are
	// natural; a floor pins w and, by reflection, w'.
	m := make([][]float64, n)
	for i := range m {
		m[i] = make([]float64, n+1)
		weight := h
		if i == 0 || i == n-1 {
			weight = h / 2
		}
		m[i][i] += k * weight
	}
	bend := func(index []int, coef []float64, weight float64) {
		for a, i := range index {
			for b, j := range index {
				m[i][j] += d * weight * coef[a] * coef[b] / (h * h * h * h)
			}
		}
	}
	for i := 1; i < n-1; i++ {
		bend([]int{i - 1, i, i + 1}, []float64{1, -2, 1}, h)
	}
	if tube.Far == Floored {
		bend([]int{n - 2}, []float64{2}, h/2)
		m[n-1][n-1] += 1e12 * k
	}
	m[at][n] = 1
	for c := range n {
		for r := c + 1; r < min(n, c+3); r++ {
			f := m[r][c] / m[c][c]
			for j := c; j < min(n, c+6); j++ {
				m[r][j] -= f * m[c][j]
			}
			m[r][n] -= f * m[c][n]
		}
	}
	for i := n - 1; i >= 0; i-- {
		for j := i + 1; j < min(n, i+6); j++ {
			m[i][n] -= m[i][j] * m[j][n]
		}
		m[i][n] /= m[i][i]
	}
	return 1 / (m[at][n] * k)
}

func TestBandAgainstFiniteDifferences(t *testing.T) {
	for _, far := range []FarEnd{Free, Floored} {
		for _, mouth := range []float64{0, 1, 2.5, 6, 15} {
			for _, beyond := range []float64{1, 3, 8, 40} {
				tube := Tube{Radius: 15, Wall: 1.2, Poisson: 0.4, Mouth: mouth, Beyond: beyond, Far: far}
				// The spacing divides both lengths and is finer on a short ring.
				spacing := 0.05
				if mouth+beyond < 8 {
					spacing = 0.0125
				}
				nodes := int(math.Round((mouth+beyond)/spacing)) + 1
				near(t, "band", tube.bandWidth(false), bandByDifferences(tube, beyond, nodes), 3e-3)
			}
		}
	}
	long := Tube{Radius: 15, Wall: 1.2, Poisson: 0.4, Mouth: 2}
	near(t, "long against 80 mm of tube", long.bandWidth(false), bandByDifferences(Tube{Radius: 15, Wall: 1.2, Poisson: 0.4, Mouth: 2, Far: Free}, 80, 1641), 3e-3)
}
