//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package export

import (
	"errors"
	"os"
	"syscall"
)

// tryLock locks the folder itself, so that no file is left.
func tryLock(root *os.Root) (unlock func(), err error) {
	folder, err := root.Open(".")
	if err != nil {
		return nil, err
	}
	if err := syscall.Flock(int(folder.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		folder.Close()
		if errors.Is(err, syscall.EWOULDBLOCK) {
			return nil, errTaken
		}
		return nil, err
	}
	return func() { folder.Close() }, nil
}
