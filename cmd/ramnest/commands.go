package main

import (
	"errors"
	"fmt"
	"path/filepath"

	"github.com/alecthomas/kong"

	"ramnest/cmd/internal/audit"
	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/guide"
	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
)

const about = "Tooling for printed parts that go together hard: one job file in; assembly force, method (hand, mallet and vise, arbor press, or none), nest, anvil, work instruction and quote out."

// commands is the command line.
type commands struct {
	bounds
	Make  makeCommand  `cmd:"" help:"Work a job out and write nest, anvil, work instruction, quote and report."`
	Check checkCommand `cmd:"" help:"Say what is wrong with a job, or what make would do; write nothing."`
	Force forceCommand `cmd:"" help:"Compute the assembly force only."`
	studyCommands
	showCommands
	shopCommands
	firstCommands
	Inspect inspectCommand   `cmd:"" help:"Say what a mesh file holds and how it would lie in a nest."`
	Schema  schemaCommand    `cmd:"" help:"Print the JSON Schema of a job file, for an editor."`
	Version kong.VersionFlag `help:"Print the version."`
}

// Help is printed behind the list of commands.
func (commands) Help() string {
	return `Start with a job file that runs, and make it yours:

    ramnest init job.yaml
    ramnest check job.yaml
    ramnest make job.yaml -o out

Exit codes:

    0  done
    1  a fault of the program
    2  the job, a file or the command line is wrong, or no tooling can be made
       for it; every fault is one line on stderr, and nothing was written
    3  worked out, and no manual method is good enough: make writes the report
       and no tooling

The reference is in the program: ramnest help topics.

People press with a ton of force near their fingers. The figures do not replace
local codes, the site's own assessment and a competent person.`
}

type makeCommand struct {
	calibrated
	priced
	Out  string `short:"o" required:"" placeholder:"FOLDER" help:"Folder for the files; made if it is missing."`
	JSON bool   `name:"json" help:"Print the report as JSON instead of the summary."`
}

// Help says what is written.
func (makeCommand) Help() string {
	return `Writes one STL and one 3MF for each nest and anvil, the work instruction as PDF, the
quote as CSV and the report as JSON, all or none. Names start with the job number: FWL-1042-nest.stl.
Characters of the number other than A-Z, a-z, 0-9 . _ - become _, and a hash of
the number follows, so that two numbers never share a file by that:
"FWL 1042" gives FWL_1042+` + job.Stem("FWL 1042")[len("FWL_1042+"):] + `-nest.stl. Files of the same name are replaced.

If no manual method is good enough, only the report is written, and the exit
code is 3. Mesh files are read below the folder of the job file only.

    ramnest make jobs/rim-cap.yaml -o out
    ramnest make jobs/rim-cap.yaml -o out --set latches.rim.annular.undercut=0.7`
}

// Run makes the tooling.
func (m *makeCommand) Run(c *console) error {
	s, set, err := m.files(c, m.priced)
	if err != nil {
		return err
	}
	text := report.Summary(s, m.Out, set.Names)
	if err := audit.Terminal(s, text); err != nil {
		return err
	}
	done := c.stage("writing the files")
	err = c.write(m.Out, set.Files)
	done()
	if err != nil {
		return badUse{fmt.Sprintf("cannot write to %s: %s; nothing was written", m.Out, writeFault(m.Out, err))}
	}
	for _, name := range deliver.Leftovers(m.Out, s.Job.Number, set) {
		fmt.Fprintf(c.err, "ramnest: %s in %s is of an earlier run of this job and no longer holds; remove it\n", name, m.Out)
	}
	if m.JSON {
		text = string(set.Report)
	}
	return c.finish(s, text)
}

// writeFault says why files could not be written, the folder being named already.
func writeFault(folder string, err error) string {
	name, ok := errors.AsType[*export.NameError](err)
	switch {
	case !ok:
		return innermost(err)
	case name.Name == filepath.Clean(folder):
		return name.Problem
	}
	return name.Name + ": " + name.Problem
}

type checkCommand struct {
	calibrated
	priced
	JSON bool `name:"json" help:"Print the report as JSON."`
}

// Help says what is checked.
func (checkCommand) Help() string {
	return `Does all that make does but write: reads the parts, computes the forces,
chooses the method, designs the tooling. Lists every default that was taken
because the file does not state the figure.

    ramnest check jobs/rim-cap.yaml`
}

// Run checks the job.
func (k *checkCommand) Run(c *console) error {
	s, set, err := k.files(c, k.priced)
	if err != nil {
		return err
	}
	text := report.Check(s, set.Names)
	if err := audit.Terminal(s, text); err != nil {
		return err
	}
	if k.JSON {
		text = string(set.Report)
	}
	return c.finish(s, text)
}

type schemaCommand struct{}

// Help says how to use the schema.
func (schemaCommand) Help() string {
	return `JSON Schema draft 2020-12. Editors that complete YAML by a schema take it from
a line at the top of the job file:

    ramnest schema > ramnest.schema.json
    # yaml-language-server: $schema=ramnest.schema.json`
}

// Run prints the schema.
func (schemaCommand) Run(c *console) error {
	return c.print(string(jobfile.Schema(new(job.File), guide.About())))
}

// files works the job out and renders its files.
func (k calibrated) files(c *console, card priced) (*solve.Solution, deliver.Set, error) {
	j, doc, err := k.read(c)
	if err != nil {
		return nil, deliver.Set{}, err
	}
	if _, err := card.of(c, j); err != nil {
		return nil, deliver.Set{}, err
	}
	solution, err := k.work(c, j, doc)
	if err != nil {
		return nil, deliver.Set{}, err
	}
	done := c.stage("rendering the files")
	defer done()
	set, err := deliver.Files(c.ctx, solution, tool, doc.Inputs(solution.Job))
	if err != nil {
		return nil, deliver.Set{}, err
	}
	return solution, set, audit.Papers(solution, set)
}

// finish prints the result, and ends with the code for no method if there is none.
func (c *console) finish(s *solve.Solution, text string) error {
	if err := c.print(text); err != nil {
		return err
	}
	if !s.Tooled() {
		return errNoMethod
	}
	return nil
}
