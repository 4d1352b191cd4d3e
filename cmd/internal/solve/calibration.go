package solve

import (
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/force"
	"ramnest/force/calibrate"
	"ramnest/force/unit"
)

// calibrated puts what the shop measured into the steps, and keeps every change. A
// step of other materials stays as drawn and says so; that no step is of those
// materials is a fault.
func calibrated(j *job.File, steps []Step) error {
	sheet := j.Calibration
	if sheet == nil {
		return nil
	}
	var first error
	used := false
	for i := range steps {
		st := &steps[i]
		a, changes, err := sheet.Apply(st.Assembly)
		if err != nil {
			err = refusal(err, st.InFile)
			other := otherMaterials(j.Materials, st.Assembly, *sheet)
			if other == "" {
				return err
			}
			if first == nil {
				first = err
			}
			st.Changes = []calibrate.Change{{Field: "all of it", Was: unit.Say(other), Now: unit.Say("not measured: as drawn")}}
			continue
		}
		used = true
		st.Assembly, st.Latches, st.Changes = a, a.Latches, changes
	}
	if !used {
		return first
	}
	return nil
}

// otherMaterials names the materials of an assembly if they are not those of a sheet.
func otherMaterials(shop force.Shop, a force.Assembly, s calibrate.Sheet) string {
	lower, _ := shop.Resolve(a.Lower)
	upper, _ := shop.Resolve(a.Upper)
	same := func(m force.Material, p calibrate.Pairing) bool {
		return strings.EqualFold(m.Name, p.Material) && m.Process == p.Process
	}
	if same(lower, s.Lower) && same(upper, s.Upper) {
		return ""
	}
	return upper.Name + " " + upper.Process + " on " + lower.Name + " " + lower.Process
}

// seats compares the dead stop of the tooling with the latches as printed, where a
// calibration says how they are.
func (s *Solution) seats() error {
	sheet := s.Job.Calibration
	if sheet == nil || !s.Tooled() {
		return nil
	}
	for i, drawn := range s.Job.Steps() {
		st := &s.Steps[i]
		if otherMaterials(s.Job.Materials, st.Assembly, *sheet) != "" {
			continue
		}
		var err error
		if st.Seats, err = sheet.Seats(s.Job.Assembly(drawn), s.NestOf(i).Past); err != nil {
			return refusal(err, st.InFile)
		}
	}
	return nil
}
