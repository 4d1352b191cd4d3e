package force

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// ringElements is an axisymmetric solid ring of eight-node elements: an
// independent numerical solution that knows neither shell nor Lame.
type ringElements struct {
	bore, outer, length float64 // radii and length [mm]
	modulus, poisson    float64
	from, to            float64 // loaded band [mm] from the mouth
	atBore              bool    // load on the bore, else on the outer surface
	floored             bool    // far end held across the axis too
	nr, nz              int
}

// nodes numbers the nodes by row and column; -1 where there is none.
func (m ringElements) nodes() (id [][]int, n int) {
	rows, cols := 2*m.nz+1, 2*m.nr+1
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
	hr, hz := (m.outer-m.bore)/float64(m.nr), m.length/float64(m.nz)
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
	for ez := range m.nz {
		for er := range m.nr {
			var dof [16]int
			for a, o := range offsets {
				node := id[2*ez+o[1]][2*er+o[0]]
				dof[2*a], dof[2*a+1] = 2*node, 2*node+1
			}
			var ke [16][16]float64
			for _, gp := range [4][2]float64{{-g, -g}, {g, -g}, {g, g}, {-g, g}} {
				shape, dx, dy := serendipity(gp[0], gp[1])
				r := m.bore + (float64(er)+(gp[0]+1)/2)*hr
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
	hold := func(dof int) { k.SetSymBand(dof, dof, 1e9*m.modulus*(m.outer+m.length)) }
	for j := range cols {
		if node := id[rows-1][j]; node >= 0 {
			hold(2*node + 1)
			if m.floored {
				hold(2 * node)
			}
		}
	}
	if m.bore == 0 {
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
	column, radius, sign := 0, m.bore, 1.0
	if !m.atBore {
		column, radius, sign = len(id[0])-1, m.outer, -1
	}
	// Unit pressure on the band, consistent nodal forces by Simpson.
	hz := m.length / float64(m.nz)
	var total float64
	for ez := range m.nz {
		if mid := (float64(ez) + 0.5) * hz; mid < m.from || mid > m.to {
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
		bending = max(bending, math.Abs(stretch)/hz*total/work)
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

func TestElementsGiveLamesRing(t *testing.T) {
	full := ringElements{bore: 5, outer: 8, length: 4, modulus: 1700, poisson: 0.4, to: 4, atBore: true, nr: 6, nz: 6}
	k, _, _ := full.stiffness()
	near(t, "pressure all along the bore", k, 2*math.Pi*1700*4/(lameRatio(16, 10)+0.4), 1e-6)
}

// TestRingAgainstElements compares the governing ring stiffness, and the lever of
// the axial part of the contact force, with axisymmetric elements. The load bears
// on a band half a wall wide, an eighth of the diameter in solid pins; a band of a
// whole wall makes a thick ring up to a quarter stiffer, one of a quarter as much
// softer. Outer members hold to within 4 % up to t/R = 1, which is as thick as a
// wall of the joint's own diameter; inner ones to within 4 % up to 0.5 and 8 % up
// to 1.1. The lever is held to within 0.04. Between 1.1 and the solid pin of t/R = 2
// the figure depends on how wide the bead bears, see [memberModel].
func TestRingAgainstElements(t *testing.T) {
	worst := 0.0
	for _, c := range []struct {
		d, wall, ends float64 // ends: distance of the band from the mouth, in walls
		outer         bool
		floor         float64 // distance of a floor from the band, in decay lengths; 0: long
		low, high     float64
	}{
		{200, 2.5, 0, true, 0, 0.98, 1.01},
		{200, 2.5, 3, false, 0, 0.98, 1.01},
		{64, 1.6, 6, true, 0, 0.98, 1.01},
		{30, 2, 1, true, 0, 0.97, 1.02},
		{30, 2, 3, false, 0, 0.97, 1.02},
		{30, 2, 1, true, 0.8, 0.96, 1.02},
		{20, 1.5, 0, true, 0.5, 0.96, 1.02},
		{9.6, 1.5, 0, true, 0, 0.97, 1.02},
		{10, 2, 1, true, 0, 0.97, 1.02},
		{10, 2, 1, false, 0, 0.96, 1.02},
		{5, 3, 1, true, 0, 0.96, 1.02},
		{10, 10, 0, true, 0, 0.96, 1.02},
		{10, 10, 1, true, 0, 0.98, 1.04},
		{10, 3.5, 1, false, 0, 0.92, 1.02},
		{10, 5, 0, false, 0, 1, 1.06},
		{10, 5, 1, false, 0, 1, 1.08},
	} {
		bore, out := c.d/2, c.d/2+c.wall
		if !c.outer {
			bore, out = c.d/2-c.wall, c.d/2
		}
		patch := c.wall / 2
		if bore == 0 {
			patch = c.wall / 4
		}
		beta := Beta((bore+out)/2, c.wall, 0.4)
		end, beyond := c.ends*c.wall+patch/2, 6/beta
		if c.floor > 0 {
			beyond = c.floor / beta
		}
		// Elements an eighth of a wall long, the band a whole number of them.
		h := patch / 4
		from := math.Round((end-patch/2)/h) * h
		nz := int(math.Round((from + patch + beyond) / h))
		m := ringElements{bore: bore, outer: out, length: float64(nz) * h, modulus: 1700, poisson: 0.4, atBore: c.outer, nr: 4, nz: nz, from: from, to: from + patch, floored: c.floor > 0}
		tube := Tube{Radius: (bore + out) / 2, Wall: c.wall, Modulus: 1700, Poisson: 0.4, Mouth: from + patch/2}
		if c.floor > 0 {
			tube.Far, tube.Beyond = Floored, m.length-tube.Mouth
		}
		want, turn, bending := m.stiffness()
		got, lever := RingStiffness(tube, 2*out, 2*bore, c.outer), RingLever(tube, 2*out, 2*bore, c.outer)
		strain := tube.RingBending(c.outer)
		t.Logf("d %g, wall %g (t/R %.2f), band %.3g from the mouth, outer %v, floor %.3g: elements %.5g N/mm, lever %.3f, bending %.3g; model %.5g, %.3f, %.3g; ratio %.3f", c.d, c.wall, c.wall/tube.Radius, tube.Mouth, c.outer, c.floor, want, turn, bending, got, lever, strain, got/want)
		// The face that is not loaded: of an outer member less the shortening by its
		// hoop, 0.4/R, which the model does not credit.
		if credit := 0.4 / tube.Radius; tube.Wall < 0.2*tube.Radius && (strain < 0.95*bending-credit || strain > 1.1*bending+credit) {
			t.Errorf("d %g, wall %g: bending %g per mm, elements %g", c.d, c.wall, strain, bending)
		}
		if ratio := got / want; ratio < c.low || ratio > c.high {
			t.Errorf("d %g, wall %g, %g walls from the mouth, outer %v: model over elements %.3f, want %.2f to %.2f", c.d, c.wall, c.ends, c.outer, ratio, c.low, c.high)
		}
		if wall := bore > 0; wall {
			worst = max(worst, math.Abs(lever-turn))
		}
	}
	if worst > 0.04 {
		t.Errorf("lever up to %.3f from the elements, want 0.04", worst)
	}
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
		if z := float64(i) * m.length / float64(2*m.nz); z <= engaged+1e-9 {
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

// TestBossEdgeAgainstElements: what a boss that goes on beyond the pin adds to
// Lame's ring.
func TestBossEdgeAgainstElements(t *testing.T) {
	// high: how far the length itself may lie above the elements; the fit is on the safe
	// side between its ends.
	for _, c := range []struct{ d, do, length, beyond, high float64 }{
		{100, 104, 20, 80, 0.04}, {20, 24, 10, 40, 0.14}, {10, 14, 10, 40, 0.16}, {5, 11, 10, 40, 0.14}, {4, 10, 6, 20, 0.14}, {4, 30, 6, 20, 0.06},
		{4, 10, 6, 0, 0}, {10, 14, 10, 0.75, 0.2}, {4, 8, 4, 0.5, 0.3},
	} {
		h := (c.do - c.d) / 2 / 8
		if c.do > 5*c.d {
			h = 0.25
		}
		engaged := math.Round(c.length/h) * h
		beyond := math.Min(math.Round(c.beyond/h)*h, math.Ceil(5/Beta((c.do+c.d)/4, (c.do-c.d)/2, 0.4)/h)*h)
		m := ringElements{bore: c.d / 2, outer: c.do / 2, length: engaged + beyond, modulus: 1700, poisson: 0.4, nr: 5, nz: int(math.Round((engaged + beyond) / h))}
		lame := 2 * math.Pi * 1700 / (lameRatio(c.do, c.d) + 0.4)
		want, got := m.rigidPin(engaged)/lame, engaged+BossEdge(c.do, c.d, beyond)
		t.Logf("d %g in %g, engaged %.3g, boss %.3g beyond: elements as Lame's ring %.4g mm long, model %.4g", c.d, c.do, engaged, beyond, want, got)
		if got < 0.995*want || got-engaged > (1+c.high)*(want-engaged)+1e-3 {
			t.Errorf("d %g in %g, engaged %g, %g beyond: %g mm, elements %g mm; want up to %g of the addition above", c.d, c.do, engaged, beyond, got, want, c.high)
		}
	}
}
