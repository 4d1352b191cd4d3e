package main

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"sync"

	"ramnest/cmd/internal/audit"
	"ramnest/cmd/internal/batch"
	"ramnest/cmd/internal/deliver"
	"ramnest/cmd/internal/job"
	"ramnest/cmd/internal/jobfile"
	"ramnest/cmd/internal/report"
	"ramnest/cmd/internal/solve"
	"ramnest/export"
	"ramnest/export/quote"
	"ramnest/force/calibrate"
	"ramnest/force/method"
)

type batchCommand struct {
	Dir         string `arg:"" name:"folder" help:"Folder of the job files."`
	Out         string `short:"o" required:"" placeholder:"FOLDER" help:"Folder for a folder of each job, and the table; made if it is missing."`
	Bench       string `placeholder:"FILE" help:"A shop's bench file, in the place of each job's section bench."`
	Calibration string `placeholder:"FILE" help:"The shop's calibration file. A job of other materials than those measured fails."`
	Card        string `placeholder:"FILE" help:"The shop's rate card, in the place of each job's section rates."`
	Workers     int    `placeholder:"N" help:"Jobs worked on at once: fewer need less memory. Left out: one for each core."`
	JSON        bool   `name:"json" help:"Print the table as JSON."`
}

// Help says how a run goes and ends.
func (batchCommand) Help() string {
	return `Does for every .yaml and .yml file of the folder what make does: the files of
a.yaml go into FOLDER/a. Subfolders, names that begin with a point, and the files
named by a flag are left out. A job that fails stops no other.

Run it again and only jobs are done whose job file, part meshes, bench,
calibration, card or program changed, or whose files are not as they were written;
so a run that was stopped, or killed, goes on where it was. At any moment a job's
folder holds all its files or none. Ctrl-C ends it at once; the jobs in hand are
begun anew by the next run.

The table is written to ` + batchTable + `.csv and .json in FOLDER, the same bytes
whether a run was stopped in between or not.

Exit codes:

    0    every job has its tooling
    3    every job was worked out, and no manual method is good enough for one
         or more of them
    2    a job or a file is wrong, its faults are printed; the others are done
    1    a fault of the program in one or more jobs; the others are done
    130  stopped by Ctrl-C; the table is left as it was

    ramnest batch jobs -o out --card shop/rates.yaml`
}

// batchTable is the name of the table, without its ending.
const batchTable = "batch"

// Run does the batch.
func (b *batchCommand) Run(c *console) error {
	shop, err := b.shop(c)
	if err != nil {
		return err
	}
	files, err := b.files()
	if err != nil {
		return err
	}
	workers := b.Workers
	if workers < 0 || workers > 1024 {
		return badUse{fmt.Sprintf("--workers: %d; is out of range (1 to 1024, or left out)", workers)}
	}
	if workers == 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	// This process lives long: collect as often as Go does by itself, for half the memory.
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(100)
	}
	inputs := sync.OnceValue(func() *export.Inputs { return b.inputs(c, files) })
	table := []string{batchTable + ".csv", batchTable + ".json"}
	// Asked before the jobs are done, not found out behind them.
	if slices.ContainsFunc(table, func(name string) bool { _, err := os.Stat(filepath.Join(b.Out, name)); return err == nil }) {
		if err := inputs().Refuse(b.Out, table...); err != nil {
			return badUse{fmt.Sprintf("cannot write to %s: %s; nothing was written", b.Out, err)}
		}
	}
	bar := newBar(c.err, len(files))
	rows, state, err := batch.Run(c.ctx, batch.Plan{Out: b.Out, Files: files, Workers: workers, Told: bar.told,
		Inputs: inputs,
		Ready:  func(file string) (string, batch.Work, error) { return shop.ready(filepath.Join(b.Dir, file)) }})
	bar.end()
	stopped := func() error {
		fmt.Fprintf(c.err, "ramnest: stopped: %d of %d jobs are done; the same command goes on from there\n", state.Done, state.Of)
		return ended{exitStopped}
	}
	switch {
	case errors.Is(err, batch.ErrStopped):
		return stopped()
	case err != nil:
		return badUse{fmt.Sprintf("cannot write to %s: %s", b.Out, innermost(err))}
	}
	all := report.BatchOf(rows, tool)
	err = c.write(b.Out, []export.File{
		{Name: table[0], Write: func(w io.Writer) error { return report.WriteBatch(w, all) }},
		{Name: table[1], Write: func(w io.Writer) error { return export.WriteJSON(w, all) }},
	})
	if err != nil && c.ctx.Err() != nil {
		return stopped()
	}
	if err != nil {
		return badUse{fmt.Sprintf("cannot write to %s: %s; the jobs are done, the table is not", b.Out, writeFault(b.Out, err))}
	}
	if b.JSON {
		err = export.WriteJSON(c.out, all)
	} else {
		err = c.print(report.BatchText(all, b.Out, state.Unchanged))
	}
	if err != nil {
		return err
	}
	switch code := batchCode(all); code {
	case exitDone:
		return nil
	default:
		return ended{code}
	}
}

