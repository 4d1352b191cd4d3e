package batch

import (
	"bufio"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"os"
	"sync"

	"ramnest/export"
)

// write makes a folder with files and their record, and sees to it that all of it is on
// the disk. The folder is nobody else's yet, so the files need no names in between; and
// they go to the disk together, which costs a slow one little more than one alone.
func write(ctx context.Context, path string, r record, files []export.File) error {
	if err := os.Mkdir(path, 0o755); err != nil {
		return err
	}
	root, err := os.OpenRoot(path)
	if err != nil {
		return err
	}
	defer root.Close()
	var open []*os.File
	defer func() {
		for _, f := range open {
			f.Close() // a second time where all went well
		}
	}()
	put := func(f export.File) (stored, error) {
		out, err := root.OpenFile(f.Name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		if err != nil {
			return stored{}, err
		}
		open = append(open, out)
		h := sha256.New()
		c := &counter{w: bufio.NewWriterSize(export.Stoppable(ctx, out), 64<<10), also: h}
		if err := errors.Join(f.Write(c), c.w.Flush()); err != nil {
			return stored{}, err
		}
		return stored{f.Name, c.n, hex.EncodeToString(h.Sum(nil))}, nil
	}
	for _, f := range files {
		s, err := put(f)
		if err != nil {
			return err
		}
		r.Files = append(r.Files, s)
	}
	if _, err := put(export.File{Name: recordName, Write: func(w io.Writer) error { return export.WriteJSON(w, r) }}); err != nil {
		return err
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	errs := make([]error, len(open))
	var group sync.WaitGroup
	for i, f := range open {
		group.Go(func() { errs[i] = errors.Join(f.Sync(), f.Close()) })
	}
	group.Wait()
	if folder, err := root.Open("."); err == nil {
		folder.Sync() // some systems cannot; the files are complete all the same
		folder.Close()
	}
	return errors.Join(errs...)
}

// A counter counts and sums what goes through.
type counter struct {
	w    *bufio.Writer
	also io.Writer
	n    int
}

func (c *counter) Write(b []byte) (int, error) {
	n, err := c.w.Write(b)
	c.n += n
	c.also.Write(b[:n]) // a hash takes everything
	return n, err
}
