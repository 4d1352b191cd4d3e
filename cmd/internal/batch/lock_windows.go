package batch

import (
	"errors"
	"syscall"
)

// lock holds a file that nobody else can open meanwhile, until unlock or the end of the
// process, also a violent one.
func lock(path string) (unlock func(), err error) {
	const sharingViolation = syscall.Errno(32)
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, err
	}
	h, err := syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE, 0, nil, syscall.OPEN_ALWAYS, syscall.FILE_ATTRIBUTE_NORMAL, 0)
	if errors.Is(err, sharingViolation) {
		return nil, ErrInUse
	}
	if err != nil {
		return nil, err
	}
	return func() { syscall.CloseHandle(h) }, nil
}
