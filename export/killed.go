package export

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"regexp"
	"strconv"
	"strings"
)

// Names of what lies in an output folder while files are written. Nothing else starts
// like that, so it can be cleared away after a run that was killed.
const (
	tempPrefix = ".ramnest."
	marker     = tempPrefix + "complete"
)

func tempName(n int, name string) string { return tempPrefix + strconv.Itoa(n) + "." + name }

var temporary = regexp.MustCompile(`^\.ramnest\.[0-9]{1,3}\.`)

// mark writes down which complete file gets which name, so that a run that is killed
// from here on can be finished.
func (s *set) mark() error {
	var text strings.Builder
	for _, f := range s.staged {
		text.WriteString(f.temp + "\t" + f.name + "\n")
	}
	text.WriteString("end\n")
	s.root.Remove(marker) // of a run before, where the folder cannot be locked
	file, err := s.root.OpenFile(marker, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	s.marked = true
	if _, err = io.WriteString(file, text.String()); err == nil {
		err = file.Sync()
	}
	return errors.Join(err, file.Close())
}

// unmark takes the note back.
func (s *set) unmark() {
	if s.marked {
		s.root.Remove(marker)
		s.marked = false
	}
}

// finishKilled finishes what a killed run had complete, and clears away what it had
// not. The folder must be locked.
func finishKilled(root *os.Root) error {
	if err := rename(root); err != nil {
		return fmt.Errorf("finish the files of a run that was killed: %w", err)
	}
	folder, err := root.Open(".")
	if err != nil {
		return fmt.Errorf("open output folder: %w", err)
	}
	defer folder.Close()
	names, err := folder.Readdirnames(-1)
	if err != nil {
		return fmt.Errorf("list output folder: %w", err)
	}
	for _, n := range names {
		if temporary.MatchString(n) {
			root.Remove(n) // one that stays does no harm: its name is stepped over
		}
	}
	return nil
}

// rename gives the files of a note their names. A note that is not whole was being
// written: then no file had its name yet, and nothing is done. What it says is held to
// the names that this package gives, since the folder may be anybody's.
func rename(root *os.Root) error {
	const most = 1 << 20
	info, err := root.Lstat(marker)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	if info.Mode().IsRegular() && info.Size() <= most {
		text, err := root.ReadFile(marker)
		if err != nil {
			return err
		}
		if body, whole := strings.CutSuffix(string(text), "end\n"); whole {
			for line := range strings.Lines(body) {
				temp, name, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "\t")
				if !ok || !temporary.MatchString(temp) || nameProblem(temp) != "" || nameProblem(name) != "" {
					break // none of ours
				}
				if err := root.Rename(temp, name); err != nil && !errors.Is(err, fs.ErrNotExist) {
					return err
				}
			}
		}
	}
	return root.Remove(marker)
}
