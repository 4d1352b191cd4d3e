package force

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// wallByElements solves the governing equations of a wall with shear by finite
// elements, an independent numerical solution: energy of bending, shear (one Gauss
// point an element, so that it does not lock) and foundation; Cholesky of gonum.
// Modulus 1. It gives what [strip.join] gives.
func wallByElements(tube Tube, beyond float64) joined {
	const each = 400 // elements on either side
	e, nu := 1.0, tube.Poisson
	d := e * math.Pow(tube.Wall, 3) / (12 * (1 - nu*nu))
	s := e / (2 * (1 + nu)) * tube.Wall * 5 / 6
	k := e * tube.Wall / (tube.Radius * tube.Radius)
	half := tube.Band / 2
	edges := []float64{-tube.Mouth, -half, half, beyond}
	at, from, to := []float64{edges[0]}, 0, 0 // nodes; first and last of the band
	for i := range 3 {
		if edges[i+1]-edges[i] > 1e-12 {
			for x := range each {
				at = append(at, edges[i]+(edges[i+1]-edges[i])*float64(x+1)/each)
			}
		}
		if i == 0 {
			from = len(at) - 1
		}
		if i <= 1 {
			to = len(at) - 1
		}
	}
	n := 2 * len(at)
	band := make([]float64, 4*n) // rows of the diagonal and three beside it
	add := func(i, j int, v float64) {
		if i <= j {
			band[4*i+j-i] += v
		}
	}
	for i := 1; i < len(at); i++ {
		h := at[i] - at[i-1]
		w0, p0, w1, p1 := 2*i-2, 2*i-1, 2*i, 2*i+1
		dof := [4]int{w0, p0, w1, p1}
		bend, shear := [4]float64{0, -1 / h, 0, 1 / h}, [4]float64{-1 / h, -0.5, 1 / h, -0.5}
		for a, i := range dof {
			for b, j := range dof {
				add(i, j, h*(d*bend[a]*bend[b]+s*shear[a]*shear[b]))
			}
		}
		add(w0, w0, k*h/3)
		add(w1, w1, k*h/3)
		add(w0, w1, k*h/6)
	}
	if tube.Far == Floored {
		add(n-2, n-2, 1e9)
		add(n-1, n-1, 1e9)
	}
	f := mat.NewVecDense(n, nil)
	f.SetVec(2*from, 1)
	if to > from {
		for i := from; i <= to; i++ {
			f.SetVec(2*i, 1/float64(to-from))
		}
		f.SetVec(2*from, 0.5/float64(to-from))
		f.SetVec(2*to, 0.5/float64(to-from))
	}
	var chol mat.BandCholesky
	if !chol.Factorize(mat.NewSymBandDense(n, 3, band)) {
		panic("not positive definite")
	}
	var u mat.VecDense
	if err := chol.SolveVecTo(&u, f); err != nil {
		panic(err)
	}
	var mean, slope float64
	for i := from; i <= to; i++ {
		mean += f.AtVec(2*i) * u.AtVec(2*i)
		slope -= f.AtVec(2*i) * u.AtVec(2*i+1)
	}
	out := joined{width: 1 / (mean * k), slope: slope / mean}
	for i := from + 1; i < len(at); i++ {
		hoop := k * (at[i] - at[i-1]) * (u.AtVec(2*i-2) + u.AtVec(2*i)) / 2
		if i <= to {
			hoop /= 2 // the axial force grows over the band
		}
		out.beyond += hoop
	}
	return out
}

// lineJoined is a wall under a load on a line.
func lineJoined(s strip, t Tube) joined {
	mouth, beyond := s.sides(t)
	return s.join(mouth, beyond)
}

// TestBandAgainstElements: a load spread over a band, from one narrower than the wall
// to one much longer than the decay, at the mouth, away from it and before a floor.
func TestBandAgainstElements(t *testing.T) {
	for _, ratio := range []float64{0.05, 0.9, 1.7} {
		for _, far := range []FarEnd{Free, Floored} {
			for _, mouth := range []float64{0, 0.7} {
				for _, band := range []float64{0.05, 0.6, 6} {
					for _, beyond := range []float64{0.3, 3} {
						tube := Tube{Radius: 15, Wall: 15 * ratio, Poisson: 0.4, Far: far}
						beta := Beta(tube.Radius, tube.Wall, tube.Poisson)
						tube.Band, tube.Mouth, tube.Beyond = band/beta, (mouth+band/2)/beta, (beyond+band/2)/beta
						s := newStrip(tube, true)
						m, b := s.sides(tube)
						got, want := s.under(tube, m, b), wallByElements(tube, tube.Beyond)
						at := fmt.Sprintf("t/R %g, far end %d, mouth %g, band %g, end %g decay lengths: ", ratio, far, mouth, band, beyond)
						near(t, at+"width", got.width, want.width, 5e-4)
						if math.Abs(got.slope-want.slope) > 1e-3/tube.Wall || math.Abs(got.beyond-want.beyond) > 1e-3 {
							t.Errorf("%sslope %g, share %g; elements %g, %g", at, got.slope, got.beyond, want.slope, want.beyond)
						}
					}
				}
			}
		}
	}
}

