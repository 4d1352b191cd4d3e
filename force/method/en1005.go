package method

// Basic forces F_B of EN 1005-3:2002+A1:2008, Table 1, professional use, 15th
// percentile of the adult working population of both sexes [N] (read in a page
// that reproduces the table).
const (
	ArmDownSeated = 75  // one arm, seated, downward
	BodyPush      = 200 // whole body, standing, push; the table's push is not a downward push
	BodyPull      = 145 // whole body, standing, pull
)

// Zones of EN 1005-3 step C as shares of F_Br (read).
const (
	RecommendedShare = 0.5
	AvoidShare       = 0.7
)

// SpeedEvident is m_v of EN 1005-3 for evident movement (memory). Every joining
// push moves, so the 1.0 for standing still is not offered.
const SpeedEvident = 0.8

// FrequencyMultiplier gives m_f of EN 1005-3 [1].
//
//	actions a minute   <= 0.2   <= 2   <= 20   above
//	up to 0.05 min       1.0    0.8     0.5    0.3
//	longer               0.6    0.4     0.2    none
//
// perMinute: actions a minute, 0 or more. seconds: length of one action [s], 0 or
// more. Source: EN 1005-3:2002, 4.2.2 (memory; the 1.0 corner read). It is a
// stair, not a line: small changes of rate can step. ok is false where the table
// has no value, and for arguments out of range.
func FrequencyMultiplier(perMinute, seconds float64) (mf float64, ok bool) {
	if !(perMinute >= 0) || !(seconds >= 0) {
		return 0, false
	}
	long := seconds > 3
	pick := func(short, lengthy float64) (float64, bool) {
		if long {
			return lengthy, lengthy > 0
		}
		return short, true
	}
	switch {
	case perMinute <= 0.2+1e-12: // 12 an hour is 0.2 a minute but for rounding
		return pick(1, 0.6)
	case perMinute <= 2+1e-12:
		return pick(0.8, 0.4)
	case perMinute <= 20+1e-12:
		return pick(0.5, 0.2)
	}
	return pick(0.3, 0)
}

// DurationMultiplier gives m_d of EN 1005-3 [1]: 1.0 up to one hour of similar
// actions a day, 0.8 up to two, 0.5 up to eight. hours: above 0, at most 8 [h].
// Source: EN 1005-3:2002, 4.2.2 (memory). ok is false outside the table.
func DurationMultiplier(hours float64) (md float64, ok bool) {
	switch {
	case !(hours > 0) || hours > 8:
		return 0, false
	case hours <= 1:
		return 1, true
	case hours <= 2:
		return 0.8, true
	}
	return 0.5, true
}

// A Zone is what EN 1005-3 allows of a basic force at a rate.
type Zone struct {
	Speed, Frequency, Duration float64 // m_v, m_f, m_d [1]
	Reduced                    float64 // F_Br [N]
	Recommended                float64 // upper end of the recommended zone [N]
	Avoid                      float64 // above it: to be avoided [N]
}

// ZoneOf gives the zones for a basic force.
//
//	F_Br = F_B m_v m_f m_d;  recommended up to 0.5 F_Br;  avoid above 0.7 F_Br
//
// base: F_B [N], 0 or more. perHour: actions an hour. seconds: length of one [s].
// hours: of similar actions a day [h]. Source: EN 1005-3:2002+A1:2008, steps A to
// C (form and bounds read, multipliers memory). Left out: posture, vibration,
// force against the body's own recovery. ok is false outside the standard's tables.
func ZoneOf(base, perHour, seconds, hours float64) (z Zone, ok bool) {
	mf, okF := FrequencyMultiplier(perHour/60, seconds)
	md, okD := DurationMultiplier(hours)
	if !(base >= 0) || base > maxForce || !okF || !okD {
		return Zone{}, false
	}
	z = Zone{Speed: SpeedEvident, Frequency: mf, Duration: md}
	z.Reduced = base * z.Speed * mf * md
	z.Recommended, z.Avoid = RecommendedShare*z.Reduced, AvoidShare*z.Reduced
	return z, true
}
