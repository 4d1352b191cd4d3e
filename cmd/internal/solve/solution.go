package solve

import (
	"ramnest/cmd/internal/job"
	"ramnest/export/quote"
	"ramnest/fixture"
	"ramnest/fixture/envelope"
	"ramnest/fixture/pose"
	"ramnest/force"
	"ramnest/force/calibrate"
	"ramnest/force/method"
	"ramnest/force/unit"
	"ramnest/force/warning"
)

// A Solution is everything that was computed of a job.
type Solution struct {
	Job         *job.File
	Fingerprint string // of the job and its parts: five letters and digits
	Steps       []Step

	// Of the tooling; empty if no method was found for a step.
	Tooling   *fixture.Tooling
	Material  force.Material // that it is printed in
	Rounds    int            // how often it was designed until method and tooling agreed
	Quote     *quote.Offer   // what it costs to print; nil: not priced
	Unpriced  string         // why it is not priced: the card has no rates for it
	Payback   *quote.Payback // against assembly by hand; nil: not known
	NoPayback string         // why that is not known

	Defaults []Default // every figure that was taken because the file does not state it
}

// A Step is a press step with its results.
type Step struct {
	job.Step
	Assembly                     force.Assembly
	LowerMaterial, UpperMaterial force.Material
	LowerEnvelope, UpperEnvelope *envelope.Envelope
	Result                       force.Result
	Demand                       method.Demand // with the sizes of the tooling, if there is one
	Decision                     method.Decision
	Cycle                        Cycle
	Remarks                      []warning.Warning // on the parts
	Contact                      *pose.Contact     // how the parts stand to each other; nil: an open mesh hides it

	trials []trial // single changes, once they were asked for

	// Seated says how a seated pair is accepted, once there is tooling.
	Seated fixture.Seated

	// Changes are the figures of the file that the shop's calibration replaced.
	Changes []calibrate.Change

	// Seats compare the dead stop of the tooling with the latches as the shop prints
	// them: for those that the calibration knows, once there is tooling.
	Seats []calibrate.Seat
}

// A Default is a figure that the file does not state.
type Default struct {
	About string // the section of the file that would state it
	Text  unit.Text
}

// Engraved is what is engraved on the tooling: job, revision and fingerprint, as on
// the work instruction.
func (s *Solution) Engraved() string { return s.Job.Mark() + " " + s.Fingerprint }

// Tooled says whether there is tooling.
func (s *Solution) Tooled() bool { return s.Tooling != nil }

// Chosen is the assessment of the chosen method; of the method "none" if there is
// none.
func (s *Step) Chosen() method.Assessment {
	for _, a := range s.Decision.Options {
		if a.Method == s.Decision.Chosen {
			return a
		}
	}
	return method.Assessment{Method: method.None, Verdict: method.Fail}
}

// NestOf gives the nest that a step uses. It must be called on a Solution with
// tooling only.
func (s *Solution) NestOf(step int) fixture.Nest { return s.Tooling.Nests[s.Tooling.Anvils[step].Nest] }
