package method

import "math"

// NormalQuantile gives the z of the standard normal distribution below which the
// share p lies. p: above 0, below 1. Source: definition, by the inverse error
// function of the standard library. ok is false out of range.
func NormalQuantile(p float64) (z float64, ok bool) {
	if !(p > 0 && p < 1) {
		return 0, false
	}
	z = -math.Sqrt2 * math.Erfcinv(2*p)
	return z, !math.IsInf(z, 0)
}

// StrengthPercentile gives the force [N] a share p of a population does not reach,
// from mean and spread of the logarithm of its strength.
//
//	F = exp(mean + z_p sd)
//
// meanLn, sdLn: mean and standard deviation of ln F, F in N; sdLn 0 or more. p: above
// 0, below 1. Source: EN 1005-3:2002, Annex A.3.3 and A.4 (read in an identical
// adoption). ok is false out of range.
func StrengthPercentile(meanLn, sdLn, p float64) (f float64, ok bool) {
	z, ok := NormalQuantile(p)
	if !ok || !(sdLn >= 0) {
		return 0, false
	}
	f = math.Exp(meanLn + z*sdLn)
	return f, !math.IsInf(f, 0) && !math.IsNaN(f)
}

// LogMoments turns mean [N] and coefficient of variation [1] of a strength into mean
// and standard deviation of its logarithm.
//
//	sd^2 = ln(1 + cv^2);  mean = ln(mean_N) - sd^2/2
//
// mean: above 0. cv: 0 or more. Source: log-normal distribution, definition. ok is
// false out of range.
func LogMoments(mean, cv float64) (meanLn, sdLn float64, ok bool) {
	if !(mean > 0 && mean <= maxForce) || !(cv >= 0 && cv <= 10) {
		return 0, 0, false
	}
	v := math.Log(1 + cv*cv)
	return math.Log(mean) - v/2, math.Sqrt(v), true
}
