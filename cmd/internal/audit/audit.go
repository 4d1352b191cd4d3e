package audit

import (
	"context"
	"sync"

	"ramnest/cmd/internal/solve"
	"ramnest/force"
)

// Forces doubts the forces of press steps. What it finds is a [Fault]; it gives the
// error of the context if that ends first.
func Forces(ctx context.Context, steps []solve.Step) error {
	found := make([][]Contradiction, len(steps))
	errs := make([]error, len(steps))
	var group sync.WaitGroup
	for i := range steps {
		group.Go(func() { found[i], errs[i] = Force(ctx, steps[i].Name, steps[i].Assembly, steps[i].Result) })
	}
	group.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return fault(found...)
}

// Force doubts the result of one assembly, by all laws about forces. The error is that
// of the context, or says that the assembly cannot be put together again.
func Force(ctx context.Context, name string, a force.Assembly, r force.Result) ([]Contradiction, error) {
	f := &finding{about: name}
	f.finite(r)
	if len(f.all) > 0 {
		return f.all, nil // no use in holding what is no number against anything
	}
	f.order(a, r)
	f.nominal(a, r)
	f.curve(r)
	err := f.band(ctx, a, r)
	return f.all, err
}

// Choices doubts forces and methods of a solution without tooling.
func Choices(ctx context.Context, s *solve.Solution) error {
	if err := Forces(ctx, s.Steps); err != nil {
		return err
	}
	var found [][]Contradiction
	for i := range s.Steps {
		st := &s.Steps[i]
		f := &finding{about: st.Name}
		f.demand(s, st)
		f.verdicts(st)
		f.choice(s, st)
		found = append(found, f.all)
	}
	return fault(found...)
}

// Solution doubts all of a solution.
func Solution(ctx context.Context, s *solve.Solution) error {
	if err := Choices(ctx, s); err != nil {
		return err
	}
	found := [][]Contradiction{tooling(s)}
	for i := range s.Steps {
		if s.Tooled() {
			f := &finding{about: s.Steps[i].Name}
			f.acceptance(&s.Steps[i])
			found = append(found, f.all)
		}
	}
	return fault(found...)
}
