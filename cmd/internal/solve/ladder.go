package solve

import (
	"fmt"
	"slices"
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/export/quote"
	"ramnest/fixture/coupon"
	"ramnest/force"
	"ramnest/force/fault"
)

// A Rung says which ladder of coupons is wanted.
type Rung struct {
	Latch string
	Steps int            // 0: the usual number
	Step  float64        // [mm]; 0: from the tolerances
	Card  quote.RateCard // its machines give the room of a build; one without processes: the usual room
}

// LatchIDs lists the latches of a valid job.
func LatchIDs(j *job.File) []string {
	var out []string
	for _, s := range j.Steps() {
		for _, l := range s.Latches {
			out = append(out, l.ID)
		}
	}
	return out
}

// StepOfLatch gives the press step of a latch, and its number in it.
func StepOfLatch(j *job.File, id string) (s job.Step, k int, ok bool) {
	for _, s := range j.Steps() {
		if k := slices.IndexFunc(s.Latches, func(l force.Latch) bool { return l.ID == id }); k >= 0 {
			return s, k, true
		}
	}
	return job.Step{}, 0, false
}

// Ladder makes the coupons of a latch of a valid job. What is wrong is a *Refused.
func Ladder(j *job.File, r Rung) (coupon.Set, error) {
	s, k, ok := StepOfLatch(j, r.Latch)
	if !ok {
		return coupon.Set{}, &Refused{[]fault.Fault{{Field: "latch", Given: r.Latch, Problem: "is no latch of the job",
			Want: strings.Join(LatchIDs(j), ", ")}}}
	}
	l := coupon.Ladder{Latch: s.Latches[k], Lower: s.Lower.MaterialSpec, Upper: s.Upper.MaterialSpec, Shop: j.Materials, Steps: r.Steps,
		Step: r.Step, Seed: j.Seed, Draws: j.Draws}
	lower, _ := j.Materials.Resolve(l.Lower)
	upper, _ := j.Materials.Resolve(l.Upper)
	l.Build, l.Spacing = room(r.Card, lower.Process, upper.Process)
	set, err := coupon.Make(l)
	return set, refusal(err, func(field string) string {
		if rest, ok := strings.CutPrefix(field, "latch"); ok {
			return fmt.Sprintf("%s[%d]%s", s.LatchesPath, k, rest)
		}
		return s.InFile(field)
	})
}

// room is what the machines of a card for these processes all have, in mm; zeros:
// the usual room.
func room(c quote.RateCard, processes ...string) (build [3]float64, spacing float64) {
	for _, process := range processes {
		var m quote.Machine
		switch {
		case process == "PBF" && c.PBF != nil:
			m = c.PBF.Machine
		case process == "MEX" && c.MEX != nil:
			m = c.MEX.Machine
		case process == "VPP" && c.VPP != nil:
			m = c.VPP.Machine
		default:
			continue
		}
		for k := range 3 {
			if build[k] == 0 || m.Build[k] < build[k] {
				build[k] = m.Build[k]
			}
		}
		spacing = max(spacing, m.Spacing)
	}
	return build, spacing
}

// CouponItems gives the bodies of a ladder as items to be quoted, pair by pair, and
// the index of the nominal pair.
func CouponItems(set coupon.Set) (pairs [][]quote.Item, nominal int) {
	for i, s := range set.Steps {
		var pair []quote.Item
		for _, b := range set.Bodies {
			if b.Number != s.Number {
				continue
			}
			way := "press axis upright"
			if b.BuildDirection == "across" {
				way = "press axis lying"
			}
			pair = append(pair, quote.Item{Name: b.Name, Process: b.Process, Material: b.Material, Volume: b.Volume, Box: b.Size, Orientation: way,
				Group: fmt.Sprintf("coupons of latch %s, %d pairs", set.Latch, len(set.Steps)), Count: 1})
		}
		pairs = append(pairs, pair)
		if s.Nominal {
			nominal = i
		}
	}
	return pairs, nominal
}
