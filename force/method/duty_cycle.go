package method

import "math"

// DutyCycle is the share of the time in which force is given [1]: actions an hour
// times seconds each over 3600, not capped: above 1 there is no time to do it.
func DutyCycle(perHour, seconds float64) float64 { return perHour * seconds / 3600 }

// AcceptableEffort gives the maximum acceptable effort as a share of strength [1].
//
//	MAE = 1 - (DC - 1/28800)^0.24
//
// duty: duty cycle DC [1], 1/28800 (one second in eight hours) to 1 included; below
// that MAE is 1 by construction, above 1 it is 0. Source: Potvin, Human Factors
// 54(2), 2012, 175-188 (equation memory; its use and an error of about 7 % of
// strength read in Sonne and Potvin 2015). It rates the mean of an effort against
// the worker's own strength and knows no posture. ok is false for negative or NaN.
func AcceptableEffort(duty float64) (share float64, ok bool) {
	const once = 1.0 / 28800
	switch {
	case !(duty >= 0):
		return 0, false
	case duty <= once:
		return 1, true
	case duty >= 1:
		return 0, true
	}
	return 1 - math.Pow(duty-once, 0.24), true
}

// HandActivity gives the hand activity level HAL [1] on a scale of 0 to 10.
//
//	HAL = 6.56 ln(DC) F^1.31 / (1 + 3.18 F^1.31)
//
// perSecond: exertions a second F [1/s], above 0. dutyPct: duty cycle in percent,
// above 0, at most 100. Source: Radwin et al. 2015, taken up by the ACGIH hand
// activity limit 2018 (memory). ok is false out of range.
func HandActivity(perSecond, dutyPct float64) (hal float64, ok bool) {
	if !(perSecond > 0) || perSecond > 1e3 || !(dutyPct > 0) || dutyPct > 100 {
		return 0, false
	}
	f := math.Pow(perSecond, 1.31)
	return min(10, max(0, 6.56*math.Log(dutyPct)*f/(1+3.18*f))), true
}

// PeakForceLimits gives the normalised peak force [1, of 10] at a hand activity
// level: limit 5.6 - 0.56 HAL, action limit 3.6 - 0.56 HAL, none below 0. hal: 0 to
// 10. Source: ACGIH hand activity limit 2018 (memory). ok is false out of range.
func PeakForceLimits(hal float64) (limit, action float64, ok bool) {
	if !(hal >= 0) || hal > 10 {
		return 0, 0, false
	}
	return max(0, 5.6-0.56*hal), max(0, 3.6-0.56*hal), true
}
