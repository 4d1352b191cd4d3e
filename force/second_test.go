package force

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

// The figures of whole jobs, worked out a second time from the job's own dimensions:
// walls by finite elements, sections by strips, arms by energy. No stiffness, slope,
// section or lever of the package goes in.

// wallMember is a ring member by its two diameters under the bead of capJob, 0.4 mm of
// land and 0.4 mm high between 25 and 40 deg: stiffness and lever.
func wallMember(big, small, mouth, beyond, e, nu float64, far FarEnd, outer bool) (k, lever float64) {
	bead := 0.4 + 0.4/2*(1/math.Tan(rad(25))+1/math.Tan(rad(40)))
	band := math.Max(bead, math.Min((big-small)/4, 0.4*(big+small)/4))
	return wallUnder(big, small, math.Max(mouth, band/2), band, beyond, e, nu, far, outer)
}

// wallUnder is a ring member under a band whose middle lies so far from the mouth. The
// give of the face is the formula of the datasheet once more.
func wallUnder(big, small, mouth, band, beyond, e, nu float64, far FarEnd, outer bool) (k, lever float64) {
	wall := (big - small) / 2
	t := Tube{Band: band, Radius: (big + small) / 4, Wall: wall, Poisson: nu, Mouth: mouth, Beyond: beyond, Far: far}
	decay := 1 / math.Sqrt(math.Sqrt(3*(1-nu*nu))/(t.Radius*wall))
	if far == Long {
		t.Beyond, t.Far = 12*decay, Free
	}
	t.Mouth = math.Min(t.Mouth, 12*decay)
	j := wallByElements(t, t.Beyond)
	x := wall / t.Radius
	q := 0.48 * wall * (1 - math.Exp(-8*x)) * math.Min(1, 1-0.32*(x-0.9))
	edge := 0.23 * wall * (1 - math.Exp(-20*x)) * math.Min(1, 1-0.25*(x-0.5))
	away := math.Min(1, (t.Mouth-band/2)*2/wall)
	give := away*(1-nu*nu)/math.Pi*math.Log(1+q*q/(band*band)) + (1-away)*0.6*math.Log(1+math.Pow(edge/band, 2.5))
	w := (big*big + small*small) / (big*big - small*small)
	section := math.Pi * (big*big - small*small) / 4
	slope := j.slope
	if outer {
		if slope > 0 {
			slope /= 1 + 0.3*t.Band*wall/(t.Radius*t.Radius)
		}
		k = 2 * math.Pi * e / ((w+nu)/j.width + give/(small/2))
		return k, math.Max(0, slope*wall/2-nu*k*small/2*j.beyond/(e*section))
	}
	k = 2 * math.Pi * e / ((w-nu)/j.width + give/(big/2))
	if slope > 0 {
		slope /= 1 + 0.65*t.Band*wall/(t.Radius*t.Radius)
	}
	return k, math.Max(0, slope*wall/2+nu*k*big/2*j.beyond/(e*section))
}

// fingersOf are n fingers of a ring cut by slots: stiffness, lever at a movement w,
// strain per movement; section by strips across the way they bend.
func fingersOf(n int, big, small, slot, reach, e, w float64, outward bool) (k, lever, strain float64) {
	r, rr := small/2, big/2
	phi := math.Pi/float64(n) - slot/(r+rr)
	width := func(x float64) float64 {
		half := math.Min(math.Sqrt(math.Max(0, rr*rr-x*x)), x*math.Tan(phi))
		if x < r {
			half -= math.Sqrt(r*r - x*x)
		}
		return 2 * math.Max(0, half)
	}
	lo := r * math.Cos(phi)
	sum := func(f func(x float64) float64) float64 {
		return quad.Fixed(func(x float64) float64 { return f(x) * width(x) }, lo, r, 3000, nil, 0) + quad.Fixed(func(x float64) float64 { return f(x) * width(x) }, r, rr, 3000, nil, 0)
	}
	area := sum(func(float64) float64 { return 1 })
	c := sum(func(x float64) float64 { return x }) / area
	inertia := sum(func(x float64) float64 { return (x - c) * (x - c) })
	face := c - lo
	if !outward {
		face = rr - c
	}
	return float64(n) * 3 * e * inertia / (reach * reach * reach), face*1.5/reach + 0.3*w/reach, 3 * face / (reach * reach)
}

// axial is the force on a flank over the load of the springs.
func axial(mu, alpha, lever float64) float64 {
	f := math.Tan(alpha + math.Atan(mu))
	return f / (1 - f*lever)
}

