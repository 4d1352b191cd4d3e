package force

import "math"

// member is one side of a joint as a spring. Movement is radial for rings and
// the deflection for arms [mm]; load is the transverse force [N], or per mm of
// engaged length [N/mm] for what is pressed.
type member struct {
	stiffness float64 // at small strain [load/mm]; 0: rigid
	strain    float64 // strain at the place that fails first, per mm of movement [1/mm]
	limit     float64 // permitted strain [1]
	zero      float64 // movement at which the secant line meets zero [mm]; 0: no bound, a metal
	knee      float64 // movement up to which load is in proportion [mm], below a quarter of zero
	low       float64 // zero for what holds [mm]
	reserve   float64 // of zero over that of the most strained fibre, see bodyReserve [1]
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

// bend is twice the movement from the knee to the top of the load [mm].
func (m *member) bend() float64 { return m.zero - 4*m.knee }

// movementAt gives the movement under a load that the member can carry.
func (m *member) movementAt(k, load float64) float64 {
	switch {
	case m.stiffness == 0:
		return 0
	case m.zero == 0 || load <= k*m.knee:
		return load / k
	}
	return m.knee + m.bend()/2*(1-math.Sqrt(max(0, 1-4*(load-k*m.knee)/(k*m.bend()))))
}

// most is the largest load the member carries: the top of its law.
func (m *member) most(k float64) float64 {
	if m.stiffness == 0 || m.zero == 0 {
		return math.Inf(1)
	}
	return k * m.zero / 4
}

// polynomial gives the load over the movement, p0 + p1 w + p2 w^2, before or
// beyond the knee and below the top.
func (m *member) polynomial(k float64, beyond bool) (p0, p1, p2 float64) {
	if m.zero == 0 || !beyond {
		return 0, k, 0
	}
	q := k / m.bend()
	return -q * m.knee * m.knee, k + 2*q*m.knee, -q
}

// series loads two members in series by a movement w, with stiffnesses ko and
// ki that already carry modulus and wall of this draw.
//
//	Po(wo) = Pi(w - wo)
//	P(v) = k v                          up to the knee
//	P(v) = k [v - (v - knee)^2/(zero - 4 knee)]   up to the top, at zero/2 - knee
//
// A member past its top carries that load and takes the rest of the movement, so that
// more movement never means less load. small is the stiffness of both at small strain.
//
// Source: springs in series; the law is [SecantModulus].
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
	o0, o1, o2 := outer.polynomial(ko, beyond(outer, inner, ko, ki, w))
	i0, i1, i2 := inner.polynomial(ki, beyond(inner, outer, ki, ko, w))
	a, b, c := o2-i2, o1+i1+2*w*i2, o0-i0-w*(i1+w*i2)
	wo = -2 * c / (b + math.Sqrt(max(0, b*b-4*a*c)))
	return o0 + wo*(o1+wo*o2), wo, small
}

// beyond says whether a member is past its knee when both together have moved by w.
func beyond(m, other *member, k, kOther, w float64) bool {
	if m.knee == 0 {
		return true
	}
	load := k * m.knee
	return load <= other.most(kOther) && m.knee+other.movementAt(kOther, load) < w
}

func single(m *member, k, w float64) (load, movement, small float64) {
	switch {
	case m.zero == 0 || w <= m.knee:
		return k * w, w, k
	case w >= m.zero/2-m.knee:
		return k * m.zero / 4, w, k
	}
	return k * (w - (w-m.knee)*(w-m.knee)/m.bend()), w, k
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
