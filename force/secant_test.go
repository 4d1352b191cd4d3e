package force

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// pcChart is the secant modulus of PC over the strain in per cent: Snap-Fit Joints for
// Plastics - A Design Guide, figure 16, measured from the page, 2 to 3 % (read).
var pcChart = [][2]float64{{0, 2250}, {0.5, 2203}, {1, 2152}, {1.5, 1995}, {2, 1848}, {2.5, 1683}, {3, 1496}, {3.5, 1314}, {4, 1200}}

func TestPCFollowsItsChart(t *testing.T) {
	m, _ := Resolve(MaterialSpec{Material: "PC", Process: "moulded"})
	for _, p := range pcChart {
		got := SecantModulus(m.Modulus.Value, p[0]/100, m.SecantZero.Value, m.Straight.Value)
		near(t, fmt.Sprintf("at %g %%", p[0]), got, p[1], 0.03)
	}
}

// TestSecantModulusIsTheTangentSummed: by a thousand steps of a tangent that stays and
// then falls evenly to nothing.
func TestSecantModulusIsTheTangentSummed(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 9))
	for range 200 {
		e, zero := 100+3000*rng.Float64(), 0.03+0.2*rng.Float64()
		straight := 0.2 * zero * rng.Float64()
		top, eps := zero/2-straight, 0.8*zero*rng.Float64()
		const n = 2000
		var stress float64
		for i := range n {
			x := eps * (float64(i) + 0.5) / n
			stress += e * max(0, min(1, (top-x)/(top-straight))) * eps / n
		}
		near(t, fmt.Sprintf("E %g, zero %g, straight %g, at %g", e, zero, straight, eps), SecantModulus(e, eps, zero, straight), stress/eps, 1e-5)
	}
}

// TestStressStaysBelowTheStrength: for every material and process, at every strain up to
// twice the permitted one, in the layers and across them; with the headroom as stated
// for what presses and without it for what holds.
func TestStressStaysBelowTheStrength(t *testing.T) {
	for _, r := range table {
		for _, own := range []Figures{{}, {Modulus: ptr(1.4 * r.modulus)}, {Strength: ptr(0.5 * r.strength)}} {
			m, _ := Resolve(MaterialSpec{Material: r.name, Process: r.process, Figures: own})
			if m.Metal() {
				continue
			}
			e, z, straight := m.Modulus.Value, m.SecantZero.Value, m.Straight.Value
			if z == 0 || m.SecantZeroLow.Value == 0 || m.SecantZeroLow.Value > z {
				t.Fatalf("%s %s: no bound: %+v, low %+v", r.name, r.process, m.SecantZero, m.SecantZeroLow)
			}
			last := 0.0
			for i := range 201 {
				eps := 2 * m.StrainOnce.Value * float64(i) / 200
				stress := SecantModulus(e, eps, z, straight) * eps
				if low := SecantModulus(e, eps, m.SecantZeroLow.Value, 0) * eps; stress > 1.25*m.Strength.Value*(1+1e-9) || low > m.Strength.Value*(1+1e-9) {
					t.Errorf("%s %s at %.3g %%: %g MPa, for the hold %g, strength %g", r.name, r.process, 100*eps, stress, low, m.Strength.Value)
					break
				}
				if stress < last-1e-9 {
					t.Errorf("%s %s at %.3g %%: stress falls to %g from %g", r.name, r.process, 100*eps, stress, last)
					break
				}
				last = stress
			}
			if own == (Figures{}) {
				if across := SecantModulus(e, m.StrainOnceZ.Value, z, straight) * m.StrainOnceZ.Value; m.Layered() && across > 1.25*m.StrengthZ.Value {
					t.Errorf("%s %s: %g MPa at the strain permitted across the layers, strength there %g", r.name, r.process, across, m.StrengthZ.Value)
				}
			}
		}
	}
}

