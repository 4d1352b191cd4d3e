package solve

import (
	"ramnest/export/quote"
	"ramnest/force/method"
)

// A Cycle is the bare time of one assembly.
type Cycle struct {
	Seconds float64 // 0: not known
	Source  string
}

// cycleOf gives the standard time of a step by its method.
func cycleOf(a method.Assessment) Cycle {
	switch a.Method {
	case method.ByHand:
		return Cycle{quote.HandSnap, "handling table (read) and insertion, the long end of a range (memory)"}
	case method.ByMallet:
		if t, err := quote.MalletCycle(max(1, a.Blows)); err == nil {
			return Cycle{t, "handling table (read), placing the head and blows (common practice)"}
		}
	case method.ByPress:
		return Cycle{quote.PressCycle(), "MTM-1 elements (memory), sequence own; without looking over and allowance"}
	}
	return Cycle{}
}
