package solve

import (
	"strings"

	"ramnest/force/fault"
)

// Refused says what is wrong with a job, in the paths of its file.
type Refused struct{ Faults []fault.Fault }

// Error gives the faults one a line.
func (r *Refused) Error() string {
	lines := make([]string, len(r.Faults))
	for i, f := range r.Faults {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// refusal turns an error of a package below into a *Refused if it is made of
// faults, each with its path moved by where. Any other error is given back: it is
// a mistake of the program, not of the job.
func refusal(err error, where func(field string) string) error {
	faults, ok := faultsIn(err)
	if !ok {
		return err
	}
	for i := range faults {
		faults[i].Field = where(faults[i].Field)
	}
	return &Refused{faults}
}

// faultsIn takes an error apart; ok is false if any of it is no fault.
func faultsIn(err error) (faults []fault.Fault, ok bool) {
	switch e := err.(type) {
	case fault.Fault:
		return []fault.Fault{e}, true
	case interface{ Unwrap() []error }:
		for _, one := range e.Unwrap() {
			f, ok := faultsIn(one)
			if !ok {
				return nil, false
			}
			faults = append(faults, f...)
		}
		return faults, len(faults) > 0
	case interface{ Unwrap() error }:
		return faultsIn(e.Unwrap())
	}
	return nil, false
}
