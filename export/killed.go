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
	marker     = tempPrefix + "complete" // says which complete file gets which name
	undoing    = tempPrefix + "undo"     // the same while names are taken back
)

func tempName(n int, name string) string { return tempPrefix + strconv.Itoa(n) + "." + name }

// backupOf is the second name of the earlier file while the one under a temporary name
// takes its place.
func backupOf(temp string) string { return ".ramnest-old." + strings.TrimPrefix(temp, tempPrefix) }

var (
	temporary = regexp.MustCompile(`^\.ramnest\.[0-9]{1,3}\.`)
	leftover  = regexp.MustCompile(`^\.ramnest(-old)?\.[0-9]{1,3}\.`)
)

// step is called before each change to the folder. Tests end the process there.
var step = func() {}

// naming is called with each name before it is given, for tests as well.
var naming = func(string) {}

// mark writes down which complete file gets which name, so that a run that is killed
// from here on can be finished.
func (s *set) mark() error {
	var text strings.Builder
	for _, f := range s.staged {
		text.WriteString(f.temp + "\t" + f.name + "\t" + before(f.old) + "\n")
	}
	text.WriteString("end\n")
	remove(s.root, marker) // of a run before, where the folder cannot be locked
	step()
	file, err := s.root.OpenFile(marker, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	s.marked = true
	step()
	if _, err = io.WriteString(file, text.String()); err == nil {
		err = file.Sync()
	}
	return errors.Join(err, file.Close())
}

// before says in the note whether a name was taken.
func before(old bool) string {
	if old {
		return "old"
	}
	return "new"
}

// unmark takes the note back.
func (s *set) unmark() {
	if s.marked {
		step()
		remove(s.root, marker)
		s.marked = false
	}
}

// finishKilled finishes what a killed run had complete, or what it had begun to take
// back, and clears away what it had not. The folder must be locked.
func finishKilled(root *os.Root, told func(string)) error {
	for _, note := range []struct {
		name, said string
		follow     func(*os.Root, []staged) error
	}{
		{undoing, "a run into this folder was killed while it took its files back; they are as they were before it", undo},
		{marker, "a run into this folder was killed while it gave its files their names; they are now all of that run", finish},
	} {
		files, found, err := read(root, note.name)
		if err != nil {
			return fmt.Errorf("read the note of a run that was killed: %w", err)
		}
		if !found {
			continue
		}
		if err := note.follow(root, files); err != nil {
			return fmt.Errorf("put the files of a run that was killed in order: %w", err)
		}
		step()
		if err := remove(root, note.name); err != nil {
			return err
		}
		if len(files) > 0 {
			told(note.said)
		}
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
		if leftover.MatchString(n) {
			step()
			remove(root, n) // one that stays does no harm: its name is stepped over
		}
	}
	return nil
}

// read reads a note. One that is not whole was being written: then no file had its name
// yet, and it says nothing. What it says is held to the names that this package gives,
// since the folder may be anybody's.
func read(root *os.Root, note string) (files []staged, found bool, err error) {
	const most = 1 << 20
	info, err := root.Lstat(note)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, false, nil
	}
	if err != nil {
		return nil, false, err
	}
	if !info.Mode().IsRegular() || info.Size() > most {
		return nil, true, nil
	}
	text, err := root.ReadFile(note)
	if err != nil {
		return nil, false, err
	}
	body, whole := strings.CutSuffix(string(text), "end\n")
	if !whole {
		return nil, true, nil
	}
	for line := range strings.Lines(body) {
		f := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		if len(f) != 3 || !temporary.MatchString(f[0]) || nameProblem(f[0]) != "" || nameProblem(f[1]) != "" || f[2] != before(false) &&
			f[2] != before(true) {
			return nil, true, nil // none of ours
		}
		files = append(files, staged{f[1], f[0], f[2] == before(true)})
	}
	return files, true, nil
}

// finish gives files the names that they have not got yet.
func finish(root *os.Root, files []staged) error {
	for _, f := range files {
		step()
		if err := root.Rename(f.temp, f.name); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	return nil
}

// undo takes names back from files that have got them, and gives them to the earlier
// ones again. It can be done again from any place where it was stopped: a file whose
// temporary name is taken has not got its own, and an earlier one without a second name
// has its own.
func undo(root *os.Root, files []staged) error {
	var faults []error
	for i := len(files) - 1; i >= 0; i-- {
		f := files[i]
		if f.old {
			backup := backupOf(f.temp)
			step()
			err := root.Rename(backup, f.name)
			if errors.Is(err, fs.ErrNotExist) {
				continue
			}
			if err == nil {
				step()
				// Renaming one link onto the other leaves both (POSIX).
				if err = remove(root, backup); errors.Is(err, fs.ErrNotExist) {
					err = nil
				}
			}
			faults = append(faults, err)
			continue
		}
		if _, err := root.Lstat(f.temp); err == nil {
			continue
		}
		step()
		if err := root.Rename(f.name, f.temp); err != nil && !errors.Is(err, fs.ErrNotExist) {
			faults = append(faults, err)
		}
	}
	return errors.Join(faults...)
}
