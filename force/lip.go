package force

import "math"

// lip is the law of a ball that opens a sharp-edged mouth. The centre of the
// ball stands z = lift - zero above the lip, the contact lies at the latitude phi
// of the ball with R sin phi = z, and the local lead angle is phi itself.
//
//	w = R cos phi - h                                       opening of the mouth, radial [mm]
//	F = (a w - b w^2) f/(1 - f kappa),  f = tan(phi + rho)  rho = atan mu, kappa: lever
//
// On a land the ball slides with its equator, z = 0; past it z counts from the far edge.
//
// Source: own (contact of a sphere with an edge; flank formula of [MatingFactor];
// lever of [RingLever] or [ArmLever]).
type lip struct {
	radius, half float64 // R: ball radius; h: half the mouth diameter [mm]
	a, b         float64 // load of the mouth over its opening [N/mm], [N/mm^2]
	mu, sinRho   float64 // coefficient of friction, sine of its angle [1]
	lever        float64 // of the axial part of the contact force [1]
	zero         float64 // lift at which the ball's equator is at the lip [mm]
	land         float64 // length of the lip's crest along the axis [mm]
}

// height of the centre over the edge that the ball stands on [mm]; 0 on the land.
func (l *lip) height(lift float64) float64 {
	z := lift - l.zero
	if z < 0 && l.land > 0 {
		return min(0, z+l.land)
	}
	return z
}

// force at a lift [N]; 0 where the ball does not touch or is drawn in.
func (l *lip) force(lift float64) float64 {
	z := l.height(lift)
	c2 := l.radius*l.radius - z*z
	if c2 <= l.half*l.half {
		return 0
	}
	c := math.Sqrt(c2)
	w := c - l.half
	load := w * (l.a - l.b*w)
	up := z + l.mu*c
	down := c - l.mu*z - l.lever*up
	if up <= 0 {
		return 0
	}
	if up >= jamFactor*down {
		return load * jamFactor
	}
	return load * up / down
}

// contact is the height of the centre at which the ball touches the lip [mm].
func (l *lip) contact() float64 {
	return math.Sqrt(max(0, l.radius*l.radius-l.half*l.half))
}

// release is the height over the outer edge from which on the ball is drawn in [mm]:
// R sin(-rho), or where it leaves the lip, past the land.
func (l *lip) release() float64 {
	return -min(l.contact(), l.radius*l.sinRho) - l.land
}

// work from lift hi down to lo [mJ], both within contact to release.
//
//	W = R [ (a R + 2 b R h) J2 - b R^2 J3 - (a h + b h^2) J1 ]
//	J(n) = cos^2 eta I(n) - sin eta cos eta C(n),  tan eta = kappa
//	I(n) = Int tan(phi + sigma) cos^n phi dphi,  sigma = rho + eta,  C(n) = Int cos^n phi dphi
//	     = -cos^n phi/n + sin sigma (cos sigma C(n-2) + sin sigma I(n-2))
//	I(0) = -ln cos(phi + sigma)
//	I(1) = -cos phi + sin sigma ln(sec(phi + sigma) + tan(phi + sigma))
//
// Over a land the force stays. From f/(1 - f kappa) = cos^2 eta tan(phi + sigma) - sin eta cos eta and
// tan(psi) cos(phi) = sin(phi) + sin(sigma)/cos(psi), psi = phi + sigma. Source: own.
func (l *lip) work(hi, lo float64) float64 {
	eta := math.Atan(l.lever)
	se, ce := math.Sincos(eta)
	sigma := math.Atan(l.mu) + eta
	sr, cr := math.Sincos(sigma)
	integral := func(z float64) float64 {
		phi := math.Asin(max(-1, min(1, z/l.radius)))
		sp, cp := math.Sincos(phi)
		spsi, cpsi := math.Sincos(phi + sigma)
		i0 := -math.Log(cpsi)
		i1 := -cp + sr*math.Log((1+spsi)/cpsi)
		i2 := -cp*cp/2 + sr*(cr*phi+sr*i0)
		i3 := -cp*cp*cp/3 + sr*(cr*sp+sr*i1)
		j1 := ce*ce*i1 - se*ce*sp
		j2 := ce*ce*i2 - se*ce*(phi+sp*cp)/2
		j3 := ce*ce*i3 - se*ce*(sp-sp*sp*sp/3)
		r, h := l.radius, l.half
		return r * ((l.a*r+2*l.b*r*h)*j2 - l.b*r*r*j3 - (l.a*h+l.b*h*h)*j1)
	}
	zh, zl := l.height(hi), l.height(lo)
	w := integral(zh) - integral(zl)
	if l.land > 0 {
		w += l.force(l.zero) * ((hi - l.zero - zh) - (lo - l.zero - zl))
	}
	return w
}

