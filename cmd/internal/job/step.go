package job

import (
	"fmt"

	"ramnest/force"
)

// A Step is a press step with its parts: those of a flat job, or of one entry of
// the list, with the job's lower part where it has none of its own.
type Step struct {
	Name         string
	Lower, Upper *Part
	Latches      []force.Latch

	// Paths in the file, for faults.
	LowerPath, UpperPath, LatchesPath string
}

// Steps gives the press steps in order. It must be called on a valid file only.
func (f *File) Steps() []Step {
	if len(f.PressSteps) == 0 {
		return []Step{{
			Name: "press on the " + f.Upper.Name, Lower: f.Lower, Upper: f.Upper, Latches: f.Latches,
			LowerPath: "lower", UpperPath: "upper", LatchesPath: "latches",
		}}
	}
	out := make([]Step, len(f.PressSteps))
	for i, s := range f.PressSteps {
		at := fmt.Sprintf("steps[%d]", i)
		out[i] = Step{
			Name: s.Name, Lower: s.Lower, Upper: s.Upper, Latches: s.Latches,
			LowerPath: at + ".lower", UpperPath: at + ".upper", LatchesPath: at + ".latches",
		}
		if s.Lower == nil {
			out[i].Lower, out[i].LowerPath = f.Lower, "lower"
		}
	}
	return out
}

// Assembly is what force computes of the step.
func (f *File) Assembly(s Step) force.Assembly {
	return force.Assembly{
		Lower: s.Lower.MaterialSpec, Upper: s.Upper.MaterialSpec, Latches: s.Latches,
		Shop: f.Materials, Seed: f.Seed, Draws: f.Draws, MostPlaces: f.MostPlaces, Service: f.Service,
	}
}
