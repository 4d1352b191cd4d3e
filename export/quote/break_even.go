package quote

import (
	"fmt"
	"math"

	"ramnest/force/fault"
)

// BreakEven gives the number of assemblies after which tooling has paid for itself.
//
//	N = cost / ((now - then) / 3600 * rate + scrap), rounded up
//
// cost: tooling and set-up, 0 or more. now, then: time of one assembly without and
// with it [s], 0 or more. rate: labour an hour, scrap: saved an assembly, 0 or more.
// Source: methods note, common practice. ok is false where it never pays.
func BreakEven(cost, now, then, rate, scrap float64) (n int, ok bool, err error) {
	for _, a := range []struct {
		field string
		x     float64
	}{{"cost", cost}, {"time_now", now}, {"time_then", then}, {"labour_rate", rate}, {"scrap_saved", scrap}} {
		if !(a.x >= 0 && a.x <= limit) {
			return 0, false, fault.Fault{Field: a.field, Given: fmt.Sprint(a.x), Problem: "is out of range", Want: "0 or more"}
		}
	}
	saved := (now-then)/3600*rate + scrap
	if saved <= 0 || cost/saved > 1e12 {
		return 0, false, nil
	}
	return int(math.Ceil(cost/saved - 1e-9)), true, nil
}
