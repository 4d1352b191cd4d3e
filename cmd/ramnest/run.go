package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strings"
	"sync"

	"github.com/alecthomas/kong"

	"ramnest/cmd/internal/audit"
	"ramnest/cmd/internal/jobfile"
	"ramnest/export"
	"ramnest/force"
)

// version is that of the program; it stands in every file that is written.
const version = "0.1.0"

// versionDate is the day of that version, for the manual page.
const versionDate = "2026-11-25"

// tool is how the program names itself in its files.
const tool = "ramnest " + version

// Exit codes, as the help documents them.
const (
	exitDone     = 0
	exitInternal = 1
	exitBad      = 2
	exitNone     = 3
	exitStopped  = 130 // by the shell's custom: 128 and the number of the signal
)

// errNoMethod says that a job was worked out and no manual method is good enough.
var errNoMethod = errors.New("no manual method")

// ended says that a command has told all and ends with a code.
type ended struct{ code int }

func (e ended) Error() string { return fmt.Sprintf("exit code %d", e.code) }

// A badUse is a mistake on the command line or with a file named there.
type badUse struct{ text string }

func (b badUse) Error() string { return b.text }

// leave unwinds to run when the library for the command line wants to exit.
type leave struct{ code int }

// A console is what a command talks through, and what can stop it.
type console struct {
	bounds
	ctx context.Context
	in  io.Reader
	out io.Writer
	err *lockedWriter

	stepping sync.Mutex
	steps    []stepped // STEP files that were meshed

	inputs export.Inputs // what was read, and must not be written over
}

// run is the whole program but for the process: it returns the exit code.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) (code int) {
	c := &console{ctx: ctx, in: stdin, out: stdout, err: &lockedWriter{w: stderr}}
	defer func() {
		if r := recover(); r != nil {
			l, ours := r.(leave)
			if !ours {
				panic(r)
			}
			code = l.code
		}
	}()
	var grammar commands
	defer debug.SetMemoryLimit(debug.SetMemoryLimit(-1))
	parser := kong.Must(&grammar,
		kong.Name("ramnest"), kong.Description(about), vars(),
		kong.Writers(stdout, c.err), kong.Exit(func(code int) { panic(leave{code}) }),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true, WrapUpperBound: 80}),
		kong.Bind(c),
	)
	parsed, err := parser.Parse(args)
	if err != nil {
		return c.report(badUse{err.Error() + "; see ramnest --help"})
	}
	c.bounds = standing()
	c.MaxMemory, c.MaxTime = grammar.MaxMemory, grammar.MaxTime
	if err := c.raise(os.Getenv(limitsVariable)); err != nil {
		return c.report(badUse{err.Error()})
	}
	if c.MaxTime > 0 {
		var stop context.CancelFunc
		c.ctx, stop = context.WithTimeout(ctx, c.MaxTime)
		defer stop()
	}
	return c.report(parsed.Run())
}

// report tells what went wrong, one line a fault, and gives the exit code.
func (c *console) report(err error) int {
	if done, ok := errors.AsType[ended](err); ok {
		return done.code
	}
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, errNoMethod):
		return exitNone
	case errors.Is(c.ctx.Err(), context.DeadlineExceeded):
		fmt.Fprintf(c.err, "ramnest: not done within --max-time %v; nothing was written\n", c.MaxTime)
		return exitBad
	case c.ctx.Err() != nil:
		fmt.Fprintln(c.err, "ramnest: stopped; nothing was written")
		return exitStopped
	}
	text, code := "ramnest: "+err.Error(), exitInternal
	if _, ok := errors.AsType[jobfile.Problems](err); ok {
		text, code = err.Error(), exitBad // each line names its file
	} else if _, ok := errors.AsType[badUse](err); ok {
		code = exitBad
	} else if _, ok := errors.AsType[audit.Fault](err); ok {
		const each = "ramnest: contradiction: "
		text = each + strings.ReplaceAll(err.Error(), "\n", "\n"+each) + "\nramnest: a fault of the program, not of the job; nothing was written"
	} else {
		text = "ramnest: internal fault, not the job's: " + err.Error()
	}
	fmt.Fprintln(c.err, strings.TrimRight(text, "\n"))
	return code
}

// print writes a result to stdout.
func (c *console) print(text string) error {
	if _, err := io.WriteString(c.out, text); err != nil {
		return fmt.Errorf("write the result: %w", err)
	}
	return nil
}

// vars are the words that the help takes from the program.
func vars() kong.Vars { return kong.Vars{"version": tool, "kinds": strings.Join(force.Kinds(), ", ")} }