// TestBandBetweenLineAndLongOne: a band is a line where it begins to count, and beyond
// ten decay lengths each millimetre carries itself.
func TestBandBetweenLineAndLongOne(t *testing.T) {
	tube := Tube{Radius: 15, Wall: 1.2, Poisson: 0.4, Mouth: 200, Far: Long}
	s := newStrip(tube, true)
	under := func(band float64) joined {
		tube.Band = band / s.beta
		m, b := s.sides(tube)
		return s.under(tube, m, b)
	}
	near(t, "a line", under(0.00101).width, under(0.00099).width, 2e-4)
	near(t, "long", under(10.5).width-under(9.5).width, 1/s.beta, 2e-3)
	near(t, "longer", under(30).width-under(20).width, 10/s.beta, 1e-9)
}

// TestWallAgainstElements covers every ratio of wall to radius up to the solid pin,
// t/R = 2, both far ends and loads near and far from either.
func TestWallAgainstElements(t *testing.T) {
	for _, ratio := range []float64{0.02, 0.1, 0.3, 0.7, 1, 1.3, 1.6, 1.75} {
		for _, far := range []FarEnd{Free, Floored} {
			for _, mouth := range []float64{0, 0.3, 1, 3} {
				for _, beyond := range []float64{0.3, 1, 3, 8} {
					tube := Tube{Radius: 15, Wall: 15 * ratio, Poisson: 0.4, Far: far}
					beta := Beta(tube.Radius, tube.Wall, tube.Poisson)
					tube.Mouth, tube.Beyond = mouth/beta, beyond/beta
					s := newStrip(tube, true)
					got, want := lineJoined(s, tube), wallByElements(tube, tube.Beyond)
					at := fmt.Sprintf("t/R %g, far end %d, mouth %g and end %g decay lengths away: ", ratio, far, mouth, beyond)
					near(t, at+"width", got.width, want.width, 5e-4)
					if math.Abs(got.slope-want.slope) > 1e-3/tube.Wall || math.Abs(got.beyond-want.beyond) > 1e-3 {
						t.Errorf("%sslope %g, share %g; elements %g, %g", at, got.slope, got.beyond, want.slope, want.beyond)
					}
				}
			}
		}
	}
}

// TestThickestWallIsCut: beyond t/R of 1.8 the shear is cut off, so that the decay
// still swings. A solid pin comes out stiffer for it, by less than 5 %.
func TestThickestWallIsCut(t *testing.T) {
	for _, mouth := range []float64{0, 1, 4} {
		tube := Tube{Radius: 2.5, Wall: 5, Poisson: 0.4, Far: Free}
		beta := Beta(tube.Radius, tube.Wall, tube.Poisson)
		tube.Mouth, tube.Beyond = mouth/beta, 8/beta
		if got, want := tube.BandWidth(), wallByElements(tube, tube.Beyond).width; got < want || got > 1.05*want {
			t.Errorf("solid pin, %g decay lengths from its end: width %g mm, elements %g mm", mouth, got, want)
		}
	}
}

// TestLongTubeInClosedForm: with shear the width is 1/(2 alpha) at the mouth and 2
// alpha/(2 alpha^2 - beta^2) far from both ends.
func TestLongTubeInClosedForm(t *testing.T) {
	for _, ratio := range []float64{0.02, 0.2, 0.7, 1.4} {
		tube := Tube{Radius: 10, Wall: 10 * ratio, Poisson: 0.38}
		s := newStrip(tube, true)
		near(t, "at the mouth", tube.BandWidth(), 1/(2*s.alpha), 1e-12)
		tube.Mouth = 1e4
		near(t, "far from both ends", tube.BandWidth(), 2*s.alpha/(2*s.alpha*s.alpha-s.beta*s.beta), 1e-12)
		j := lineJoined(s, tube)
		if math.Abs(j.slope) > 1e-12 || math.Abs(j.beyond-0.5) > 1e-12 {
			t.Errorf("far from both ends: slope %g, share beyond %g; want 0 and a half", j.slope, j.beyond)
		}
	}
}

// TestEndIsNotFeltFarAway: nothing jumps where a length counts as endless.
func TestEndIsNotFeltFarAway(t *testing.T) {
	s := newStrip(Tube{Radius: 15, Wall: 1.2, Poisson: 0.4}, true)
	for _, end := range []FarEnd{Free, Floored} {
		before, after := s.length(0.999999*longLength/s.beta, end), s.length(1.000001*longLength/s.beta, end)
		near(t, "a", before.a, after.a, 1e-7)
		near(t, "b", before.b, after.b, 1e-7)
		near(t, "c", before.c, after.c, 1e-7)
	}
	for _, end := range []FarEnd{Free, Floored} {
		before, after := s.length(1.001*stubLength/s.beta, end), s.length(0.999*stubLength/s.beta, end)
		near(t, "a of a stub", before.a, after.a, 5e-3)
	}
}