// batchCode is the gravest of the jobs.
func batchCode(t report.Batch) int {
	switch {
	case t.Broken > 0:
		return exitInternal
	case t.Failed > 0:
		return exitBad
	case t.NoTooling > 0:
		return exitNone
	}
	return exitDone
}

// files lists the job files.
func (b *batchCommand) files() ([]string, error) {
	entries, err := os.ReadDir(b.Dir)
	if err != nil {
		return nil, badUse{fmt.Sprintf("%s: cannot be read: %s", b.Dir, innermost(err))}
	}
	var apart []os.FileInfo
	for _, name := range []string{b.Bench, b.Calibration, b.Card} {
		if info, err := os.Stat(name); name != "" && err == nil {
			apart = append(apart, info)
		}
	}
	var out []string
	for _, e := range entries {
		ext := strings.ToLower(filepath.Ext(e.Name()))
		if e.IsDir() || strings.HasPrefix(e.Name(), ".") || ext != ".yaml" && ext != ".yml" {
			continue
		}
		info, err := os.Stat(filepath.Join(b.Dir, e.Name()))
		if err == nil && slices.ContainsFunc(apart, func(a os.FileInfo) bool { return os.SameFile(a, info) }) {
			continue
		}
		out = append(out, e.Name())
	}
	if len(out) == 0 {
		return nil, badUse{b.Dir + ": holds no job file (names that end in .yaml or .yml)"}
	}
	return out, nil
}

// inputs gives all that the jobs read. A job that cannot be read is an input itself, and
// names no other.
func (b *batchCommand) inputs(c *console, files []string) *export.Inputs {
	for _, name := range files {
		file := filepath.Join(b.Dir, name)
		data, err := c.readUpTo(file, c.jobBytes)
		if err != nil {
			continue
		}
		var j job.File
		jobfile.Decode(file, data, &j, jobfile.Options{MaxBytes: c.jobBytes})
		c.meshesOf(file, &j)
	}
	return &c.inputs
}

// shop is what all jobs of a batch share.
type shop struct {
	bench *method.Bench
	sheet *calibrate.Sheet
	card  *quote.RateCard
	key   []byte // of all that and the program
	c     *console
}

// shop reads it.
func (b *batchCommand) shop(c *console) (*shop, error) {
	s := &shop{c: c}
	h := sha256.New()
	put(h, []byte(tool))
	put(h, program())
	var data []byte
	if b.Bench != "" {
		bench, read, err := readBenchBytes(c, b.Bench)
		if err != nil {
			return nil, err
		}
		s.bench, data = &bench, read
	}
	put(h, data)
	data = nil
	if b.Calibration != "" {
		var err error
		if s.sheet, data, err = readSheet(c, b.Calibration); err != nil {
			return nil, err
		}
	}
	put(h, data)
	data = nil
	if b.Card != "" {
		var err error
		if s.card, data, err = readCard(c, b.Card); err != nil {
			return nil, err
		}
	}
	put(h, data)
	s.key = h.Sum(nil)
	return s, nil
}

// put adds bytes so that two pieces never run together.
func put(h hash.Hash, b []byte) {
	h.Write(binary.LittleEndian.AppendUint64(nil, uint64(len(b))))
	h.Write(b)
}

// program is a fingerprint of the program itself, so that what another version made is
// made again; nil where the system does not tell.
func program() []byte {
	name, err := os.Executable()
	if err != nil {
		return nil
	}
	f, err := os.Open(name)
	if err != nil {
		return nil
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return nil
	}
	return h.Sum(nil)
}