func TestRingsASecondTime(t *testing.T) {
	const e, nu, mu, d = 2000, 0.4, 0.6, 40
	for _, c := range []struct {
		name   string
		change func(*Annular)
		outer  func() (k, lever float64)
		inner  func() (k, lever float64)
	}{
		{"both hollow", func(*Annular) {},
			func() (float64, float64) { return wallMember(43.2, d, 3, 0, e, nu, Long, true) },
			func() (float64, float64) { return wallMember(d, 36.8, 2, 0, e, nu, Long, false) }},
		{"floored, solid and remote", func(v *Annular) {
			v.FarEnd, v.FarDistance, v.InnerDiameter, v.EndDistanceInner = "floored", 4, 0, nil
		},
			func() (float64, float64) { return wallMember(43.2, d, 3, 4, e, nu, Floored, true) },
			func() (float64, float64) { return wallMember(d, 0, 1e4, 0, e, nu, Long, false) }},
		{"inner on a floor", func(v *Annular) { v.FarEndInner, v.FarDistanceInner, v.EndDistance = "floored", 6, 9 },
			func() (float64, float64) { return wallMember(43.2, d, 9, 0, e, nu, Long, true) },
			func() (float64, float64) { return wallMember(d, 36.8, 2, 6, e, nu, Floored, false) }},
		{"split outer", func(v *Annular) { v.Split, v.Slots, v.SlotWidth, v.SlotDepth = "outer", 8, 1.5, 14 },
			func() (float64, float64) { k, l, _ := fingersOf(8, 43.2, d, 1.5, 11, e, 0.4, true); return k, l },
			func() (float64, float64) { return wallMember(d, 36.8, 2, 0, e, nu, Long, false) }},
		{"split inner", func(v *Annular) { v.Split, v.Slots, v.SlotWidth, v.SlotDepth = "inner", 6, 2, 12 },
			func() (float64, float64) { return wallMember(43.2, d, 3, 0, e, nu, Long, true) },
			func() (float64, float64) { k, l, _ := fingersOf(6, d, 36.8, 2, 10, e, 0.4, false); return k, l }},
	} {
		a := stated(capJob())
		c.change(a.Latches[0].Annular)
		r := mustAnalyse(t, a)
		ko, lo := c.outer()
		ki, li := c.inner()
		load := 0.4 / (1/ko + 1/ki)
		lever := (lo/ko + li/ki) / (1/ko + 1/ki)
		l := r.Latches[0]
		near(t, c.name+": lever", explained(a)["kappa"], lever, 5e-3)
		near(t, c.name+": peak", l.PeakEach, load*axial(mu, rad(25), lever), 5e-3)
		near(t, c.name+": across the axis", l.Transverse, load/(1-math.Tan(rad(25)+math.Atan(mu))*lever), 5e-3)
		f := math.Tan(rad(40) + math.Atan(mu))
		near(t, c.name+": apart", l.Separation, load*f/(1+f*lever), 5e-3)
		flat := axial(mu, 0, lever)
		near(t, c.name+": on the land", l.Curve.At(l.PeakLift-0.2), load*flat, 5e-3)
		// Up the lead-in, over the land and down the return flank: 25 and 40 deg.
		near(t, c.name+": stroke", l.Stroke, 0.4/math.Tan(rad(25))+0.4+0.4/math.Tan(rad(40)), 1e-12)
		near(t, c.name+": lift of the peak", l.PeakLift, l.Stroke-0.4*(1/math.Tan(rad(25))-lever), 1e-3)
		strain := 2 * load / math.Min(ko, ki) / d // the softer one, both of the same limit
		if a.Latches[0].Annular.Split == "outer" {
			_, _, s := fingersOf(8, 43.2, d, 1.5, 11, e, 0.4, true)
			strain = s * load / ko
		} else if a.Latches[0].Annular.Split == "inner" {
			_, _, s := fingersOf(6, d, 36.8, 2, 10, e, 0.4, false)
			strain = s * load / ki
		}
		near(t, c.name+": strain", l.Strain, strain, 5e-3)
	}
}

func TestBallsASecondTime(t *testing.T) {
	const e, nu, mu = 2000, 0.4, 0.6
	for _, c := range []struct {
		name   string
		change func(*Ball)
		mouth  func() (k, lever, strain float64)
	}{
		{"closed, on a floor", func(*Ball) {}, func() (float64, float64, float64) {
			k, l := wallUnder(9, 5.6, 1.7/8, 1.7/4, 8-1.7/8, e, nu, Floored, true)
			return k, l, 2 / 5.6
		}},
		{"closed and long", func(b *Ball) { b.SocketDepth = 0 }, func() (float64, float64, float64) {
			k, l := wallUnder(9, 5.6, 1.7/8, 1.7/4, 0, e, nu, Long, true)
			return k, l, 2 / 5.6
		}},
		{"slotted", func(b *Ball) { b.Slots, b.SlotWidth, b.SlotDepth = 4, 0.8, 6 }, func() (float64, float64, float64) {
			return fingersOf(4, 9, 5.6, 0.8, 6, e, 0.2, true)
		}},
	} {
		a := stated(ballJob())
		c.change(a.Latches[0].Ball)
		r := mustAnalyse(t, a)
		k, lever, strain := c.mouth()
		var in, out float64
		for i := range 20001 {
			phi := rad(25) * (2*float64(i)/20000 - 1)
			w := 3*math.Cos(phi) - 2.8
			if f := math.Tan(phi + math.Atan(mu)); w > 0 {
				in, out = math.Max(in, k*w*f/(1-f*lever)), math.Max(out, k*w*f/(1+f*lever))
			}
		}
		l := r.Latches[0]
		near(t, c.name+": peak", l.PeakEach, in, 2e-3)
		near(t, c.name+": apart", l.Separation, out, 2e-3)
		near(t, c.name+": strain", l.Strain, strain*0.2, 2e-3)
		near(t, c.name+": across the axis", l.Transverse, k*0.2/(1-mu*lever), 2e-3)
		near(t, c.name+": stroke", l.Stroke, 2*math.Sqrt(3*3-2.8*2.8), 1e-12)
	}
}

