package export

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// A File is one file to write: its name in the output folder and what fills it.
type File struct {
	Name  string // a plain name, no folder in it
	Write func(io.Writer) error
}

// A NameError says why a name cannot be a file in the output folder.
type NameError struct {
	Name    string
	Problem string
}

// Error gives the fault on one line.
func (e *NameError) Error() string {
	return fmt.Sprintf("output file %q: %s", e.Name, e.Problem)
}

// WriteFiles writes all files into the folder dir or none of them. The folder
// is made if it is missing.
//
// Every file is first written and synced under a temporary name inside the
// folder; only when all are complete are they renamed. If anything fails, the
// temporary files are removed, files already renamed are taken back, and what
// the folder held before is as it was. Everything happens below an [os.Root],
// so no name can lead out of the folder.
//
// Two runs into one folder take turns, where the system can lock one. A run that was
// killed leaves temporary files, which the next one clears away; if it was killed while
// it renamed, when every file was complete, the next one renames the rest first, and if
// it was killed while it took files back, the next one takes back the rest: so no folder
// keeps half of one set and half of another. See [WriteFilesTelling].
//
// A name that is not a plain file name, or that occurs twice (also in another
// case, since some file systems keep only one of them), is a [*NameError].
func WriteFiles(dir string, files []File) error {
	return WriteFilesContext(context.Background(), dir, files)
}

// WriteFilesContext is [WriteFiles] that can be stopped: up to the moment when the
// first file gets its name, after which the set is finished. A set that was stopped
// leaves nothing, and gives the error of the context.
func WriteFilesContext(ctx context.Context, dir string, files []File) error {
	return WriteFilesTelling(ctx, dir, files, nil, func(string) {})
}

// WriteFilesTelling is [WriteFilesContext] that takes the place of none of the inputs,
// which may be nil, and tells, in a sentence, what it found of a run that was killed while
// names were given or taken back.
func WriteFilesTelling(ctx context.Context, dir string, files []File, inputs *Inputs, told func(string)) (err error) {
	if err := checkNames(files); err != nil {
		return err
	}
	var names []string
	for _, f := range files {
		names = append(names, f.Name)
	}
	// Before a folder is made, and again when all folders on the way are there.
	if err := inputs.Refuse(dir, names...); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	made, err := makeFolder(dir)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			for _, d := range made {
				os.Remove(d) // only empty folders go; the first fault is reported
			}
		}
	}()
	root, err := os.OpenRoot(dir)
	if err != nil {
		return fmt.Errorf("open output folder: %w", err)
	}
	defer root.Close()
	if err := inputs.Refuse(dir, names...); err != nil {
		return err
	}
	unlock, locked, err := lockFolder(ctx, root)
	if err != nil {
		return err
	}
	defer unlock()
	if locked { // nobody else is at work here: what lies about is of runs that were killed
		if err := finishKilled(root, told); err != nil {
			return err
		}
	} else if _, err := root.Lstat(marker); err == nil {
		told("another run is writing into the folder, or was killed there, and the system cannot tell which: its files may be of two runs")
	}

	s := &set{root: root}
	// Also when a File's own function panics.
	defer s.discard()
	for _, f := range files {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := s.stage(ctx, f); err != nil {
			return err
		}
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	return s.commit()
}

// Stoppable is a writer that a context can stop: then it writes nothing more, and gives
// the error of the context.
func Stoppable(ctx context.Context, w io.Writer) io.Writer { return stoppable{ctx, w} }

type stoppable struct {
	ctx context.Context
	w   io.Writer
}

func (s stoppable) Write(p []byte) (int, error) {
	if err := s.ctx.Err(); err != nil {
		return 0, err
	}
	return s.w.Write(p)
}

// set is the state of one WriteFiles: what lies in the folder under a
// temporary name.
type set struct {
	root   *os.Root
	staged []staged
	marked bool // the folder says which files wait for their names
}

type staged struct {
	name string // final name
	temp string // of the complete new file, until it has its final name
	old  bool   // an earlier file had the name when names began to be given
}

// stage writes one file under a temporary name.
func (s *set) stage(ctx context.Context, f File) error {
	// Asked before anything is written, not found out by the rename.
	if _, err := occupied(s.root, f.Name); err != nil {
		return fmt.Errorf("write %q: %w", f.Name, err)
	}
	temp, file, err := s.create(f.Name)
	if err != nil {
		return fmt.Errorf("write %q: %w", f.Name, err)
	}
	s.staged = append(s.staged, staged{name: f.Name, temp: temp})
	defer file.Close()
	out := bufio.NewWriterSize(stoppable{ctx, file}, 64*1024)
	if err := f.Write(out); err != nil {
		return fmt.Errorf("write %q: %w", f.Name, err)
	}
	if err := out.Flush(); err != nil {
		return fmt.Errorf("write %q: %w", f.Name, err)
	}
	if err := file.Sync(); err != nil {
		return fmt.Errorf("write %q: %w", f.Name, err)
	}
	if err := file.Close(); err != nil {
		return fmt.Errorf("write %q: %w", f.Name, err)
	}
	return nil
}

