package force

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// ringElements is an axisymmetric solid ring of eight-node elements: an
// independent numerical solution that knows neither shell nor Lame.
type ringElements struct {
	r, z             []float64 // sides of the elements, radii and heights from the mouth [mm]
	modulus, poisson float64
	from, to         float64 // loaded band [mm] from the mouth
	atBore           bool    // load on the bore, else on the outer surface
	floored          bool    // far end held across the axis too
}

// even are n elements alike between two ends.
func even(from, to float64, n int) []float64 {
	out := make([]float64, n+1)
	for i := range out {
		out[i] = from + (to-from)*float64(i)/float64(n)
	}
	return out
}

// graded are elements alike from a to b, n of them, that grow by a fifth each, up to
// most, towards two ends.
func graded(end, a, b, far float64, n int, most float64) []float64 {
	out := even(a, b, n)
	grow := func(x, to, h float64) (side []float64) {
		for d := to - x; math.Abs(d) > 1e-9; d = to - x {
			h = math.Min(1.2*h, most)
			if math.Abs(d) < 1.6*h {
				x = to
			} else {
				x += math.Copysign(h, d)
			}
			side = append(side, x)
		}
		return side
	}
	before := grow(a, end, (b-a)/float64(n))
	slices.Reverse(before)
	return append(append(before, out...), grow(b, far, (b-a)/float64(n))...)
}

func (m ringElements) bore() float64  { return m.r[0] }
func (m ringElements) outer() float64 { return m.r[len(m.r)-1] }

// nodes numbers the nodes by row and column; -1 where there is none.
func (m ringElements) nodes() (id [][]int, n int) {
	rows, cols := 2*len(m.z)-1, 2*len(m.r)-1
	id = make([][]int, rows)
	for i := range id {
		id[i] = make([]int, cols)
		for j := range id[i] {
			id[i][j] = -1
			if i%2 == 0 || j%2 == 0 {
				id[i][j] = n
				n++
			}
		}
	}
	return id, n
}

// assemble gives the stiffness matrix, the far end held along the axis.
func (m ringElements) assemble() (k *mat.SymBandDense, id [][]int) {
	id, n := m.nodes()
	rows, cols := len(id), len(id[0])
	k = mat.NewSymBandDense(2*n, min(2*n-1, 2*(3*cols)+6), nil)
	c := m.modulus / ((1 + m.poisson) * (1 - 2*m.poisson))
	d := [4][4]float64{
		{c * (1 - m.poisson), c * m.poisson, c * m.poisson, 0},
		{c * m.poisson, c * (1 - m.poisson), c * m.poisson, 0},
		{c * m.poisson, c * m.poisson, c * (1 - m.poisson), 0},
		{0, 0, 0, c * (1 - 2*m.poisson) / 2},
	}
	// Local nodes: corners, then mid-sides, as (column, row) offsets.
	offsets := [8][2]int{{0, 0}, {2, 0}, {2, 2}, {0, 2}, {1, 0}, {2, 1}, {1, 2}, {0, 1}}
	g := 1 / math.Sqrt(3)
	for ez := range len(m.z) - 1 {
		for er := range len(m.r) - 1 {
			hr, hz := m.r[er+1]-m.r[er], m.z[ez+1]-m.z[ez]
			var dof [16]int
			for a, o := range offsets {
				node := id[2*ez+o[1]][2*er+o[0]]
				dof[2*a], dof[2*a+1] = 2*node, 2*node+1
			}
			var ke [16][16]float64
			for _, gp := range [4][2]float64{{-g, -g}, {g, -g}, {g, g}, {-g, g}} {
				shape, dx, dy := serendipity(gp[0], gp[1])
				r := m.r[er] + (gp[0]+1)/2*hr
				var b [4][16]float64
				for a := range 8 {
					nr, nz := dx[a]*2/hr, dy[a]*2/hz
					b[0][2*a], b[1][2*a], b[2][2*a+1] = nr, shape[a]/r, nz
					b[3][2*a], b[3][2*a+1] = nz, nr
				}
				weight := 2 * math.Pi * r * hr * hz / 4
				for i := range 16 {
					for j := range 16 {
						var sum float64
						for p := range 4 {
							for q := range 4 {
								sum += b[p][i] * d[p][q] * b[q][j]
							}
						}
						ke[i][j] += sum * weight
					}
				}
			}
			for i := range 16 {
				for j := range 16 {
					if dof[i] <= dof[j] {
						k.SetSymBand(dof[i], dof[j], k.At(dof[i], dof[j])+ke[i][j])
					}
				}
			}
		}
	}
	hold := func(dof int) { k.SetSymBand(dof, dof, 1e9*m.modulus*(m.outer()+m.z[len(m.z)-1])) }
	for j := range cols {
		if node := id[rows-1][j]; node >= 0 {
			hold(2*node + 1)
			if m.floored {
				hold(2 * node)
			}
		}
	}
	if m.bore() == 0 {
		for i := range rows {
			if node := id[i][0]; node >= 0 {
				hold(2 * node)
			}
		}
	}
	return k, id
}

