package report

import (
	"fmt"
	"strings"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/solve"
	"ramnest/export/preview"
	"ramnest/fixture"
	"ramnest/force/method"
	"ramnest/force/unit"
)

// PreviewOf is the preview of a solution with tooling. tool names the program and its
// version.
func PreviewOf(s *solve.Solution, tool string) preview.Document {
	j, u := s.Job, unitsOf(s.Job)
	d := preview.Document{
		Job: j.Number, Title: j.Title, Revision: j.Revision, Fingerprint: s.Fingerprint, Tool: tool,
		Sheet: job.Stem(j.Number) + "-work-instruction.pdf", Units: j.Shown(),
	}
	fact := func(name, value string) { d.Facts = append(d.Facts, preview.Fact{Name: name, Value: value}) }
	fact("Job", j.Number)
	if j.Revision != "" {
		fact("Revision", j.Revision)
	}
	fact("Date", j.Date)
	if j.Author != "" {
		fact("Author", j.Author)
	}
	fact("Fingerprint", s.Fingerprint)
	for i := range s.Steps {
		st := &s.Steps[i]
		if st.Decision.Overridden {
			d.Override = j.Method.Override
		}
		name := "Method and design force"
		if len(s.Steps) > 1 {
			name += ", " + st.Name
		}
		fact(name, verdictOf(st)+", "+u.design(st.Result))
	}
	for _, p := range s.Pieces() {
		fact(strings.ToUpper(p.Name[:1])+p.Name[1:], fmt.Sprintf("%s %s, %s, %s by %s",
			u.size(p.Size), u.Name(unit.Length), u.say(p.Mass, "kg"), s.Material.Name, s.Material.Process))
	}
	if words := CalibrationWords(s); words != "" {
		fact("Calibration", words+"; figures of the job are replaced, the report lists each")
	}
	fact("Cautions", "on the work instruction, "+d.Sheet)
	scenes := stage{order: s.Order(), bodies: map[any]int{}, to: &d}
	for i := range s.Steps {
		d.Steps = append(d.Steps, previewStep(u, &s.Steps[i]))
		d.Steps[i].Thrust = [2]float64{s.Tooling.Anvils[i].Thrust.X, s.Tooling.Anvils[i].Thrust.Y}
		d.Steps[i].Scene = scenes.of(i, s.NestOf(i), s.Tooling.Anvils[i])
	}
	return d
}

// verdictOf is the chosen method with its verdict.
func verdictOf(st *solve.Step) string {
	name := st.Decision.Chosen.Title()
	switch {
	case st.Decision.Overridden:
		return name + ", FAILS, taken by override"
	case st.Chosen().Verdict == method.Conditional:
		return name + ", only if a competent person agrees"
	}
	return name
}

// previewStep gives force and method of a step.
func previewStep(u units, st *solve.Step) preview.Step {
	r := st.Result
	p := preview.Step{Name: st.Name, Curve: r.Curve.Points(300), Design: r.Design, Reason: st.Decision.Reason.In(u.System)}
	for _, b := range r.Band {
		p.Band = append(p.Band, [4]float64{b.Lift, b.P5, b.P50, b.P95})
	}
	b := u.bandOf(r)
	p.Facts = []preview.Fact{
		{Name: "Design force", Value: u.design(r)},
		{Name: "Nominal peak", Value: u.say(r.Peak, "N") + " at a lift of " + u.say(r.PeakLift, "mm")},
		{Name: "P5, P50, P95", Value: b.p5 + ", " + b.p50 + ", " + b.p95},
		{Name: "Worst case", Value: b.worst},
		{Name: "Jam", Value: share(r.Jammed) + " of assemblies"},
		{Name: "Work to the seat", Value: u.say(r.Work, "mJ")},
		{Name: "Stroke", Value: u.say(r.Stroke, "mm")},
		{Name: "Humps to be felt", Value: fmt.Sprint(r.Humps)},
	}
	for _, a := range st.Decision.Options {
		used := number(100*a.Utilisation) + " %"
		if a.Utilisation >= method.Beyond {
			used = "beyond"
		}
		p.Options = append(p.Options, preview.Option{
			Method: a.Method.Title(), Verdict: string(a.Verdict), Used: used, Nearest: a.Governing, How: a.Action.In(u.System),
			Chosen: a.Method == st.Decision.Chosen,
		})
	}
	return p
}

// A stage gathers the bodies that the steps show, each mesh once.
type stage struct {
	order  fixture.Order
	bodies map[any]int // by the mesh that they are of
	to     *preview.Document
}

// apart is how far bodies stand from one another, taken apart [mm].
const apart = 12.0

// of places the bodies of a step.
func (g *stage) of(i int, n fixture.Nest, a fixture.Anvil) []preview.Placed {
	st := g.order.Steps[i]
	out := []preview.Placed{{Body: g.piece(n.Piece), Name: n.Name, Tone: preview.Light, Offset: n.Shift}}
	low := st.Lower.Envelope
	up := max(0, n.Top+apart-low.Min[2])
	out = append(out, preview.Placed{Body: g.part(st.Lower), Name: st.Lower.Name, Tone: preview.Medium, Apart: up})
	top := low.Max[2]
	for _, p := range st.Before {
		out = append(out, preview.Placed{Body: g.part(p), Name: p.Name, Tone: preview.Dark, Apart: up})
		top = max(top, p.Envelope.Max[2])
	}
	upper := st.Upper.Envelope
	lift := max(up, top+up+apart-upper.Min[2])
	out = append(out, preview.Placed{Body: g.part(st.Upper), Name: st.Upper.Name, Tone: preview.Accent, Moves: true, Apart: lift})
	over := max(lift, upper.Max[2]+lift+apart-a.Shift[2], n.Shift[2]+n.Size[2]+apart-a.Shift[2])
	return append(out, preview.Placed{Body: g.piece(a.Piece), Name: a.Name, Tone: preview.Light, Offset: a.Shift, Moves: true, Apart: over})
}

func (g *stage) piece(p fixture.Piece) int {
	return g.body(p.Mesh, preview.Body{Name: p.Name, Mesh: *p.Mesh})
}

func (g *stage) part(p fixture.Part) int {
	e := p.Envelope
	return g.body(e, preview.Body{Name: p.Name, Mesh: e.Mesh})
}

// body gives the index of a body, added if it is new.
func (g *stage) body(mesh any, b preview.Body) int {
	at, known := g.bodies[mesh]
	if !known {
		at = len(g.to.Bodies)
		g.bodies[mesh] = at
		g.to.Bodies = append(g.to.Bodies, b)
	}
	return at
}
