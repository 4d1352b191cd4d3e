package solve

import (
	"errors"
	"fmt"
	"slices"
	"sync"

	"ramnest/cmd/internal/job"
	"ramnest/fixture/envelope"
	"ramnest/fixture/plan"
	"ramnest/force"
)

// The numbers of warnings about the parts, see package force.
const (
	warnOverlapUnknown = 41
	warnOverlap        = 42
	warnDropped        = 43
)

// overlap is what the seated parts both claim, but for the places of pins, ribs and
// balls, whose holes need not be drawn.
func overlap(s *Step) (both, smaller float64, ok bool, err error) {
	var holes []plan.Region
	for _, l := range s.Latches {
		d := 0.0
		switch {
		case l.PressFit != nil:
			d = l.PressFit.OuterDiameter
		case l.CrushRib != nil:
			d = l.CrushRib.JointDiameter + 2*l.CrushRib.Height
		case l.Ball != nil:
			d = l.Ball.OuterDiameter
		}
		for _, p := range l.At {
			if d > 0 {
				holes = append(holes, plan.Region{plan.Circle(p.X, p.Y, d/2+0.5, 0.05, plan.Outside)})
			}
		}
	}
	var outside plan.Region
	if len(holes) > 0 {
		if outside, err = plan.Union(holes...); err != nil {
			return 0, 0, false, err
		}
	}
	return envelope.Overlap(s.LowerEnvelope, s.UpperEnvelope, outside)
}

// How much of the smaller part may lie within the other, seated [1] (own): a press fit
// or a crushed rib takes little; more is worth a look, much more is a wrong pose.
const (
	someOverlap = 0.01
	mostOverlap = 0.05
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
		if p := sources[i]; err == nil && p.part.Envelope.Mesh != nil && p.part.Envelope.Mesh.Drop == "yes" && !slices.ContainsFunc(steps, func(s Step) bool { return s.Upper == p.part }) {
			refused.Faults = append(refused.Faults, force.Fault{Field: p.path + ".envelope.mesh.drop", Given: "yes", Problem: "the lower part stands where it is put", Want: "drop at the upper part"})
		}
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
	fallen := map[*job.Part]bool{}
	for i := range steps {
		s := &steps[i]
		s.LowerEnvelope, s.UpperEnvelope = built[number[s.Lower]], built[number[s.Upper]]
		if m := s.Upper.Envelope.Mesh; m != nil && m.Drop == "yes" && !fallen[s.Upper] {
			fallen[s.Upper] = true
			if f := drop(steps[:i+1]); f != nil {
				refused.Faults = append(refused.Faults, *f)
				continue
			}
		}
		refused.Faults = append(refused.Faults, s.Placed(s.LowerEnvelope, s.UpperEnvelope)...)
		both, smaller, ok, err := overlap(s)
		if err != nil {
			return err
		}
		switch share := both / max(smaller, 1); {
		case !ok:
			s.Remarks = append(s.Remarks, force.Warning{Number: warnOverlapUnknown, Text: "whether the seated parts run into each other could not be looked at: a mesh is open"})
		case share > mostOverlap:
			refused.Faults = append(refused.Faults, force.Fault{Field: s.UpperPath + ".envelope", Given: s.Upper.Name, Problem: fmt.Sprintf("seated, it runs into %s by %.0f cubic mm, %.0f %% of the smaller part", s.Lower.Name, both, 100*share), Want: "parts given in the seated pose, with no more overlap than a press fit"})
		case share > someOverlap:
			s.Remarks = append(s.Remarks, force.Warning{Number: warnOverlap, Text: fmt.Sprintf("seated, %s and %s overlap by %.0f cubic mm: check the pose", s.Lower.Name, s.Upper.Name, both)})
		}
	}
	if len(refused.Faults) > 0 {
		return &refused
	}
	return nil
}
