package force

import "math"

// member is one side of a joint as a spring. Movement is radial for rings and
// the deflection for arms [mm]; load is the transverse force [N], or per mm of
// engaged length [N/mm] for what is pressed.
type member struct {
	stiffness float64 // at small strain [load/mm]; 0: rigid
	strain    float64 // strain at the place that fails first, per mm of movement [1/mm]
	limit     float64 // permitted strain [1]
	zero      float64 // movement at which the secant line meets zero [mm]; 0: no secant data
	wall      float64 // plus or minus on the wall, share of it [1]
	law       wallLaw // how the stiffness follows the wall
}

// wallLaw is the power of the wall thickness in a stiffness.
type wallLaw int

const (
	ringWall wallLaw = iota // 1.5: a ring load on a tube, sqrt(R t) wide
	armWall                 // 3: a bending arm
	barWall                 // 4: a twisted round bar
)

// movementAt gives the movement under a load that the member can carry.
func (m *member) movementAt(k, load float64) float64 {
	switch {
	case m.stiffness == 0:
		return 0
	case m.zero == 0:
		return load / k
	}
	return m.zero / 2 * (1 - math.Sqrt(max(0, 1-4*load/(k*m.zero))))
}

// most is the largest load the member carries: the top of the secant parabola.
func (m *member) most(k float64) float64 {
	if m.stiffness == 0 || m.zero == 0 {
		return math.Inf(1)
	}
	return k * m.zero / 4
}

// series loads two members in series by a movement w, with stiffnesses ko and
// ki that already carry modulus and wall of this draw.
//
//	ko wo (1 - wo/ao) = ki wi (1 - wi/ai),  wo + wi = w
//
// A member past the top of its parabola carries that load and takes the rest of
// the movement, so that more movement never means less load. small is the
// stiffness of both at small strain.
//
// Source: springs in series; the secant line is [SecantModulus].
func series(outer, inner *member, ko, ki, w float64) (load, wo, small float64) {
	switch {
	case outer.stiffness == 0:
		load, _, small = single(inner, ki, w)
		return load, 0, small
	case inner.stiffness == 0:
		return single(outer, ko, w)
	}
	small = ko * ki / (ko + ki)
	if outer.zero == 0 && inner.zero == 0 {
		load = small * w
		return load, load / ko, small
	}
	if most := min(outer.most(ko), inner.most(ki)); outer.movementAt(ko, most)+inner.movementAt(ki, most) <= w {
		if outer.most(ko) <= inner.most(ki) {
			return most, w - inner.movementAt(ki, most), small
		}
		return most, outer.movementAt(ko, most), small
	}
	var byO, byI float64
	if outer.zero > 0 {
		byO = 1 / outer.zero
	}
	if inner.zero > 0 {
		byI = 1 / inner.zero
	}
	a, b, c := ki*byI-ko*byO, ko+ki*(1-2*w*byI), -ki*w*(1-w*byI)
	wo = -2 * c / (b + math.Sqrt(max(0, b*b-4*a*c)))
	return ko * wo * (1 - wo*byO), wo, small
}

func single(m *member, k, w float64) (load, movement, small float64) {
	if m.zero == 0 {
		return k * w, w, k
	}
	if w >= m.zero/2 {
		return k * m.zero / 4, w, k
	}
	return k * w * (1 - w/m.zero), w, k
}

// wallFactor is what a change of wall, a share of it, does to a stiffness.
func (m *member) wallFactor(change float64) float64 {
	if change == 0 {
		return 1
	}
	x := 1 + change
	switch m.law {
	case armWall:
		return x * x * x
	case barWall:
		return x * x * x * x
	}
	return x * math.Sqrt(x)
}
