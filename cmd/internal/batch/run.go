package batch

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"runtime/debug"
	"strings"
	"sync"

	"ramnest/export"
)

// A Plan says what is to be worked out.
type Plan struct {
	Out     string   // folder of the folders
	Files   []string // of the jobs, in the order of the table
	Workers int      // jobs worked on at once, 1 or more: bounds the memory

	// Ready reads a job and gives its fingerprint, and how to work it out. An error is
	// a fault of the job.
	Ready func(file string) (key string, work Work, err error)

	// Inputs gives all that the jobs read, so that no file of one takes the place of an
	// input of another; asked only if there is something in a place; nil: nothing is kept.
	Inputs func() *export.Inputs

	// Told is called after each job, one call at a time; nil: nobody listens.
	Told func(Progress)
}

// A Work works a job out: its row and its files. An error is a fault of the job, or of
// the program if it is an [Internal].
type Work func() (Row, []export.File, error)

// An Internal is a fault of the program, not of the job.
type Internal struct{ Err error }

// Error gives its text.
func (e Internal) Error() string { return "fault of the program: " + e.Err.Error() }

// Unwrap gives what went wrong.
func (e Internal) Unwrap() error { return e.Err }

// Progress is how far a run is.
type Progress struct {
	Of        int // jobs of the plan
	Done      int // of them finished, all told
	Unchanged int // of them done in an earlier run
	Failed    int // of them failed or broken
}

// ErrStopped says that a run was stopped before its end.
var ErrStopped = errors.New("stopped")

// Run works the plan out. A job that fails stops no other. When ctx ends, no further
// job is begun, those in hand are dropped as if they had not been begun, and the error is
// ErrStopped. A Work must heed ctx, too.
func Run(ctx context.Context, p Plan) ([]Row, Progress, error) {
	f, err := openFolder(p.Out, p.Inputs)
	if err != nil {
		return nil, Progress{Of: len(p.Files)}, err
	}
	defer f.close()
	names, clashes := folderNames(p.Files)
	rows := make([]Row, len(p.Files))
	state := Progress{Of: len(p.Files)}
	var mu sync.Mutex
	told := func(r Row, unchanged bool) {
		mu.Lock()
		defer mu.Unlock()
		state.Done++
		if unchanged {
			state.Unchanged++
		}
		if r.Outcome == Failed || r.Outcome == Broken {
			state.Failed++
		}
		if p.Told != nil {
			p.Told(state)
		}
	}
	next, made := make(chan int), make(chan done)
	finish := func(i int, r Row, unchanged bool) {
		r.Stale = (r.Outcome == Failed || r.Outcome == Broken) && clashes[i] == "" && f.holds(names[i])
		r.File = p.Files[i]
		rows[i] = r
		told(r, unchanged)
	}
	var workers, writers sync.WaitGroup
	for range max(1, p.Workers) {
		workers.Go(func() {
			for i := range next {
				if clash := clashes[i]; clash != "" {
					finish(i, fault(Row{}, Failed, errors.New(clash)), false)
				} else if d, unchanged := one(f, names[i], p.Files[i], p.Ready); ctx.Err() != nil && !unchanged {
					continue // whatever it says: perhaps only that it was stopped
				} else if d.files == nil {
					finish(i, d.row, unchanged)
				} else {
					d.at = i
					made <- d
				}
			}
		})
		// Disks make wait: so a worker goes on while its files are written.
		for range writersEach {
			writers.Go(func() {
				for d := range made {
					d.row.Folder = names[d.at]
					if err := f.put(ctx, names[d.at], d.key, d.row, d.files); err != nil {
						if ctx.Err() != nil {
							continue
						}
						d.row = fault(Row{}, Failed, fmt.Errorf("%s: cannot be written to: %w", names[d.at], err))
					}
					finish(d.at, d.row, false)
				}
			})
		}
	}
	for i := range p.Files {
		if ctx.Err() != nil {
			break
		}
		select {
		case next <- i:
		case <-ctx.Done():
		}
	}
	close(next)
	workers.Wait()
	close(made)
	writers.Wait()
	if ctx.Err() != nil {
		return nil, state, ErrStopped
	}
	return rows, state, nil
}

// writersEach is how many jobs a worker may have on the way to the disk beside the one
// in hand: with it the number of workers bounds the memory.
const writersEach = 3

// done is a job that is worked out and not written.
type done struct {
	at    int
	key   string
	row   Row
	files []export.File // nil: there is nothing to write
}

// one works one job out, or finds that it is done.
func one(f *folder, name, file string, ready func(string) (string, Work, error)) (d done, unchanged bool) {
	defer func() {
		if r := recover(); r != nil {
			d, unchanged = done{row: fault(Row{}, Broken, fmt.Errorf("panic: %v, %s", r, firstFrame(debug.Stack())))}, false
		}
	}()
	key, work, err := ready(file)
	if err != nil {
		return done{row: fault(Row{}, outcomeOf(err), err)}, false
	}
	if row, ok := f.unchanged(name, key); ok {
		return done{row: row}, true
	}
	row, files, err := work()
	if err != nil {
		return done{row: fault(row, outcomeOf(err), err)}, false
	}
	return done{key: key, row: row, files: append([]export.File{}, files...)}, false
}

func outcomeOf(err error) string {
	if _, ours := errors.AsType[Internal](err); ours {
		return Broken
	}
	return Failed
}

// fault gives the row of a job that came to nothing.
func fault(r Row, outcome string, err error) Row {
	r.Outcome, r.Faults = outcome, strings.Split(strings.TrimRight(err.Error(), "\n"), "\n")
	return r
}

// firstFrame gives the place of a panic in one line.
func firstFrame(stack []byte) string {
	lines := strings.Split(string(stack), "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, "panic(") && i+3 < len(lines) {
			place, _, _ := strings.Cut(lines[i+3], " +0x")
			return filepath.Base(strings.TrimSpace(place))
		}
	}
	return "place unknown"
}
