package export

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"time"

	"github.com/gofrs/flock"
)

// How long a run waits for another one in the same folder, and how often it looks.
const (
	lockPatience = 2 * time.Minute
	lockLook     = 20 * time.Millisecond
)

// ErrTaken says that another run holds the lock.
var ErrTaken = errors.New("another run writes into the folder")

// TryLock locks a folder itself, so that no file is left, or a file, which is made if it
// is missing. The error is [ErrTaken] if another run holds it, another one where the
// system or file system has no locks. The system takes a lock back when its process
// ends, however it ends.
func TryLock(path string) (unlock func(), err error) {
	flags, left := os.O_CREATE|os.O_RDWR, ""
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		flags = os.O_RDONLY
		if runtime.GOOS == "windows" { // a folder cannot be locked there
			path = filepath.Join(path, ".ramnest.lock")
			flags, left = os.O_CREATE|os.O_RDWR, path
		}
	}
	l := flock.New(path, flock.SetFlag(flags), flock.SetPermissions(0o644))
	switch got, err := l.TryLock(); {
	case err != nil:
		l.Close()
		return nil, err
	case !got:
		return nil, ErrTaken
	}
	return func() {
		l.Close()
		if left != "" {
			os.Remove(left) // stays where the next run has it open already
		}
	}, nil
}

// lockFolder waits until no other run writes into the folder. locked is false where there
// are no locks: then runs only keep their temporary files apart.
func lockFolder(ctx context.Context, root *os.Root) (unlock func(), locked bool, err error) {
	for end := time.Now().Add(lockPatience); ; {
		unlock, err := TryLock(root.Name())
		switch {
		case err == nil:
			return unlock, true, nil
		case !errors.Is(err, ErrTaken):
			return func() {}, false, nil
		case time.Now().After(end):
			return nil, false, ErrTaken
		}
		select {
		case <-ctx.Done():
			return nil, false, ctx.Err()
		case <-time.After(lockLook):
		}
	}
}