func solved(k *mat.SymBandDense, f *mat.VecDense) *mat.VecDense {
	var chol mat.BandCholesky
	if !chol.Factorize(k) {
		panic("not positive definite")
	}
	var u mat.VecDense
	if err := chol.SolveVecTo(&u, f); err != nil {
		panic(err)
	}
	return &u
}

// stiffness is the total radial force over the mean radial movement of the
// loaded band [N/mm]; the lever of an axial force on the same band, towards the far
// end: how much of the movement it takes back; and the largest strain along the
// axis on the face that is not loaded, per movement [1/mm].
func (m ringElements) stiffness() (stiff, lever, bending float64) {
	k, id := m.assemble()
	n, _ := k.Dims()
	radial, axial := mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	column, radius, sign := 0, m.bore(), 1.0
	if !m.atBore {
		column, radius, sign = len(id[0])-1, m.outer(), -1
	}
	// Unit pressure on the band, consistent nodal forces by Simpson.
	var total float64
	for ez := range len(m.z) - 1 {
		hz := m.z[ez+1] - m.z[ez]
		if mid := m.z[ez] + hz/2; mid < m.from || mid > m.to {
			continue
		}
		for a, w := range [3]float64{1. / 6, 4. / 6, 1. / 6} {
			v := w * hz * 2 * math.Pi * radius
			node := id[2*ez+a][column]
			radial.SetVec(2*node, radial.AtVec(2*node)+sign*v)
			axial.SetVec(2*node+1, axial.AtVec(2*node+1)+v)
			total += v
		}
	}
	// Work of the load gives its mean movement; the bodies are linear, so that the
	// axial load's radial work on it is the radial load's on the axial one's.
	u := solved(k, radial)
	work := mat.Dot(u, radial)
	face := len(id[0]) - 1 - column
	for i := 2; i < len(id); i += 2 {
		stretch := u.AtVec(2*id[i][face]+1) - u.AtVec(2*id[i-2][face]+1)
		bending = max(bending, math.Abs(stretch)/(m.z[i/2]-m.z[i/2-1])*total/work)
	}
	return total * total / work, -mat.Dot(u, axial) / work, bending
}

// serendipity gives the eight shape functions and their slopes.
func serendipity(x, y float64) (n, dx, dy [8]float64) {
	corners := [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}
	for a, c := range corners {
		px, py := 1+c[0]*x, 1+c[1]*y
		q := c[0]*x + c[1]*y - 1
		n[a] = px * py * q / 4
		dx[a] = c[0] * py * (q + px) / 4
		dy[a] = c[1] * px * (q + py) / 4
	}
	for a, c := range [4][2]float64{{0, -1}, {1, 0}, {0, 1}, {-1, 0}} {
		if c[0] == 0 {
			n[4+a], dx[4+a], dy[4+a] = (1-x*x)*(1+c[1]*y)/2, -x*(1+c[1]*y), (1-x*x)*c[1]/2
		} else {
			n[4+a], dx[4+a], dy[4+a] = (1+c[0]*x)*(1-y*y)/2, c[0]*(1-y*y)/2, -(1+c[0]*x)*y
		}
	}
	return n, dx, dy
}

// rigidPin is the total radial force on a rigid pin of unit radial oversize over a
// length of bore from the mouth [N/mm].
func (m ringElements) rigidPin(engaged float64) float64 {
	k, id := m.assemble()
	n, _ := k.Dims()
	f := mat.NewVecDense(n, nil)
	stiff := 1e7 * m.modulus
	var held []int
	for i := range id {
		z := m.z[i/2]
		if i%2 == 1 {
			z = (z + m.z[i/2+1]) / 2
		}
		if z <= engaged+1e-9 {
			dof := 2 * id[i][0]
			held = append(held, dof)
			k.SetSymBand(dof, dof, k.At(dof, dof)+stiff)
			f.SetVec(dof, stiff)
		}
	}
	u := solved(k, f)
	var total float64
	for _, dof := range held {
		total += stiff * (1 - u.AtVec(dof))
	}
	return total
}
