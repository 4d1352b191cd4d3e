package export

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
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
// A name that is not a plain file name, or that occurs twice (also in another
// case, since some file systems keep only one of them), is a [*NameError].
func WriteFiles(dir string, files []File) (err error) {
	if err := checkNames(files); err != nil {
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

	s := &set{root: root}
	// Also when a File's own function panics.
	defer s.discard()
	for _, f := range files {
		if err := s.stage(f); err != nil {
			return err
		}
	}
	return s.commit()
}

// set is the state of one WriteFiles: what lies in the folder under a
// temporary name.
type set struct {
	root   *os.Root
	staged []staged
}

type staged struct {
	name   string // final name
	temp   string // complete new file; empty once it has its final name
	backup string // second name of the earlier file; empty if there was none
	placed bool   // the new file has its final name
}

// stage writes one file under a temporary name.
func (s *set) stage(f File) error {
	// Asked before anything is written, not found out by the rename.
	if _, err := s.occupied(f.Name); err != nil {
		return fmt.Errorf("write %q: %w", f.Name, err)
	}
	temp, file, err := s.create(f.Name)
	if err != nil {
		return fmt.Errorf("write %q: %w", f.Name, err)
	}
	s.staged = append(s.staged, staged{name: f.Name, temp: temp})
	defer file.Close()
	out := bufio.NewWriterSize(file, 64*1024)
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
		if err := s.place(&s.staged[i]); err != nil {
			return fmt.Errorf("put %q in place: %w", s.staged[i].name, err)
		}
	}
	// From here on the new set stands; what is left to do cannot spoil it.
	for _, f := range s.staged {
		if f.backup != "" {
			s.root.Remove(f.backup)
		}
	}
	s.staged = nil
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
	occupied, err := s.occupied(f.name)
	if err != nil {
		return err
	}
	if occupied {
		backup, err := s.free(f.name, func(name string) error {
			err := s.root.Link(f.name, name)
			if err == nil || errors.Is(err, fs.ErrExist) {
				return err
			}
			if _, err := s.root.Lstat(name); err == nil {
				return fs.ErrExist
			}
			return s.root.Rename(f.name, name)
		})
		if err != nil {
			return err
		}
		f.backup = backup
	}
	if err := s.root.Rename(f.temp, f.name); err != nil {
		return err
	}
	f.temp, f.placed = "", true
	return nil
}

// occupied tells whether an earlier file has the name. A folder there is an
// error: it is not ours to move away.
func (s *set) occupied(name string) (bool, error) {
	info, err := s.root.Lstat(name)
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
	for i := len(s.staged) - 1; i >= 0; i-- {
		f := s.staged[i]
		if f.temp != "" {
			s.root.Remove(f.temp)
		}
		switch {
		case f.backup != "":
			s.root.Rename(f.backup, f.name)
			// Renaming one link onto the other leaves both (POSIX).
			s.root.Remove(f.backup)
		case f.placed:
			s.root.Remove(f.name)
		}
	}
	s.staged = nil
}

// create opens a new file under a temporary name next to name.
func (s *set) create(name string) (temp string, file *os.File, err error) {
	temp, err = s.free(name, func(temp string) error {
		file, err = s.root.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		return err
	})
	return temp, file, err
}

// free finds a name that take can have for itself. Leftovers of a process that
// was killed are stepped over, not overwritten: another run may own them.
func (s *set) free(name string, take func(string) error) (string, error) {
	for n := range 1000 {
		temp := "." + name + "." + strconv.Itoa(n) + ".tmp"
		if err := take(temp); !errors.Is(err, fs.ErrExist) {
			return temp, err
		}
	}
	return "", fmt.Errorf("1000 temporary files of earlier runs lie in the folder, such as .%s.0.tmp; remove them", name)
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
