package solve

import (
	"errors"
	"slices"
	"sync"

	"ramnest/cmd/internal/job"
	"ramnest/fixture/envelope"
	"ramnest/fixture/pose"
	"ramnest/force/fault"
)

// readParts builds the envelope of every part, each once, side by side, and says
// what is wrong with them or with where things stand on them.
func readParts(steps []Step, m Means) error {
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
		group.Go(func() { built[i], errs[i] = envelope.BuildWithin(p.part.Envelope, m.Open, m.Limits) })
	}
	group.Wait()
	var refused Refused
	for i, err := range errs {
		if p := sources[i]; err == nil && p.part.Envelope.Mesh != nil && p.part.Envelope.Mesh.Drop == "yes" &&
			!slices.ContainsFunc(steps, func(s Step) bool { return s.Upper == p.part }) {
			refused.Faults = append(refused.Faults, fault.Fault{Field: p.path + ".envelope.mesh.drop", Given: "yes",
				Problem: "the lower part stands where it is put", Want: "drop at the upper part"})
		}
		if p := sources[i]; err == nil && p.part.Envelope.Mesh != nil && p.part.Envelope.Mesh.Seat == "find" &&
			!slices.ContainsFunc(steps, func(s Step) bool { return s.Upper == p.part }) {
			refused.Faults = append(refused.Faults, fault.Fault{Field: p.path + ".envelope.mesh.seat", Given: "find",
				Problem: "the lower part stands where it is put", Want: "seat at the upper part"})
		}
		if err == nil {
			continue
		}
		err = refusal(err, func(field string) string {
			return fault.Under(sources[i].path+".envelope", []fault.Fault{{Field: field}})[0].Field
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
	fallen := map[*job.Part]bool{}
	for i := range steps {
		s := &steps[i]
		s.LowerEnvelope, s.UpperEnvelope = built[number[s.Lower]], built[number[s.Upper]]
		if mesh := s.Upper.Envelope.Mesh; mesh != nil && mesh.Seat == "find" && !fallen[s.Upper] {
			fallen[s.Upper] = true
			said, err := s.seat(m, steps[:i])
			if r, ok := errors.AsType[*Refused](err); ok {
				refused.Faults = append(refused.Faults, r.Faults...)
				continue
			} else if err != nil {
				return err
			}
			built[number[s.Upper]] = s.UpperEnvelope
			s.Remarks = append(s.Remarks, said)
		}
		pair := s.Pair()
		pair.Earlier = pressedOn(steps[:i], s.LowerEnvelope)
		if m := s.Upper.Envelope.Mesh; m != nil && m.Drop == "yes" && !fallen[s.Upper] {
			fallen[s.Upper] = true
			said, fault := pair.Drop()
			if fault != nil {
				refused.Faults = append(refused.Faults, *fault)
				continue
			}
			s.Remarks = append(s.Remarks, said)
		}
		faults, said, contact, err := pair.Judge()
		if err != nil {
			return err
		}
		s.Contact = contact
		refused.Faults, s.Remarks = append(refused.Faults, faults...), append(s.Remarks, said...)
		if len(faults) == 0 {
			faults, said := s.held(pair.Earlier)
			refused.Faults, s.Remarks = append(refused.Faults, faults...), append(s.Remarks, said...)
		}
	}
	if len(refused.Faults) > 0 {
		return &refused
	}
	return nil
}

// Pair is the step as far as the pose of its parts goes.
func (s *Step) Pair() pose.Pair {
	return pose.Pair{
		Lower:   placed(s.Lower, s.LowerPath, s.LowerEnvelope),
		Upper:   placed(s.Upper, s.UpperPath, s.UpperEnvelope),
		Latches: s.Latches, LatchesPath: s.LatchesPath,
	}
}

func placed(p *job.Part, path string, e *envelope.Envelope) pose.Part {
	out := pose.Part{Name: p.Name, Path: path, Envelope: e, KeepOuts: p.KeepOuts}
	if m := p.Envelope.Mesh; m != nil {
		move := m.Move
		out.Move = &move
	}
	return out
}

// oneSided warns of seats that lie on one side of the thrust line.
func oneSided(steps []Step) {
	for i := range steps {
		s := &steps[i]
		if w, ok := s.Pair().OneSided(s.Contact, s.Result.Thrust.X, s.Result.Thrust.Y); ok {
			s.Remarks = append(s.Remarks, w)
		}
	}
}

// pressedOn are the upper parts that earlier steps pressed on a lower part.
func pressedOn(earlier []Step, lower *envelope.Envelope) []*envelope.Envelope {
	var out []*envelope.Envelope
	for _, s := range earlier {
		if s.LowerEnvelope == lower {
			out = append(out, s.UpperEnvelope)
		}
	}
	return out
}
