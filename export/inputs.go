package export

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
)

// Inputs are the files that a run reads, so that none of its outputs takes the place of
// one. Files are compared as the system knows them, not by name: a symbolic or hard
// link, another spelling of the folder, or of the name where the system does not tell
// small letters from capitals, is the same file. The zero value, and nil, hold none.
type Inputs struct {
	mu      sync.Mutex
	files   []input
	folders []input // that a file lies below, each with one of those
	seen    map[string]bool
}

type input struct {
	name string // of the file, as it was asked for
	info fs.FileInfo
}

// Add takes note of an input. One that is not there is none: nothing can replace it.
func (in *Inputs) Add(name string) {
	info, err := os.Stat(name)
	if err != nil {
		return
	}
	in.mu.Lock()
	defer in.mu.Unlock()
	if in.seen[name] {
		return
	}
	if in.seen == nil {
		in.seen = map[string]bool{}
	}
	in.seen[name] = true
	in.files = append(in.files, input{name, info})
	real, err := filepath.EvalSymlinks(name)
	if err == nil {
		real, err = filepath.Abs(real)
	}
	for d := filepath.Dir(real); err == nil && !in.seen[d+"/"]; d = filepath.Dir(d) {
		in.seen[d+"/"] = true
		if at, err := os.Stat(d); err == nil {
			in.folders = append(in.folders, input{name, at})
		}
	}
}

// An InputError says that an output would take the place of an input.
type InputError struct {
	Output string // its name in the output folder
	Input  string // as the run names it
}

// Error gives the fault on one line.
func (e *InputError) Error() string {
	return fmt.Sprintf("%s would take the place of %s, which this run reads; write to another name or folder", e.Output, e.Input)
}

// Refuse gives an [*InputError] if a file that has one of the names in the folder is an
// input, or leads to one.
func (in *Inputs) Refuse(folder string, names ...string) error {
	if in == nil {
		return nil
	}
	if _, err := os.Stat(folder); err != nil {
		folder = filepath.Clean(folder) // what is yet to be made can lead back: new/../jobs
	}
	in.mu.Lock()
	defer in.mu.Unlock()
	for _, name := range names {
		// Not joined: to clean a path is to change it where it goes through a link.
		at, err := os.Stat(folder + string(filepath.Separator) + name)
		if err != nil {
			continue // nothing is there
		}
		for _, f := range in.files {
			if os.SameFile(at, f.info) {
				return &InputError{Output: name, Input: f.name}
			}
		}
	}
	return nil
}

// RefuseWithin gives an [*InputError] if an input lies anywhere below the folder, which
// is to be replaced as a whole.
func (in *Inputs) RefuseWithin(folder string) error {
	whole, err := os.Stat(folder)
	if in == nil || err != nil {
		return nil
	}
	in.mu.Lock()
	defer in.mu.Unlock()
	for _, f := range in.folders {
		if os.SameFile(whole, f.info) {
			return &InputError{Output: filepath.Base(folder), Input: f.name}
		}
	}
	return nil
}
