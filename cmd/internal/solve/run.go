package solve

import (
	"context"
	"fmt"
	"sync"

	"ramnest/cmd/internal/job"
	"ramnest/fixture"
	"ramnest/fixture/envelope"
	"ramnest/fixture/envelope/meshfile"
	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/method"
)

// Means are what Run works with beside the job.
type Means struct {
	Context context.Context                              // stops the work; nil: nothing does
	Open    envelope.Opener                              // opens the mesh files that the job names
	Design  func(fixture.Order) (fixture.Tooling, error) // nil: [fixture.Design]
	Limits  meshfile.Limits                              // of the mesh files
	Stage   func(name string) (done func())              // called as each stage begins; nil: nobody listens
}

// orDefault fills in what is left out.
func (m Means) orDefault() Means {
	if m.Context == nil {
		m.Context = context.Background()
	}
	if m.Design == nil {
		m.Design = func(o fixture.Order) (fixture.Tooling, error) { return fixture.DesignContext(m.Context, o) }
	}
	if m.Stage == nil {
		m.Stage = func(string) func() { return func() {} }
	}
	return m
}

// mostRounds is how often tooling is designed until method and tooling agree.
const mostRounds = 3

// Run works a valid job out. What is wrong with the job is a *Refused.
func Run(j *job.File, m Means) (*Solution, error) {
	m = m.orDefault()
	s := &Solution{Job: j}
	var err error
	if s.Steps, err = ready(j); err != nil {
		return nil, err
	}
	done := m.Stage("reading the parts")
	err = readParts(s.Steps, m)
	done()
	if err != nil {
		return nil, err
	}
	if s.Fingerprint, err = fingerprint(s); err != nil {
		return nil, err
	}
	done = m.Stage("computing the forces")
	err = s.forces(m.Context)
	done()
	if err != nil {
		return nil, err
	}
	oneSided(s.Steps)
	if err := s.agree(m); err != nil {
		return nil, err
	}
	if err := s.seats(); err != nil {
		return nil, err
	}
	s.listDefaults()
	if err := s.price(); err != nil {
		return nil, err
	}
	return s, nil
}

// Forces works out the forces of a valid job only. It reads no part.
func Forces(ctx context.Context, j *job.File) ([]Step, error) {
	steps, err := ready(j)
	if err != nil {
		return nil, err
	}
	s := &Solution{Job: j, Steps: steps}
	if err := s.forces(ctx); err != nil {
		return nil, err
	}
	return s.Steps, nil
}

// ready puts the steps of the job where their results will stand, as the shop prints
// them.
func ready(j *job.File) ([]Step, error) {
	var out []Step
	for _, s := range j.Steps() {
		out = append(out, Step{Step: s, Assembly: j.Assembly(s)})
	}
	if err := calibrated(j, out); err != nil {
		return nil, err
	}
	for i := range out {
		s := &out[i]
		s.LowerMaterial, _ = j.Materials.Resolve(s.Assembly.Lower)
		s.UpperMaterial, _ = j.Materials.Resolve(s.Assembly.Upper)
	}
	return out, nil
}

// forces analyses every step, side by side.
func (s *Solution) forces(ctx context.Context) error {
	errs := make([]error, len(s.Steps))
	var group sync.WaitGroup
	for i := range s.Steps {
		group.Go(func() { s.Steps[i].Result, errs[i] = force.AnalyseContext(ctx, s.Steps[i].Assembly) })
	}
	group.Wait()
	for i, err := range errs {
		if err != nil {
			return refusal(err, s.Steps[i].InFile)
		}
	}
	return nil
}

