package report

import (
	"ramnest/cmd/internal/job"
	"ramnest/force/unit"
)

// units shows figures in the job's own units.
type units struct{ unit.System }

func unitsOf(j *job.File) units { return units{j.Shown()} }

// say gives a value of a house unit with the unit that is shown.
func (u units) say(v float64, k unit.Kind) string { return k.Of(v).Text(u.System, nil) }

// bare gives it without the unit.
func (u units) bare(v float64, k unit.Kind) string { return k.Of(v).Number(u.System, nil) }

// coupon gives the size of a coupon, of which small steps count.
func (u units) coupon(v float64) string { return unit.Length.Of(v).To(unit.Grid).Number(u.System, nil) }

// size gives lengths, one by another, that the shop can measure, without their unit.
func (u units) size(box [3]float64) string {
	one := func(v float64) string { return unit.Length.Of(v).To(unit.Shop).Number(u.System, nil) }
	return one(box[0]) + " x " + one(box[1]) + " x " + one(box[2])
}

// number writes a figure with three digits, or whole from a hundred on.
func number(v float64) string { return unit.Short(v) }

// texts gives sentences of another package in the units of the job.
func (u units) texts(all []unit.Text) []string {
	out := make([]string, len(all))
	for i, s := range all {
		out[i] = s.In(u.System)
	}
	return out
}
