package main

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"ramnest/cmd/internal/audit"
	"ramnest/cmd/internal/guide"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/force"
	"ramnest/force/fault"
	"ramnest/force/method"
)

// studyCommands look at a job from one side, or at many versions of it.
type studyCommands struct {
	Explain explainCommand `cmd:"" help:"Print every formula behind the force of one latch with the numbers put in, or what a warning means."`
	Sweep   sweepCommand   `cmd:"" help:"Vary one figure of a job: peak, design force and method against it."`
	Method  methodCommand  `cmd:"" help:"Compare hand, mallet and press for a job, with time, people and cost."`
	Bench   benchCommand   `cmd:"" help:"List the presses, mallets and vises known, or check a bench file."`
}

type explainCommand struct {
	calibrated
	Latch string `arg:"" optional:"" name:"latch" help:"Id of the latch."`
}

// Help says what is printed.
func (explainCommand) Help() string {
	return `Each formula with its symbol, value, unit and source, and the numbers put in, so
that a second engineer can redo it by hand. Mesh files are not read.

    ramnest explain jobs/rim-cap.yaml rim

With the number of a warning alone: what it means and what to do.

    ramnest explain W12`
}

// Run explains the latch, or the warning.
func (e *explainCommand) Run(c *console) error {
	if e.Latch == "" {
		n, ok := guide.WarningNumber(e.Job)
		w, known := guide.WarningOf(n)
		switch {
		case known:
			return c.print(w.String())
		case ok:
			return badUse{fmt.Sprintf("%s: no warning has that number; ramnest help warnings lists them", e.Job)}
		}
		return badUse{"explain: a job file needs the id of a latch behind it; a warning is W and its number, such as W12"}
	}
	j, doc, err := e.read(c)
	if err != nil {
		return err
	}
	steps, err := solve.Forces(c.ctx, j)
	if err != nil {
		return refusedAt(doc, err)
	}
	if err := c.doubt(func() error { return audit.Forces(c.ctx, steps) }); err != nil {
		return err
	}
	var ids []string
	for _, s := range steps {
		if lines := force.Explain(s.Assembly, e.Latch); lines != nil {
			whole := &solve.Solution{Job: j, Steps: steps}
			return c.print(report.Explain(e.Latch, lines) + report.CalibrationText(whole))
		}
		for _, l := range s.Latches {
			ids = append(ids, l.ID)
		}
	}
	return badUse{fmt.Sprintf("%s: no latch of that id; the job has %s", e.Latch, strings.Join(ids, ", "))}
}

type sweepCommand struct {
	calibrated
	Vary string `required:"" placeholder:"PATH=FROM:TO:N" help:"The figure and its values: N of them, evenly from FROM to TO, such as latches.rim.annular.undercut=0.3:0.9:7, with a unit if wanted: 12 thou:35 thou:7."`
	JSON bool   `name:"json" help:"Print the table as JSON."`
}

// Help says what is worked out.
func (sweepCommand) Help() string {
	return `Works the job out once for each value: forces and method, without the sizes of
tooling. A value that the job refuses is named with the reason; if it refuses all of
them, the sweep ends with code 2.

    ramnest sweep jobs/rim-cap.yaml --vary latches.rim.annular.undercut=0.3:0.9:7
    ramnest sweep jobs/rim-cap.yaml --vary "latches.rim.annular.undercut=0.012 in:0.035 in:7"
    ramnest sweep jobs/rim-cap.yaml --vary rate_per_hour=10:200:5`
}

// Bounds of a sweep.
const mostValues = 200

// Run sweeps.
func (w *sweepCommand) Run(c *console) error {
	path, values, err := sweepValues(w.Vary)
	if err != nil {
		return err
	}
	if _, _, err := w.read(c); err != nil { // the job itself must be good
		return err
	}
	root, err := os.OpenRoot(filepath.Dir(w.Job))
	if err != nil {
		return badUse{fmt.Sprintf("%s: its folder cannot be opened: %s", w.Job, innermost(err))}
	}
	defer root.Close()
	done := c.stage("working out the values")
	defer done()
	var rows []report.SweepRow
	for _, v := range values {
		at := w.calibrated
		at.Set = append(append([]string{}, w.Set...), path+"="+v)
		row := report.SweepRow{Value: v}
		j, doc, err := at.read(c)
		if err == nil {
			var s *solve.Solution
			if s, err = solve.Choices(j, solve.Means{Context: c.ctx, Open: c.opener(filepath.Dir(w.Job), root), Limits: c.mesh()}); err == nil {
				row.Steps = report.SweepSteps(s)
				if err := cmp.Or(audit.Choices(c.ctx, s), audit.Sweep(s, row.Steps)); err != nil {
					return err
				}
				row.Calibration = report.CalibrationWords(s)
			} else {
				err = refusedAt(doc, err)
			}
		}
		if err != nil {
			if _, ours := err.(jobfile.Problems); !ours {
				return err
			}
			row.Refused = strings.SplitN(err.Error(), "\n", 2)[0]
		}
		rows = append(rows, row)
	}
	if lines := allRefused(path, rows); lines != nil {
		return badUse{strings.Join(lines, "\nramnest: ")}
	}
	if w.JSON {
		return export.WriteJSON(c.out, rows)
	}
	return c.print(report.Sweep(path, rows))
}

