package solve

import "ramnest/cmd/internal/job"

// Choices works out forces and methods of a valid job, without the sizes of tooling.
func Choices(j *job.File, m Means) (*Solution, error) {
	m = m.orDefault()
	steps, err := ready(j)
	if err != nil {
		return nil, err
	}
	s := &Solution{Job: j, Steps: steps}
	if err := readParts(s.Steps, m); err != nil {
		return nil, err
	}
	if err := s.forces(m.Context); err != nil {
		return nil, err
	}
	for i := range s.Steps {
		s.Steps[i].Demand = s.demand(i)
	}
	s.choose()
	return s, nil
}

// CycleOf gives the bare time of one assembly by a method of a step [s]; 0: not known.
func CycleOf(st *Step, k int) Cycle { return cycleOf(st.Decision.Options[k]) }
