package main

import (
	"fmt"
	"io"

	"ramnest/cmd/internal/audit"
	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/export/chart"
)

type forceCommand struct {
	calibrated
	Out  string `short:"o" placeholder:"FOLDER" help:"Write the curve of each step there, as SVG and PNG."`
	JSON bool   `name:"json" help:"Print the forces as JSON."`
}

// Help says what is computed.
func (forceCommand) Help() string {
	return `Needs latches and materials only: mesh files are not read, so that forces can
be had before there is a part. The grey band of the picture, and the dots in the
terminal, are where 90 of 100 assemblies lie.

    ramnest force jobs/rim-cap.yaml
    ramnest force jobs/rim-cap.yaml -o out`
}

// Run computes the forces.
func (f *forceCommand) Run(c *console) error {
	j, doc, err := f.read(c)
	if err != nil {
		return err
	}
	done := c.stage("computing the forces")
	steps, err := solve.Forces(c.ctx, j)
	done()
	if err != nil {
		return refusedAt(doc, err)
	}
	s := &solve.Solution{Job: j, Steps: steps}
	if err := c.doubt(func() error { return audit.Forces(c.ctx, steps) }); err != nil {
		return err
	}
	text := report.Forces(s)
	if err := audit.Terminal(s, text); err != nil {
		return err
	}
	var names []string
	if f.Out != "" {
		if names, err = f.draw(c, s); err != nil {
			return err
		}
	}
	if f.JSON {
		return export.WriteJSON(c.out, report.ForceSteps(s))
	}
	for _, n := range names {
		text += fmt.Sprintf("\nwritten: %s in %s", n, f.Out)
	}
	if len(names) > 0 {
		text += "\n"
	}
	return c.print(text)
}

// draw writes the pictures, all or none.
func (f *forceCommand) draw(c *console, s *solve.Solution) ([]string, error) {
	var files []export.File
	var names []string
	for i := range s.Steps {
		part := "-force"
		if len(s.Steps) > 1 {
			part = fmt.Sprintf("-force-%d", i+1)
		}
		title, drawn := report.ChartOf(s, i)
		if len(drawn.Curve) < 2 {
			continue // the first latch to make contact locks: there is no force to draw
		}
		for _, format := range chart.Formats() {
			name := job.Stem(s.Job.Number) + part + "." + format
			names = append(names, name)
			files = append(files, export.File{Name: name, Write: func(w io.Writer) error { return chart.Write(w, title, drawn, format) }})
		}
	}
	if len(files) == 0 {
		return nil, nil
	}
	if err := c.write(f.Out, files); err != nil {
		return nil, badUse{fmt.Sprintf("cannot write to %s: %s; nothing was written", f.Out, writeFault(f.Out, err))}
	}
	return names, nil
}
