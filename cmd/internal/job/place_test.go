package job_test

import (
	"slices"
	"strings"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/fixture/envelope"
	"ramnest/force"
)

// room is an envelope known by its box alone.
func room(x0, y0, z0, x1, y1, z1 float64) *envelope.Envelope {
	return &envelope.Envelope{Min: [3]float64{x0, y0, z0}, Max: [3]float64{x1, y1, z1}}
}

func TestWhatStandsBesideItsParts(t *testing.T) {
	t.Parallel()
	lower := room(-20, -20, 0, 20, 20, 30)
	upper := room(-15, -15, 25, 15, 15, 40)
	ring := func(d float64) force.Latch {
		return force.Latch{Annular: &force.Annular{JointDiameter: d, Undercut: 0.5}}
	}
	arm := force.Latch{Cantilever: &force.Cantilever{Undercut: 0.8, Thickness: 1.5}}
	pin := force.Latch{PressFit: &force.PressFit{Fit: "6 H7/s6"}}
	ball := force.Latch{Ball: &force.Ball{MouthDiameter: 5}}
	rib := force.Latch{CrushRib: &force.CrushRib{JointDiameter: 4}}
	at := func(l force.Latch, z float64, places ...force.Point) force.Latch {
		l.Z, l.At = z, places
		return l
	}
	keep := func(x, y float64) []envelope.KeepOut {
		return []envelope.KeepOut{{Reason: "fragile", Outline: envelope.Outline{Rectangle: &envelope.Rectangle{At: force.Point{X: x, Y: y}, Size: force.Point{X: 4, Y: 4}}}}}
	}
	for _, c := range []struct {
		name         string
		lower, upper *envelope.Envelope
		latch        force.Latch
		keep         []envelope.KeepOut
		want         []string
	}{
		{"all in its place", lower, upper, at(ring(28), 28, force.Point{}), keep(0, 0), nil},
		{"a ring as large as the part", lower, upper, at(ring(30.5), 28, force.Point{}), nil, nil},
		{"a ring that is too large", lower, upper, at(ring(34), 28, force.Point{}), nil,
			[]string{"latches[0].at[0]: 0, 0 mm; a joint of 34 mm diameter there lies outside the upper part, cap (within x -15 to 15 mm, y -15 to 15 mm)"}},
		{"an arm at the edge", lower, upper, at(arm, 28, force.Point{X: 17}), nil, nil},
		{"an arm beside the part", lower, upper, at(arm, 28, force.Point{X: 18.5}), nil,
			[]string{"latches[0].at[0]: 18.5, 0 mm; the latch lies outside the upper part"}},
		{"outside both, told once", lower, upper, at(pin, 28, force.Point{}, force.Point{X: 40}), nil,
			[]string{"latches[0].at[1]: 40, 0 mm; a joint of 6 mm diameter there lies outside the lower part"}},
		{"a ball half outside", lower, upper, at(ball, 28, force.Point{Y: 14}), nil,
			[]string{"latches[0].at[0]: 0, 14 mm; a joint of 5 mm"}},
		{"a rib inside", lower, upper, at(rib, 28, force.Point{Y: -13}), nil, nil},
		{"too high", lower, upper, at(rib, 41, force.Point{}), nil, []string{"latches[0].z: 41 mm; the latch lies outside the parts, above or below both (0 to 40 mm)"}},
		{"too low", lower, upper, at(rib, -1, force.Point{}), nil, []string{"latches[0].z: -1 mm; the latch lies"}},
		{"a keep-out beside the part", lower, upper, at(rib, 28, force.Point{}), keep(30, 0),
			[]string{"upper.keep_outs[0]: x 28 to 32, y -2 to 2 mm; lies beside the part (within x -15 to 15 mm, y -15 to 15 mm)"}},
		{"parts side by side", lower, room(30, -15, 25, 60, 15, 40), at(rib, 28, force.Point{}), nil,
			[]string{"upper.envelope: x 30 to 60 mm; the seated upper part lies beside the lower one"}},
		{"floating", lower, room(-15, -15, 32, 15, 15, 40), at(rib, 28, force.Point{}), nil,
			[]string{"upper.envelope: z 32 to 40 mm; the upper part floats above the lower one, which ends at 30 mm"}},
		{"upside down", lower, room(-15, -15, -10, 15, 15, 0), at(rib, 28, force.Point{}), nil,
			[]string{"upper.envelope: z -10 to 0 mm; the upper part lies below the lower one, which begins at 0 mm"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			s := job.Step{
				Lower: &job.Part{Name: "base"}, Upper: &job.Part{Name: "cap", KeepOuts: c.keep}, Latches: []force.Latch{c.latch},
				LowerPath: "lower", UpperPath: "upper", LatchesPath: "latches",
			}
			var got []string
			for _, f := range s.Placed(c.lower, c.upper) {
				got = append(got, f.Error())
			}
			if !slices.EqualFunc(got, c.want, strings.HasPrefix) {
				t.Errorf("faults:\n got %q\nwant %q", got, c.want)
			}
		})
	}
}