// agree chooses methods and designs tooling until the methods chosen with the sizes
// of the tooling are those it was designed for.
func (s *Solution) agree(m Means) error {
	for i := range s.Steps {
		s.Steps[i].Demand = s.demand(i)
	}
	if !s.choose() {
		return nil
	}
	s.Material, _ = s.Job.Materials.Resolve(s.Job.Fixture.Spec())
	var tried []string
	for s.Rounds < mostRounds {
		s.Rounds++
		before := s.picks()
		tried = append(tried, before)
		done := m.Stage("designing nest and anvil")
		tooling, err := m.Design(s.Order())
		done()
		if err != nil {
			return refusal(err, s.designField)
		}
		for i := range s.Steps {
			s.Steps[i].Demand = s.sized(i, tooling)
		}
		if !s.choose() {
			return nil
		}
		if s.picks() == before {
			s.Tooling = &tooling
			return s.accept()
		}
	}
	return &Refused{[]fault.Fault{{
		Field: "method", Problem: fmt.Sprintf("tooling and method do not come to agree: designed for %s, then it needs %s", tried[len(tried)-1],
			s.picks()),
		Want: "method.force set to one of them, or bench and fixture changed",
	}}}
}

// accept says of every step how a seated pair is accepted.
func (s *Solution) accept() error {
	order := s.Order()
	for i := range s.Steps {
		var err error
		if s.Steps[i].Seated, err = fixture.SeatedBy(order.Steps[i]); err != nil {
			return fmt.Errorf("acceptance of %q: %w", s.Steps[i].Name, err)
		}
	}
	return nil
}

// choose decides every step, and says whether each has a method.
func (s *Solution) choose() bool {
	all := true
	for i := range s.Steps {
		st := &s.Steps[i]
		st.Decision = method.Choose(st.Demand, s.Job.Bench, s.Job.Forced())
		if st.Chosen().Verdict != method.Pass {
			st.Decision = st.Decision.Advised(st.Demand, holds(st.Result), s.Job.Bench, alternatives(st))
		}
		all = all && st.Decision.Chosen != method.None
	}
	if all {
		all = s.shareBases()
	}
	return all
}

// order is what the tooling is to be made for.
func (s *Solution) Order() fixture.Order {
	o := fixture.Order{Mark: s.Engraved(), Wishes: s.Job.Fixture, Material: s.Material}
	for i := range s.Steps {
		st := &s.Steps[i]
		o.Steps = append(o.Steps, fixture.Step{
			Name:        st.Name,
			Lower:       fixture.Part{Name: st.Lower.Name, Envelope: st.LowerEnvelope, KeepOuts: st.Lower.KeepOuts, Material: st.LowerMaterial},
			Upper:       fixture.Part{Name: st.Upper.Name, Envelope: st.UpperEnvelope, KeepOuts: st.Upper.KeepOuts, Material: st.UpperMaterial},
			Before:      s.before(i),
			Latches:     st.Latches,
			Result:      st.Result,
			DesignForce: st.Result.Design,
			Method:      st.Chosen(),
		})
	}
	return o
}

// before are the upper parts that earlier steps pressed on the lower part of a step.
func (s *Solution) before(i int) []fixture.Part {
	var out []fixture.Part
	for k := range s.Steps[:i] {
		st := &s.Steps[k]
		if sameNest(st.LowerEnvelope, s.Steps[i].LowerEnvelope) && st.Upper != s.Steps[i].Upper {
			out = append(out, fixture.Part{Name: st.Upper.Name, Envelope: st.UpperEnvelope, KeepOuts: st.Upper.KeepOuts, Material: st.UpperMaterial})
		}
	}
	return out
}

// designField gives a field of a fault about the order its path in the file. The
// parts of a job in steps are not told apart there.
func (s *Solution) designField(field string) string {
	switch {
	case (field == "upper" || field == "lower") && len(s.Job.PressSteps) > 0:
		return "steps"
	}
	return field
}

// Pieces lists the bodies to print, nests first.
func (s *Solution) Pieces() []fixture.Piece {
	var out []fixture.Piece
	if !s.Tooled() {
		return nil
	}
	for _, n := range s.Tooling.Nests {
		out = append(out, n.Piece)
	}
	for _, a := range s.Tooling.Anvils {
		out = append(out, a.Piece)
	}
	return out
}
