package force

import "math"

// GeometricFactorOuter gives the guide's factor for an elastic outer tube on a
// rigid shaft, joint near the end, X_N [1].
//
//	X_N = 0.62 sqrt((do/d - 1)/(do/d + 1)) / (((do/d)^2 + 1)/((do/d)^2 - 1) + nu)
//
// d: joint diameter, do: outer diameter [mm], do above d. nu: Poisson ratio [1].
// Source: Snap-Fit Joints for Plastics - A Design Guide, p. 21 (read).
func GeometricFactorOuter(d, do, nu float64) float64 {
	q := do / d
	return 0.62 * math.Sqrt((q-1)/(q+1)) / (lameRatio(do, d) + nu)
}

// GeometricFactorInner gives the guide's factor for an elastic hollow shaft in a
// rigid tube, joint near the end, X_W [1].
//
//	X_W = 0.62 sqrt((d/di - 1)/(d/di + 1)) / (((d/di)^2 + 1)/((d/di)^2 - 1) - nu)
//
// d: joint diameter, di: bore [mm], 0 (solid) to below d. Source: Snap-Fit
// Joints for Plastics - A Design Guide, p. 22 (read).
func GeometricFactorInner(d, di, nu float64) float64 {
	return 0.62 * math.Sqrt((d-di)/(d+di)) / (lameRatio(d, di) - nu)
}

// GuideTransverse gives the guide's transverse force, P [N].
//
//	P = y d Es X
//
// y: DIAMETRAL undercut [mm] (the only reading in which y/d is a hoop strain),
// d: joint diameter [mm], es: secant modulus [MPa], x: geometric factor [1].
// Source: Snap-Fit Joints for Plastics - A Design Guide, p. 21 (read).
// Lies 30 to 45 % below shell theory: a cross-check, never the governing force.
func GuideTransverse(y, d, es, x float64) float64 { return y * d * es * x }

// GuideRemoteDistance gives the distance from the free end beyond which the
// guide calls a joint remote [mm], 1.8 sqrt(d t). Source: Snap-Fit Joints for
// Plastics - A Design Guide, p. 22 (read).
func GuideRemoteDistance(d, t float64) float64 { return 1.8 * math.Sqrt(d*t) }

// GuideRemoteFactor is what the guide multiplies the near-end force by for a
// remote joint [1]; shell theory says 4. Source: Snap-Fit Joints for Plastics - A
// Design Guide, p. 22 (read).
const GuideRemoteFactor = 3.0

// GuideRatio gives the governing stiffness of a ring member over the guide's, r
// [1], at the two places for which the guide speaks and between them.
//
//	r0 = K(at the end)/(2 d E X),  r1 = K(remote)/(3 x 2 d E X)
//	r = r0^(1-u) r1^u,  u = distance from the end/(1.8 sqrt(d t)), up to 1
//
// t: the member; outer, bore: its diameters [mm]; isOuter as [RingStiffness]; x:
// geometric factor [1]; d: joint diameter [mm]. Source: own; the power between the
// two places is common practice.
func GuideRatio(t Tube, outer, bore float64, isOuter bool, d, x float64) (r, r0, r1, u float64) {
	near := 2 * GuideTransverse(1, d, t.Modulus, x)
	u = min(1, t.Mouth/GuideRemoteDistance(d, t.Wall))
	end, remote := t, t
	end.Mouth, end.Far = 0, Long
	remote.Mouth, remote.Far = maxLength, Long
	r0 = RingStiffness(end, outer, bore, isOuter) / near
	r1 = RingStiffness(remote, outer, bore, isOuter) / (GuideRemoteFactor * near)
	return math.Pow(r0, 1-u) * math.Pow(r1, u), r0, r1, u
}

// PermittedUndercut gives the diametral undercut that a strain allows [mm],
// y = eps d with one part rigid, twice that with equally flexible parts.
// Source: Snap-Fit Joints for Plastics - A Design Guide, p. 20 (read).
func PermittedUndercut(eps, d float64, equallyFlexible bool) float64 {
	if equallyFlexible {
		return 2 * eps * d
	}
	return eps * d
}
