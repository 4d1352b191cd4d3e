package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"ramnest/cmd/internal/audit"
	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/solve"
	"ramnest/force/fault"
)

// A source is the job file that a command works on.
type source struct {
	Job   string   `arg:"" name:"job.yaml" help:"Job file."`
	Bench string   `placeholder:"FILE" help:"A shop's bench file, in the place of the job's section bench."`
	Set   []string `sep:"none" placeholder:"PATH=VALUE" help:"Put a value in the place of one in the file, such as latches.rim.annular.undercut=0.7. May be repeated."`
}

// read decodes and validates the job file. What is wrong comes back as
// jobfile.Problems, the file named as on the command line.
func (s source) read(c *console) (*job.File, *jobfile.Document, error) {
	data, err := c.readUpTo(s.Job, c.jobBytes)
	if err != nil {
		return nil, nil, badUse{fmt.Sprintf("%s: cannot be read: %s", s.Job, innermost(err))}
	}
	var j job.File
	doc, problems := jobfile.Decode(s.Job, data, &j, jobfile.Options{MaxBytes: c.jobBytes, Set: s.Set})
	// Without all sections there is nothing to judge; with a wrong value in one the
	// others are judged all the same.
	if s.Bench != "" {
		if j.Bench, err = readBench(c, s.Bench); err != nil {
			return nil, nil, err
		}
	}
	c.meshesOf(s.Job, &j)
	j.Bound(c.places, c.outlines)
	problems = problems.And(doc.Problems(j.Validate()))
	return &j, doc, problems.Err()
}

// meshesOf counts the meshes of a job among the inputs, also for a command that does not
// read them: no output is worth one.
func (c *console) meshesOf(file string, j *job.File) {
	for _, name := range j.Meshes() {
		for _, name := range []string{filepath.FromSlash(name), filepath.FromSlash(strings.ReplaceAll(name, `\`, "/"))} {
			if !filepath.IsAbs(name) {
				name = filepath.Join(filepath.Dir(file), name)
			}
			c.inputs.Add(name)
		}
	}
}

// readUpTo reads a file of up to so many bytes, and one more, by which its reader knows
// that it is too long. From then on the file is an input of the run.
func (c *console) readUpTo(name string, most int) ([]byte, error) {
	info, err := os.Stat(name) // a pipe must not be opened: that would wait for a writer
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, errors.New("is a folder, not a job file")
	case !info.Mode().IsRegular():
		return nil, errors.New("is not a plain file")
	}
	c.inputs.Add(name)
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, int64(most)+1))
}

// solve works the job out, mesh files opened below the folder of the job file only.
func (s source) solve(c *console) (*solve.Solution, *jobfile.Document, error) {
	j, doc, err := s.read(c)
	if err != nil {
		return nil, nil, err
	}
	solution, err := s.work(c, j, doc)
	return solution, doc, err
}

// work works a valid job out.
func (s source) work(c *console, j *job.File, doc *jobfile.Document) (*solve.Solution, error) {
	root, err := os.OpenRoot(filepath.Dir(s.Job))
	if err != nil {
		return nil, badUse{fmt.Sprintf("%s: its folder cannot be opened: %s", s.Job, innermost(err))}
	}
	defer root.Close()
	solution, err := until(c.ctx, func() (*solve.Solution, error) {
		return solve.Run(j, solve.Means{Context: c.ctx, Open: c.opener(filepath.Dir(s.Job), root), Limits: c.mesh(), Stage: c.stage})
	})
	if err != nil {
		return nil, refusedAt(doc, err)
	}
	return solution, c.doubt(func() error { return audit.Solution(c.ctx, solution) })
}

// doubt gives what has been worked out a second opinion.
func (c *console) doubt(audit func() error) error {
	defer c.stage("doubting the figures")()
	return audit()
}

// refusedAt gives the faults of a job their lines; other errors stay as they are.
func refusedAt(doc *jobfile.Document, err error) error {
	if refused, ok := errors.AsType[*solve.Refused](err); ok {
		return doc.Problems(refused.Faults).Err()
	}
	return err
}

// innermost leaves paths and operations out of an error of the system.
func innermost(err error) string {
	for {
		inner := errors.Unwrap(err)
		if inner == nil {
			return err.Error()
		}
		err = inner
	}
}

// readShopFile reads and validates a file of the shop's own, and gives its bytes too.
func readShopFile[T any](c *console, name string, faults func(*T) []fault.Fault) (*T, []byte, error) {
	data, err := c.readUpTo(name, c.shopBytes)
	if err != nil {
		return nil, nil, badUse{fmt.Sprintf("%s: cannot be read: %s", name, innermost(err))}
	}
	var into T
	doc, problems := jobfile.Decode(name, data, &into, jobfile.Options{MaxBytes: c.shopBytes})
	return &into, data, problems.And(doc.Problems(faults(&into))).Err()
}