// ready reads a job and gives its fingerprint.
func (s *shop) ready(file string) (key string, work batch.Work, err error) {
	data, err := s.c.readUpTo(file, s.c.jobBytes)
	if err != nil {
		return "", nil, badUse{fmt.Sprintf("%s: cannot be read: %s", file, innermost(err))}
	}
	var j job.File
	doc, problems := jobfile.Decode(file, data, &j, jobfile.Options{MaxBytes: s.c.jobBytes})
	if s.bench != nil {
		j.Bench = *s.bench
	}
	s.c.meshesOf(file, &j)
	j.Bound(s.c.places, s.c.outlines)
	if err := problems.And(doc.Problems(j.Validate())).Err(); err != nil {
		return "", nil, err
	}
	j.Calibration = s.sheet
	if s.card != nil {
		j.Rates = s.card
	}
	key = s.keyOf(file, data, &j)
	return key, func() (batch.Row, []export.File, error) {
		row, set, err := s.work(file, &j, doc)
		// What was made must be of the meshes that the key is of.
		if err == nil && s.keyOf(file, data, &j) != key {
			err = badUse{file + ": a mesh of it changed while it was worked out; run again"}
		}
		return row, set, err
	}, nil
}

// keyOf is a fingerprint of everything that goes into a job's files. A mesh that cannot
// be read counts as missing: working the job out tells why.
func (s *shop) keyOf(file string, data []byte, j *job.File) string {
	h := sha256.New()
	put(h, s.key)
	put(h, data)
	if root, err := os.OpenRoot(filepath.Dir(file)); err == nil {
		defer root.Close()
		open := s.c.opener(filepath.Dir(file), root)
		for _, name := range j.Meshes() {
			put(h, []byte(name))
			in, size, closer, err := open(name)
			if err != nil {
				continue
			}
			sum := sha256.New()
			_, err = io.Copy(sum, io.NewSectionReader(in, 0, size))
			closer.Close()
			if err == nil {
				put(h, sum.Sum(nil))
			}
		}
	}
	return hex.EncodeToString(h.Sum(nil))
}

// work works a job out and renders its files.
func (s *shop) work(file string, j *job.File, doc *jobfile.Document) (batch.Row, []export.File, error) {
	var row batch.Row
	root, err := os.OpenRoot(filepath.Dir(file))
	if err != nil {
		return row, nil, badUse{fmt.Sprintf("%s: its folder cannot be opened: %s", file, innermost(err))}
	}
	defer root.Close()
	solution, err := until(s.c.ctx, func() (*solve.Solution, error) {
		return solve.Run(j, solve.Means{Context: s.c.ctx, Open: s.c.opener(filepath.Dir(file), root), Limits: s.c.mesh()})
	})
	if err != nil {
		err = refusedAt(doc, err)
		if _, ours := errors.AsType[jobfile.Problems](err); !ours {
			err = batch.Internal{Err: err}
		}
		return row, nil, err
	}
	if err := audit.Solution(s.c.ctx, solution); err != nil {
		return row, nil, batch.Internal{Err: err}
	}
	set, err := deliver.Files(s.c.ctx, solution, tool, doc.Inputs(solution.Job))
	if err != nil {
		return row, nil, batch.Internal{Err: err}
	}
	made := report.BatchRow(solution)
	if err := cmp.Or(audit.Papers(solution, set), audit.Row(solution, made)); err != nil {
		return row, nil, batch.Internal{Err: err}
	}
	return made, set.Files, nil
}

// terminal tells whether a person watches what is written.
func terminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// A bar shows how far a batch is: on a terminal as a line that is written over, else
// as a plain line each tenth of the way.
type bar struct {
	to      *lockedWriter
	of      int
	overs   bool
	tenths  int
	written bool
}

func newBar(to *lockedWriter, of int) *bar { return &bar{to: to, of: of, overs: terminal(to.w)} }

// told shows a step.
func (b *bar) told(p batch.Progress) {
	text := fmt.Sprintf("%d of %d jobs", p.Done, p.Of)
	if p.Unchanged > 0 {
		text += fmt.Sprintf(", %d unchanged", p.Unchanged)
	}
	if p.Failed > 0 {
		text += fmt.Sprintf(", %d failed", p.Failed)
	}
	if b.overs {
		const wide = 30
		full := wide * p.Done / max(1, p.Of)
		line := fmt.Sprintf("\r[%s%s] %s", strings.Repeat("#", full), strings.Repeat("-", wide-full), text)
		b.to.Write(append([]byte(line), bytes.Repeat([]byte(" "), max(0, 79-len(line)))...))
		b.written = true
		return
	}
	if tenths := 10 * p.Done / max(1, p.Of); tenths > b.tenths {
		b.tenths = tenths
		fmt.Fprintf(b.to, "ramnest: %s\n", text)
	}
}

// end leaves the line.
func (b *bar) end() {
	if b.written {
		fmt.Fprintln(b.to)
	}
}
