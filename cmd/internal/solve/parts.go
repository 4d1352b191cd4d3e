package solve

import (
	"errors"
	"sync"

	"ramnest/cmd/internal/job"
	"ramnest/fixture/envelope"
	"ramnest/force"
)

// readParts builds the envelope of every part, each once, side by side, and says
// what is wrong with them or with where things stand on them.
func readParts(steps []Step, open envelope.Opener) error {
	type source struct {
		part *job.Part
		path string
	}
	var sources []source
	number := map[*job.Part]int{}
	for _, s := range steps {
		for _, p := range []source{{s.Lower, s.LowerPath}, {s.Upper, s.UpperPath}} {
			if _, known := number[p.part]; !known {
				number[p.part] = len(sources)
				sources = append(sources, p)
			}
		}
	}
	built := make([]*envelope.Envelope, len(sources))
	errs := make([]error, len(sources))
	var group sync.WaitGroup
	for i, p := range sources {
		group.Go(func() { built[i], errs[i] = envelope.Build(p.part.Envelope, open) })
	}
	group.Wait()
	var refused Refused
	for i, err := range errs {
		if err == nil {
			continue
		}
		err = refusal(err, func(field string) string {
			return force.Under(sources[i].path+".envelope", []force.Fault{{Field: field}})[0].Field
		})
		r, ok := errors.AsType[*Refused](err)
		if !ok {
			return err
		}
		refused.Faults = append(refused.Faults, r.Faults...)
	}
	if len(refused.Faults) > 0 {
		return &refused
	}
	for i := range steps {
		s := &steps[i]
		s.LowerEnvelope, s.UpperEnvelope = built[number[s.Lower]], built[number[s.Upper]]
		refused.Faults = append(refused.Faults, s.Placed(s.LowerEnvelope, s.UpperEnvelope)...)
	}
	if len(refused.Faults) > 0 {
		return &refused
	}
	return nil
}
