package main

import (
	"bytes"
	"fmt"
	"io"

	"ramnest/cmd/internal/audit"
	"ramnest/cmd/internal/report"
	"ramnest/export/preview"
)

// showCommands show what was designed.
type showCommands struct {
	Preview previewCommand `cmd:"" help:"Write one HTML file that shows a job: forces, method, and the tooling in three dimensions."`
	Drawing drawingCommand `cmd:"" help:"Draw nest and anvil with dimensions, as PDF, SVG or DXF."`
}

type previewCommand struct {
	calibrated
	Out string `short:"o" required:"" placeholder:"FILE" help:"HTML file to write, such as preview.html. One of that name is replaced."`
}

// Help says what is shown.
func (previewCommand) Help() string {
	return `Works the job out and writes one file that any browser opens, from a disk and
without a network: summary, force curve with its band, the methods weighed, and nest,
parts and anvil to turn, cut, take apart and move along the stroke. It shows; the work
instruction of ramnest make is what people work by. A job without tooling ends with
code 3, and nothing is written.

    ramnest preview jobs/rim-cap.yaml -o preview.html`
}

// Run writes the preview.
func (p *previewCommand) Run(c *console) error {
	j, doc, err := p.read(c)
	if err != nil {
		return err
	}
	s, err := p.work(c, j, doc)
	if err != nil {
		return err
	}
	if !s.Tooled() {
		return c.finish(s, report.Check(s, nil))
	}
	done := c.stage("writing the preview")
	page, err := until(c.ctx, func() ([]byte, error) {
		var page bytes.Buffer
		shown := report.PreviewOf(s, tool)
		if err := audit.Preview(s, shown); err != nil {
			return nil, err
		}
		err := preview.Write(&page, shown)
		return page.Bytes(), err
	})
	done()
	if err != nil {
		return err
	}
	return c.deliver(p.Out, page)
}

// deliver writes one file, whole or not at all, and says how large it is.
func (c *console) deliver(path string, content []byte) error {
	err := c.writeFile(path, func(w io.Writer) error {
		_, err := w.Write(content)
		return err
	})
	if err != nil {
		return err
	}
	return c.print(fmt.Sprintf("written: %s, %d kB\n", path, (len(content)+999)/1000))
}
