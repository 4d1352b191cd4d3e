package force

import "math"

// lameRatio is (o^2 + i^2)/(o^2 - i^2) of a ring of diameters o above i [1].
func lameRatio(o, i float64) float64 { return (o*o + i*i) / (o*o - i*i) }

// A Fit is a cylinder pressed into a hub.
type Fit struct {
	Joint        float64 // joint diameter d [mm]
	HubOuter     float64 // outer diameter of the hub do [mm], above Joint
	ShaftBore    float64 // bore of the shaft di [mm], 0 if solid, below Joint
	HubModulus   float64 // [MPa]
	HubPoisson   float64 // [1]
	ShaftModulus float64 // [MPa]
	ShaftPoisson float64 // [1]
}

// Pressure gives the pressure in the joint, p [MPa].
//
//	p = delta / (d [ (Wh + nuh)/Eh + (Ws - nus)/Es ])
//	Wh = (do^2 + d^2)/(do^2 - d^2),  Ws = (d^2 + di^2)/(d^2 - di^2)
//
// delta: DIAMETRAL interference [mm], 0 or above. Source: Lame; Shigley,
// Mechanical Engineering Design, press and shrink fits (from memory). Elastic;
// leaves out creep, roughness and the ends of the hub.
func (f Fit) Pressure(delta float64) float64 {
	return delta / (f.Joint * (f.hubCompliance() + f.shaftCompliance()))
}

func (f Fit) hubCompliance() float64 {
	return (lameRatio(f.HubOuter, f.Joint) + f.HubPoisson) / f.HubModulus
}

func (f Fit) shaftCompliance() float64 {
	return (lameRatio(f.Joint, f.ShaftBore) - f.ShaftPoisson) / f.ShaftModulus
}

// HubHoop gives the hoop stress at the bore of the hub [MPa], p Wh, tension.
// Source as [Fit.Pressure].
func (f Fit) HubHoop(p float64) float64 { return p * lameRatio(f.HubOuter, f.Joint) }

// ShaftHoop gives the hoop stress at the surface of the shaft [MPa], -p Ws.
// Source as [Fit.Pressure].
func (f Fit) ShaftHoop(p float64) float64 { return -p * lameRatio(f.Joint, f.ShaftBore) }

// ShaftBoreHoop gives the hoop stress at the bore of the shaft [MPa],
// -2 p d^2/(d^2 - di^2), or -p in a solid shaft. Source as [Fit.Pressure].
func (f Fit) ShaftBoreHoop(p float64) float64 {
	if f.ShaftBore == 0 {
		return -p
	}
	d, di := f.Joint, f.ShaftBore
	return -2 * p * d * d / (d*d - di*di)
}

// BossEdge gives the length by which a boss that goes on beyond the pin's tip
// resists more than Lame's ring, whose ends are the pin's, e [mm].
//
//	e = min(x, 0.5 (d/2) tanh(1.4 sqrt(2 t/d))),  t = (do - d)/2
//
// do above d: outer and joint diameter [mm]; x: from the pin's tip to the end of
// the boss [mm]. The load of a rigid pin is that of a ring longer by e.
//
// Source: own, fitted to axisymmetric finite elements, t/d of 0.02 to 3.2: see the
// tests. Leaves out a floor close below the pin.
func BossEdge(do, d, x float64) float64 {
	return min(x, 0.5*d/2*math.Tanh(1.4*math.Sqrt((do-d)/d)))
}

// Swelling gives how far a pin thickens under the force along it while it is
// pressed in, per coefficient of friction, m/mu [1].
//
//	F = F0/(1 - m),  m = mu K L (d/4) (nus/(Es As) - nuh/(Eh Ah))
//
// F0: force without it; K: load per mm of engagement over radial movement
// [N/mm^2]; L: engaged length [mm]; As, Ah: sections of pin and boss [mm^2]. Half
// the force stands in each over the mean length; the boss, which stands on its
// foot, widens by it. Pulled out, the pin thins: F0/(1 + m). Below 0 the boss
// gives more than the pin.
//
// Source: own, by Poisson's ratio; compared with the differential equation along
// the joint in the tests. Leaves out buckling.
func (f Fit) Swelling(k, length float64) float64 {
	d, do, di := f.Joint, f.HubOuter, f.ShaftBore
	pin, boss := math.Pi/4*(d*d-di*di), math.Pi/4*(do*do-d*d)
	return k * length * d / 4 * (f.ShaftPoisson/(f.ShaftModulus*pin) - f.HubPoisson/(f.HubModulus*boss))
}

// HubHoopRigidShaft gives the hoop stress at the bore of a plastic hub on a
// rigid shaft [MPa].
//
//	sigma = delta W E / (d (W + nu)),  W = (1 + (d/do)^2)/(1 - (d/do)^2)
//
// delta: diametral interference [mm]. Source: Avient, Gravi-Tech design guide,
// 2020, interference-fit figures (read). Equal to [Fit.HubHoop] with the
// shaft's modulus without bound.
func HubHoopRigidShaft(d, do, e, nu, delta float64) float64 {
	w := lameRatio(do, d)
	return delta * w * e / (d * (w + nu))
}
