package main

import (
	"bytes"

	"ramnest/cmd/internal/audit"
	"ramnest/cmd/internal/drawings"
	"ramnest/cmd/internal/report"
)

type drawingCommand struct {
	calibrated
	Out    string `short:"o" required:"" placeholder:"FILE" help:"File to write, such as drawing.pdf. One of that name is replaced."`
	Format string `enum:"pdf,svg,dxf" default:"pdf" help:"pdf, svg or dxf (R12)."`
}

// Help says what is drawn.
func (drawingCommand) Help() string {
	return `Draws each nest and anvil for the tool crib, and for whoever machines them instead:
plan and two sections to scale with dimensions, a table of features, material,
process, build direction and tolerance. PDF has a page for each body, SVG the sheets
one below the other, DXF the bodies in their own size. Inch jobs are dimensioned in
inches. A job without tooling ends with code 3, and nothing is written.

    ramnest drawing jobs/rim-cap.yaml -o drawing.pdf
    ramnest drawing jobs/rim-cap.yaml --format dxf -o drawing.dxf`
}

// Run draws.
func (d *drawingCommand) Run(c *console) error {
	j, doc, err := d.read(c)
	if err != nil {
		return err
	}
	s, err := d.work(c, j, doc)
	if err != nil {
		return err
	}
	if !s.Tooled() {
		return c.finish(s, report.Check(s, nil))
	}
	set, err := drawings.SetOf(s, tool)
	if err != nil {
		return err
	}
	if err := audit.Drawings(s, set); err != nil {
		return err
	}
	done := c.stage("drawing")
	out, err := until(c.ctx, func() ([]byte, error) {
		var out bytes.Buffer
		err := set.Write(&out, d.Format)
		return out.Bytes(), err
	})
	done()
	if err != nil {
		return err
	}
	return c.deliver(d.Out, out)
}
