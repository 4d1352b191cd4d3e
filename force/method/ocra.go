package method

// Ocra holds the multipliers of the OCRA index, each above 0, at most 2 (tM reaches 2 in short shifts).
type Ocra struct {
	Force, Posture, Repetitiveness, Additional, Recovery, Duration float64 // FM, PM, ReM, AM, RcM, tM [1]
}

// Index gives technical actions, reference actions and their quotient, the OCRA index.
//
//	ATA = actions * minutes;  RTA = 30 FM PM ReM AM RcM tM * minutes;  index = ATA/RTA
//
// perMinute: technical actions a minute, 0 or more. minutes: of repetitive work in the
// shift, above 0. Source: ISO 11228-3:2007, Table 2 (constant 30 read, multipliers
// memory); up to 2.2 acceptable, above 3.5 risk (memory). It needs the whole job, so
// [Choose] does not use it; it is here for the ergonomist. ok is false out of range.
func (o Ocra) Index(perMinute, minutes float64) (ata, rta, index float64, ok bool) {
	if !(perMinute >= 0 && perMinute <= 1e4) || !(minutes > 0 && minutes <= 1440) {
		return 0, 0, 0, false
	}
	rta = 30 * minutes
	for _, m := range []float64{o.Force, o.Posture, o.Repetitiveness, o.Additional, o.Recovery, o.Duration} {
		if !(m > 1e-6 && m <= 2) {
			return 0, 0, 0, false
		}
		rta *= m
	}
	ata = perMinute * minutes
	return ata, rta, ata / rta, true
}