// commit gives every staged file its final name and forgets the earlier ones.
func (s *set) commit() error {
	for i := range s.staged {
		f := &s.staged[i]
		var err error
		if f.old, err = occupied(s.root, f.name); err != nil {
			return fmt.Errorf("put %q in place: %w", f.name, err)
		}
	}
	if err := s.mark(); err != nil {
		return fmt.Errorf("note which files are complete: %w", err)
	}
	for i := range s.staged {
		if err := s.place(&s.staged[i]); err != nil {
			return fmt.Errorf("put %q in place: %w", s.staged[i].name, err)
		}
	}
	// From here on the new set stands; what is left to do cannot spoil it.
	for _, f := range s.staged {
		step()
		remove(s.root, backupOf(f.temp))
	}
	s.staged = nil
	s.unmark()
	// The names themselves reach the disk with the folder. Some systems cannot
	// sync a folder; the files are complete all the same.
	if folder, err := s.root.Open("."); err == nil {
		folder.Sync()
		folder.Close()
	}
	return nil
}

// place renames one file. The earlier file keeps a second name until the whole
// set stands: a hard link where the file system has them, so that the final
// name is never missing; else a rename.
func (s *set) place(f *staged) error {
	naming(f.name)
	old, err := occupied(s.root, f.name)
	if err != nil {
		return err
	}
	if old != f.old {
		return errors.New("somebody else made or removed it meanwhile")
	}
	if old {
		backup := backupOf(f.temp)
		step()
		if err := s.root.Link(f.name, backup); err != nil {
			if _, err := s.root.Lstat(backup); err == nil {
				return fs.ErrExist
			}
			if err := s.root.Rename(f.name, backup); err != nil {
				return err
			}
		}
	}
	step()
	return s.root.Rename(f.temp, f.name)
}

// occupied tells whether an earlier file has the name. A folder there is an
// error: it is not ours to move away.
func occupied(root *os.Root, name string) (bool, error) {
	info, err := root.Lstat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	case err != nil:
		return false, err
	case info.IsDir():
		return false, &NameError{Name: name, Problem: "is a folder already"}
	}
	return true, nil
}

// discard undoes everything that commit has not finished.
func (s *set) discard() {
	if s.marked {
		// From here on a run that is killed is undone by the next one.
		step()
		if s.root.Rename(marker, undoing) == nil {
			if undo(s.root, s.staged) != nil {
				return // the next run tries again
			}
			step()
			remove(s.root, undoing)
		}
		s.marked = false
	}
	for _, f := range s.staged {
		step()
		remove(s.root, f.temp)
	}
	s.staged = nil
}

// create opens a new file under a temporary name next to name.
func (s *set) create(name string) (temp string, file *os.File, err error) {
	temp, err = s.free(name, func(temp string) error {
		if _, err := s.root.Lstat(backupOf(temp)); err == nil {
			return fs.ErrExist
		}
		step()
		file, err = s.root.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		return err
	})
	return temp, file, err
}

// free finds a name that take can have for itself. Leftovers of a process that
// was killed are stepped over, not overwritten: another run may own them.
func (s *set) free(name string, take func(string) error) (string, error) {
	for n := range 1000 {
		temp := tempName(n, name)
		if err := take(temp); !errors.Is(err, fs.ErrExist) {
			return temp, err
		}
	}
	return "", fmt.Errorf("1000 temporary files of earlier runs lie in the folder, such as %s; remove them", tempName(0, name))
}

// makeFolder makes dir and what is missing above it, and tells which folders
// are new, the deepest first.
func makeFolder(dir string) (made []string, err error) {
	if dir == "" {
		return nil, &NameError{Name: dir, Problem: "the output folder has no name"}
	}
	for d := filepath.Clean(dir); ; d = filepath.Dir(d) {
		info, err := os.Stat(d)
		if err == nil && !info.IsDir() {
			return nil, &NameError{Name: d, Problem: "is a file, not a folder"}
		}
		if !errors.Is(err, fs.ErrNotExist) || d == filepath.Dir(d) {
			break
		}
		made = append(made, d)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		for _, d := range made {
			os.Remove(d)
		}
		return nil, fmt.Errorf("make output folder: %w", err)
	}
	return made, nil
}

func checkNames(files []File) error {
	seen := make(map[string]string)
	for _, f := range files {
		if problem := nameProblem(f.Name); problem != "" {
			return &NameError{Name: f.Name, Problem: problem}
		}
		folded := strings.ToLower(f.Name)
		if other, twice := seen[folded]; twice {
			return &NameError{Name: f.Name, Problem: fmt.Sprintf("occurs twice, also as %q", other)}
		}
		seen[folded] = f.Name
	}
	return nil
}

// nameProblem says why a name would not be a plain file on every common file
// system; empty if it would.
func nameProblem(name string) string {
	switch {
	case name == "":
		return "has no name"
	case name == "." || name == "..":
		return "is a folder, not a file name"
	case len(name) > 200:
		return "is longer than 200 bytes"
	case strings.ContainsAny(name, `/\`):
		return "must be a plain file name, without / or \\"
	case strings.ContainsAny(name, `<>:"|?*`):
		return `holds one of <>:"|?*, which some file systems refuse`
	case strings.ContainsFunc(name, func(r rune) bool { return r < ' ' || r == 0x7f || r == '\uFFFD' }):
		return "holds a control character"
	case strings.HasSuffix(name, ".") || strings.HasSuffix(name, " "):
		return "ends in a full stop or space, which some file systems drop"
	case !filepath.IsLocal(name):
		return "is a name that the system keeps for itself"
	}
	return ""
}
