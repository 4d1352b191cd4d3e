package batch

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ramnest/export"
)

// A folder holds the folders of the jobs. Nobody else writes into it: it is locked.
type folder struct {
	path   string
	inputs func() *export.Inputs // nil: nothing is kept
	unlock func()
}

// Names in the folder that are no job's. A job's files are made under newPrefix and
// get their name by one rename, the earlier ones being put aside under oldPrefix
// before: what stands under a job's own name is whole at any moment.
const (
	lockName   = ".batch.lock"
	newPrefix  = ".batch-new-"
	oldPrefix  = ".batch-old-"
	recordName = "ramnest-batch.json" // of a job's folder
)

// ErrInUse says that another run works in the folder.
var ErrInUse = errors.New("another batch works in it")

// openFolder makes the folder, locks it, and clears up behind a run that was killed.
func openFolder(path string, inputs func() *export.Inputs) (*folder, error) {
	if err := os.MkdirAll(path, 0o755); err != nil {
		return nil, err
	}
	unlock, err := export.TryLock(filepath.Join(path, lockName))
	switch {
	case errors.Is(err, export.ErrTaken):
		return nil, ErrInUse
	case errors.Is(err, errors.ErrUnsupported): // two runs at once are the user's to avoid
		unlock = func() {}
	case err != nil:
		return nil, err
	}
	f := &folder{path, inputs, unlock}
	if err := f.recover(); err != nil {
		unlock()
		return nil, fmt.Errorf("clear up behind an earlier run: %w", err)
	}
	return f, nil
}

func (f *folder) close() { f.unlock() }

func (f *folder) at(name string) string { return filepath.Join(f.path, name) }

// recover removes what was begun and puts back what was put aside.
func (f *folder) recover() error {
	entries, err := os.ReadDir(f.path)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), newPrefix) {
			if f.inputs != nil {
				if err := f.inputs().RefuseWithin(f.at(e.Name())); err != nil {
					return err
				}
			}
			if err := os.RemoveAll(f.at(e.Name())); err != nil {
				return err
			}
		}
		name, old := strings.CutPrefix(e.Name(), oldPrefix)
		if !old {
			continue
		}
		if _, err := os.Lstat(f.at(name)); errors.Is(err, fs.ErrNotExist) {
			if err := os.Rename(f.at(e.Name()), f.at(name)); err != nil {
				return err
			}
		} else if err := f.retire(name); err != nil {
			return err
		}
	}
	return nil
}

// A record says what was written for a job, and stands beside it.
type record struct {
	Schema string   `json:"schema"` // "ramnest batch record"
	Key    string   `json:"key"`    // fingerprint of all that went into it
	Row    Row      `json:"row"`
	Files  []stored `json:"files"`
}

// stored is a file as it was written.
type stored struct {
	Name   string `json:"name"`
	Bytes  int    `json:"bytes"`
	SHA256 string `json:"sha256"`
}

const recordSchema = "ramnest batch record"

// recordOf reads the record of a folder; ok is false if there is none that can be read.
func recordOf(path string) (r record, ok bool) {
	data, err := os.ReadFile(filepath.Join(path, recordName))
	if err != nil || json.Unmarshal(data, &r) != nil || r.Schema != recordSchema {
		return record{}, false
	}
	return r, true
}

// holds tells whether files of an earlier run lie in a job's folder.
func (f *folder) holds(name string) bool {
	_, ok := recordOf(f.at(name))
	return ok
}

// unchanged gives the row of a job that was done before with the same fingerprint, all
// its files as they were written.
func (f *folder) unchanged(name, key string) (Row, bool) {
	r, ok := recordOf(f.at(name))
	if !ok || r.Key != key {
		return Row{}, false
	}
	for _, s := range r.Files {
		if sum, n, err := sumOf(filepath.Join(f.at(name), filepath.Base(s.Name))); err != nil || n != s.Bytes || sum != s.SHA256 {
			return Row{}, false
		}
	}
	return r.Row, true
}

func sumOf(path string) (sum string, n int, err error) {
	in, err := os.Open(path)
	if err != nil {
		return "", 0, err
	}
	defer in.Close()
	h := sha256.New()
	m, err := io.Copy(h, in)
	return hex.EncodeToString(h.Sum(nil)), int(m), err
}

// put writes the files of a job and its record, and gives them the job's name at once.
// What the folder held of an earlier run goes; what somebody else put there stays. It can
// be stopped up to the moment when all files are complete.
func (f *folder) put(ctx context.Context, name, key string, row Row, files []export.File) error {
	if info, err := os.Lstat(f.at(name)); err == nil && !info.IsDir() {
		return errors.New("is there already and no folder")
	} else if err == nil {
		if err := f.refuse(name, files); err != nil {
			return err
		}
	}
	fresh := f.at(newPrefix + name)
	if err := os.RemoveAll(fresh); err != nil {
		return err
	}
	if err := write(ctx, fresh, record{Schema: recordSchema, Key: key, Row: row}, files); err != nil {
		os.RemoveAll(fresh)
		return err
	}
	aside := f.at(oldPrefix + name)
	switch err := os.Rename(f.at(name), aside); {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		os.RemoveAll(fresh)
		return err
	}
	if err := os.Rename(fresh, f.at(name)); err != nil {
		os.Rename(aside, f.at(name)) // as it was; the first fault is told
		os.RemoveAll(fresh)
		return err
	}
	return f.retire(name)
}

// refuse keeps the inputs of all jobs from being replaced: by a file of this one, or with
// the folder that is put aside.
func (f *folder) refuse(name string, files []export.File) error {
	if f.inputs == nil {
		return nil
	}
	names := []string{recordName}
	for _, file := range files {
		names = append(names, file.Name)
	}
	inputs := f.inputs()
	if err := inputs.Refuse(f.at(name), names...); err != nil {
		return err
	}
	return inputs.RefuseWithin(f.at(name))
}

// retire removes the earlier files of a job, which were put aside. What is not of an
// earlier run moves into the folder that stands, unless a file of the new set has its
// name.
func (f *folder) retire(name string) error {
	aside := f.at(oldPrefix + name)
	entries, err := os.ReadDir(aside)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	r, _ := recordOf(aside)
	for _, e := range entries {
		ours := e.Name() == recordName || slices.ContainsFunc(r.Files, func(s stored) bool { return s.Name == e.Name() })
		from, to := filepath.Join(aside, e.Name()), filepath.Join(f.at(name), e.Name())
		if _, err := os.Lstat(to); ours || err == nil && !e.IsDir() {
			// The record goes last: without it nobody would know what is whose.
			if e.Name() == recordName {
				continue
			}
			if err := os.Remove(from); err != nil {
				return err
			}
			continue
		}
		if err := os.Rename(from, to); err != nil {
			return err
		}
	}
	if err := os.Remove(filepath.Join(aside, recordName)); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return os.Remove(aside)
}
