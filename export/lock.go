package export

import (
	"context"
	"errors"
	"os"
	"time"
)

// How long a run waits for another one in the same folder, and how often it looks.
const (
	lockPatience = 2 * time.Minute
	lockLook     = 20 * time.Millisecond
)

// errTaken says that another run holds the folder.
var errTaken = errors.New("another run writes into the folder")

// lockFolder waits until no other run writes into the folder. locked is false where
// the system or file system has no locks: then runs only keep their temporary files
// apart. The system takes a lock back when its process ends, however it ends.
func lockFolder(ctx context.Context, root *os.Root) (unlock func(), locked bool, err error) {
	for end := time.Now().Add(lockPatience); ; {
		unlock, err := tryLock(root)
		switch {
		case err == nil:
			return unlock, true, nil
		case !errors.Is(err, errTaken):
			return func() {}, false, nil
		case time.Now().After(end):
			return nil, false, errTaken
		}
		select {
		case <-ctx.Done():
			return nil, false, ctx.Err()
		case <-time.After(lockLook):
		}
	}
}