// leaning by repeating, as in the sampler.
func leanByRepeating(alpha, mu, y, slope, turn, lever float64) float64 {
	theta := 0.0
	for range 400 {
		f := math.Tan(alpha + theta + math.Atan(mu))
		theta += (y*(slope-(turn-slope)*f*lever/(1-f*lever)) - theta) / 4
	}
	return theta
}

func TestArmsASecondTime(t *testing.T) {
	const e, mu = 2310, 0.66
	// energy gives the arm's figures by unit loads: moments of a force across, mp, of a
	// moment at the tip, 1, and of an axial force, mw, along every part of inertia i.
	type part struct {
		length, inertia float64
		mp, mw          func(x float64) float64
	}
	energy := func(parts []part) (k, slope, turn, lever float64) {
		var pp, pm, mm, pw float64
		for _, q := range parts {
			integral := func(f func(x float64) float64) float64 {
				return quad.Fixed(f, 0, q.length, 60, nil, 0) / (e * q.inertia)
			}
			pp += integral(func(x float64) float64 { return q.mp(x) * q.mp(x) })
			pm += integral(q.mp)
			mm += q.length / (e * q.inertia)
			pw += integral(func(x float64) float64 { return q.mp(x) * q.mw(x) })
		}
		return 1 / pp, pm / pp, mm / pm, pw / pp
	}
	flat := func(v float64) func(float64) float64 { return func(float64) float64 { return v } }
	same := func(x float64) float64 { return x }
	const width, thick = 6, 2
	inertia := width * math.Pow(thick, 3) / 12
	for _, c := range []struct {
		name   string
		change func(*Cantilever)
		parts  []part
		bow    float64
		across float64 // largest moment over that at the tip's lever, in strip or bend, times half its height over its inertia
	}{
		{"L", func(c *Cantilever) { c.Shape, c.BaseLength, c.BaseThickness = "l_arm", 8, 1.6 },
			[]part{{19, inertia, same, flat(1)}, {8, width * math.Pow(1.6, 3) / 12, flat(19), flat(1)}}, 0.3 / 19, 19 * 0.8 / (width * math.Pow(1.6, 3) / 12)},
		{"U", func(c *Cantilever) { c.Shape, c.BendRadius = "u_arm", 3 },
			[]part{{19, inertia, same, flat(1)},
				{math.Pi * 3, inertia, func(x float64) float64 { return 19 + 3*math.Sin(x/3) }, func(x float64) float64 { return 1 + 3*(1-math.Cos(x/3)) }},
				{19, inertia, same, flat(1 + 2*3)}}, 0, 22 / inertia},
	} {
		a := stated(armJob())
		v := a.Latches[0].Cantilever
		v.TipThickness, v.Land = 0, 0
		c.change(v)
		r := mustAnalyse(t, a)
		k, slope, turn, lever := energy(c.parts)
		lever += c.bow * 1.2
		nominal := 1.2 * k * math.Max(19*1/(e*inertia), c.across/e)
		load := k * 1.2 * (1 - nominal/0.0933)
		theta := leanByRepeating(rad(30), mu, 1.2, slope, turn, lever)
		near(t, c.name+": peak", r.Latches[0].PeakEach, load*axial(mu, rad(30)+theta, lever), 5e-3)
	}
	// A rocker on two bars: shear modulus times polar moment.
	a := stated(armJob())
	v := a.Latches[0].Cantilever
	*v = Cantilever{Flexes: "lower", Bends: "outward", Shape: "rocker", Undercut: 1.2, UndercutTol: ptr(0.1), MatingAngle: rad(30), ReturnAngle: rad(45), Length: 19, BarRadius: 1.2, BarLength: 8, RootRadius: ptr(0.6)}
	k := 2 * e / (2 * 1.37) * math.Pi * math.Pow(1.2, 4) / 2 / (8 * 19 * 19)
	gamma := 1.2 * 1.2 / (8 * 19)
	load := k * 1.2 * (1 - gamma/1.37/0.0933)
	lever := 1.2 / 19.0
	theta := leanByRepeating(rad(30), mu, 1.2, 1/19.0, 1/19.0, lever)
	r := mustAnalyse(t, a)
	near(t, "rocker: peak", r.Latches[0].PeakEach, load*axial(mu, rad(30)+theta, lever), 5e-3)
	near(t, "rocker: strain", r.Latches[0].Strain, 0.9072*math.Cbrt(1/0.25)*gamma/1.37, 1e-3)
	one := *v
	one.Bars = 1
	a.Latches[0].Cantilever = &one
	near(t, "one bar", mustAnalyse(t, a).Peak, r.Peak/2, 1e-9)
}