// TestForceRisesWithUndercut: whatever the material, more undercut never needs less.
func TestForceRisesWithUndercut(t *testing.T) {
	for _, r := range table {
		ring, arm, pin := capJob(), armJob(), pinJob()
		spec := MaterialSpec{Material: r.name, Process: r.process, Figures: Figures{Friction: ptr(0.3)}}
		var last [3]float64
		for i := 1; i <= 60; i++ {
			share := float64(i) / 30
			ring.Lower, ring.Upper, arm.Lower, arm.Upper, pin.Lower, pin.Upper = spec, spec, spec, spec, spec, spec
			ring.Latches[0].Annular.Undercut = 1.2 * share
			arm.Latches[0].Cantilever.Undercut = 0.8 * share
			pin.Latches[0].PressFit.Interference = 0.2 * share
			for k, a := range []Assembly{ring, arm, pin} {
				lower, _ := Resolve(a.Lower)
				j := readyJoint(a.Latches[0], lower, lower)
				p, s := j.nominalAt(0.3)
				peak, _ := sumCurve([]profile{p}, []int{1}).Peak()
				if s.jam {
					peak = math.Inf(1)
				}
				if peak < last[k]*(1-1e-9) {
					t.Errorf("%s %s, %s: force falls to %g from %g at share %g", r.name, r.process, a.Latches[0].Kind(), peak, last[k], share)
				}
				last[k] = peak
			}
		}
	}
}

// TestArmAgainstItsSectionsSummed: the load that deflects an even arm to its permitted
// strain and to twice it, its stress followed through every section and along its length,
// against the one secant modulus of the whole.
func TestArmAgainstItsSectionsSummed(t *testing.T) {
	for _, r := range table {
		m, _ := Resolve(MaterialSpec{Material: r.name, Process: r.process})
		if m.Metal() || m.chart {
			continue
		}
		for _, eps := range []float64{m.StrainOnce.Value, 2 * m.StrainOnce.Value} {
			e, z := m.Modulus.Value, m.SecantZero.Value
			const l, h, n = 10.0, 1.0, 40
			moment := func(curvature float64) (out float64) { // per mm of width
				for i := range n {
					y := h / 2 * (float64(i) + 0.5) / n
					out += 2 * SecantModulus(e, curvature*y, z, 0) * curvature * y * y * h / 2 / n
				}
				return out
			}
			// Curvature of a moment by halving, once a place on the arm.
			deflection := func(p float64) (out float64) {
				for i := range n {
					x := l * (float64(i) + 0.5) / n
					lo, hi := 0.0, 40*z/h
					for range 30 {
						if mid := (lo + hi) / 2; moment(mid) < p*x {
							lo = mid
						} else {
							hi = mid
						}
					}
					out += lo * x * l / n
				}
				return out
			}
			y := eps * l * l / (1.5 * h) // strain 1.5 h y/L^2 at the root
			member := member{stiffness: e * h * h * h / 12 * 3 / (l * l * l)}.follow(m, 1.5*h/(l*l), bodyReserve)
			rule, _, _ := single(&member, member.stiffness, y)
			lo, hi := 0.0, 2*rule
			for range 20 {
				if mid := (lo + hi) / 2; deflection(mid) < y {
					lo = mid
				} else {
					hi = mid
				}
			}
			if ratio := rule / lo; ratio < 0.96 || ratio > 1.06 {
				t.Errorf("%s %s at %g %%: %g N per mm by the rule, %g by its sections: %.3f", r.name, r.process, 100*eps, rule, lo, ratio)
			}
		}
	}
}

// TestRingReserveByTheEnergyOfItsWall: a wall on the foundation of its hoop that moves as
// exp(-u) cos u from an end, or exp(-u) (cos u + sin u) to both sides: the cube of the
// movement over its square is how much less the whole bends down than the ring under the
// bead. Both stay above the reserve that is taken.
func TestRingReserveByTheEnergyOfItsWall(t *testing.T) {
	for name, c := range map[string]struct {
		shape func(u float64) float64
		width float64 // that carries, K over the foundation, in 1/beta
	}{
		"at an end":     {func(u float64) float64 { return math.Exp(-u) * math.Cos(u) }, 0.5},
		"far from both": {func(u float64) float64 { return math.Exp(-u) * (math.Cos(u) + math.Sin(u)) }, 1},
	} {
		const n, end = 20000, 20.0
		var cube float64
		for i := range n {
			w := c.shape(end * (float64(i) + 0.5) / n)
			cube += w * w * w * end / n
		}
		if reserve := c.width / cube; reserve < bodyReserve || reserve > 1.9 {
			t.Errorf("%s: reserve %.3f, taken %g", name, reserve, bodyReserve)
		}
	}
}