// allRefused gives a line a value where the job takes none of them; else nothing.
func allRefused(path string, rows []report.SweepRow) []string {
	var out []string
	for _, r := range rows {
		if r.Refused == "" {
			return nil
		}
		out = append(out, "sweep: "+r.Refused)
	}
	return append(out, fmt.Sprintf("sweep: all %d values of %s are refused", len(rows), path))
}

// sweepValues reads PATH=FROM:TO:N. The unit of one end is that of the other.
func sweepValues(vary string) (path string, values []string, err error) {
	wrong := badUse{fmt.Sprintf("--vary %s: not understood (PATH=FROM:TO:N, N from 2 to %d)", vary, mostValues)}
	path, span, ok := strings.Cut(vary, "=")
	parts := strings.Split(span, ":")
	if !ok || path == "" || len(parts) != 3 {
		return "", nil, wrong
	}
	first, unit := jobfile.CutUnit(parts[0])
	last, other := jobfile.CutUnit(parts[1])
	if unit != "" && other != "" && unit != other {
		return "", nil, badUse{fmt.Sprintf("--vary %s: goes from %s to %s; state both ends in one unit", vary, unit, other)}
	}
	unit = cmp.Or(unit, other)
	from, err1 := strconv.ParseFloat(first, 64)
	to, err2 := strconv.ParseFloat(last, 64)
	n, err3 := strconv.Atoi(parts[2])
	if err1 != nil || err2 != nil || err3 != nil || n < 2 || n > mostValues || math.IsNaN(from-to) || math.IsInf(from-to, 0) {
		return "", nil, wrong
	}
	for k := range n {
		v := from + (to-from)*float64(k)/float64(n-1)
		values = append(values, strings.TrimSpace(strconv.FormatFloat(v, 'g', 6, 64)+" "+unit))
	}
	return path, values, nil
}

type methodCommand struct {
	calibrated
	JSON bool `name:"json" help:"Print the comparison as JSON."`
}

// Help says what is compared.
func (methodCommand) Help() string {
	return `Each method against all its limits, with the sizes of the tooling where there is
one; the time of an assembly from published standard times where there are some,
people at the line's rate, cost of an assembly by the card's labour rate, and the
number of assemblies after which the tooling has paid for itself against the next
simpler method that passes.

    ramnest method jobs/rim-cap.yaml`
}

// Run compares.
func (m *methodCommand) Run(c *console) error {
	j, doc, err := m.read(c)
	if err != nil {
		return err
	}
	s, err := m.work(c, j, doc)
	if err != nil {
		return err
	}
	if m.JSON {
		if err := export.WriteJSON(c.out, report.Methods(s)); err != nil {
			return err
		}
		return c.finish(s, "")
	}
	text := report.MethodTable(s)
	if err := audit.Terminal(s, text); err != nil {
		return err
	}
	return c.finish(s, text)
}

type benchCommand struct {
	File string `arg:"" optional:"" name:"bench.yaml" help:"A shop's bench file: what stands under bench in a job."`
	JSON bool   `name:"json" help:"Print the list as JSON."`
}

// Help says what is listed.
func (benchCommand) Help() string {
	return `Without a file: the generic classes that are assumed where a job names nothing.
With one: what is wrong with it, or what it holds. A bench file has the keys of
the job's section bench at its top; make, check and method take it by --bench.

    ramnest bench
    ramnest bench shop/bench.yaml`
}

// Run lists the bench.
func (b *benchCommand) Run(c *console) error {
	var bench method.Bench
	if b.File != "" {
		var err error
		if bench, err = readBench(c, b.File); err != nil {
			return err
		}
	}
	if b.JSON {
		return export.WriteJSON(c.out, report.BenchOf(bench))
	}
	return c.print(report.Bench(bench))
}

// benchFile is a bench with the units its numbers are in.
type benchFile struct {
	jobfile.Units `yaml:",inline"`
	method.Bench  `yaml:",inline"`
}

// readBench reads and validates a bench file.
func readBench(c *console, name string) (method.Bench, error) {
	b, _, err := readBenchBytes(c, name)
	return b, err
}

// readBenchBytes gives the bytes that were read as well.
func readBenchBytes(c *console, name string) (method.Bench, []byte, error) {
	f, data, err := readShopFile(c, name, func(f *benchFile) []fault.Fault { return f.Bench.Validate() })
	if err != nil {
		return method.Bench{}, nil, err
	}
	return f.Bench, data, nil
}
