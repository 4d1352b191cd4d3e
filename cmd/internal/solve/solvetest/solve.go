// Package solvetest works the example jobs out for the tests of other packages.
package solvetest

import (
	"io"
	"os"
	"path/filepath"
	"testing"

	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/solve"
)

// Jobs lists the example jobs, without .yaml.
func Jobs() []string {
	return []string{"battery-tray", "rim-cap", "rim-cap-inch", "sensor-hood", "shell-pair", "snap-case"}
}

// Read decodes a job that has no faults.
func Read(tb testing.TB, name, text string, set ...string) (*job.File, *jobfile.Document) {
	tb.Helper()
	var j job.File
	doc, problems := jobfile.Decode(name, []byte(text), &j, jobfile.Options{Set: set})
	if problems = problems.And(doc.Problems(j.Validate())); len(problems) > 0 {
		tb.Fatal(problems)
	}
	return &j, doc
}

// Example works an example job out.
func Example(tb testing.TB, name string, set ...string) (*solve.Solution, *jobfile.Document) {
	tb.Helper()
	text, err := os.ReadFile(filepath.Join(folder(), name+".yaml"))
	if err != nil {
		tb.Fatal(err)
	}
	j, doc := Read(tb, name+".yaml", string(text), set...)
	s, err := solve.Run(j, solve.Means{Open: Open})
	if err != nil {
		tb.Fatal(err)
	}
	return s, doc
}

// Open opens a file below the folder of the example jobs.
func Open(name string) (io.ReaderAt, int64, io.Closer, error) {
	f, err := os.Open(filepath.Join(folder(), filepath.FromSlash(name)))
	if err != nil {
		return nil, 0, nil, err
	}
	info, err := f.Stat()
	if err != nil {
		f.Close()
		return nil, 0, nil, err
	}
	return f, info.Size(), f, nil
}

// folder is that of the example jobs: below the module in which the test runs.
func folder() string {
	dir, err := os.Getwd()
	for err == nil {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil || dir == filepath.Dir(dir) {
			break
		}
		dir = filepath.Dir(dir)
	}
	return filepath.Join(dir, "testdata", "jobs")
}
