//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package batch

import (
	"errors"
	"os"
	"syscall"
)

// lock holds a file until unlock or the end of the process, also a violent one.
func lock(path string) (unlock func(), err error) {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o644)
	if err != nil {
		return nil, err
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		f.Close()
		if errors.Is(err, syscall.EWOULDBLOCK) {
			return nil, ErrInUse
		}
		return nil, err
	}
	return func() { f.Close() }, nil
}
