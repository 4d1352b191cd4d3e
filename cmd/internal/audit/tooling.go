package audit

import (
	"fmt"
	"math"
	"strings"

	"ramnest/cmd/internal/solve"
	"ramnest/fixture"
	"ramnest/force/method"
)

// tooling holds nest and anvil against the job that they carry the name of.
func tooling(s *solve.Solution) []Contradiction {
	f := &finding{about: "tooling"}
	none := false
	for i := range s.Steps {
		none = none || s.Steps[i].Decision.Chosen == method.None
	}
	if s.Tooled() == none {
		f.say("there is tooling where every step has a method", "tooling: %t, a step without a method: %t", s.Tooled(), none)
	}
	if !s.Tooled() {
		return f.all
	}
	if len(s.Tooling.Anvils) != len(s.Steps) {
		f.say("an anvil for each step", "%d anvils, %d steps", len(s.Tooling.Anvils), len(s.Steps))
		return f.all
	}
	job := strings.TrimSpace(s.Job.Number+" "+s.Job.Revision) + " " + s.Fingerprint
	engraved := func(p fixture.Piece, mark string) {
		if p.Mark != "" {
			equal(f, "job, revision and fingerprint are engraved", "the mark of the "+p.Name, p.Mark, mark)
		}
		f.body(p)
	}
	for _, n := range s.Tooling.Nests {
		engraved(n.Piece, job)
	}
	for i, a := range s.Tooling.Anvils {
		mark := job
		if len(s.Steps) > 1 {
			mark += fmt.Sprintf(" %d/%d", i+1, len(s.Steps))
		}
		engraved(a.Piece, mark)
		equal(f, "an anvil for each step", "the step of the "+a.Name, a.Step, i)
		if a.Nest < 0 || a.Nest >= len(s.Tooling.Nests) {
			f.say("an anvil for each step", "the %s goes with nest %d of %d", a.Name, a.Nest, len(s.Tooling.Nests))
		}
	}
	for _, m := range s.Tooling.Margins {
		if !(m.Load >= 0) || !(m.Capacity >= 0) || math.IsInf(m.Load, 0) || math.IsInf(m.Capacity, 0) {
			f.say("a margin is of numbers", "%s, %s: %g %s of %g", m.Piece, m.Name, m.Load, m.Unit, m.Capacity)
		}
	}
	return f.all
}

// body holds the sizes of a piece against its mesh.
func (f *finding) body(p fixture.Piece) {
	const law = "a piece is as large as its mesh"
	box := p.Mesh.Bounds()
	for k, axis := range "xyz" {
		f.same(law, fmt.Sprintf("%s along %c", p.Name, axis), p.Size[k], box.Max[k]-box.Min[k], 1e-6)
	}
	if !(p.Volume > 0 && p.Volume <= p.Size[0]*p.Size[1]*p.Size[2]*(1+rounding)) {
		f.say(law, "%s holds %.6g mm3 in a box of %.6g mm3", p.Name, p.Volume, p.Size[0]*p.Size[1]*p.Size[2])
	}
}