// most is the largest force near a lift, its summit or close to it: by parabolas through
// three lifts a way apart, and again through three nearer ones.
func (l *lip) most(lift, way float64) float64 {
	f := l.force(lift)
	for range 2 {
		before, after := l.force(lift+way), l.force(lift-way)
		if d := before + after - 2*f; d < 0 && way > 0 {
			to := lift + max(-1, min(1, 0.5*(after-before)/d))*way
			if v := l.force(to); v > f {
				lift, f = to, v
			}
		}
		way /= 4
	}
	return f
}

// peak between two lifts: the force rises to one summit and falls.
func (l *lip) peak(hi, lo float64) (f, lift float64) {
	lift = summit(l.force, lo, hi)
	f = l.force(lift)
	for _, end := range [2]float64{hi, lo} {
		if v := l.force(end); v > f {
			f, lift = v, end
		}
	}
	return f, lift
}

// summit finds the place of the largest value of a function with one summit
// between lo and hi, by golden section.
func summit(f func(float64) float64, lo, hi float64) float64 {
	const golden = 0.6180339887498949
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fa, fb := f(a), f(b)
	for range 60 {
		if fa > fb {
			hi, b, fb = b, a, fa
			a = hi - golden*(hi-lo)
			fa = f(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + golden*(hi-lo)
			fb = f(b)
		}
	}
	return (lo + hi) / 2
}

// ballProfile: the entry cone as far as it is touched, then the lip, its land and its
// far edge.
func (j *joint) ballProfile(p *profile, s *shared, r *state, w, small float64) {
	a := min(small, 2*r.load/w)
	p.lip = lip{radius: j.ballR, half: j.ballR - w, a: a, b: (a*w - r.load) / (w * w), mu: s.mu, sinRho: s.sinRho, lever: j.lever,
		zero: j.seated - (j.stroke - j.engage), land: j.land}
	l := &p.lip
	contact := l.contact()
	hi := contact
	_, r.jam = flank(s.mu, contact/l.half, l.lever)
	r.factor = 0
	if t := j.tanA; j.alpha > 0 && hi > j.ballR*j.sinA {
		// The cone is touched first: w = R/cos ac - h - z tan ac.
		hand := j.ballR * j.sinA
		over := j.ballR*math.Sqrt(1+t*t) - l.half
		open := over - hand*t
		from := over / t
		f := open * (l.a - l.b*open) * s.lead
		p.add(ramp(l.zero+from, l.zero+hand, l.a*t*s.lead, f))
		r.factor, r.jam = s.lead, s.jam
		hi = hand
	}
	end := l.zero + l.release()
	if l.land > 0 {
		end = l.zero
	}
	if p.drift = j.drift; p.drift > 0 {
		// The largest force counts longer: the summit of the nominal joint stands for that of
		// the drawn one.
		summit := min(l.zero+hi, max(end, j.summit))
		p.add(piece{Hi: l.zero + hi, Lo: summit, lip: true})
		p.top, hi = max(0, p.n-1), summit-l.zero
		p.most = l.most(summit, min(j.wayUp, l.zero+contact-summit)/2)
	}
	p.add(piece{Hi: l.zero + hi, Lo: end, lip: true})
	if l.land > 0 {
		p.add(piece{Hi: l.zero, Lo: l.zero - l.land, F0: l.force(l.zero)})
		p.add(piece{Hi: l.zero - l.land, Lo: l.zero + l.release(), lip: true})
	}
}

// lipRange is where the ball stands on its lip, whether or not the seat lies in
// between: lifts from the first contact, or the end of the cone, to the release.
func (j *joint) lipRange(l *lip) (hi, lo float64) {
	hi = l.contact()
	if j.alpha > 0 {
		hi = min(hi, j.ballR*j.sinA)
	}
	return l.zero + hi, l.zero + l.release()
}
